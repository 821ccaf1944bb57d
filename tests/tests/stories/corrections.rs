//! What was wrong is corrected, also long after: everything made of it is then as in a second kitchen in
//! which it had been right from the start.

use serde_json::{Value, json};
use stories::call::{chrono_day, fresh_id, moment};
use stories::day::{Deed, StepOfDay, Told, bought, farm};
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_reading_handed_in_later_proves_the_cook_and_all_that_was_made_of_it
    a_wrong_reading_takes_the_proof_away
    a_log_handed_in_later_ends_a_cooling_that_had_failed
    a_reading_of_a_lot_shows_that_it_keeps
    a_printed_date_stays_where_it_is_the_earlier_one
    what_would_change_is_told_and_nothing_is_recorded
    what_cannot_be_corrected_is_refused_in_words
}

pub(crate) fn product(caller: &Caller, code: &str, more: Value) {
    let mut body = json!({ "code": code, "names": { "en": code }, "kind": "cooked", "species": "pig", "raw": false,
        "storage": "chilled", "for_sale": true, "price_minor_per_kg": 100,
        "keep": { "days": 5, "from": "made", "day_one_counts": true } });
    for (key, value) in more.as_object().expect("fields") {
        body[key] = value.clone();
    }
    caller.post("/api/products", &body).expect(201);
}

/// A kitchen with a pig, the ids of its receipt.
pub(crate) fn kitchen(engine: Engine) -> (House, Caller, String) {
    let house = House::furnished(engine);
    let caller = house.caller();
    product(&caller, "stew", json!({}));
    product(&caller, "salad", json!({}));
    product(
        &caller,
        "paste",
        json!({ "species": null, "kind": "ingredient", "keep": { "days": 60, "from": "received", "day_one_counts": true } }),
    );
    let animal = farm("BRC").carcass("0608-17").side("left");
    let pig = caller.receive("pig-half").grams(20_000);
    let pig = pig.from(animal.killed(chrono_day(-3)));
    let pig = pig.at(moment(-2 * 24 * 60)).made();
    (house, caller, pig)
}

/// Whatever comes of it: the two kitchens do the very same.
pub(crate) fn happened(step: StepOfDay) -> StepOfDay {
    step.with("as_it_happened", true).note("as it happened")
}

/// What a lot is: its condition, allergens, species, date and the stops on it.
pub(crate) fn state(caller: &Caller, lot: &str) -> Value {
    let of = caller.lot(lot);
    let stops = of["stops"].as_array().expect("stops").iter();
    let stops: Vec<Value> = stops
        .map(|stop| json!([stop["stop"], stop["says"], stop["rows"]]))
        .collect();
    json!({ "is": of["condition"]["is"], "by": of["condition"]["by"], "allergens": of["allergens"],
        "species": of["species"], "use_by": of["use_by"], "packs": of["packs"], "stops": stops })
}

/// Holds the lots of a kitchen in which something was corrected against one in which it was right.
#[track_caller]
pub(crate) fn alike(corrected: (&Caller, &[String]), right: (&Caller, &[String])) {
    for (one, other) in corrected.1.iter().zip(right.1) {
        let (is, expected) = (state(corrected.0, one), state(right.0, other));
        assert_eq!(is, expected, "{one}");
    }
}

pub(crate) fn corrects(deed: Deed) -> Value {
    deed.why("the paper says so").done().body
}

pub(crate) const PROVEN: fn() -> Value = || json!({ "celsius": 75, "hold_minutes": 5 });

/// A stew, a salad of it, two tubs of that; the cook's id and the lots.
fn stew(caller: &Caller, pig: &str, readings: Option<Value>) -> (String, Vec<String>) {
    let id = fresh_id();
    let mut cook = happened(caller.step("cook").of_grams(pig, 4_000)).id(&id);
    if let Some(readings) = readings {
        cook = cook.with("readings", readings);
    }
    let stew = cook.at(moment(-90)).into("stew", 3_900).made();
    let salad = happened(caller.step("mix").of_grams(&stew, 2_000)).at(moment(-60));
    let salad = salad.into("salad", 2_000).made();
    let tubs = happened(caller.step("pack").of_grams(&salad, 1_000)).at(moment(-30));
    let tubs = tubs.into_packs("salad", 1_000, 2).made();
    (id, vec![stew, salad, tubs])
}

fn a_reading_handed_in_later_proves_the_cook_and_all_that_was_made_of_it(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let (cook, lots) = stew(&caller, &pig, None);
    let before: Vec<Value> = lots.iter().map(|lot| state(&caller, lot)).collect();
    assert_eq!(caller.verdict(&lots[2]), "hold");
    let done = corrects(caller.correct(&cook).with("readings", PROVEN()));
    assert_eq!(done["changes"].as_array().map(Vec::len), Some(3), "{done}");
    assert_eq!(done["changes"][0]["condition"]["now"], "ready");
    let (_other, right, its_pig) = kitchen(engine);
    let (_, its) = stew(&right, &its_pig, Some(PROVEN()));
    alike((&caller, &lots), (&right, &its));
    assert_eq!(caller.verdict(&lots[2]), "sell");
    let told = caller.lot(&lots[2])["corrections"].to_string();
    assert!(
        told.contains("Corrected by") && told.contains("the paper says so"),
        "{told}"
    );
    assert!(caller.why(&lots[2])["because"]["correction"].is_array());
    let page = caller.get(&format!("/lots/{}", lots[2])).expect(200);
    assert!(String::from_utf8_lossy(&page.bytes).contains("Corrected by"));
    let read = caller.deed_on_record(&cook);
    assert_eq!(read["corrections"], json!([done["id"]]));
    // What is made of it afterwards is made of what is proven; a void makes all of it what it was.
    let later = caller
        .step("pack")
        .of_grams(&lots[1], 500)
        .into("salad", 500)
        .made();
    assert_eq!(caller.verdict(&later), "sell");
    caller
        .void(done["id"].as_str().unwrap())
        .why("of another cook")
        .done();
    for (lot, before) in lots.iter().zip(before) {
        let after = state(&caller, lot);
        for field in ["is", "by", "use_by", "stops"] {
            assert_eq!(after[field], before[field], "{lot} {field}");
        }
    }
    assert_eq!(caller.verdict(&later), "hold", "made of it in between");
}

fn a_wrong_reading_takes_the_proof_away(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let (cook, lots) = stew(&caller, &pig, Some(PROVEN()));
    assert_eq!(caller.verdict(&lots[2]), "sell");
    caller.sell(&lots[2]).pack(1).done();
    let cold = json!({ "celsius": 48, "hold_minutes": 5 });
    let done = corrects(caller.correct(&cook).with("readings", cold.clone()));
    let (_other, right, its_pig) = kitchen(engine);
    let (_, its) = stew(&right, &its_pig, Some(cold));
    let as_sold = right.sell(&its[2]).pack(1).with("as_it_happened", true);
    as_sold.note("as it happened").done();
    alike((&caller, &lots), (&right, &its));
    assert_eq!(caller.verdict(&format!("{}/2", lots[2])), "hold");
    assert!(
        done["changes"][0]["stops"]
            .as_array()
            .is_some_and(|of| !of.is_empty()),
        "{done}"
    );
    // A second correction takes the first one's word back.
    corrects(
        caller
            .correct(&cook)
            .with("readings", json!({ "celsius": 75 })),
    );
    let (_third, again, pig) = kitchen(engine);
    let (_, third) = stew(&again, &pig, Some(PROVEN()));
    again.sell(&third[2]).pack(1).done();
    alike((&caller, &lots), (&again, &third));
}

fn cooling(slow: bool) -> Value {
    let at = |minutes: i64, celsius: f64| json!({ "at": moment(minutes), "celsius": celsius });
    let every = if slow { 60 } else { 15 };
    let points = (0..=9).map(|nth| at(-600 + nth * every, 62.0 - 6.5 * nth as f64));
    Value::Array(points.collect())
}

fn chilled(caller: &Caller, pig: &str, slow: bool) -> (String, Vec<String>) {
    let id = fresh_id();
    let cook = caller
        .step("cook")
        .of_grams(pig, 4_000)
        .with("readings", PROVEN());
    let stew = happened(cook).at(moment(-610)).into("stew", 3_900).made();
    let chill = happened(caller.step("chill").of(&stew))
        .id(&id)
        .with("log", cooling(slow));
    chill.at(moment(-40)).place("cooler").done();
    let salad = happened(caller.step("mix").of_grams(&stew, 1_000)).at(moment(-20));
    let salad = salad.into("salad", 1_000).made();
    (id, vec![stew, salad])
}

fn a_log_handed_in_later_ends_a_cooling_that_had_failed(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let (chill, lots) = chilled(&caller, &pig, true);
    assert_eq!(caller.verdict(&lots[0]), "hold");
    assert_eq!(caller.verdict(&lots[1]), "hold");
    corrects(caller.correct(&chill).with("log", cooling(false)));
    let (_other, right, its_pig) = kitchen(engine);
    let (_, its) = chilled(&right, &its_pig, false);
    alike((&caller, &lots), (&right, &its));
    assert_eq!(caller.verdict(&lots[1]), "sell");
}

/// A bought ham, read, cut.
fn ham(caller: &Caller, water_activity: f64) -> (String, Vec<String>) {
    let id = fresh_id();
    let paper = bought("PTS", "H-1");
    let mut paper = paper;
    paper["declares"] = json!({ "allergens": [], "ready": true });
    paper["use_by"] = json!(chrono_day(40));
    let ham = caller
        .receive("stew")
        .to("cooler")
        .grams(3_000)
        .bought(paper);
    let ham = ham.at(moment(-300)).made();
    let read = caller.measure(&ham).id(&id).at(moment(-200));
    read.with("water_activity", water_activity)
        .with("ph", 5.6)
        .done();
    let cut = caller.step("cut").of_grams(&ham, 1_000).at(moment(-100));
    let cut = cut.into("salad", 1_000).made();
    (id, vec![ham, cut])
}

fn a_reading_of_a_lot_shows_that_it_keeps(engine: Engine) {
    let (_house, caller, _) = kitchen(engine);
    let (reading, lots) = ham(&caller, 0.95);
    corrects(
        caller
            .correct(&reading)
            .with("readings", json!({ "water_activity": 0.83 })),
    );
    let (_other, right, _) = kitchen(engine);
    let (_, its) = ham(&right, 0.83);
    alike((&caller, &lots), (&right, &its));
    let readings = caller.lot(&lots[0])["readings"].to_string();
    assert!(
        readings.contains("0.83") && !readings.contains("0.95"),
        "{readings}"
    );
    let (_third, other, _) = kitchen(engine);
    let (read, dry) = ham(&other, 0.83);
    corrects(
        other
            .correct(&read)
            .with("readings", json!({ "water_activity": 0.95 })),
    );
    let (_fourth, wet, _) = kitchen(engine);
    let (_, fourth) = ham(&wet, 0.95);
    alike((&other, &dry), (&wet, &fourth));
    // A reading that was corrected is not voided under its correction.
    let refused = other.void(&read).refused(409, None);
    assert!(!refused.is_empty());
    // One that was not takes what it showed with it, also from what was made of it.
    let (_fifth, voided, _) = kitchen(engine);
    let (read, lots) = ham(&voided, 0.83);
    assert!(voided.lot(&lots[0])["condition"]["stable_by"].is_string());
    voided.void(&read).done();
    for lot in &lots {
        assert!(voided.lot(lot)["condition"]["stable_by"].is_null(), "{lot}");
    }
}

fn a_printed_date_stays_where_it_is_the_earlier_one(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let (cook, lots) = stew(&caller, &pig, None);
    let before = caller.lot(&lots[0])["use_by"].clone();
    corrects(caller.correct(&cook).with("readings", PROVEN()));
    let after = caller.lot(&lots[0])["use_by"].clone();
    assert!(
        after.as_str() >= before.as_str(),
        "{before} {after}: nothing was printed"
    );
}

fn what_would_change_is_told_and_nothing_is_recorded(engine: Engine) {
    let (house, caller, pig) = kitchen(engine);
    let (cook, lots) = stew(&caller, &pig, None);
    let digest = house.check();
    let id = fresh_id();
    let ask = caller.correct(&cook).with("readings", PROVEN()).id(&id);
    let told = ask.clone().with("try", true).ask().expect(200).body;
    assert_eq!(
        (&told["tried"], told["changes"].as_array().map(Vec::len)),
        (&json!(true), Some(3))
    );
    assert_eq!(house.check(), digest);
    assert_eq!(caller.verdict(&lots[2]), "hold");
    let done = ask.done().body;
    assert_eq!(done["changes"], told["changes"]);
    assert_eq!(caller.verdict(&lots[2]), "sell");
}

fn what_cannot_be_corrected_is_refused_in_words(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let (cook, lots) = stew(&caller, &pig, Some(PROVEN()));
    let of = |field: &str, value: Value| caller.correct(&cook).with(field, value);
    of("animal", json!({ "farm": "NTB" })).refused(409, "step");
    of("readings", PROVEN()).refused(422, "readings");
    of("readings", json!({ "celsius": 900 })).refused(422, "readings.celsius");
    of("heat_standard", json!("no-such-row")).refused(422, "heat_standard");
    of("note", json!("nothing named")).refused(422, "animal");
    let sold = fresh_id();
    caller.sell(&lots[2]).pack(1).id(&sold).done();
    caller
        .correct(&sold)
        .with("readings", PROVEN())
        .refused(409, "step");
    caller.void(&sold).done();
    caller
        .correct(&sold)
        .with("readings", PROVEN())
        .refused(409, "step");
}
