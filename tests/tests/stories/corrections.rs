//! What was wrong is corrected, also long after: everything made of it is then as in a second kitchen in
//! which it had been right from the start.

use serde_json::{Value, json};
use stories::call::{chrono_day, fresh_id, moment};
use stories::day::{Deed, Receipt, StepOfDay, Told, bought, farm};
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_reading_handed_in_later_proves_the_cook_and_all_that_was_made_of_it
    a_wrong_reading_takes_the_proof_away
    a_log_handed_in_later_ends_a_cooling_that_had_failed
    a_reading_of_a_lot_shows_that_it_keeps
    an_allergen_joins_all_that_was_made_of_it
    what_a_pack_declares_is_believed_from_the_start
    a_makers_date_shortens_all_that_was_made_of_it
    a_printed_date_stays_where_it_is_the_earlier_one
    the_strength_of_a_curing_salt_is_held_against_the_limits_again
    both_animals_and_both_facts_lead_to_the_lots
    both_lots_of_a_supplier_lead_to_the_lot
    what_would_change_is_told_and_nothing_is_recorded
    what_cannot_be_corrected_is_refused_in_words
}

fn product(caller: &Caller, code: &str, more: Value) {
    let mut body = json!({ "code": code, "names": { "en": code }, "kind": "cooked", "species": "pig", "raw": false,
        "storage": "chilled", "for_sale": true, "price_minor_per_kg": 100,
        "keep": { "days": 5, "from": "made", "day_one_counts": true } });
    for (key, value) in more.as_object().expect("fields") {
        body[key] = value.clone();
    }
    caller.post("/api/products", &body).expect(201);
}

/// A kitchen with a pig, the ids of its receipt.
fn kitchen(engine: Engine) -> (House, Caller, String) {
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
fn happened(step: StepOfDay) -> StepOfDay {
    step.with("as_it_happened", true).note("as it happened")
}

/// What a lot is: its condition, allergens, species, date and the stops on it.
fn state(caller: &Caller, lot: &str) -> Value {
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
fn alike(corrected: (&Caller, &[String]), right: (&Caller, &[String])) {
    for (one, other) in corrected.1.iter().zip(right.1) {
        let (is, expected) = (state(corrected.0, one), state(right.0, other));
        assert_eq!(is, expected, "{one}");
    }
}

fn corrects(deed: Deed) -> Value {
    deed.why("the paper says so").done().body
}

const PROVEN: fn() -> Value = || json!({ "celsius": 75, "hold_minutes": 5 });

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
    let after: Vec<Value> = lots.iter().map(|lot| state(&caller, lot)).collect();
    assert_eq!(before, after);
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
    match slow {
        true => json!([at(-600, 60.0), at(-300, 40.0), at(-60, 4.0)]),
        false => json!([at(-600, 60.0), at(-540, 20.0), at(-480, 4.0)]),
    }
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
    paper["declares"] = json!({ "ready": true });
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
}

fn paste(caller: &Caller, id: &str, more: Value) -> Receipt {
    let mut paper = bought("PTS", "P-1");
    for (key, value) in more.as_object().expect("fields") {
        paper[key] = value.clone();
    }
    caller
        .receive("paste")
        .to("cooler")
        .grams(2_000)
        .bought(paper)
        .id(id)
        .at(moment(-300))
}

/// A paste, a stew with it, a salad of that.
fn with_paste(caller: &Caller, pig: &str, more: Value) -> (String, Vec<String>) {
    let id = fresh_id();
    let paste = paste(caller, &id, more).made();
    let cook = caller
        .step("cook")
        .of_grams(pig, 2_000)
        .of_grams(&paste, 500);
    let cook = happened(cook).with("readings", PROVEN()).at(moment(-200));
    let stew = cook.into("stew", 2_400).made();
    let mix = happened(
        caller
            .step("mix")
            .of_grams(&stew, 1_000)
            .of_grams(&paste, 100),
    );
    let salad = mix.at(moment(-100)).into("salad", 1_100).made();
    (id, vec![paste, stew, salad])
}

fn an_allergen_joins_all_that_was_made_of_it(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let (receipt, lots) = with_paste(&caller, &pig, json!({}));
    let declares = json!({ "declares": { "allergens": ["milk", "mustard"] } });
    let done = corrects(caller.correct(&receipt).with("bought", declares.clone()));
    assert_eq!(
        done["changes"][2]["allergens"]["now"],
        json!(["milk", "mustard"])
    );
    let (_other, right, its_pig) = kitchen(engine);
    let (_, its) = with_paste(&right, &its_pig, declares);
    alike((&caller, &lots), (&right, &its));
    assert_eq!(
        caller.lot(&lots[2])["allergens"],
        json!(["milk", "mustard"])
    );
    let none = json!({ "declares": { "allergens": [] } });
    corrects(caller.correct(&receipt).with("bought", none));
    assert_eq!(caller.lot(&lots[2])["allergens"], json!([]));
    caller.void(done["id"].as_str().unwrap()).done();
    assert_eq!(
        caller.lot(&lots[2])["allergens"],
        json!([]),
        "the last word stands"
    );
}

fn what_a_pack_declares_is_believed_from_the_start(engine: Engine) {
    let raw = json!({ "declares": { "ready": false } });
    let (_house, caller, pig) = kitchen(engine);
    let (receipt, lots) = with_paste(&caller, &pig, json!({}));
    assert_eq!(caller.verdict(&lots[2]), "sell");
    corrects(caller.correct(&receipt).with("bought", raw.clone()));
    let (_other, right, its_pig) = kitchen(engine);
    let (_, its) = with_paste(&right, &its_pig, raw);
    alike((&caller, &lots), (&right, &its));
    assert_eq!(
        caller.verdict(&lots[2]),
        "hold",
        "the paste was mixed in after the cook"
    );
}

fn a_makers_date_shortens_all_that_was_made_of_it(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let dated = |day: i64| json!({ "use_by": chrono_day(day) });
    let (receipt, lots) = with_paste(&caller, &pig, dated(50));
    let done = corrects(caller.correct(&receipt).with("bought", dated(2)));
    let (_other, right, its_pig) = kitchen(engine);
    let (_, its) = with_paste(&right, &its_pig, dated(2));
    alike((&caller, &lots), (&right, &its));
    assert_eq!(caller.lot(&lots[2])["use_by"], json!(chrono_day(2)));
    // And the other way round, where nothing was printed.
    caller.void(done["id"].as_str().unwrap()).done();
    let (_third, before, pig) = kitchen(engine);
    let (_, third) = with_paste(&before, &pig, dated(50));
    alike((&caller, &lots), (&before, &third));
    let opened = json!({ "declares": { "days_once_opened": 1, "use_by_is": "frozen" } });
    corrects(caller.correct(&receipt).with("bought", opened));
    let (_fourth, open, pig) = kitchen(engine);
    let both = json!({ "use_by": chrono_day(50), "declares": { "days_once_opened": 1, "use_by_is": "frozen" } });
    let (_, fourth) = with_paste(&open, &pig, both);
    alike((&caller, &lots), (&open, &fourth));
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

/// A belly in curing salt of a strength.
fn cured(caller: &Caller, pig: &str, percent: f64) -> (String, Vec<String>) {
    let id = fresh_id();
    let salt = json!({ "code": "curing-salt-x", "names": { "en": "Curing salt" }, "kind": "ingredient", "species": null,
        "raw": false, "storage": "ambient", "curing_salt": { "nitrite_percent": 6.25 },
        "keep": { "days": 700, "from": "received", "day_one_counts": true } });
    caller.post("/api/products", &salt).expect(201);
    product(
        caller,
        "cured-belly",
        json!({ "kind": "cured", "raw": true, "cure": { "class": "other", "method": "dry" } }),
    );
    let mut paper = bought("PTS", "C-1");
    paper["curing_salt"] = json!({ "nitrite_percent": percent });
    let salt = caller
        .receive("curing-salt-x")
        .to("cooler")
        .grams(1_000)
        .bought(paper)
        .id(&id);
    let salt = salt.at(moment(-300)).made();
    let cure = caller.step("cure").of_grams(pig, 4_000).of_grams(&salt, 10);
    let belly = happened(cure)
        .at(moment(-200))
        .into("cured-belly", 4_000)
        .made();
    let cut = happened(caller.step("cut").of_grams(&belly, 1_000)).at(moment(-100));
    let cut = cut.into("cured-belly", 1_000).made();
    (id, vec![salt, belly, cut])
}

fn the_strength_of_a_curing_salt_is_held_against_the_limits_again(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let (receipt, lots) = cured(&caller, &pig, 6.25);
    assert_eq!(state(&caller, &lots[1])["stops"], json!([]));
    let strong = json!({ "curing_salt": { "nitrite_percent": 40 } });
    corrects(caller.correct(&receipt).with("bought", strong));
    let (_other, right, its_pig) = kitchen(engine);
    let (_, its) = cured(&right, &its_pig, 40.0);
    alike((&caller, &lots), (&right, &its));
    assert_ne!(state(&caller, &lots[1])["stops"], json!([]));
    let ppm = |caller: &Caller, lot: &str| caller.lot(lot)["cure"]["nitrite_ppm"].clone();
    assert_eq!(ppm(&caller, &lots[1]), ppm(&right, &its[1]));
}

fn both_animals_and_both_facts_lead_to_the_lots(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let id = fresh_id();
    let animal = farm("BRC").killed(chrono_day(-2)).carcass("7");
    let pig = caller
        .receive("pig-half")
        .grams(10_000)
        .from(animal)
        .id(&id)
        .made();
    let trim = caller
        .step("cut")
        .of_grams(&pig, 6_000)
        .into("pork-trim", 6_000)
        .made();
    let old = caller.read("/api/animals?carcass=7")["animals"][0]["id"].clone();
    let wrong = json!({ "farm": "NTB", "killed_on": chrono_day(-1), "carcass": "8" });
    let done = corrects(caller.correct(&id).with("animal", wrong));
    assert_eq!(done["lots"][0]["code"], json!(pig), "codes stay");
    assert_eq!(caller.origins(&trim)["animals"][0]["farm"], "NTB");
    let now = caller.read("/api/animals?carcass=8")["animals"][0].clone();
    assert_eq!(now["lots"], json!([pig]));
    for query in [
        "carcass=7".to_owned(),
        "farm=BRC".into(),
        format!("killed_on={}", chrono_day(-2)),
    ] {
        let found = caller.read(&format!("/api/animals?{query}"))["animals"][0].clone();
        assert_eq!(
            (
                &found["id"],
                &found["once"][0]["lot"],
                &found["once"][0]["now"]
            ),
            (&old, &json!(pig), &now["id"])
        );
    }
    for query in ["farm=BRC", "farm=NTB"] {
        let lots = caller.read(&format!("/api/lots?{query}"))["lots"].clone();
        assert_eq!(lots[0]["code"], json!(pig), "{query}");
    }
    let (old, now) = (old.as_str().unwrap(), now["id"].as_str().unwrap());
    let forward = caller.read(&format!("/api/animals/{old}/descendants"));
    assert_eq!(
        (&forward["lots"], &forward["once"][0]["lot"]),
        (&json!([]), &json!(pig))
    );
    let forward = caller.read(&format!("/api/animals/{now}/descendants"));
    assert_eq!(forward["lots"].as_array().map(Vec::len), Some(2));
    for animal in [old, now] {
        let page = caller.get(&format!("/animals/{animal}")).expect(200);
        assert!(
            String::from_utf8_lossy(&page.bytes).contains(&pig),
            "{animal}"
        );
    }
    caller.void(done["id"].as_str().unwrap()).done();
    assert_eq!(caller.origins(&trim)["animals"][0]["farm"], "BRC");
    let none = caller.read("/api/animals?carcass=8")["animals"].clone();
    assert_eq!(none, json!([]), "a correction that was voided never was");
}

fn both_lots_of_a_supplier_lead_to_the_lot(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let (receipt, lots) = with_paste(&caller, &pig, json!({}));
    corrects(
        caller
            .correct(&receipt)
            .with("bought", json!({ "supplier_lot": "P-77" })),
    );
    for word in ["P-1", "p-77"] {
        let found = caller.read(&format!("/api/lots?q={word}"))["lots"].clone();
        assert_eq!(found[0]["code"], json!(lots[0]), "{word}");
    }
    let origin = caller.origins(&lots[2])["bought"].to_string();
    assert!(
        origin.contains("P-77") && !origin.contains("P-1"),
        "{origin}"
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
