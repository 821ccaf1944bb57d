//! What is different between the statements of two lots of the same product.

use super::Food;
use super::says::ChangeSays;
use crate::ingredients::Ingredient;
use crate::says::{Arg, Says, Texts};
use crate::words::Allergen;
use std::collections::{BTreeMap, BTreeSet};

/// What is different.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct FoodChange {
    /// Allergens that are new, with the way down to what brings each: `glaze > soy sauce`.
    pub new_allergens: BTreeMap<Allergen, Vec<AllergenSource>>,
    /// Allergens that are no longer in it.
    pub gone_allergens: BTreeSet<Allergen>,
    /// Ingredients that are new, as the way down to them.
    pub new_ingredients: Vec<Texts>,
    /// Ingredients that are gone.
    pub gone_ingredients: Vec<Texts>,
    /// Are the same ingredients in another order?
    pub reordered: bool,
}

/// What brings an allergen.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AllergenSource {
    /// The way down to the ingredient, by name.
    pub path: Vec<Texts>,
    /// The lots that it came from, if known.
    pub lots: BTreeSet<String>,
}

/// What is different between two lots; nothing if the same label is true of both.
pub fn changes(before: &Food, after: &Food) -> Option<FoodChange> {
    let (had, has) = (before.all_allergens(), after.all_allergens());
    let new_allergens = (&has - &had).into_iter().map(|allergen| {
        let mut sources = Vec::new();
        bringing(&after.parts, allergen, &mut Vec::new(), &mut sources);
        (allergen, sources)
    });
    let (mut old, mut new) = (Vec::new(), Vec::new());
    walk(&before.parts, "", &mut old);
    walk(&after.parts, "", &mut new);
    let keys = |list: &[(String, Texts)]| -> BTreeSet<String> {
        list.iter().map(|(key, _)| key.clone()).collect()
    };
    let (old_keys, new_keys) = (keys(&old), keys(&new));
    let only = |list: &[(String, Texts)], other: &BTreeSet<String>| -> Vec<Texts> {
        let alone = list.iter().filter(|(key, _)| !other.contains(key));
        alone.map(|(_, name)| name.clone()).collect()
    };
    let change = FoodChange {
        new_allergens: new_allergens.collect(),
        gone_allergens: &had - &has,
        new_ingredients: only(&new, &old_keys),
        gone_ingredients: only(&old, &new_keys),
        reordered: old_keys == new_keys && !same_order(&old, &new),
    };
    (change != FoodChange::default()).then_some(change)
}

impl FoodChange {
    /// What is said of it at the bench, the gravest first.
    pub fn says(&self) -> Vec<Says> {
        let mut says = Vec::new();
        for (allergen, sources) in &self.new_allergens {
            let allergen = *allergen;
            says.push(match sources.is_empty() {
                true => ChangeSays::NewAllergenUnknown { allergen },
                false => ChangeSays::NewAllergen {
                    allergen,
                    sources: Arg::Series(sources.iter().map(AllergenSource::says).collect()),
                },
            });
        }
        for allergen in &self.gone_allergens {
            let allergen = *allergen;
            says.push(ChangeSays::GoneAllergen { allergen });
        }
        if !self.new_ingredients.is_empty() {
            let names = Texts::joined(&self.new_ingredients, ", ");
            says.push(ChangeSays::NewIngredients { names });
        }
        if !self.gone_ingredients.is_empty() {
            let names = Texts::joined(&self.gone_ingredients, ", ");
            says.push(ChangeSays::GoneIngredients { names });
        }
        if self.reordered {
            says.push(ChangeSays::Reordered);
        }
        says.into_iter().map(Says::from).collect()
    }
}

impl AllergenSource {
    /// `glaze > soy sauce, lot SOY-7`.
    fn says(&self) -> Says {
        let path = Texts::joined(&self.path, " > ");
        let lots: Vec<&str> = self.lots.iter().map(String::as_str).collect();
        match lots.as_slice() {
            [] => ChangeSays::Source { path },
            [lot] => ChangeSays::SourceLot {
                path,
                lot: (*lot).to_owned(),
            },
            lots => ChangeSays::SourceLots {
                path,
                lots: lots.join(", "),
            },
        }
        .into()
    }
}

fn same_order(old: &[(String, Texts)], new: &[(String, Texts)]) -> bool {
    let key = |(key, _): &(String, Texts)| key.clone();
    old.iter().map(key).eq(new.iter().map(key))
}

/// The deepest ingredients that bear an allergen.
fn bringing(
    parts: &[Ingredient],
    allergen: Allergen,
    path: &mut Vec<Texts>,
    into: &mut Vec<AllergenSource>,
) {
    for part in parts {
        if !part.all_allergens().contains(&allergen) {
            continue;
        }
        path.push(part.named());
        let before = into.len();
        bringing(&part.parts, allergen, path, into);
        if into.len() == before {
            into.push(AllergenSource {
                path: path.clone(),
                lots: part.lots.iter().cloned().collect(),
            });
        }
        path.pop();
    }
}

/// Every ingredient with the way down to it: by code, and by name.
fn walk(parts: &[Ingredient], above: &str, into: &mut Vec<(String, Texts)>) {
    for part in parts {
        let key = format!("{above}/{}", part.product);
        into.push((key.clone(), part.named()));
        walk(&part.parts, &key, into);
    }
}
