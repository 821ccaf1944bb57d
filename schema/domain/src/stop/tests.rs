//! What stands in whose way, and from when on.

use super::*;
use crate::code::LotCode;
use crate::dates::Later;
use crate::deed::draw::Draw;
use crate::grams::Grams;
use crate::lot::{BirthDate, DeedId, LotId, PackNow, PlaceId};
use crate::moment::Moment;
use crate::origin::Origin;
use crate::product::Product;
use crate::refusal::RefusalKind;
use crate::words::State;
use chrono::TimeDelta;
use std::collections::BTreeSet;
use std::sync::Arc;

const DAY: &str = "2026-06-26";

fn noon() -> DateTime<Utc> {
    "2026-06-26T12:00:00Z".parse().unwrap()
}

fn moment() -> Moment {
    Moment {
        at: noon(),
        began_at: None,
        recorded_at: noon(),
        day: DAY.parse().unwrap(),
        late: false,
    }
}

fn placed(kind: StopKind, since_hours: i64, ended_hours: Option<i64>) -> Placed {
    let hours = |hours| noon() + TimeDelta::hours(hours);
    Placed {
        id: StopId(7),
        root: StopId(3),
        pack: None,
        cause: Cause {
            kind,
            topic: Topic::Heat,
            because: Because::house(StopSays::HeldRule, StopSays::HeldRule),
            since: hours(since_hours),
        },
        incident: None,
        ended: ended_hours.map(hours),
    }
}

fn lot(use_by: Option<&str>, stops: Vec<Placed>) -> Lot {
    let date = use_by.map(|date| date.parse().unwrap());
    let day = DAY.parse().unwrap();
    let grams = Grams::whole(250);
    let now = PackNow::new(
        grams,
        PlaceId(1),
        State::Chilled,
        BirthDate {
            use_by: date,
            ..BirthDate::default()
        },
        day,
    );
    Lot {
        id: LotId(1),
        code: LotCode::read("BRC26159A0TM").unwrap(),
        product: Arc::new(Product::unnamed()),
        made_at: noon() - TimeDelta::days(3),
        made_by: DeedId(1),
        origin: Origin::NoSpecies,
        allergens: BTreeSet::new(),
        may_contain: BTreeSet::new(),
        supplied: None,
        species: BTreeSet::new(),
        later: Later::default(),
        packaging: None,
        condition: None,
        stops,
        wrong_labels: Vec::new(),
        released: false,
        voided: false,
        pack_count: 1,
        packs: vec![Pack {
            id: PackId(5),
            number: 1,
            made: grams,
            now,
            past: None,
        }],
    }
}

const USE: Act = Act::Use {
    cure_goes_on: false,
    puts_right: None,
    to_waste: false,
};

const LEAVE: Act = Act::Leave { labelled: true };

fn check(lot: &Lot, act: Act, refused: Option<RefusalKind>) {
    let draw = Draw {
        lot,
        pack: &lot.packs[0],
        grams: Grams::whole(250),
    };
    let asked = |told| ask(&[draw], act, &moment(), told, |_| "lot".into());
    let found = asked(false).err().map(|refusal| refusal.kind);
    assert_eq!(found, refused, "{act:?}");
    let passed = asked(true).unwrap();
    assert_eq!(passed.reasons.len(), usize::from(refused.is_some()));
    assert_eq!(passed.inherited.len(), usize::from(refused.is_some()));
}

#[test]
fn nothing_stands_in_the_way_of_what_is_good() {
    let good = lot(Some("2026-06-26"), Vec::new());
    for act in [USE, LEAVE, Act::Counter, Act::Label] {
        check(&good, act, None);
    }
}

#[test]
fn past_its_day_it_is_not_used_sold_or_labelled() {
    let past = lot(Some("2026-06-25"), Vec::new());
    for act in [USE, LEAVE, Act::Label] {
        check(&past, act, Some(RefusalKind::Limit));
    }
    check(&past, Act::Counter, None);
}

#[test]
fn what_was_made_by_a_clock_ahead_does_not_leave() {
    let mut ahead = lot(Some("2026-07-20"), Vec::new());
    ahead.made_at = noon() + TimeDelta::days(20);
    check(&ahead, LEAVE, Some(RefusalKind::Stopped));
    let served = Act::Leave { labelled: false };
    check(&ahead, served, Some(RefusalKind::Stopped));
    check(&ahead, USE, None);
    assert!(of_label(&ahead, &ahead.packs[0], noon(), DAY.parse().unwrap()).is_some());
    ahead.made_at = noon() + TimeDelta::minutes(CLOCK_SLACK_MINUTES);
    check(&ahead, LEAVE, None);
}

#[test]
fn a_hold_keeps_it_from_everything() {
    let held = lot(None, vec![placed(StopKind::Held, -1, None)]);
    for act in [USE, LEAVE, Act::Counter, Act::Label] {
        check(&held, act, Some(RefusalKind::Held));
    }
}

#[test]
fn what_failed_goes_on_only_where_that_puts_it_right() {
    let failed = lot(None, vec![placed(StopKind::Failed, -1, None)]);
    check(&failed, USE, Some(RefusalKind::Stopped));
    check(&failed, LEAVE, Some(RefusalKind::Stopped));
    let puts_right = |topic| Act::Use {
        cure_goes_on: false,
        puts_right: Some(topic),
        to_waste: false,
    };
    check(&failed, puts_right(Topic::Heat), None);
    check(&failed, puts_right(Topic::Cure), Some(RefusalKind::Stopped));
    // What grew while it cooled too slowly is not put right by a second cook.
    let mut cooled = placed(StopKind::Failed, -1, None);
    cooled.cause.topic = Topic::Cooling;
    let cooled = lot(None, vec![cooled]);
    check(&cooled, puts_right(Topic::Heat), Some(RefusalKind::Stopped));
}

#[test]
fn stops_are_asked_at_the_deeds_own_moment() {
    let later = lot(None, vec![placed(StopKind::Held, 1, None)]);
    check(&later, LEAVE, None);
    let ended = lot(None, vec![placed(StopKind::Held, -2, Some(-1))]);
    check(&ended, LEAVE, None);
    let ends_later = lot(None, vec![placed(StopKind::Held, -2, Some(1))]);
    check(&ends_later, LEAVE, Some(RefusalKind::Held));
}

#[test]
fn a_stop_on_one_pack_leaves_the_others_alone() {
    let on_another = Placed {
        pack: Some(PackId(6)),
        ..placed(StopKind::Failed, -1, None)
    };
    check(&lot(None, vec![on_another]), LEAVE, None);
    let on_this = Placed {
        pack: Some(PackId(5)),
        ..placed(StopKind::Failed, -1, None)
    };
    let stopped = lot(None, vec![on_this]);
    check(&stopped, LEAVE, Some(RefusalKind::Stopped));
}

#[test]
fn what_is_made_of_it_inherits_the_first_of_the_line() {
    let failed = lot(None, vec![placed(StopKind::Failed, -1, None)]);
    let draw = Draw {
        lot: &failed,
        pack: &failed.packs[0],
        grams: Grams::whole(250),
    };
    let passed = ask(&[draw, draw], USE, &moment(), true, |_| "lot".into()).unwrap();
    assert_eq!(passed.inherited.len(), 1, "from two packs of it once");
    assert_eq!(passed.inherited[0].root, Some(StopId(3)));
    assert_eq!(passed.inherited[0].cause.topic, Topic::Heat);
}

#[test]
fn a_wrong_label_stops_what_leaves_with_it_and_nothing_else() {
    let mut wrong = lot(None, Vec::new());
    wrong.wrong_labels.push(crate::claims::WrongLabel {
        pack: PackId(5),
        since: noon() - TimeDelta::hours(1),
        untrue: Vec::new(),
    });
    check(&wrong, LEAVE, Some(RefusalKind::Stopped));
    for act in [
        USE,
        Act::Counter,
        Act::Label,
        Act::Leave { labelled: false },
    ] {
        check(&wrong, act, None);
    }
    // It was true when a sale that is entered late was made, and another pack has its own.
    wrong.wrong_labels[0].since = noon() + TimeDelta::hours(1);
    check(&wrong, LEAVE, None);
    wrong.wrong_labels[0].since = noon();
    wrong.wrong_labels[0].pack = PackId(6);
    check(&wrong, LEAVE, None);
}

#[test]
fn raw_food_for_sale_without_a_day_does_not_leave() {
    use crate::condition::Condition;
    use crate::dates::KeepingRule;
    use crate::words::KeepFrom;
    let mut raw = lot(None, Vec::new());
    raw.condition = Some(Condition::RAW);
    let product = Arc::make_mut(&mut raw.product);
    product.raw = true;
    product.sale.offered = true;
    check(&raw, LEAVE, None);
    Arc::make_mut(&mut raw.product).keeping.usual = Some(KeepingRule {
        days: 3,
        from: KeepFrom::Made,
        day_one_counts: true,
        freeze_day_counts: true,
    });
    check(&raw, LEAVE, Some(RefusalKind::Stopped));
    check(&raw, USE, None);
}

/// A stop of a topic on a lot.
fn of_topic(topic: Topic) -> Lot {
    let mut stop = placed(StopKind::Failed, -1, None);
    stop.cause.topic = topic;
    lot(None, vec![stop])
}

#[test]
fn what_nobody_has_told_the_contents_of_is_used_and_reaches_no_customer() {
    let untold = of_topic(Topic::Contents);
    check(&untold, USE, None);
    check(&untold, Act::Counter, None);
    check(&untold, LEAVE, Some(RefusalKind::Stopped));
    let label = of_label(&untold, &untold.packs[0], noon(), moment().day);
    assert_eq!(label.map(|stop| stop.kind), Some(StopKind::NotProven));
    assert!(!untold.knows_allergens());
}

#[test]
fn what_a_customer_had_goes_nowhere() {
    let back = of_topic(Topic::CameBack);
    for act in [USE, LEAVE, Act::Leave { labelled: false }] {
        check(&back, act, Some(RefusalKind::Stopped));
    }
    let label = of_label(&back, &back.packs[0], noon(), moment().day);
    assert_eq!(label.map(|stop| stop.kind), Some(StopKind::CameBack));
    // What is in it is as well known as before.
    assert!(back.knows_allergens());
}

#[test]
fn what_is_entered_after_a_stop_keeps_it() {
    let late = Moment {
        at: noon() - TimeDelta::hours(5),
        recorded_at: noon(),
        late: true,
        ..moment()
    };
    let check = |kind, since, at: &Moment, expected: usize| {
        let lot = lot(Some("2026-06-29"), vec![placed(kind, since, None)]);
        let draw = Draw {
            lot: &lot,
            pack: &lot.packs[0],
            grams: Grams::whole(100),
        };
        let passed = ask(&[draw], USE, at, false, |_| "lot".into()).unwrap();
        assert_eq!(passed.inherited.len(), expected, "{kind:?}");
        assert_eq!(passed.warnings.len(), expected, "{kind:?}");
        let roots = passed.inherited.iter().map(|stop| stop.root);
        assert!(roots.into_iter().all(|root| root == Some(StopId(3))));
    };
    check(StopKind::Failed, -2, &late, 1);
    check(StopKind::Held, -2, &late, 1);
    check(StopKind::Failed, 2, &late, 0);
    check(StopKind::Failed, 2, &moment(), 0);
}

#[test]
fn only_what_stood_is_lifted() {
    let stops = |date| {
        on(
            &lot(date, Vec::new()),
            Some(&lot(date, Vec::new()).packs[0]),
            noon(),
            DAY.parse().unwrap(),
        )
    };
    let (past, good) = (stops(Some("2026-06-20")), stops(Some("2026-06-29")));
    assert!(lifts(&past, &good));
    assert!(!lifts(&past, &past));
    assert!(!lifts(&good, &past));
}
