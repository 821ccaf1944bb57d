//! What a lot cost: a price that was wrong, or came later than the goods.

use serde_json::json;
use stories::call::fresh_id;
use stories::day::{Told, farm};
use stories::{Engine, House, on_both_engines};

on_both_engines! {
    a_price_that_was_wrong_is_corrected_for_all_that_was_made_of_it
}

fn a_price_that_was_wrong_is_corrected_for_all_that_was_made_of_it(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let id = fresh_id();
    let pig = caller.receive("pig-half").grams(10_000).id(&id);
    let pig = pig.from(farm("BRC").carcass("3").side("left"));
    let pig = pig.with("price_minor", 6_000).made();
    let chops = caller.step("cut").of_grams(&pig, 2_500);
    let chops = chops.into("pork-chop", 2_500).made();
    let cost = |lot: &str| {
        let read = caller.read(&format!("/api/lots/{lot}/cost"));
        ["cost_minor", "per_kg_minor"].map(|of| read[of].as_f64())
    };
    let of = |all: f64, each: f64| [Some(all), Some(each)];
    assert_eq!(cost(&chops), of(1_500.0, 600.0));
    let correct = |more: &str, value| caller.correct(&id).with(more, value);
    correct("price_minor", json!(6_000)).refused(422, "price_minor");
    let tried = correct("price_minor", json!(8_000)).with("try", true).ask();
    assert_eq!(tried.expect(200).body["tried"], true);
    assert_eq!(cost(&chops), of(1_500.0, 600.0));
    let told = correct("price_minor", json!(8_000)).done().body;
    assert_eq!(
        (cost(&pig), cost(&chops)),
        (of(8_000.0, 800.0), of(2_000.0, 800.0)),
        "{told}"
    );
    // Another correction of the same receipt keeps it, and one that is taken back never was.
    correct("animal", json!({ "carcass": "4" })).done();
    assert_eq!(cost(&chops), of(2_000.0, 800.0));
    caller.void(told["id"].as_str().unwrap()).done();
    assert_eq!(cost(&chops), of(1_500.0, 600.0));
    // The bill came a day after the goods.
    let late = fresh_id();
    let side = caller.receive("pig-half").grams(10_000).id(&late);
    let side = side.from(farm("BRC").carcass("5").side("left")).made();
    assert_eq!(cost(&side), [None, None]);
    let how = caller.read(&format!("/api/lots/{side}/cost"))["how_keys"].to_string();
    assert!(how.contains("cost-of-no-price"), "{how}");
    caller.correct(&late).with("price_minor", 5_000).done();
    assert_eq!(cost(&side), of(5_000.0, 500.0));
    // A step has no price.
    let step = caller.lot(&chops)["made_by"]["id"].clone();
    if let Some(step) = step.as_str() {
        caller
            .correct(step)
            .with("price_minor", 1)
            .refused(409, "step");
    }
}
