//! What goes into a food, gathered over all that it is made of: from recipes, or from the record.

use crate::duties::names::Part;
use crate::family::{Family, Lists, Relative};
use crate::grams::Grams;
use crate::lot::LotId;
use crate::product::{InCure, Product};
use crate::words::{Allergen, CurePart, Natural, ProductKind, Species};
use rust_decimal::Decimal;
use std::collections::{BTreeMap, BTreeSet, HashMap};

/// How many levels of recipes are looked through.
pub(super) const DEEPEST: u32 = 8;

/// What goes into a food, gathered over all that it is made of.
#[derive(Debug, Default)]
pub(super) struct Sum {
    pub parts: BTreeSet<Option<(Species, Part)>>,
    pub nitrite: bool,
    /// Is there something in it of which nobody knows what is in it?
    pub unknown: bool,
    pub whole: Decimal,
    pub salt: Decimal,
    pub water: Decimal,
    pub meat: Decimal,
    pub ingredients: BTreeSet<Option<String>>,
    pub texts: BTreeSet<(String, String)>,
    pub organs: BTreeMap<String, Decimal>,
    pub unlisted: BTreeSet<String>,
    /// The part of the animal that a piece with something in it is sold as.
    pub cut_as: Option<Option<(Species, Part)>>,
    pub fats: HashMap<Species, Decimal>,
    /// The allergens of what the recipe names.
    pub allergens: BTreeSet<Allergen>,
}

impl Sum {
    /// The names of something in it.
    fn names(&mut self, product: &Product) {
        let names = product.names.iter();
        self.texts
            .extend(names.map(|(language, name)| (language.clone(), name.clone())));
    }

    /// A thing that is what it is: nothing is known to be in it.
    fn leaf(&mut self, product: &Product, weight: Decimal) {
        self.whole += weight;
        // What goes into a cure is known by its strength, however it is called.
        if product.part.in_cure.is_none() {
            self.names(product);
        }
        match product.part.in_cure {
            Some(InCure::CuringSalt(_)) => self.nitrite = true,
            Some(InCure::Other(CurePart::Salt)) => self.salt += weight,
            _ if product.keeping.stable_as == Some(Natural::Salt) => self.salt += weight,
            _ => {}
        }
        if product.part.nature == Some(crate::ingredients::Nature::Water) {
            self.water += weight;
        }
        let Some(species) = product.species else {
            // A mix is bought by its name alone where nobody tells its parts.
            let plain = product.part.in_cure.is_some() || product.part.nature.is_some();
            self.ingredients.insert(Some(product.name("en").to_owned()));
            if !plain && product.keeping.stable_as != Some(Natural::Salt) {
                self.ingredients.insert(None);
            }
            return;
        };
        self.ingredients.insert(Some(product.name("en").to_owned()));
        self.meat += weight;
        use ProductKind::*;
        match product.kind {
            Fat | Rendered => *self.fats.entry(species).or_default() += weight,
            Bone | Stock | Waste => {}
            Offal => {
                let name = product.name("en").to_owned();
                *self.organs.entry(name).or_default() += weight;
                self.parts.insert(Some((species, Part::Other)));
            }
            Trim if product.cut.is_none() => {
                self.parts.insert(Some((species, Part::Trim)));
            }
            kind => {
                let part = product.cut.as_deref().and_then(part_of);
                self.parts.insert(part.map(|part| (species, part)));
                self.unknown |= matches!(kind, Cured | Cooked | Mixed);
            }
        }
    }

    pub fn recipe(&mut self, product: &Product, weight: Decimal, lists: &Lists, depth: u32) {
        let recipe = lists.recipes.get(&product.code);
        let whole: Grams = recipe.into_iter().flatten().map(|part| part.grams).sum();
        let Some(recipe) = recipe.filter(|_| depth > 0 && product.cut.is_none()) else {
            return self.leaf(product, weight);
        };
        for part in recipe {
            let share = Decimal::from(part.grams.milligrams())
                / Decimal::from(whole.milligrams().max(1))
                * weight;
            match lists.products.get(&part.product) {
                Some(product) => {
                    self.allergens.extend(&product.allergens);
                    if product.is_compound() && !lists.recipes.contains_key(&product.code) {
                        self.unlisted.insert(product.name("en").to_owned());
                    }
                    self.recipe(product, share, lists, depth - 1);
                }
                None => self.unknown = true,
            }
        }
    }

    /// A lot by what went into it, down to the cuts; what was bought by its recipe.
    pub fn lot(&mut self, family: &Family, of: &Relative, weight: Decimal, lists: &Lists) {
        let mut shares: HashMap<LotId, Decimal> = HashMap::from([(of.lot.id, weight)]);
        let made_up = crate::family::made_up(family, of.lot.id);
        // Each lot after all that was made of it: its share is whole when its turn comes.
        for of in family.youngest_first(of.lot.id) {
            let Some(share) = shares.remove(&of.lot.id) else {
                continue;
            };
            let product = &*of.lot.product;
            let uses = family.ancestry.uses_of(of.lot.id);
            let made_up = made_up.contains(&of.lot.id);
            if product.cut.is_some() && !made_up {
                self.leaf(product, share);
                continue;
            }
            if uses.is_empty() {
                let supplied = of.lot.supplied.iter();
                let declared: Vec<(&String, &String)> =
                    supplied.flat_map(|of| &of.ingredients).collect();
                let before = self.unlisted.clone();
                // Lots of the time before what they are made of was kept stay as they were judged.
                let untold = of
                    .lot
                    .supplied
                    .as_ref()
                    .is_some_and(|of| of.recipe.is_empty());
                let several = matches!(product.kind, ProductKind::Cured | ProductKind::Mixed)
                    && product.part.in_cure.is_none();
                if untold && (several || product.is_compound()) {
                    self.unlisted.insert(product.name("en").to_owned());
                }
                self.recipe(product, share, lists, DEEPEST);
                if !declared.is_empty() {
                    // The pack's own list is the whole of it.
                    self.unlisted = before;
                }
                for (language, text) in declared {
                    self.texts.insert((language.clone(), text.clone()));
                    let in_english = (language == "en").then(|| Some(text.clone()));
                    self.ingredients.extend(in_english);
                }
                continue;
            }
            let water = family.water.get(&of.lot.made_by).copied();
            let water = water.unwrap_or(Grams::ZERO);
            let used: i64 = uses.iter().map(|used| used.milligrams).sum();
            let all = Decimal::from((used + water.milligrams()).max(1));
            let poured = Decimal::from(water.milligrams()) / all * share;
            self.water += poured;
            self.whole += poured;
            // What it is cut as is told by its own name, whatever it was cut from.
            if let (Some(cut), Some(species)) = (product.cut.as_deref(), product.species) {
                self.cut_as = Some(part_of(cut).map(|part| (species, part)));
            }
            for used in uses {
                let part = Decimal::from(used.milligrams) / all * share;
                *shares.entry(used.lot).or_default() += part;
            }
        }
    }
}

/// The part of the animal that a cut is, by the trade's key for it; nothing for a key of the house's own.
fn part_of(cut: &str) -> Option<Part> {
    Some(match cut {
        "ham" | "hams" | "leg" | "legs" => Part::HindLeg,
        "butt" | "picnic" | "shoulder" | "shoulders" => Part::Shoulder,
        "loin" | "loins" => Part::Loin,
        "belly" => Part::Belly,
        "shank" | "shanks" | "hock" | "hocks" => Part::Shank,
        "trim" => Part::Trim,
        "jowl" => Part::Jowl,
        "feet" => Part::Feet,
        "spareribs" | "rib" | "racks" | "breast" | "breasts" | "flank" | "neck" => Part::Other,
        _ => return None,
    })
}
