//! Is the scale fine enough for so small a weight?

use super::assess::milligrams;
use super::says::CureSays;
use super::{Cure, CureRules, Method, Mix, ScaleClass};
use crate::grams::Grams;
use crate::measure::Percent;
use crate::refusal::Result;
use crate::rows::{Bound, Finding, Rows};
use rust_decimal::Decimal;

/// The smallest load that is sensible on a scale of that class and division, with its row.
pub fn least_load(
    rules: &CureRules,
    class: ScaleClass,
    division: Grams,
) -> Option<(Grams, &Bound)> {
    let grams = grams(division);
    let (_, _, least) = rules
        .weighing
        .divisions
        .iter()
        .find(|(of, coarsest, _)| *of == class && coarsest.is_none_or(|most| grams <= most))?;
    let load = division.milligrams() * i64::from(least.whole());
    Some((Grams::from_milligrams(load), least))
}

/// How many ppm one division of the scale is, up or down.
///
/// # Errors
/// As [`Mix::ppm`].
pub fn error_ppm(mix: &Mix, method: Method, strength: Percent, division: Grams) -> Result<Decimal> {
    mix.ppm(method, grams(division) * strength.fraction())
}

/// Every curing salt against the scale that it was weighed on.
pub(super) fn check(
    cure: &Cure,
    doses: &[(Percent, Grams)],
    mix: &Mix,
    rules: &CureRules,
    rows: &Rows,
) -> Result<Vec<Finding>> {
    let Some(division) = cure.scale else {
        return Ok(Vec::new());
    };
    let mut findings = Vec::new();
    for (strength, dose) in doses.iter().filter(|(_, dose)| !dose.is_none_left()) {
        let error = error_ppm(mix, cure.method, *strength, division)?.round();
        if let Some((least, bound)) = least_load(rules, ScaleClass::Three, division)
            && *dose < least
        {
            let says = CureSays::TooLittleForScale {
                dose: *dose,
                division,
                error,
                least,
            };
            findings.push(Finding::against(rows, &bound.row, says));
        }
        if let (Some(small), Some(fine)) =
            (&rules.weighing.small_meat, &rules.weighing.small_division)
            && grams(cure.meat) < small.value
            && !fine.allows(grams(division))
        {
            let says = CureSays::FinerScale {
                meat: cure.meat,
                fine: milligrams(fine.value),
                division,
                error,
            };
            findings.push(Finding::against(rows, &fine.row, says));
        }
    }
    Ok(findings)
}

pub(super) fn grams(weight: Grams) -> Decimal {
    Decimal::new(weight.milligrams(), 3)
}
