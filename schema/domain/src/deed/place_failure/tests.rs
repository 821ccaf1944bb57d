//! How long food was warm, in one spell and in all.

use super::*;
use crate::code::LotCode;
use crate::condition::Condition;
use crate::lot::brief::tests::lot;
use crate::measure::Scale;
use crate::rows::Bound;
use crate::words::{ProvedBy, Species};

fn at(hours: i64, minutes: i64) -> DateTime<Utc> {
    let midnight: DateTime<Utc> = "2026-06-26T00:00:00Z".parse().unwrap();
    midnight + TimeDelta::hours(hours) + TimeDelta::minutes(minutes)
}

fn failure(
    from: DateTime<Utc>,
    until: DateTime<Utc>,
    read: &[(DateTime<Utc>, i64)],
) -> PlaceFailure {
    let degrees = |(at, celsius): &(DateTime<Utc>, i64)| (*at, Temperature::celsius(*celsius));
    PlaceFailure {
        place: "Walk-in".into(),
        from,
        until,
        readings: read.iter().map(degrees).collect(),
    }
}

#[test]
fn what_spells_have_in_common_counts_once() {
    let minutes = |spells: Vec<Spell>| in_all(spells).num_minutes();
    assert_eq!(
        minutes(vec![(at(1, 0), at(4, 12)), (at(4, 12), at(7, 24))]),
        384
    );
    assert_eq!(
        minutes(vec![(at(1, 0), at(5, 0)), (at(2, 0), at(3, 0))]),
        240
    );
    assert_eq!(
        minutes(vec![(at(4, 0), at(6, 0)), (at(1, 0), at(5, 0))]),
        300
    );
    assert_eq!(minutes(vec![]), 0);
}

#[test]
fn it_was_warm_from_the_last_cold_reading_to_the_next() {
    let thawing =
        |read: &[(DateTime<Utc>, i64)]| failure(at(0, 0), at(20, 0), read).thawing_spell();
    assert_eq!(thawing(&[(at(5, 0), 3)]), Some((at(0, 0), at(20, 0))));
    let door = [(at(5, 0), -18), (at(5, 10), 2), (at(5, 20), -15)];
    assert_eq!(thawing(&door), Some((at(5, 0), at(5, 20))));
    assert_eq!(thawing(&[(at(5, 0), 0)]), None, "ice and water");
    assert_eq!(thawing(&[]), None, "nobody knows");
}

#[test]
fn after_the_last_cold_reading_nobody_knows() {
    let warm = |until, read: &[(DateTime<Utc>, i64)]| {
        failure(at(0, 0), until, read).warm_spell(&rules().cold)
    };
    let cold = [(at(1, 0), 2)];
    assert_eq!(warm(at(17, 0), &cold), Some((at(1, 0), at(17, 0))));
    assert_eq!(warm(at(1, 0), &cold), None, "read at its end");
    let again = [(at(1, 0), 9), (at(2, 0), 3)];
    assert_eq!(warm(at(17, 0), &again), Some((at(0, 0), at(2, 0))));
}

fn rules() -> FailureRules {
    let limit = |bound| StabilityLimit { bound, open: false };
    FailureRules {
        cold: Degrees {
            scale: Scale::Celsius,
            limit: limit(Bound::at_most("a-cold", 5)),
        },
        hours: limit(Bound::at_most("a-hours", 4)),
        raw_hours: None,
        leaves_raw_out: None,
    }
}

/// The key of what is said of ready food that stood so, and from when on it is stopped.
fn told(failure: &PlaceFailure, state: State, others: &[Spell]) -> (String, Option<DateTime<Utc>>) {
    let mut lot = lot(&[(500, None)]);
    lot.species.insert(Species::Pig);
    lot.condition = Some(Condition::ready(ProvedBy::Heat));
    lot.packs[0].now.state = state;
    let judged = failure.judge(&lot, &lot.packs[0], &rules(), others);
    (judged.finding.says.key().to_owned(), judged.broke)
}

#[test]
fn warm_spells_are_added_up() {
    let second = failure(at(4, 12), at(7, 24), &[]);
    let check = |others: &[Spell], key: &str, broke| {
        let expected = (key.to_owned(), broke);
        assert_eq!(told(&second, State::Chilled, others), expected);
    };
    check(&[], "failure-in-time", None);
    check(&[(at(1, 0), at(1, 30))], "failure-in-time-again", None);
    check(
        &[(at(1, 0), at(4, 12))],
        "failure-broke-in-all",
        Some(at(5, 0)),
    );
    check(&[(at(4, 12), at(7, 24))], "failure-in-time", None);
}

#[test]
fn a_kitchen_counts_by_the_minute() {
    let long = |seconds| to_the_minute(TimeDelta::seconds(seconds)).num_seconds();
    assert_eq!((long(0), long(60), long(61)), (0, 60, 120));
}

#[test]
fn a_freezer_above_freezing_for_long_thaws_what_is_frozen() {
    let long = failure(at(0, 0), at(20, 0), &[(at(10, 0), 3)]);
    let thawed = ("failure-thawed".to_owned(), Some(at(0, 0)));
    assert_eq!(told(&long, State::Frozen, &[]), thawed);
    let unread = ("failure-broke".to_owned(), Some(at(14, 0)));
    assert_eq!(told(&long, State::Chilled, &[]), unread);
    let stayed = ("failure-stayed-cold".to_owned(), None);
    let door = failure(
        at(0, 0),
        at(20, 0),
        &[(at(5, 0), -18), (at(5, 10), 2), (at(5, 20), -15)],
    );
    assert_eq!(told(&door, State::Frozen, &[]), stayed);
}

#[test]
fn who_was_carried_away_was_warm_as_long_as_it_stood_there() {
    let part = |failure: &PlaceFailure, came, went| {
        let part = failure.while_there(&[(came, went)]).unwrap();
        part.warm_spell(&rules().cold)
    };
    let unread = failure(at(0, 0), at(9, 0), &[]);
    let stayed = (at(2, 0), at(5, 54));
    assert_eq!(part(&unread, stayed.0, stayed.1), Some(stayed));
    // What was read later tells of the place all the same.
    let read = failure(at(0, 0), at(9, 0), &[(at(1, 0), 3), (at(7, 0), 12)]);
    assert_eq!(part(&read, stayed.0, stayed.1), Some(stayed));
    let before = part(&read, at(0, 0), at(0, 30));
    assert_eq!(before, None, "cold until then");
    let good = failure(
        at(0, 0),
        at(9, 0),
        &[(at(1, 0), 12), (at(2, 0), 3), (at(9, 0), 3)],
    );
    assert_eq!(part(&good, at(3, 0), at(5, 0)), None, "cold since then");
    let later = failure(at(0, 0), at(9, 0), &[(at(1, 0), 3)]);
    let came = part(&later, at(4, 0), at(9, 0));
    assert_eq!(came, Some((at(4, 0), at(9, 0))), "since it came in");
    assert_eq!(unread.while_there(&[]).map(|part| part.from), None);
}

#[test]
fn a_whole_freezer_is_told_once() {
    let heat = HeatRules {
        failure: Some(rules()),
        ..HeatRules::default()
    };
    let check = |lots: u32, read: &[(DateTime<Utc>, i64)], keys: &[&str]| {
        let mut stood: Vec<Lot> = Vec::new();
        for nth in 0..lots {
            let mut lot = lot(&[(500, None), (500, None)]);
            lot.code = LotCode::assign("BRC26159A", nth).unwrap();
            lot.packs[0].now.state = State::Frozen;
            lot.packs[1].now.state = State::Frozen;
            stood.push(lot);
        }
        let failed = failure(at(0, 0), at(20, 0), read);
        let plan = plan(&failed, &stood, &Spells::new(), &heat, &Rows::default());
        let told: Vec<&str> = plan.warnings.iter().map(Says::key).collect();
        assert_eq!(told, keys, "{lots} lots, {} readings", read.len());
    };
    check(1, &[], &["failure-broke", "failure-look-if-thawed"]);
    check(
        2,
        &[],
        &[
            "failure-broke",
            "failure-stopped",
            "failure-look-what-thawed",
        ],
    );
    check(
        8,
        &[],
        &[
            "failure-broke",
            "failure-stopped-more",
            "failure-look-what-thawed",
        ],
    );
    let cold = [(at(0, 10), -18), (at(20, 0), -18)];
    check(1, &cold, &["failure-stayed-cold"]);
    check(2, &cold, &["failure-all-stayed-cold"]);
}
