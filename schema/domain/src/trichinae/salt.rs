//! How salty a sausage mix is, and what its salt must be.

use super::method::{SaltWay, TrichinaeMethod};
use super::process::Salting;
use super::says::{CureFigure, MethodSays, ProcessSays};
use crate::grams::Grams;
use crate::heat::Judgement;
use crate::measure::Percent;
use crate::refusal::{Refusal, Result};
use crate::rows::{Bound, Finding, RowId, Rows};
use crate::stability::StabilityLimit;
use rust_decimal::Decimal;

/// Salt in a hundred parts of the unstuffed mix without its dry ingredients (`us-6.3-6`), truncated to
/// a tenth as the law's own example does: 2.93 is 2.9.
///
/// # Errors
/// Weights that cannot be.
pub fn salt_of_wet_mix(salt: Grams, mix: Grams, dry: Grams) -> Result<Percent> {
    if salt.milligrams() < 0 || dry.milligrams() < salt.milligrams() {
        return Err(Refusal::cannot_be("dry", ProcessSays::SaltIsDry));
    }
    let wet = mix - dry;
    if wet.is_none_left() {
        return Err(Refusal::cannot_be("mix", ProcessSays::MixTooLight));
    }
    let parts = |grams: Grams| Decimal::from(grams.milligrams());
    Ok(Percent::new(
        Percent::of(parts(salt), parts(wet))
            .number()
            .trunc_with_scale(1),
    ))
}

/// Refuses strengths that nobody salts meat with.
pub(super) fn plausible(salting: &Salting) -> Result<()> {
    let whole = Decimal::ONE_HUNDRED;
    let refuse = |field: &str, value: Percent, least: Decimal, most: Decimal| {
        let number = value.number();
        if number.is_zero() || (number >= least && number <= most) {
            return Ok(());
        }
        let detail = match number < least {
            true => ProcessSays::PartOfOne { percent: number },
            false => ProcessSays::CannotBe { percent: number },
        };
        Err(Refusal::cannot_be(field, detail))
    };
    let (tenth, half) = (Decimal::new(2, 1), Decimal::from(50));
    for (field, value, least, most) in [
        ("salt", salting.dry, tenth, half),
        ("mix", salting.mix, Decimal::TWO, whole),
        ("brine", salting.brine, tenth, Decimal::from(27)),
    ] {
        value.map_or(Ok(()), |value| refuse(field, value, least, most))?;
    }
    if let Some(pickle) = &salting.pickle {
        if pickle.salometer.is_sign_negative() || pickle.salometer > whole {
            let degrees = pickle.salometer;
            let detail = ProcessSays::Salometer { degrees };
            return Err(Refusal::cannot_be("salometer", detail));
        }
        if pickle.per_hundred.is_sign_negative() {
            let parts = pickle.per_hundred;
            let detail = ProcessSays::Pickle { parts };
            return Err(Refusal::cannot_be("pickle", detail));
        }
    }
    Ok(())
}

/// Is it salted in one of the ways of the method?
pub(super) fn judge(
    method: &TrichinaeMethod,
    salting: &Salting,
    rows: &Rows,
) -> Result<Option<Judgement>> {
    let mut nearest: Option<(usize, Judgement)> = None;
    for way in &method.salt {
        let lacks = lacks(way, salting);
        let Some((row, _)) = lacks.first().cloned() else {
            return Ok(None);
        };
        let count = lacks.len();
        let says = MethodSays::Lacks {
            lacks: lacks.into_iter().map(|(_, says)| says.into()).collect(),
        };
        let judged = Judgement::short(None, Finding::against(rows, &row, says));
        if nearest.as_ref().is_none_or(|(least, _)| count < *least) {
            nearest = Some((count, judged));
        }
    }
    Ok(nearest.map(|(_, judged)| judged))
}

fn lacks(way: &SaltWay, salting: &Salting) -> Vec<(RowId, MethodSays)> {
    let percent = |value: Option<Percent>| value.map(Percent::number);
    let pickle = salting.pickle.as_ref();
    let asked = [
        (CureFigure::Salt, &way.dry, percent(salting.dry)),
        (CureFigure::MixSalt, &way.mix, percent(salting.mix)),
        (CureFigure::BrineSalt, &way.brine, percent(salting.brine)),
        (
            CureFigure::Salometer,
            &way.salometer,
            pickle.map(|pickle| pickle.salometer),
        ),
        (
            CureFigure::Pickle,
            &way.pickle,
            pickle.map(|pickle| pickle.per_hundred),
        ),
    ];
    asked
        .into_iter()
        .filter_map(|(figure, bound, has)| lack(figure, bound.as_ref()?, has))
        .collect()
}

pub(super) fn lack(
    figure: CureFigure,
    bound: &Bound,
    has: Option<Decimal>,
) -> Option<(RowId, MethodSays)> {
    if has.is_some_and(|has| bound.allows(has)) {
        return None;
    }
    let limit = StabilityLimit {
        bound: bound.clone(),
        open: false,
    };
    let limit = limit.says_of(bound.value.round_dp(2));
    let says = match has.map(|has| has.round_dp(3)) {
        Some(has) => MethodSays::Lack { figure, limit, has },
        None => MethodSays::LackUnknown { figure, limit },
    };
    Some((bound.row.clone(), says))
}
