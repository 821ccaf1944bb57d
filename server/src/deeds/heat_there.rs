//! What of a heat all that went in can have seen: not what was over before the last of it came in.

use super::facts::Facts;
use super::heat_asked::{HeatAsked, minutes};
use crate::error::Result;
use chrono::TimeDelta;
use domain::heat::{CookSays, HeatSays, Log, There};
use domain::moment::on_clock;
use domain::refusal::Refusal;
use domain::rows::{Finding, Gravity};

/// What was measured: a log, whether there is a core temperature, how long it was held, how long it boiled.
type Measured<'a> = (Option<&'a Log>, bool, TimeDelta, Option<TimeDelta>);

impl HeatAsked<'_> {
    /// Since when all of it can have been hot, where the record tells.
    pub(super) fn there(&self, facts: &Facts<'_, '_>) -> Option<There> {
        There::of(facts.moment.began_at, self.found.came_in.clone())
    }

    /// Refuses what was held for longer than all of it was there, and the log of what was over before.
    ///
    /// # Errors
    /// 422 with both times: whatever is told, it cannot have been.
    pub(super) fn is_possible(&self, facts: &Facts<'_, '_>, log: Option<&Log>) -> Result<()> {
        let Some(there) = self.there(facts) else {
            return Ok(());
        };
        let (ended, zone) = (facts.moment.at, facts.kitchen.zone);
        if let Some(readings) = &self.asked.readings {
            let told = [
                ("readings.hold_minutes", readings.hold_minutes),
                ("readings.boiled_minutes", readings.boiled_minutes),
            ];
            for (field, told) in told {
                if let Some(told) = told {
                    there.holds(field, minutes(told), ended, zone)?;
                }
            }
        }
        for (nth, reading) in self.asked.log.iter().flatten().enumerate() {
            if let Some(boiled) = reading.boiled_minutes {
                let field = format!("log[{nth}].boiled_minutes");
                there.holds(&field, minutes(boiled), ended, zone)?;
            }
        }
        match (log, &there.lot) {
            (Some(log), Some(lot)) if there.of_log(log).is_none() => {
                let says = HeatSays::ReadBeforeItCame {
                    lot: lot.clone(),
                    read: on_clock(log.last().at, zone),
                    came: on_clock(there.at, zone),
                };
                Err(Refusal::cannot_be("log", says).into())
            }
            _ => Ok(()),
        }
    }

    /// A word where it counts only because nobody said when something came in that was typed in later.
    pub(super) fn typed_later(
        &self,
        facts: &Facts<'_, '_>,
        (log, has_core, held, boiled): Measured<'_>,
    ) -> Option<Finding> {
        let (at, lot) = self.found.typed.clone()?;
        let came = on_clock(at, facts.kitchen.zone);
        let says = CookSays::TypedLater {
            lot: lot.clone(),
            came,
        };
        let typed = There { at, lot: Some(lot) };
        let is_longer = |told: TimeDelta| typed.part_of(told, facts.moment.at) < told;
        let is_hot_before = match (log, has_core) {
            (Some(log), _) => typed.of_log(log).as_ref().map(Log::first) != Some(log.first()),
            (None, true) => is_longer(held),
            (None, false) => boiled.is_some_and(is_longer),
        };
        is_hot_before.then(|| Finding::new(Gravity::Warn, says, []))
    }
}
