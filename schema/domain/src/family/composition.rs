//! What a lot is made of, for its ingredient list: from the lots actually used, and from the recipes
//! of what was bought ready.

use super::water::{added_water, made_up};
use super::{Family, Lists, Relative, strength};
use crate::cure::{self, Basis, Strength};
use crate::grams::Grams;
use crate::ingredients::{self, Ingredient, Nature};
use crate::lot::LotId;
use crate::measure::Percent;
use crate::product::Product;
use crate::statement::{self, Food, FoodChange};
use crate::supplied::SuppliedPart;
use crate::words::ProductKind;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use std::collections::{BTreeMap, HashMap};

/// How many levels of the recipes of bought goods are written out.
const DEEPEST: u32 = crate::supplied::DEEPEST;

/// What a composition is worked out from, besides the family.
struct CompositionSources<'a> {
    family: &'a Family,
    lists: &'a Lists,
    cures: &'a cure::CureRules,
}

/// The food that a lot is, as far as its statement goes; its name in a language.
pub fn food(
    family: &Family,
    of: &Relative,
    lists: &Lists,
    cures: &cure::CureRules,
    language: &str,
) -> Food {
    let telling = CompositionSources {
        family,
        lists,
        cures,
    };
    let product = &of.lot.product;
    let mut parts = telling.parts_of(of.lot.id);
    if parts.is_empty() {
        let within = match family.is_bought_cure(of) {
            true => telling.parts_of_curing_salt(strength(of), of.made()),
            false => Vec::new(),
        };
        parts.push(of_lot(of, of.made(), within));
    }
    // What the meat lost since it went in is no part of the finished food.
    let meat = parts.iter().filter(|part| part.species.is_some());
    let meat: Grams = meat.map(|part| part.grams).sum();
    let dried = crate::naming::fresh(family, of).filter(|(fresh, ready)| ready < fresh);
    let ingoing: Grams = parts.iter().map(|part| part.grams).sum();
    let finished = dried.map(|(fresh, ready)| share_of(meat, ready, fresh));
    Food {
        name: product.label_name(language).to_owned(),
        names: product.label_names().clone(),
        finished: finished.filter(|finished| !finished.is_none_left() && *finished < ingoing),
        parts,
        allergens: of.lot.allergens.clone(),
        may_contain: of.lot.may_contain.clone(),
        species: product.species,
        other_species: of.lot.species.clone(),
        water: Some(added_water(family, of).unwrap_or_default()),
        water_goes_unsaid: product.kind == ProductKind::Mixed
            || product.species.is_none()
            || product
                .label_names()
                .iter()
                .all(|(tag, name)| statement::says_water(name, tag)),
        ..Food::default()
    }
}

/// What is new in a lot against one of the same product that was made before.
pub fn changes(
    family: &Family,
    (before, now): (LotId, LotId),
    lists: &Lists,
    cures: &cure::CureRules,
) -> Option<FoodChange> {
    let telling = CompositionSources {
        family,
        lists,
        cures,
    };
    let (had, has) = (telling.near(before)?, telling.near(now)?);
    statement::changes(&had, &has)
}

fn whole() -> Percent {
    Percent::new(Decimal::ONE_HUNDRED)
}

/// So much of a weight as a part is of its batch, to the milligram below.
fn share_of(grams: Grams, part: Grams, batch: Grams) -> Grams {
    let share = i128::from(grams.milligrams()) * i128::from(part.milligrams());
    Grams::from_milligrams((share / i128::from(batch.milligrams().max(1))) as i64)
}

/// A thing that is cut or weighed off stays one thing; what is cured, cooked or mixed has parts.
pub(super) fn is_single(kind: ProductKind) -> bool {
    use ProductKind::*;
    matches!(kind, Carcass | Cut | Trim | Fat | Bone | Offal | Waste)
}

/// Is it only a step on the way in this kitchen: meat in its salt or cooked, that nobody buys as it is? A
/// customer reads what is in it, not what the house calls it.
fn is_a_step(of: &Relative) -> bool {
    let product = &of.lot.product;
    let of_meat = matches!(product.kind, ProductKind::Cured | ProductKind::Cooked);
    of_meat && product.species.is_some() && !product.sale.offered && of.lot.supplied.is_none()
}

/// One thing that went in. What was bought has the allergens that were told of it, whatever a list says.
pub(super) fn of_lot(of: &Relative, grams: Grams, parts: Vec<Ingredient>) -> Ingredient {
    let made = ingredient(&of.lot.product, grams, parts);
    match of.lot.supplied {
        Some(_) => Ingredient {
            allergens: of.lot.allergens.clone(),
            ..made
        },
        None => made,
    }
}

/// One thing that went in, as the list of products knows it.
pub(super) fn ingredient(product: &Product, grams: Grams, parts: Vec<Ingredient>) -> Ingredient {
    Ingredient {
        product: product.code.clone(),
        names: product.label_names().clone(),
        grams,
        parts,
        nature: product.part.nature.unwrap_or(match product.kind {
            ProductKind::Fat => Nature::Fat,
            _ if product.curing_salt().is_some() => Nature::Cure,
            _ => Nature::Food,
        }),
        allergens: product.allergens.clone(),
        species: product.species,
        ..Ingredient::default()
    }
}

impl CompositionSources<'_> {
    /// What went into a lot and into that, no further: a change deeper down was reported when it was
    /// made, and an allergen shows in the union that every lot carries.
    fn near(&self, lot: LotId) -> Option<Food> {
        let of = self.family.get(lot)?;
        Some(Food {
            name: of.lot.product.name("en").to_owned(),
            parts: self.inputs_of(of, 2),
            allergens: of.lot.allergens.clone(),
            ..Food::default()
        })
    }

    fn inputs_of(&self, of: &Relative, depth: u32) -> Vec<Ingredient> {
        let product = &of.lot.product;
        if depth == 0 || is_single(product.kind) {
            return Vec::new();
        }
        let used = self.family.ancestry.uses_of(of.lot.id);
        if used.is_empty() {
            return self.bought_parts(of, depth);
        }
        let inputs = used.iter().filter_map(|used| {
            let of = self.family.get(used.lot)?;
            let parts = self.inputs_of(of, depth - 1);
            let grams = Grams::from_milligrams(used.milligrams);
            Some(Ingredient {
                allergens: of.lot.allergens.clone(),
                lots: vec![of.lot.code.shown()],
                ..ingredient(&of.lot.product, grams, parts)
            })
        });
        ingredients::of_step(&product.code, inputs.collect())
    }

    /// The parts of a lot, worked out from its sources on: each lot after everything that went into it, so
    /// that a pot topped up for years costs its length once.
    fn parts_of(&self, lot: LotId) -> Vec<Ingredient> {
        let order = self.family.youngest_first(lot);
        let mut parts: HashMap<LotId, Vec<Ingredient>> = HashMap::with_capacity(order.len());
        let made_up = made_up(self.family, lot);
        for of in order.into_iter().rev() {
            let product = &of.lot.product;
            let uses = self.family.ancestry.uses_of(of.lot.id);
            let told = if is_single(product.kind) && !made_up.contains(&of.lot.id) {
                Vec::new()
            } else if uses.is_empty() {
                self.bought_parts(of, DEEPEST)
            } else {
                let mut inputs = Vec::with_capacity(uses.len());
                for used in uses {
                    let Some(of) = self.family.get(used.lot) else {
                        continue;
                    };
                    let grams = Grams::from_milligrams(used.milligrams);
                    let is_bag = self.family.is_bought_cure(of);
                    let mut within = match is_bag {
                        true => self.parts_of_curing_salt(strength(of), grams),
                        false => parts.get(&used.lot).cloned().unwrap_or_default(),
                    };
                    // A cure mix that nobody could weigh has nitrite in it, and nobody knows how much.
                    let cures = of.lot.product.curing_salt().is_some();
                    if cures && !is_bag && !strength(of).is_told() {
                        within.extend(self.parts_of_curing_salt(Strength::unknown(), Grams::ZERO));
                    }
                    let one = of_lot(of, grams, within);
                    match is_a_step(of) {
                        true => inputs.extend(ingredients::opened(one)),
                        false => inputs.push(one),
                    }
                }
                let water = self.family.water.get(&of.lot.made_by);
                inputs.extend(water.map(|grams| Ingredient::water(*grams)));
                ingredients::of_step(&product.code, inputs)
            };
            parts.insert(of.lot.id, told);
        }
        parts.remove(&lot).unwrap_or_default()
    }

    /// The parts of something bought: as its pack declares them, else by the list as it stood when it came
    /// in. Of a lot of the time before that was kept, by the list of today.
    fn bought_parts(&self, of: &Relative, depth: u32) -> Vec<Ingredient> {
        let made = of.made();
        match &of.lot.supplied {
            None => self.recipe_parts(&of.lot.product.code, made, depth),
            Some(_) if depth == 0 => Vec::new(),
            Some(supplied) if !supplied.ingredients.is_empty() => {
                let allergens = of.lot.allergens.clone();
                vec![Ingredient::declared(&supplied.ingredients, made, allergens)]
            }
            Some(supplied) => {
                let code = &of.lot.product.code;
                self.parts_as_stood(code, &supplied.recipe, made, depth)
            }
        }
    }

    fn parts_as_stood(
        &self,
        code: &str,
        recipe: &[SuppliedPart],
        grams: Grams,
        depth: u32,
    ) -> Vec<Ingredient> {
        if depth == 0 {
            return Vec::new();
        }
        let batch: Grams = recipe.iter().map(|part| part.grams).sum();
        let mut parts = Vec::with_capacity(recipe.len());
        for part in recipe {
            let Some(product) = self.family.listed.get(&part.version) else {
                continue;
            };
            let share = share_of(grams, part.grams, batch);
            let below = match product.curing_salt() {
                Some(strength) => self.parts_of_curing_salt(strength, share),
                None => self.parts_as_stood(&product.code, &part.parts, share, depth - 1),
            };
            parts.push(ingredient(product, share, below));
        }
        ingredients::of_step(code, parts)
    }

    fn recipe_parts(&self, code: &str, grams: Grams, depth: u32) -> Vec<Ingredient> {
        let Some(recipe) = self.lists.recipes.get(code).filter(|_| depth > 0) else {
            return Vec::new();
        };
        let batch: Grams = recipe.iter().map(|part| part.grams).sum();
        let mut parts = Vec::with_capacity(recipe.len());
        for part in recipe {
            let Some(product) = self.lists.products.get(&part.product) else {
                continue;
            };
            let share = share_of(grams, part.grams, batch);
            let below = match product.curing_salt() {
                Some(strength) => self.parts_of_curing_salt(strength, share),
                None => self.recipe_parts(&part.product, share, depth - 1),
            };
            parts.push(ingredient(product, share, below));
        }
        ingredients::of_step(code, parts)
    }

    /// The parts of a curing salt by name, from its strength: every part of a cure is listed
    /// (`us-I6`). Of one that nobody knows how strong it is nitrite is named all the same, with the least weight
    /// that there is.
    fn parts_of_curing_salt(&self, strength: Strength, grams: Grams) -> Vec<Ingredient> {
        use cure::Part::*;
        let mut parts = Vec::new();
        if let Ok(makeup) = strength.makeup(self.cures, "curing_salt") {
            parts.push((Salt, makeup.salt));
            for (basis, sodium, potassium) in [
                (Basis::SodiumNitrite, SodiumNitrite, PotassiumNitrite),
                (Basis::SodiumNitrate, SodiumNitrate, PotassiumNitrate),
            ] {
                let (share, own) = makeup.share(basis);
                parts.push((if own == basis { sodium } else { potassium }, share));
            }
        } else if !strength.is_told() {
            parts.extend([(Salt, whole()), (SodiumNitrite, Percent::default())]);
        }
        let of = |(part, share): (cure::Part, Percent)| {
            let name = self.cures.names.iter().find(|name| name.part == part)?;
            let names = [("en", &name.en), ("fr", &name.fr)]
                .map(|(tag, name)| (tag.to_owned(), name.clone()));
            let milligrams = Decimal::from(grams.milligrams()) * share.fraction();
            let least = i64::from(!strength.is_told() && part == SodiumNitrite);
            let grams = milligrams.trunc().to_i64().unwrap_or_default().max(least);
            (grams > 0).then(|| Ingredient {
                product: part.as_str().to_owned(),
                names: BTreeMap::from(names).into(),
                grams: Grams::from_milligrams(grams),
                nature: match part {
                    Salt => Nature::Food,
                    _ => Nature::Additive,
                },
                additive: Some(part.as_str().to_owned()),
                ..Ingredient::default()
            })
        };
        parts.into_iter().filter_map(of).collect()
    }
}
