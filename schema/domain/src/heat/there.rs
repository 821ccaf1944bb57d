//! Since when can all that is heated have been hot? Not before the last of it came in, nor before the step began.

use super::log::Log;
use super::says::HeatSays;
use crate::code::LotCode;
use crate::limits::CLOCK_SLACK_MINUTES;
use crate::moment::on_clock;
use crate::refusal::{Refusal, Result};
use chrono::{DateTime, TimeDelta, Utc};
use chrono_tz::Tz;

/// The moment from which heat can speak of all that is heated.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct There {
    /// Since when it was there.
    pub at: DateTime<Utc>,
    /// What came in then; nothing where it is the beginning of the step.
    pub lot: Option<LotCode>,
}

impl There {
    /// The later of the step's beginning and of what came in last.
    pub fn of(
        began: Option<DateTime<Utc>>,
        came_in: Option<(DateTime<Utc>, LotCode)>,
    ) -> Option<There> {
        let began = began.map(|at| There { at, lot: None });
        let came_in = came_in.map(|(at, lot)| There { at, lot: Some(lot) });
        began.into_iter().chain(came_in).max_by_key(|of| of.at)
    }

    /// Refuses a hold that is longer than all of it was there.
    ///
    /// # Errors
    /// It is, by more than two clocks may differ: with both times.
    pub fn holds(
        &self,
        field: &str,
        held: TimeDelta,
        ended: DateTime<Utc>,
        zone: Tz,
    ) -> Result<()> {
        let most = self.most(ended);
        if held <= most + slack() {
            return Ok(());
        }
        let since = on_clock(self.at, zone);
        let says = match self.lot.clone() {
            Some(lot) => HeatSays::HeldBeforeItCame {
                lot,
                held,
                most,
                came: since,
            },
            None => HeatSays::HeldBeforeItBegan {
                held,
                most,
                began: since,
            },
        };
        Err(Refusal::cannot_be(field, says))
    }

    /// What of a hold all of it can have seen.
    pub fn part_of(&self, held: TimeDelta, ended: DateTime<Utc>) -> TimeDelta {
        held.min(self.most(ended) + slack())
    }

    /// What of a log all of it can have seen; nothing where that is no reading at all.
    pub fn of_log(&self, log: &Log) -> Option<Log> {
        log.since(self.at - slack())
    }

    fn most(&self, ended: DateTime<Utc>) -> TimeDelta {
        (ended - self.at).max(TimeDelta::zero())
    }
}

/// Two clocks never agree exactly.
fn slack() -> TimeDelta {
    TimeDelta::minutes(CLOCK_SLACK_MINUTES)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::CoreReading;
    use crate::measure::Temperature;

    fn at(minutes: i64) -> DateTime<Utc> {
        DateTime::from_timestamp(1_772_000_000 + minutes * 60, 0).unwrap()
    }

    fn lot() -> LotCode {
        LotCode::read("BRC-26159-A00-6").unwrap()
    }

    /// Ended at 0; began and came in so many minutes before, and held so many seconds.
    fn check(began: Option<i64>, came: Option<i64>, held: i64, says: Option<&str>) {
        let came = came.map(|minutes| (at(-minutes), lot()));
        let there = There::of(began.map(|minutes| at(-minutes)), came).unwrap();
        let held = TimeDelta::seconds(held);
        let refused = there.holds("held", held, at(0), Tz::UTC).err();
        let key = refused.map(|of| of.detail.key().to_owned());
        assert_eq!(key.as_deref(), says, "{there:?} {held}");
    }

    #[test]
    fn nothing_is_held_for_longer_than_it_was_there() {
        check(None, Some(30), 30 * 60, None);
        check(None, Some(30), 32 * 60, None);
        check(
            None,
            Some(30),
            32 * 60 + 1,
            Some("heat-held-before-it-came"),
        );
        check(
            Some(10),
            None,
            12 * 60 + 1,
            Some("heat-held-before-it-began"),
        );
        // The later of the two holds.
        check(
            Some(10),
            Some(30),
            20 * 60,
            Some("heat-held-before-it-began"),
        );
        check(
            Some(40),
            Some(30),
            35 * 60,
            Some("heat-held-before-it-came"),
        );
        check(Some(40), Some(5_000), 40 * 60, None);
        // A few seconds at a high temperature need no time at all.
        check(None, Some(0), 14, None);
    }

    #[test]
    fn what_was_hot_before_it_came_says_nothing() {
        let reading = |(minutes, celsius): &(i64, i32)| CoreReading {
            at: at(*minutes),
            core: Temperature::celsius(*celsius),
        };
        let log = [(-180, 5), (-120, 85), (-90, 85), (-60, 60), (-5, 50)];
        let log = Log::new(log.iter().map(reading).collect(), Tz::UTC).unwrap();
        let seen = |minutes: i64| {
            let there = There::of(None, Some((at(minutes), lot()))).unwrap();
            there.of_log(&log).map(|log| log.readings().len())
        };
        assert_eq!(seen(-200), Some(5));
        assert_eq!(seen(-118), Some(4));
        assert_eq!(seen(-117), Some(3));
        assert_eq!(seen(-15), Some(1));
        assert_eq!(seen(0), None);
    }
}
