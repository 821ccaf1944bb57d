//! Words in a name, as the file has them.

use super::each;
use crate::Bad;
use crate::entry::{BoundEntry, known};
use domain::duties::names::{Demand, NameRule, NameRules, Part, PlaceNames};
use domain::rows::Rows;
use domain::words::Species;
use schemars::JsonSchema;
use serde::Deserialize;

/// Names with a rule.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct NamesEntry {
    /// Words that have one.
    #[serde(default)]
    words: Vec<WordEntry>,
    /// The row by which what is packed in brine or vinegar says so.
    packed_in: Option<String>,
    /// Names of places.
    places: Option<PlacesEntry>,
}

/// A word that has a rule.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct WordEntry {
    /// Where it stands.
    row: String,
    /// The words or phrases, in lower case; any of them calls the rule up.
    words: Vec<String>,
    /// Phrases with which the name says so itself, and the rule does not apply.
    #[serde(default)]
    qualified: Vec<String>,
    /// What the word demands.
    demand: DemandEntry,
}

/// What a word demands.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
enum DemandEntry {
    /// These parts of these animals only.
    CutOf {
        /// The animals, as `pig`.
        species: Vec<String>,
        /// The parts, as `hind-leg`.
        parts: Vec<String>,
    },
    /// No nitrite, no nitrate, not salted to keep.
    NotCured,
    /// A core temperature, in degrees Fahrenheit.
    Heated {
        /// Of the meat of these animals, as `pig`.
        species: Vec<String>,
        /// Of a cut.
        cut: BoundEntry,
        /// Of a loaf.
        loaf: BoundEntry,
    },
    /// Both bones of the shank are out.
    ShankBonesOut,
    /// Bones that remain are named with one of these words.
    NamesBones(Vec<String>),
    /// Made there, or one of these words stands beside it.
    MadeThere(Vec<String>),
    /// The heat did more than kill trichinae.
    MoreThanTrichinae,
    /// Cooked before it is sold.
    CookedBeforeSale,
    /// Other fat is said, and is no more than so much of the whole, in percent.
    SaysFatAdded {
        /// The most.
        most: BoundEntry,
    },
}

/// Names of places in a product's name.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct PlacesEntry {
    /// Where it stands.
    row: String,
    /// The word that has to stand beside: any of these.
    beside: Vec<String>,
    /// Names that are free.
    generic: Vec<String>,
}

impl NamesEntry {
    pub fn names(self, rows: &Rows) -> Result<NameRules, Bad> {
        let places = |entry: PlacesEntry| {
            Ok::<_, Bad>(PlaceNames {
                row: known(rows, &entry.row)?,
                beside: entry.beside,
                generic: entry.generic,
            })
        };
        Ok(NameRules {
            words: each(self.words, |it| it.rule(rows))?,
            packed_in: self.packed_in.map(|row| known(rows, &row)).transpose()?,
            places: self.places.map(places).transpose()?,
        })
    }
}

impl WordEntry {
    fn rule(self, rows: &Rows) -> Result<NameRule, Bad> {
        Ok(NameRule {
            row: known(rows, &self.row)?,
            words: self.words,
            qualified: self.qualified,
            demand: match self.demand {
                DemandEntry::CutOf { species, parts } => Demand::CutOf {
                    species: each(species, |it| word!(Species, &it))?,
                    parts: each(parts, |it| word!(Part, &it))?,
                },
                DemandEntry::NotCured => Demand::NotCured,
                DemandEntry::Heated { species, cut, loaf } => Demand::Heated {
                    species: each(species, |it| word!(Species, &it))?,
                    cut: cut.bound(rows)?,
                    loaf: loaf.bound(rows)?,
                },
                DemandEntry::ShankBonesOut => Demand::ShankBonesOut,
                DemandEntry::NamesBones(words) => Demand::NamesBones(words),
                DemandEntry::MadeThere(words) => Demand::MadeThere(words),
                DemandEntry::MoreThanTrichinae => Demand::MoreThanTrichinae,
                DemandEntry::CookedBeforeSale => Demand::CookedBeforeSale,
                DemandEntry::SaysFatAdded { most } => Demand::SaysFatAdded {
                    most: most.bound(rows)?,
                },
            },
        })
    }
}
