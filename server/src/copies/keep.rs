//! Which copies are kept: the last so many, or one a day, a week and a month.

use chrono::{DateTime, Datelike, TimeDelta, Utc};
use clap::Args;
use std::collections::BTreeSet;

/// Which copies are kept; all, where nothing is said.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Args)]
pub struct Keeping {
    /// Keep so many copies; the oldest are removed when a new one is proven.
    #[arg(long, value_name = "N")]
    pub keep: Option<usize>,
    /// Remove copies that are older than so many days.
    #[arg(long, value_name = "N")]
    pub days: Option<u32>,
    /// Keep the last copy of each of so many days; with --keep-weekly and --keep-monthly, what any of them keeps.
    #[arg(long, value_name = "N", conflicts_with_all = ["keep", "days"])]
    pub keep_daily: Option<usize>,
    /// Keep the last copy of each of so many weeks.
    #[arg(long, value_name = "N", conflicts_with_all = ["keep", "days"])]
    pub keep_weekly: Option<usize>,
    /// Keep the last copy of each of so many months.
    #[arg(long, value_name = "N", conflicts_with_all = ["keep", "days"])]
    pub keep_monthly: Option<usize>,
}

impl Keeping {
    /// Which of some copies are too many or too old, by their places in the list; the newest comes first and is never
    /// one. Days, weeks and months are those of UTC, as in the names of copies.
    pub fn too_old(&self, copies: &[DateTime<Utc>], now: DateTime<Utc>) -> Vec<usize> {
        let by_calendar = [self.keep_daily, self.keep_weekly, self.keep_monthly];
        let gone = |nth: usize| match by_calendar.iter().all(Option::is_none) {
            true => {
                self.keep.is_some_and(|keep| nth >= keep.max(1))
                    || self
                        .days
                        .is_some_and(|days| copies[nth] < now - TimeDelta::days(i64::from(days)))
            }
            false => !self.on_calendar(copies).contains(&nth),
        };
        (1..copies.len()).filter(|nth| gone(*nth)).collect()
    }

    /// Which of them a day, a week or a month keeps.
    fn on_calendar(&self, copies: &[DateTime<Utc>]) -> BTreeSet<usize> {
        let mut kept = BTreeSet::new();
        let day = |at: &DateTime<Utc>| (at.year(), at.ordinal());
        let week = |at: &DateTime<Utc>| (at.iso_week().year(), at.iso_week().week());
        let month = |at: &DateTime<Utc>| (at.year(), at.month());
        kept.extend(newest_of_each(copies, self.keep_daily, day));
        kept.extend(newest_of_each(copies, self.keep_weekly, week));
        kept.extend(newest_of_each(copies, self.keep_monthly, month));
        kept
    }
}

fn newest_of_each(
    copies: &[DateTime<Utc>],
    most: Option<usize>,
    span: impl Fn(&DateTime<Utc>) -> (i32, u32),
) -> Vec<usize> {
    let mut seen = None;
    let newest = copies.iter().enumerate().filter(|(_, at)| {
        let now = Some(span(at));
        std::mem::replace(&mut seen, now) != now
    });
    newest.map(|(nth, _)| nth).take(most.unwrap_or(0)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(keeping: Keeping, days_ago: &[i64], gone: &[usize]) {
        let now: DateTime<Utc> = "2026-06-26T10:00:00Z".parse().unwrap();
        let copies: Vec<_> = days_ago
            .iter()
            .map(|days| now - TimeDelta::hours(days * 24))
            .collect();
        assert_eq!(keeping.too_old(&copies, now), gone, "{keeping:?}");
    }

    #[test]
    fn only_copies_that_are_too_many_or_too_old_go_and_never_the_newest() {
        let last = |keep, days| Keeping {
            keep,
            days,
            ..Keeping::default()
        };
        let all = [0, 1, 6, 25];
        check(last(None, None), &all, &[]);
        check(last(Some(3), None), &all, &[3]);
        check(last(Some(0), None), &all, &[1, 2, 3]);
        check(last(None, Some(5)), &all, &[2, 3]);
        check(last(None, Some(0)), &all, &[1, 2, 3]);
        check(last(Some(1), Some(90)), &all, &[1, 2, 3]);
        check(last(Some(1), None), &[], &[]);
        check(last(None, Some(5)), &[400], &[]);
    }

    #[test]
    fn a_day_a_week_and_a_month_each_keep_their_last_copy() {
        let by = |daily, weekly, monthly| Keeping {
            keep_daily: daily,
            keep_weekly: weekly,
            keep_monthly: monthly,
            ..Keeping::default()
        };
        // The 26th of June 2026 is a Friday: the week began four days before, and the month 25.
        let all = [0, 0, 1, 2, 4, 5, 11, 12, 26, 40];
        check(by(Some(3), None, None), &all, &[1, 4, 5, 6, 7, 8, 9]);
        check(by(None, Some(3), None), &all, &[1, 2, 3, 4, 6, 8, 9]);
        check(by(None, None, Some(2)), &all, &[1, 2, 3, 4, 5, 6, 7, 9]);
        check(by(Some(3), Some(3), Some(2)), &all, &[1, 4, 6, 9]);
        check(by(Some(0), None, None), &all, &[1, 2, 3, 4, 5, 6, 7, 8, 9]);
    }

    #[test]
    fn who_copies_every_day_for_three_years_keeps_a_handful() {
        let keeping = Keeping {
            keep_daily: Some(7),
            keep_weekly: Some(5),
            keep_monthly: Some(12),
            ..Keeping::default()
        };
        let mut kept: Vec<DateTime<Utc>> = Vec::new();
        let first: DateTime<Utc> = "2026-01-01T02:00:00Z".parse().unwrap();
        for day in 0..1_100 {
            let now = first + TimeDelta::days(day);
            kept.insert(0, now);
            for nth in keeping.too_old(&kept, now).into_iter().rev() {
                kept.remove(nth);
            }
            assert!(kept.contains(&now));
        }
        assert!((18..=24).contains(&kept.len()), "{}", kept.len());
        let oldest = kept.last().copied().unwrap();
        let now = first + TimeDelta::days(1_099);
        assert!(now - oldest > TimeDelta::days(300), "{oldest}");
    }
}
