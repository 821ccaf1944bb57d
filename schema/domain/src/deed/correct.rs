//! A wrong fact about a source is corrected by a new fact, at any time; weights and codes stay.

use super::receive::{Animal, Bought};
use super::says::CorrectSays;
use crate::code::HouseCode;
use crate::refusal::{Refusal, Result};
use crate::words::{Side, Species};
use chrono::NaiveDate;

/// What is now known to be otherwise of an animal. What is not named stays.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
#[allow(
    missing_docs,
    reason = "the fields of `Animal`, each only if it changes"
)]
pub struct AnimalChange {
    pub farm: Option<HouseCode>,
    pub species: Option<Species>,
    pub killed_on: Option<NaiveDate>,
    pub abattoir: Option<String>,
    pub carcass: Option<String>,
    pub side: Option<Side>,
    pub tag: Option<String>,
    pub head: Option<u32>,
}

impl AnimalChange {
    /// The animal as it is now known, and which side of it the lot is.
    ///
    /// # Errors
    /// Nothing is changed, or the corrected animal cannot be.
    pub fn apply(
        &self,
        animal: &Animal,
        side: Option<Side>,
        received: NaiveDate,
    ) -> Result<(Animal, Option<Side>)> {
        let corrected = Animal {
            farm: self.farm.clone().unwrap_or_else(|| animal.farm.clone()),
            species: self.species.unwrap_or(animal.species),
            killed_on: self.killed_on.unwrap_or(animal.killed_on),
            abattoir: self.abattoir.clone().or_else(|| animal.abattoir.clone()),
            carcass: self.carcass.clone().or_else(|| animal.carcass.clone()),
            tag: self.tag.clone().or_else(|| animal.tag.clone()),
            head: self.head.unwrap_or(animal.head),
        };
        let corrected_side = self.side.or(side);
        if corrected == *animal && corrected_side == side {
            return Err(Refusal::cannot_be("animal", CorrectSays::AsKnown));
        }
        corrected.can_be(received)?;
        Ok((corrected, corrected_side))
    }
}

/// A bought-in lot as it is now known: what the change names, else what was known; or that it has no last day of its
/// maker.
///
/// # Errors
/// Nothing is changed.
pub fn bought(change: &Bought, no_use_by: bool, known: &Bought) -> Result<Bought> {
    let corrected = Bought {
        supplier: change.supplier.clone().or_else(|| known.supplier.clone()),
        supplier_lot: change
            .supplier_lot
            .clone()
            .or_else(|| known.supplier_lot.clone()),
        packed_on: change.packed_on.or(known.packed_on),
        use_by: change.use_by.or(known.use_by.filter(|_| !no_use_by)),
        gtin: change.gtin.clone().or_else(|| known.gtin.clone()),
    };
    if corrected == *known {
        return Err(Refusal::cannot_be("bought", CorrectSays::AsKnown));
    }
    Ok(corrected)
}
