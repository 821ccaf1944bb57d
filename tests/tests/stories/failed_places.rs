//! A place that failed, as its pages tell it: what was read then is how warm it was, each piece is judged from when it came
//! in, no hour is invented, and what is still good goes elsewhere at once.

use serde_json::{Value, json};
use stories::call::moment;
use stories::day::{Told, farm};
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    what_was_read_when_it_failed_is_how_warm_it_was
    each_piece_is_judged_from_when_it_came_in
    what_is_still_good_is_moved_in_one_go
    nobody_confirms_an_hour_that_nobody_knows
    places_tell_what_stands_there_in_the_order_of_a_reader
}

fn page(caller: &Caller, path: &str) -> String {
    caller.page(path).replace('\u{a0}', " ")
}

/// Pork that came in so many minutes ago.
fn pork(caller: &Caller, carcass: &str, place: &str, minutes: i64) -> String {
    let animal = farm("BRC").carcass(carcass).side("left");
    let lot = caller.receive("pig-half").grams(4_000).from(animal);
    let lot = lot.to(place).with("state", "chilled");
    lot.at(moment(-minutes)).made()
}

fn fail(caller: &Caller, place: &str, from: i64, readings: Value) -> Value {
    let body = json!({ "place": place, "from": moment(-from), "readings": readings });
    caller.deed("/api/place-failures", body).expect(201).body
}

fn is_beyond(caller: &Caller) -> bool {
    let hands = caller.read("/api/today?limit=200")["hands"].clone();
    let mut hands = hands.as_array().expect("hands").iter();
    hands.any(|hand| hand["key"] == "today-beyond")
}

fn what_was_read_when_it_failed_is_how_warm_it_was(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let lot = pork(&caller, "1", "cooler", 600);
    assert!(page(&caller, "/places/cooler").contains("Never read"));
    let told = fail(
        &caller,
        "cooler",
        60,
        json!([{ "at": moment(-20), "celsius": 11.5 }]),
    );
    let shown = page(&caller, "/places/cooler");
    assert!(
        shown.contains("11.5 °C")
            && !shown.contains("Never read")
            && shown.contains("role=\"alert\""),
        "{shown}"
    );
    assert!(is_beyond(&caller));
    assert!(page(&caller, "/").contains("/places/cooler/move?good=yes"));
    // The counter warns of what may be sold and stands there.
    let good = json!({ "place": "cooler", "celsius": 3 });
    let read = caller.deed("/api/readings", good).expect(201).body;
    assert!(!is_beyond(&caller) && page(&caller, "/places/cooler").contains("3 °C"));
    // Without that reading it is what it was, and without the failure nothing was read.
    let id = |of: &Value| of["id"].as_str().expect("an id").to_owned();
    caller.void(&id(&read)).why("read at another place").done();
    assert!(is_beyond(&caller));
    caller.void(&id(&told)).why("it was the other one").done();
    assert!(!is_beyond(&caller) && page(&caller, "/places/cooler").contains("Never read"));
    assert_eq!(caller.lot(&lot)["stops"], json!([]));
    house.check();
}

fn each_piece_is_judged_from_when_it_came_in(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let long = pork(&caller, "1", "cooler", 600);
    let short = pork(&caller, "2", "cooler", 90);
    // us-T8: four hours are the most.
    let told = fail(&caller, "cooler", 420, json!([]));
    let stops = |lot: &str| caller.lot(lot)["stops"].as_array().expect("stops").len();
    assert_eq!((stops(&long), stops(&short)), (1, 0), "{told}");
    let says = told["warnings"].to_string().replace('\u{a0}', " ");
    let shown = |lot: &str| {
        caller.lot(lot)["shown"]
            .as_str()
            .expect("a code")
            .to_owned()
    };
    for food in [
        format!("({})", shown(&long)),
        format!("({}) was too warm for up to 1 h 3", shown(&short)),
    ] {
        assert!(says.contains(&food), "{food}: {says}");
    }
    assert!(
        says.contains("for 7 h") && !says.contains(" s;") && !says.contains(" s,"),
        "{says}"
    );
    house.check();
}

fn what_is_still_good_is_moved_in_one_go(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let long = pork(&caller, "1", "cooler", 600);
    let short = pork(&caller, "2", "cooler", 90);
    assert!(!page(&caller, "/places/cooler").contains("good=yes"));
    fail(&caller, "cooler", 420, json!([]));
    let place = page(&caller, "/places/cooler");
    assert!(
        place.contains("class=\"act first\" href=\"/places/cooler/move?good=yes\""),
        "{place}"
    );
    let moves = page(&caller, "/places/cooler/move?good=yes");
    let offered = |lot: &str| moves.contains(&format!("data-lot=\"{lot}\""));
    assert!(offered(&short) && !offered(&long), "{moves}");
    assert_eq!(moves.matches(" checked").count(), 1, "{moves}");
    let stopped = page(&caller, "/places/cooler/discard?stopped=yes");
    assert!(
        stopped.contains(&long) && !stopped.contains(&short),
        "{stopped}"
    );
    house.check();
}

fn nobody_confirms_an_hour_that_nobody_knows(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    pork(&caller, "1", "cooler", 600);
    let from = || {
        let form = page(&caller, "/places/cooler/failed");
        let field = form.split("name=\"from\"").nth(1).expect("the field");
        let value = field.split("value=\"").nth(1).expect("its value");
        value.split('"').next().expect("its end").to_owned()
    };
    assert_eq!(from(), "");
    let read = |minutes: i64, celsius: f64| {
        let body = json!({ "place": "cooler", "celsius": celsius, "at": moment(-minutes) });
        caller.deed("/api/readings", body).expect(201);
    };
    read(30, 12.0);
    assert_eq!(from(), "", "a warm one is no good one");
    read(50, 3.0);
    let good = from();
    assert!(!good.is_empty());
    read(40, 14.0);
    assert_eq!(from(), good);
    assert!(page(&caller, "/places/cooler/failed").contains("Last good reading on record: 3 °C"));
}

fn places_tell_what_stands_there_in_the_order_of_a_reader(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    for (code, name) in [("a1", "Zone froide"), ("a2", "Étuve"), ("a3", "économat")] {
        let place = json!({ "code": code, "name": name, "kind": "storage" });
        caller.post("/api/places", &place).expect(201);
    }
    pork(&caller, "1", "a1", 60);
    let salt = caller.salt(500);
    caller.carry(&salt, "a1").done();
    let all = page(&caller, "/places");
    let at = |name: &str| all.find(name).unwrap_or_else(|| panic!("{name}: {all}"));
    assert!(
        at("économat") < at("Étuve") && at("Étuve") < at("Zone froide"),
        "{all}"
    );
    assert!(all.contains("1 carcass or side and 1 pack"), "{all}");
    assert!(page(&caller, "/places/a1").contains("2 lots: 1 carcass or side and 1 pack."));
}
