//! The food that a statement is about, and how it comes to the customer.

use crate::grams::Grams;
use crate::ingredients::{self, Ingredient};
use crate::measure::Percent;
use crate::words::{Allergen, Species};
use rust_decimal::Decimal;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// A food, as far as its statement goes.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Food {
    /// Its name in the language of the bench, to see which animals it speaks of: `Duck leg confit`.
    pub name: String,
    /// Its names by language, to see which ingredients they speak of.
    pub names: Arc<BTreeMap<String, String>>,
    /// What it is made of, heaviest first, as [`ingredients::of_step`] gives it.
    pub parts: Vec<Ingredient>,
    /// The union of allergens of the lot. Those of the parts are added.
    pub allergens: BTreeSet<Allergen>,
    /// Sulphites in the finished food, in milligrams per kilogram as sulphur dioxide, if known.
    pub sulphites_ppm: Option<Decimal>,
    /// Allergens that may have got in unasked: a voluntary word, never in the place of the duty.
    pub may_contain: BTreeSet<Allergen>,
    /// The animal that its name speaks of, if of one.
    pub species: Option<Species>,
    /// Other animals that went into the lot, where the parts don't tell.
    pub other_species: BTreeSet<Species>,
    /// The weight of the finished food, if it was weighed.
    pub finished: Option<Grams>,
    /// Water that was poured in, of the finished weight, where the record tells; else it is worked out of the
    /// parts.
    pub water: Option<Percent>,
    /// Its name says so already, or need not: it does not look like a cut, joint, slice or carcase.
    pub water_goes_unsaid: bool,
}

impl Food {
    /// Every allergen that went in. Adding something never takes one away.
    pub fn all_allergens(&self) -> BTreeSet<Allergen> {
        let mut all = ingredients::allergens(&self.parts);
        all.extend(&self.allergens);
        all
    }

    /// What went in, by weight.
    pub fn ingoing(&self) -> Grams {
        self.parts.iter().map(|part| part.grams).sum()
    }
}

/// How a food comes to the customer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Sale {
    /// Packed somewhere else than where it is sold.
    PackedElsewhere,
    /// Packed where it is sold, before it is asked for.
    PackedHere,
    /// Wrapped where it is sold, after it was asked for.
    WrappedToOrder,
    /// Eaten where it is made, or handed over with a meal.
    Served,
}

impl Sale {
    /// Every one, with its spelling.
    pub const ALL: [(Sale, &'static str); 4] = [
        (Sale::PackedElsewhere, "packed-elsewhere"),
        (Sale::PackedHere, "packed-here"),
        (Sale::WrappedToOrder, "wrapped-to-order"),
        (Sale::Served, "served"),
    ];

    /// The one so spelt.
    pub fn parse(text: &str) -> Option<Sale> {
        let found = Sale::ALL.iter().find(|(_, spelt)| *spelt == text);
        found.map(|(sale, _)| *sale)
    }
}
