//! Mince in Europe and the United Kingdom: how old its meat may be, that it is not frozen again, and how cold
//! it comes in. And what a reading says of food that is not held as it must be.

use serde_json::{Value, json};
use stories::call::chrono_day;
use stories::day::{Told, bought, farm};
use stories::labels::set;
use stories::{Answer, Caller, Engine, House, on_both_engines};

on_both_engines! {
    meat_is_minced_within_its_days
    thawed_mince_is_not_frozen_again
    mince_comes_in_colder_than_a_preparation
    a_reading_says_what_is_not_held_as_it_must_be
}

fn product(caller: &Caller, code: &str, more: Value) {
    let mut body = json!({ "code": code, "names": { "en": code }, "kind": "mixed", "species": "pig", "raw": true, "storage": "chilled",
        "for_sale": true, "price_minor_per_kg": 100, "keep": { "days": 2, "from": "made", "day_one_counts": true } });
    for (key, value) in more.as_object().expect("fields") {
        body[key] = value.clone();
    }
    caller.post("/api/products", &body).expect(201);
}

fn kitchen(engine: Engine, place: &str) -> (House, Caller) {
    let house = House::furnished(engine);
    let caller = house.caller();
    set(&caller, &[("profile", json!(place))]);
    product(&caller, "mince", json!({}));
    product(&caller, "burger", json!({}));
    product(&caller, "stew", json!({ "kind": "cooked", "raw": false }));
    (house, caller)
}

fn limit(answer: Answer, field: &'static str, row: &str) {
    let answer = answer.refused(422, field);
    assert_eq!(answer.body["type"], "/problems/limit", "{}", answer.body);
    assert_eq!(answer.body["may_be_told"], true);
    assert!(
        answer.body["rows"].to_string().contains(row),
        "{}",
        answer.body
    );
}

fn heard(answer: &Answer, key: &str) -> bool {
    let keys = answer.body["warning_keys"].as_array().unwrap();
    keys.iter().any(|of| of == key)
}

fn trim(caller: &Caller, days: i64, carcass: &str) -> String {
    let animal = farm("BRC").carcass(carcass).killed(chrono_day(-days));
    caller.receive("pork-trim").grams(2_000).from(animal).made()
}

fn meat_is_minced_within_its_days(engine: Engine) {
    for place in ["eu", "uk"] {
        let (_house, caller) = kitchen(engine, place);
        let grind = |lot: &str| caller.step("grind").of_grams(lot, 500).into("mince", 500);
        let (young, old) = (trim(&caller, 6, "1"), trim(&caller, 7, "2"));
        grind(&young).done();
        limit(grind(&old).ask(), "inputs[0].lot", "confirmed-X-EU-67");
        let told = grind(&old).with("as_it_happened", true);
        let told = told.note("Nobody had looked at the tag").done();
        // A deed that is told carries what it placed.
        let placed = &told.body["lots"][0]["stops"];
        assert_eq!(placed[0]["stop"], "failed", "{}", told.body);
        assert!(
            placed[0]["says"].as_str().unwrap().contains("7"),
            "{placed}"
        );
        assert_eq!(placed[0]["rows"], json!(["confirmed-X-EU-67"]));
        assert!(placed[0]["since"].is_string());
        caller.sell(&told.code(0)).refused(409, "lot");
        // With other things in it, it is a preparation: the law counts no days of that.
        let salt = caller.salt(1_000);
        let step = caller.step("grind").of_grams(&old, 100).of_grams(&salt, 2);
        step.into("burger", 100).done();
        // What was frozen is not chilled meat.
        caller.carry(&old, "freezer").frozen().done();
        grind(&old).done();
    }
    let (_house, caller) = kitchen(engine, "us");
    let old = trim(&caller, 9, "3");
    let grind = caller.step("grind").of_grams(&old, 500);
    grind.into("mince", 500).done();
}

fn thawed_mince_is_not_frozen_again(engine: Engine) {
    let (_house, caller) = kitchen(engine, "eu");
    let meat = trim(&caller, 1, "1");
    let mince = caller.step("grind").of(&meat).into("mince", 2_000).made();
    let thaw = || {
        caller
            .carry(&mince, "cooler")
            .with("state", "chilled")
            .done()
    };
    caller.carry(&mince, "freezer").frozen().done();
    thaw();
    let again = || caller.carry(&mince, "freezer").frozen();
    limit(again().ask(), "state", "confirmed-X-EU-68");
    // Shaped and frozen is frozen again as well.
    let shaped = caller.step("portion").of_grams(&mince, 500);
    let shaped = shaped.into("burger", 500).which("state", "frozen");
    limit(shaped.ask(), "outputs[0].state", "confirmed-X-EU-68");
    let told = again().with("as_it_happened", true);
    let told = told.note("Put back by mistake").done();
    assert_eq!(told.body["lots"][0]["stops"][0]["stop"], "failed");
    assert_eq!(caller.lot(&mince)["stops"][0]["stop"], "failed");
    // A cut may be; and in the United States nothing forbids it.
    let chop = trim(&caller, 1, "2");
    caller.carry(&chop, "freezer").frozen().done();
    caller
        .carry(&chop, "cooler")
        .with("state", "chilled")
        .done();
    caller.carry(&chop, "freezer").frozen().done();
}

fn mince_comes_in_colder_than_a_preparation(engine: Engine) {
    for place in ["eu", "uk"] {
        let (_house, caller) = kitchen(engine, place);
        let recipe = json!({ "product": "burger", "parts": [ { "product": "pork-trim", "grams": 900 }, { "product": "salt", "grams": 10 } ] });
        caller.post("/api/recipes", &recipe).expect(201);
        let came = |product: &str, celsius: f64| {
            let receipt = caller.receive(product).grams(500);
            let receipt = receipt.bought(bought("PTS", "m"));
            receipt.with("readings", json!({ "celsius": celsius }))
        };
        came("mince", 2.0).done();
        limit(
            came("mince", 2.1).ask(),
            "readings.celsius",
            "confirmed-14.8",
        );
        came("burger", 4.0).done();
        limit(
            came("burger", 4.1).ask(),
            "readings.celsius",
            "confirmed-14.8",
        );
        // What its pack names beside the meat makes it a preparation, too.
        let mut seasoned = bought("PTS", "s");
        seasoned["declares"] = json!({ "allergens": ["mustard"] });
        let receipt = caller.receive("mince").grams(500).bought(seasoned);
        receipt.with("readings", json!({ "celsius": 3.5 })).done();
    }
    // Two rows with one figure are one sentence.
    let (_house, caller) = kitchen(engine, "us");
    let receipt = caller
        .receive("pork-chop")
        .grams(500)
        .bought(bought("PTS", "c"));
    let warm = receipt.with("readings", json!({ "fahrenheit": 42 }));
    let warm = warm.ask().refused(422, "readings.fahrenheit");
    let told = warm.body["detail"].as_str().unwrap();
    assert_eq!(told.matches("is asked for").count(), 1, "{told}");
    assert!(told.contains("us-T1") && told.contains("us-T10"), "{told}");
}

fn a_reading_says_what_is_not_held_as_it_must_be(engine: Engine) {
    let read = |caller: &Caller, lot: &str, celsius: f64| {
        let body = json!({ "lot": lot, "celsius": celsius });
        let answer = caller.deed("/api/readings", body).expect(201);
        heard(&answer, "measure-held-wrong")
    };
    for (place, right, wrong) in [("uk", 8.0, 8.5), ("us", 5.0, 5.5), ("ca", 4.0, 4.5)] {
        let (_house, caller) = kitchen(engine, place);
        let meat = trim(&caller, 1, "1");
        let cook = |state: &str| {
            let step = caller.step("cook").of_grams(&meat, 500).into("stew", 500);
            step.which("state", state).held(80.0, 10).made()
        };
        let cold = cook("chilled");
        assert!(!read(&caller, &cold, right), "{place}");
        assert!(read(&caller, &cold, wrong), "{place}");
        let hot = cook("hot");
        assert!(!read(&caller, &hot, 64.0), "{place}");
        assert!(read(&caller, &hot, 55.0), "{place}");
    }
    // A place without a figure is told those of others; a frozen pack is asked nothing.
    let (_house, caller) = kitchen(engine, "eu");
    let meat = trim(&caller, 1, "1");
    let stew = caller.step("cook").of_grams(&meat, 500).into("stew", 500);
    let stew = stew.held(80.0, 10).made();
    assert!(read(&caller, &stew, 9.0));
    assert!(!read(&caller, &stew, 4.0));
    assert!(read(&caller, &meat, 7.5));
    caller.carry(&meat, "freezer").frozen().done();
    assert!(!read(&caller, &meat, 7.5));
}
