//! What was believed of a bought lot is taken back: there is no such day, no such count of days, no nitrite in the bag.

use super::corrections::{alike, corrects, happened, kitchen, product, state};
use serde_json::{Value, json};
use stories::call::{chrono_day, fresh_id, moment};
use stories::day::{Told, bought};
use stories::{Caller, Engine, on_both_engines};

on_both_engines! {
    what_a_maker_never_said_is_taken_back_to_nothing
    a_bag_without_nitrite_cures_nothing
    one_part_of_a_correction_may_be_as_it_was
}

/// A paste of a bought lot, and a salad with it.
fn salad(caller: &Caller, more: &Value) -> (String, Vec<String>) {
    let id = fresh_id();
    let mut paper = bought("PTS", "P-1");
    for (key, value) in more.as_object().expect("fields") {
        paper[key] = value.clone();
    }
    let paste = caller.receive("paste").to("cooler").grams(2_000);
    let paste = paste.bought(paper).id(&id).at(moment(-300)).made();
    let mix = happened(caller.step("mix").of_grams(&paste, 100));
    let salad = mix.at(moment(-100)).into("salad", 100).made();
    (id, vec![paste, salad])
}

fn what_a_maker_never_said_is_taken_back_to_nothing(engine: Engine) {
    let told = json!({ "use_by": chrono_day(3), "declares": { "days_once_opened": 2, "use_by_is": "frozen" } });
    let less = |field: &str| {
        let mut less = told.clone();
        match field {
            "use_by" => less.as_object_mut().unwrap().remove(field),
            _ => less["declares"].as_object_mut().unwrap().remove(field),
        };
        less
    };
    for field in ["use_by", "days_once_opened", "use_by_is"] {
        let (house, caller, _) = kitchen(engine);
        let (receipt, lots) = salad(&caller, &told);
        let nothing = match field {
            "use_by" => json!({ "use_by": null }),
            field => json!({ "declares": { field: null } }),
        };
        corrects(caller.correct(&receipt).with("bought", nothing.clone()));
        let (_other, right, _) = kitchen(engine);
        let (_, its) = salad(&right, &less(field));
        alike((&caller, &lots), (&right, &its));
        // There is nothing more to take back.
        let again = caller.correct(&receipt).with("bought", nothing);
        again.why("the paper says so").refused(422, "bought");
        house.check();
    }
}

fn a_bag_without_nitrite_cures_nothing(engine: Engine) {
    let (house, caller, pig) = kitchen(engine);
    let salt = json!({ "code": "curing-salt-x", "names": { "en": "Curing salt" }, "kind": "ingredient", "species": null,
        "raw": false, "storage": "ambient", "curing_salt": { "nitrite_percent": 6.25 },
        "keep": { "days": 700, "from": "received", "day_one_counts": true } });
    caller.post("/api/products", &salt).expect(201);
    let cure = json!({ "class": "bacon", "method": "dry", "nitrite": true });
    let belly = json!({ "kind": "cured", "raw": true, "cure": cure });
    product(&caller, "cured-belly", belly);
    let receipt = fresh_id();
    let salt = caller.receive("curing-salt-x").to("cooler").grams(1_000);
    let salt = salt.bought(bought("PTS", "C-1")).id(&receipt);
    let salt = salt.at(moment(-300)).made();
    let cure = caller.step("cure").of_grams(&pig, 4_000).of_grams(&salt, 9);
    let cure = happened(cure).at(moment(-200));
    let belly = cure.into("cured-belly", 4_000).made();
    let cut = happened(caller.step("cut").of_grams(&belly, 1_000));
    let cut = cut.at(moment(-100)).into("cured-belly", 1_000).made();
    assert_eq!(state(&caller, &cut)["stops"], json!([]));
    let none = json!({ "curing_salt": { "nitrite_percent": 0, "salt_percent": 100 } });
    corrects(caller.correct(&receipt).with("bought", none));
    for lot in [&belly, &cut] {
        let stops = state(&caller, lot)["stops"].to_string();
        assert!(stops.contains("not-proven"), "{lot}: {stops}");
    }
    house.check();
}

fn one_part_of_a_correction_may_be_as_it_was(engine: Engine) {
    let (house, caller, _) = kitchen(engine);
    let (receipt, lots) = salad(&caller, &json!({ "use_by": chrono_day(30) }));
    let both = |celsius: i64| {
        caller
            .correct(&receipt)
            .with("bought", json!({ "use_by": chrono_day(30) }))
            .with("readings", json!({ "celsius": celsius }))
            .why("the paper says so")
    };
    both(15).done();
    let readings = caller.lot(&lots[0])["readings"].to_string();
    assert!(readings.contains("15"), "{readings}");
    both(15).refused(422, "bought");
    house.check();
}
