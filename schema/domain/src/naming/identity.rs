//! A food of many parts against the standard that its English name stands for.

use super::NameFacts;
use crate::duties::banned::{BannedFrom, check_parts};
use crate::duties::identity::{FoodOfThatName, check_identity};
use crate::law::Law;
use crate::measure::Percent;
use crate::rows::Finding;
use crate::words::ProductKind;

/// What stands against it, by what the lists or the record know.
pub fn check(facts: &NameFacts<'_>, law: &Law) -> Vec<Finding> {
    let product = facts.product;
    let Some(name) = product.names.get("en") else {
        return Vec::new();
    };
    if facts.species.is_empty() {
        return Vec::new();
    }
    let weight = facts
        .weights
        .map(|(fresh, ready)| Percent::of(ready.milligrams().into(), fresh.milligrams().into()));
    let food = FoodOfThatName {
        name,
        raw: product.raw,
        fat: product.standard.fat,
        water: facts.water,
        water_left: facts.water_left,
        meat: facts.meat,
        weight,
        ingredients: facts.ingredients.clone(),
        nitrite: facts.nitrite == Some(true),
    };
    let mut found = check_identity(&law.duties.identities, &law.rows, &food);
    found.extend(banned(facts, law));
    found
}

/// Organs that are in no food there, and what is in no mince, by the names that the kitchen gives them.
fn banned(facts: &NameFacts<'_>, law: &Law) -> Vec<Finding> {
    let product = facts.product;
    let mut organs: Vec<&str> = facts.organs.iter().map(String::as_str).collect();
    if product.kind == ProductKind::Offal {
        organs.push(product.name("en"));
    }
    organs.sort_unstable();
    organs.dedup();
    let mut found = check_parts(&law.duties, &law.rows, BannedFrom::Food, &organs);
    if product.standard.mince.is_some() {
        let all = facts.ingredients.iter().flatten().map(String::as_str);
        let all: Vec<&str> = all.collect();
        found.extend(check_parts(&law.duties, &law.rows, BannedFrom::Mince, &all));
    }
    found
}
