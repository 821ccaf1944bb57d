//! A food of many parts against the standard that its English name stands for.

use super::NameFacts;
use crate::duties::banned::{BannedFrom, check_parts};
use crate::duties::identity::{FoodOfThatName, MeatOf, check_identity};
use crate::law::Law;
use crate::measure::Percent;
use crate::rows::Finding;
use crate::words::{Allergen, ProductKind, Species};

/// What stands against it, by what the lists or the record know.
pub fn check(facts: &NameFacts<'_>, law: &Law) -> Vec<Finding> {
    let product = facts.product;
    let name = product.label_names().get("en").map_or("", String::as_str);
    if facts.species.is_empty() {
        return Vec::new();
    }
    let weight = facts
        .weights
        .map(|(fresh, ready)| Percent::of(ready.milligrams().into(), fresh.milligrams().into()));
    let food = FoodOfThatName {
        name,
        raw: product.raw,
        of: meat_of(facts),
        species: facts.species.clone(),
        parts: { facts.parts.iter() }
            .map(|known| known.map(|(_, part)| part))
            .collect(),
        is_open: facts.untold(law).next().is_some(),
        no_recipe: facts.no_recipe,
        fat_in: facts.fat_in,
        fat: product.standard.fat,
        water: facts.water,
        water_left: facts.water_left,
        meat: facts.meat,
        weight,
        organs: facts.organs.clone(),
        ingredients: facts.ingredients.clone(),
        nitrite: facts.nitrite == Some(true),
    };
    let all = &law.duties.identities;
    let mut found = check_identity(all, &law.rows, &food);
    // Whose meat it is, a name says in any language.
    let others = product.names.iter();
    for (_, name) in others.filter(|(language, _)| language.as_str() != "en") {
        let named = FoodOfThatName {
            name,
            ..food.clone()
        };
        for finding in check_identity(all, &law.rows, &named) {
            let is_of_animal = finding.says.key() == "identity-other-animal";
            if is_of_animal && !found.contains(&finding) {
                found.push(finding);
            }
        }
    }
    found.extend(banned(facts, law));
    found.extend(sulphites(facts, law));
    found
}

/// Sulphites in raw meat.
fn sulphites(facts: &NameFacts<'_>, law: &Law) -> Option<Finding> {
    let rule = law.duties.sulphites.as_ref()?;
    let has = facts.product.raw && facts.allergens.contains(&Allergen::Sulphites);
    let names: Vec<&str> = facts.product.names.values().map(String::as_str).collect();
    has.then(|| rule.check(&names)).flatten()
}

/// Whose meat is in it.
fn meat_of(facts: &NameFacts<'_>) -> Option<MeatOf> {
    let all = |is: fn(&Species) -> bool| facts.species.iter().all(is);
    let is_small = |of: &Species| of.is_bird() || *of == Species::Rabbit;
    Some(match () {
        () if facts.species.is_empty() => return None,
        () if all(|of| *of == Species::Pig) => MeatOf::Pig,
        () if all(is_small) => MeatOf::BirdOrRabbit,
        () => MeatOf::Other,
    })
}

/// Organs that are in no food there, and what is in no mince, by the names that the kitchen gives them.
fn banned(facts: &NameFacts<'_>, law: &Law) -> Vec<Finding> {
    let product = facts.product;
    let mut organs: Vec<&str> = facts.organs.keys().map(String::as_str).collect();
    if product.kind == ProductKind::Offal {
        organs.push(product.name("en"));
    }
    organs.sort_unstable();
    organs.dedup();
    let mut found = check_parts(&law.duties, &law.rows, BannedFrom::Food, &organs);
    // Raw pieces are no product of meat: those rules are about what is made of several things, or cured,
    // cooked or dried.
    let made = !matches!(
        product.kind,
        ProductKind::Carcass | ProductKind::Cut | ProductKind::Trim | ProductKind::Offal
    );
    if made {
        let from = match product.raw {
            true => BannedFrom::UncookedProduct,
            false => BannedFrom::MeatProduct,
        };
        found.extend(check_parts(&law.duties, &law.rows, from, &organs));
    }
    if product.standard.mince.is_some() {
        let all = facts.ingredients.iter().flatten().map(String::as_str);
        let all: Vec<&str> = all.collect();
        found.extend(check_parts(&law.duties, &law.rows, BannedFrom::Mince, &all));
    }
    found
}
