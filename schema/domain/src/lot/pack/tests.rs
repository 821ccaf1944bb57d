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
