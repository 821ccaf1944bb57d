//! When a deed happened: stated by the device, checked against the clock, dated by the kitchen's day.

use crate::code::LotCode;
use crate::limits::{CLOCK_SLACK_MINUTES, DAYS_BACK_WITHOUT_NOTE};
use crate::messages;
use crate::refusal::{Refusal, Result};
use chrono::{
    DateTime, Datelike, Duration, FixedOffset, NaiveDate, NaiveDateTime, NaiveTime, TimeDelta,
    TimeZone, Utc,
};
use chrono_tz::Tz;

messages! {
    /// What is said of a deed's time.
    MomentSays in "moment" {
        NoTime "no-time" { at: NaiveDateTime },
        Future "future" { at: NaiveDateTime, now: NaiveDateTime },
        EndsFirst "ends-first" { end: NaiveDateTime, began: NaiveDateTime },
        LongAgo "long-ago" { at: NaiveDateTime, days: i64 },
        NotMadeYet "not-made-yet" { lot: LotCode, made: NaiveDateTime, at: NaiveDateTime },
        NotDoneYet "not-done-yet" { done: NaiveDateTime, at: NaiveDateTime },
    }
}

/// A deed's time, settled.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Moment {
    /// When the deed ended. Dates follow this.
    pub at: DateTime<Utc>,
    /// When it began, if that was said.
    pub began_at: Option<DateTime<Utc>>,
    /// When the record took it. Balances follow this.
    pub recorded_at: DateTime<Utc>,
    /// The kitchen's calendar day of `at`, whatever offset `at` was written with.
    pub day: NaiveDate,
    /// Entered later than it happened.
    pub late: bool,
}

impl Moment {
    /// Settles the time of a deed.
    ///
    /// # Errors
    /// `at` in the future by more than two minutes, long past without a note, out of all reason, or
    /// before `began_at`.
    pub fn settle(
        at: Option<DateTime<FixedOffset>>,
        began_at: Option<DateTime<FixedOffset>>,
        now: DateTime<Utc>,
        zone: Tz,
        has_note: bool,
    ) -> Result<Moment> {
        let slack = Duration::minutes(CLOCK_SLACK_MINUTES);
        let told = at.map_or(now, |at| at.to_utc());
        let began_at = began_at.map(|began| began.to_utc());
        if !(1970..=9000).contains(&told.year()) {
            let at = on_clock(told, zone);
            return Err(Refusal::cannot_be("at", MomentSays::NoTime { at }));
        }
        if told > now + slack {
            let (at, now) = (on_clock(told, zone), on_clock(now, zone));
            return Err(Refusal::cannot_be("at", MomentSays::Future { at, now }));
        }
        if let Some(began) = began_at.filter(|began| *began > told) {
            let detail = MomentSays::EndsFirst {
                end: on_clock(told, zone),
                began: on_clock(began, zone),
            };
            return Err(Refusal::cannot_be("began_at", detail));
        }
        if told < now - Duration::days(DAYS_BACK_WITHOUT_NOTE) && !has_note {
            let detail = MomentSays::LongAgo {
                at: on_clock(told, zone),
                days: DAYS_BACK_WITHOUT_NOTE,
            };
            return Err(Refusal::cannot_be("note", detail));
        }
        Ok(Moment {
            at: told,
            began_at,
            recorded_at: now,
            day: day_of(told, zone),
            late: told < now - slack,
        })
    }

    /// From when on it stops what it stops: not later than now, although the clock of the device may be ahead.
    pub fn stops_from(&self) -> DateTime<Utc> {
        self.at.min(self.recorded_at)
    }

    /// Refuses a deed that would come before the making of the lot that it uses.
    pub fn not_before(&self, made_at: DateTime<Utc>, lot: &LotCode, zone: Tz) -> Result<()> {
        self.after(made_at, zone, |made, at| MomentSays::NotMadeYet {
            lot: lot.clone(),
            made,
            at,
        })
    }

    /// Refuses a deed that would come before another, which it is about.
    pub fn not_before_deed(&self, done_at: DateTime<Utc>, zone: Tz) -> Result<()> {
        self.after(done_at, zone, |done, at| MomentSays::NotDoneYet {
            done,
            at,
        })
    }

    fn after(
        &self,
        first: DateTime<Utc>,
        zone: Tz,
        says: impl FnOnce(NaiveDateTime, NaiveDateTime) -> MomentSays,
    ) -> Result<()> {
        // What is on record as done later than now was recorded by a clock that was ahead, and comes before
        // whatever is done now.
        if self.at >= first || first > self.recorded_at + Duration::minutes(CLOCK_SLACK_MINUTES) {
            return Ok(());
        }
        let detail = says(on_clock(first, zone), on_clock(self.at, zone));
        Err(Refusal::cannot_be("at", detail))
    }
}

/// The kitchen's calendar day at an instant.
pub fn day_of(at: DateTime<Utc>, zone: Tz) -> NaiveDate {
    at.with_timezone(&zone).date_naive()
}

/// An instant as the kitchen's wall clock shows it.
pub fn on_clock(at: DateTime<Utc>, zone: Tz) -> NaiveDateTime {
    at.with_timezone(&zone).naive_local()
}

/// When a day begins in the kitchen. Where the clock is put forward at midnight, with its first minute.
pub fn midnight(day: NaiveDate, zone: Tz) -> DateTime<Utc> {
    let naive = day.and_time(NaiveTime::MIN);
    let hours = (0..4).map(|hours| naive + TimeDelta::hours(hours));
    let mut found = hours.filter_map(|at| zone.from_local_datetime(&at).earliest());
    found
        .next()
        .map_or_else(|| naive.and_utc(), |at| at.to_utc())
}

#[cfg(test)]
mod tests {
    use super::*;
    use chrono_tz::America::New_York;

    fn settle(at: &str, note: bool) -> Result<Moment> {
        let now = "2026-06-26T14:40:00Z".parse().unwrap();
        Moment::settle(
            Some(DateTime::parse_from_rfc3339(at).unwrap()),
            None,
            now,
            New_York,
            note,
        )
    }

    #[test]
    fn the_day_is_the_kitchens_whatever_the_offset() {
        let moment = settle("2026-06-26T05:30:00+02:00", false).unwrap();
        assert_eq!(moment.day.to_string(), "2026-06-25");
        assert!(moment.late);
    }

    #[test]
    fn two_minutes_ahead_are_two_devices_and_three_are_the_future() {
        assert!(!settle("2026-06-26T10:42:00-04:00", false).unwrap().late);
        assert_eq!(
            settle("2026-06-26T10:43:00-04:00", false)
                .unwrap_err()
                .field
                .as_deref(),
            Some("at")
        );
    }

    #[test]
    fn a_week_back_needs_a_reason() {
        assert!(settle("2026-06-19T10:41:00-04:00", false).is_ok());
        assert_eq!(
            settle("2026-06-19T10:39:00-04:00", false)
                .unwrap_err()
                .field
                .as_deref(),
            Some("note")
        );
        assert!(settle("2025-05-08T08:00:00-04:00", true).is_ok());
    }
}
