//! Any deed on record, as it is answered.

use serde::Serialize;
use utoipa::ToSchema;

/// Any deed on record.
#[derive(Debug, Serialize, ToSchema)]
pub struct DeedRead {
    /// Its id.
    pub id: String,
    /// What it was.
    pub kind: String,
    /// When it ended.
    pub at: String,
    /// When it began.
    pub began_at: Option<String>,
    /// When the record took it.
    pub recorded_at: String,
    /// Entered later than it happened.
    pub late: bool,
    /// Who.
    pub by: String,
    /// Where.
    pub place: Option<String>,
    /// A word about it.
    pub note: Option<String>,
    /// What was asked.
    #[schema(value_type = Object)]
    pub asked: serde_json::Value,
    /// What was answered.
    #[schema(value_type = Object)]
    pub answered: serde_json::Value,
    /// What voided it.
    pub voided: Option<VoidedRead>,
    /// What corrected it, the oldest first.
    pub corrections: Vec<String>,
}

/// What voided a deed.
#[derive(Debug, Serialize, ToSchema)]
pub struct VoidedRead {
    /// The void's id.
    pub id: String,
    /// Why.
    pub why: String,
    /// Who.
    pub by: String,
    /// When.
    pub at: String,
}
