//! A lot that was found warm, and again hours later, with nothing cold in between: it was warm all that time, as far as
//! anybody knows.

use super::place_failure::{FailureSays, because, food, limit_for, to_the_minute};
use crate::heat::{FailureRules, hours};
use crate::lot::Lot;
use crate::rows::{Finding, Gravity, Rows};
use crate::stop::Cause;
use crate::words::Topic;
use chrono::{DateTime, Utc};

/// A reading of a lot: when, and whether it was too warm.
pub type Found = (DateTime<Utc>, bool);

/// From when until when it was warm, as far as anybody knows.
type Run = (DateTime<Utc>, DateTime<Utc>);

/// What readings say of a lot that were not known `before`; both are in the order of their times. Nothing where no run
/// of warm ones is longer than food may be warm, or the long ones were known.
pub fn judge(
    lot: &Lot,
    before: &[Found],
    now: &[Found],
    rules: &FailureRules,
    rows: &Rows,
) -> Option<(Finding, Cause)> {
    let limit = limit_for(lot, rules);
    let within = hours(limit.bound.value);
    let too_long = |(from, until): &Run| {
        let warm = *until - *from;
        warm > within || warm == within && limit.open
    };
    let known: Vec<Run> = runs(before).into_iter().filter(too_long).collect();
    let is_new = |(from, until): &Run| {
        let mut known = known.iter();
        !known.any(|(since, to)| since <= until && from <= to)
    };
    let mut broken = runs(now).into_iter().filter(too_long).filter(is_new);
    let run = broken.next()?;
    let says = FailureSays::FoundWarm {
        lot: food(lot),
        warm: to_the_minute(run.1 - run.0),
        within,
    };
    // A person read it, and a person looks at it: also where no law counts the hours.
    let finding = Finding::new(Gravity::Refuse, says, [limit.bound.row.clone()]);
    let cause = Cause::failed(Topic::Cold, because(&finding, rows), run.0 + within);
    Some((finding, cause))
}

/// Each run of warm readings with nothing cold in between.
fn runs(all: &[Found]) -> Vec<Run> {
    let of_warm = all.split(|(_, warm)| !warm);
    let ends = |run: &[Found]| Some((run.first()?.0, run.last()?.0));
    of_warm.filter_map(ends).collect()
}

/// From when until when the readings around one of them are all too warm.
pub fn run(all: &[Found], nth: usize) -> Option<Run> {
    let (_, true) = all.get(nth)? else {
        return None;
    };
    let first = all[..nth].iter().rposition(|(_, warm)| !warm);
    let last = all[nth..].iter().position(|(_, warm)| !warm);
    let first = first.map_or(0, |cold| cold + 1);
    let last = last.map_or(all.len(), |cold| nth + cold) - 1;
    Some((all[first].0, all[last].0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::condition::Condition;
    use crate::heat::Degrees;
    use crate::lot::brief::tests::lot;
    use crate::measure::Scale;
    use crate::rows::Bound;
    use crate::stability::StabilityLimit;
    use crate::words::{ProvedBy, Species};
    use chrono::TimeDelta;

    fn at(hour: i64) -> DateTime<Utc> {
        let midnight: DateTime<Utc> = "2026-06-26T00:00:00Z".parse().unwrap();
        midnight + TimeDelta::hours(hour)
    }

    /// From when on ready food is stopped that was read at these hours, the `nth` of them now; four hours are allowed.
    #[track_caller]
    fn check(read: &[(i64, bool)], nth: usize, stopped: Option<i64>) {
        let limit = |bound| StabilityLimit { bound, open: false };
        let rules = FailureRules {
            cold: Degrees {
                scale: Scale::Celsius,
                limit: limit(Bound::at_most("a-cold", 5)),
            },
            hours: limit(Bound::at_most("a-hours", 4)),
            raw_hours: None,
            leaves_raw_out: None,
        };
        let mut lot = lot(&[(500, None)]);
        lot.species.insert(Species::Pig);
        lot.condition = Some(Condition::ready(ProvedBy::Heat));
        let all: Vec<Found> = read.iter().map(|(hour, warm)| (at(*hour), *warm)).collect();
        let before = [&all[..nth], &all[nth + 1..]].concat();
        let judged = judge(&lot, &before, &all, &rules, &Rows::default());
        let since = judged.map(|(_, cause)| cause.since);
        assert_eq!(since, stopped.map(at), "{read:?}");
    }

    #[test]
    fn twice_warm_with_nothing_cold_in_between_is_warm_all_the_time() {
        check(&[(1, true)], 0, None);
        check(&[(1, true), (5, true)], 1, None);
        check(&[(1, true), (6, true)], 1, Some(5));
        check(&[(1, true), (3, false), (6, true)], 2, None);
        check(&[(1, true), (3, true), (6, true)], 2, Some(5));
        check(&[(0, false), (1, true), (6, true)], 2, Some(5));
        // Told late: the first of two, or what lies between them.
        check(&[(1, true), (6, true), (9, false)], 0, Some(5));
        check(&[(1, true), (3, true), (6, true)], 1, None);
        check(&[(1, false), (6, true), (9, false)], 0, None);
        // Two runs are two: what was known of one of them says nothing of the other.
        check(
            &[(1, true), (6, true), (7, false), (8, true), (14, true)],
            4,
            Some(12),
        );
        // It was known already.
        check(&[(1, true), (6, true), (7, true)], 2, None);
    }
}
