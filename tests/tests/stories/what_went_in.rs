//! What the record knows of what goes into a pot or a pack: when it came in, of which animal it is, whether it is
//! fish, and whether water came to it after it was measured.

use crate::heat::product;
use serde_json::{Value, json};
use stories::call::moment;
use stories::day::{StepOfDay, Told, bought, farm};
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    heat_that_was_over_before_the_meat_came_in_proves_nothing
    nothing_is_held_for_longer_than_it_was_there
    raw_meat_of_an_animal_that_nobody_knows_is_judged_as_poultry
    raw_fish_goes_into_a_pack_without_air_only_frozen
    a_reading_says_nothing_of_the_food_after_water_came_to_it
}

fn kitchen(engine: Engine) -> (House, Caller) {
    let house = House::furnished(engine);
    let caller = house.caller();
    product(&caller, "stew", json!({}));
    (house, caller)
}

/// A half pig that came in so many minutes ago.
fn pig(caller: &Caller, carcass: &str, minutes: i64) -> String {
    let pig = caller.receive("pig-half").grams(5_000);
    let pig = pig.from(farm("BRC").carcass(carcass).side("left"));
    pig.at(moment(-minutes)).made()
}

fn bought_raw(caller: &Caller, code: &str, more: Value) -> String {
    let mut body = json!({ "kind": "cut", "raw": true });
    for (key, value) in more.as_object().expect("fields") {
        body[key] = value.clone();
    }
    product(caller, code, body);
    let came = caller.receive(code).grams(2_000);
    came.bought(bought("PTS", code)).at(moment(-400)).made()
}

/// With plain spaces, where the words have some that no line breaks at.
fn plain(told: &str) -> String {
    told.split_whitespace().collect::<Vec<&str>>().join(" ")
}

fn log(of: &[(i64, i32)]) -> Value {
    let reading =
        |(minutes, celsius): &(i64, i32)| json!({ "at": moment(-minutes), "celsius": celsius });
    of.iter().map(reading).collect()
}

fn heat_that_was_over_before_the_meat_came_in_proves_nothing(engine: Engine) {
    let (_house, caller) = kitchen(engine);
    let (early, late) = (pig(&caller, "1", 300), pig(&caller, "2", 20));
    let hot = log(&[(180, 5), (120, 85), (90, 85), (60, 60), (5, 50)]);
    let cook = |lots: &[&str]| {
        let step = caller.step("cook").place("stove");
        let step = { lots.iter() }.fold(step, |step: StepOfDay, lot| step.of_grams(lot, 500));
        step.into("stew", 450 * lots.len() as u32)
            .with("log", hot.clone())
    };
    let is = |lot: &str| caller.lot(lot)["condition"]["is"].clone();
    assert_eq!(is(&cook(&[&early]).made()), "ready");
    let refused = cook(&[&early, &late]).ask().refused(422, "log");
    assert_eq!(refused.body["may_be_told"], true, "{}", refused.body);
    let told = plain(refused.body["detail"].as_str().unwrap());
    assert!(told.contains("50 °C") && told.contains("came in"), "{told}");
    let as_it_was = cook(&[&early, &late]).with("as_it_happened", true);
    let lot = as_it_was.note("The second one went in late").made();
    assert_eq!(is(&lot), "treated");
    caller.sell(&lot).refused(409, "lot");
    // Cooked on, it is ready: this heat all of it has seen.
    let on = caller.step("cook").of(&lot).into("stew", 900).held(75.0, 2);
    assert_eq!(is(&on.made()), "ready");
    // A log that was over before is of another pot: no note makes it this one's.
    let over = caller.step("cook").of_grams(&late, 500).into("stew", 450);
    let over = over.with("log", log(&[(180, 5), (120, 85), (60, 85)]));
    let over = over.with("as_it_happened", true).note("So it was");
    over.refused(422, "log");
}

fn nothing_is_held_for_longer_than_it_was_there(engine: Engine) {
    let (_house, caller) = kitchen(engine);
    let (early, late) = (pig(&caller, "1", 300), pig(&caller, "2", 30));
    let cook = |lot: &str| caller.step("cook").of_grams(lot, 500).into("stew", 450);
    let refused = cook(&late).held(60.0, 120).ask();
    let refused = refused.refused(422, "readings.hold_minutes").body;
    assert_eq!(refused["type"], "/problems/cannot-be", "{refused}");
    let told = plain(refused["detail"].as_str().unwrap());
    assert!(told.contains("2 h") && told.contains("30 min"), "{told}");
    let boiled = cook(&late).with("readings", json!({ "boiled_minutes": 40 }));
    boiled.refused(422, "readings.boiled_minutes");
    let began = cook(&early).held(60.0, 120);
    let began = began.with("began_at", moment(-10));
    let told = plain(&began.refused(422, "readings.hold_minutes"));
    assert!(told.contains("10 min"), "{told}");
    cook(&late).held(60.0, 25).done();
    cook(&early).held(60.0, 120).done();
}

fn raw_meat_of_an_animal_that_nobody_knows_is_judged_as_poultry(engine: Engine) {
    let (_house, caller) = kitchen(engine);
    let trim = bought_raw(&caller, "trim", json!({ "kind": "trim" }));
    let hot = |degrees: i32| json!({ "fahrenheit": degrees, "hold_minutes": 4 });
    let cook = |lot: &str, degrees: i32| {
        let step = caller.step("cook").of_grams(lot, 300).into("stew", 250);
        step.with("readings", hot(degrees))
    };
    let ground = caller.step("grind").of_grams(&trim, 600);
    let ground = ground.into("sausage", 600).made();
    // A whole bird has rows at that temperature, which are nearer than the kitchen's own table; a ground one has none.
    for (lot, row) in [(&trim, "confirmed-X-US-58"), (&ground, "us-1.8-poultry")] {
        let refused = cook(lot, 145)
            .ask()
            .refused(422, "readings.fahrenheit")
            .body;
        let rows = refused["rows"].to_string();
        assert!(rows.contains(row), "{refused}");
        let told = refused["detail"].as_str().unwrap();
        assert!(told.contains("which animal"), "{told}");
        let ready = cook(lot, 165).made();
        assert_eq!(caller.lot(&ready)["condition"]["is"], "ready");
    }
}

fn raw_fish_goes_into_a_pack_without_air_only_frozen(engine: Engine) {
    let (_house, caller) = kitchen(engine);
    let fish = json!({ "kind": "ingredient", "allergens": ["salmon"] });
    let salmon = bought_raw(&caller, "salmon", fish);
    let pack = |packaging: &str, state: &str| {
        let step = caller.step("pack").of_grams(&salmon, 300);
        let step = step.into("salmon", 300).which("place", "freezer");
        step.which("packaging", packaging).which("state", state)
    };
    for packaging in ["vacuum", "modified-atmosphere"] {
        for state in ["chilled", "frozen"] {
            let refused = pack(packaging, state).ask();
            let refused = refused.refused(422, "outputs[0].packaging").body;
            assert_eq!(refused["type"], "/problems/limit", "{refused}");
            assert!(refused["rows"].to_string().contains("us-R7"), "{refused}");
        }
    }
    let told = pack("vacuum", "chilled").with("as_it_happened", true);
    let lot = told.note("It was packed before anybody asked").made();
    assert_eq!(caller.lot(&lot)["stops"][0]["stop"], "failed");
    caller.sell(&lot).refused(409, "lot");
    // With air, or frozen before and after.
    let open = caller.step("pack").of_grams(&salmon, 300);
    open.into("salmon", 300).done();
    caller.carry(&salmon, "freezer").frozen().done();
    pack("vacuum", "frozen").done();
    pack("vacuum", "chilled").refused(422, "outputs[0].packaging");
}

fn a_reading_says_nothing_of_the_food_after_water_came_to_it(engine: Engine) {
    let (_house, caller) = kitchen(engine);
    let pig = pig(&caller, "1", 300);
    let stew = caller
        .step("cook")
        .of_grams(&pig, 2_000)
        .into("stew", 1_900);
    let stew = stew.held(80.0, 10).made();
    caller
        .measure(&stew)
        .with("ph", 4.0)
        .with("water_activity", 0.8)
        .done();
    let pack = || {
        let step = caller.step("pack").of_grams(&stew, 300);
        step.into("stew", 300).which("packaging", "vacuum")
    };
    pack().done();
    let water = json!([{ "what": "water", "grams": 100 }]);
    let wet = caller.step("pack").of_grams(&stew, 300).into("stew", 400);
    let wet = wet.which("packaging", "vacuum").with("added", water);
    wet.refused(422, "outputs[0].packaging");
}
