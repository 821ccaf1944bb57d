//! Time in place of temperature: food that stands out, marked with the time when it must be gone.

use super::log::clock;
use super::rules::{Degrees, Rules, hours};
use super::sane::plausible_core;
use crate::measure::Temperature;
use crate::refusal::{Refusal, Result};
use crate::rows::{Bound, Finding, Gravity, Rows};
use chrono::{DateTime, Utc};

/// A rule of time in place of temperature.
#[derive(Debug, Clone, PartialEq)]
pub struct TimeControl {
    /// Its name.
    pub name: String,
    /// How many hours, at most.
    pub hours: Bound,
    /// What cold food must start at.
    pub cold_start: Option<Degrees>,
    /// What hot food must start at.
    pub hot_start: Option<Degrees>,
    /// What it must never exceed.
    pub never_above: Option<Degrees>,
}

/// Food that stands out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Timed {
    /// When it left the cold or the heat.
    pub since: DateTime<Utc>,
    /// How warm it was then.
    pub start: Temperature,
    /// The warmest that it has been since, where that was read.
    pub warmest: Option<Temperature>,
    /// Is it marked with the time when it must be gone?
    pub is_marked: bool,
}

/// Until when it may stand, and what is against it now. `Gravity::Refuse` means: throw it away.
///
/// # Errors
/// No such rule in this place, a temperature that cannot be, a start in the future.
pub fn timed(
    food: &Timed,
    control: &str,
    now: DateTime<Utc>,
    rules: &Rules,
    rows: &Rows,
) -> Result<(DateTime<Utc>, Vec<Finding>)> {
    let known = rules.time_control.iter();
    let Some(control) = known.clone().find(|each| each.name == control) else {
        let names: Vec<&str> = known.map(|each| &*each.name).collect();
        let detail = format!(
            "This place has no rule {control:?} of time in place of temperature. Known here: {}.",
            names.join(", ")
        );
        return Err(Refusal::cannot_be("control", detail));
    };
    plausible_core("start", food.start)?;
    food.warmest
        .map_or(Ok(()), |warmest| plausible_core("warmest", warmest))?;
    if food.since > now {
        let detail = format!("{} is in the future. Check the time.", clock(food.since));
        return Err(Refusal::cannot_be("since", detail));
    }
    let row = &control.hours.row;
    let until = food.since + hours(control.hours.value);
    let mut findings = Vec::new();
    let starts: Vec<&Degrees> = [&control.cold_start, &control.hot_start]
        .into_iter()
        .flatten()
        .collect();
    if !starts.iter().any(|start| start.allows(food.start)) {
        let wanted: Vec<String> = starts.iter().map(|start| start.said()).collect();
        let says = format!(
            "It started at {}; it must start {}.",
            food.start,
            wanted.join(" or ")
        );
        findings.push(Finding::against(rows, row, says));
    }
    if !food.is_marked {
        let says = format!(
            "It is not marked with the time when it must be gone ({}). Unmarked food is thrown away.",
            clock(until)
        );
        findings.push(Finding::against(rows, row, says));
    }
    if now > until {
        let says = format!("Its time ended at {}. Throw it away.", clock(until));
        findings.push(Finding::against(rows, row, says));
    }
    if let Some(most) = &control.never_above {
        match food.warmest {
            Some(warmest) if !most.allows(warmest) => {
                let says = format!(
                    "It was {warmest}; it must never be above {}.",
                    most.temperature()
                );
                findings.push(Finding::against(rows, most.row(), says));
            }
            Some(_) => {}
            None => {
                let says = format!(
                    "Nobody has read how warm it got. It must never be above {}: read it.",
                    most.temperature()
                );
                findings.push(Finding::new(Gravity::Warn, says, [most.row().clone()]));
            }
        }
    }
    Ok((until, findings))
}
