//! What a laboratory finds of nitrite in the finished food, where the law limits what is left.

use serde_json::{Value, json};
use stories::day::Told;
use stories::labels::set;
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    too_much_nitrite_left_is_a_stop
    more_nitrate_left_asks_for_the_reason
    what_is_called_cured_has_so_much_in_it
}

/// A cured loin in a kitchen of a place, with so much curing salt on a kilogram.
fn loin(engine: Engine, place: &str) -> (House, Caller, String) {
    loin_with(engine, place, 1.2)
}

fn loin_with(engine: Engine, place: &str, grams: f64) -> (House, Caller, String) {
    let house = House::furnished(engine);
    let caller = house.caller();
    set(&caller, &[("profile", json!(place))]);
    let salt = json!({ "code": "no-1", "names": { "en": "Curing salt" }, "kind": "ingredient", "storage": "ambient",
        "curing_salt": { "nitrite_percent": 6.25 } });
    caller.post("/api/products", &salt).expect(201);
    let product = json!({ "code": "cured-loin", "names": { "en": "Cured loin" }, "kind": "cured", "species": "pig",
        "raw": true, "storage": "chilled", "for_sale": true, "price_minor_per_kg": 100,
        "cure": { "class": "whole-muscle", "method": "dry" },
        "keep": { "days": 9, "from": "made", "day_one_counts": true } });
    caller.post("/api/products", &product).expect(201);
    let bag = caller.receive("no-1").to("cooler").grams(1_000);
    let bag = bag.bought(json!({ "supplier": "PTS", "curing_salt": { "nitrite_percent": 6.25 } }));
    let bag = bag.made();
    let pig = caller.half_pig("0608-17", 10_000);
    let cure = caller.step("cure").of_grams(&pig, 1_000);
    let lot = cure.of_grams(&bag, grams).into("cured-loin", 1_000).made();
    (house, caller, lot)
}

fn stops(caller: &Caller, lot: &str) -> Vec<Value> {
    caller.lot(lot)["stops"].as_array().unwrap().clone()
}

/// `confirmed-C5`: in whole muscle 45 mg/kg may be left, as the ion.
fn too_much_nitrite_left_is_a_stop(engine: Engine) {
    let (house, caller, lot) = loin(engine, "eu");
    let found = |lot: &str, ppm: Value| {
        let reading = json!({ "lot": lot, "residual_nitrite_ppm": ppm });
        caller.deed("/api/readings", reading)
    };
    found(&lot, json!(45)).expect(201);
    assert!(
        !stops(&caller, &lot)
            .iter()
            .any(|stop| stop["stop"] == "failed")
    );
    let told = found(&lot, json!(45.1)).expect(201).body;
    assert!(
        told["warnings"].to_string().contains("additions-D7"),
        "{told}"
    );
    let failed = stops(&caller, &lot);
    assert!(
        failed.iter().any(|stop| stop["stop"] == "failed"),
        "{failed:?}"
    );
    // It was another lot's finding: a void takes the stop away.
    let id = told["id"].as_str().unwrap();
    let void = json!({ "why": "another lot's finding" });
    caller
        .deed(&format!("/api/steps/{id}/void"), void)
        .expect(201);
    assert!(
        !stops(&caller, &lot)
            .iter()
            .any(|stop| stop["stop"] == "failed")
    );
    found(&lot, json!(-1)).refused(422, "residual_nitrite_ppm");
    drop(house);
    // us-N7: 200 ppm as sodium nitrite, which is 133.3 as the ion.
    let (_house, caller, lot) = loin(engine, "us");
    let found = |ppm: f64| {
        let reading = json!({ "lot": lot, "residual_nitrite_ppm": ppm });
        caller.deed("/api/readings", reading).expect(201).body
    };
    assert!(!found(133.3)["warnings"].to_string().contains("us-N7"));
    assert!(found(133.5)["warnings"].to_string().contains("us-N7"));
    let failed = stops(&caller, &lot);
    assert!(
        failed.iter().any(|stop| stop["stop"] == "failed"),
        "{failed:?}"
    );
}

/// `additions-D8`, `confirmed-C8`: 90 of nitrate as the ion is no limit.
fn more_nitrate_left_asks_for_the_reason(engine: Engine) {
    let (_house, caller, lot) = loin(engine, "eu");
    let found = |ppm: Value| {
        let reading = json!({ "lot": lot, "residual_nitrate_ppm": ppm });
        caller.deed("/api/readings", reading).expect(201).body["warnings"].to_string()
    };
    let before = stops(&caller, &lot);
    assert!(!found(json!(90)).contains("additions-D8"));
    assert!(found(json!(95)).contains("additions-D8"));
    assert_eq!(stops(&caller, &lot), before, "it may be sold");
}

/// `canada-eu-uk-4.7`: the word stands for 100 ppm and more.
fn what_is_called_cured_has_so_much_in_it(engine: Engine) {
    for (place, grams, told) in [
        ("ca", 1.2, true),
        ("ca", 1.599, true),
        ("ca", 1.6, false),
        ("us", 1.2, false),
    ] {
        let (_house, caller, lot) = loin_with(engine, place, grams);
        let findings = caller.lot(&lot)["label_findings"].to_string();
        assert_eq!(
            findings.contains("naming-called-cured") && findings.contains("canada-eu-uk-4.7"),
            told,
            "{place} {grams}: {findings}"
        );
    }
}
