//! Does a reading belong to the step that it was entered with?

use super::says::HeatSays;
use crate::limits::CLOCK_SLACK_MINUTES;
use crate::moment::on_clock;
use crate::refusal::{Refusal, Result};
use chrono::{DateTime, TimeDelta, Utc};
use chrono_tz::Tz;

/// The last reading of a step that says nothing of its beginning is at most so many hours older than its end.
/// Not a figure of the law: the log of another day is a slip of the date, or of another pot.
const HOURS_BEFORE_THE_END: i64 = 24;

/// When a step was done.
#[derive(Debug, Clone, Copy)]
pub struct Span {
    /// When it began, where that was said.
    pub began: Option<DateTime<Utc>>,
    /// When it ended.
    pub ended: DateTime<Utc>,
    /// The kitchen's time zone.
    pub zone: Tz,
}

impl Span {
    /// Refuses readings of another time: the times of all of them, in the order that they were asked.
    ///
    /// # Errors
    /// One from after the end or before the beginning; all of them from more than a day before the end.
    pub fn holds(&self, times: &[DateTime<Utc>]) -> Result<()> {
        let slack = TimeDelta::minutes(CLOCK_SLACK_MINUTES);
        let clock = |at| on_clock(at, self.zone);
        for (nth, read) in times.iter().enumerate() {
            let refused = |says: HeatSays| Refusal::cannot_be(format!("[{nth}].at"), says);
            if *read > self.ended + slack {
                return Err(refused(HeatSays::ReadAfter {
                    read: clock(*read),
                    ended: clock(self.ended),
                }));
            }
            if let Some(began) = self.began.filter(|began| *read < *began - slack) {
                return Err(refused(HeatSays::ReadBefore {
                    read: clock(*read),
                    began: clock(began),
                }));
            }
        }
        let last = times.iter().enumerate().max_by_key(|(_, at)| **at);
        match last {
            Some((nth, read))
                if self.began.is_none()
                    && *read < self.ended - TimeDelta::hours(HOURS_BEFORE_THE_END) =>
            {
                let says = HeatSays::ReadLongBefore {
                    read: clock(*read),
                    ended: clock(self.ended),
                };
                Err(Refusal::cannot_be(format!("[{nth}].at"), says))
            }
            _ => Ok(()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(minutes: i64) -> DateTime<Utc> {
        DateTime::from_timestamp(1_772_000_000 + minutes * 60, 0).unwrap()
    }

    fn check(began: Option<i64>, read: &[i64], refused: Option<&str>) {
        let span = Span {
            began: began.map(at),
            ended: at(0),
            zone: Tz::UTC,
        };
        let times: Vec<_> = read.iter().map(|minutes| at(*minutes)).collect();
        let said = span.holds(&times).err().and_then(|refusal| refusal.field);
        assert_eq!(said.as_deref(), refused, "{began:?} {read:?}");
    }

    #[test]
    fn a_reading_lies_in_the_time_of_its_step() {
        check(None, &[-90, -30, 0], None);
        check(None, &[-30, 2], None);
        check(None, &[-30, 3], Some("[1].at"));
        check(None, &[-3_000, -1_440], None);
        check(None, &[-3_000, -1_441], Some("[1].at"));
        check(Some(-60), &[-62, -30], None);
        check(Some(-60), &[-63, -30], Some("[0].at"));
        check(Some(-5_000), &[-4_000, -3_000], None);
        check(None, &[], None);
    }
}
