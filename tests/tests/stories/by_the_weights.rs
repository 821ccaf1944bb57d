//! What is said of a pickle, against what was weighed: the weights count.

use serde_json::{Value, json};
use stories::day::Told;
use stories::{Answer, Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_pickle_is_reckoned_by_the_weights_where_they_say_more
}

fn list(caller: &Caller, body: Value) {
    caller.post("/api/products", &body).expect(201);
}

fn from_the_pantry(caller: &Caller, code: &str, grams: u32) -> String {
    let came = caller.receive(code).grams(grams);
    came.bought(json!({ "supplier": "PTS", "supplier_lot": code }))
        .made()
}

/// `us-H4`, `us-H5`: what went in is on record by weight.
fn a_pickle_is_reckoned_by_the_weights_where_they_say_more(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pantry = json!({ "kind": "ingredient", "raw": false, "storage": "ambient" });
    let ingredient = |code: &str, more: Value| {
        let mut body = pantry.clone();
        body["code"] = json!(code);
        body["names"] = json!({ "en": code });
        for (field, value) in more.as_object().unwrap() {
            body[field] = value.clone();
        }
        list(&caller, body);
    };
    ingredient(
        "no-1",
        json!({ "curing_salt": { "nitrite_percent": 6.25 } }),
    );
    ingredient("brine", json!({ "curing_salt": {}, "storage": "chilled" }));
    list(
        &caller,
        json!({ "code": "pumped-leg", "names": { "en": "Cured leg" }, "kind": "cured", "species": "pig", "raw": true,
            "storage": "chilled", "cure": { "class": "whole-muscle", "method": "pumped", "heated": true } }),
    );
    let salt = from_the_pantry(&caller, "no-1", 5_000);
    let step = |body: Value| caller.deed("/api/steps", body);
    let brine = json!({ "kind": "mix", "place": "bench", "inputs": [{ "lot": salt, "grams": 1_000 }],
        "added": [{ "what": "water", "grams": 4_500 }], "outputs": [{ "product": "brine", "grams": 5_500 }] });
    let brine = step(brine).expect(201).code(0);
    let pumped = |pickle: u32, into: u32, more: Value| -> Answer {
        let pig = caller.half_pig(&stories::call::fresh_id()[..8], 5_000);
        let mut body = json!({ "kind": "cure", "place": "bench",
            "inputs": [{ "lot": pig, "grams": 5_000 }, { "lot": brine, "grams": 500 }],
            "outputs": [{ "product": "pumped-leg", "grams": into }],
            "cure": { "pump_percent": 10, "pickle_grams": pickle } });
        for (field, value) in more.as_object().unwrap() {
            body[field] = value.clone();
        }
        step(body)
    };
    // 500 g of 1.136 % in 5 kg of meat are 1136 ppm, whatever larger pickle is spoken of.
    let honest = pumped(500, 5_500, json!({})).refused(422, "inputs");
    let larger = pumped(5_500, 5_500, json!({})).refused(422, "inputs");
    for refused in [honest, larger] {
        let detail = refused.body["detail"].as_str().unwrap().to_owned();
        assert!(detail.contains("1136"), "{detail}");
    }
    let told = json!({ "as_it_happened": true, "note": "as it was" });
    let told = pumped(5_500, 5_500, told).expect(201);
    let keys = told.body["warning_keys"].to_string();
    assert!(keys.contains("cure-pickle-drawn"), "{keys}");
    let lot = caller.lot(&told.code(0));
    assert_eq!(lot["stops"][0]["stop"], "failed", "{}", lot["stops"]);
}
