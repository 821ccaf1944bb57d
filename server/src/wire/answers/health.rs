//! How the service is, as it is answered.

use super::copies::CopiesHealth;
use crate::wire::Weight;
use serde::Serialize;
use utoipa::ToSchema;

/// How the service is.
#[derive(Debug, Serialize, ToSchema)]
pub struct HealthRead {
    /// `ok`, or what keeps it from taking deeds.
    pub status: String,
    /// The program's version.
    pub version: String,
    /// Which engine the record is in.
    pub database: String,
    /// What time the service thinks it is.
    pub now: String,
    /// How it stands with the copies of the record. Late or failed ones keep it from nothing.
    pub copies: CopiesHealth,
    /// Why no deed is taken, if none is.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why: Option<String>,
}

impl Default for Weight {
    fn default() -> Weight {
        Weight(domain::grams::Grams::ZERO)
    }
}
