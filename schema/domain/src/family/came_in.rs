//! What the raw food in some lots came in as, and whether anybody knows of which animal it is.

use super::{Family, Relative};
use crate::lot::LotId;
use crate::words::ProductKind;
use std::collections::BTreeSet;

/// Raw meat of which nothing on record says what animal it is of, if these lots have any in them.
pub fn unknown_animal<'a>(family: &'a Family, lots: &[LotId]) -> Option<&'a Relative> {
    use ProductKind::*;
    let of_an_animal = |of: &&Relative| {
        let kind = of.lot.product.kind;
        matches!(kind, Carcass | Cut | Trim | Bone | Offal | Cured | Mixed)
    };
    // Fish is of no animal that a list of meat knows; what is bought as a mixture may have more in it than the fish.
    let is_fish = |of: &&Relative| {
        let mut allergens = of.lot.allergens.iter();
        of.lot.product.kind != Mixed && allergens.any(|of| of.is_of_the_water())
    };
    let came = came_in(family, lots).into_iter();
    let came = came.filter(|of| !is_fish(of));
    let unknown = came.filter(|of| !of.has_species() && of.lot.condition().stable.is_none());
    unknown.filter(of_an_animal).min_by_key(|of| of.lot.id)
}

/// The raw food that came in and went into these lots raw. What was ready when it went in is not looked into.
pub fn came_in<'a>(family: &'a Family, lots: &[LotId]) -> Vec<&'a Relative> {
    let mut came = Vec::new();
    let mut open: Vec<LotId> = lots.to_vec();
    let mut seen: BTreeSet<LotId> = BTreeSet::new();
    while let Some(lot) = open.pop() {
        let Some(of) = family.get(lot).filter(|_| seen.insert(lot)) else {
            continue;
        };
        if of.lot.condition().is_ready() {
            continue;
        }
        let uses = family.ancestry.uses_of(lot);
        if uses.is_empty() {
            came.push(of);
        }
        open.extend(uses.iter().map(|part| part.lot));
    }
    came
}
