//! The words of a name, against everything that may be true of the food: what is wrong in every case
//! stands, what is wrong in some case only is a word of warning.

use super::{NameFacts, NamingSays, nitrite};
use crate::duties::names::{FoodToName, Part, check_name, check_place_name, says, words_of};
use crate::law::Law;
use crate::measure::Temperature;
use crate::rows::{Finding, Gravity};
use crate::says::Says;
use crate::words::{ProductKind, Species};

/// Hotter than anything that a name asks for, in degrees Celsius.
const DONE: i64 = 100;

/// What stands against the English words of a name. The words with a rule are English ones, and speak of
/// meat: a name in another language, or of a food without an animal, is not looked at.
pub fn check_words(facts: &NameFacts<'_>, dry_cured: Option<bool>, law: &Law) -> Vec<Finding> {
    let Some(name) = facts.product.label_names().get("en") else {
        return Vec::new();
    };
    if facts.species.is_empty() {
        return Vec::new();
    }
    let named = nitrite::named(facts, law).is_any();
    let mut worlds: Vec<Vec<Finding>> = Vec::new();
    for (species, part) in animals(facts) {
        for hopeful in [false, true] {
            let food = FoodToName {
                nitrite: named || facts.nitrite.unwrap_or(!hopeful),
                ..food(name, (species, part), facts, dry_cured, hopeful)
            };
            worlds.push(check_name(&law.duties, &law.rows, &food));
        }
    }
    let mut found = in_common(&worlds);
    if facts.nitrite.is_none() && !named {
        // Of what nobody knows, what it has to be; not what it is.
        for finding in &mut found {
            if let Some(words) = not_for_nitrite(finding, law, name) {
                finding.says = words;
            }
        }
    }
    if let Some(place) = &facts.product.standard.place {
        let made_there = facts.product.standard.made_there;
        let check = |there| check_place_name(&law.duties, &law.rows, name, place, there);
        found.extend(
            check(made_there.unwrap_or(false)).map(|finding| match made_there {
                None => finding.warned(),
                Some(_) => finding,
            }),
        );
    }
    found.retain(|finding| finding.gravity > Gravity::Note);
    found
}

/// A name that is not for what has nitrite, of a food of which nobody knows whether it has any.
fn not_for_nitrite(finding: &Finding, law: &Law, name: &str) -> Option<Says> {
    if finding.says.key() != "name-nitrite" {
        return None;
    }
    let words = words_of(name);
    let mut rules = law.duties.names.words.iter();
    let rule = rules.find(|rule| finding.rows.contains(&rule.row))?;
    let word = rule.words.iter().find(|word| says(&words, word))?.clone();
    Some(NamingSays::NoNitriteIn { word }.into())
}

/// Every animal and part that the food may be of.
fn animals(facts: &NameFacts<'_>) -> Vec<(Option<Species>, Option<Part>)> {
    let mut all = Vec::new();
    for known in &facts.parts {
        match known {
            Some((species, part)) => all.push((Some(*species), Some(*part))),
            None => all.extend(any(facts)),
        }
    }
    if all.is_empty() {
        all = any(facts);
    }
    all
}

/// Any part of the animals in it.
fn any(facts: &NameFacts<'_>) -> Vec<(Option<Species>, Option<Part>)> {
    let parts = |of: &Species| {
        Part::ALL
            .iter()
            .map(|part| (Some(*of), Some(*part)))
            .collect::<Vec<_>>()
    };
    facts.species.iter().flat_map(parts).collect()
}

/// The food as it may be: what is not known is taken at its worst, or at its best.
fn food<'a>(
    name: &'a str,
    (species, part): (Option<Species>, Option<Part>),
    facts: &'a NameFacts<'_>,
    dry_cured: Option<bool>,
    hopeful: bool,
) -> FoodToName<'a> {
    let product = facts.product;
    let told = &product.standard;
    let good = |known: Option<bool>| known.unwrap_or(hopeful);
    let bad = |known: Option<bool>| known.unwrap_or(!hopeful);
    let done = hopeful.then(|| Temperature::celsius(DONE));
    let other = facts
        .other_fat
        .map(|(species, part)| (meat_of(species), part));
    FoodToName {
        name,
        species,
        part,
        nitrite: false,
        salted_to_keep: product.kind == ProductKind::Cured || product.cured.cure.is_some(),
        cooked: good(is_cooked(facts)),
        core: facts.core.or(done),
        loaf: told.loaf.unwrap_or_else(|| says_loaf(name)),
        heated_for_trichinae_only: false,
        shank_bones_out: good(told.shank_bones_out),
        bones_remain: bad(told.bones_remain),
        made_there: good(told.made_there),
        dry_cured_standard: good(dry_cured),
        packed_in: told.packed_in.as_deref(),
        fat_added: other,
    }
}

/// Was it cooked, as far as its kind tells?
pub(super) fn is_cooked(facts: &NameFacts<'_>) -> Option<bool> {
    use ProductKind::*;
    match facts.product.kind {
        Cooked | Rendered | Stock => Some(true),
        _ if facts.product.raw => Some(false),
        Mixed => None,
        _ => Some(facts.product.cooked_as.is_some()),
    }
}

/// An animal by the English word for its fat and meat.
fn meat_of(species: Species) -> &'static str {
    match species {
        Species::Cattle => "beef",
        Species::Sheep => "mutton",
        Species::Pig => "pork",
        other => other.as_str(),
    }
}

fn says_loaf(name: &str) -> bool {
    words_of(name).iter().any(|word| word.contains("loaf"))
}

/// What stands in every case as it is; what stands in some case only as a warning.
fn in_common(worlds: &[Vec<Finding>]) -> Vec<Finding> {
    let mut found: Vec<Finding> = Vec::new();
    for finding in worlds.iter().flatten() {
        if found.iter().any(|known| known.rows == finding.rows) {
            continue;
        }
        let stands = |world: &Vec<Finding>| {
            let mut same = world.iter().filter(|other| other.rows == finding.rows);
            same.any(|other| other.gravity == finding.gravity)
        };
        found.push(match worlds.iter().all(stands) {
            true => finding.clone(),
            false => finding.clone().warned(),
        });
    }
    found
}
