//! A cure mix or a brine that is weighed together here, and what any lot brings to a cure.

use super::cure::CureCheck;
use super::facts::Facts;
use super::says::CureDeedSays;
use crate::error::Result;
use crate::wire::asked::StepAsked;
use crate::wire::cures::number;
use domain::cure::{Class, Cure, Method, Mixture, Strength};
use domain::dates::{Because, Rule};
use domain::family::{mixture_kept, mixture_read};
use domain::grams::Grams;
use domain::lot::Lot;
use domain::measure::Percent;
use domain::product::InCure;
use domain::words::{Addition, CurePart, Quantity};
use store::measurements::Measurement;

/// A cure mix or a brine: how strong it is, by what was weighed together.
pub(super) fn mixed(
    facts: &mut Facts<'_, '_>,
    asked: &StepAsked,
    lots: &[Lot],
    grams: impl Fn(usize) -> Result<Grams>,
    whole: Grams,
) -> Result<CureCheck> {
    let mut parts = Cure::new(
        Method::Dry,
        Class::WholeMuscle,
        Grams::ZERO,
        facts.moment.day,
    );
    let mut check = CureCheck::default();
    for (nth, lot) in lots.iter().enumerate() {
        if !add(facts, &mut parts, lot, grams(nth)?)? {
            let says = CureDeedSays::StrengthUnknown {
                lot: lot.code.clone(),
            };
            check.unproven(says.into(), facts.moment.at);
            return Ok(check);
        }
    }
    parts.water += water(asked);
    let mixture = Mixture::weighed(&parts, whole, &facts.law().cures)
        .map_err(|refusal| refusal.within("cure."))?;
    let Strength {
        nitrite,
        nitrate,
        salt,
        ..
    } = mixture.strength;
    let shown = |percent: Option<Percent>| {
        let percent = percent.unwrap_or_default().number();
        Percent::new(percent.round_dp(3).normalize())
    };
    let says = CureDeedSays::Mixed {
        nitrite: shown(nitrite),
        nitrate: shown(nitrate),
        salt: shown(salt),
    };
    check.because.push(Because {
        says: says.into(),
        rule: Rule::Practice(CureDeedSays::Rule.into()),
    });
    check.measured = kept(&mixture);
    check.warnings.push(CureDeedSays::Caution.into());
    Ok(check)
}

/// Water, ice and steam that a step added.
pub(super) fn water(asked: &StepAsked) -> Grams {
    let added = asked.added.iter().flatten();
    let water = added.filter(|added| added.what.0 != Addition::ScaleDifference);
    water.map(|added| added.grams.0).sum()
}

/// Did the list learn that it is a curing salt after this lot had come in?
fn learned(facts: &Facts<'_, '_>, lot: &Lot) -> bool {
    let listed = facts.standing.lists.products.get(&lot.product.code);
    lot.product.curing_salt().is_none() && listed.is_some_and(|of| of.curing_salt().is_some())
}

/// Is it a curing salt: as it was listed when it came in, or as the list has learned since? What is judged
/// again asks what is known of the lot, and not the list of today.
pub(super) fn is_salt(facts: &mut Facts<'_, '_>, lot: &Lot) -> Result<bool> {
    if lot.product.curing_salt().is_some() {
        return Ok(true);
    }
    if !learned(facts, lot) {
        return Ok(false);
    }
    let of_strength = [Quantity::NitritePercent, Quantity::NitratePercent];
    let read = facts.readings(lot.id)?;
    let told = read.iter().any(|(_, of, _)| of_strength.contains(of));
    Ok(told || facts.past.is_none())
}

/// Puts a lot to the cure; false where it is a curing salt and nobody knows how strong.
pub(super) fn add(
    facts: &mut Facts<'_, '_>,
    cure: &mut Cure,
    lot: &Lot,
    grams: Grams,
) -> Result<bool> {
    match lot.product.part.in_cure {
        _ if is_salt(facts, lot)? => {
            let read = facts.readings(lot.id)?;
            let last = |quantity: Quantity| {
                let found = read.iter().rev().find(|(_, of, _)| *of == quantity);
                found.map(|(_, _, millionths)| *millionths)
            };
            let mixture = mixture_read(&lot.product, last);
            if !mixture.is_known() {
                return Ok(false);
            }
            mixture.put_to(cure, grams);
        }
        Some(InCure::CuringSalt(_)) => return Ok(false),
        Some(InCure::Other(part)) => match part {
            CurePart::Salt => cure.salt += grams,
            CurePart::Sugar => cure.sugar += grams,
            CurePart::Ascorbate => cure.ascorbate += grams,
            CurePart::Erythorbate => cure.erythorbate += grams,
            CurePart::Starter => cure.starter = true,
        },
        None if !lot.species.is_empty() => cure.meat += grams,
        None => cure.other += grams,
    }
    Ok(true)
}

/// A strength as it is kept with its lot.
pub(super) fn kept(mixture: &Mixture) -> Vec<Measurement> {
    let kept = mixture_kept(mixture).into_iter();
    let of = |(quantity, value)| Measurement {
        quantity,
        millionths: number(value).0,
    };
    kept.map(of).collect()
}
