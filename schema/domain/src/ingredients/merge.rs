//! What a step makes of its inputs: the same thing twice is one, and a pot does not contain itself.

use super::Ingredient;
use crate::grams::Grams;
use std::collections::BTreeMap;
use std::collections::btree_map::Entry;

/// What a step's output of this product is made of, given what went in.
///
/// One input with parts passes them on: sliced or packed it is what it was. Rework of the product
/// itself, at any depth, gives way to its own parts: a pot that is topped up does not contain itself.
/// The lot's own union of allergens is kept beside this; a word that only the wrapper bore is there.
pub fn of_step(product: &str, mut inputs: Vec<Ingredient>) -> Vec<Ingredient> {
    if inputs.len() == 1 && !inputs[0].parts.is_empty() {
        inputs = std::mem::take(&mut inputs[0].parts);
    }
    merged(without(product, inputs))
}

/// The parts of something that is only a step on the way, summing to what went in of it; itself where it has
/// none, or where it brings an allergen that no part has.
pub fn opened(mut one: Ingredient) -> Vec<Ingredient> {
    let known = super::allergens(&one.parts);
    if one.parts.is_empty() || one.as_declared || !one.allergens.is_subset(&known) {
        return vec![one];
    }
    let mut parts = scaled(std::mem::take(&mut one.parts), one.grams);
    for part in &mut parts {
        part.lots.extend(one.lots.iter().cloned());
    }
    parts
}

/// The same food with every compound dissolved into its parts, heaviest first (`us-I3`). As with
/// [`of_step`], a word that only a compound itself bore is in the union of the lot.
pub fn flat(parts: Vec<Ingredient>) -> Vec<Ingredient> {
    let mut singles = Vec::with_capacity(parts.len());
    dissolve(parts, &mut singles);
    merged(singles)
}

fn dissolve(parts: Vec<Ingredient>, singles: &mut Vec<Ingredient>) {
    for mut part in parts {
        if part.parts.is_empty() {
            singles.push(part);
            continue;
        }
        let below = scaled(std::mem::take(&mut part.parts), part.grams);
        dissolve(below, singles);
    }
}

/// Puts in the place of every part that is this product the parts of that.
fn without(product: &str, mut parts: Vec<Ingredient>) -> Vec<Ingredient> {
    let gives_way = |part: &Ingredient| part.product == product && !part.parts.is_empty();
    for part in &mut parts {
        if !part.parts.is_empty() {
            part.parts = without(product, std::mem::take(&mut part.parts));
        }
    }
    if !parts.iter().any(gives_way) {
        return parts;
    }
    let mut kept = Vec::with_capacity(parts.len());
    for part in parts {
        match gives_way(&part) {
            true => kept.extend(scaled(part.parts, part.grams)),
            false => kept.push(part),
        }
    }
    kept
}

/// The same parts, summing to another weight, to the milligram below.
fn scaled(mut parts: Vec<Ingredient>, to: Grams) -> Vec<Ingredient> {
    let whole: Grams = parts.iter().map(|part| part.grams).sum();
    if whole == to {
        return parts;
    }
    let whole = whole.milligrams().max(1);
    for part in &mut parts {
        let (milligrams, to) = (part.grams.milligrams(), to.milligrams());
        let scaled = match milligrams.checked_mul(to) {
            Some(product) => product / whole,
            // Beyond three tonnes of three tonnes.
            None => (i128::from(milligrams) * i128::from(to) / i128::from(whole)) as i64,
        };
        part.grams = Grams::from_milligrams(scaled);
    }
    parts
}

/// The same product twice is one ingredient; heavier first, names and then codes break a tie.
/// One pass over a map: a mix of hundreds of lots costs no more than their count.
fn merged(parts: Vec<Ingredient>) -> Vec<Ingredient> {
    let mut known: BTreeMap<(String, bool), Ingredient> = BTreeMap::new();
    for mut part in parts {
        if !part.parts.is_empty() {
            part.parts = scaled(std::mem::take(&mut part.parts), part.grams);
        }
        let key = (std::mem::take(&mut part.product), part.parts.is_empty());
        match known.entry(key) {
            Entry::Vacant(place) => {
                place.insert(part);
            }
            Entry::Occupied(mut same) => {
                let same = same.get_mut();
                same.grams += part.grams;
                same.parts.append(&mut part.parts);
                same.allergens.extend(part.allergens);
                same.lots.append(&mut part.lots);
                same.in_name |= part.in_name;
                same.species = same.species.or(part.species);
            }
        }
    }
    let mut merged: Vec<Ingredient> = Vec::with_capacity(known.len());
    for ((product, _), mut part) in known {
        part.product = product;
        if !part.parts.is_empty() {
            part.parts = self::merged(std::mem::take(&mut part.parts));
        }
        merged.push(part);
    }
    merged.sort_by(|one, other| {
        let weight = other.grams.cmp(&one.grams);
        weight
            .then_with(|| one.names.cmp(&other.names))
            .then_with(|| one.product.cmp(&other.product))
    });
    merged
}
