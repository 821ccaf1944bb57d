//! Brine: what a salometer's degrees mean, and how much salt is in how much water.

use super::says::BrineSays;
use super::{CureRules, Salometer};
use crate::measure::Percent;
use crate::refusal::{Refusal, Result};
use crate::rows::{Finding, Gravity};
use rust_decimal::Decimal;

/// Litres in a US gallon, by definition.
const LITRES_IN_US_GALLON: Decimal = Decimal::from_parts(3_785_411_784, 0, 0, false, 9);
/// Grams in a pound, by definition.
const GRAMS_IN_POUND: Decimal = Decimal::from_parts(45_359_237, 0, 0, false, 5);

/// A brine as a salometer shows it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BrineReading {
    /// Salt, in per cent of the brine.
    pub percent: Percent,
    /// Grams of salt for each kilogram of water.
    pub grams_per_kilogram: Decimal,
    /// Pounds of salt for each US gallon of water (water of one kilogram a litre).
    pub pounds_per_gallon: Decimal,
    /// What to look at.
    pub findings: Vec<Finding>,
}

/// Reads degrees of a salometer. On any scale but that of 60 °F it warns, with both readings.
///
/// # Errors
/// Degrees below 0 or above 100, or a scale without figures.
pub fn read_salometer(degrees: Decimal, on: Salometer, rules: &CureRules) -> Result<BrineReading> {
    if degrees < Decimal::ZERO || degrees > Decimal::ONE_HUNDRED {
        let says = BrineSays::DegreesCannotBe { degrees };
        return Err(Refusal::cannot_be("salometer", says));
    }
    let find = |wanted| {
        rules
            .salometers
            .iter()
            .find(|scale| scale.scale == wanted)
            .ok_or_else(|| {
                let says = BrineSays::NoScale { scale: wanted };
                Refusal::cannot_be("salometer", says)
            })
    };
    let (own, usual) = (find(on)?, find(Salometer::At60F)?);
    let usual_percent = Percent::new(degrees * usual.percent_per_degree.unwrap_or_default());
    let percent = match own.percent_per_degree {
        Some(each) => Percent::new(degrees * each),
        None => usual_percent,
    };
    let mut findings = Vec::new();
    if on != Salometer::At60F {
        let says = match own.percent_per_degree {
            Some(_) => BrineSays::OtherScale {
                degrees,
                percent,
                usual: usual_percent,
            },
            None => BrineSays::ColdScale {
                degrees,
                usual: usual_percent,
            },
        };
        findings.push(Finding::new(Gravity::Warn, says, [own.row.clone()]));
    }
    let grams_per_kilogram = grams_per_kilogram_of_water(percent);
    Ok(BrineReading {
        percent,
        grams_per_kilogram,
        pounds_per_gallon: grams_per_kilogram * LITRES_IN_US_GALLON / GRAMS_IN_POUND,
        findings,
    })
}

/// Grams of salt for a kilogram of water, from the per cent of salt in the brine; nothing where
/// there is no water in it.
pub fn grams_per_kilogram_of_water(percent: Percent) -> Decimal {
    let water = Decimal::ONE_HUNDRED - percent.number();
    match water <= Decimal::ZERO {
        true => Decimal::ZERO,
        false => percent.number() * Decimal::ONE_THOUSAND / water,
    }
}

/// The brine concentration: 100 × salt ÷ (salt + water), both in one unit.
pub fn brine_percent(salt: Decimal, water: Decimal) -> Percent {
    Percent::of(salt, salt + water)
}

/// More salt than water can hold.
pub(super) fn check_saturation(percent: Percent, rules: &CureRules) -> Option<Finding> {
    let most = rules.saturated.as_ref()?;
    (!most.allows(percent.number())).then(|| {
        let says = BrineSays::Saturated {
            percent,
            most: Percent::new(most.value),
        };
        Finding::new(Gravity::Warn, says, [most.row.clone()])
    })
}
