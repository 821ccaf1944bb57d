//! What is known of a food as far as its name goes: from the lists alone, when it is listed; from the
//! record, when it is labelled.

use super::sum::{DEEPEST, Sum};
use crate::duties::names::Part;
use crate::family::{Family, Lists, Relative, added_water};
use crate::grams::Grams;
use crate::law::Law;
use crate::lot::LotId;
use crate::measure::{Percent, Temperature};
use crate::product::Product;
use crate::words::{Allergen, ProductKind, Quantity, Species};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use std::collections::{BTreeMap, BTreeSet, HashMap};

/// What is known of a food. What nobody knows is `None`.
#[derive(Debug, Clone)]
pub struct NameFacts<'a> {
    /// The food.
    pub product: &'a Product,
    /// The animals in it.
    pub species: BTreeSet<Species>,
    /// The allergens in it.
    pub allergens: BTreeSet<Allergen>,
    /// The parts of animals in it; `None` stands for one that nobody knows.
    pub parts: BTreeSet<Option<(Species, Part)>>,
    /// Is it meat and nothing else?
    pub is_meat_alone: bool,
    /// Did nitrite or nitrate go in?
    pub nitrite: Option<bool>,
    /// How much of both went in, in ppm, where it was cured here.
    pub cured_with: Option<Decimal>,
    /// Was it cured dry?
    pub dry: bool,
    /// Did water or brine go in?
    pub water_in: bool,
    /// The hottest core that was read.
    pub core: Option<Temperature>,
    /// What the meat weighed fresh, and what is left of it.
    pub weights: Option<(Grams, Grams)>,
    /// Salt that went in, of all that went in.
    pub salt: Option<Percent>,
    /// Its pH.
    pub ph: Option<Decimal>,
    /// Its water activity.
    pub water_activity: Option<Decimal>,
    /// What went into the meat besides, water with it, and the meat: in proportion.
    pub solution: Option<(Grams, Grams)>,
    /// Water of all that went in.
    pub water: Option<Percent>,
    /// Water that was poured in, of the finished weight.
    pub water_left: Option<Percent>,
    /// What it weighs more than its meat did, of the finished weight.
    pub gained: Option<Percent>,
    /// Meat of all that went in.
    pub meat: Option<Percent>,
    /// The names of what went in; `None` stands for something that nobody knows the parts of.
    pub ingredients: BTreeSet<Option<String>>,
    /// The names of what went in, and the lists on the packs of what was bought, each with its language.
    pub texts: BTreeSet<(String, String)>,
    /// The names of the organs in it, and how much of all that went in they are.
    pub organs: BTreeMap<String, Percent>,
    /// What is made of several things, and nobody has told of which.
    pub unlisted: BTreeSet<String>,
    /// Is it what a record tells, and not the lists alone?
    pub of_record: bool,
    /// Has nobody entered what it is made of?
    pub no_recipe: bool,
    /// Did fat as such go in?
    pub fat_in: bool,
    /// Fat of another animal in it, and how much of the whole.
    pub other_fat: Option<(Species, Percent)>,
}

impl<'a> NameFacts<'a> {
    /// What the product itself tells.
    fn of(product: &'a Product) -> NameFacts<'a> {
        NameFacts {
            product,
            species: product.species.into_iter().collect(),
            allergens: product.allergens.clone(),
            parts: BTreeSet::new(),
            is_meat_alone: false,
            nitrite: None,
            cured_with: None,
            dry: is_dry(product),
            water_in: false,
            core: None,
            weights: None,
            salt: None,
            ph: None,
            water_activity: None,
            solution: None,
            water: None,
            water_left: None,
            gained: None,
            meat: None,
            ingredients: BTreeSet::new(),
            texts: BTreeSet::new(),
            organs: BTreeMap::new(),
            unlisted: BTreeSet::new(),
            of_record: false,
            no_recipe: false,
            fat_in: false,
            other_fat: None,
        }
    }

    /// What the lists tell of a product.
    pub fn listed(product: &'a Product, lists: &Lists) -> NameFacts<'a> {
        let mut facts = NameFacts::of(product);
        let mut sum = Sum::default();
        sum.recipe(product, Decimal::ONE, lists, DEEPEST);
        let recipe = lists.recipes.contains_key(&product.code);
        facts.no_recipe = !recipe && product.is_made_of_several();
        facts.take(sum);
        facts
    }

    /// What the record tells of a lot. The family has to be loaded with its ancestors.
    pub fn of_lot(family: &Family, of: &'a Relative, lists: &Lists) -> NameFacts<'a> {
        let product = &*of.lot.product;
        let mut facts = NameFacts::of(product);
        let line = family.youngest_first(of.lot.id);
        facts.of_record = true;
        facts.species = family.species_in(&of.lot);
        facts.allergens = of.lot.allergens.clone();
        let mut sum = Sum::default();
        sum.lot(family, of, Decimal::ONE, lists);
        facts.dry |= line.iter().any(|of| is_dry(&of.lot.product));
        let core = line.iter().take_while(|of| !of.lot.product.raw);
        let logged = |of: &Relative| family.cores.get(&of.lot.made_by).copied();
        facts.core = core.filter_map(|of| hottest(of).max(logged(of))).max();
        let read = |quantity| {
            let millionths = of.last_reading(quantity)?;
            Some(Decimal::new(millionths, 6).normalize())
        };
        (facts.ph, facts.water_activity) = (read(Quantity::Ph), read(Quantity::WaterActivity));
        let cured = line.iter().any(|of| {
            let went_in = |quantity| of.last_reading(quantity).is_some_and(|ppm| ppm > 0);
            went_in(Quantity::NitritePpm) || went_in(Quantity::NitratePpm)
        });
        facts.cured_with = line.iter().find_map(|of| {
            let both =
                [Quantity::NitritePpm, Quantity::NitratePpm].map(|of_it| of.last_reading(of_it));
            let both: Vec<i64> = both.into_iter().flatten().collect();
            (!both.is_empty()).then(|| Decimal::new(both.iter().sum(), 6).normalize())
        });
        facts.weights = fresh(family, of);
        facts.gained = facts.weights.and_then(|(fresh, ready)| {
            let (fresh, ready) = (fresh.milligrams(), ready.milligrams());
            (ready > fresh).then(|| Percent::of((ready - fresh).into(), ready.into()))
        });
        facts.water_left = added_water(family, of);
        facts.take(sum);
        if cured {
            facts.nitrite = Some(true);
        }
        facts
    }

    /// What is made of several things of which nobody has told; what its name alone tells is one thing.
    pub fn untold<'f>(&'f self, law: &'f Law) -> impl Iterator<Item = &'f String> {
        let single = &law.words.single;
        { self.unlisted.iter() }.filter(move |name| !single.is_all_of(name, "en"))
    }

    fn take(&mut self, sum: Sum) {
        self.parts = match sum.cut_as {
            Some(own) => [own].into(),
            None => sum.parts,
        };
        self.nitrite = match (sum.nitrite, sum.unknown) {
            (true, _) => Some(true),
            (false, true) => None,
            (false, false) => Some(false),
        };
        self.water_in = sum.water > Decimal::ZERO;
        let all = sum.whole;
        self.is_meat_alone = !all.is_zero() && all == sum.meat;
        let grams = |weight: Decimal| {
            let kilogram = Decimal::from(1_000_000);
            Grams::from_milligrams((weight * kilogram).round().to_i64().unwrap_or(0))
        };
        self.solution = self
            .water_in
            .then(|| (grams(all - sum.meat), grams(sum.meat)));
        if !all.is_zero() && !sum.unknown {
            self.salt = Some(Percent::of(sum.salt, all));
        }
        if !all.is_zero() {
            self.water = Some(Percent::of(sum.water, all));
            self.meat = Some(Percent::of(sum.meat, all));
        }
        self.allergens.extend(sum.allergens);
        self.ingredients = sum.ingredients;
        self.texts = sum.texts;
        // What the food itself is called tells nothing of what is in it.
        let own = &self.product.names;
        self.texts
            .retain(|(language, text)| own.get(language) != Some(text));
        self.unlisted = sum.unlisted;
        self.fat_in = !sum.fats.is_empty();
        let of_all = |(name, weight)| (name, Percent::of(weight, all.max(weight)));
        self.organs = sum.organs.into_iter().map(of_all).collect();
        // Lard is of the pig; what else was rendered into it is another animal's.
        let is_lard = self.product.kind == ProductKind::Rendered;
        let own = self.product.species.filter(|_| is_lard);
        let other = sum
            .fats
            .iter()
            .filter(|(of, _)| own.is_some_and(|own| own != **of));
        let most = other.max_by_key(|(_, part)| **part);
        if let Some((of, part)) = most.filter(|_| !all.is_zero()) {
            self.other_fat = Some((*of, Percent::of(*part, all)));
        }
    }
}

fn is_dry(product: &Product) -> bool {
    let cure = product.cured.cure;
    cure.is_some_and(|cure| cure.method.is_dry())
}

fn hottest(of: &Relative) -> Option<Temperature> {
    let read = of.readings.iter();
    read.filter_map(|reading| reading.temperature()).max()
}

/// What the meat in a lot weighed before it was cured, in proportion to what came out, and what the lot
/// weighs. Nothing where nothing was cured here.
pub(crate) fn fresh(family: &Family, of: &Relative) -> Option<(Grams, Grams)> {
    let mut known: HashMap<LotId, Option<Decimal>> = HashMap::new();
    let order = family.youngest_first(of.lot.id);
    for of in order.into_iter().rev() {
        let uses = family.ancestry.uses_of(of.lot.id);
        let fresh = match (of.lot.product.kind, uses.is_empty()) {
            (ProductKind::Cured | ProductKind::Cooked, false) => {
                let meat = uses.iter().filter_map(|used| {
                    let from = family.get(used.lot)?;
                    if !from.has_species() {
                        return None;
                    }
                    let whole = Decimal::from(from.made().milligrams().max(1));
                    let part = Decimal::from(used.milligrams) / whole;
                    Some(
                        known
                            .get(&used.lot)
                            .copied()
                            .flatten()
                            .map(|all| all * part),
                    )
                });
                let all: Option<Vec<Decimal>> = meat.collect();
                all.map(|all| all.into_iter().sum())
            }
            (ProductKind::Cured | ProductKind::Cooked, true) => None,
            _ => Some(Decimal::from(of.made().milligrams())),
        };
        known.insert(of.lot.id, fresh);
    }
    if !matches!(
        of.lot.product.kind,
        ProductKind::Cured | ProductKind::Cooked
    ) {
        return None;
    }
    let fresh = known.get(&of.lot.id).copied().flatten()?;
    let fresh = Grams::from_milligrams(fresh.round().to_i64()?);
    (!fresh.is_none_left() && !of.made().is_none_left()).then(|| (fresh, of.made()))
}
