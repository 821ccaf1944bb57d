//! How long a piece lies in salt: by its weight, by its thickness, or so many days.

use super::{Rules, Span};
use crate::grams::Grams;
use crate::refusal::{Refusal, Result};
use crate::rows::Bound;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

/// How the time in salt is given.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SaltTime {
    /// So many days or months, whatever it weighs.
    For(Span),
    /// So many days for each pound of green weight.
    DaysPerPound(Decimal),
    /// So many days for each inch at the thickest place.
    DaysPerInch(Decimal),
}

/// The time in salt. Days for a pound or an inch are rounded up to a whole day.
///
/// # Errors
/// A rate that nobody salts by (`11½ days per pound` is a misprint of 1½), a missing weight or
/// thickness, or more days than any piece lies in salt.
pub fn salt_span(
    time: SaltTime,
    green: Grams,
    thickness_mm: Option<Decimal>,
    rules: &Rules,
) -> Result<Span> {
    let days = match time {
        SaltTime::For(Span::Months(months)) => {
            // Counted at 31 days only to see that it is a time that anybody salts for.
            within(Decimal::from(months) * Decimal::from(31), "salt", rules)?;
            return Ok(Span::Months(months));
        }
        SaltTime::For(Span::Days(days)) => Decimal::from(days),
        SaltTime::DaysPerPound(rate) => {
            sane(rate, "pound", rules.days_per_pound.as_ref())?;
            if green.is_none_left() {
                let says = "Days for each pound need the green weight. Weigh it.";
                return Err(Refusal::cannot_be("green", says));
            }
            let hundredths = Decimal::from(green.milligrams()) * Decimal::ONE_HUNDRED;
            times(rate, hundredths / Decimal::from(POUND))?
        }
        SaltTime::DaysPerInch(rate) => {
            sane(rate, "inch", rules.days_per_inch.as_ref())?;
            let thickness = thickness_mm.filter(|thickness| *thickness > Decimal::ZERO);
            let Some(thickness) = thickness else {
                let says =
                    "Days for each inch need the thickness at the thickest place, in millimetres.";
                return Err(Refusal::cannot_be("thickness_mm", says));
            };
            times(rate, thickness / Decimal::new(254, 1))?
        }
    };
    // A pound is no whole number of milligrams: 15 lb at 4 days are 60 days, not 60 and a bit.
    let days = days.round_dp(2).ceil();
    within(days, "salt", rules)?;
    Ok(Span::Days(days.to_u32().unwrap_or(u32::MAX)))
}

/// 453.59237 g, in hundredths of a milligram.
const POUND: i64 = 45_359_237;

fn times(rate: Decimal, size: Decimal) -> Result<Decimal> {
    rate.checked_mul(size)
        .ok_or_else(|| Refusal::cannot_be("salt", "So many days cannot be. Look at the numbers."))
}

fn sane(rate: Decimal, unit: &str, most: Option<&Bound>) -> Result<()> {
    let field = format!("days_per_{unit}");
    if rate <= Decimal::ZERO {
        return Err(Refusal::cannot_be(
            field,
            format!("{rate} days for each {unit} cannot be."),
        ));
    }
    match most.filter(|most| !most.allows(rate)) {
        None => Ok(()),
        Some(most) => Err(Refusal::cannot_be(
            field,
            format!(
                "{rate} days for each {unit} cannot be: {} is the most that anybody salts for. Look for a misprint, such as 11½ for 1½ or pounds for inches.",
                most.value.normalize()
            ),
        )),
    }
}

fn within(days: Decimal, field: &str, rules: &Rules) -> Result<()> {
    if days <= Decimal::ZERO {
        return Err(Refusal::cannot_be(
            field,
            "A piece lies in salt for a day at least.",
        ));
    }
    match rules
        .days_in_salt
        .as_ref()
        .filter(|most| !most.allows(days))
    {
        None => Ok(()),
        Some(most) => Err(Refusal::cannot_be(
            field,
            format!(
                "{} days in salt cannot be: {} is the most. Look at the rate, the weight and its unit.",
                days.normalize(),
                most.value.normalize()
            ),
        )),
    }
}
