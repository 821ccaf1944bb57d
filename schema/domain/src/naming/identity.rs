//! A food of many parts against the standard that its English name stands for.

use super::NameFacts;
use crate::duties::identity::{FoodOfThatName, check_identity};
use crate::law::Law;
use crate::measure::Percent;
use crate::rows::Finding;

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
    check_identity(&law.duties.identities, &law.rows, &food)
}
