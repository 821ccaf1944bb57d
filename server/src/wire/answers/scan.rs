//! What the counter is told, as it is answered.

use crate::wire::Day;
use serde::Serialize;
use utoipa::ToSchema;

/// What the counter is told.
#[derive(Debug, Serialize, ToSchema)]
pub struct ScanRead {
    /// One word.
    pub verdict: String,
    /// In a sentence.
    pub says: String,
    /// The key of what it says: it is the same in every language.
    pub key: String,
    /// Everything that led to it.
    pub reasons: Vec<String>,
    /// The key of each reason.
    pub reason_keys: Vec<String>,
    /// The lot's code.
    pub lot: Option<String>,
    /// The pack's number.
    pub pack: Option<u32>,
    /// The product's code.
    pub product: Option<String>,
    /// The product's name in the kitchen's first language.
    pub name: Option<String>,
    /// Its last day.
    pub use_by: Option<Day>,
    /// Allergens in full.
    pub allergens: Vec<String>,
    /// Must it be cooked before it is eaten?
    pub raw: Option<bool>,
    /// Its price, in hundredths of the currency.
    pub price_minor: Option<i64>,
}
