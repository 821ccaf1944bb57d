//! A page of a list, as it is answered.

use super::{AnimalRead, LotBrief, shown_id};
use crate::read::{animals, find};
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

impl LotsPage {
    /// A page of lots.
    pub fn of(found: &find::Found) -> LotsPage {
        let lots = found.lots.iter();
        LotsPage {
            lots: lots.map(|lot| LotBrief::of(lot, found.zone)).collect(),
            next: found.next(),
        }
    }
}

impl AnimalsPage {
    /// A page of animals.
    pub fn of(found: &animals::Found) -> AnimalsPage {
        let last = found.animals.last().filter(|_| found.more);
        AnimalsPage {
            animals: found.animals.iter().map(AnimalRead::of).collect(),
            next: last.map(|last| shown_id(&last.animal.uid)),
        }
    }
}
