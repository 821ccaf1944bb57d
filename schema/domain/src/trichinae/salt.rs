//! How salty a sausage mix is, and what its salt must be.

use super::method::{Method, SaltWay};
use super::process::Salting;
use crate::grams::Grams;
use crate::heat::Judgement;
use crate::measure::Percent;
use crate::refusal::{Refusal, Result};
use crate::rows::{Bound, Finding, RowId, Rows};
use rust_decimal::Decimal;

/// Salt in a hundred parts of the unstuffed mix without its dry ingredients (`us-6.3-6`), truncated to
/// a tenth as the law's own example does: 2.93 is 2.9.
///
/// # Errors
/// Weights that cannot be.
pub fn salt_of_wet_mix(salt: Grams, mix: Grams, dry: Grams) -> Result<Percent> {
    if salt.milligrams() < 0 || dry.milligrams() < salt.milligrams() {
        let detail =
            "The salt is one of the dry ingredients, so they weigh at least as much as it.";
        return Err(Refusal::cannot_be("dry", detail));
    }
    let wet = mix - dry;
    if wet.is_none_left() {
        let detail = "The mix must weigh more than its dry ingredients. Check the weights.";
        return Err(Refusal::cannot_be("mix", detail));
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
            true => format!(
                "{number} % is so little that a part of one may have been typed for a percentage: \
                 3.3 %, not 0.033."
            ),
            false => format!("{number} % cannot be. Give the parts in a hundred."),
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
            let detail = format!(
                "{}° on the salometer cannot be; it ends at 100°.",
                pickle.salometer
            );
            return Err(Refusal::cannot_be("salometer", detail));
        }
        if pickle.per_hundred.is_sign_negative() {
            let detail = format!("{} parts of pickle cannot be.", pickle.per_hundred);
            return Err(Refusal::cannot_be("pickle", detail));
        }
    }
    Ok(())
}

/// Is it salted in one of the ways of the method?
pub(super) fn judge(method: &Method, salting: &Salting, rows: &Rows) -> Result<Option<Judgement>> {
    let mut nearest: Option<(usize, Judgement)> = None;
    for way in &method.salt {
        let lacks = lacks(way, salting);
        let Some((row, _)) = lacks.first().cloned() else {
            return Ok(None);
        };
        let said: Vec<String> = lacks.iter().map(|(_, says)| says.clone()).collect();
        let judged = Judgement::short(None, Finding::against(rows, &row, said.join(" ")));
        if nearest
            .as_ref()
            .is_none_or(|(count, _)| lacks.len() < *count)
        {
            nearest = Some((lacks.len(), judged));
        }
    }
    Ok(nearest.map(|(_, judged)| judged))
}

fn lacks(way: &SaltWay, salting: &Salting) -> Vec<(RowId, String)> {
    let percent = |value: Option<Percent>| value.map(Percent::number);
    let pickle = salting.pickle.as_ref();
    let asked = [
        ("salt on the meat, %", &way.dry, percent(salting.dry)),
        ("salt in the cure mix, %", &way.mix, percent(salting.mix)),
        (
            "salt in the meat's brine at the end, %",
            &way.brine,
            percent(salting.brine),
        ),
        (
            "pickle on the salometer, °",
            &way.salometer,
            pickle.map(|pickle| pickle.salometer),
        ),
        (
            "pickle to 100 of meat",
            &way.pickle,
            pickle.map(|pickle| pickle.per_hundred),
        ),
    ];
    asked
        .into_iter()
        .filter_map(|(what, bound, has)| lack(what, bound.as_ref()?, has))
        .collect()
}

pub(super) fn lack(what: &str, bound: &Bound, has: Option<Decimal>) -> Option<(RowId, String)> {
    if has.is_some_and(|has| bound.allows(has)) {
        return None;
    }
    let limit = crate::stability::Limit {
        bound: bound.clone(),
        open: false,
    };
    let has = has.map_or_else(
        || "none is on record".to_owned(),
        |has| format!("it has {}", has.round_dp(3).normalize()),
    );
    let wanted = limit.at(bound.value.round_dp(2)).said();
    Some((bound.row.clone(), format!("{what}: {wanted}; {has}.")))
}
