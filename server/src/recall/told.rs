//! What a deed told in fields of its request that a report shows; the others are passed over.

use crate::app::damaged;
use crate::error::Result;
use serde::Deserialize;

/// The fields.
#[derive(Debug, Default, Deserialize)]
pub(super) struct Told {
    /// To whom.
    pub to: Option<String>,
    /// Why.
    pub why: Option<String>,
    /// On which paper.
    pub document: Option<String>,
    /// Who saw it.
    pub witness: Option<String>,
    /// How it was disposed of.
    pub what: Option<String>,
}

impl Told {
    /// From the request as the record keeps it.
    pub fn read(request: &str) -> Result<Told> {
        serde_json::from_str(request).map_err(|error| damaged(&error))
    }
}
