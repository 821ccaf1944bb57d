//! Time in place of temperature: food that stands out, marked with the time when it must be gone.

use super::rules::{Degrees, HeatRules, hours};
use super::sane::plausible_core;
use super::says::TimedSays;
use crate::measure::Temperature;
use crate::moment::on_clock;
use crate::refusal::{Refusal, Result};
use crate::rows::{Bound, Finding, Gravity, Rows};
use crate::says::Arg;
use chrono::{DateTime, Utc};
use chrono_tz::Tz;

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
    /// Of the kitchen's clock.
    pub zone: Tz,
}

/// Until when it may stand, and what is against it now. `Gravity::Refuse` means: throw it away.
///
/// # Errors
/// No such rule in this place, a temperature that cannot be, a start in the future.
pub fn timed(
    food: &Timed,
    control: &str,
    now: DateTime<Utc>,
    rules: &HeatRules,
    rows: &Rows,
) -> Result<(DateTime<Utc>, Vec<Finding>)> {
    let known = rules.time_control.iter();
    let Some(control) = known.clone().find(|each| each.name == control) else {
        let known = known.map(|each| Arg::from(&*each.name));
        let detail = TimedSays::NoRule {
            rule: control.to_owned(),
            known: Arg::All(known.collect()),
        };
        return Err(Refusal::cannot_be("control", detail));
    };
    plausible_core("start", food.start)?;
    food.warmest
        .map_or(Ok(()), |warmest| plausible_core("warmest", warmest))?;
    if food.since > now {
        let since = on_clock(food.since, food.zone);
        let detail = TimedSays::Future { since };
        return Err(Refusal::cannot_be("since", detail));
    }
    let row = &control.hours.row;
    let gone_by = food.since + hours(control.hours.value);
    let until = on_clock(gone_by, food.zone);
    let mut findings = Vec::new();
    let starts: Vec<&Degrees> = [&control.cold_start, &control.hot_start]
        .into_iter()
        .flatten()
        .collect();
    if !starts.iter().any(|start| start.allows(food.start)) {
        let wanted = starts.iter().map(|start| Arg::from(start.says()));
        let says = TimedSays::Start {
            start: food.start,
            wanted: Arg::Any(wanted.collect()),
        };
        findings.push(Finding::against(rows, row, says));
    }
    if !food.is_marked {
        findings.push(Finding::against(rows, row, TimedSays::Unmarked { until }));
    }
    if now > gone_by {
        findings.push(Finding::against(rows, row, TimedSays::Ended { until }));
    }
    if let Some(limit) = &control.never_above {
        let most = limit.temperature();
        match food.warmest {
            Some(warmest) if !limit.allows(warmest) => {
                let says = TimedSays::TooWarm { warmest, most };
                findings.push(Finding::against(rows, limit.row(), says));
            }
            Some(_) => {}
            None => {
                let says = TimedSays::Unread { most };
                findings.push(Finding::new(Gravity::Warn, says, [limit.row().clone()]));
            }
        }
    }
    Ok((gone_by, findings))
}
