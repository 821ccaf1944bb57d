//! The law of a place, as it is answered.

use serde::Serialize;
use utoipa::ToSchema;

/// A row of the law.
#[derive(Debug, Serialize, ToSchema)]
pub struct RowRead {
    /// Its name.
    pub id: String,
    /// What it says, in our own words.
    pub says: String,
    /// Other rows of the facts that say the same, confirm it or complete it.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub also: Vec<String>,
    /// The law's own number.
    pub cite: Option<String>,
    /// How far it is confirmed.
    pub mark: String,
    /// May it stop somebody, or does it only warn?
    pub confirmed: bool,
    /// Where it was read.
    pub sources: Vec<String>,
}

/// The law of a place.
#[derive(Debug, Serialize, ToSchema)]
pub struct LawRead {
    /// The place.
    pub place: String,
    /// Its rows, by name.
    pub rows: Vec<RowRead>,
}
