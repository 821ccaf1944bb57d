//! What is known of something that came in: by its animal, by what its pack declares, by the recipe on the list
//! as it stood, by its entry. Where none of them tells, it is not known.

use super::{Asker, Told, Topic, Why};
use crate::cure::Strength;
use crate::family::{Relative, strength};
use crate::ingredients::Nature;
use crate::measure::Percent;
use crate::product::{InCure, Product};
use crate::supplied::SuppliedPart;
use crate::words::{DeedKind, Natural, ProductKind, Species};
use std::collections::BTreeMap;

const NO: (Told, Why) = (Told::No, Why::Nothing);
const YES: (Told, Why) = (Told::Yes, Why::In);
const NOT_ENTERED: (Told, Why) = (Told::NotKnown, Why::NotEntered);
const VAGUE: (Told, Why) = (Told::NotKnown, Why::Vague);

impl Asker<'_> {
    /// What is known of a lot that was not made here, beyond what its record says itself.
    pub(super) fn came_in(&self, of: &Relative, topic: Topic) -> (Told, Why) {
        let product = &of.lot.product;
        if of.made_by.kind == DeedKind::Adopt {
            return (Told::NotKnown, Why::Unknown);
        }
        if of.source.as_ref().is_some_and(|from| from.animal.is_some()) {
            return NO;
        }
        if topic == Topic::Nitrite && cures(product) {
            return of_strength(&strength(of));
        }
        let Some(supplied) = &of.lot.supplied else {
            return self.listed(product, topic);
        };
        if topic.is_allergen() && supplied.allergens_by_pack {
            return NO;
        }
        if !supplied.ingredients.is_empty() {
            return self.declared(&supplied.ingredients, topic);
        }
        match supplied.recipe.is_empty() {
            true => self.listed(product, topic),
            false => self.of_recipe(&supplied.recipe, topic),
        }
    }

    /// By the list that stands on the pack, in the languages that we have words of.
    fn declared(&self, texts: &BTreeMap<String, String>, topic: Topic) -> (Told, Why) {
        let rules = self.rules;
        let read: Vec<(&str, &str)> = texts
            .iter()
            .filter(|(language, _)| rules.alcohol.speaks(language))
            .map(|(language, text)| (language.as_str(), text.as_str()))
            .collect();
        if read.is_empty() {
            return NOT_ENTERED;
        }
        let any = |has: &dyn Fn(&str, &str) -> bool| read.iter().any(|(of, text)| has(text, of));
        match topic {
            // What the words of the list name was told when it came in.
            Topic::Allergen(_) | Topic::Gluten | Topic::Raw => NO,
            Topic::Species(species) if any(&|text, of| self.tells(text, species, of)) => YES,
            Topic::Species(_) if any(&|text, of| rules.any_animal.is_in(text, of)) => VAGUE,
            Topic::Alcohol if any(&|text, of| rules.alcohol.is_in(text, of)) => YES,
            Topic::Alcohol if any(&|text, of| rules.perhaps_alcohol.is_in(text, of)) => VAGUE,
            Topic::Nitrite if any(&|text, of| rules.brings_nitrite(text, of)) => YES,
            Topic::Species(_) | Topic::Alcohol | Topic::Nitrite => NO,
        }
    }

    /// Does a list on a pack name an animal? In small letters: capitals that grow would hide what stands after them.
    fn tells(&self, text: &str, species: Species, language: &str) -> bool {
        self.species.tells(&text.to_lowercase(), species, language)
    }

    /// By a recipe of the list as it stood: of its parts the worst.
    fn of_recipe(&self, parts: &[SuppliedPart], topic: Topic) -> (Told, Why) {
        let told = parts.iter().map(|part| {
            let Some(product) = self.family.listed.get(&part.version) else {
                return NOT_ENTERED;
            };
            if topic.is_of_product(product) {
                return YES;
            }
            match part.parts.is_empty() {
                true => self.listed(product, topic),
                false => self.of_recipe(&part.parts, topic),
            }
        });
        told.max_by_key(|(told, _)| *told).unwrap_or(NOT_ENTERED)
    }

    /// By its entry in the list alone, which counts as the supplier's word as far as somebody has entered
    /// anything. What nobody entered is not known.
    fn listed(&self, product: &Product, topic: Topic) -> (Told, Why) {
        if topic.is_of_product(product) {
            return YES;
        }
        if topic == Topic::Nitrite && cures(product) {
            let bag = product.curing_salt().unwrap_or(Strength::unknown());
            return of_strength(&bag);
        }
        let rules = self.rules;
        let by_nature = product.keeping.stable_as;
        let is_spice =
            by_nature == Some(Natural::Spice) || product.part.nature == Some(Nature::Spice);
        match topic {
            Topic::Alcohol => match by_nature {
                Some(Natural::Wine | Natural::Spirits | Natural::Beer) => return YES,
                Some(Natural::Vinegar) => return VAGUE,
                _ if rules.alcohol.names(product) => return YES,
                _ if !is_spice && rules.perhaps_alcohol.names(product) => return VAGUE,
                _ => {}
            },
            Topic::Nitrite if rules.nitrite.names(product) => return YES,
            Topic::Nitrite if rules.natural_nitrite.names(product) => return YES,
            Topic::Species(_) if product.species.is_none() && rules.any_animal.names(product) => {
                return VAGUE;
            }
            _ => {}
        }
        // A mix of spices may hold any allergen; nothing else that is asked about.
        if self.is_one_thing(product) || is_spice && !topic.is_allergen() {
            return NO;
        }
        // Somebody who entered its allergens, or its animal, entered all of them.
        let entered = !product.allergens.is_empty() && !product.kind.has_parts();
        match topic {
            Topic::Allergen(_) | Topic::Gluten | Topic::Species(_) if entered => NO,
            _ => NOT_ENTERED,
        }
    }

    /// Is it one thing, that has nothing in it but itself?
    fn is_one_thing(&self, product: &Product) -> bool {
        use Natural::*;
        use ProductKind::{Bone, Carcass, Cut, Fat, Offal, Trim};
        let of_animal = matches!(product.kind, Carcass | Cut | Trim | Fat | Bone | Offal);
        let by_nature = matches!(
            product.keeping.stable_as,
            Some(
                Salt | Sugar
                    | Honey
                    | Oil
                    | Nuts
                    | Produce
                    | Water
                    | RenderedFat
                    | SaltedCasing
                    | CuringSalt
                    | Wine
                    | Spirits
                    | Beer
                    | Vinegar
            )
        );
        let in_cure = product.part.in_cure.is_some();
        of_animal && product.species.is_some()
            || by_nature
            || in_cure
            || self.rules.single.is_name_of(product)
    }
}

/// Is it something that cures?
fn cures(product: &Product) -> bool {
    matches!(product.part.in_cure, Some(InCure::CuringSalt(_)))
        || product.keeping.stable_as == Some(Natural::CuringSalt)
}

/// By the strength of a curing salt: of what no bag tells, nothing is known.
fn of_strength(strength: &Strength) -> (Told, Why) {
    let parts = [strength.nitrite, strength.nitrate];
    let known: Vec<Percent> = parts.into_iter().flatten().collect();
    match known.iter().any(|percent| *percent > Percent::default()) {
        true => YES,
        false if known.is_empty() => NOT_ENTERED,
        false => NO,
    }
}
