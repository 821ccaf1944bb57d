//! The law of a place: every subject's rules together. The roof; its ground is [`crate::rows`].
//!
//! The files are read elsewhere; here is what they mean.

use crate::rows::{Bound, Rows};
use crate::words::Profile;
use crate::{ask, cure, dates, duties, heat, stability, statement, trichinae};
use std::collections::BTreeMap;

/// The rules of one place.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Law {
    /// Every row of its files.
    pub rows: Rows,
    /// How long food keeps.
    pub dates: dates::ShelfLifeRules,
    /// When food needs no time and temperature control.
    pub stability: stability::StabilityRules,
    /// Curing salts: limits, methods, claims.
    pub cures: cure::CureRules,
    /// Cooking, holding and cooling.
    pub heat: heat::HeatRules,
    /// Trichinae in pork that is eaten uncooked.
    pub trichinae: trichinae::TrichinaeRules,
    /// Ingredient lists, allergens and the words of dates.
    pub statements: statement::StatementRules,
    /// Names with a standard, records, batches.
    pub duties: duties::DutyRules,
    /// The words by which foods are known, alike in every place: no law, but what some of it is asked by.
    pub words: ask::AskRules,
}

impl Law {
    /// Every number that a house may tighten, of every subject.
    pub fn bounds_mut(&mut self) -> impl Iterator<Item = &mut Bound> {
        let first = self.dates.bounds_mut().into_iter();
        first
            .chain(self.stability.bounds_mut())
            .chain(self.cures.bounds_mut())
            .chain(self.heat.bounds_mut())
            .chain(self.trichinae.bounds_mut())
            .chain(self.statements.bounds_mut())
            .chain(self.duties.bounds_mut())
    }
}

/// The rules of every place that there are files for.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Laws {
    /// By place.
    pub places: BTreeMap<Profile, Law>,
}

impl Laws {
    /// The rules of a place.
    ///
    /// # Panics
    /// Never with the shipped files: there is one for every word of [`Profile`].
    pub fn of(&self, place: Profile) -> &Law {
        &self.places[&place]
    }
}
