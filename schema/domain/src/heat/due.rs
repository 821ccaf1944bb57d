//! What is due of a cooling that goes on: how cold it has to be by when.

use super::cooling::CoolingPlan;
use super::log::CoreReading;
use super::rules::minutes;
use crate::measure::Printed;
use chrono::{DateTime, Utc};

/// A stage of a cooling that goes on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CoolingDue {
    /// Down to here.
    pub to: Printed,
    /// By then.
    pub by: DateTime<Utc>,
    /// Is it there, by the last reading?
    pub is_met: bool,
}

/// The stages of a plan for what came out of the heat at a moment, with its readings, the earliest first. A stage runs from
/// the last reading that was at its upper temperature or above; where none tells, from when it came out of the heat,
/// which is the earliest that it can be.
pub fn cooling_due(
    plan: &CoolingPlan,
    readings: &[CoreReading],
    out_of_heat: DateTime<Utc>,
) -> Vec<CoolingDue> {
    let stages = plan.stages.iter().map(|stage| {
        let above = |from: &Printed| {
            let mut back = readings.iter().rev();
            back.find(|reading| reading.core.reaches(from))
                .map(|of| of.at)
        };
        let start = match &stage.from {
            Some(from) => above(from),
            None => readings.first().map(|reading| reading.at),
        };
        let last = readings.last();
        CoolingDue {
            to: stage.to,
            by: start.unwrap_or(out_of_heat) + minutes(stage.within_minutes.value),
            is_met: last.is_some_and(|last| last.core.against(&stage.to).is_le()),
        }
    });
    stages.collect()
}

#[cfg(test)]
mod tests {
    use super::super::cooling::CoolingStage;
    use super::*;
    use crate::measure::Temperature;
    use crate::rows::{Bound, RowId};

    fn at(minutes: i64) -> DateTime<Utc> {
        DateTime::from_timestamp(minutes * 60, 0).unwrap()
    }

    /// From 57 °C to 21 °C within two hours, to 5 °C within six: invented for the test.
    fn check(readings: &[(i64, i32)], wanted: &[(i64, bool)]) {
        let stage = |to: i32, within: i64| CoolingStage {
            from: Some(Temperature::celsius(57).into()),
            to: Temperature::celsius(to).into(),
            within_minutes: Bound::at_most("made-up", within),
        };
        let plan = CoolingPlan {
            name: "made up".into(),
            row: RowId::new("made-up"),
            needs_approval: None,
            nitrite_ppm: None,
            not_after_cooking: false,
            place: None,
            stages: vec![stage(21, 120), stage(5, 360)],
        };
        let read = |(minutes, degrees): &(i64, i32)| CoreReading {
            at: at(*minutes),
            core: Temperature::celsius(*degrees),
        };
        let readings: Vec<CoreReading> = readings.iter().map(read).collect();
        let due = cooling_due(&plan, &readings, at(0));
        let told: Vec<(i64, bool)> = due
            .iter()
            .map(|of| (of.by.timestamp() / 60, of.is_met))
            .collect();
        assert_eq!(told, wanted, "{readings:?}");
    }

    #[test]
    fn a_cooling_runs_from_the_last_hot_reading() {
        check(&[], &[(120, false), (360, false)]);
        check(&[(30, 62)], &[(150, false), (390, false)]);
        check(&[(30, 62), (90, 40)], &[(150, false), (390, false)]);
        check(&[(30, 62), (140, 20)], &[(150, true), (390, false)]);
        // Nobody read it while it was hot: it counts from when it came out.
        check(&[(60, 50)], &[(120, false), (360, false)]);
        check(
            &[(30, 62), (140, 20), (300, 4)],
            &[(150, true), (390, true)],
        );
    }
}
