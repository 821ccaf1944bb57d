//! The words by which a name says that something is not in the food.

use crate::rows::RowId;
use crate::words::{Allergen, Species};
use std::collections::{BTreeMap, BTreeSet};

/// Words by language.
type Words = BTreeMap<String, Vec<String>>;

/// How a name says so.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct AbsenceRules {
    /// The row by which a food has its true name.
    pub row: Option<RowId>,
    /// Before what is not in it: `without`, `sans`.
    pub before: Words,
    /// Behind it: `free`.
    pub after: Words,
    /// Phrases that begin so and mean something else: `free range`.
    pub not_after: Words,
    /// Between the things that one such word speaks of: `or`, `ni`.
    pub between: Words,
    /// Foods named by an animal that are no meat: `goat cheese`.
    pub not_meat: Words,
    /// Other words for allergens: `dairy`, `gluten`.
    pub groups: Vec<AbsenceGroup>,
    /// Words that say by themselves that things are not in it: `vegan`.
    pub whole: Vec<AbsenceGroup>,
}

/// Words, and what they speak of.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct AbsenceGroup {
    /// The words.
    pub words: Words,
    /// The allergens.
    pub allergens: BTreeSet<Allergen>,
    /// The animals.
    pub species: Vec<Species>,
}

impl AbsenceGroup {
    /// The one of its words that stands in a name.
    pub fn is_in(&self, name: &[String], language: &str) -> Option<&str> {
        let mut words = self.words.get(language).into_iter().flatten();
        let word = words.find(|word| crate::duties::names::says(name, word));
        word.map(String::as_str)
    }
}
