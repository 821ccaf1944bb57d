//! A page of a list, as it is answered.

use super::{AnimalRead, LotBrief};
use serde::Serialize;
use utoipa::ToSchema;

/// A page of lots.
#[derive(Debug, Serialize, ToSchema)]
pub struct LotsPage {
    /// The lots, newest first.
    pub lots: Vec<LotBrief>,
    /// Give this as `after` for the next page.
    pub next: Option<String>,
}

/// Animals found.
#[derive(Debug, Serialize, ToSchema)]
pub struct AnimalsPage {
    /// The animals, newest kill first.
    pub animals: Vec<AnimalRead>,
    /// The `after` of the next page, if there is one.
    pub next: Option<String>,
}
