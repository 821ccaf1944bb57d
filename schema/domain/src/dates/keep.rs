//! A product's own keeping rule: so many days from an event.

use crate::words::KeepFrom;
use chrono::{Days, NaiveDate};

/// So many days, and whether the day they are counted from is the first of them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Count {
    /// How many days.
    pub days: u32,
    /// Is the day of the event itself day 1 (`us-D3`), or day 0 (`trade-D5` shows both)?
    pub day_one_counts: bool,
}

impl Count {
    /// The last day, when the event fell on `day`.
    pub fn last_day(self, day: NaiveDate) -> NaiveDate {
        day.checked_add_days(Days::new(u64::from(self.after())))
            .unwrap_or(NaiveDate::MAX)
    }

    /// How many days the last day is after the event's.
    pub fn after(self) -> u32 {
        self.days - u32::from(self.day_one_counts && self.days > 0)
    }

    /// The one that ends first.
    pub fn stricter(self, other: Count) -> Count {
        match self.after() <= other.after() {
            true => self,
            false => other,
        }
    }
}

/// A product's own keeping rule.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct KeepingRule {
    /// How many days.
    pub days: u32,
    /// Counted from which event.
    pub from: KeepFrom,
    /// Is the day of the event day 1?
    pub day_one_counts: bool,
    /// Is the day of freezing one of the days used? The stricter reading of `us-DT4`, and ours where
    /// nothing else is said.
    pub freeze_day_counts: bool,
}

impl KeepingRule {
    /// The days, whatever they are counted from.
    pub fn count(&self) -> Count {
        Count {
            days: self.days,
            day_one_counts: self.day_one_counts,
        }
    }

    /// The last day, when the event fell on `day`.
    pub fn last_day(&self, day: NaiveDate) -> NaiveDate {
        self.count().last_day(day)
    }

    /// Does the rule count from the making of the lot, in one word or another?
    pub fn counts_from_birth(&self) -> bool {
        use KeepFrom::*;
        matches!(self.from, Made | Received | Packed | Cooked)
    }
}
