//! Water that steps poured in: how much of a lot it is when it is finished, and which pieces it makes more
//! than one thing.

use super::composition::is_single;
use super::{Family, Relative};
use crate::genealogy::Use;
use crate::grams::Grams;
use crate::ingredients::Nature;
use crate::lot::LotId;
use crate::measure::Percent;
use rust_decimal::Decimal;
use std::collections::{BTreeSet, HashMap};

/// What of a lot is water that was poured in, by all steps that led to it; nothing where none was.
///
/// What a step lost is water first: it dripped out again, or went in the smoke.
pub fn added_water(family: &Family, of: &Relative) -> Option<Percent> {
    let mut parts: HashMap<LotId, Decimal> = HashMap::new();
    for of in family.youngest_first(of.lot.id).into_iter().rev() {
        let uses = family.ancestry.uses_of(of.lot.id);
        let own = of.lot.product.part.nature == Some(Nature::Water);
        let part = match uses.is_empty() {
            true => Decimal::from(u8::from(own)),
            false => {
                let step = of.lot.made_by;
                let amount = |known: Option<&Grams>| {
                    Decimal::from(known.copied().unwrap_or(Grams::ZERO).milligrams())
                };
                let poured = amount(family.water.get(&step));
                let used = |of: &Use| Decimal::from(of.milligrams);
                let whole: Decimal = uses.iter().map(used).sum::<Decimal>() + poured;
                let within = |of: &Use| parts.get(&of.lot).copied().unwrap_or_default() * used(of);
                let water = uses.iter().map(within).sum::<Decimal>() + poured;
                let finished = whole - amount(family.lost.get(&step));
                let left = (finished - (whole - water)).clamp(Decimal::ZERO, water);
                match finished > Decimal::ZERO {
                    true => left / finished,
                    false => Decimal::ZERO,
                }
            }
        };
        parts.insert(of.lot.id, part);
    }
    let part = parts.remove(&of.lot.id).filter(|part| !part.is_zero())?;
    Some(Percent::new((part * Decimal::ONE_HUNDRED).round_dp(6)))
}

/// The lots of cut or trimmed meat that are more than that one thing: water was poured in, or something
/// that is of no animal went in, here or before.
pub(crate) fn made_up(family: &Family, lot: LotId) -> BTreeSet<LotId> {
    let mut found = BTreeSet::new();
    for of in family.youngest_first(lot).into_iter().rev() {
        if !is_single(of.lot.product.kind) {
            continue;
        }
        let poured = family.water.contains_key(&of.lot.made_by);
        let uses = family.ancestry.uses_of(of.lot.id);
        let more = uses.iter().any(|used| {
            let input = family.get(used.lot);
            found.contains(&used.lot) || input.is_some_and(|input| !input.has_species())
        });
        if !uses.is_empty() && (poured || more) {
            found.insert(of.lot.id);
        }
    }
    found
}
