//! What a food is made of: each ingredient with its ingoing weight, and compounds with their parts.

mod merge;
mod nature;

pub use merge::{flat, of_step, opened};
pub use nature::Nature;

use crate::grams::Grams;
use crate::says::{Texts, said};
use crate::words::{Allergen, Species};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// What went into something, with what went into that.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Ingredient {
    /// Its product's code: the same product from two lots is one ingredient.
    pub product: String,
    /// Its name by language; shared, because a list of many lots has the same names many times.
    pub names: Arc<BTreeMap<String, String>>,
    /// Its ingoing weight.
    pub grams: Grams,
    /// What it is itself made of; empty for a single thing.
    pub parts: Vec<Ingredient>,
    /// What it is in the list: a plain food unless said.
    pub nature: Nature,
    /// The key of an additive in the law's table (`sodium-nitrite`), for its class and number.
    pub additive: Option<String>,
    /// Allergens that it has, itself or in its parts.
    pub allergens: BTreeSet<Allergen>,
    /// Of which animal, if of one.
    pub species: Option<Species>,
    /// Does the name or the picture of the food speak of it? Then some places ask for its share.
    pub in_name: bool,
    /// Is it a whole list, as a pack declares it? Then its name is that list, written as it stands there.
    pub as_declared: bool,
    /// Codes of the lots that it came from, for the bench; not for a label.
    pub lots: Vec<String>,
}

impl Ingredient {
    /// Water that a step added.
    pub fn water(grams: Grams) -> Ingredient {
        let names =
            [("en", "water"), ("fr", "eau")].map(|(tag, name)| (tag.to_owned(), name.to_owned()));
        Ingredient {
            product: "water".into(),
            names: Arc::new(names.into()),
            grams,
            nature: Nature::Water,
            ..Ingredient::default()
        }
    }

    /// The name in a language, else in English, else any; it begins small, as in a list.
    pub fn name(&self, language: &str) -> String {
        let name = self
            .names
            .get(language)
            .or_else(|| self.names.get("en"))
            .or_else(|| self.names.values().next());
        let name = name.map_or("", String::as_str);
        match self.as_declared {
            true => name.to_owned(),
            false => without_commas(&lower_first(name), self.language(language)),
        }
    }

    /// The ingredients of something bought, as its pack declares them: one part, whose name is the list.
    pub fn declared(
        texts: &BTreeMap<String, String>,
        grams: Grams,
        allergens: BTreeSet<Allergen>,
    ) -> Ingredient {
        let text = said(texts, "en");
        Ingredient {
            // Two lots that declare the same are one ingredient.
            product: text.split_whitespace().collect::<Vec<_>>().join("_"),
            names: Arc::new(texts.clone()),
            grams,
            allergens,
            as_declared: true,
            ..Ingredient::default()
        }
    }

    /// The language that its name is in, where that is asked for in one.
    pub fn language<'a>(&'a self, language: &'a str) -> &'a str {
        let has = |tag: &&str| self.names.contains_key(*tag);
        let known = [language, "en"].into_iter().find(has);
        known
            .or_else(|| self.names.keys().next().map(String::as_str))
            .unwrap_or(language)
    }

    /// The name in the languages that it has.
    pub fn named(&self) -> Texts {
        let names = self.names.iter();
        Texts::new(
            names
                .map(|(tag, name)| (tag.clone(), lower_first(name)))
                .collect(),
        )
    }

    /// Its allergens and those of its parts, to any depth.
    pub fn all_allergens(&self) -> BTreeSet<Allergen> {
        let mut all = self.allergens.clone();
        for part in &self.parts {
            all.append(&mut part.all_allergens());
        }
        all
    }
}

/// The allergens of all parts, to any depth.
pub fn allergens(parts: &[Ingredient]) -> BTreeSet<Allergen> {
    parts.iter().flat_map(Ingredient::all_allergens).collect()
}

/// The list in one language: `pork trim, pork fat, fennel spice (salt, fennel seed), white wine`.
///
/// The plain form; a label has what the place asks for besides ([`crate::statement`]).
pub fn list(parts: &[Ingredient], language: &str) -> String {
    let one = |part: &Ingredient| match part.parts.as_slice() {
        [] => part.name(language),
        parts => format!("{} ({})", part.name(language), list(parts, language)),
    };
    parts.iter().map(one).collect::<Vec<_>>().join(", ")
}

/// One ingredient has no comma in it, for a comma parts two: `skinless pork belly`, not `pork belly, skinless`.
/// What names several things (`onion, carrot and celery`) stays as it is. Only English turns the words about.
fn without_commas(name: &str, language: &str) -> String {
    let several = [" and ", " et ", " & ", " or ", " ou "];
    if !name.contains(", ") || several.iter().any(|word| name.contains(word)) {
        return name.to_owned();
    }
    let mut parts: Vec<&str> = name.split(", ").collect();
    if language == "en" {
        parts.reverse();
    }
    parts.join(" ")
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
        let names = Arc::new(BTreeMap::from([("en".to_owned(), name.to_owned())]));
        Ingredient {
            product: name.to_lowercase(),
            names,
            grams: Grams::whole(grams),
            parts,
            ..Ingredient::default()
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
    fn one_ingredient_has_no_comma() {
        let says = |name: &str| part(name, 1, Vec::new()).name("en");
        assert_eq!(says("Pork belly, skinless"), "skinless pork belly");
        assert_eq!(says("Eggs, shelled"), "shelled eggs");
        assert_eq!(says("Onion, carrot and celery"), "onion, carrot and celery");
        assert_eq!(
            without_commas("poitrine de porc, sans couenne", "fr"),
            "poitrine de porc sans couenne"
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

        #[test]
        fn no_allergen_and_no_gram_is_lost(kinds in prop::collection::vec((0usize..6, 1i64..500, 0usize..Allergen::ALL.len()), 1..40)) {
            let inputs: Vec<Ingredient> = kinds.iter().map(|(kind, grams, word)| Ingredient {
                allergens: [Allergen::ALL[*word]].into(),
                ..part(&format!("n{kind}"), *grams, vec![])
            }).collect();
            let (union, whole): (_, Grams) = (allergens(&inputs), inputs.iter().map(|part| part.grams).sum());
            let made = of_step("x", inputs);
            prop_assert_eq!(allergens(&made), union);
            prop_assert_eq!(made.iter().map(|part| part.grams).sum::<Grams>(), whole);
        }
    }
}
