//! The kitchen moves to another time zone: a date is a day of its calendar, and none grows.

use chrono::{NaiveDate, TimeDelta, Utc};
use serde_json::{Value, json};
use stories::call::{chrono_day, fresh_id, moment};
use stories::day::{Told, farm};
use stories::{Answer, Caller, Engine, House, on_both_engines};

on_both_engines! {
    no_time_zone_turns_the_day_back
    what_is_entered_late_has_the_day_that_it_was_then
}

/// A zone by its hours east of Greenwich.
fn zone(hours: i64) -> String {
    match hours {
        0 => "Etc/UTC".to_owned(),
        east if east > 0 => format!("Etc/GMT-{east}"),
        west => format!("Etc/GMT+{}", -west),
    }
}

fn day(hours: i64) -> NaiveDate {
    (Utc::now() + TimeDelta::hours(hours)).date_naive()
}

fn moves(caller: &Caller, hours: i64) -> Answer {
    let kitchen = json!({ "code": "CHK", "name": "Test Kitchen", "time_zone": zone(hours), "profile": "us",
        "languages": ["en"], "currency": "USD" });
    caller.put("/api/kitchen", &kitchen)
}

/// A furnished kitchen that was never anywhere else.
fn kitchen(engine: Engine, hours: i64) -> (House, Caller) {
    let house = House::empty(engine);
    let caller = house.caller();
    moves(&caller, hours).expect(200);
    for (path, body) in stories::furniture::furniture() {
        caller.post(path, &body).expect(201);
    }
    let chops = json!({ "code": "chops", "names": { "en": "Chops" }, "kind": "cut", "species": "pig", "raw": true,
        "storage": "chilled", "for_sale": true, "price_minor_per_kg": 900,
        "keep": { "days": 1, "from": "received", "day_one_counts": true } });
    caller.post("/api/products", &chops).expect(201);
    (house, caller)
}

fn chops(caller: &Caller, minutes: i64) -> String {
    let animal = farm("BRC")
        .killed(chrono_day(-4))
        .carcass(&fresh_id())
        .side("left");
    let chops = caller.receive("chops").grams(1_000).from(animal);
    chops.to("cooler").at(moment(-minutes)).made()
}

fn says(caller: &Caller, lot: &str) -> (Value, Value) {
    let use_by = caller.lot(lot)["packs"][0]["use_by"].clone();
    (use_by, caller.verdict(lot))
}

fn no_time_zone_turns_the_day_back(engine: Engine) {
    let (house, caller) = kitchen(engine, 14);
    let lots = [chops(&caller, 2 * 24 * 60), chops(&caller, 0)];
    let before = lots.each_ref().map(|lot| says(&caller, lot));
    assert_ne!(before[0].1, "sell", "{before:?}");
    assert_eq!(before[1].1, "sell-today", "{before:?}");
    let (mut here, mut refused) = (14, 0);
    for hours in (-12..=13).rev() {
        match day(hours) < day(here) {
            true => {
                let answer = moves(&caller, hours);
                answer.refused(422, "time_zone");
                refused += 1;
            }
            false => {
                moves(&caller, hours).expect(200);
                here = hours;
            }
        }
        let now = lots.each_ref().map(|lot| says(&caller, lot));
        assert_eq!(now, before, "{hours}");
    }
    assert!(refused > 2, "{refused}");
    house.check();
}

fn what_is_entered_late_has_the_day_that_it_was_then(engine: Engine) {
    let (house, caller) = kitchen(engine, -12);
    let before = chops(&caller, 30);
    moves(&caller, 14).expect(200);
    let late = chops(&caller, 30);
    let of = |lot: &str| says(&caller, lot).0;
    assert_eq!(of(&late), of(&before));
    let now = chops(&caller, 0);
    assert!(of(&now).as_str() > of(&late).as_str());
    house.check();
}
