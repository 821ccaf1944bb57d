//! Holding hot and cold, receiving, thawing.

use super::rules::{Degrees, HeatRules, hours};
use super::sane::{plausible_store, plausible_time};
use super::says::HoldSays;
use super::words::Holding;
use crate::measure::Temperature;
use crate::refusal::Result;
use crate::rows::{Finding, Gravity, Rows};
use chrono::TimeDelta;

/// A temperature at which something is held.
#[derive(Debug, Clone, PartialEq)]
pub struct Hold {
    /// What is held.
    pub what: Holding,
    /// How warm or cold it must be.
    pub degrees: Degrees,
}

/// Is it held as it must be? Nothing comes back when it is.
///
/// # Errors
/// A temperature that cannot be.
pub fn held(
    what: Holding,
    at: Temperature,
    rules: &HeatRules,
    rows: &Rows,
) -> Result<Vec<Finding>> {
    plausible_store("temperature", at)?;
    let mut of_this = rules
        .holding
        .iter()
        .filter(|hold| hold.what == what)
        .peekable();
    if of_this.peek().is_none() {
        let says = HoldSays::NoTemperature { what };
        return Ok(vec![Finding::new(Gravity::Warn, says, [])]);
    }
    Ok(of_this
        .filter(|hold| !hold.degrees.allows(at))
        .map(|hold| {
            let limit = hold.degrees.says();
            let says = HoldSays::Outside { at, limit };
            Finding::against(rows, hold.degrees.row(), says)
        })
        .collect())
}

/// Thawing under running water: how warm the water was, and how long raw parts were warmer than cold.
///
/// # Errors
/// A temperature or time that cannot be.
pub fn thawed_under_water(
    water: Temperature,
    above_cold: TimeDelta,
    rules: &HeatRules,
    rows: &Rows,
) -> Result<Vec<Finding>> {
    plausible_time("above_cold", above_cold)?;
    let mut findings = held(Holding::ThawWater, water, rules, rows)?;
    if let Some(limit) = rules
        .thaw_hours
        .as_ref()
        .filter(|limit| above_cold > hours(limit.value))
    {
        let says = HoldSays::ThawedWarm {
            above: above_cold,
            within: hours(limit.value),
        };
        findings.push(Finding::against(rows, &limit.row, says));
    }
    Ok(findings)
}
