//! What went wrong goes on record, and stands in the way of everything made from it until a person disposes of
//! it: over HTTP, as a kitchen's day has it.

use serde_json::{Value, json};
use stories::call::{chrono_day, moment};
use stories::day::{Told, farm};
use stories::{Answer, Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_cook_that_was_too_short_is_told_as_it_happened
    a_second_cook_puts_it_right
    what_put_it_right_is_a_deed_of_that_lot
    what_is_past_its_day_is_not_sold_and_a_sale_of_it_is_told
    a_held_lot_goes_nowhere_until_it_is_let_go
    a_hold_of_one_pack_is_let_go_alone
    what_was_done_before_a_hold_is_taken
    a_void_of_the_cook_takes_its_stop_with_it
    waste_is_no_food_whatever_it_costs
}

/// Pork for a roast, cooked at so many degrees for so many minutes.
fn roasted(caller: &Caller, pig: &str, celsius: f64, minutes: u32) -> stories::day::StepOfDay {
    let step = caller.step("cook").of_grams(pig, 1_000);
    step.into("roast", 1_000).held(celsius, minutes)
}

fn kitchen(engine: Engine) -> (House, Caller, String) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let roast = json!({ "code": "roast", "names": { "en": "Roast", "fr": "Rôti" }, "kind": "cooked", "species": "pig",
        "storage": "chilled", "for_sale": true, "price_minor_per_kg": 100, "cooked_as": "roast",
        "keep": { "days": 5, "from": "made", "day_one_counts": true } });
    caller.post("/api/products", &roast).expect(201);
    let slices = json!({ "code": "slices", "names": { "en": "Slices" }, "kind": "cooked", "species": "pig",
        "storage": "chilled", "for_sale": true, "price_minor_per_kg": 100,
        "keep": { "days": 5, "from": "made", "day_one_counts": true } });
    caller.post("/api/products", &slices).expect(201);
    let pig = caller.half_pig("0608-17", 10_000);
    (house, caller, pig)
}

/// The stops that a lot is answered with.
fn stops(caller: &Caller, lot: &str) -> Vec<String> {
    let stops = caller.lot(lot)["stops"].clone();
    let of = |stop: &Value| stop["stop"].as_str().unwrap().to_owned();
    stops.as_array().unwrap().iter().map(of).collect()
}

fn verdict(caller: &Caller, lot: &str) -> String {
    let read = caller.read(&format!("/api/scan?code={lot}"));
    read["verdict"].as_str().unwrap().to_owned()
}

/// A limit or a stop in the way, which may be recorded as it happened.
#[track_caller]
fn tellable(answer: Answer, status: u16, problem: &str) {
    let answer = answer.expect(status);
    assert_eq!(answer.body["type"], format!("/problems/{problem}"));
    assert_eq!(answer.body["may_be_told"], true, "{}", answer.body);
}

fn a_cook_that_was_too_short_is_told_as_it_happened(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    // us-1.8: 112 minutes at 130 °F (54.44 °C).
    let short = roasted(&caller, &pig, 54.5, 60);
    let refused = short.clone().ask();
    assert_eq!(refused.body["field"], "readings.celsius");
    assert!(!refused.body["rows"].as_array().unwrap().is_empty());
    tellable(refused, 422, "limit");
    let unsaid = short.clone().with("as_it_happened", true);
    unsaid.refused(422, "note");
    let told = short
        .with("as_it_happened", true)
        .note("The stove went out");
    let roast = told.made();
    assert_eq!(stops(&caller, &roast), ["failed", "not-proven"]);
    let stop = &caller.lot(&roast)["stops"][0];
    assert!(
        stop["since"].is_string() && stop["says"].as_str().unwrap().contains("52"),
        "{stop}"
    );
    assert_eq!(verdict(&caller, &roast), "hold");
    tellable(caller.sell(&roast).ask(), 409, "stopped");
    caller
        .get(&format!("/api/lots/{roast}/labels.pdf"))
        .refused(409, None);
    // What is made of it is stopped as well, and recorded only as it happened.
    let slice = || caller.step("cut").of_grams(&roast, 400).into("slices", 400);
    tellable(slice().ask(), 409, "stopped");
    let happened = slice()
        .with("as_it_happened", true)
        .note("Sliced before anybody looked");
    let slices = happened.made();
    assert_eq!(stops(&caller, &slices), ["failed", "not-proven"]);
    let listed = caller.read("/api/stops");
    let of = |lot: &str| {
        let stops = listed["stops"].as_array().unwrap().iter();
        stops.filter(|stop| stop["lot"] == lot).count()
    };
    assert_eq!((of(&roast), of(&slices)), (2, 2), "{listed}");
    // A person lets the first of the line go; what was made from it is free of that failure, and shown by nothing to
    // be cooked through until they say so of it as well.
    let lets_go = |lot: &str| {
        let body = json!({ "lot": lot, "what": "released", "why": "Core was read again" });
        caller.deed("/api/dispositions", body).expect(201);
        stops(&caller, lot)
    };
    assert!(lets_go(&roast).is_empty());
    assert_eq!(stops(&caller, &slices), ["not-proven"]);
    assert!(lets_go(&slices).is_empty());
    assert_eq!(verdict(&caller, &slices), "sell");
    let why = caller.why(&roast)["because"]["stop"].to_string();
    assert!(why.contains("Core was read again"), "{why}");
}

fn what_put_it_right_is_a_deed_of_that_lot(engine: Engine) {
    let (house, caller, pig) = kitchen(engine);
    let told = roasted(&caller, &pig, 54.5, 60).with("as_it_happened", true);
    let answer = told.note("The stove went out").done();
    let roast = answer.body["lots"][0]["code"].as_str().unwrap().to_owned();
    let other = roasted(&caller, &pig, 60.0, 30).done().body["id"].clone();
    let right = |document: &Value| json!({ "lot": roast, "what": "put-right", "why": "x", "document": document });
    let disposes = |who: &Caller, document: &Value| who.deed("/api/dispositions", right(document));
    let token = json!({ "name": "a cook", "role": "cook" });
    let token = caller.post("/api/tokens", &token).expect(201).body["token"].clone();
    let cook = caller.showing(token.as_str().unwrap());
    assert_eq!(
        disposes(&cook, &answer.body["id"]).refused(403, None).body["right"],
        "lift"
    );
    disposes(&caller, &json!("nonsense")).refused(422, "document");
    disposes(&caller, &other).refused(422, "document");
    assert_eq!(verdict(&caller, &roast), "hold");
    let read = json!({ "lot": roast, "celsius": 75.0 });
    let read = caller.deed("/api/readings", read).expect(201).body["id"].clone();
    disposes(&caller, &read).expect(201);
    assert_eq!(verdict(&caller, &roast), "sell");
    house.check();
}

fn a_second_cook_puts_it_right(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let short = roasted(&caller, &pig, 54.5, 60).with("as_it_happened", true);
    let roast = short.note("The stove went out").made();
    let again = caller.step("cook").of_grams(&roast, 1_000);
    let done = again.into("roast", 950).held(60.0, 30).made();
    assert!(stops(&caller, &done).is_empty());
    assert_eq!(verdict(&caller, &done), "sell");
}

fn what_is_past_its_day_is_not_sold_and_a_sale_of_it_is_told(engine: Engine) {
    let (_house, caller, _) = kitchen(engine);
    let animal = farm("BRC").carcass("0608-99").side("left");
    let animal = animal.killed(chrono_day(-12));
    let at = |days: i64| moment(-days * 24 * 60);
    let old_pig = caller.receive("pig-half").grams(2_000).from(animal);
    let old_pig = old_pig.at(at(10)).note("Entered late").made();
    let cooked = roasted(&caller, &old_pig, 60.0, 30).at(at(9));
    let old = cooked.note("Entered late").made();
    assert_eq!(stops(&caller, &old), ["past-its-day"]);
    assert_eq!(verdict(&caller, &old), "pull");
    tellable(caller.sell(&old).ask(), 422, "limit");
    let told = caller.sell(&old).with("as_it_happened", true);
    told.note("Found out in the evening").done();
    let why = caller.why(&old)["because"]["stop"].to_string();
    assert!(why.contains("although it was stopped"), "{why}");
}

fn a_held_lot_goes_nowhere_until_it_is_let_go(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let roast = roasted(&caller, &pig, 60.0, 30).made();
    let hold = json!({ "lots": [{ "lot": roast }], "why": "The farm phoned" });
    caller.deed("/api/holds", hold.clone()).expect(201);
    assert_eq!(stops(&caller, &roast), ["held"]);
    assert_eq!(caller.lot(&roast)["holds"].as_array().unwrap().len(), 1);
    assert_eq!(verdict(&caller, &roast), "hold");
    tellable(caller.sell(&roast).ask(), 409, "held");
    tellable(
        caller
            .step("cut")
            .of_grams(&roast, 400)
            .into("slices", 400)
            .ask(),
        409,
        "held",
    );
    caller.carry(&roast, "cooler").done();
    let dropped = json!({ "lot": roast, "what": "released", "why": "no" });
    caller
        .deed("/api/dispositions", dropped)
        .refused(409, "lot");
    caller.deed("/api/hold-releases", hold).expect(201);
    assert!(stops(&caller, &roast).is_empty());
    caller.sell(&roast).done();
}

fn a_hold_of_one_pack_is_let_go_alone(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let cook = caller.step("cook").of_grams(&pig, 900);
    let roast = cook.into_packs("roast", 900, 3).held(60.0, 30).made();
    let on = |lot: &str| json!({ "lots": [{ "lot": lot }], "why": "The farm phoned" });
    let pack = |nth: u32| format!("{roast}/{nth}");
    caller.deed("/api/holds", on(&pack(2))).expect(201);
    caller.deed("/api/holds", on(&pack(3))).expect(201);
    caller.sell(&roast).pack(1).done();
    tellable(caller.sell(&roast).pack(2).ask(), 409, "held");
    caller.deed("/api/hold-releases", on(&pack(2))).expect(201);
    caller.sell(&roast).pack(2).done();
    tellable(caller.sell(&roast).pack(3).ask(), 409, "held");
}

fn what_was_done_before_a_hold_is_taken(engine: Engine) {
    let (_house, caller, _) = kitchen(engine);
    let animal = farm("BRC").carcass("0608-99").side("left");
    let early = caller.receive("pig-half").grams(2_000).from(animal);
    let early = early.at(moment(-180)).made();
    let roast = roasted(&caller, &early, 60.0, 30).at(moment(-120)).made();
    let hold = json!({ "lots": [{ "lot": roast }], "why": "The farm phoned" });
    caller.deed("/api/holds", hold).expect(201);
    let sale = caller.sell(&roast).grams(200);
    sale.clone().at(moment(-60)).done();
    tellable(sale.ask(), 409, "held");
}

fn a_void_of_the_cook_takes_its_stop_with_it(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let short = roasted(&caller, &pig, 54.5, 60).with("as_it_happened", true);
    let done = short.note("The stove went out").done();
    let roast = done.code(0);
    caller.void(done.body["id"].as_str().unwrap()).done();
    assert_eq!(stops(&caller, &roast), ["voided", "not-proven"]);
}

fn waste_is_no_food_whatever_it_costs(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let scrap = json!({ "code": "scrap", "names": { "en": "Scrap" }, "kind": "waste", "species": "pig", "storage": "chilled",
        "raw": true, "for_sale": true, "price_minor_per_kg": 10, "keep": { "days": 5, "from": "made", "day_one_counts": true } });
    caller.post("/api/products", &scrap).expect(201);
    let scrap = caller.step("cut").of_grams(&pig, 2_000);
    let scrap = scrap.into_packs("scrap", 2_000, 4).made();
    assert_eq!(verdict(&caller, &scrap), "not-for-sale");
    assert_eq!(stops(&caller, &scrap), ["waste"]);
    for way in ["sell", "serve", "ship"] {
        let departure = json!({ "kind": way, "lot": scrap, "pack": 1 });
        tellable(caller.deed("/api/departures", departure), 409, "stopped");
    }
    let label = format!("/api/lots/{scrap}/labels.pdf?template=pack-us-raw");
    caller.get(&label).refused(409, None);
    let cook = || {
        caller
            .step("cook")
            .of_pack(&scrap, 1)
            .into("slices", 400)
            .held(80.0, 20)
    };
    tellable(cook().ask(), 409, "stopped");
    let told = cook().with("as_it_happened", true);
    let told = told.note("Nobody looked at the tub").made();
    assert_eq!(stops(&caller, &told), ["failed"]);
    // Bins are emptied into one another, and taken away; and they are no work for anybody today.
    let bin = caller.step("mix").of_pack(&scrap, 2).of_pack(&scrap, 3);
    bin.into("scrap", 1_000).done();
    let gone = json!({ "kind": "discard", "lot": scrap, "pack": 4, "why": "the bin man" });
    caller.deed("/api/departures", gone).expect(201);
    let listed = caller.read("/api/stops")["stops"].to_string();
    assert!(!listed.contains("\"waste\""), "{listed}");
}
