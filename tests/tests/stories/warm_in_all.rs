//! Food may be warm once: its warm times are added up, over places and through what is cut of it. And what stops food
//! is not taken away by the way, by whoever may not lift stops.

use serde_json::{Value, json};
use stories::call::{chrono_day, moment};
use stories::day::{Told, bought, farm};
use stories::{Answer, Caller, Engine, House, on_both_engines};

on_both_engines! {
    warm_times_are_added_up_over_places_and_cuts
    a_freezer_above_freezing_for_a_day_thaws_what_is_in_it
    raw_meat_stays_cold_and_what_comes_warm_is_not_frozen
    what_is_entered_late_or_voided_lifts_no_stop_by_the_way
    what_is_cut_before_a_stop_and_entered_after_it_is_stopped
    what_is_found_warm_twice_was_warm_in_between
    whatever_deed_read_it_warm_it_was_warm
    what_was_read_cold_and_was_not_is_warm_in_between
}

fn keys(answer: &Answer) -> String {
    answer.body["warning_keys"].to_string()
}

/// How many stops of what failed stand on a lot.
fn failed(caller: &Caller, lot: &str) -> usize {
    let stops = caller.lot(lot)["stops"].clone();
    let failed = |stop: &&Value| stop["stop"] == "failed";
    stops.as_array().unwrap().iter().filter(failed).count()
}

fn fail(caller: &Caller, place: &str, from: i64, until: i64, readings: Value) -> Answer {
    let body = json!({ "place": place, "from": moment(-from), "until": moment(-until), "readings": readings });
    caller.deed("/api/place-failures", body).expect(201)
}

/// Pork that came in ten hours ago and stands in the cooler.
fn pork(caller: &Caller, carcass: &str, place: &str, state: &str) -> String {
    let animal = farm("BRC").carcass(carcass).side("left");
    let lot = caller.receive("pig-half").grams(4_000).from(animal);
    lot.to(place).with("state", state).at(moment(-600)).made()
}

fn warm_times_are_added_up_over_places_and_cuts(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let meat = pork(&caller, "1", "cooler", "chilled");
    // us-T8: four hours are the most.
    let first = fail(&caller, "cooler", 590, 400, json!([]));
    assert!(keys(&first).contains("failure-in-time\""), "{}", first.body);
    let cut = caller.step("cut").of_grams(&meat, 1_000).place("freezer");
    let chops = cut.into("pork-chop", 1_000).at(moment(-400)).made();
    let fresh = pork(&caller, "2", "freezer", "chilled");
    let second = fail(&caller, "freezer", 399, 209, json!([]));
    let told = keys(&second);
    assert!(
        told.contains("failure-broke-in-all") && told.contains("failure-in-time\""),
        "{told}"
    );
    assert_eq!((failed(&caller, &chops), failed(&caller, &fresh)), (1, 0));
    // And in one place, twice.
    assert_eq!(failed(&caller, &meat), 0);
    let again = fail(&caller, "cooler", 100, 10, json!([]));
    assert!(
        keys(&again).contains("failure-broke-in-all"),
        "{}",
        again.body
    );
    assert_eq!(failed(&caller, &meat), 1);
    house.check();
}

fn a_freezer_above_freezing_for_a_day_thaws_what_is_in_it(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let meat = pork(&caller, "1", "freezer", "frozen");
    let read = json!([{ "at": moment(-300), "celsius": 3 }]);
    let answer = fail(&caller, "freezer", 590, 10, read);
    assert!(keys(&answer).contains("failure-thawed"), "{}", answer.body);
    assert_eq!(failed(&caller, &meat), 1);
    // A mere move makes nothing good.
    let moved = json!({ "lot": meat, "state": "chilled" });
    let moved = caller.deed("/api/moves", moved).expect(201).body["id"].clone();
    let right = json!({ "lot": meat, "what": "put-right", "why": "x", "document": moved });
    let right = caller.deed("/api/dispositions", right);
    assert_eq!(
        right.refused(422, "document").body["key"],
        "deed-puts-nothing-right"
    );
    house.check();
}

fn raw_meat_stays_cold_and_what_comes_warm_is_not_frozen(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let meat = pork(&caller, "1", "cooler", "chilled");
    let stand = json!({ "lot": meat, "to": "bench", "state": "ambient" });
    let asked = caller
        .deed("/api/moves", stand.clone())
        .refused(422, "state");
    assert_eq!(asked.body["key"], "move-raw-too-warm");
    let mut told = stand;
    told["as_it_happened"] = json!(true);
    told["note"] = json!("Forgotten on the bench");
    caller.deed("/api/moves", told).expect(201);
    assert_eq!(failed(&caller, &meat), 1);
    let frozen = |celsius: i32| {
        let lot = caller
            .receive("pork-chop")
            .grams(1_000)
            .bought(bought("PTS", "f"));
        lot.with("state", "frozen")
            .with("readings", json!({ "celsius": celsius }))
    };
    frozen(-12).done();
    frozen(19).ask().refused(422, "readings.celsius");
    // Kept hot, and then put into the cold: nothing shows how fast.
    let roast = caller
        .step("cook")
        .of_grams(&pork(&caller, "2", "cooler", "chilled"), 500);
    let roast = roast.into("cooked-pork", 500).held(80.0, 30).made();
    let kept = |state: &str| {
        caller
            .deed("/api/moves", json!({ "lot": roast, "state": state }))
            .expect(201)
    };
    assert!(!keys(&kept("hot")).contains("cools-unseen"));
    assert!(keys(&kept("chilled")).contains("move-cools-unseen"));
    house.check();
}

/// The same kitchen, asked by a cook who speaks for nobody else.
fn cook(caller: &Caller) -> Caller {
    let token = json!({ "name": "Cook", "role": "cook" });
    let token = caller.post("/api/tokens", &token).expect(201).body["token"].clone();
    caller.showing(token.as_str().unwrap())
}

fn what_is_entered_late_or_voided_lifts_no_stop_by_the_way(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let days = |days: i64| moment(-days * 24 * 60);
    let roast = json!({ "code": "roast", "names": { "en": "Roast" }, "kind": "cooked", "species": "pig",
        "storage": "chilled", "for_sale": true, "price_minor_per_kg": 100,
        "keep": { "days": 3, "from": "made", "day_one_counts": true } });
    caller.post("/api/products", &roast).expect(201);
    let pig = farm("BRC").killed(chrono_day(-8)).carcass("1").side("left");
    let pig = caller
        .receive("pig-half")
        .grams(4_000)
        .from(pig)
        .at(days(7));
    let pig = pig.note("Entered late").made();
    let cook = cook(&caller);
    let cooked = cook
        .step("cook")
        .of_grams(&pig, 500)
        .into("roast", 500)
        .held(80.0, 30);
    let cooked = cooked.at(days(6)).done().body;
    let lot = cooked["lots"][0]["code"].as_str().unwrap().to_owned();
    assert_eq!(caller.verdict(&lot), "pull");
    let freeze = json!({ "lot": lot, "state": "frozen", "at": days(5) });
    let refused = cook.deed("/api/moves", freeze.clone()).refused(403, None);
    assert_eq!(refused.body["right"], "lift");
    let void = cook.void(cooked["id"].as_str().unwrap()).why("again").ask();
    assert_eq!(void.refused(403, None).body["right"], "lift");
    assert_eq!(caller.verdict(&lot), "pull");
    // What is true may be entered, by whoever may lift what it lifts.
    caller.deed("/api/moves", freeze).expect(201);
    house.check();
}

fn what_is_cut_before_a_stop_and_entered_after_it_is_stopped(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let meat = pork(&caller, "1", "cooler", "chilled");
    fail(&caller, "cooler", 500, 10, json!([]));
    assert_eq!(failed(&caller, &meat), 1);
    let cut = || caller.step("cut").of_grams(&meat, 1_000).place("bench");
    let late = cut().into("pork-chop", 1_000).at(moment(-550)).done();
    assert!(keys(&late).contains("stop-entered-after"), "{}", late.body);
    let chops = late.body["lots"][0]["code"].as_str().unwrap().to_owned();
    assert_eq!(
        (failed(&caller, &chops), caller.verdict(&chops)),
        (1, json!("hold"))
    );
    // Who lets the first go lets that go too.
    let free =
        json!({ "lot": meat, "what": "released", "why": "The clock of the alarm was wrong" });
    caller.deed("/api/dispositions", free).expect(201);
    assert_eq!(failed(&caller, &chops), 0);
    house.check();
}

fn what_is_found_warm_twice_was_warm_in_between(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let meat = pork(&caller, "1", "cooler", "chilled");
    let read = |lot: &str, celsius: i32, minutes: i64| {
        let body = json!({ "lot": lot, "celsius": celsius, "at": moment(-minutes) });
        caller.deed("/api/readings", body).expect(201)
    };
    let cut = caller.step("cut").of_grams(&meat, 1_000).place("bench");
    let chops = cut.into("pork-chop", 1_000).at(moment(-50)).made();
    read(&meat, 20, 560);
    read(&meat, 3, 500);
    read(&meat, 20, 300);
    assert_eq!(failed(&caller, &meat), 0, "cold in between");
    // us-T8: four hours are the most, and what was cut of it since has them too.
    let again = read(&meat, 20, 55);
    let told = again.body["warnings"].to_string();
    assert!(
        told.contains("found too warm") && told.contains("us-T8"),
        "{told}"
    );
    assert_eq!((failed(&caller, &meat), failed(&caller, &chops)), (1, 1));
    read(&meat, 20, 10);
    assert_eq!(failed(&caller, &meat), 1, "it is known");
    // The same by the place: what came in meanwhile did not stand there so long.
    let stood = pork(&caller, "2", "freezer", "chilled");
    let room = |celsius: i32, minutes: i64| {
        let body = json!({ "place": "freezer", "celsius": celsius, "at": moment(-minutes) });
        caller.deed("/api/readings", body).expect(201)
    };
    room(12, 400);
    let came = caller.receive("pig-half").grams(4_000).to("freezer");
    let came = came.from(farm("BRC").carcass("3").side("left"));
    let came = came.with("state", "chilled").at(moment(-200)).made();
    let told = room(12, 30);
    assert!(keys(&told).contains("failure-broke"), "{}", told.body);
    assert_eq!((failed(&caller, &stood), failed(&caller, &came)), (1, 0));
    house.check();
}

/// A step that makes nothing of it, and what was read.
fn chill(lot: &str, celsius: i32, minutes: i64) -> Value {
    let at = moment(-minutes);
    json!({ "kind": "chill", "inputs": [{ "lot": lot }], "outputs": [], "place": "bench", "at": at,
        "readings": { "celsius": celsius } })
}

fn told(mut body: Value) -> Value {
    body["as_it_happened"] = json!(true);
    body["note"] = json!("The door stood open");
    body
}

fn whatever_deed_read_it_warm_it_was_warm(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let read = |lot: &str, celsius: i32, minutes: i64| {
        let body = json!({ "lot": lot, "celsius": celsius, "at": moment(-minutes) });
        caller.deed("/api/readings", body).expect(201)
    };
    // us-T8: four hours are the most. By two steps:
    let meat = pork(&caller, "1", "cooler", "chilled");
    let cut = caller.step("cut").of_grams(&meat, 500).place("bench");
    let chops = cut.into("pork-chop", 500).at(moment(-40)).made();
    caller.deed("/api/steps", chill(&meat, 20, 560)).expect(201);
    caller.deed("/api/steps", chill(&meat, 20, 400)).expect(201);
    let again = chill(&meat, 20, 50);
    let asked = caller
        .deed("/api/steps", again.clone())
        .refused(422, "readings");
    assert_eq!(asked.body["key"], "heat-deed-warm", "{}", asked.body);
    assert_eq!(failed(&caller, &meat), 0);
    let taken = caller.deed("/api/steps", told(again)).expect(201);
    assert!(
        taken.body["warnings"].to_string().contains("us-T8"),
        "{}",
        taken.body
    );
    assert_eq!((failed(&caller, &meat), failed(&caller, &chops)), (1, 1));
    // By one of each, in either order.
    let meat = pork(&caller, "2", "cooler", "chilled");
    caller.deed("/api/steps", chill(&meat, 20, 560)).expect(201);
    read(&meat, 20, 50);
    assert_eq!(failed(&caller, &meat), 1);
    let meat = pork(&caller, "3", "cooler", "chilled");
    read(&meat, 20, 560);
    caller
        .deed("/api/steps", chill(&meat, 20, 50))
        .refused(422, "readings");
    // By logs that are no cooling.
    let meat = pork(&caller, "4", "cooler", "chilled");
    let log = |minutes: i64| {
        let log = json!([{ "at": moment(-minutes), "celsius": 20 }]);
        let step = caller
            .step("chill")
            .of(&meat)
            .place("bench")
            .with("log", log);
        step.at(moment(-minutes)).ask()
    };
    log(560).expect(201);
    log(50).refused(422, "log");
    // Of what it was cut from, and then of what was cut.
    let meat = pork(&caller, "5", "cooler", "chilled");
    read(&meat, 20, 560);
    let cut = caller.step("cut").of_grams(&meat, 1_000).place("bench");
    let chops = cut.into("pork-chop", 1_000).at(moment(-500)).made();
    caller
        .deed("/api/steps", chill(&chops, 20, 50))
        .refused(422, "readings");
    let cut = caller.step("cut").of_grams(&meat, 1_000).place("bench");
    let cut = cut.with("readings", json!({ "celsius": 20 }));
    cut.into("pork-chop", 1_000)
        .at(moment(-50))
        .ask()
        .refused(422, "readings");
    // A step at the cooler reads its food, and not the cooler.
    let stood = pork(&caller, "6", "cooler", "chilled");
    let other = pork(&caller, "7", "freezer", "chilled");
    for minutes in [400, 50] {
        let mut at_cooler = chill(&other, if minutes == 400 { 20 } else { 3 }, minutes);
        at_cooler["place"] = json!("cooler");
        caller.deed("/api/steps", at_cooler).expect(201);
    }
    let room = |celsius: i32, minutes: i64| {
        let body = json!({ "place": "cooler", "celsius": celsius, "at": moment(-minutes) });
        caller.deed("/api/readings", body).expect(201)
    };
    room(12, 390);
    room(12, 30);
    assert_eq!(failed(&caller, &stood), 1);
    house.check();
}

fn what_was_read_cold_and_was_not_is_warm_in_between(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let read = |lot: &str, celsius: i32, minutes: i64| {
        let body = json!({ "lot": lot, "celsius": celsius, "at": moment(-minutes) });
        caller.deed("/api/readings", body).expect(201).body["id"].clone()
    };
    let meat = pork(&caller, "1", "cooler", "chilled");
    let cut = caller.step("cut").of_grams(&meat, 500).place("bench");
    let chops = cut.into("pork-chop", 500).at(moment(-40)).made();
    read(&meat, 20, 560);
    let cold = read(&meat, 3, 300);
    read(&meat, 20, 50);
    assert_eq!(failed(&caller, &meat), 0);
    caller
        .void(cold.as_str().unwrap())
        .why("Another pot")
        .done();
    assert_eq!((failed(&caller, &meat), failed(&caller, &chops)), (1, 1));
    // It was a slip of the pen, or of a step.
    let meat = pork(&caller, "2", "cooler", "chilled");
    read(&meat, 20, 560);
    let step = caller
        .deed("/api/steps", chill(&meat, 3, 300))
        .expect(201)
        .body["id"]
        .clone();
    read(&meat, 20, 50);
    let right = json!({ "step": step, "why": "The probe's paper", "readings": { "celsius": 13 } });
    caller.deed("/api/corrections", right).expect(201);
    assert_eq!(failed(&caller, &meat), 1);
    let meat = pork(&caller, "3", "cooler", "chilled");
    read(&meat, 20, 560);
    let cold = read(&meat, 3, 300);
    read(&meat, 20, 50);
    let right = json!({ "step": cold, "why": "The probe's paper", "readings": { "celsius": 13 } });
    let mut only = right.clone();
    only["try"] = json!(true);
    caller.deed("/api/corrections", only).expect(200);
    assert_eq!(failed(&caller, &meat), 0);
    caller.deed("/api/corrections", right).expect(201);
    assert_eq!(failed(&caller, &meat), 1);
    house.check();
}
