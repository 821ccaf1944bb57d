//! Packs as their events make them.

use super::*;

fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
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
        .map(|what| Event {
            what: *what,
            day: day("2026-06-14"),
        })
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
    let event = |grams| Event {
        what: What::Took(Account::Used, Grams::whole(grams)),
        day: day("2026-06-14"),
    };
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
    let kept = |state, on: &str| Event {
        what: What::Moved {
            place: None,
            state: Some(state),
        },
        day: day(on),
    };
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
        let what = What::Moved {
            place: None,
            state: Some(state),
        };
        now.after(&Event { what, day: day(on) }, Grams::whole(500), later)
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
