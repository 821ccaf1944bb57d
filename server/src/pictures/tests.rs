//! A family of any size, laid out: nothing overlaps, sums are kept, the same facts give the same picture.

use super::items::{Area, Fill, Item, Line, Picture};
use super::layout::lay_out;
use super::rows::{MOST, Span, rows};
use super::*;
use chrono::{Days, NaiveDate, NaiveDateTime, TimeDelta};
use domain::grams::Grams;
use domain::words::{Account, DeedKind};
use proptest::prelude::*;
use words::Language;

fn start() -> NaiveDateTime {
    let day = NaiveDate::from_ymd_opt(2025, 5, 8).unwrap();
    day.and_hms_opt(8, 0, 0).unwrap()
}

/// A kitchen's worth of lots, one every few hours, each of an earlier one.
fn family_of(many: usize) -> Family {
    let kinds = [
        DeedKind::BreakDown,
        DeedKind::Cure,
        DeedKind::Grind,
        DeedKind::Cook,
        DeedKind::Pack,
    ];
    let hours = 9_000 / many.max(1) as i64;
    let lot = |nth: usize| {
        let made = Grams::whole(200 + (nth as i64 * 7_919) % 9_000);
        let is_here = nth % 4 == 1;
        let on_hand = if is_here { made } else { Grams::ZERO };
        Drawn {
            code: format!("BRC-26159-{nth:04}"),
            name: format!("Sausage <& \"ham\"> number {nth} with a rather long name to it"),
            made_at: start() + TimeDelta::hours(hours * (nth as i64)),
            step: if nth == 0 {
                DeedKind::Receive
            } else {
                kinds[nth % kinds.len()]
            },
            made_by: nth as i32,
            is_start: nth == 0,
            made,
            on_hand,
            held: if nth % 8 == 1 { on_hand } else { Grams::ZERO },
            gone_at: (!is_here).then(|| start() + TimeDelta::hours(hours * (nth as i64) + 60)),
            places: if is_here {
                vec![(format!("Cooler {}", nth % 3), on_hand)]
            } else {
                Vec::new()
            },
            went: vec![Account::Used, Account::Sold],
            used_in: vec![nth as i32 + 1, nth as i32 + 2],
        }
    };
    let until = start().date().checked_add_days(Days::new(400)).unwrap();
    Family {
        lots: (0..many).map(lot).collect(),
        until: until.into(),
    }
}

fn speech(language: Language) -> Speech {
    Speech {
        today: NaiveDate::from_ymd_opt(2026, 6, 26),
        ..Speech::in_language(language)
    }
}

fn texts(picture: &Picture) -> Vec<&Line> {
    let text = |item: &'_ Item| matches!(item, Item::Text(_));
    let all = picture.items.iter().filter(|item| text(item));
    all.filter_map(|item| match item {
        Item::Text(line) => Some(line),
        _ => None,
    })
    .collect()
}

fn bars(picture: &Picture, wanted: Fill) -> Vec<Area> {
    let all = picture.items.iter().filter_map(|item| match item {
        Item::Bar { area, fill } if *fill == wanted => Some(*area),
        _ => None,
    });
    all.collect()
}

/// No text lies over another, none beside the sheet, no bar over that of another row.
fn stands_apart(picture: &Picture) -> std::result::Result<(), String> {
    let lines = texts(picture);
    for (nth, one) in lines.iter().enumerate() {
        if one.x < 0 || one.x + one.width > picture.width || one.baseline > picture.height {
            return Err(format!("beside the sheet: {one:?}"));
        }
        for other in &lines[nth + 1..] {
            let same_row = (one.baseline - other.baseline).abs() < 220;
            if same_row && one.x < other.x + other.width && other.x < one.x + one.width {
                return Err(format!("{one:?} over {other:?}"));
            }
        }
    }
    let made = bars(picture, Fill::Gone);
    for (nth, one) in made.iter().enumerate() {
        let over = |other: &&Area| {
            one.y < other.y + other.h
                && other.y < one.y + one.h
                && one.x < other.x + other.w
                && other.x < one.x + one.w
        };
        if let Some(other) = made[nth + 1..].iter().find(over) {
            return Err(format!("{one:?} over {other:?}"));
        }
    }
    Ok(())
}

#[test]
fn few_lots_have_a_row_each_and_many_a_row_for_each_kind_of_step() {
    for (lots, span) in [
        (5, Span::Lot),
        (MOST, Span::Lot),
        (MOST + 1, Span::Week),
        (2_000, Span::Month),
    ] {
        let family = family_of(lots);
        let (found, rows) = rows(&family.lots);
        let fewer = found != Span::Lot;
        assert_eq!(fewer, lots > MOST, "{lots}");
        assert!(rows.len() <= 5 * MOST, "{lots}: {} rows", rows.len());
        assert_eq!(rows.iter().map(|row| row.lots).sum::<usize>(), lots);
        // Which span the many get follows from their days.
        let finest = [Span::Lot, Span::Day, Span::Week, Span::Month, Span::Year];
        let nth = |of: Span| finest.iter().position(|one| *one == of);
        assert!(
            nth(found) >= nth(span) || lots == MOST + 1,
            "{lots}: {found:?}"
        );
        let sum = |of: fn(&super::rows::Row) -> Grams| rows.iter().map(of).sum::<Grams>();
        let all = |of: fn(&Drawn) -> Grams| family.lots.iter().map(of).sum::<Grams>();
        assert_eq!(sum(|row| row.made), all(|lot| lot.made), "{lots}");
        assert_eq!(sum(|row| row.on_hand), all(|lot| lot.on_hand), "{lots}");
        assert_eq!(sum(|row| row.held), all(|lot| lot.held), "{lots}");
    }
}

#[test]
fn nothing_lies_over_anything_in_either_language() {
    for language in Language::ALL {
        for lots in [0, 1, 2, 5, MOST, MOST + 1, 2_000] {
            let picture = lay_out(&family_of(lots), &speech(language));
            stands_apart(&picture)
                .unwrap_or_else(|why| panic!("{lots} in {}: {why}", language.tag()));
        }
    }
}

#[test]
fn what_is_held_is_hatched_and_what_is_on_hand_is_black() {
    let picture = lay_out(&family_of(10), &speech(Language::English));
    // Of ten lots 1, 5 and 9 are here, and of these 1 and 9 are held.
    assert_eq!(bars(&picture, Fill::Held).len(), 2 + 1, "and the key");
    assert_eq!(bars(&picture, Fill::Row).len(), 3);
    let places = 3;
    assert_eq!(
        bars(&picture, Fill::OnHand).len(),
        1 + places + 1,
        "its lot, each place, the key"
    );
}

#[test]
fn the_same_facts_in_any_order_give_the_same_bytes() {
    let mut family = family_of(300);
    let before = super::family(&family, &speech(Language::French));
    family.lots.reverse();
    assert_eq!(super::family(&family, &speech(Language::French)), before);
}

#[test]
fn texts_stay_texts() {
    let svg = super::family(&family_of(5), &speech(Language::English));
    assert!(svg.contains("&lt;&amp; &quot;ham&quot;&gt;"), "{svg}");
    for never in ["<script", "href", "<style", "http://www.w3.org/1999", "<& "] {
        assert!(!svg.contains(never), "{never}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]
    #[test]
    fn whatever_the_lots_nothing_overlaps(
        lots in prop::collection::vec((0i64..20_000, 0i64..2_000_000_000, 0i64..400, any::<bool>(), ".{0,40}"), 0..90),
    ) {
        let mut family = family_of(lots.len());
        for (lot, (hours, milligrams, stays, here, name)) in family.lots.iter_mut().zip(lots) {
            lot.made_at = start() + TimeDelta::hours(hours);
            lot.made = Grams::from_milligrams(milligrams);
            lot.on_hand = if here { lot.made } else { Grams::ZERO };
            lot.held = Grams::ZERO;
            lot.places = if here { vec![(name.clone(), lot.made)] } else { Vec::new() };
            lot.gone_at = (!here).then(|| lot.made_at + TimeDelta::hours(stays));
            lot.name = name;
        }
        for language in Language::ALL {
            let picture = lay_out(&family, &speech(language));
            prop_assert_eq!(stands_apart(&picture), Ok(()));
        }
    }
}

/// Writes the pictures to look at, where a folder is named.
#[test]
fn pictures_to_look_at() {
    let began = crate::world::Stopwatch::start();
    let svg = super::family(&family_of(2_000), &speech(Language::English));
    let took = began.elapsed();
    println!("2,000 lots: {} bytes, {took:?}", svg.len());
    let folder = std::env::var_os("PICTURES");
    for lots in [5, MOST, MOST + 1, 2_000] {
        for language in Language::ALL {
            let svg = super::family(&family_of(lots), &speech(language));
            if let Some(folder) = &folder {
                let name = format!("family-{lots}-{}.svg", language.tag());
                std::fs::write(std::path::Path::new(folder).join(name), &svg).unwrap();
            }
        }
    }
    assert!(svg.len() < 100_000, "{} bytes", svg.len());
}
