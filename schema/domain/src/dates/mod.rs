//! The last day of a pack: its product's own keeping rule, the earliest date of what went into it,
//! and what has happened to the pack since. Nobody types a date.
//!
//! This is the first and simplest form of the rules; it never lengthens what a fuller one would give.

use crate::words::KeepFrom;
use chrono::{Days, NaiveDate};

/// A product's own keeping rule: so many days from an event.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Keep {
    /// How many days.
    pub days: u32,
    /// Counted from which event.
    pub from: KeepFrom,
    /// Is the day of the event itself day 1 (`us-D3`), or day 0 (`trade-D5` shows both)?
    pub day_one_counts: bool,
}

impl Keep {
    /// The last day, when the event fell on `day`.
    pub fn last_day(&self, day: NaiveDate) -> NaiveDate {
        let days = u64::from(self.days) - u64::from(self.day_one_counts && self.days > 0);
        day.checked_add_days(Days::new(days))
            .unwrap_or(NaiveDate::MAX)
    }

    /// Does the rule count from the making of the lot, in one word or another?
    fn counts_from_birth(&self) -> bool {
        use KeepFrom::*;
        matches!(self.from, Made | Received | Packed | Cooked)
    }
}

/// The date of a lot's packs when the lot is made on `day`: the product's rule, but never later
/// than `cap` (the earliest date among the parts, or the supplier's own).
pub fn date_at_birth(
    keep: Option<Keep>,
    day: NaiveDate,
    cap: Option<NaiveDate>,
) -> Option<NaiveDate> {
    let own = keep
        .filter(Keep::counts_from_birth)
        .map(|keep| keep.last_day(day));
    earliest(own, cap)
}

/// The date after a pack was first opened, or thawed, on `day`.
pub fn date_after(
    keep: Option<Keep>,
    event: KeepFrom,
    day: NaiveDate,
    until_now: Option<NaiveDate>,
) -> Option<NaiveDate> {
    let own = keep
        .filter(|keep| keep.from == event)
        .map(|keep| keep.last_day(day));
    earliest(own, until_now)
}

/// The days that a pack still has when it is frozen on `day`. The day of freezing counts as used:
/// the stricter reading of `us-DT4`.
pub fn days_left_when_frozen(use_by: NaiveDate, day: NaiveDate) -> i32 {
    i32::try_from((use_by - day).num_days().max(0)).unwrap_or(i32::MAX)
}

/// The date of a pack thawed on `day` with so many days left; the day of thawing is the first of
/// them (`trade-D2`), and one frozen on its last day is for the same day (`trade-D6`).
pub fn date_when_thawed(days_left: i32, day: NaiveDate) -> NaiveDate {
    let days = u64::from(days_left.max(1).unsigned_abs()) - 1;
    day.checked_add_days(Days::new(days))
        .unwrap_or(NaiveDate::MAX)
}

/// The earlier of two dates, where there are any.
pub fn earliest(one: Option<NaiveDate>, other: Option<NaiveDate>) -> Option<NaiveDate> {
    match (one, other) {
        (Some(one), Some(other)) => Some(one.min(other)),
        (any, None) | (None, any) => any,
    }
}

/// One link in the answer to "why this date?".
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Because {
    /// In words for a cook.
    pub says: String,
    /// The rule's name.
    pub rule: String,
    /// Where the rule comes from.
    pub source: String,
}

impl Because {
    /// A link that the kitchen's own product list gives.
    pub fn house(says: impl Into<String>, rule: impl Into<String>) -> Because {
        Because {
            says: says.into(),
            rule: rule.into(),
            source: "the kitchen's product list".into(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn day(text: &str) -> NaiveDate {
        text.parse().unwrap()
    }

    fn check(days: u32, day_one_counts: bool, from: &str, expected: &str) {
        let keep = Keep {
            days,
            from: KeepFrom::Made,
            day_one_counts,
        };
        assert_eq!(
            date_at_birth(Some(keep), day(from), None),
            Some(day(expected))
        );
    }

    #[test]
    fn published_date_vectors() {
        check(7, true, "2026-07-01", "2026-07-07"); // us-DT1
        check(7, true, "2026-05-01", "2026-05-07"); // us-DT2
        check(7, true, "2026-04-01", "2026-04-07"); // us-DT3
        check(7, true, "2026-06-13", "2026-06-19"); // trade-D1
        check(2, true, "2026-06-12", "2026-06-13"); // trade-D5, day 1 counts
        check(2, false, "2026-06-12", "2026-06-14"); // trade-D5, day 0 counts
    }

    #[test]
    fn a_leap_day_is_a_day() {
        check(2, true, "2028-02-28", "2028-02-29");
        check(2, false, "2027-02-28", "2027-03-02");
    }

    #[test]
    fn mixes_and_suppliers_cap() {
        let keep = Some(Keep {
            days: 7,
            from: KeepFrom::Made,
            day_one_counts: true,
        });
        // trade-D3: pork of 06-13, sauce of 06-11 whose own date is 06-17.
        assert_eq!(
            date_at_birth(keep, day("2026-06-13"), Some(day("2026-06-17"))),
            Some(day("2026-06-17"))
        );
        // trade-D4: opened 06-13, the maker's date is 06-15.
        let opened = Some(Keep {
            days: 7,
            from: KeepFrom::Opened,
            day_one_counts: true,
        });
        let date = date_after(
            opened,
            KeepFrom::Opened,
            day("2026-06-13"),
            Some(day("2026-06-15")),
        );
        assert_eq!(date, Some(day("2026-06-15")));
    }

    #[test]
    fn freezing_stops_the_clock() {
        let thaw = |use_by, frozen, thawed| {
            date_when_thawed(days_left_when_frozen(day(use_by), day(frozen)), day(thawed))
        };
        assert_eq!(
            thaw("2026-10-07", "2026-10-03", "2026-10-10"),
            day("2026-10-13")
        ); // us-DT4, stricter reading
        assert_eq!(
            thaw("2026-09-12", "2026-09-09", "2026-10-01"),
            day("2026-10-03")
        ); // trade-D2
        assert_eq!(
            thaw("2026-09-12", "2026-09-12", "2026-10-01"),
            day("2026-10-01")
        ); // trade-D6
    }

    proptest! {
        #[test]
        fn freezing_never_shortens_what_was_left_and_never_resets(
            left in 0i64..60, used in 0i64..60, frozen_for in 0i64..400,
        ) {
            let frozen = day("2026-01-01") + chrono::Duration::days(used);
            let use_by = frozen + chrono::Duration::days(left);
            let thawed = frozen + chrono::Duration::days(frozen_for);
            let date = date_when_thawed(days_left_when_frozen(use_by, frozen), thawed);
            let days_after_thaw = (date - thawed).num_days() + 1;
            prop_assert_eq!(days_after_thaw, left.max(1), "the days left, no more and no fewer");
        }

        #[test]
        fn a_cap_is_never_passed(days in 0u32..4000, counts: bool, cap in 0i64..5000) {
            let keep = Keep { days, from: KeepFrom::Made, day_one_counts: counts };
            let cap = day("2026-01-01") + chrono::Duration::days(cap);
            let date = date_at_birth(Some(keep), day("2026-01-01"), Some(cap)).unwrap();
            prop_assert!(date <= cap && date <= keep.last_day(day("2026-01-01")));
        }
    }
}
/// The rules of a place.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Rules {}

impl Rules {
    /// Every number that a house may tighten.
    pub fn bounds_mut(&mut self) -> Vec<&mut crate::law::Bound> {
        Vec::new()
    }
}
