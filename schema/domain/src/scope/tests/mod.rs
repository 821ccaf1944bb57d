//! Scopes against a book that is written the dumb way: every rule is asked of every pack and every pair of
//! doings, moment by moment, again and again, until nothing changes.

mod book;
mod kitchen;

use super::*;
use crate::code::HouseCode;
use crate::grams::Grams;
use crate::lot::{LotId, PackId};
use crate::series::Series;
use crate::words::{Account, DeedKind};
use book::{Book, Since};
use chrono::{DateTime, NaiveDate, Utc};
use kitchen::{BENCH, Dice, Kitchen, PLACES, STOVE, minute};
use proptest::prelude::*;
use std::collections::{BTreeMap, BTreeSet};

fn asked(seed: u64, kitchen: &Kitchen) -> (Vec<Start>, Question) {
    let mut dice = Dice(seed ^ 0x5eed);
    let (from, until) = (2 * dice.below(20) as i64, 2 * dice.below(30) as i64);
    let (first, last) = (minute(from), minute(from.max(until) + 2));
    let start = match dice.below(4) {
        0 | 1 => Start::Lots(vec![LotId(1 + dice.below(kitchen.lots.len()) as i32)]),
        2 => Start::Place {
            place: PLACES[dice.below(4)],
            from: first,
            until: last,
        },
        _ => Start::By {
            person: "Oda".into(),
            from: first,
            until: last,
        },
    };
    let spreads = [Spreads::Lineage, Spreads::Contact, Spreads::Contact][dice.below(3)];
    let cut = |dice: &mut Dice, add: i64| {
        dice.one_in(3)
            .then(|| minute(2 * dice.below(20) as i64 + add))
    };
    let question = Question {
        spreads,
        contact_from: cut(&mut dice, 0),
        contact_until: cut(&mut dice, 20),
        without: match dice.one_in(3) {
            true => [LotId(1 + dice.below(kitchen.lots.len()) as i32)].into(),
            false => BTreeSet::new(),
        },
    };
    (vec![start], question)
}

fn by_the_book(
    kitchen: &Kitchen,
    starts: &[Start],
    question: &Question,
) -> BTreeMap<PackId, Since> {
    let mut book = Book {
        kitchen,
        contact: question.spreads == Spreads::Contact,
        cut: (question.contact_from, question.contact_until),
        without: question.without.clone(),
        packs: BTreeMap::new(),
    };
    for start in starts {
        let (is_meant, from, until): (&dyn Fn(&Doing) -> bool, _, _) = match start {
            Start::Lots(lots) => {
                for lot in kitchen.lots.iter().filter(|lot| lots.contains(&lot.id)) {
                    book.births_whole(lot);
                }
                continue;
            }
            Start::Place { place, from, until } => {
                (&|doing| doing.place == Some(*place), *from, *until)
            }
            Start::By {
                person,
                from,
                until,
            } => (&|doing| doing.person == *person, *from, *until),
        };
        let minutes = |of: DateTime<Utc>| (of - DateTime::UNIX_EPOCH).num_minutes();
        for lot in &kitchen.lots {
            let steps = |doing: &Doing| {
                let began = doing.began.unwrap_or(doing.at);
                let mut all = minutes(began)..=minutes(doing.at);
                let in_time = all.any(|now| (minutes(from)..minutes(until)).contains(&now));
                matches!(doing.kind, DeedKind::Mix | DeedKind::Turn) && in_time && is_meant(doing)
            };
            if steps(book.deed(lot.made_by)) {
                book.births_whole(lot);
            }
            for pack in &lot.packs {
                for of in &pack.happened {
                    let doing = &kitchen.doings[of.deed.0 as usize - 1];
                    if steps(doing) && book.left_after(pack, doing) > Grams::ZERO {
                        book.from(lot, pack.id, doing.at, doing.id.0);
                    }
                }
                if let Start::Place { place, .. } = start
                    && let Some((at, deed)) =
                        book.lay(lot, pack, *place, minutes(from), minutes(until))
                {
                    book.from(lot, pack.id, at, deed);
                }
            }
        }
    }
    while book.once_more() {}
    book.packs
}

fn as_reached(reached: &Reached) -> BTreeMap<PackId, Since> {
    let packs = reached.values().flat_map(|affected| &affected.packs);
    packs
        .map(|(pack, since)| {
            let since = match *since == When::BIRTH {
                true => Since::Birth,
                false => Since::Moment(since.at, since.deed.0),
            };
            (*pack, since)
        })
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(1_500))]

    #[test]
    fn a_scope_is_what_the_dumb_book_says(seed in any::<u64>(), deeds in 3usize..26) {
        let kitchen = Kitchen::at_random(seed, deeds);
        prop_assume!(!kitchen.lots.is_empty());
        let world = kitchen.world();
        let (begin, question) = asked(seed, &kitchen);
        let seeds = starts(&world, &begin);
        let reached = walk(&world, &question, &seeds).expect("everything is loaded");
        let book = by_the_book(&kitchen, &begin, &question);
        prop_assert_eq!(as_reached(&reached), book, "{:?} {:?} {:#?}", begin, question, kitchen);
        for (lot, affected) in &reached {
            prop_assert!(!affected.because.is_empty(), "{lot:?} has no reason");
        }
        let scope = tell(&world, &question, &seeds, &BTreeMap::new()).expect("everything is loaded");
        let went = &scope.totals;
        let gone = went.used + went.sold + went.served + went.discarded + went.shipped + went.returned
            + went.lost + went.on_hand + went.unexplained;
        prop_assert_eq!(went.made + went.taken_back, gone);
    }
}

#[test]
fn what_is_not_loaded_is_lacked_and_not_left_out() {
    let mut dice = Dice(7);
    let mut kitchen = Kitchen::default();
    kitchen.cleaned.insert(BENCH, Vec::new());
    let house = HouseCode::parse("CHK").unwrap();
    let day = NaiveDate::from_ymd_opt(2026, 6, 26).unwrap();
    let mut codes = Series::Kitchen { house, day }.take(0, 4).0.into_iter();
    let by = kitchen.doing(&mut dice, DeedKind::Receive, Some(BENCH), 0);
    kitchen.birth(&mut dice, codes.next().unwrap(), by, BENCH, true);
    let step = kitchen.doing(&mut dice, DeedKind::Mix, Some(STOVE), 30);
    kitchen.happens((0, 0), step, Account::Used, Grams::whole(1), None);
    let mut world = World::default();
    world.cleaned = kitchen.cleaned.clone();
    for doing in &kitchen.doings {
        world.deeds.insert(doing.id, doing.clone());
    }
    world.add(kitchen.lots[0].clone());
    let question = Question {
        spreads: Spreads::Contact,
        contact_from: None,
        contact_until: None,
        without: BTreeSet::new(),
    };
    let seeds = starts(&world, &[Start::Lots(vec![LotId(1)])]);
    let lacks = walk(&world, &question, &seeds).unwrap_err();
    let window = Window {
        place: BENCH,
        nth: 0,
    };
    assert_eq!(
        (lacks.deeds, lacks.windows),
        ([step].into(), [window].into())
    );
}

#[test]
fn a_number_is_found_however_it_is_spelt_and_a_corrected_fact_is_known_once() {
    let fact = |lot: i32, carcass: &str, is_current: bool| SourceFact {
        lot,
        is_current,
        farm: Some("BRC".into()),
        carcass: Some(carcass.into()),
        killed_on: NaiveDate::from_ymd_opt(2026, 6, 8),
        ..SourceFact::default()
    };
    let facts = [
        fact(1, "0608-17", true),
        fact(2, "0608-17", false),
        fact(2, "0608-71", true),
        fact(3, "0608-31", true),
    ];
    let said = |carcass: &str| Sought {
        carcass: Some(carcass.into()),
        farm: Some("brc".into()),
        ..Sought::default()
    };
    let (lots, once) = sought(&facts, &said("0608 17"));
    assert_eq!(lots, [LotId(1)]);
    assert_eq!(once.len(), 1);
    assert_eq!((once[0].lot, &once[0].fact), (LotId(2), &facts[1]));
    let week = Sought {
        killed_from: NaiveDate::from_ymd_opt(2026, 6, 8),
        killed_until: NaiveDate::from_ymd_opt(2026, 6, 9),
        ..Sought::default()
    };
    assert_eq!(sought(&facts, &week).0.len(), 3);
    let before = Sought {
        killed_until: NaiveDate::from_ymd_opt(2026, 6, 8),
        ..Sought::default()
    };
    assert!(sought(&facts, &before).0.is_empty());
}
