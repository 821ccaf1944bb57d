//! What the labels of a lot claim if they are made now.

use super::composition::{ingredient, is_single};
use super::water::made_up;
use super::{Family, Lists, Relative, strength};
use crate::claims::{Claims, MadeOf, OriginClaim};
use crate::cure::Alkali;
use crate::gate;
use crate::grams::Grams;
use crate::ingredients::{self, Ingredient};
use crate::lot::LotId;
use crate::measure::Percent;
use crate::supplied::SuppliedPart;
use crate::words::Species;
use std::collections::HashMap;

/// Everything that a label for a customer says of a lot, as facts. Of a lot that was bought in, what was
/// told of it when it came in; of `lists` only farms and abattoirs are asked. The family has to be loaded with
/// its ancestors.
pub fn claims(family: &Family, of: &Relative, lists: &Lists) -> Claims {
    let product = &of.lot.product;
    let mut parts = parts_of(family, of.lot.id);
    if parts.is_empty() {
        parts.push(ingredient(product, of.made(), within(of, Vec::new())));
    }
    let mut made_of = Vec::new();
    lines(&parts, 0, &mut made_of);
    Claims {
        beside: false,
        dated: true,
        name: Some(product.label_name("en").to_owned()),
        allergens: Some(of.lot.allergens.clone()),
        may_contain: Some(of.lot.perhaps()),
        made_of: Some(made_of),
        species: Some(of.lot.species.clone()),
        origin: origin(family, of, lists),
    }
}

/// Where its animals come from; nothing of what is of no animal that is on record.
fn origin(family: &Family, of: &Relative, lists: &Lists) -> Option<OriginClaim> {
    let sources = gate::sources(family, of, lists);
    let mut claim = OriginClaim::default();
    let is_beef = of.lot.product.species == Some(Species::Cattle);
    for raised in sources.iter().flatten() {
        claim.born.extend(raised.born.clone());
        claim.reared.extend(raised.reared.clone());
        claim.slaughtered.extend(raised.slaughtered.clone());
        let number = raised.abattoir.clone().filter(|_| is_beef);
        claim.abattoirs.extend(number);
    }
    (!sources.is_empty()).then_some(claim)
}

/// As the ingredient list has it (`composition`), by what was used alone.
fn parts_of(family: &Family, lot: LotId) -> Vec<Ingredient> {
    let order = family.youngest_first(lot);
    let made_up = made_up(family, lot);
    let mut parts: HashMap<LotId, Vec<Ingredient>> = HashMap::with_capacity(order.len());
    for of in order.into_iter().rev() {
        let product = &of.lot.product;
        let uses = family.ancestry.uses_of(of.lot.id);
        if is_single(product.kind) && !made_up.contains(&of.lot.id) {
            continue;
        }
        if uses.is_empty() {
            parts.insert(of.lot.id, bought(family, of));
            continue;
        }
        let mut inputs = Vec::with_capacity(uses.len());
        for used in uses {
            let Some(input) = family.get(used.lot) else {
                continue;
            };
            let grams = Grams::from_milligrams(used.milligrams);
            let below = parts.get(&used.lot).cloned().unwrap_or_default();
            let below = match family.is_bought_cure(input) {
                true => within(input, below),
                false => below,
            };
            inputs.push(ingredient(&input.lot.product, grams, below));
        }
        let water = family.water.get(&of.lot.made_by);
        inputs.extend(water.map(|grams| Ingredient::water(*grams)));
        parts.insert(of.lot.id, ingredients::of_step(&product.code, inputs));
    }
    parts.remove(&lot).unwrap_or_default()
}

/// What was told of a bought lot: names alone, for a label claims no weights of parts.
fn bought(family: &Family, of: &Relative) -> Vec<Ingredient> {
    let Some(supplied) = &of.lot.supplied else {
        return Vec::new();
    };
    if !supplied.ingredients.is_empty() {
        return vec![Ingredient::declared(
            &supplied.ingredients,
            of.made(),
            [].into(),
        )];
    }
    as_stood(family, &of.lot.product.code, &supplied.recipe)
}

fn as_stood(family: &Family, code: &str, recipe: &[SuppliedPart]) -> Vec<Ingredient> {
    let parts = recipe.iter().filter_map(|part| {
        let product = family.listed.get(&part.version)?;
        let below = as_stood(family, &product.code, &part.parts);
        Some(ingredient(product, part.grams, below))
    });
    ingredients::of_step(code, parts.collect())
}

/// The parts of an input; of a curing salt which salts it holds, by its bag.
fn within(of: &Relative, parts: Vec<Ingredient>) -> Vec<Ingredient> {
    if of.lot.product.curing_salt().is_none() {
        return parts;
    }
    let bag = strength(of);
    let holds = |percent: Option<Percent>| percent.is_some_and(|of| of > Percent::default());
    let of = |(name, percent): (&str, Option<Percent>)| {
        holds(percent).then(|| Ingredient {
            product: name.to_owned(),
            names: std::sync::Arc::new([("en".to_owned(), name.to_owned())].into()),
            ..Ingredient::default()
        })
    };
    // A label names the metal (`us-I6`); what it does not say is sodium.
    let named = |of, sodium, potassium| match of {
        Alkali::Sodium => sodium,
        Alkali::Potassium => potassium,
    };
    let nitrite = named(bag.nitrite_of, "nitrite", "potassium-nitrite");
    let nitrate = named(bag.nitrate_of, "nitrate", "potassium-nitrate");
    let both = [(nitrite, bag.nitrite), (nitrate, bag.nitrate)];
    both.into_iter().filter_map(of).collect()
}

fn lines(parts: &[Ingredient], depth: u32, lines_so_far: &mut Vec<MadeOf>) {
    for part in parts {
        lines_so_far.push(MadeOf {
            depth,
            code: part.product.clone(),
            name: part.name("en"),
        });
        lines(&part.parts, depth + 1, lines_so_far);
    }
}
