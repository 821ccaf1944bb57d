//! What a boiling pot shows of a whole piece, and what a product's class is worth where the meat was ground
//! or pumped before.

use serde_json::{Value, json};
use stories::call::moment;
use stories::day::{StepOfDay, Told, bought, farm};
use stories::{Answer, Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_pot_says_nothing_of_the_middle_of_a_whole_piece
    a_pot_that_boiled_in_the_log_is_one_that_boiled
    ground_or_pumped_meat_is_not_intact_whatever_its_product_says
    stuffed_meat_needs_what_stuffed_meat_needs
    what_goes_into_the_cook_with_the_meat_fills_it_unless_the_cook_says_no
}

fn product(caller: &Caller, code: &str, more: Value) {
    let mut body = json!({ "code": code, "names": { "en": code }, "kind": "cooked", "species": "pig", "raw": false, "storage": "chilled",
        "for_sale": true, "price_minor_per_kg": 100, "keep": { "days": 5, "from": "made", "day_one_counts": true } });
    for (key, value) in more.as_object().expect("fields") {
        body[key] = value.clone();
    }
    caller.post("/api/products", &body).expect(201);
}

fn kitchen(engine: Engine) -> (House, Caller, String) {
    let house = House::furnished(engine);
    let caller = house.caller();
    product(&caller, "hash", json!({}));
    product(&caller, "stock", json!({ "kind": "stock" }));
    product(&caller, "fillet", json!({ "cooked_as": "intact" }));
    product(&caller, "joint", json!({ "cooked_as": "roast" }));
    product(&caller, "mince", json!({ "kind": "mixed", "raw": true }));
    let pig = caller.half_pig("0608-17", 20_000);
    (house, caller, pig)
}

/// A part of a carcass in a pot of water, for stock.
fn in_water(caller: &Caller, pig: &str) -> StepOfDay {
    let step = caller.step("cook").of_grams(pig, 500).into("stock", 1_500);
    step.with("added", json!([{ "what": "water", "grams": 1_000 }]))
}

fn is(caller: &Caller, answer: &Answer) -> Value {
    caller.lot(&answer.code(0))["condition"]["is"].clone()
}

fn heard(answer: &Answer, key: &str) -> bool {
    let keys = answer.body["warning_keys"].as_array().unwrap();
    keys.iter().any(|of| of == key)
}

fn a_pot_says_nothing_of_the_middle_of_a_whole_piece(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let cut = |product: &str| {
        let step = caller.step("cut").of_grams(&pig, 2_000);
        step.into(product, 2_000).made()
    };
    let (chop, trim) = (cut("pork-chop"), cut("pork-trim"));
    let boiled = |lot: &str, water: bool| {
        let readings = json!({ "boiled_minutes": 20 });
        let step = caller.step("cook").of_grams(lot, 500).into("hash", 500);
        let added = json!([{ "what": "water", "grams": 500 }]);
        let added = if water { added } else { json!([]) };
        step.with("readings", readings).with("added", added).done()
    };
    // A whole cut without liquid, and a carcass with or without, need the probe.
    for (lot, water) in [(&chop, false), (&pig, false), (&pig, true)] {
        let answer = boiled(lot, water);
        assert!(heard(&answer, "cook-boiled-whole"), "{}", answer.body);
        assert_eq!(is(&caller, &answer), "treated");
        caller.sell(&answer.code(0)).refused(409, "lot");
    }
    // Small pieces, and cuts in a pot with water, are what the rule is for.
    for (lot, water) in [(&trim, false), (&trim, true), (&chop, true)] {
        assert_eq!(is(&caller, &boiled(lot, water)), "ready");
    }
    // What runs out of a carcass into water is stock; a carcass that is only called so is none.
    let called = caller.step("cook").of_grams(&pig, 500).into("stock", 500);
    let boiled = json!({ "boiled_minutes": 20 });
    let called = called.with("readings", boiled.clone()).done();
    assert_eq!(is(&caller, &called), "treated");
    let stock = in_water(&caller, &pig).with("readings", boiled);
    assert_eq!(is(&caller, &stock.done()), "ready");
}

fn a_pot_that_boiled_in_the_log_is_one_that_boiled(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let log = |minutes: u32| {
        let log = json!([{ "at": moment(-60), "celsius": 20 }, { "at": moment(-5), "boiled_minutes": minutes }]);
        in_water(&caller, &pig).with("log", log)
    };
    assert_eq!(is(&caller, &log(10).done()), "ready");
    log(9).refused(422, "log");
    // One temperature beside it is not argued away.
    let both = json!({ "celsius": 52, "boiled_minutes": 10 });
    let step = in_water(&caller, &pig);
    step.with("readings", both).refused(422, "readings.celsius");
}

fn ground_or_pumped_meat_is_not_intact_whatever_its_product_says(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    // us-1.8: intact 145 °F for 15 s; ground or injected 145 °F for 3 min.
    let cook = |lot: &str, product: &str, minutes: f64| {
        let readings = json!({ "fahrenheit": 145, "hold_minutes": minutes });
        let step = caller.step("cook").of_grams(lot, 200).into(product, 200);
        step.with("readings", readings)
    };
    let piece = caller.step("cut").of_grams(&pig, 2_000);
    let piece = piece.into("pork-chop", 2_000).made();
    cook(&piece, "fillet", 0.3).done();
    let ground = caller.step("grind").of_grams(&piece, 600);
    let ground = ground.into("mince", 600).made();
    let came = caller.receive("mince").grams(1_000);
    let came = came.from(farm("BRC").carcass("0608-18")).made();
    for (lot, product) in [(&ground, "fillet"), (&ground, "joint"), (&came, "fillet")] {
        let refused = cook(lot, product, 0.3).ask();
        let refused = refused.refused(422, "readings.fahrenheit");
        assert_eq!(refused.body["type"], "/problems/limit");
        assert!(
            refused.body["rows"].to_string().contains("us-1.8-ground"),
            "{}",
            refused.body
        );
        let told = refused.body["detail"].as_str().unwrap();
        assert!(told.contains("ground"), "{told}");
        cook(lot, product, 3.1).done();
    }
    // Shaped into something else before, it stays ground.
    let shaped = caller.step("portion").of_grams(&ground, 200);
    let shaped = shaped.into("pork-chop", 200).made();
    cook(&shaped, "fillet", 0.3).refused(422, "readings.fahrenheit");
    // Pumped: by its product, or by the step alone. A cured ham that was pumped is a roast all the same.
    let salt = json!({ "code": "no-1", "names": { "en": "Curing salt" }, "kind": "ingredient", "raw": false, "storage": "ambient",
        "curing_salt": { "nitrite_percent": 6.25 } });
    caller.post("/api/products", &salt).expect(201);
    let salt = caller.receive("no-1").grams(1_000);
    let salt = salt.bought(bought("PTS", "n")).made();
    let as_cured = |method: &str| json!({ "kind": "cured", "raw": true, "cure": { "class": "whole-muscle", "method": method, "heated": true } });
    product(&caller, "pumped", as_cured("pumped"));
    product(&caller, "rubbed", as_cured("dry"));
    let cured = |product: &str, asked: Value| {
        let step = caller
            .step("cure")
            .of_grams(&piece, 400)
            .of_grams(&salt, 0.5);
        let step = step.into(product, 400);
        step.with("cure", asked).made()
    };
    let pickle = json!({ "method": "pumped", "pump_percent": 10, "pickle_grams": 40 });
    let pumped = [cured("pumped", pickle.clone()), cured("rubbed", pickle)];
    for lot in &pumped {
        cook(lot, "fillet", 0.3).refused(422, "readings.fahrenheit");
        cook(lot, "joint", 4.1).done();
    }
    let rubbed = cured("rubbed", json!({}));
    cook(&rubbed, "fillet", 0.3).done();
}

fn ingredient(caller: &Caller, code: &str, stable: &str) -> String {
    let body = json!({ "code": code, "names": { "en": code }, "kind": "ingredient", "raw": false, "storage": "ambient",
        "stable_as": stable });
    caller.post("/api/products", &body).expect(201);
    let came = caller.receive(code).grams(1_000);
    came.bought(bought("PTS", code)).made()
}

fn stuffed_meat_needs_what_stuffed_meat_needs(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let (bread, herbs) = (
        ingredient(&caller, "bread", "bread"),
        ingredient(&caller, "pepper", "spice"),
    );
    let piece = caller.step("cut").of_grams(&pig, 3_000);
    let piece = piece.into("pork-chop", 3_000).made();
    let with = |other: &str, grams: u32| {
        let step = caller.step("mix").of_grams(&piece, 900);
        let step = step.of_grams(other, grams);
        step.into("pork-chop", 900 + grams).made()
    };
    // us-1.8: intact 145 °F for 15 s; stuffed meat and stuffing with meat 165 °F.
    let cook = |lot: &str, product: &str, fahrenheit: u32, minutes: f64| {
        let readings = json!({ "fahrenheit": fahrenheit, "hold_minutes": minutes });
        let step = caller.step("cook").of_grams(lot, 200).into(product, 200);
        step.with("readings", readings)
    };
    let stuffed = with(&bread, 100);
    for (product, minutes) in [("fillet", 0.3), ("joint", 4.1), ("fillet", 3.1)] {
        let refused = cook(&stuffed, product, 145, minutes).ask();
        let refused = refused.refused(422, "readings.fahrenheit").body;
        assert!(
            refused["rows"].to_string().contains("us-1.8-poultry"),
            "{refused}"
        );
        let told = refused["detail"].as_str().unwrap();
        assert!(told.contains("stuffed"), "{told}");
    }
    assert_eq!(
        is(&caller, &cook(&stuffed, "fillet", 165, 0.0).done()),
        "ready"
    );
    // Cut in slices before, it stays stuffed; a little of something seasons, and so does any spice.
    let sliced = caller.step("portion").of_grams(&stuffed, 200);
    let sliced = sliced.into("pork-chop", 200).made();
    cook(&sliced, "fillet", 145, 0.3).refused(422, "readings.fahrenheit");
    for (other, grams) in [(&bread, 10), (&herbs, 50)] {
        cook(&with(other, grams), "fillet", 145, 0.3).done();
    }
}

fn what_goes_into_the_cook_with_the_meat_fills_it_unless_the_cook_says_no(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let (bread, pepper) = (
        ingredient(&caller, "bread", "bread"),
        ingredient(&caller, "pepper", "spice"),
    );
    let piece = caller.step("cut").of_grams(&pig, 6_000);
    let piece = piece.into("pork-chop", 6_000).made();
    // us-1.8: intact 145 °F for 15 s; stuffed meat and stuffing with meat 165 °F.
    let cook = |product: &str, with: &str, grams: u32, fahrenheit: u32, says: Option<bool>| {
        let readings = json!({ "fahrenheit": fahrenheit, "hold_minutes": 0.3 });
        let step = caller.step("cook").of_grams(&piece, 400);
        let step = step.of_grams(with, grams).into(product, 400 + grams);
        step.with("stuffed", json!(says)).with("readings", readings)
    };
    let told = cook("fillet", &bread, 60, 145, None)
        .ask()
        .refused(422, "readings.fahrenheit");
    let rows = told.body["rows"].to_string();
    assert!(rows.contains("us-1.8-poultry"), "{}", told.body);
    let detail = told.body["detail"].as_str().unwrap();
    for part in ["bread", "may fill it", "say that it is not stuffed"] {
        assert!(detail.contains(part), "{detail}");
    }
    // Enough for a filling, a coating by the cook's word, a seasoning.
    for (with, grams, fahrenheit, says) in [
        (&bread, 60, 165, None),
        (&bread, 60, 145, Some(false)),
        (&bread, 8, 145, None),
        (&pepper, 30, 145, None),
    ] {
        let done = cook("fillet", with, grams, fahrenheit, says).done();
        assert_eq!(is(&caller, &done), "ready", "{grams} {fahrenheit} {says:?}");
        let why = caller.get(&format!("/api/lots/{}/why", done.code(0)));
        let why = why.expect(200).body.to_string();
        assert_eq!(why.contains("does not fill"), says == Some(false), "{why}");
    }
    // Said to be stuffed it needs as much whatever went in, and whatever its product claims.
    for product in ["fillet", "joint", "hash"] {
        cook(product, &pepper, 30, 145, Some(true)).refused(422, "readings.fahrenheit");
        let done = cook(product, &pepper, 30, 165, Some(true)).done();
        assert_eq!(is(&caller, &done), "ready", "{product}");
    }
    let boiled = caller.step("cook").of_grams(&piece, 400);
    let boiled = boiled.of_grams(&bread, 60).into("hash", 960);
    let boiled = boiled.with("added", json!([{ "what": "water", "grams": 500 }]));
    let boiled = boiled.with("readings", json!({ "boiled_minutes": 20 }));
    let boiled = boiled.with("stuffed", true).done();
    assert!(heard(&boiled, "cook-boiled-whole"), "{}", boiled.body);
    assert_eq!(is(&caller, &boiled), "treated");
    // Said wrong and corrected: of the cook itself, and of the mix that it was made of.
    let correct = |step: &Answer, stuffed: bool| {
        let body = json!({ "step": step.body["id"], "stuffed": stuffed, "why": "asked the cook" });
        caller.deed("/api/corrections", body).expect(201);
    };
    let done = cook("fillet", &bread, 60, 145, Some(false)).done();
    correct(&done, true);
    assert_eq!(is(&caller, &done), "treated");
    caller.sell(&done.code(0)).refused(409, "lot");
    correct(&done, false);
    assert_eq!(is(&caller, &done), "ready");
    let mixed = caller.step("mix").of_grams(&piece, 400);
    let mixed = mixed.of_grams(&bread, 60).into("pork-chop", 460);
    let mixed = mixed.with("stuffed", false).done();
    let readings = json!({ "fahrenheit": 145, "hold_minutes": 0.3 });
    let crumbed = caller.step("cook").of_grams(&mixed.code(0), 460);
    let crumbed = crumbed.into("fillet", 460).with("readings", readings);
    let crumbed = crumbed.done();
    assert_eq!(is(&caller, &crumbed), "ready");
    correct(&mixed, true);
    assert_eq!(is(&caller, &crumbed), "treated");
}
