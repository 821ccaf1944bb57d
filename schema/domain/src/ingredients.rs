//! The ingredient list: descending by ingoing weight, compounds with their parts in brackets.

use crate::grams::Grams;
use std::collections::BTreeMap;

/// What went into something, with what went into that.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Ingredient {
    /// Its product's code: the same product from two lots is one ingredient.
    pub product: String,
    /// Its name by language.
    pub names: BTreeMap<String, String>,
    /// Its ingoing weight.
    pub grams: Grams,
    /// What it is itself made of; empty for a single thing.
    pub parts: Vec<Ingredient>,
}

impl Ingredient {
    /// Water that a step added.
    pub fn water(grams: Grams) -> Ingredient {
        let names =
            [("en", "water"), ("fr", "eau")].map(|(tag, name)| (tag.to_owned(), name.to_owned()));
        Ingredient {
            product: "water".into(),
            names: names.into(),
            grams,
            parts: Vec::new(),
        }
    }

    fn name(&self, language: &str) -> String {
        let name = self
            .names
            .get(language)
            .or_else(|| self.names.get("en"))
            .or_else(|| self.names.values().next());
        lower_first(name.map_or("", String::as_str))
    }
}

/// What a step's output of this product is made of, given what went in.
///
/// One input with parts passes them on: sliced or packed it is what it was. Rework of the product
/// itself, at any depth, gives way to its own parts: a pot that is topped up does not contain itself.
pub fn of_step(product: &str, mut inputs: Vec<Ingredient>) -> Vec<Ingredient> {
    if inputs.len() == 1 && !inputs[0].parts.is_empty() {
        inputs = std::mem::take(&mut inputs[0].parts);
    }
    merged(without(product, inputs))
}

/// Puts in the place of every part that is this product the parts of that.
fn without(product: &str, parts: Vec<Ingredient>) -> Vec<Ingredient> {
    let mut kept = Vec::with_capacity(parts.len());
    for mut part in parts {
        part.parts = without(product, part.parts);
        if part.product == product && !part.parts.is_empty() {
            kept.extend(scaled(&part.parts, part.grams));
        } else {
            kept.push(part);
        }
    }
    kept
}

/// The same parts, summing to another weight, to the milligram below.
fn scaled(parts: &[Ingredient], to: Grams) -> Vec<Ingredient> {
    let whole: Grams = parts.iter().map(|part| part.grams).sum();
    let scale = |grams: Grams| {
        let product = i128::from(grams.milligrams()) * i128::from(to.milligrams());
        Grams::from_milligrams((product / i128::from(whole.milligrams().max(1))) as i64)
    };
    parts
        .iter()
        .map(|part| Ingredient {
            grams: scale(part.grams),
            ..part.clone()
        })
        .collect()
}

/// The list in one language: `pork trim, pork fat, fennel spice (salt, fennel seed), white wine`.
pub fn list(parts: &[Ingredient], language: &str) -> String {
    let one = |part: &Ingredient| match part.parts.as_slice() {
        [] => part.name(language),
        parts => format!("{} ({})", part.name(language), list(parts, language)),
    };
    parts.iter().map(one).collect::<Vec<_>>().join(", ")
}

/// The same product twice is one ingredient; heavier first, names break a tie.
fn merged(parts: Vec<Ingredient>) -> Vec<Ingredient> {
    let mut merged: Vec<Ingredient> = Vec::with_capacity(parts.len());
    for mut part in parts {
        let same = |known: &&mut Ingredient| {
            known.product == part.product && known.parts.is_empty() == part.parts.is_empty()
        };
        match merged.iter_mut().find(same) {
            Some(known) => {
                let mut both = scaled(&known.parts, known.grams);
                both.extend(scaled(&part.parts, part.grams));
                known.parts = both;
                known.grams += part.grams;
            }
            None => {
                part.parts = scaled(&part.parts, part.grams);
                merged.push(part);
            }
        }
    }
    for part in &mut merged {
        part.parts = self::merged(std::mem::take(&mut part.parts));
    }
    merged.sort_by(|one, other| {
        other
            .grams
            .cmp(&one.grams)
            .then_with(|| one.names.cmp(&other.names))
    });
    merged
}

fn lower_first(name: &str) -> String {
    let mut letters = name.chars();
    match letters.next() {
        Some(first) => first.to_lowercase().chain(letters).collect(),
        None => String::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn part(name: &str, grams: i64, parts: Vec<Ingredient>) -> Ingredient {
        let names = BTreeMap::from([("en".to_owned(), name.to_owned())]);
        Ingredient {
            product: name.to_lowercase(),
            names,
            grams: Grams::whole(grams),
            parts,
        }
    }

    fn check(product: &str, inputs: Vec<Ingredient>, expected: &str) {
        assert_eq!(list(&of_step(product, inputs), "fr"), expected);
    }

    #[test]
    fn heaviest_first_with_nested_parts() {
        let cure = part(
            "Cure no. 1",
            17,
            vec![part("Sodium nitrite", 1, vec![]), part("Salt", 16, vec![])],
        );
        let inputs = vec![
            part("Salt", 157, vec![]),
            cure,
            part("Pork belly", 6975, vec![]),
        ];
        check(
            "bacon",
            inputs,
            "pork belly, salt, cure no. 1 (salt, sodium nitrite)",
        );
    }

    #[test]
    fn the_same_thing_twice_is_one() {
        check(
            "x",
            vec![
                part("Trim", 500, vec![]),
                part("Fat", 700, vec![]),
                part("Trim", 300, vec![]),
            ],
            "trim, fat",
        );
        let lard = |fat, salt| {
            part(
                "Lard",
                100,
                vec![part("Fat", fat, vec![]), part("Salt", salt, vec![])],
            )
        };
        check("x", vec![lard(1, 9), lard(9, 3)], "lard (salt, fat)");
    }

    #[test]
    fn sliced_it_is_what_it_was() {
        check(
            "slices",
            vec![part(
                "Ham",
                50,
                vec![part("Leg", 45, vec![]), part("Salt", 5, vec![])],
            )],
            "leg, salt",
        );
    }

    #[test]
    fn a_pot_does_not_contain_itself() {
        let old = part(
            "Stock",
            50,
            vec![part("Bones", 30, vec![]), part("Water", 70, vec![])],
        );
        let stew = part("Stew", 10, vec![part("Beans", 5, vec![]), old.clone()]);
        check(
            "stock",
            vec![part("Bones", 60, vec![]), old, stew],
            "bones, water, stew (water, bones, beans)",
        );
    }

    proptest! {
        #[test]
        fn the_order_follows_the_weights(grams in prop::collection::vec(1i64..10_000, 1..20)) {
            let parts: Vec<Ingredient> = grams.iter().enumerate().map(|(nth, grams)| part(&format!("n{nth}"), *grams, vec![])).collect();
            let order = of_step("x", parts.clone());
            prop_assert_eq!(order.len(), parts.len());
            prop_assert!(order.windows(2).all(|pair| pair[0].grams >= pair[1].grams));
        }
    }
}
