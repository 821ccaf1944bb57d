//! What the service answers about yield and cost.

use super::{Number, Weight};
use serde::Serialize;
use utoipa::ToSchema;

/// What came off a lot, or out of a cook, against what is usual.
#[derive(Debug, Serialize, ToSchema)]
pub struct YieldRead {
    /// The lot.
    pub lot: String,
    /// What it is counted from.
    pub of_grams: Weight,
    /// One line a piece; the last one of a cut-out is what nobody weighed.
    pub lines: Vec<YieldLine>,
}

/// One line.
#[derive(Debug, Serialize, ToSchema)]
pub struct YieldLine {
    /// The piece or process.
    pub name: String,
    /// What was weighed.
    pub grams: Weight,
    /// Per cent of the whole; of stock, litres for each kilogram of bones.
    pub amount: Number,
    /// What the template has.
    pub expected: Option<Number>,
    /// `usual`, `low`, `high`, `no-band` or `not-weighed`.
    pub verdict: String,
    /// In words.
    pub says: String,
    /// The key of what it says: it is the same in every language.
    pub key: String,
    /// The row of the template or of the published number.
    pub source: String,
}

/// What a lot cost.
#[derive(Debug, Serialize, ToSchema)]
pub struct CostRead {
    /// The lot.
    pub lot: String,
    /// What all of it cost, in hundredths of the currency; nothing where a price is missing.
    pub cost_minor: Option<Number>,
    /// What a kilogram of it cost, split at the cutting table by what each piece sells for.
    pub per_kg_minor: Option<Number>,
    /// The same, split by weight alone: to compare.
    pub per_kg_by_weight_minor: Option<Number>,
    /// How it came to that, and what is missing.
    pub how: Vec<String>,
    /// The key of each.
    pub how_keys: Vec<String>,
}
