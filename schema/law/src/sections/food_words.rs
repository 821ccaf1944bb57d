//! How `food-words.json` is written: the words of plain foods that tell an allergen.

use crate::Bad;
use crate::entry::known;
use crate::file::Subject;
use domain::rows::Rows;
use domain::statement::{FoodOf, FoodWords, WordsByLanguage};
use domain::words::Allergen;
use schemars::JsonSchema;
use serde::Deserialize;
use std::collections::BTreeMap;

/// The words of plain foods that tell an allergen. None of it is law: what counts as an allergen says each place.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct FoodWordsEntry {
    /// The row that says what foods are made of.
    row: String,
    /// Words that deny the word after them: `without`.
    denied_before: BTreeMap<String, Vec<String>>,
    /// Words that deny the word before them: `free`.
    denied_after: BTreeMap<String, Vec<String>>,
    /// Words from which on a text says what may be in it unasked.
    perhaps: BTreeMap<String, Vec<String>>,
    /// The foods, by what they are of.
    foods: Vec<FoodEntry>,
}

/// The foods that are of one allergen.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct FoodEntry {
    /// The allergen's word.
    allergen: String,
    /// Words that tell it wherever they stand, by language; a plural in -s, -es or -x is found as well.
    words: BTreeMap<String, Vec<String>>,
    /// Words that tell it where they are an ingredient by themselves.
    #[serde(default)]
    alone: BTreeMap<String, Vec<String>>,
    /// Phrases in which such a word means something else.
    #[serde(default)]
    but_not: BTreeMap<String, Vec<String>>,
    /// Words that stand beside one for a food that is made without it.
    #[serde(default)]
    made_without: BTreeMap<String, Vec<String>>,
}

impl Subject for FoodWordsEntry {
    type Rules = FoodWords;

    fn rules(self, rows: &Rows) -> Result<FoodWords, Bad> {
        let foods = self.foods.into_iter().map(FoodEntry::food);
        Ok(FoodWords {
            row: Some(known(rows, &self.row)?),
            foods: foods.collect::<Result<_, Bad>>()?,
            denied_before: both(self.denied_before)?,
            denied_after: both(self.denied_after)?,
            perhaps: both(self.perhaps)?,
        })
    }
}

impl FoodEntry {
    fn food(self) -> Result<FoodOf, Bad> {
        let allergen = Allergen::parse(&self.allergen);
        let unknown = || Bad::new(format!("{:?} is no word of ours here", self.allergen));
        Ok(FoodOf {
            allergen: allergen.ok_or_else(unknown)?,
            words: both(self.words)?,
            alone: self.alone,
            but_not: self.but_not,
            made_without: self.made_without,
        })
    }
}

/// Words in one language alone would hide an allergen in the other.
fn both(words: WordsByLanguage) -> Result<WordsByLanguage, Bad> {
    match ["en", "fr"].iter().find(|tag| !words.contains_key(**tag)) {
        Some(tag) => Err(Bad::new(format!("words are missing in {tag}"))),
        None => Ok(words),
    }
}
