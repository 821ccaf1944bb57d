//! A log of timed readings, as of an overnight cook that spans two days.

use super::sane::plausible_core;
use super::says::HeatSays;
use crate::measure::{Printed, Temperature};
use crate::moment::on_clock;
use crate::refusal::{Refusal, Result};
use chrono::{DateTime, NaiveDateTime, TimeDelta, Utc};
use chrono_tz::Tz;

/// The core's temperature at one time.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CoreReading {
    /// When.
    pub at: DateTime<Utc>,
    /// How warm.
    pub core: Temperature,
}

/// A time without readings.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Silence {
    /// The last reading before it.
    pub from: DateTime<Utc>,
    /// The first reading after it.
    pub until: DateTime<Utc>,
}

impl Silence {
    /// How long it lasted.
    pub fn length(&self) -> TimeDelta {
        self.until - self.from
    }
}

/// Readings in the order of their times, at least one.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Log {
    readings: Vec<CoreReading>,
    zone: Tz,
}

impl Log {
    /// A log of these readings, in whatever order they come, in a kitchen of the time zone `zone`.
    ///
    /// # Errors
    /// No readings, two that differ at one time, one that no meat can have.
    pub fn new(mut readings: Vec<CoreReading>, zone: Tz) -> Result<Log> {
        for (nth, reading) in readings.iter().enumerate() {
            plausible_core(&format!("readings[{nth}].core"), reading.core)?;
        }
        readings.sort_by_key(|reading| (reading.at, reading.core));
        readings.dedup();
        if readings.is_empty() {
            return Err(Refusal::cannot_be("readings", HeatSays::NoReading));
        }
        if let Some(pair) = readings.windows(2).find(|pair| pair[0].at == pair[1].at) {
            let detail = HeatSays::TwoReadings {
                at: on_clock(pair[0].at, zone),
                one: pair[0].core,
                other: pair[1].core,
            };
            return Err(Refusal::cannot_be("readings", detail));
        }
        Ok(Log { readings, zone })
    }

    /// The readings since then, if there are any.
    pub fn since(&self, from: DateTime<Utc>) -> Option<Log> {
        let readings = self.readings.iter().filter(|reading| reading.at >= from);
        let readings: Vec<CoreReading> = readings.copied().collect();
        let zone = self.zone;
        (!readings.is_empty()).then_some(Log { readings, zone })
    }

    /// The readings, the earliest first.
    pub fn readings(&self) -> &[CoreReading] {
        &self.readings
    }

    /// A time as the kitchen's clock shows it.
    pub fn on_clock(&self, at: DateTime<Utc>) -> NaiveDateTime {
        on_clock(at, self.zone)
    }

    /// The earliest reading.
    pub fn first(&self) -> CoreReading {
        self.readings[0]
    }

    /// The latest reading.
    pub fn last(&self) -> CoreReading {
        self.readings[self.readings.len() - 1]
    }

    /// The longest time that every reading was at or above a temperature, where neighbours further
    /// apart than `join` are not one hold. `None` if no reading was.
    pub fn longest_hold(&self, at_least: &Printed, join: Option<TimeDelta>) -> Option<TimeDelta> {
        let mut longest: Option<TimeDelta> = None;
        let mut run: Option<(DateTime<Utc>, DateTime<Utc>)> = None;
        for reading in &self.readings {
            if !reading.core.reaches(at_least) {
                run = None;
                continue;
            }
            let joined = run.filter(|(_, last)| join.is_none_or(|join| reading.at - *last <= join));
            let start = joined.map_or(reading.at, |(start, _)| start);
            run = Some((start, reading.at));
            longest = longest.max(Some(reading.at - start));
        }
        longest
    }

    /// The times without readings that are longer than that.
    pub fn silences(&self, longer_than: TimeDelta) -> Vec<Silence> {
        self.readings
            .windows(2)
            .map(|pair| Silence {
                from: pair[0].at,
                until: pair[1].at,
            })
            .filter(|silence| silence.length() > longer_than)
            .collect()
    }

    /// The first reading that had fallen below a temperature once reached, if it rose to it again:
    /// what a fire that went out and was lit again leaves behind.
    pub fn fell_and_rose(&self, level: &Printed) -> Option<CoreReading> {
        let hot = |reading: &&CoreReading| reading.core.reaches(level);
        let first = self.readings.iter().position(|reading| hot(&reading))?;
        let last = self.readings.iter().rposition(|reading| hot(&reading))?;
        self.readings[first..=last]
            .iter()
            .find(|reading| !hot(reading))
            .copied()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn log(readings: &[(i64, i32)]) -> Result<Log> {
        let reading = |(minutes, degrees): &(i64, i32)| CoreReading {
            at: DateTime::from_timestamp(minutes * 60, 0).unwrap(),
            core: Temperature::fahrenheit(*degrees),
        };
        Log::new(readings.iter().map(reading).collect(), Tz::UTC)
    }

    fn check(readings: &[(i64, i32)], degrees: i32, join: Option<i64>, minutes: Option<i64>) {
        let held = log(readings).unwrap().longest_hold(
            &Temperature::fahrenheit(degrees).into(),
            join.map(TimeDelta::minutes),
        );
        assert_eq!(held, minutes.map(TimeDelta::minutes), "{readings:?}");
    }

    #[test]
    fn the_longest_hold_counts() {
        check(
            &[(0, 120), (10, 130), (30, 131), (40, 120), (50, 130)],
            130,
            None,
            Some(20),
        );
        check(&[(0, 120)], 130, None, None);
        check(&[(0, 130)], 130, None, Some(0));
        // In whatever order the readings come.
        check(&[(60, 130), (0, 130), (30, 130)], 130, Some(30), Some(60));
        // A silence parts two holds.
        check(&[(0, 130), (20, 130), (90, 130)], 130, Some(60), Some(20));
        check(&[(0, 130), (20, 130), (90, 130)], 130, None, Some(90));
    }

    #[test]
    fn what_cannot_be_is_refused() {
        assert!(log(&[]).is_err());
        assert!(
            log(&[(0, 130), (0, 131)]).is_err(),
            "two readings at one time"
        );
        assert!(log(&[(0, 130), (0, 130)]).is_ok(), "the same twice is one");
        assert!(log(&[(0, 300)]).is_err());
    }

    #[test]
    fn a_fire_that_went_out_is_seen() {
        let fell = |readings: &[(i64, i32)]| {
            let log = log(readings).unwrap();
            log.fell_and_rose(&Temperature::fahrenheit(130).into())
                .is_some()
        };
        assert!(fell(&[(0, 40), (60, 140), (120, 110), (180, 150)]));
        assert!(
            !fell(&[(0, 40), (60, 140), (120, 110), (180, 70)]),
            "it was cooled"
        );
        assert!(!fell(&[(0, 40), (60, 100)]));
    }
}
