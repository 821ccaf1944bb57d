//! What a lot is: the entry of the kitchen's product list as it stood when the lot was made.

use crate::cure::{Class, Method, Strength};
use crate::cure_room::ReleaseRule;
use crate::dates::KeepingRule;
use crate::grams::Grams;
use crate::gs1::Gtin;
use crate::heat::Food;
use crate::ingredients::Nature;
use crate::words::{Allergen, CurePart, Natural, ProductKind, Species, State};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// One product.
#[derive(Debug, Clone, PartialEq)]
pub struct Product {
    /// The kitchen's word for it: `pork-belly`.
    pub code: String,
    /// Its name by language tag: `en`, `fr`.
    pub names: Arc<BTreeMap<String, String>>,
    /// What sort of thing it is.
    pub kind: ProductKind,
    /// Of which animal, if of one.
    pub species: Option<Species>,
    /// Must it be cooked before it is eaten?
    pub raw: bool,
    /// Allergens that it has of itself.
    pub allergens: BTreeSet<Allergen>,
    /// How its packs are kept when they are made.
    pub storage: State,
    /// Its own simplest keeping rule, if it has one.
    pub keep: Option<KeepingRule>,
    /// The rule that takes its place where readings show that it needs no time and temperature control.
    pub keep_if_stable: Option<KeepingRule>,
    /// Does it need time and temperature control? Where nobody says so: if it is kept cold.
    pub controlled: Option<bool>,
    /// What it is that keeps by nature: salt, vinegar, rendered fat …
    pub stable_as: Option<Natural>,
    /// What must be met before a cured piece of it is released; none for what needs no release.
    pub release: Option<ReleaseRule>,
    /// The key of the curve that it dries along, where the trade has one.
    pub curve: Option<String>,
    /// The key of the way it is salted, for its calendar.
    pub salting: Option<String>,
    /// How it is cured, for what is.
    pub cure: Option<CuredAs>,
    /// The key of the way that a carcass of it is cut.
    pub cut_style: Option<String>,
    /// Which piece of such a carcass it is.
    pub cut: Option<String>,
    /// The key of the process whose yield it is held against.
    pub process: Option<String>,
    /// What a kilogram sells for where it is parted from the rest, in hundredths of the currency.
    pub value_minor_per_kg: Option<i64>,
    /// What it is in an ingredient list, where its kind does not tell.
    pub nature: Option<Nature>,
    /// How its cook is judged, for what is cooked here.
    pub cooked_as: Option<Food>,
    /// What it is in a cure, if it goes into one: salt, sugar …
    pub in_cure: Option<CurePart>,
    /// How strong it is, if it is a curing salt; each lot has its own strength, which wins.
    pub curing_salt: Option<Strength>,
    /// That it is sold as uncured, for what is usually cured with nitrite.
    pub uncured: Option<Uncured>,
    /// Its GTIN, if GS1 has given the kitchen numbers.
    pub gtin: Option<Gtin>,
    /// Its number at the shop's own till.
    pub till_number: Option<u64>,
    /// Counter price, in hundredths of the currency per kilogram.
    pub price_minor_per_kg: Option<i64>,
    /// Does the counter sell it?
    pub for_sale: bool,
}

impl Product {
    /// A product of which nothing is known yet: an ingredient, ready to eat, kept chilled.
    pub fn unnamed() -> Product {
        Product {
            code: String::new(),
            names: Arc::default(),
            kind: ProductKind::Ingredient,
            species: None,
            raw: false,
            allergens: BTreeSet::new(),
            storage: State::Chilled,
            keep: None,
            keep_if_stable: None,
            controlled: None,
            stable_as: None,
            release: None,
            curve: None,
            salting: None,
            cure: None,
            cut_style: None,
            cut: None,
            process: None,
            value_minor_per_kg: None,
            nature: None,
            cooked_as: None,
            in_cure: None,
            curing_salt: None,
            uncured: None,
            gtin: None,
            till_number: None,
            price_minor_per_kg: None,
            for_sale: false,
        }
    }

    /// Does it need time and temperature control to be safe? What was bought as an ingredient only
    /// where the list says so.
    pub fn is_controlled(&self) -> bool {
        let by_storage = self.storage != State::Ambient && self.kind != ProductKind::Ingredient;
        self.controlled.unwrap_or(by_storage)
    }

    /// The name in a language, else in English, else any, else the code.
    pub fn name(&self, language: &str) -> &str {
        let name = self.names.get(language).or_else(|| self.names.get("en"));
        name.or_else(|| self.names.values().next())
            .unwrap_or(&self.code)
    }

    /// The counter's price of a pack, in hundredths of the currency, rounded half up.
    pub fn price_minor(&self, grams: Grams) -> Option<i64> {
        let per_kg = i128::from(self.price_minor_per_kg?);
        let price = (per_kg * i128::from(grams.milligrams()) + 500_000) / 1_000_000;
        i64::try_from(price).ok()
    }
}

/// What is said of a product that is sold as uncured.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Uncured {
    /// Does it look, taste and cut like the cured one?
    pub resembles: bool,
    /// A natural ingredient that brings nitrite: celery powder and the like.
    pub natural: Option<String>,
}

/// How a product is cured: what the limits divide by.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CuredAs {
    /// What is cured.
    pub class: Class,
    /// How, where the step does not say otherwise.
    pub method: Method,
    /// Will it be cooked in this kitchen? Nothing where nobody has said.
    pub heated: Option<bool>,
}

/// One part of a recipe, by weight.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Part {
    /// The product's code.
    pub product: String,
    /// Its weight in the batch that the recipe describes.
    pub grams: Grams,
}
