//! Packs as their events make them.

use super::*;

fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

fn keeps(state: State) -> What {
    What::Moved {
        place: None,
        state: Some(state),
    }
}

/// What happens on a day, or at an hour of it.
fn event(what: What, on: &str) -> Event {
    let (on, hour) = on.split_once(' ').unwrap_or((on, "00:00"));
    let at = day(on).and_time(hour.parse().unwrap()).and_utc();
    let day = day(on);
    Event { what, day, at }
}

fn tub() -> PackNow {
    PackNow::new(
        Grams::whole(500),
        PlaceId(1),
        State::Chilled,
        BirthDate {
            use_by: Some(day("2026-06-19")),
            ..BirthDate::default()
        },
        day("2026-06-13"),
    )
}

fn check(events: &[What], left: i64, being: Being) {
    let events: Vec<Event> = events
        .iter()
        .map(|what| event(*what, "2026-06-14"))
        .collect();
    let now = refold(tub(), Grams::whole(500), Later::default(), &events).unwrap();
    assert_eq!((now.left, now.being), (Grams::whole(left), being));
}

#[test]
fn a_pack_becomes_what_emptied_it() {
    use Account::*;
    let took = |account, grams| What::Took(account, Grams::whole(grams));
    check(&[took(Used, 200)], 300, Being::Open);
    check(&[took(Used, 200), took(Sold, 300)], 0, Being::Sold);
    check(&[took(Lost, 20)], 480, Being::OnHand);
    check(&[took(Unexplained, 500)], 0, Being::Missing);
    check(
        &[took(Unexplained, 500), took(Unexplained, -500)],
        500,
        Being::OnHand,
    );
    check(
        &[took(Unexplained, 500), took(Unexplained, -400)],
        400,
        Being::Open,
    );
    check(
        &[took(Sold, 500), What::TakenBack(Grams::whole(500))],
        500,
        Being::OnHand,
    );
}

#[test]
fn never_below_zero() {
    let used = |grams| What::Took(Account::Used, Grams::whole(grams));
    let event = |grams| event(used(grams), "2026-06-14");
    assert_eq!(
        refold(
            tub(),
            Grams::whole(500),
            Later::default(),
            &[event(300), event(201)]
        ),
        Err(1)
    );
}

#[test]
fn frozen_keeps_its_days() {
    let kept = |state, on: &str| event(keeps(state), on);
    let frozen = refold(
        tub(),
        Grams::whole(500),
        Later::default(),
        &[kept(State::Frozen, "2026-06-15")],
    )
    .unwrap();
    assert_eq!((frozen.use_by, frozen.days_left), (None, Some(4)));
    let thawed = frozen
        .after(
            &kept(State::Chilled, "2026-09-01"),
            Grams::whole(500),
            Later::default(),
        )
        .unwrap();
    assert_eq!(
        (thawed.use_by, thawed.days_left),
        (Some(day("2026-09-04")), None)
    );
}

#[test]
fn what_is_frozen_tells_the_fewest_days_that_any_rule_gives() {
    use crate::dates::Count;
    let kept = |now: PackNow, state, on, later| {
        now.after(&event(keeps(state), on), Grams::whole(500), later)
            .unwrap()
    };
    let by_rule = |days: Option<u32>| Later {
        thawed: days.map(|days| Count {
            days,
            day_one_counts: true,
        }),
        ..Later::default()
    };
    for (rule, told) in [(None, 5), (Some(9), 5), (Some(2), 2)] {
        let later = by_rule(rule);
        assert_eq!(tub().days_once_thawed(later), None, "not frozen");
        let frozen = kept(tub(), State::Frozen, "2026-06-14", later);
        assert_eq!(frozen.days_once_thawed(later), Some(told), "{rule:?}");
        // The thaw gives that many days, its own being the first.
        let thawed = kept(frozen, State::Chilled, "2026-07-01", later);
        let last = day("2026-07-01") + chrono::Days::new(told as u64 - 1);
        assert_eq!(thawed.use_by, Some(last), "{rule:?}");
    }
}

/// A pack for the 19th, in which something is of a maker who says the 31st of December: its day after each order in
/// which the same deeds are entered.
fn check_thawed(doings: &[(What, &str)], later: Later, born: PackNow, use_by: Option<&str>) {
    let events: Vec<Event> = doings.iter().map(|(what, on)| event(*what, on)).collect();
    for first in 0..events.len() {
        for turned in [false, true] {
            let mut events = events.clone();
            events.rotate_left(first);
            if turned {
                events.reverse();
            }
            let now = refold(born, Grams::whole(500), later, &events).unwrap();
            assert_eq!(now.use_by, use_by.map(day), "{events:?}");
        }
    }
}

#[test]
fn what_is_sawn_off_while_it_is_frozen_gives_no_day() {
    let kept = keeps;
    let drawn = What::Took(Account::Sold, Grams::whole(50));
    let lives = |thawed| {
        [
            (kept(State::Frozen), "2026-06-15"),
            (drawn, "2026-06-16"),
            (kept(State::Chilled), thawed),
        ]
    };
    let capped = Later {
        cap: Some(day("2026-12-31")),
        ..Later::of(None)
    };
    // Four days were left, the day of the thaw is the first of them; the cut may be of the thaw's own day.
    check_thawed(&lives("2026-09-01"), capped, tub(), Some("2026-09-04"));
    check_thawed(&lives("2026-06-16"), capped, tub(), Some("2026-06-19"));
    // Frozen still: no day of its own, whatever the maker says.
    check_thawed(&lives("2026-09-01")[..2], capped, tub(), None);
    // A pack past its day is not saved.
    let late = PackNow {
        use_by: Some(day("2026-06-14")),
        ..tub()
    };
    check_thawed(&lives("2026-09-01"), capped, late, Some("2026-06-14"));
    // One without days of its own gets none from the maker's date for the frozen food.
    let bought = PackNow {
        use_by: None,
        ..tub()
    };
    check_thawed(&lives("2026-09-01"), capped, bought, None);
    // Three days once thawed, and two once opened.
    let days = |days| {
        Some(crate::dates::Count {
            days,
            day_one_counts: true,
        })
    };
    let thawed = Later {
        thawed: days(3),
        ..capped
    };
    check_thawed(&lives("2026-09-01"), thawed, bought, Some("2026-09-03"));
    check_thawed(&lives("2026-09-01"), thawed, tub(), Some("2026-09-03"));
    let opened = Later {
        opened: days(2),
        ..capped
    };
    check_thawed(&lives("2026-09-01"), opened, tub(), Some("2026-09-01"));
}

/// What deeds of one day make of a pack, in whatever order they are entered.
fn check_day(doings: &[(What, &str)], state: State, place: i32, use_by: Option<&str>) {
    let events = doings.iter().map(|(what, at)| event(*what, at));
    let events: Vec<Event> = events.collect();
    for first in 0..events.len() {
        for second in 0..events.len() - 1 {
            let mut events = events.clone();
            events.rotate_left(first);
            events[1..].rotate_left(second);
            let later = Later::of(None);
            let now = refold(tub(), Grams::whole(500), later, &events).unwrap();
            let found = (now.state, now.place, now.use_by);
            assert_eq!(
                found,
                (state, PlaceId(place), use_by.map(day)),
                "{events:?}"
            );
        }
    }
}

#[test]
fn deeds_of_one_day_follow_the_hours_in_whatever_order_they_are_entered() {
    let goes = |place| What::Moved {
        place: Some(PlaceId(place)),
        state: None,
    };
    let (frozen, thawed) = (keeps(State::Frozen), keeps(State::Chilled));
    let froze_first = [(frozen, "2026-06-15 08:00"), (thawed, "2026-06-15 12:00")];
    check_day(&froze_first, State::Chilled, 1, Some("2026-06-18"));
    let thawed_first = [
        (frozen, "2026-06-14 08:00"),
        (thawed, "2026-06-15 08:00"),
        (frozen, "2026-06-15 12:00"),
    ];
    check_day(&thawed_first, State::Frozen, 1, None);
    let carried = [
        (goes(2), "2026-06-15 08:00"),
        (goes(3), "2026-06-15 12:00"),
        (
            What::Took(Account::Sold, Grams::whole(50)),
            "2026-06-15 13:00",
        ),
    ];
    check_day(&carried, State::Chilled, 3, Some("2026-06-19"));
    // Lots of the time before keep the order in which they were told.
    let before = Later {
        by_moment: false,
        ..Later::of(None)
    };
    let told = [event(goes(3), carried[1].1), event(goes(2), carried[0].1)];
    let now = refold(tub(), Grams::whole(500), before, &told).unwrap();
    assert_eq!(now.place, PlaceId(2));
}
