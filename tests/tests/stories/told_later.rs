//! What is told later than it happened reaches what was made before it was told: a cooling that was too slow, a
//! place that failed in the night, a pack that had been open or thawed for days.

use serde_json::{Value, json};
use stories::call::{chrono_day, moment};
use stories::day::{Told, bought, farm};
use stories::labels::set;
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_slow_cooling_told_late_reaches_what_was_sliced_since
    a_log_that_shows_no_cooling_is_asked_about
    a_place_that_failed_reaches_what_was_made_since
    a_place_that_failed_reaches_what_is_said_later_to_have_stood_there
    readings_of_another_time_show_nothing
    a_release_that_is_voided_stops_what_was_made_since
    an_opening_told_late_shortens_what_was_made_since
    a_thaw_told_late_shortens_what_was_made_since
}

fn product(caller: &Caller, code: &str, more: Value) {
    let mut body = json!({ "code": code, "names": { "en": code, "fr": code }, "kind": "cooked", "species": "pig",
        "raw": false, "storage": "chilled", "for_sale": true, "price_minor_per_kg": 100,
        "keep": { "days": 7, "from": "made", "day_one_counts": true } });
    for (key, value) in more.as_object().expect("fields") {
        body[key] = value.clone();
    }
    caller.post("/api/products", &body).expect(201);
}

fn kitchen(engine: Engine, place: &str) -> (House, Caller) {
    let house = House::furnished(engine);
    let caller = house.caller();
    set(&caller, &[("profile", json!(place))]);
    product(&caller, "stew", json!({}));
    product(
        &caller,
        "slices",
        json!({ "keep": { "days": 7, "from": "packed", "day_one_counts": true } }),
    );
    (house, caller)
}

/// A stew that is proven, so many minutes ago.
fn stew(caller: &Caller, minutes: i64) -> String {
    let animal = farm("BRC").carcass("0608-17").side("left");
    let pig = caller.receive("pig-half").grams(20_000);
    let pig = pig.from(animal.killed(chrono_day(-9)));
    let pig = pig.at(moment(minutes - 600)).note("entered late").made();
    let cook = caller.step("cook").of_grams(&pig, 4_000).place("stove");
    let cook = cook.with("readings", json!({ "celsius": 80, "hold_minutes": 20 }));
    let cook = cook.at(moment(minutes)).note("entered late");
    cook.into("stew", 3_900).which("place", "cooler").made()
}

fn sliced(caller: &Caller, of: &str, minutes: i64) -> String {
    let step = caller.step("portion").of_grams(of, 500);
    step.at(moment(minutes)).into("slices", 500).made()
}

fn stops(caller: &Caller, lot: &str) -> Vec<String> {
    let stops = caller.lot(lot)["stops"].clone();
    let of = |stop: &Value| stop["stop"].as_str().unwrap().to_owned();
    stops.as_array().unwrap().iter().map(of).collect()
}

fn last_day(caller: &Caller, lot: &str) -> String {
    caller.lot(lot)["use_by"]
        .as_str()
        .unwrap_or("none")
        .to_owned()
}

fn days_later(day: &str, days: i64) -> String {
    let day: chrono::NaiveDate = day.parse().unwrap();
    (day + chrono::TimeDelta::days(days)).to_string()
}

/// A cooling of six hours that began so many minutes ago, down to 41 °F, of which the first part took too long.
fn slow(caller: &Caller, lot: &str, minutes: i64) -> Value {
    let degrees = [(0, 135), (130, 90), (360, 41)];
    let log =
        degrees.map(|(after, read)| json!({ "at": moment(minutes + after), "fahrenheit": read }));
    let chill = caller.step("chill").of(lot).at(moment(minutes + 360));
    let chill = chill.with("log", json!(log)).with("as_it_happened", true);
    chill.note("The fan stood still").done().body
}

fn a_slow_cooling_told_late_reaches_what_was_sliced_since(engine: Engine) {
    let (house, caller) = kitchen(engine, "us");
    let stew = stew(&caller, -600);
    // Out of the pot, before anybody could say that it cooled too slowly.
    let early = sliced(&caller, &stew, -500);
    let late = sliced(&caller, &stew, -120);
    let packed = caller.step("pack").of_grams(&late, 200);
    let packed = packed.at(moment(-60)).into("slices", 200).made();
    caller.sell(&late).with("grams", 100).at(moment(-30)).done();
    let told = slow(&caller, &stew, -600);
    let keys = told["warning_keys"].to_string();
    assert!(keys.contains("correct-deed-left-since"), "{told}");
    assert_eq!(told["changes"].as_array().map(Vec::len), Some(2), "{told}");
    for lot in [&stew, &late, &packed] {
        assert_eq!(stops(&caller, lot), ["failed"], "{lot}");
        caller.sell(lot).with("grams", 10).refused(409, "lot");
    }
    assert!(stops(&caller, &early).is_empty());
    caller.sell(&early).with("grams", 10).done();
    let why = caller.why(&late)["because"].to_string();
    assert!(why.contains("told it later"), "{why}");
    house.check();
    // One of the line is let go with the first; the void of what was told takes all of it back.
    caller.void(told["id"].as_str().unwrap()).done();
    for lot in [&stew, &late, &packed] {
        assert!(stops(&caller, lot).is_empty(), "{lot}");
    }
    house.check();
    let again = slow(&caller, &stew, -600);
    assert_eq!(stops(&caller, &packed), ["failed"]);
    let body = json!({ "lot": stew, "what": "released", "why": "The log was of another pot" });
    caller.deed("/api/dispositions", body).expect(201);
    assert!(stops(&caller, &packed).is_empty(), "{again}");
}

fn a_log_that_shows_no_cooling_is_asked_about(engine: Engine) {
    for place in ["eu", "uk"] {
        let (_house, caller) = kitchen(engine, place);
        let stew = stew(&caller, -900);
        let chill = |readings: [(i64, i64); 3]| {
            let step = caller.step("chill").of(&stew);
            let at = |after: i64| moment(after - 890);
            let log = readings.map(|(after, read)| json!({ "at": at(after), "celsius": read }));
            step.at(at(readings[2].0)).with("log", json!(log))
        };
        // Neither has a figure of its own (trade-3-cooling), and between these readings any plan may have been broken.
        chill([(0, 80), (360, 40), (720, 4)]).refused(422, "log");
        assert!(stops(&caller, &stew).is_empty());
        chill([(0, 80), (110, 20), (300, 4)]).done();
    }
}

fn a_place_that_failed_reaches_what_was_made_since(engine: Engine) {
    for place in ["us", "ca", "eu", "uk"] {
        let (house, caller) = kitchen(engine, place);
        let stew = stew(&caller, -2_000);
        let early = sliced(&caller, &stew, -1_500);
        let late = sliced(&caller, &stew, -300);
        let body = json!({ "place": "cooler", "from": moment(-1_400), "until": moment(-1_100) });
        let told = caller.deed("/api/place-failures", body).expect(201).body;
        assert_eq!(stops(&caller, &stew), ["failed"], "{place} {told}");
        assert_eq!(stops(&caller, &late), ["failed"], "{place} {told}");
        assert!(stops(&caller, &early).is_empty(), "{place}");
        // Above the limit for a little more than four hours of ten, by readings.
        let other = stew_elsewhere(&caller, -2_000);
        let read =
            |minutes: i64, celsius: i64| json!({ "at": moment(minutes), "celsius": celsius });
        let readings = [
            (-1_400, 4),
            (-1_350, 9),
            (-1_090, 9),
            (-1_070, 4),
            (-800, 4),
        ];
        let readings = readings.map(|(minutes, celsius)| read(minutes, celsius));
        let body = json!({ "place": "rail", "from": moment(-1_400), "until": moment(-800), "readings": readings });
        caller.deed("/api/place-failures", body).expect(201);
        assert_eq!(stops(&caller, &other), ["failed"], "{place}");
        house.check();
    }
}

fn stew_elsewhere(caller: &Caller, minutes: i64) -> String {
    let lot = stew_again(caller, minutes);
    caller.carry(&lot, "rail").at(moment(minutes + 1)).done();
    lot
}

fn stew_again(caller: &Caller, minutes: i64) -> String {
    let animal = farm("BRC").carcass("0609-3").side("left");
    let pig = caller.receive("pig-half").grams(20_000);
    let pig = pig.from(animal.killed(chrono_day(-9)));
    let pig = pig.at(moment(minutes - 600)).made();
    let cook = caller.step("cook").of_grams(&pig, 4_000).place("stove");
    let cook = cook.with("readings", json!({ "celsius": 80, "hold_minutes": 20 }));
    cook.at(moment(minutes)).into("stew", 3_900).made()
}

fn a_place_that_failed_reaches_what_is_said_later_to_have_stood_there(engine: Engine) {
    let (_house, caller) = kitchen(engine, "us");
    let stew = stew(&caller, -2_000);
    let body = json!({ "place": "case", "from": moment(-1_000), "until": moment(-400), "note": "The case was off" });
    caller.deed("/api/place-failures", body).expect(201);
    // Two portions, one put there before the case failed and one after it was mended, both entered now.
    let portion = |minutes: i64| {
        let step = caller.step("portion").of_grams(&stew, 500).place("case");
        step.at(moment(minutes))
            .note("entered late")
            .into("slices", 500)
            .which("place", "case")
            .made()
    };
    let (stood, not) = (portion(-1_200), portion(-300));
    assert_eq!(stops(&caller, &stood), ["failed"]);
    assert!(stops(&caller, &not).is_empty());
    let says = caller.lot(&stood)["stops"][0]["says"].to_string();
    assert!(
        says.contains("Nothing makes that good again") && !says.contains("Cook it on"),
        "{says}"
    );
    // The rest is moved there, and that is entered late as well.
    let body = json!({ "lot": stew, "to": "case", "at": moment(-1_100), "note": "entered late" });
    let moved = caller.deed("/api/moves", body).expect(201).body;
    assert_eq!(stops(&caller, &stew), ["failed"], "{moved}");
    let keys = moved["warning_keys"].to_string();
    assert!(keys.contains("failure-broke"), "{moved}");
    // Until somebody has read a place that failed, it is not told to be cold again.
    let failed = json!({ "place": "freezer", "from": moment(-300), "note": "Dripping" });
    caller.deed("/api/place-failures", failed).expect(201);
    let put = |lot: &str| {
        let body = json!({ "lot": lot, "to": "freezer" });
        caller.deed("/api/moves", body).expect(201).body["warning_keys"].to_string()
    };
    assert!(put(&not).contains("failure-still-open"));
    let read = json!({ "place": "freezer", "celsius": -19 });
    caller.deed("/api/readings", read).expect(201);
    assert!(!put(&not).contains("failure-still-open"));
}

/// A log of another day, of tomorrow or of the time after the cook is not the log of that cook.
fn readings_of_another_time_show_nothing(engine: Engine) {
    let (_house, caller) = kitchen(engine, "us");
    let animal = farm("BRC").carcass("0608-17").side("left");
    let pig = caller.receive("pig-half").grams(20_000);
    let pig = pig
        .from(animal.killed(chrono_day(-9)))
        .at(moment(-9_000))
        .note("entered late")
        .made();
    let cook = |readings: [i64; 2]| {
        let log = readings.map(|at| json!({ "at": moment(at), "celsius": 80 }));
        let step = caller
            .step("cook")
            .of_grams(&pig, 1_000)
            .place("stove")
            .at(moment(-600));
        step.with("log", json!(log)).into("stew", 900)
    };
    cook([-630, -600]).done();
    cook([-570, -540]).refused(422, "log[0].at");
    cook([-630, 1_440]).refused(422, "log[1].at");
    cook([-5_000, -4_980]).refused(422, "log[1].at");
    cook([-640, -610])
        .with("began_at", json!(moment(-620)))
        .refused(422, "log[0].at");
}

fn a_release_that_is_voided_stops_what_was_made_since(engine: Engine) {
    let (house, caller) = kitchen(engine, "us");
    let stew = stew(&caller, -600);
    slow(&caller, &stew, -600);
    let body = json!({ "lot": stew, "what": "released", "why": "Read again", "at": moment(-100) });
    let released = caller.deed("/api/dispositions", body).expect(201).body;
    let slices = sliced(&caller, &stew, -60);
    assert!(stops(&caller, &slices).is_empty());
    caller.void(released["id"].as_str().unwrap()).done();
    assert_eq!(stops(&caller, &stew), ["failed"]);
    assert_eq!(stops(&caller, &slices), ["failed"]);
    house.check();
}

/// A bought ham, so many minutes ago: seven days once it is opened.
fn ham(caller: &Caller, minutes: i64) -> String {
    let mut of = bought("PTS", "26160-210");
    of["use_by"] = json!(chrono_day(12));
    of["declares"] = json!({ "allergens": [], "ready": true });
    let ham = caller
        .receive("whole-ham")
        .to("cooler")
        .grams(2_000)
        .bought(of);
    ham.at(moment(minutes)).made()
}

fn an_opening_told_late_shortens_what_was_made_since(engine: Engine) {
    let (house, caller) = kitchen(engine, "us");
    product(&caller, "whole-ham", json!({ "keep": null }));
    let ham = ham(&caller, -7_200);
    let today = sliced(&caller, &ham, -30);
    let salad = caller.step("mix").of_grams(&today, 200).into("slices", 200);
    let salad = salad.at(moment(-20)).made();
    let before = last_day(&caller, &today);
    // It had been opened four days before.
    let first = sliced(&caller, &ham, -4 * 24 * 60 - 30);
    let opened = days_later(&before, -4);
    for lot in [&ham, &first, &today, &salad] {
        assert_eq!(last_day(&caller, lot), opened, "{lot}");
    }
    house.check();
}

fn a_thaw_told_late_shortens_what_was_made_since(engine: Engine) {
    let (house, caller) = kitchen(engine, "us");
    let day = 24 * 60;
    let stew = stew(&caller, -6 * day);
    let moved = |state: &str, to: &str, minutes: i64| {
        let carry = caller.carry(&stew, to).with("state", state);
        carry.at(moment(minutes)).done();
    };
    moved("frozen", "freezer", -5 * day);
    moved("chilled", "cooler", -300);
    let slices = sliced(&caller, &stew, -120);
    let before = last_day(&caller, &slices);
    assert_eq!(last_day(&caller, &stew), before);
    moved("chilled", "cooler", -4 * day);
    moved("frozen", "freezer", -2 * day);
    // Three more of its days are used up: both of the thaw and the freeze count.
    let after = last_day(&caller, &stew);
    assert!(after < before, "{after} {before}");
    assert_eq!(last_day(&caller, &slices), after);
    house.check();
}
