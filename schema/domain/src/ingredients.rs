//! The ingredient list: descending by ingoing weight, compounds with their parts in brackets.

use crate::grams::Grams;
use std::collections::BTreeMap;

/// What went into something, with what went into that.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Ingredient {
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

/// The list in one language: `pork trim, pork fat, fennel spice (salt, fennel seed), white wine`.
pub fn list(parts: &[Ingredient], language: &str) -> String {
    let one = |part: &Ingredient| match part.parts.as_slice() {
        [] => part.name(language),
        parts => format!("{} ({})", part.name(language), list(parts, language)),
    };
    merged(parts).iter().map(one).collect::<Vec<_>>().join(", ")
}

/// The same thing from two lots is one ingredient; heavier first, names break a tie.
fn merged(parts: &[Ingredient]) -> Vec<Ingredient> {
    let mut merged: Vec<Ingredient> = Vec::new();
    for part in parts {
        match merged.iter_mut().find(|known| {
            known.names == part.names && known.parts.is_empty() == part.parts.is_empty()
        }) {
            Some(known) => {
                known.grams += part.grams;
                known.parts.extend(part.parts.iter().cloned());
            }
            None => merged.push(part.clone()),
        }
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
            names,
            grams: Grams::whole(grams),
            parts,
        }
    }

    #[test]
    fn heaviest_first_with_nested_parts() {
        let cure = part(
            "Cure no. 1",
            17,
            vec![part("Sodium nitrite", 1, vec![]), part("Salt", 16, vec![])],
        );
        let list = list(
            &[
                part("Salt", 157, vec![]),
                cure,
                part("Pork belly", 6975, vec![]),
            ],
            "fr",
        );
        assert_eq!(list, "pork belly, salt, cure no. 1 (salt, sodium nitrite)");
    }

    #[test]
    fn the_same_thing_twice_is_one() {
        let list = list(
            &[
                part("Trim", 500, vec![]),
                part("Fat", 700, vec![]),
                part("Trim", 300, vec![]),
            ],
            "en",
        );
        assert_eq!(list, "trim, fat");
    }

    proptest! {
        #[test]
        fn the_order_follows_the_weights(grams in prop::collection::vec(1i64..10_000, 1..20)) {
            let parts: Vec<Ingredient> = grams.iter().enumerate().map(|(nth, grams)| part(&format!("n{nth}"), *grams, vec![])).collect();
            let order = merged(&parts);
            prop_assert_eq!(order.len(), parts.len());
            prop_assert!(order.windows(2).all(|pair| pair[0].grams >= pair[1].grams));
        }
    }
}
