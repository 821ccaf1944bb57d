//! Food that stood warm in a cook and never got hot: some bacteria leave poisons that no later heat undoes.

use super::log::Log;
use super::rules::{HeatRules, hours};
use super::says::CookSays;
use crate::rows::{Finding, Gravity};
use chrono::TimeDelta;

/// Did a cook's log keep the food warmer than cold, and less than hot, for longer than the place lets food
/// stand? Hot is the heat that a come-up ends with (`us-1.8-come-up`); what reached it is judged by its
/// come-up. Nothing where the place has no rule of either.
pub fn stood_warm(log: &Log, rules: &HeatRules) -> Option<Finding> {
    let (failure, come_up) = (rules.failure.as_ref()?, rules.come_up.as_ref()?);
    let readings = log.readings();
    let hot = readings
        .iter()
        .position(|reading| reading.core.reaches(&come_up.to));
    let until = hot.unwrap_or(readings.len().checked_sub(1)?);
    let cold = readings[..until]
        .iter()
        .rposition(|reading| failure.cold.allows(reading.core))
        .unwrap_or(0);
    let warm = readings[until].at - readings[cold].at;
    let (row, within, open) = match hot {
        Some(_) => {
            let bound = &come_up.within_hours;
            (bound.row.clone(), hours(bound.value), false)
        }
        None => {
            let limit = &failure.hours;
            (
                limit.bound.row.clone(),
                hours(limit.bound.value),
                limit.open,
            )
        }
    };
    let in_time = warm < within || warm == within && !open;
    (!in_time && warm > TimeDelta::zero()).then(|| {
        let says = CookSays::StoodWarm {
            hot: come_up.to,
            warm,
            within,
        };
        // A person tells of it, and a person looks at it: also where no law counts the hours.
        Finding::new(Gravity::Refuse, says, [row])
    })
}
