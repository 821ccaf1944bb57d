//! What can still change a pack's date after it was made: opening, freezing, thawing. Fixed when
//! the lot is made, so that a rule that changes later leaves the labels on the shelf as they are.

use super::earliest;
use super::keep::{Count, KeepingRule};
use crate::words::KeepFrom;
use chrono::{Days, NaiveDate};
use std::fmt;

/// The rules of a lot's later life.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Later {
    /// Counted from the first opening.
    pub opened: Option<Count>,
    /// Counted from a thaw.
    pub thawed: Option<Count>,
    /// Is the day of freezing one of the days used (`us-DT4`)?
    pub freeze_day_counts: bool,
    /// The maker's own date: nothing outlives it, frozen or thawed.
    pub cap: Option<NaiveDate>,
    /// Does freezing save nothing that is past its day, and a second freeze add no day? Lots made before
    /// this was asked keep what they were judged by.
    pub freezes_once: bool,
    /// Does it come of pieces that were released, and so needs no release of its own?
    pub released: bool,
    /// Does what happened on one day follow the moments, in whatever order it was entered? Lots made before this was
    /// asked keep the order in which they were told.
    pub by_moment: bool,
}

impl Default for Later {
    fn default() -> Later {
        Later {
            opened: None,
            thawed: None,
            freeze_day_counts: true,
            cap: None,
            freezes_once: false,
            released: false,
            by_moment: false,
        }
    }
}

impl Later {
    /// What a product's own rule says of it.
    pub fn of(keep: Option<KeepingRule>) -> Later {
        let from = |event| {
            keep.filter(|keep| keep.from == event)
                .map(|keep| keep.count())
        };
        Later {
            opened: from(KeepFrom::Opened),
            thawed: from(KeepFrom::Thawed),
            freeze_day_counts: keep.is_none_or(|keep| keep.freeze_day_counts),
            cap: None,
            freezes_once: true,
            released: false,
            by_moment: true,
        }
    }

    /// The date after a first opening on `day`. The maker's day only caps, here too.
    pub fn date_opened(&self, day: NaiveDate, until_now: Option<NaiveDate>) -> Option<NaiveDate> {
        let opened = earliest(self.opened.map(|count| count.last_day(day)), until_now)?;
        earliest(Some(opened), self.cap)
    }

    /// The days that a pack still has when it is frozen on `day`. Freezing stops the clock
    /// (`us-DT7`); whether its day is used up depends on the rule.
    pub fn days_left(&self, use_by: NaiveDate, day: NaiveDate) -> i32 {
        let unused = i64::from(!self.freeze_day_counts);
        self.counted(use_by, day, unused)
    }

    /// The same where it was frozen before: its day is used up. Nothing where the clock runs on, because
    /// its last day is here or over.
    pub fn days_left_again(&self, use_by: NaiveDate, day: NaiveDate) -> Option<i32> {
        (day < use_by).then(|| self.counted(use_by, day, 0))
    }

    fn counted(&self, use_by: NaiveDate, day: NaiveDate, unused: i64) -> i32 {
        let left = ((use_by - day).num_days() + unused).max(0);
        i32::try_from(left).unwrap_or(i32::MAX)
    }

    /// The date after a thaw on `day` with so many days left. The maker's day only caps: it is for the frozen
    /// food, and gives what was thawed no day of its own.
    pub fn date_thawed(&self, days_left: Option<i32>, day: NaiveDate) -> Option<NaiveDate> {
        let resumed = days_left.map(|days| date_when_thawed(days, day));
        let thawed = earliest(self.thawed.map(|count| count.last_day(day)), resumed)?;
        earliest(Some(thawed), self.cap)
    }

    /// Reads what [`fmt::Display`] wrote.
    pub fn parse(text: &str) -> Option<Later> {
        let mut later = Later {
            freeze_day_counts: false,
            ..Later::default()
        };
        for word in text.split_whitespace() {
            if word == "freeze-day-counts" {
                later.freeze_day_counts = true;
                continue;
            }
            if word == "freezes-once" {
                later.freezes_once = true;
                continue;
            }
            if word == "released" {
                later.released = true;
                continue;
            }
            if word == "by-moment" {
                later.by_moment = true;
                continue;
            }
            if let Some(day) = word.strip_prefix("cap=") {
                later.cap = Some(day.parse().ok()?);
                continue;
            }
            let (event, count) = word.split_once('=')?;
            let (days, first) = count.split_once('/')?;
            let count = Count {
                days: days.parse().ok()?,
                day_one_counts: first == "1",
            };
            match event {
                "opened" => later.opened = Some(count),
                "thawed" => later.thawed = Some(count),
                _ => return None,
            }
        }
        Some(later)
    }
}

impl fmt::Display for Later {
    /// `opened=7/1 thawed=3/1 freeze-day-counts freezes-once released by-moment cap=2026-07-02`: days, and whether the event's day is day 1 or 0.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut words = Vec::new();
        let mut say = |event: &str, count: Option<Count>| {
            if let Some(count) = count {
                words.push(format!(
                    "{event}={}/{}",
                    count.days,
                    u8::from(count.day_one_counts)
                ));
            }
        };
        say("opened", self.opened);
        say("thawed", self.thawed);
        if self.freeze_day_counts {
            words.push("freeze-day-counts".into());
        }
        if self.freezes_once {
            words.push("freezes-once".into());
        }
        if self.released {
            words.push("released".into());
        }
        if self.by_moment {
            words.push("by-moment".into());
        }
        if let Some(cap) = self.cap {
            words.push(format!("cap={cap}"));
        }
        f.write_str(&words.join(" "))
    }
}

/// The date of a pack thawed on `day` with so many days left; the day of thawing is the first of
/// them (`trade-D2`), and one frozen on its last day is for the same day (`trade-D6`).
pub fn date_when_thawed(days_left: i32, day: NaiveDate) -> NaiveDate {
    let days = u64::from(days_left.max(1).unsigned_abs()) - 1;
    day.checked_add_days(Days::new(days))
        .unwrap_or(NaiveDate::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn day(text: &str) -> NaiveDate {
        text.parse().unwrap()
    }

    fn count() -> impl Strategy<Value = Option<Count>> {
        proptest::option::of(
            (0u32..400, any::<bool>()).prop_map(|(days, day_one_counts)| Count {
                days,
                day_one_counts,
            }),
        )
    }

    proptest! {
        #[test]
        fn it_reads_back(opened in count(), thawed in count(), freeze_day_counts: bool, freezes_once: bool, released: bool, by_moment: bool, days in proptest::option::of(0u64..4000)) {
            let cap = days.map(|days| day("2026-01-01") + chrono::Days::new(days));
            let later = Later { opened, thawed, freeze_day_counts, cap, freezes_once, released, by_moment };
            prop_assert_eq!(Later::parse(&later.to_string()), Some(later));
        }

        #[test]
        fn freezing_never_shortens_what_was_left_and_never_resets(
            left in 0i64..60, used in 0i64..60, frozen_for in 0i64..400, freeze_day_counts: bool,
        ) {
            let later = Later { freeze_day_counts, ..Later::default() };
            let frozen = day("2026-01-01") + chrono::Duration::days(used);
            let use_by = frozen + chrono::Duration::days(left);
            let thawed = frozen + chrono::Duration::days(frozen_for);
            let date = later.date_thawed(Some(later.days_left(use_by, frozen)), thawed).unwrap();
            let days_after_thaw = (date - thawed).num_days() + 1;
            let had = left + i64::from(!freeze_day_counts);
            prop_assert_eq!(days_after_thaw, had.max(1), "the days left, no more and no fewer");
            prop_assert!(date >= use_by || thawed > use_by || left == 0 || frozen_for < left + 1, "never shorter than unfrozen");
        }
    }
}
