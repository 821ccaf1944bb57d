//! Which allergens a place wants declared, and by what name.

use super::says::StatementSays;
use super::{Food, FoodWords, StatementRules, UpTo, WordsByLanguage};
use crate::rows::{Finding, RowId, Rows};
use crate::says::said;
use crate::words::Allergen;
use std::collections::{BTreeMap, BTreeSet};

/// How one allergen is named in a place. An allergen without a name does not count as one there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AllergenName {
    /// The allergen.
    pub allergen: Allergen,
    /// Where it comes from.
    pub row: RowId,
    /// Its name by language, as it is printed.
    pub name: BTreeMap<String, String>,
    /// Words in an ingredient's name that say it as well, by language.
    pub also: BTreeMap<String, Vec<String>>,
    /// Phrases in which such a word means something else, by language: `coconut milk`.
    pub but_not: BTreeMap<String, Vec<String>>,
    /// For a collective word (`fish`) where the law wants the name: the row that wants it.
    pub collective: Option<RowId>,
}

impl AllergenName {
    /// The words that say it in a language: its name and the others.
    pub fn words(&self, language: &str) -> Vec<String> {
        let mut words = vec![said(&self.name, language).to_owned()];
        let also = self.also.get(language).or_else(|| self.also.get("en"));
        words.extend(also.into_iter().flatten().cloned());
        words
    }

    /// The phrases in which they mean something else.
    pub fn but_not(&self, language: &str) -> &[String] {
        self.but_not.get(language).map_or(&[], Vec::as_slice)
    }
}

/// The allergens of a place.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct AllergenRules {
    /// The names, in the order in which they are printed.
    pub names: Vec<AllergenName>,
    /// Sulphites up to this much in the finished food are not declared, in milligrams per kilogram.
    pub sulphites_undeclared: Option<UpTo>,
    /// The row that wants allergens emphasised in the list, if one does.
    pub emphasised: Option<RowId>,
    /// What is of an allergen and does not count as one here, and the row that says so: oil that is highly refined.
    pub exempt: Option<(RowId, WordsByLanguage)>,
    /// The words of plain foods that tell an allergen, alike in every place.
    pub food_words: FoodWords,
}

impl AllergenRules {
    /// How an allergen is named, if it is one here.
    pub fn name(&self, allergen: Allergen) -> Option<&AllergenName> {
        self.names.iter().find(|name| name.allergen == allergen)
    }
}

/// What has to be declared of a food, and what was found on the way.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Declared {
    /// The allergens that the place wants named.
    pub allergens: BTreeSet<Allergen>,
    /// What is to be known or mended.
    pub findings: Vec<Finding>,
}

/// What a place wants declared of a food.
pub fn declared(rules: &StatementRules, rows: &Rows, food: &Food) -> Declared {
    let law = &rules.allergens;
    let mut union = food.all_allergens();
    let mut findings = Vec::new();
    if let Some((name, limit)) = law
        .name(Allergen::Sulphites)
        .zip(law.sulphites_undeclared.as_ref())
    {
        let went_in = union.contains(&Allergen::Sulphites);
        match food.sulphites_ppm {
            Some(ppm) if limit.passes(ppm) => {
                union.remove(&Allergen::Sulphites);
            }
            Some(_) => {
                union.insert(Allergen::Sulphites);
            }
            None if went_in => findings.push(Finding::note(
                StatementSays::SulphitesUnknown {
                    most: limit.bound.value,
                },
                [name.row.clone()],
            )),
            None => {}
        }
    }
    union.retain(|allergen| law.name(*allergen).is_some());
    for name in &law.names {
        if let Some(row) = &name.collective
            && union.contains(&name.allergen)
        {
            let says = named_too_little(name.allergen);
            findings.push(Finding::against(rows, row, says));
        }
    }
    Declared {
        allergens: union,
        findings,
    }
}

fn named_too_little(allergen: Allergen) -> StatementSays {
    match allergen {
        Allergen::TreeNut => StatementSays::NameTheNut { allergen },
        Allergen::Crustacean => StatementSays::NameTheCrustacean { allergen },
        Allergen::Mollusc => StatementSays::NameTheMollusc { allergen },
        _ => StatementSays::NameTheFish { allergen },
    }
}

/// The names to print in a language, each once, in the order of the place.
pub fn printed<'a>(
    rules: &'a StatementRules,
    allergens: &BTreeSet<Allergen>,
    language: &str,
) -> Vec<&'a str> {
    let mut names: Vec<&str> = Vec::new();
    for name in &rules.allergens.names {
        let text = said(&name.name, language);
        if allergens.contains(&name.allergen) && !names.contains(&text) {
            names.push(text);
        }
    }
    names
}
