//! Warm hours go with the food: they count for what stood in a place then, wherever it is by the time the failure is told.

use serde_json::json;
use stories::call::moment;
use stories::day::{Told, farm};
use stories::{Answer, Caller, Engine, House, on_both_engines};

on_both_engines! {
    what_was_carried_away_brings_its_warm_hours
    what_happened_counts_in_whatever_order_it_is_entered
    what_had_left_before_is_free_of_the_failure
}

fn keys(answer: &Answer) -> String {
    answer.body["warning_keys"].to_string()
}

/// How many stops of what failed stand on a lot.
fn failed(caller: &Caller, lot: &str) -> usize {
    let stops = caller.lot(lot)["stops"].clone();
    let stops = stops.as_array().unwrap().iter();
    stops.filter(|stop| stop["stop"] == "failed").count()
}

fn fail(caller: &Caller, place: &str, from: i64, until: i64) -> String {
    let body = json!({ "place": place, "from": moment(-from), "until": moment(-until) });
    keys(&caller.deed("/api/place-failures", body).expect(201))
}

/// Pork that came into a place ten hours ago and was carried to another later.
fn carried(caller: &Caller, carcass: &str, place: &str, to: &str, minutes: i64) -> String {
    let animal = farm("BRC").carcass(carcass).side("left");
    let lot = caller.receive("pig-half").grams(4_000).from(animal);
    let lot = lot.to(place).with("state", "chilled");
    let lot = lot.at(moment(-600)).made();
    let carried = json!({ "lot": lot, "to": to, "at": moment(-minutes) });
    caller.deed("/api/moves", carried).expect(201);
    lot
}

fn what_was_carried_away_brings_its_warm_hours(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    // us-T8: four hours are the most, once.
    let meat = carried(&caller, "1", "cooler", "freezer", 300);
    let first = fail(&caller, "cooler", 530, 300);
    assert!(first.contains("failure-in-time\""), "{first}");
    assert_eq!(failed(&caller, &meat), 0);
    let second = fail(&caller, "freezer", 300, 70);
    assert!(second.contains("failure-broke-in-all"), "{second}");
    assert_eq!(failed(&caller, &meat), 1);
    // It was warm there for as long as it stood there, and not to the end.
    let meat = carried(&caller, "2", "bench", "cooler", 200);
    let first = fail(&caller, "bench", 410, 10);
    assert!(first.contains("failure-in-time\""), "{first}");
    assert_eq!(failed(&caller, &meat), 0);
    let second = fail(&caller, "cooler", 100, 60);
    assert!(second.contains("failure-broke-in-all"), "{second}");
    assert_eq!(failed(&caller, &meat), 1);
    house.check();
}

/// The orders of four things.
fn orders() -> Vec<[usize; 4]> {
    let all = (0..256).map(|n| [n / 64, n / 16 % 4, n / 4 % 4, n % 4]);
    all.filter(|order| (0..4).all(|nth| order.contains(&nth)))
        .collect()
}

fn what_happened_counts_in_whatever_order_it_is_entered(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    for (nth, order) in orders().into_iter().enumerate() {
        let [one, other] = ["a", "b"].map(|room| format!("room-{room}{nth}"));
        for code in [&one, &other] {
            let place = json!({ "code": code, "name": code, "kind": "storage" });
            caller.post("/api/places", &place).expect(201);
        }
        let animal = farm("BRC").carcass(&format!("o{nth}")).side("left");
        let meat = caller.receive("pig-half").grams(4_000).from(animal);
        let meat = meat
            .to("freezer")
            .with("state", "chilled")
            .at(moment(-900))
            .made();
        for what in order {
            let goes = |to: &str, minutes: i64| {
                let moved = json!({ "lot": meat, "to": to, "at": moment(-minutes) });
                caller.deed("/api/moves", moved).expect(201);
            };
            match what {
                0 => goes(&one, 600),
                1 => _ = fail(&caller, &one, 530, 300),
                2 => goes(&other, 300),
                _ => _ = fail(&caller, &other, 300, 70),
            }
        }
        assert_eq!(failed(&caller, &meat), 1, "{order:?}");
        assert_eq!(
            caller.lot(&meat)["packs"][0]["place"],
            json!(other),
            "{order:?}"
        );
    }
    house.check();
}

fn what_had_left_before_is_free_of_the_failure(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let animal = farm("BRC").carcass("f5").side("left");
    let meat = caller.receive("pig-half").grams(4_000).from(animal);
    let meat = meat
        .to("cooler")
        .with("state", "chilled")
        .at(moment(-900))
        .made();
    let told = fail(&caller, "cooler", 540, 60);
    assert!(told.contains("failure-broke"), "{told}");
    assert_eq!(failed(&caller, &meat), 1);
    let goes = |minutes: i64| {
        let moved = json!({ "lot": meat, "to": "freezer", "at": moment(-minutes) });
        keys(&caller.deed("/api/moves", moved).expect(201))
    };
    // Six hours of it are too long all the same.
    goes(180);
    assert_eq!(failed(&caller, &meat), 1);
    let told = goes(600);
    assert!(told.contains("failure-left-before\""), "{told}");
    assert_eq!(failed(&caller, &meat), 0);
    house.check();
}
