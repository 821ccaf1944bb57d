//! A place did not stay cold: the freezer failed in the night. One act over the place; each lot that stood
//! in it is judged by what sort of food it is.

use super::hold::note;
use crate::code::LotCode;
use crate::dates::{Because, Rule};
use crate::heat::{Degrees, FailureRules, HeatRules, hours};
use crate::lot::Lot;
use crate::measure::Temperature;
use crate::messages;
use crate::plan::Plan;
use crate::rows::{Finding, Gravity, Rows};
use crate::says::Says;
use crate::stability::StabilityLimit;
use crate::stop::{Cause, StopSays};
use crate::words::{State, Topic};
use chrono::{DateTime, NaiveDateTime, TimeDelta, Utc};

messages! {
    /// What is said of food in a place that did not stay cold.
    FailureSays in "failure" {
        NothingThere "nothing-there" { place: String },
        Stable "stable" { lot: LotCode },
        StayedCold "stayed-cold" { lot: LotCode },
        InTime "in-time" { lot: LotCode, warm: TimeDelta, within: TimeDelta },
        Broke "broke" { place: String, warm: TimeDelta, within: TimeDelta },
        LookIfThawed "look-if-thawed" { lot: LotCode },
        NoRule "no-rule",
        StillOpen "still-open" { place: String, at: NaiveDateTime },
    }
}

/// What is known of the failure.
#[derive(Debug, Clone)]
pub struct PlaceFailure {
    /// The place's name.
    pub place: String,
    /// When it was last known to be cold.
    pub from: DateTime<Utc>,
    /// Until when it was not, or not known to be.
    pub until: DateTime<Utc>,
    /// Readings in between, the earliest first.
    pub readings: Vec<(DateTime<Utc>, Temperature)>,
}

impl PlaceFailure {
    /// For how long it was, or may have been, too warm. Without readings it was so all the time.
    pub fn warm_for(&self, cold: &Degrees) -> TimeDelta {
        if self.readings.is_empty() {
            return self.until - self.from;
        }
        let warm = |(_, read): &(DateTime<Utc>, Temperature)| !cold.allows(*read);
        let Some(first) = self.readings.iter().position(warm) else {
            return TimeDelta::zero();
        };
        let last = self.readings.iter().rposition(warm).unwrap_or(first);
        let before = self.readings[..first].last();
        let after = self.readings.get(last + 1);
        after.map_or(self.until, |(at, _)| *at) - before.map_or(self.from, |(at, _)| *at)
    }

    fn judge(&self, lot: &Lot, rules: &FailureRules) -> Finding {
        let code = lot.code.clone();
        let limit = limit_for(lot, rules);
        let row = [limit.bound.row.clone()];
        if !lot.needs_cold() {
            return Finding::note(FailureSays::Stable { lot: code }, row);
        }
        let warm = self.warm_for(&rules.cold);
        let within = hours(limit.bound.value);
        let is_in_time = match limit.open {
            true => warm < within,
            false => warm <= within,
        };
        if warm.is_zero() {
            return Finding::note(FailureSays::StayedCold { lot: code }, row);
        }
        if is_in_time {
            let says = FailureSays::InTime {
                lot: code,
                warm,
                within,
            };
            return Finding::new(Gravity::Warn, says, row);
        }
        let place = self.place.clone();
        let says = FailureSays::Broke {
            place,
            warm,
            within,
        };
        // A person tells of it, and a person looks at it: also where no law counts the hours.
        Finding::new(Gravity::Refuse, says, row)
    }
}

/// For how long food like that may be warm, once.
fn limit_for<'r>(lot: &Lot, rules: &'r FailureRules) -> &'r StabilityLimit {
    match &rules.raw_hours {
        Some(raw) if !lot.condition().is_ready() => raw,
        _ => &rules.hours,
    }
}

/// What the failure adds to the record: a stop on what broke a row that was read, a word on the rest.
/// Only the packs that are loaded stood there.
pub fn plan(failure: &PlaceFailure, lots: &[Lot], rules: &HeatRules, rows: &Rows) -> Plan {
    let mut plan = Plan::default();
    if lots.is_empty() {
        let place = failure.place.clone();
        plan.warnings
            .push(FailureSays::NothingThere { place }.into());
        return plan;
    }
    let Some(rules) = &rules.failure else {
        plan.warnings.push(FailureSays::NoRule.into());
        return plan;
    };
    for lot in lots {
        let finding = failure.judge(lot, rules);
        let numbers: Vec<u32> = lot.packs.iter().map(|pack| pack.number).collect();
        note(&mut plan, lot, Some(&numbers));
        if finding.refuses() {
            let findings = vec![finding.with_sources(rows)];
            let because = Because {
                says: StopSays::BrokeForGood { findings }.into(),
                rule: Rule::Rows(finding.rows.clone()),
            };
            let since = failure.from + hours(limit_for(lot, rules).bound.value);
            let cause = Cause::failed(Topic::Cold, because, since);
            for pack in &lot.packs {
                let stop = cause.clone().into();
                plan.stops.push((lot.id, Some(pack.id), stop));
            }
        }
        let was_frozen = lot.packs.iter().any(|pack| pack.now.state == State::Frozen);
        if was_frozen && finding.gravity != Gravity::Note {
            let lot = lot.code.clone();
            plan.warnings.push(FailureSays::LookIfThawed { lot }.into());
        }
        if !plan.warnings.contains(&finding.says) {
            plan.warnings.push(Says::clone(&finding.says));
        }
    }
    plan
}
