//! Cold at the door and in a place: a delivery that is too warm, a place beyond its limit, a freezer that
//! failed in the night.

use serde_json::{Value, json};
use stories::call::moment;
use stories::day::{Told, bought, farm};
use stories::labels::set;
use stories::{Answer, Caller, Engine, House, on_both_engines};

on_both_engines! {
    what_comes_in_too_warm_is_refused_at_the_door
    a_place_beyond_its_limit_names_what_stood_in_it
    a_freezer_that_failed_is_one_act
    ready_food_and_rabbit_at_the_door_of_the_union
    a_place_without_a_limit_is_judged_by_what_stands_in_it
}

fn heard(answer: &Answer, key: &str) -> bool {
    let keys = answer.body["warning_keys"].as_array().unwrap();
    keys.iter().any(|of| of == key)
}

fn what_comes_in_too_warm_is_refused_at_the_door(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let loin = |readings: Value| {
        let bought = bought("PTS", "26160-207");
        let loin = caller.receive("pork-chop").grams(1_000).bought(bought);
        loin.with("readings", readings)
    };
    // us-T1: 41 °F, which is 5 °C.
    loin(json!({ "celsius": 5 })).done();
    loin(json!({ "fahrenheit": 41 })).done();
    let warm = loin(json!({ "fahrenheit": 41.5 }))
        .ask()
        .refused(422, "readings.fahrenheit");
    assert_eq!(warm.body["type"], "/problems/limit");
    assert_eq!(warm.body["may_be_told"], true);
    let rows = warm.body["rows"].as_array().unwrap();
    assert!(rows.contains(&json!("us-T1")), "{}", warm.body);
    let told = |readings: Value| loin(readings).with("as_it_happened", true);
    told(json!({ "celsius": 14 })).refused(422, "note");
    let lot = told(json!({ "celsius": 14 }))
        .note("The lorry's cooling had failed")
        .made();
    let stops = caller.lot(&lot)["stops"].clone();
    assert_eq!(stops[0]["stop"], "failed", "{stops}");
    assert_eq!(caller.verdict(&lot), "hold");
    let cook = caller
        .step("cook")
        .of_grams(&lot, 500)
        .into("cooked-pork", 500)
        .held(74.0, 30);
    cook.refused(409, "inputs[0].lot");
    // Nobody has read where frozen food's figure stands: it warns.
    let frozen = loin(json!({ "celsius": -12 }))
        .with("state", "frozen")
        .done();
    assert!(heard(&frozen, "holding-outside"), "{}", frozen.body);
}

/// Pork received two hours ago, put down in a place.
fn received(caller: &Caller, carcass: &str, place: &str, state: &str) -> String {
    let animal = farm("BRC").carcass(carcass).side("left");
    let lot = caller
        .receive("pig-half")
        .grams(2_000)
        .from(animal)
        .to(place);
    lot.with("state", state).at(moment(-600)).made()
}

fn a_place_beyond_its_limit_names_what_stood_in_it(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let place = json!({ "code": "walk-in", "name": "Walk-in", "kind": "storage", "limits": { "below_fahrenheit": 41, "below_celsius": 5 } });
    caller.post("/api/places", &place).expect(201);
    let there = received(&caller, "1", "walk-in", "chilled");
    let gone = received(&caller, "2", "walk-in", "chilled");
    caller.carry(&gone, "rail").done();
    let read = |body: Value| caller.deed("/api/readings", body).expect(201);
    let cold = read(json!({ "place": "walk-in", "celsius": 5 }));
    assert!(!heard(&cold, "place-beyond"), "{}", cold.body);
    let warm = read(json!({ "place": "walk-in", "celsius": 12 }));
    assert!(heard(&warm, "place-beyond") && heard(&warm, "place-stood-there"));
    let told = warm.body["warnings"].to_string();
    let shown = |lot: &str| caller.lot(lot)["shown"].as_str().unwrap().to_owned();
    assert!(
        told.contains(&shown(&there)) && !told.contains(&shown(&gone)),
        "{told}"
    );
    // Before it was carried away, it stood there too.
    let early = read(json!({ "place": "walk-in", "fahrenheit": 41.5, "at": moment(-300) }));
    assert!(
        early.body["warnings"].to_string().contains(&shown(&gone)),
        "{}",
        early.body
    );
}

fn a_freezer_that_failed_is_one_act(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let meat = received(&caller, "3", "freezer", "frozen");
    let elsewhere = received(&caller, "4", "cooler", "chilled");
    let wine = caller
        .receive("wine")
        .grams(700)
        .bought(bought("PTS", "w"))
        .to("freezer")
        .at(moment(-600))
        .made();
    let fail = |from: i64, until: i64, readings: Value| {
        let body = json!({ "place": "freezer", "from": moment(-from), "until": moment(-until), "readings": readings });
        caller.deed("/api/place-failures", body)
    };
    fail(10, 20, json!([])).refused(422, "until");
    fail(60, 0, json!([{ "at": moment(-30) }])).refused(422, "readings[0].celsius");
    let earlier = json!([{ "at": moment(-90), "celsius": 3 }]);
    fail(60, 0, earlier).refused(422, "readings[0].at");
    let stops = |lot: &str| {
        let stops = caller.lot(lot)["stops"].clone();
        let failed = |stop: &&Value| stop["stop"] == "failed";
        stops.as_array().unwrap().iter().filter(failed).count()
    };
    // us-T8: four hours above 41 °F are the most.
    let short = fail(239, 0, json!([])).expect(201);
    assert!(
        heard(&short, "failure-in-time") && heard(&short, "failure-stable"),
        "{}",
        short.body
    );
    let cold =
        json!([{ "at": moment(-200), "fahrenheit": 30 }, { "at": moment(-10), "fahrenheit": 41 }]);
    assert!(heard(
        &fail(300, 0, cold).expect(201),
        "failure-stayed-cold"
    ));
    assert_eq!(stops(&meat), 0);
    let night =
        json!([{ "at": moment(-280), "fahrenheit": 50 }, { "at": moment(-1), "celsius": 12 }]);
    let failed = fail(300, 0, night).expect(201);
    assert!(
        heard(&failed, "failure-broke") && heard(&failed, "failure-look-if-thawed"),
        "{}",
        failed.body
    );
    assert_eq!((stops(&meat), stops(&wine), stops(&elsewhere)), (1, 0, 0));
    let listed = caller.read("/api/stops")["stops"].clone();
    let of_freezer: Vec<&Value> = listed
        .as_array()
        .unwrap()
        .iter()
        .filter(|stop| stop["place"] == "freezer")
        .collect();
    assert!(
        of_freezer.iter().any(|stop| stop["lot"] == json!(meat)),
        "{listed}"
    );
    let cut = caller
        .step("cut")
        .of_grams(&meat, 500)
        .into("pork-chop", 500);
    cut.refused(409, "inputs[0].lot");
    let void = failed.body["id"].as_str().unwrap();
    assert_eq!(
        caller.read(&format!("/api/steps/{void}"))["kind"],
        "place-failed"
    );
    let body = json!({ "lot": meat, "what": "released", "why": "It was hard as stone" });
    caller.deed("/api/dispositions", body).expect(201);
    assert_eq!(stops(&meat), 0);
}

fn ready_food_and_rabbit_at_the_door_of_the_union(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let product = |code: &str, kind: &str, species: Value| {
        let body = json!({ "code": code, "names": { "en": code }, "kind": kind, "species": species,
            "raw": kind == "cut", "storage": "chilled", "keep": { "days": 5, "from": "made", "day_one_counts": true } });
        caller.post("/api/products", &body).expect(201);
    };
    product("roast", "cooked", Value::Null);
    product("rabbit", "cut", json!("rabbit"));
    set(&caller, &[("profile", json!("eu"))]);
    let ready = |degrees: f64| {
        let bought =
            json!({ "supplier": "PTS", "supplier_lot": "S-1", "declares": { "ready": true } });
        let body = json!({ "product": "roast", "grams": 500, "place": "cooler", "bought": bought,
            "readings": { "celsius": degrees } });
        caller.deed("/api/receipts", body)
    };
    // The Union has no figure: warm by every other place's that was read is warm there; between, it is told.
    let refused = ready(30.0).refused(422, "readings.celsius");
    assert!(
        refused.body["rows"]
            .to_string()
            .contains("confirmed-X-UK-1")
    );
    assert_eq!(refused.body["may_be_told"], true);
    assert!(heard(&ready(7.0).expect(201), "holding-outside"));
    assert!(!heard(&ready(5.0).expect(201), "holding-outside"));
    // confirmed-X-EU-48: rabbit as poultry.
    let rabbit = |carcass: &str, degrees: f64| {
        let animal = json!({ "farm": "BRC", "species": "rabbit", "killed_on": "2026-11-02", "carcass": carcass });
        let body = json!({ "product": "rabbit", "grams": 500, "place": "cooler", "animal": animal,
            "readings": { "celsius": degrees } });
        caller.deed("/api/receipts", body)
    };
    rabbit("R-1", 4.1).refused(422, "readings.celsius");
    rabbit("R-2", 4.0).expect(201);
}

fn a_place_without_a_limit_is_judged_by_what_stands_in_it(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let place = json!({ "code": "walk-in", "name": "Walk-in", "kind": "storage" });
    caller.post("/api/places", &place).expect(201);
    let read = |degrees: f64| {
        let reading = json!({ "place": "walk-in", "celsius": degrees });
        caller.deed("/api/readings", reading).expect(201)
    };
    assert_eq!(
        read(12.0).body["warnings"],
        json!([]),
        "nothing stands in it"
    );
    let loin = caller.receive("pork-chop").to("walk-in").grams(1_000);
    let loin = loin.bought(bought("PTS", "w")).made();
    // us-T1: 5 °C.
    let warm = read(12.0);
    assert!(heard(&warm, "measure-held-wrong"), "{}", warm.body);
    assert!(heard(&warm, "place-stood-there"), "{}", warm.body);
    let shown = caller.lot(&loin)["shown"].as_str().unwrap().to_owned();
    assert!(
        warm.body["warnings"].to_string().contains(&shown),
        "{}",
        warm.body
    );
    assert_eq!(read(5.0).body["warnings"], json!([]));
}
