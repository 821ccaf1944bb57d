//! Food that stood warm in a cook and never got hot: some bacteria leave poisons that no later heat undoes.

use super::log::Log;
use super::rules::{HeatRules, hours};
use super::says::CookSays;
use crate::rows::{Finding, Gravity};

/// Did a cook's log keep the food warmer than cold for longer than the place lets food stand, and never get
/// it hot? Hot is the heat that a come-up ends with (`us-1.8-come-up`); how fast what reached it came up is
/// advice. Nothing where the place has no rule.
pub fn stood_warm(log: &Log, rules: &HeatRules) -> Option<Finding> {
    let (failure, come_up) = (rules.failure.as_ref()?, rules.come_up.as_ref()?);
    let readings = log.readings();
    if readings
        .iter()
        .any(|reading| reading.core.reaches(&come_up.to))
    {
        return None;
    }
    let cold = readings
        .iter()
        .rposition(|reading| failure.cold.allows(reading.core))
        .unwrap_or(0);
    let warm = log.last().at - readings[cold].at;
    let limit = &failure.hours;
    let within = hours(limit.bound.value);
    let in_time = warm < within || warm == within && !limit.open;
    (!in_time).then(|| {
        let says = CookSays::StoodWarm {
            hot: come_up.to,
            warm,
            within,
        };
        // A person tells of it, and a person looks at it: also where no law counts the hours.
        Finding::new(Gravity::Refuse, says, [limit.bound.row.clone()])
    })
}
