//! The animals that went in, said where the name does not tell: lard in a duck confit.

use super::matching::find;
use super::{Food, StatementRules};
use crate::ingredients::{Ingredient, Nature};
use crate::rows::RowId;
use crate::says::said;
use crate::words::Species;
use std::collections::{BTreeMap, BTreeSet};

/// How an animal is named.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SpeciesName {
    /// The animal.
    pub species: Species,
    /// Its meat, by language: `pork`.
    pub meat: BTreeMap<String, String>,
    /// Its fat, by language: `pork fat`.
    pub fat: BTreeMap<String, String>,
    /// Words in a name that tell the animal already, by language: `pork`, `pig`, `ham`.
    pub told_by: BTreeMap<String, Vec<String>>,
}

/// How animals are named in a place.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct SpeciesRules {
    /// The row that asks for the animal's name, if there is one.
    pub row: Option<RowId>,
    /// The row that asks for a fat by its animal, if there is one.
    pub fat_row: Option<RowId>,
    /// The row by which a name has to tell such an animal, if there is one.
    pub in_name: Option<RowId>,
    /// Animals that are told wherever the name does not tell them: also one that the food is of.
    pub always: Vec<Species>,
    /// `contains {}`, by language.
    pub note: BTreeMap<String, String>,
    /// The names.
    pub names: Vec<SpeciesName>,
}

impl SpeciesRules {
    fn of(&self, species: Species) -> Option<&SpeciesName> {
        self.names.iter().find(|name| name.species == species)
    }

    /// The meat of an animal, by language, where it is named.
    pub fn meat(&self, species: Species) -> Option<&BTreeMap<String, String>> {
        self.of(species).map(|known| &known.meat)
    }

    /// Does a name say which animal it is?
    pub fn tells(&self, name: &str, species: Species, language: &str) -> bool {
        let words = self.of(species).map(|known| &known.told_by);
        let words = words.and_then(|words| words.get(language).or_else(|| words.get("en")));
        words.is_some_and(|words| !find(name, words, &[]).is_empty())
    }

    /// The fat of an animal, where a fat's own name does not tell it: `pork fat` for lard.
    pub fn fat_of<'a>(&'a self, part: &Ingredient, name: &str, language: &str) -> Option<&'a str> {
        let species = part.species.filter(|_| part.nature == Nature::Fat)?;
        let known = self.of(species)?;
        let fat = said(&known.fat, language);
        let told = self.tells(name, species, language);
        (!told && !fat.is_empty()).then_some(fat)
    }
}

/// The animals that went in besides the one that the name speaks of.
pub fn unsaid(rules: &StatementRules, food: &Food, language: &str) -> BTreeSet<Species> {
    let mut all = food.other_species.clone();
    gather(&food.parts, &mut all);
    all.extend(food.species);
    all.retain(|species| {
        let is_own = food.species == Some(*species) && !rules.species.always.contains(species);
        !is_own && !rules.species.tells(&food.name, *species, language)
    });
    all
}

/// `contains pork`, if an animal went in that the name does not tell.
pub fn note(rules: &StatementRules, food: &Food, language: &str) -> Option<String> {
    let unsaid = unsaid(rules, food, language);
    let meats: Vec<&str> = unsaid
        .iter()
        .map(|species| match rules.species.of(*species) {
            Some(name) => said(&name.meat, language),
            None => species.as_str(),
        })
        .collect();
    let note = said(&rules.species.note, language);
    (!meats.is_empty() && !note.is_empty()).then(|| note.replace("{}", &meats.join(", ")))
}

fn gather(parts: &[Ingredient], into: &mut BTreeSet<Species>) {
    for part in parts {
        into.extend(part.species);
        gather(&part.parts, into);
    }
}
