//! Heat and cooling as a cook writes them down: on either scale, by whatever table was met, with a probe
//! that somebody has checked.

use serde_json::{Value, json};
use stories::call::moment;
use stories::day::{StepOfDay, Told, farm};
use stories::labels::set;
use stories::{Answer, Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_reading_keeps_its_unit_and_meets_a_row_in_it
    any_table_that_was_made_for_it_shows_that_it_was_cooked
    another_places_table_waits_for_an_approval
    a_pot_that_boiled_is_one_tap
    a_cook_that_met_no_table_at_all_is_asked_about_everywhere
    horse_is_let_go_by_its_test_alone
    what_was_cooked_has_to_be_cooled_in_time
    readings_too_far_apart_are_told_first
    a_probe_is_checked_and_a_proof_by_another_warns
}

pub(crate) fn product(caller: &Caller, code: &str, more: Value) {
    let mut body = json!({ "code": code, "names": { "en": code }, "kind": "cooked", "raw": false, "storage": "chilled", "for_sale": true,
        "price_minor_per_kg": 100, "keep": { "days": 5, "from": "made", "day_one_counts": true } });
    for (key, value) in more.as_object().expect("fields") {
        body[key] = value.clone();
    }
    caller.post("/api/products", &body).expect(201);
}

fn kitchen(engine: Engine) -> (House, Caller, String) {
    let house = House::furnished(engine);
    let caller = house.caller();
    product(&caller, "roast", json!({ "cooked_as": "roast" }));
    product(&caller, "patties", json!({ "cooked_as": "ground" }));
    product(&caller, "stock", json!({ "kind": "stock" }));
    let pig = caller.half_pig("0608-17", 20_000);
    (house, caller, pig)
}

fn cook(caller: &Caller, lot: &str, product: &str) -> StepOfDay {
    let step = caller.step("cook").of_grams(lot, 100);
    step.into(product, 100)
}

fn heard(answer: &Answer, key: &str) -> bool {
    let keys = answer.body["warning_keys"].as_array().unwrap();
    keys.iter().any(|of| of == key)
}

fn a_reading_keeps_its_unit_and_meets_a_row_in_it(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let at = |readings: Value| cook(&caller, &pig, "patties").with("readings", readings);
    // us-1.8: 155 °F for 17 s; 154.5 °F is 68.06 °C and still not that.
    let held = |degrees: f64| json!({ "fahrenheit": degrees, "hold_minutes": 0.3 });
    at(held(155.0)).done();
    let short = at(held(154.5)).refused(422, "readings.fahrenheit");
    assert!(short.contains("°F"), "{short}");
    at(json!({ "fahrenheit": 155, "celsius": 68.4 })).refused(422, "readings.fahrenheit");
    at(json!({ "fahrenheit": 1_550 })).refused(422, "readings.fahrenheit");
    // It is kept as it was read.
    let reading = json!({ "lot": pig, "fahrenheit": 38.5 });
    caller.deed("/api/readings", reading).expect(201);
    let readings = caller.lot(&pig)["readings"].clone();
    let last = readings.as_array().unwrap().last().unwrap();
    assert_eq!(
        (&last["quantity"], &last["value"]),
        (&json!("fahrenheit"), &json!(38.5)),
        "{last}"
    );
    let brine = json!({ "degrees": 40, "scale": "60F", "fahrenheit": 39 });
    let brine = json!({ "lot": pig, "salometer": brine });
    caller.deed("/api/readings", brine).expect(201);
    let page = caller.get(&format!("/lots/{pig}")).expect(200).bytes;
    let page = String::from_utf8(page).unwrap();
    assert!(page.contains("38.5"), "the page tells it as well");
}

fn any_table_that_was_made_for_it_shows_that_it_was_cooked(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let held = |degrees: f64, minutes: u32| {
        let readings = json!({ "celsius": degrees, "hold_minutes": minutes });
        cook(&caller, &pig, "roast").with("readings", readings)
    };
    // canada-eu-uk-6.12 prints 54.4 °C; us-1.8 has 130 °F, which is a little more.
    let met = held(54.4, 112).done();
    assert!(heard(&met, "cook-by-another"), "{}", met.body);
    let why = caller.why(&met.code(0));
    let rows: Vec<&Value> = why["rows"]
        .as_array()
        .unwrap()
        .iter()
        .map(|row| &row["id"])
        .collect();
    assert!(rows.contains(&&json!("canada-eu-uk-6.12")), "{rows:?}");
    let own = held(54.5, 112).done();
    assert!(!heard(&own, "cook-by-another"), "{}", own.body);
    // The five-log table only where it is named, and an approval is on file: us-1.8-roast binds, whoever names another.
    held(54.5, 90).refused(422, "readings.celsius");
    let five_log = || held(54.5, 90).with("heat_standard", "us-1.8-lethality-5");
    five_log().refused(422, "readings.celsius");
    let approval = json!([{ "for": "cooking", "number": "V-3", "until": null }]);
    set(&caller, &[("approvals", approval)]);
    five_log().done();
    held(54.5, 90)
        .with("heat_standard", "us-1.8-poultry")
        .refused(422, "heat_standard");
    held(54.5, 90)
        .with("heat_standard", "us-99")
        .refused(422, "heat_standard");
}

fn another_places_table_waits_for_an_approval(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    set(&caller, &[("profile", json!("uk"))]);
    // X-UK-23 asks for 45 min, us-1.8 for 12.
    let cooked = || cook(&caller, &pig, "roast").held(60.0, 27).done();
    let waits = cooked();
    assert!(heard(&waits, "cook-not-decided"), "{}", waits.body);
    assert_eq!(caller.verdict(&waits.code(0)), "hold");
    let approval = json!([{ "for": "cooking", "number": "V-3", "until": null }]);
    set(&caller, &[("approvals", approval)]);
    let freed = cooked();
    assert!(heard(&freed, "cook-by-another"), "{}", freed.body);
    assert_eq!(caller.lot(&freed.code(0))["condition"]["is"], "ready");
}

fn a_pot_that_boiled_is_one_tap(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    // Bones in as much water and more: what is lean and dry is no pot, whatever it is called.
    let pot = |product: &str| {
        let step = caller.step("cook").of_grams(&pig, 100);
        let water = json!([{ "what": "water", "grams": 300 }]);
        step.with("added", water).into(product, 400)
    };
    let boiled = |product: &str, minutes: u32| {
        let readings = json!({ "boiled_minutes": minutes });
        pot(product).with("readings", readings)
    };
    let stock = boiled("stock", 10).done();
    assert!(heard(&stock, "cook-boiled"), "{}", stock.body);
    let why = caller.why(&stock.code(0));
    assert!(
        why["because"]["heat"].to_string().contains("trade-3-boil"),
        "{why}"
    );
    assert!(heard(&boiled("stock", 5).done(), "cook-boiled-short"));
    assert!(heard(&boiled("roast", 60).done(), "cook-boiled-piece"));
    let log = json!([{ "at": moment(-5), "boiled_minutes": 20 }]);
    assert!(heard(&pot("stock").with("log", log).done(), "cook-boiled"));
    let empty = json!([{ "at": moment(-5) }]);
    pot("stock")
        .with("log", empty)
        .refused(422, "log[0].celsius");
}

fn what_was_cooked_has_to_be_cooled_in_time(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let log = |readings: &[(i64, i64)]| -> Value {
        let readings = readings.iter();
        readings
            .map(|(minutes, degrees)| json!({ "at": moment(-minutes), "fahrenheit": degrees }))
            .collect()
    };
    let done = cook(&caller, &pig, "roast").held(63.0, 10).done();
    assert!(heard(&done, "heat-deed-no-cooling"), "{}", done.body);
    let roast = done.code(0);
    let chill =
        |readings: &[(i64, i64)]| caller.step("chill").of(&roast).with("log", log(readings));
    // us-T4: from 135 to 70 °F within two hours, to 41 °F within six.
    let slow = [(500, 140), (490, 135), (300, 90), (200, 70), (60, 41)];
    let refused = chill(&slow).ask().refused(422, "log");
    assert_eq!(refused.body["may_be_told"], true);
    chill(&slow)
        .with("cooling_plan", "fridge")
        .refused(422, "cooling_plan");
    // The way for what was never hot is not for a roast.
    chill(&slow)
        .with("cooling_plan", "us-T5")
        .refused(422, "cooling_plan");
    let in_time = chill(&[(400, 140), (390, 135), (290, 70), (60, 41)]).done();
    assert!(!heard(&in_time, "heat-deed-no-cooling"), "{}", in_time.body);
    let told = chill(&slow)
        .with("as_it_happened", true)
        .note("The blast chiller was full");
    told.done();
    assert_eq!(caller.lot(&roast)["stops"][0]["stop"], "failed");
    let other = cook(&caller, &pig, "roast").held(63.0, 10).made();
    assert!(heard(
        &caller.step("chill").of(&other).done(),
        "heat-deed-no-cooling"
    ));
}

fn readings_too_far_apart_are_told_first(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let roast = cook(&caller, &pig, "roast").held(63.0, 10).made();
    let chill = |readings: &[(i64, f64)]| {
        let log: Value = readings
            .iter()
            .map(|(minutes, degrees)| json!({ "at": moment(-minutes), "fahrenheit": degrees }))
            .collect();
        caller.step("chill").of(&roast).with("log", log)
    };
    // us-T4: it was somewhere between 135 and 70 °F for two hours and a minute; or for less.
    let close = [
        (400, 140.0),
        (390, 135.0),
        (300, 75.0),
        (280, 70.0),
        (60, 41.0),
    ];
    chill(&close).done();
    let apart = [(400, 140.0), (380, 134.0), (279, 70.0), (60, 41.0)];
    let refused = chill(&apart).ask().refused(422, "log");
    assert_eq!(refused.body["type"], "/problems/limit");
    assert_eq!(refused.body["may_be_told"], true);
    let told = refused.body["detail"].as_str().unwrap();
    assert!(told.contains("too far apart"), "{told}");
    assert!(refused.body["rows"].to_string().contains("us-T4"));
    let told = chill(&apart).with("as_it_happened", true);
    let told = told.note("The probe lay in the drawer").done();
    assert_eq!(
        told.body["lots"][0]["stops"][0]["stop"], "failed",
        "{}",
        told.body
    );
    assert_eq!(caller.lot(&roast)["stops"][0]["stop"], "failed");
    caller.sell(&roast).refused(409, "lot");
    // One that still cools is no case of that.
    let other = cook(&caller, &pig, "roast").held(63.0, 10).made();
    let log =
        json!([{ "at": moment(-60), "fahrenheit": 140 }, { "at": moment(-10), "fahrenheit": 110 }]);
    let cooling = caller.step("chill").of(&other).with("log", log).done();
    assert!(heard(&cooling, "cool-still-cooling"), "{}", cooling.body);
}

fn a_probe_is_checked_and_a_proof_by_another_warns(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    for code in ["red", "blue"] {
        let probe = json!({ "code": code, "name": format!("The {code} one") });
        caller.post("/api/probes", &probe).expect(201);
        caller.post("/api/probes", &probe).expect(200);
    }
    assert_eq!(
        caller.read("/api/probes")["entries"]
            .as_array()
            .unwrap()
            .len(),
        2
    );
    let held = |probe: &str| {
        let readings = json!({ "celsius": 63, "hold_minutes": 10, "probe": probe });
        cook(&caller, &pig, "roast").with("readings", readings)
    };
    held("green").refused(422, "readings.probe");
    assert!(heard(&held("red").done(), "probe-unchecked"));
    let check = |body: Value| caller.deed("/api/probe-checks", body);
    check(json!({ "probe": "green", "bath": "ice", "celsius": 0 })).refused(422, "probe");
    check(json!({ "probe": "red", "bath": "oven", "celsius": 0 })).refused(422, "bath");
    check(json!({ "probe": "red", "bath": "ice" })).refused(422, "celsius");
    check(json!({ "probe": "red", "bath": "ice", "celsius": 0, "fahrenheit": 32 }))
        .refused(422, "fahrenheit");
    let good = check(json!({ "probe": "red", "bath": "ice", "fahrenheit": 33.5 })).expect(201);
    assert!(heard(&good, "probe-good"), "{}", good.body);
    let id = good.body["id"].as_str().unwrap();
    let read = caller.read(&format!("/api/steps/{id}"));
    assert_eq!(
        (&read["kind"], &read["asked"]["fahrenheit"]),
        (&json!("check-probe"), &json!(33.5))
    );
    let heard_of = |answer: &Answer| -> Vec<String> {
        let keys = answer.body["warning_keys"].as_array().unwrap().iter();
        let keys = keys.filter_map(|key| key.as_str());
        keys.filter(|key| key.starts_with("probe-"))
            .map(str::to_owned)
            .collect()
    };
    assert!(heard_of(&held("red").done()).is_empty());
    // The cook before the check was proven by a probe that nobody had looked at.
    let animal = farm("BRC").carcass("0608-55").side("left");
    let early = caller.receive("pig-half").grams(2_000).from(animal);
    let early = early.at(moment(-120)).made();
    let readings = json!({ "celsius": 63, "hold_minutes": 10, "probe": "red" });
    let before = cook(&caller, &early, "roast").with("readings", readings);
    let before = before.at(moment(-60)).done();
    assert_eq!(heard_of(&before), ["probe-unchecked"]);
    // It is off in boiling water: the ice does not mend that.
    let off = check(json!({ "probe": "red", "bath": "boiling", "celsius": 97 })).expect(201);
    assert!(heard(&off, "probe-failed"), "{}", off.body);
    let failed = held("red").done();
    assert_eq!(heard_of(&failed), ["probe-failed"]);
    assert!(
        caller.lot(&failed.code(0))["stops"]
            .as_array()
            .unwrap()
            .is_empty(),
        "it warns and never blocks"
    );
    caller.void(off.body["id"].as_str().unwrap()).done();
    assert!(heard_of(&held("red").done()).is_empty());
    // Every point of a log may have its own.
    let point = |minutes: i64, probe: &str| json!({ "at": moment(-minutes), "fahrenheit": 146, "probe": probe });
    let log = json!([point(30, "red"), point(20, "blue"), point(10, "blue")]);
    let logged = cook(&caller, &pig, "roast").with("log", log).done();
    assert_eq!(heard_of(&logged), ["probe-unchecked"]);
    let week = caller.deed(
        "/api/probe-checks",
        json!({ "probe": "blue", "bath": "ice", "celsius": 0.4,
        "at": moment(-9 * 24 * 60), "note": "From the book" }),
    );
    week.expect(201);
    assert_eq!(heard_of(&held("blue").done()), ["probe-overdue"]);
    let reading = json!({ "lot": pig, "celsius": 3.2, "probe": "blue" });
    assert_eq!(
        heard_of(&caller.deed("/api/readings", reading).expect(201)),
        ["probe-overdue"]
    );
}

fn a_cook_that_met_no_table_at_all_is_asked_about_everywhere(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let log = json!([{ "at": moment(-90), "celsius": 12 }, { "at": moment(-60), "celsius": 40 },
        { "at": moment(-5), "celsius": 48 }]);
    for place in ["eu", "uk", "ca", "us"] {
        set(&caller, &[("profile", json!(place))]);
        for product in ["roast", "stock"] {
            let short = cook(&caller, &pig, product).with("log", log.clone());
            let refused = short.ask().refused(422, "log");
            assert_eq!(refused.body["type"], "/problems/limit", "{place}");
            assert_eq!(refused.body["may_be_told"], true);
            assert!(
                refused.body["rows"]
                    .as_array()
                    .is_some_and(|rows| !rows.is_empty())
            );
            let told = refused.body["detail"].as_str().unwrap();
            assert!(told.contains("48"), "{place}: {told}");
        }
        let told = cook(&caller, &pig, "roast").with("log", log.clone());
        let told = told
            .with("as_it_happened", true)
            .note("The oven went out")
            .done();
        let lot = told.code(0);
        let stops = caller.lot(&lot)["stops"].to_string();
        assert!(stops.contains("\"failed\""), "{place}: {stops}");
        caller.sell(&lot).refused(409, "lot");
        let scan = caller
            .get(&format!("/api/scan?code={lot}"))
            .expect(200)
            .body;
        assert_ne!(scan["verdict"], "sell", "{place}");
        // Cooked on, it is ready after all.
        let readings = json!({ "celsius": 80, "hold_minutes": 3 });
        let on = caller.step("cook").of(&lot).into("roast", 100);
        let on = on.with("readings", readings).done();
        let stops = caller.lot(&on.code(0))["stops"].clone();
        assert_eq!(stops, json!([]), "{place}");
    }
}

fn horse_is_let_go_by_its_test_alone(engine: Engine) {
    let (_house, caller, _) = kitchen(engine);
    let cut = json!({ "kind": "cut", "raw": true, "species": "horse" });
    product(&caller, "horse-cut", cut);
    let animal =
        json!({ "farm": "BRC", "species": "horse", "killed_on": "2026-11-02", "carcass": "H-1" });
    let body =
        json!({ "product": "horse-cut", "grams": 4_000, "place": "cooler", "animal": animal });
    let horse = caller.deed("/api/receipts", body).expect(201).code(0);
    // confirmed-X-CA-19 and confirmed-X-EU-37: no heat takes the place of the test.
    for (place, row) in [("ca", "confirmed-X-CA-19"), ("eu", "confirmed-X-EU-37")] {
        set(&caller, &[("profile", json!(place))]);
        let cooked = cook(&caller, &horse, "roast").held(75.0, 5).done();
        assert!(heard(&cooked, "trichinae-deed-untested"), "{}", cooked.body);
        let lot = cooked.code(0);
        let stop = caller.lot(&lot)["stops"][0].clone();
        assert_eq!(stop["stop"], "not-proven", "{stop}");
        assert!(stop["rows"].to_string().contains(row), "{stop}");
        caller.sell(&lot).refused(409, "lot");
        let go = json!({ "lot": lot, "what": "released", "why": "Tested clean" });
        caller
            .deed("/api/dispositions", go.clone())
            .refused(422, Some("trichinae"));
        let mut go = go;
        go["trichinae"] = json!({ "certificate": { "way": "carcass-tested", "paper": "T-118" } });
        caller.deed("/api/dispositions", go).expect(201);
        assert_eq!(caller.lot(&lot)["stops"], json!([]));
    }
    // There nobody has read the row: it is told, and stops nobody.
    set(&caller, &[("profile", json!("uk"))]);
    let told = cook(&caller, &horse, "roast").held(75.0, 5).done();
    assert!(
        heard(&told, "trichinae-deed-untested-unread"),
        "{}",
        told.body
    );
    assert_eq!(caller.lot(&told.code(0))["stops"], json!([]));
}
