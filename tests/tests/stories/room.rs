//! That food keeps without being kept cold is a claim, and needs a reading or a named approval: over HTTP.

use serde_json::{Value, json};
use stories::call::chrono_day;
use stories::day::{Told, bought};
use stories::labels::set;
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    what_is_listed_as_kept_at_room_temperature_waits_for_a_reading
    a_named_approval_or_a_manager_shows_it_too
    what_is_ready_leaves_the_cold_only_as_it_happened
    only_what_it_is_keeps_by_nature
    what_nobody_knows_the_day_of_gives_no_fresh_days
}

fn product(caller: &Caller, code: &str, more: Value) -> stories::Answer {
    let mut body = json!({ "code": code, "names": { "en": code, "fr": code }, "kind": "cooked", "species": "pig",
        "raw": false, "storage": "chilled", "for_sale": true, "price_minor_per_kg": 100,
        "keep": { "days": 30, "from": "made", "day_one_counts": true } });
    for (key, value) in more.as_object().expect("fields") {
        body[key] = value.clone();
    }
    caller.post("/api/products", &body)
}

fn kitchen(engine: Engine) -> (House, Caller, String) {
    let house = House::furnished(engine);
    let caller = house.caller();
    product(&caller, "stew", json!({})).expect(201);
    product(&caller, "jerky", json!({ "storage": "ambient" })).expect(201);
    let pig = caller.half_pig("0608-17", 20_000);
    (house, caller, pig)
}

fn cooked(caller: &Caller, pig: &str, product: &str) -> String {
    let cook = caller.step("cook").of_grams(pig, 1_000).place("stove");
    let cook = cook.with("readings", json!({ "celsius": 80, "hold_minutes": 20 }));
    cook.into(product, 900).made()
}

fn stops(caller: &Caller, lot: &str) -> Vec<String> {
    let stops = caller.lot(lot)["stops"].clone();
    let of = |stop: &Value| stop["stop"].as_str().unwrap().to_owned();
    stops.as_array().unwrap().iter().map(of).collect()
}

fn what_is_listed_as_kept_at_room_temperature_waits_for_a_reading(engine: Engine) {
    let (house, caller, pig) = kitchen(engine);
    product(&caller, "roast", json!({ "controlled": false })).expect(201);
    for listed in ["jerky", "roast"] {
        let lot = cooked(&caller, &pig, listed);
        assert_eq!(stops(&caller, &lot), ["not-proven"], "{listed}");
        let listed_stops = caller.read("/api/stops")["stops"].to_string();
        assert!(listed_stops.contains(&lot), "{listed} {listed_stops}");
        caller.sell(&lot).with("grams", 10).refused(409, "lot");
        caller
            .get(&format!("/api/lots/{lot}/labels.pdf?template=pack-us"))
            .refused(409, None);
        let mixed = caller.step("mix").of_grams(&lot, 100).into("stew", 100);
        mixed.refused(409, "inputs[0].lot");
        // us-1.9: below 0.88 it needs no control.
        caller.measure(&lot).with("water_activity", 0.93).done();
        assert_eq!(stops(&caller, &lot), ["not-proven"], "{listed}");
        caller.measure(&lot).with("water_activity", 0.80).done();
        assert!(stops(&caller, &lot).is_empty(), "{listed}");
        caller.sell(&lot).with("grams", 10).done();
    }
    house.check();
}

fn a_named_approval_or_a_manager_shows_it_too(engine: Engine) {
    let (house, caller, pig) = kitchen(engine);
    let before = cooked(&caller, &pig, "jerky");
    let approvals = json!([{ "for": "stable:jerky", "number": "V-7", "until": null }]);
    set(&caller, &[("approvals", approvals)]);
    let since = cooked(&caller, &pig, "jerky");
    assert!(stops(&caller, &since).is_empty());
    caller.sell(&since).with("grams", 10).done();
    // What was made before the approval was on file: a manager names the paper.
    assert_eq!(stops(&caller, &before), ["not-proven"]);
    let body = json!({ "lot": before, "what": "released", "why": "Dried like the approved one", "document": "V-7" });
    caller.deed("/api/dispositions", body).expect(201);
    assert!(stops(&caller, &before).is_empty());
    caller.sell(&before).with("grams", 10).done();
    house.check();
}

fn what_is_ready_leaves_the_cold_only_as_it_happened(engine: Engine) {
    let (house, caller, pig) = kitchen(engine);
    let stew = cooked(&caller, &pig, "stew");
    let out = || caller.carry(&stew, "rail").with("state", "ambient");
    let refused = out().ask().expect(422);
    assert_eq!(refused.body["type"], "/problems/limit", "{}", refused.body);
    assert_eq!(refused.body["field"], "state");
    assert_eq!(refused.body["may_be_told"], true);
    assert!(!refused.body["rows"].as_array().unwrap().is_empty());
    let told = out().with("as_it_happened", true);
    told.note("It stood on the shelf over lunch").done();
    assert!(stops(&caller, &stew).contains(&"failed".to_owned()));
    caller.sell(&stew).with("grams", 10).refused(409, "lot");
    // Back in the cold it stays what it is.
    caller
        .carry(&stew, "cooler")
        .with("state", "chilled")
        .done();
    assert_eq!(stops(&caller, &stew), ["failed"]);
    let slices = caller
        .step("portion")
        .of_grams(&stew, 100)
        .into("stew", 100);
    slices.refused(409, "inputs[0].lot");
    // What readings show to keep may stand there.
    let dry = cooked(&caller, &pig, "stew");
    caller.measure(&dry).with("water_activity", 0.80).done();
    caller.carry(&dry, "rail").with("state", "ambient").done();
    caller.sell(&dry).with("grams", 10).done();
    house.check();
}

fn only_what_it_is_keeps_by_nature(engine: Engine) {
    let (_house, caller, _) = kitchen(engine);
    let refused = |kind: &str, natural: &str| {
        let body = json!({ "kind": kind, "storage": "ambient", "stable_as": natural });
        product(&caller, "claimed", body).refused(422, "stable_as");
    };
    refused("cooked", "dry-goods");
    refused("cured", "salt");
    refused("stock", "rendered-fat");
    refused("mixed", "spice");
    let fat = json!({ "kind": "rendered", "storage": "ambient", "stable_as": "rendered-fat" });
    product(&caller, "lard", fat).expect(201);
    let gelatine = json!({ "kind": "ingredient", "storage": "ambient", "stable_as": "dry-goods" });
    product(&caller, "gelatine", gelatine).expect(201);
}

fn what_nobody_knows_the_day_of_gives_no_fresh_days(engine: Engine) {
    let (house, caller, pig) = kitchen(engine);
    let cream = json!({ "kind": "ingredient", "species": null, "controlled": true, "keep": null });
    product(&caller, "cream", cream).expect(201);
    let cream = caller.receive("cream").to("cooler").grams(1_000);
    let cream = cream.bought(bought("PTS", "7")).done();
    let code = cream.code(0);
    let stew = cooked(&caller, &pig, "stew");
    let mix = caller.step("mix").of_grams(&code, 200).of_grams(&stew, 200);
    let mix = mix.into("stew", 400).done();
    let keys = mix.body["warning_keys"].to_string();
    assert!(keys.contains("date-part-undated"), "{}", mix.body);
    let salad = mix.code(0);
    assert!(caller.lot(&salad)["use_by"].is_null());
    assert_eq!(stops(&caller, &salad), ["not-proven"]);
    caller.sell(&salad).with("grams", 10).refused(409, "lot");
    // The kitchen goes on with it; what comes of it has no day either.
    let more = caller
        .step("portion")
        .of_grams(&salad, 100)
        .into("stew", 100)
        .made();
    assert_eq!(stops(&caller, &more), ["not-proven"]);
    // The day on the pack is told: all that was made of it has one.
    let mut of = bought("PTS", "7");
    of["use_by"] = json!(chrono_day(3));
    let receipt = cream.body["id"].as_str().unwrap();
    caller.correct(receipt).with("bought", of).done();
    for lot in [&salad, &more] {
        assert_eq!(caller.lot(lot)["use_by"], chrono_day(3), "{lot}");
        assert!(stops(&caller, lot).is_empty());
    }
    caller.sell(&salad).with("grams", 10).done();
    house.check();
}
