//! A name that says something is not in it, or whose meat it is, against what is in it: `dairy-free` with
//! milk, `beef burger` without beef.

use super::{NameFacts, NamingSays};
use crate::duties::names::{Part, begins, words_of};
use crate::law::Law;
use crate::rows::{Finding, Gravity, RowId};
use crate::says::{Arg, Texts};
use crate::statement::{AbsenceRules, AllergenName};
use crate::words::Species;
use std::collections::{BTreeMap, BTreeSet};

/// What stands against the names in that respect. What the record shows to be in it no name denies.
pub fn check(facts: &NameFacts<'_>, law: &Law) -> Vec<Finding> {
    let mut found: Vec<Finding> = Vec::new();
    for (language, name) in facts.product.label_names().iter() {
        let words = words_of(name);
        let rules = &law.statements.absence;
        let mut of_name = denied(facts, law, rules, &words, language);
        of_name.extend(other_animal(facts, law, &words, language));
        of_name.extend(unsaid_animal(facts, law, name, language));
        for finding in of_name {
            if !found.iter().any(|known| known.says == finding.says) {
                found.push(finding);
            }
        }
    }
    found
}

/// Does a phrase stand at that place?
fn stands(words: &[String], at: usize, phrase: &str) -> Option<usize> {
    begins(words.get(at..)?, phrase)
}

fn of_language<'a>(
    all: &'a BTreeMap<String, Vec<String>>,
    language: &str,
) -> impl Iterator<Item = &'a str> + Clone {
    all.get(language).into_iter().flatten().map(String::as_str)
}

/// Where a name says that what is called so is not in it: `milk-free`, `without milk or egg`.
fn says_without(
    rules: &AbsenceRules,
    words: &[String],
    language: &str,
    is_meant: impl Fn(usize) -> Option<usize>,
    is_named: impl Fn(usize) -> Option<usize>,
) -> bool {
    let longest = |at: usize, all: &BTreeMap<String, Vec<String>>| {
        let found = of_language(all, language).filter_map(|phrase| stands(words, at, phrase));
        found.max()
    };
    for at in 0..words.len() {
        if let Some(length) = is_meant(at)
            && longest(at + length, &rules.after).is_some()
            && longest(at + length, &rules.not_after).is_none()
        {
            return true;
        }
        let Some(length) = longest(at, &rules.before) else {
            continue;
        };
        let mut next = at + length;
        while next < words.len() {
            if is_meant(next).is_some() {
                return true;
            }
            match longest(next, &rules.between).or_else(|| is_named(next)) {
                Some(length) => next += length,
                None => break,
            }
        }
    }
    false
}

fn denied(
    facts: &NameFacts<'_>,
    law: &Law,
    rules: &AbsenceRules,
    words: &[String],
    language: &str,
) -> Vec<Finding> {
    let names = &law.statements.allergens.names;
    let called = |of: &AllergenName, at: usize| {
        let mut all = of.words(language);
        for group in &rules.groups {
            if group.allergens.contains(&of.allergen) {
                all.extend(of_language(&group.words, language).map(str::to_owned));
            }
        }
        let found = all.iter().filter_map(|phrase| stands(words, at, phrase));
        found.max()
    };
    let any = |at: usize| names.iter().filter_map(|of| called(of, at)).max();
    let mut found = Vec::new();
    let present = names
        .iter()
        .filter(|of| facts.allergens.contains(&of.allergen));
    for name in present {
        let of = name.allergen;
        let whole = rules.whole.iter().find_map(|whole| {
            let word = whole.is_in(words, language)?;
            whole.allergens.contains(&of).then_some(word)
        });
        if whole.is_some() || says_without(rules, words, language, |at| called(name, at), any) {
            let says = NamingSays::Denies { what: of.into() };
            found.push(Finding::new(Gravity::Refuse, says, [name.row.clone()]));
        }
    }
    let row: Option<RowId> = rules.row.clone();
    for whole in &rules.whole {
        let Some(word) = whole.is_in(words, language) else {
            continue;
        };
        let meat = facts.species.iter().find(|of| whole.species.contains(of));
        if let Some(species) = meat {
            let says = NamingSays::DeniesAnimal {
                word: word.to_owned(),
                what: meat_of(law, *species),
            };
            found.push(Finding::new(Gravity::Refuse, says, row.clone()));
        }
    }
    found
}

/// Meat that a name speaks of, of animals of which there is none in it: of which the record shows that, no name says it,
/// whoever read the row.
fn other_animal(
    facts: &NameFacts<'_>,
    law: &Law,
    words: &[String],
    language: &str,
) -> Option<Finding> {
    let rules = &law.statements.species;
    let row = law.statements.absence.row.as_ref();
    let row = row.filter(|_| !facts.species.is_empty())?;
    let others = &law.statements.absence.not_meat;
    let is_other = |at: usize, length: usize| {
        let mut all = of_language(others, language);
        // A word of the phrase is enough to be in it: `goat` in `goat cheese`.
        all.any(|phrase| {
            (0..=at).any(|from| {
                stands(words, from, phrase).is_some_and(|whole| from + whole >= at + length)
            })
        })
    };
    let tells = |species: Species| {
        let meat = rules.meat(species).and_then(|meat| meat.get(language));
        meat.is_some_and(|meat| {
            (0..words.len()).any(|at| stands(words, at, meat).is_some_and(|of| !is_other(at, of)))
        })
    };
    let named = Species::ALL.iter().copied().filter(|of| tells(*of));
    let named: Vec<Species> = named.collect();
    if named.is_empty() {
        return None;
    }
    let absent = named.iter().filter(|of| !facts.species.contains(of));
    let absent: Vec<Arg> = absent.map(|of| meat_of(law, *of)).collect();
    // A list knows one animal of a food; the record knows them all.
    let some_are = absent.len() < named.len();
    if absent.is_empty() || some_are && !facts.of_record {
        return not_alone(facts, law, &named, row);
    }
    let says = NamingSays::OtherAnimal {
        named: Arg::All(absent),
        is: Arg::All(facts.species.iter().map(|of| meat_of(law, *of)).collect()),
    };
    // It may be in what nobody has told of.
    let gravity = match facts.no_recipe || facts.untold(law).next().is_some() {
        true => Gravity::Warn,
        false => Gravity::Refuse,
    };
    Some(Finding::new(gravity, says, [row.clone()]))
}

/// Meat of other animals than those that a name speaks of: a word of warning, for the label tells them beside it.
fn not_alone(facts: &NameFacts<'_>, law: &Law, named: &[Species], row: &RowId) -> Option<Finding> {
    let meat = facts.parts.iter().flatten();
    let meat = meat.filter(|(_, part)| *part != Part::Other);
    let others: BTreeSet<Species> = meat
        .map(|(species, _)| *species)
        .filter(|species| !named.contains(species))
        .collect();
    let says = NamingSays::NotAlone {
        named: Arg::All(named.iter().map(|of| meat_of(law, *of)).collect()),
        others: Arg::All(others.iter().map(|of| meat_of(law, *of)).collect()),
    };
    (!others.is_empty()).then(|| Finding::new(Gravity::Warn, says, [row.clone()]))
}

/// An animal that a name has to tell, and does not.
fn unsaid_animal(facts: &NameFacts<'_>, law: &Law, name: &str, language: &str) -> Option<Finding> {
    let rules = &law.statements.species;
    let row = rules.in_name.as_ref()?;
    let mut always = rules.always.iter().filter(|of| facts.species.contains(of));
    let silent = always.find(|of| !rules.tells(name, **of, language))?;
    let says = NamingSays::SayAnimal {
        what: meat_of(law, *silent),
    };
    Some(Finding::against(&law.rows, row, says))
}

/// The word for an animal's meat, in the language of whoever reads it.
fn meat_of(law: &Law, species: Species) -> Arg {
    match law.statements.species.meat(species) {
        Some(meat) => Arg::from(Texts::new(meat.clone())),
        None => Arg::from(species),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::product::Product;
    use crate::statement::{AbsenceGroup, SpeciesName, SpeciesRules};
    use crate::words::Allergen;
    use std::sync::Arc;

    fn map(words: &[&str]) -> BTreeMap<String, Vec<String>> {
        let words = words.iter().map(ToString::to_string).collect();
        BTreeMap::from([("en".to_owned(), words)])
    }

    fn one(word: &str) -> BTreeMap<String, String> {
        BTreeMap::from([("en".to_owned(), word.to_owned())])
    }

    fn law() -> Law {
        let mut law = Law::default();
        let allergen = |allergen, name: &str| AllergenName {
            allergen,
            row: RowId::new("us-A1"),
            name: one(name),
            also: BTreeMap::new(),
            but_not: BTreeMap::new(),
            collective: None,
        };
        law.statements.allergens.names = vec![
            allergen(Allergen::Milk, "milk"),
            allergen(Allergen::Egg, "egg"),
            allergen(Allergen::Wheat, "wheat"),
        ];
        let animal = |species, meat: &str| SpeciesName {
            species,
            meat: one(meat),
            fat: one(meat),
            told_by: map(&[meat]),
        };
        law.statements.species = SpeciesRules {
            row: Some(RowId::new("us-I7")),
            in_name: Some(RowId::new("us-I7")),
            always: vec![Species::Horse],
            names: vec![
                animal(Species::Pig, "pork"),
                animal(Species::Cattle, "beef"),
                animal(Species::Goat, "goat"),
                animal(Species::Horse, "horse"),
            ],
            ..SpeciesRules::default()
        };
        law.statements.absence = AbsenceRules {
            row: Some(RowId::new("us-I7")),
            before: map(&["no", "without", "free from"]),
            after: map(&["free"]),
            not_after: map(&["free range"]),
            between: map(&["or", "and", "any"]),
            not_meat: map(&["goat cheese"]),
            groups: vec![AbsenceGroup {
                words: map(&["dairy"]),
                allergens: [Allergen::Milk].into(),
                species: Vec::new(),
            }],
            whole: vec![AbsenceGroup {
                words: map(&["vegan"]),
                allergens: [Allergen::Milk, Allergen::Egg].into(),
                species: Species::ALL.to_vec(),
            }],
        };
        law
    }

    fn product(name: &str, allergens: &[Allergen], species: Option<Species>) -> Product {
        Product {
            names: Arc::new(BTreeMap::from([("en".into(), name.into())])),
            allergens: allergens.iter().copied().collect(),
            species,
            ..Product::unnamed()
        }
    }

    #[track_caller]
    fn look(name: &str, allergens: &[Allergen], species: Option<Species>, expected: &[&str]) {
        let product = product(name, allergens, species);
        let facts = NameFacts::listed(&product, &crate::family::Lists::default());
        let found = check(&facts, &law());
        let found: Vec<&str> = found.iter().map(|of| of.says.key()).collect();
        assert_eq!(found, expected, "{name}");
    }

    #[test]
    fn no_name_denies_an_allergen_that_is_in_it() {
        use Allergen::{Egg, Milk, Wheat};
        let denied = ["naming-denies"];
        for name in [
            "Dairy-free sauce",
            "Milk free sauce",
            "Sauce without milk",
            "No milk sauce",
        ] {
            look(name, &[Milk], None, &denied);
            look(name, &[Egg], None, &[]);
        }
        look("Sauce without egg or milk", &[Milk], None, &denied);
        look("Sauce without egg, milk", &[Milk], None, &denied);
        look("Vegan spread", &[Milk], None, &denied);
        look("Vegan spread", &[Wheat], None, &[]);
        // What is named otherwise is no denial.
        look("Milk sauce without egg", &[Milk], None, &[]);
        look("Milk sauce", &[Milk], None, &[]);
        look("Wheat free range pie", &[Wheat], None, &[]);
    }

    #[test]
    fn every_animal_of_a_name_is_in_what_was_made() {
        let pork = product("Beef and pork burger", &[], Some(Species::Pig));
        let mut facts = NameFacts::listed(&pork, &crate::family::Lists::default());
        facts.of_record = true;
        let found = check(&facts, &law());
        assert!(found.iter().any(Finding::refuses), "{found:?}");
        // Of what nobody told, it may be in that.
        facts.no_recipe = true;
        let found = check(&facts, &law());
        assert_eq!(found.len(), 1);
        assert!(!found.iter().any(Finding::refuses), "{found:?}");
    }

    #[test]
    fn a_name_of_meat_tells_whose_it_is() {
        let pig = Some(Species::Pig);
        look("Beef burger", &[], pig, &["naming-other-animal"]);
        look("Pork burger", &[], pig, &[]);
        look("Beef and pork burger", &[], pig, &[]);
        look("Burger", &[], pig, &[]);
        look("Burger with goat cheese", &[], pig, &[]);
        look("Beef tomato", &[], None, &[]);
        look("Vegan burger", &[], pig, &["naming-denies-animal"]);
        look("Steak", &[], Some(Species::Horse), &["naming-say-animal"]);
        look("Horse steak", &[], Some(Species::Horse), &[]);
    }
}
