//! A source animal, as it is answered.

use crate::wire::Day;
use serde::Serialize;
use utoipa::ToSchema;

/// A source animal.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct AnimalRead {
    /// Its id.
    pub id: String,
    /// The farm's code.
    pub farm: String,
    /// Its species.
    pub species: String,
    /// The day it was killed.
    pub killed_on: Day,
    /// The abattoir's establishment number.
    pub abattoir: Option<String>,
    /// The abattoir's carcass number.
    pub carcass: Option<String>,
    /// Ear tag or tattoo.
    pub tag: Option<String>,
    /// How many.
    pub head: i32,
    /// The lots received of it.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub lots: Vec<String>,
}
