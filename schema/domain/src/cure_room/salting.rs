//! How long a piece lies in salt: by its weight, by its thickness, or so many days.

use super::says::SaltingSays;
use super::{CureRoomRules, Span};
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
    rules: &CureRoomRules,
) -> Result<Span> {
    let days = match time {
        SaltTime::For(Span::Months(months)) => {
            // Counted at 31 days only to see that it is a time that anybody salts for.
            within(Decimal::from(months) * Decimal::from(31), "salt", rules)?;
            return Ok(Span::Months(months));
        }
        SaltTime::For(Span::Days(days)) => Decimal::from(days),
        SaltTime::DaysPerPound(rate) => {
            sane(rate, Unit::Pound, rules.days_per_pound.as_ref())?;
            if green.is_none_left() {
                return Err(Refusal::cannot_be("green", SaltingSays::NoGreen));
            }
            let hundredths = Decimal::from(green.milligrams()) * Decimal::ONE_HUNDRED;
            times(rate, hundredths / Decimal::from(POUND))?
        }
        SaltTime::DaysPerInch(rate) => {
            sane(rate, Unit::Inch, rules.days_per_inch.as_ref())?;
            let thickness = thickness_mm.filter(|thickness| *thickness > Decimal::ZERO);
            let Some(thickness) = thickness else {
                return Err(Refusal::cannot_be("thickness_mm", SaltingSays::NoThickness));
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
        .ok_or_else(|| Refusal::cannot_be("salt", SaltingSays::TooMany))
}

/// What days are given for.
#[derive(Clone, Copy)]
enum Unit {
    Pound,
    Inch,
}

fn sane(rate: Decimal, unit: Unit, most: Option<&Bound>) -> Result<()> {
    let field = match unit {
        Unit::Pound => "days_per_pound",
        Unit::Inch => "days_per_inch",
    };
    if rate <= Decimal::ZERO {
        let says = match unit {
            Unit::Pound => SaltingSays::PoundCannotBe { rate },
            Unit::Inch => SaltingSays::InchCannotBe { rate },
        };
        return Err(Refusal::cannot_be(field, says));
    }
    let Some(most) = most.filter(|most| !most.allows(rate)) else {
        return Ok(());
    };
    let most = most.value;
    let says = match unit {
        Unit::Pound => SaltingSays::PoundTooLong { rate, most },
        Unit::Inch => SaltingSays::InchTooLong { rate, most },
    };
    Err(Refusal::cannot_be(field, says))
}

fn within(days: Decimal, field: &str, rules: &CureRoomRules) -> Result<()> {
    if days <= Decimal::ZERO {
        return Err(Refusal::cannot_be(field, SaltingSays::ADayAtLeast));
    }
    match rules
        .days_in_salt
        .as_ref()
        .filter(|most| !most.allows(days))
    {
        None => Ok(()),
        Some(most) => Err(Refusal::cannot_be(
            field,
            SaltingSays::TooLong {
                days,
                most: most.value,
            },
        )),
    }
}
