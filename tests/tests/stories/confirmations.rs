//! A nitrite limit that a place has only by hearsay keeps what was cured under it from sale, until a named
//! person has read it and says so.

use serde_json::{Value, json};
use stories::day::Told;
use stories::labels::set;
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_cure_waits_for_its_limit_to_be_confirmed
    where_the_limit_was_read_nothing_waits
    what_may_no_longer_be_in_force_waits_too
}

/// A kitchen of a place with a bag of curing salt and a pig.
fn kitchen(engine: Engine, place: &str) -> (House, Caller, String, String) {
    let house = House::furnished(engine);
    let caller = house.caller();
    set(&caller, &[("profile", json!(place))]);
    let salt = json!({ "code": "no-1", "names": { "en": "Curing salt" }, "kind": "ingredient", "storage": "ambient",
        "curing_salt": { "nitrite_percent": 6.25 } });
    caller.post("/api/products", &salt).expect(201);
    for (code, more) in [
        (
            "cured-loin",
            json!({ "class": "whole-muscle", "method": "dry" }),
        ),
        ("sliced-loin", Value::Null),
    ] {
        let product = json!({ "code": code, "names": { "en": code }, "kind": "cured", "species": "pig", "raw": true,
            "storage": "chilled", "for_sale": true, "price_minor_per_kg": 100, "cure": more,
            "keep": { "days": 9, "from": "made", "day_one_counts": true } });
        caller.post("/api/products", &product).expect(201);
    }
    let bag = caller.receive("no-1").to("cooler").grams(1_000);
    let bag = bag.bought(json!({ "supplier": "PTS", "curing_salt": { "nitrite_percent": 6.25 } }));
    let bag = bag.made();
    let pig = caller.half_pig("0608-17", 10_000);
    (house, caller, bag, pig)
}

fn cured(caller: &Caller, bag: &str, pig: &str, grams: f64) -> stories::day::StepOfDay {
    let cure = caller.step("cure").of_grams(pig, 1_000);
    cure.of_grams(bag, grams).into("cured-loin", 1_000)
}

fn waits(caller: &Caller, lot: &str) -> bool {
    let stops = caller.lot(lot)["stops"].clone();
    let mut stops = stops.as_array().unwrap().iter();
    stops.any(|stop| stop["stop"] == "not-confirmed")
}

/// The rows that wait for somebody to read them.
fn worklist(caller: &Caller) -> Vec<String> {
    let rows = caller.read("/api/rows?unconfirmed")["rows"].clone();
    let of = |row: &Value| row["id"].as_str().unwrap().to_owned();
    rows.as_array().unwrap().iter().map(of).collect()
}

const ROW: &str = "canada-eu-uk-4.2";

fn a_cure_waits_for_its_limit_to_be_confirmed(engine: Engine) {
    let (_house, caller, bag, pig) = kitchen(engine, "ca");
    let done = cured(&caller, &bag, &pig, 2.5).done();
    let keys = done.body["warning_keys"].to_string();
    assert!(keys.contains("stop-not-confirmed"), "{keys}");
    let loin = done.code(0);
    assert!(waits(&caller, &loin));
    assert_eq!(caller.verdict(&loin), "hold");
    caller.sell(&loin).refused(409, "lot");
    // It goes on, and what is made of it waits as well. No lot is let go alone.
    let sliced = caller.step("portion").of_grams(&loin, 500);
    let sliced = sliced.into("sliced-loin", 500).made();
    assert!(waits(&caller, &sliced));
    let let_go = json!({ "lot": loin, "what": "released", "why": "it is surely right" });
    caller.deed("/api/dispositions", let_go).refused(409, "lot");
    assert!(worklist(&caller).contains(&ROW.to_owned()));
    let confirm = |row: &str| json!({ "row": row, "text": "200 ppm, side bacon apart", "read_in": "the list, today" });
    caller
        .deed("/api/row-confirmations", confirm("us-N14"))
        .refused(422, "row");
    caller
        .deed("/api/row-confirmations", confirm("canada-eu-uk-4.1"))
        .refused(422, "row");
    let nothing = json!({ "row": ROW, "text": "", "read_in": "the list" });
    caller
        .deed("/api/row-confirmations", nothing)
        .refused(422, "text");
    // What the row has unconfirmed only warns.
    let strong = cured(&caller, &bag, &pig, 3.6).done();
    assert!(strong.body["warnings"].to_string().contains("200"));
    let over = strong.code(0);
    let slice = caller.step("portion").of_grams(&over, 500);
    let slice = slice.into("sliced-loin", 500).made();
    let confirmed = caller
        .deed("/api/row-confirmations", confirm(ROW))
        .expect(201)
        .body;
    assert!(!worklist(&caller).contains(&ROW.to_owned()));
    for lot in [&loin, &sliced] {
        assert!(!waits(&caller, lot));
        assert_eq!(caller.verdict(lot), "sell");
    }
    // What is over it has broken it, and so has what is made of that.
    let failed = |lot: &str| {
        let stops = caller.lot(lot)["stops"].clone();
        stops
            .as_array()
            .unwrap()
            .iter()
            .any(|stop| stop["stop"] == "failed")
    };
    for lot in [&over, &slice] {
        assert!(failed(lot) && !waits(&caller, lot), "{lot}");
        caller.sell(lot).refused(409, "lot");
    }
    assert_eq!(
        confirmed["changes"].as_array().unwrap().len(),
        2,
        "{confirmed}"
    );
    // From now on the limit binds, and nothing new waits.
    let says = cured(&caller, &bag, &pig, 3.6).refused(422, "inputs");
    assert!(says.contains(ROW), "{says}");
    assert!(!waits(&caller, &cured(&caller, &bag, &pig, 2.5).made()));
    // It was read wrongly: it waits again.
    caller.void(confirmed["id"].as_str().unwrap()).done();
    assert!(worklist(&caller).contains(&ROW.to_owned()));
    assert!(waits(&caller, &loin) && waits(&caller, &sliced));
    assert!(waits(&caller, &over) && waits(&caller, &slice) && !failed(&over));
    cured(&caller, &bag, &pig, 3.6).done();
    caller
        .deed("/api/row-confirmations", confirm(ROW))
        .expect(201);
    assert_eq!(caller.verdict(&sliced), "sell");
}

fn where_the_limit_was_read_nothing_waits(engine: Engine) {
    let (_house, caller, bag, pig) = kitchen(engine, "us");
    let loin = cured(&caller, &bag, &pig, 1.0).made();
    assert!(!waits(&caller, &loin));
    assert_eq!(caller.verdict(&loin), "sell");
}

fn what_may_no_longer_be_in_force_waits_too(engine: Engine) {
    let (_house, caller, bag, pig) = kitchen(engine, "uk");
    let loin = cured(&caller, &bag, &pig, 1.6).made();
    assert!(waits(&caller, &loin));
    caller.sell(&loin).refused(409, "lot");
    // The limit itself was read; that it still holds was not.
    let force = json!({ "row": "canada-eu-uk-12.16", "text": "as before 2025", "read_in": "the law, today" });
    caller.deed("/api/row-confirmations", force).expect(201);
    assert!(!waits(&caller, &loin));
    assert_eq!(caller.verdict(&loin), "sell");
}
