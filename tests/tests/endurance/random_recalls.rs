//! Random kitchens with a drill in the middle: what its count says of every lot, against the brute-force book.

use crate::kitchen::Kitchen;
use crate::seeds::each;
use gambrel::body::parse;
use gambrel::caller::Caller;
use gambrel::deeds::incident;
use gambrel::recall;
use gambrel::wire::asked::Id;
use rand::RngExt;
use serde_json::json;
use std::collections::BTreeSet;
use stories::Engine;

/// Deeds before the drill, and while it goes on.
const DEEDS: usize = 150;
const ID: &str = "00000000-0000-4000-8000-ffffffffffff";

/// By the book, missing, surplus, back, destroyed, returned, gone, left: milligrams.
type Sums = [i64; 8];

fn live(engine: Engine, seed: u64) {
    let mut kitchen = Kitchen::open(engine, seed);
    for _ in 0..DEEDS {
        kitchen.live();
    }
    let book = &kitchen.book;
    let standing: Vec<String> = book
        .lots
        .keys()
        .filter(|code| !book.is_void(code))
        .cloned()
        .collect();
    if standing.is_empty() {
        return;
    }
    let start = standing[kitchen.random.random_range(0..standing.len())].clone();
    let begun = kitchen.book.deeds.len();
    let drill = json!({ "id": ID, "by": "Cook", "told_by": "Cook", "hazard": "other", "drill": true, "why": "Drill",
        "scope": { "start": [{ "lot": start }], "spreads": "lineage" } });
    let drill = parse(drill.to_string().as_bytes()).expect("a drill");
    incident::begin(&Caller::new(&kitchen.app), &drill).expect("it begins");
    for _ in 0..DEEDS {
        kitchen.live();
    }
    compare(&kitchen, &start, begun);
}

fn compare(kitchen: &Kitchen, start: &str, begun: usize) {
    let id: Id = parse(format!("\"{ID}\"").as_bytes()).expect("an id");
    let read = kitchen
        .app
        .store
        .read(|conn| recall::of(&kitchen.app, conn, id, None));
    let facts = read.expect("the facts");
    let mut expected = kitchen.book.descendants(start);
    if kitchen.book.is_void(start) {
        expected.clear();
    } else {
        expected.insert(start.to_owned());
    }
    let told: BTreeSet<String> = facts.lots.iter().map(|lot| lot.code.clone()).collect();
    assert_eq!(told, expected, "the lots of {start}");
    for lot in &facts.lots {
        let sums = &lot.sums;
        let told = [
            sums.book_grams,
            sums.missing_grams,
            sums.surplus_grams,
            sums.back_grams,
            sums.destroyed_grams,
            sums.returned_grams,
            sums.gone_grams,
            sums.left_grams,
        ];
        let told: Sums = told.map(|grams| grams.0.milligrams());
        assert_eq!(told, by_hand(kitchen, &lot.code, begun), "{}", lot.code);
        let [
            book,
            missing,
            surplus,
            back,
            destroyed,
            returned,
            gone,
            left,
        ] = told;
        assert_eq!(
            book + surplus + back,
            missing + destroyed + returned + gone + left,
            "{}",
            lot.code
        );
    }
}

/// The same, pack by pack from what was entered.
fn by_hand(kitchen: &Kitchen, lot: &str, begun: usize) -> Sums {
    let book = &kitchen.book;
    let mut sums: Sums = [0; 8];
    for (nth, made) in book.lots[lot].packs.iter().enumerate() {
        sums[0] += made;
        sums[7] += book.left(lot, nth + 1);
        let live = book
            .of_lot(lot)
            .filter(|entry| !book.deeds[entry.deed].voided);
        for entry in live.filter(|entry| entry.pack == nth + 1) {
            match entry.account {
                "noted" | "moved" => {}
                "taken-back" if entry.deed < begun => sums[0] += entry.mg,
                _ if entry.deed < begun => sums[0] -= entry.mg,
                "unexplained" if entry.mg > 0 => sums[1] += entry.mg,
                "unexplained" => sums[2] -= entry.mg,
                "taken-back" => sums[3] += entry.mg,
                "discarded" => sums[4] += entry.mg,
                "returned" => sums[5] += entry.mg,
                _ => sums[6] += entry.mg,
            }
        }
    }
    sums
}

#[test]
fn random_recalls_on_sqlite() {
    each(Engine::Sqlite, 100, live);
}

#[test]
fn random_recalls_on_postgres() {
    each(Engine::Postgres, 20, live);
}
