//! How long food keeps under the law of a place: what the profile's file says.

use super::keep::Count;
use super::limit::DayLimit;
use super::mince::MinceRules;
use crate::measure::Temperature;
use crate::product::Product;
use crate::rows::{Bound, RowId};
use crate::words::StepKind;

/// The rules of a place. A rule that a place does not have is `None`: then only the house's own rule applies.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct ShelfLifeRules {
    /// The most days of some food from its making: all that fit hold. Ready-to-eat food held cold is one.
    pub limits: Vec<DayLimit>,
    /// Ready-to-eat food that needs time and temperature control, bought in: from the day it is opened.
    pub opened: Option<Marked>,
    /// The supplier's own date.
    pub supplier: Option<Supplier>,
    /// A mix keeps the earliest date of its parts.
    pub mix: Option<RowId>,
    /// Steps after which the date is counted again, and why they may.
    pub resets: Option<Resets>,
    /// Freezing stops the clock and never resets it.
    pub freezing: Option<RowId>,
    /// Packs without air.
    pub vacuum: Option<Vacuum>,
    /// What mince is made of, and that it is not frozen again.
    pub mince: Option<MinceRules>,
    /// Raw meat is dated by the house.
    pub raw: Option<RowId>,
    /// A house-made cured piece has no exemption of a plant.
    pub house_cured: Option<RowId>,
    /// What shows that a cured piece needs no time and temperature control.
    pub stable: Option<RowId>,
}

/// So many days from an event.
#[derive(Debug, Clone, PartialEq)]
pub struct Marked {
    /// At most so many days.
    pub days: Bound,
    /// Is the day of the event day 1?
    pub day_one_counts: bool,
    /// Where that is said.
    pub counting: RowId,
}

impl Marked {
    /// The days as they are counted.
    pub fn count(&self) -> Count {
        Count {
            days: self.days.whole(),
            day_one_counts: self.day_one_counts,
        }
    }
}

/// When a supplier's date caps ours.
#[derive(Debug, Clone, PartialEq)]
pub struct Supplier {
    /// Always, or only where it was set for safety (`us-D5`, where states differ).
    pub always: bool,
    /// Where that is said.
    pub row: RowId,
}

/// Steps after which a date is counted again.
#[derive(Debug, Clone, PartialEq)]
pub struct Resets {
    /// Which.
    pub steps: Vec<StepKind>,
    /// Where that is said.
    pub row: RowId,
}

/// Packs without air.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Vacuum {
    /// The most days from packing: the first that fits holds.
    pub limits: Vec<DayLimit>,
    /// How cold they are kept, where no approval says otherwise.
    pub cold: Option<Cold>,
    /// House-cured and cooked food needs an approval on file for this.
    pub approval: Option<RowId>,
    /// A written plan is needed for any of it.
    pub plan: Option<RowId>,
    /// Raw fish is packed so only where it is frozen before, during and after.
    pub fish: Option<RowId>,
}

impl Vacuum {
    /// The most days from packing that a product's label tells.
    pub fn days_for(&self, product: &Product) -> Option<u32> {
        let mut limits = self.limits.iter();
        let limit = limits.find(|limit| limit.of.is_of(product))?;
        Some(limit.keeps.days.whole())
    }
}

/// How cold something is kept.
#[derive(Debug, Clone, PartialEq)]
pub struct Cold {
    /// At most so warm.
    pub degrees: Temperature,
    /// Where that is said.
    pub row: RowId,
}

impl ShelfLifeRules {
    /// Every number that a house may tighten.
    pub fn bounds_mut(&mut self) -> Vec<&mut Bound> {
        let vacuum = self.vacuum.iter_mut().flat_map(|vacuum| &mut vacuum.limits);
        let limits = self.limits.iter_mut().chain(vacuum);
        let opened = self.opened.iter_mut().map(|opened| &mut opened.days);
        limits
            .map(|limit| &mut limit.keeps.days)
            .chain(opened)
            .chain(self.mince.iter_mut().flat_map(MinceRules::bounds_mut))
            .collect()
    }
}
