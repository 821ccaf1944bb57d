//! What holds a cure: the green weight whatever the meat took up before, salts that cure at all, the limits of the place
//! whatever class the list says, and what only a test can tell.

use super::corrections::{happened, product};
use super::cures::{bag, bought, cure, kitchen, no_1, ppm, stops};
use serde_json::json;
use stories::call::fresh_id;
use stories::day::Told;
use stories::labels::set;
use stories::{Engine, on_both_engines};

on_both_engines! {
    a_second_cure_is_counted_by_the_green_weight
    a_curing_salt_without_nitrite_or_nitrate_is_none
    a_bag_that_nobody_can_read_is_taken_in
    what_only_may_be_left_is_not_sold_untested
    a_class_of_europe_is_held_by_the_place
}

/// us-H1: 125 ppm went into a kilogram, which took up 50 g; 50 mg more go into it.
fn a_second_cure_is_counted_by_the_green_weight(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let (salt, no_1) = (bought(&caller, "sea-salt"), no_1(&caller));
    let once = || {
        let once = cure(&caller, &pig, &[(&salt, 48.0), (&no_1, 2.0)]);
        once.into("bacon", 1_050).made()
    };
    let first = once();
    assert!((ppm(&caller, &first) - 125.0).abs() < 0.001);
    let twice = cure(&caller, &first, &[(&no_1, 0.8)]).into("bacon", 1_000);
    let twice = twice.made();
    let found = ppm(&caller, &twice);
    assert!((found - 177.5).abs() < 0.001, "{found}");
    // us-N14: 200 ppm of the green weight; of what it weighs today it would be 199.6.
    let much = cure(&caller, &once(), &[(&no_1, 1.216)]).into("bacon", 1_000);
    let refused = much.refused(422, "inputs");
    assert!(refused.contains("us-N14"), "{refused}");
}

fn a_curing_salt_without_nitrite_or_nitrate_is_none(engine: Engine) {
    let (_house, caller, _) = kitchen(engine);
    let none = json!({ "nitrite_percent": 0, "nitrate_percent": 0 });
    let bag = caller.receive("no-1").to("cooler").grams(1_000);
    let bag = bag.bought(json!({ "supplier": "PTS", "curing_salt": none.clone() }));
    bag.ask().refused(422, "bought.curing_salt");
    for strength in [
        none,
        json!({ "nitrite_percent": 101 }),
        json!({ "nitrite_percent": -1 }),
        json!({ "nitrite_percent": 60, "nitrate_percent": 50 }),
        json!({ "nitrite_percent": 6.25, "salt_percent": 95 }),
    ] {
        let entry = json!({ "code": "odd-salt", "names": { "en": "Odd salt" }, "kind": "ingredient",
            "storage": "ambient", "curing_salt": strength });
        caller
            .post("/api/products", &entry)
            .refused(422, "curing_salt");
    }
}

fn a_bag_that_nobody_can_read_is_taken_in(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let called =
        json!({ "kind": "ingredient", "species": null, "storage": "ambient", "nature": "cure" });
    product(&caller, "pink-salt", called);
    let id = fresh_id();
    let pink = || caller.receive("pink-salt").to("cooler").grams(1_000);
    let unread = || pink().bought(json!({ "supplier": "PTS" })).id(&id);
    unread().ask().refused(422, "bought.curing_salt");
    let told = unread().with("as_it_happened", true);
    let told = told.note("the label of the bag is torn off").done();
    let keys = told.body["warning_keys"].to_string();
    assert!(keys.contains("receive-deed-strength-unread"), "{keys}");
    let pink = told.code(0);
    let bacon = happened(cure(&caller, &pig, &[(&pink, 2.0)]).into("bacon", 1_000)).made();
    assert_eq!(stops(&caller, &bacon), [json!("not-proven")]);
    let strength = json!({ "curing_salt": { "nitrite_percent": 6.25 } });
    super::corrections::corrects(caller.correct(&id).with("bought", strength));
    assert_eq!(stops(&caller, &bacon), Vec::<serde_json::Value>::new());
    assert!((ppm(&caller, &bacon) - 125.0).abs() < 0.001);
}

/// confirmed-12.7: of a dry-cured ham only what is left is limited, to 65 mg/kg as the ion.
fn what_only_may_be_left_is_not_sold_untested(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    set(&caller, &[("profile", json!("eu"))]);
    product(
        &caller,
        "dry-ham",
        json!({ "kind": "cured", "raw": true,
        "cure": { "class": "dry-cured-ham", "method": "dry", "heated": false } }),
    );
    let no_1 = no_1(&caller);
    let ham = |grams: f64| happened(cure(&caller, &pig, &[(&no_1, grams)]).into("dry-ham", 1_000));
    let done = ham(9.6).done();
    assert_eq!(stops(&caller, &done.code(0)), [json!("not-proven")]);
    let warned = done.body["warnings"].to_string();
    assert!(warned.contains("65"), "{warned}");
    // 97 ppm as sodium nitrite are 64.7 as the ion: no more can be left.
    let little = ham(1.55).made();
    assert_eq!(stops(&caller, &little), Vec::<serde_json::Value>::new());
}

/// us-N8, us-N13: no nitrate in any bacon, 120 ppm in an immersed one.
fn a_class_of_europe_is_held_by_the_place(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    product(
        &caller,
        "wet-bacon",
        json!({ "kind": "cured", "raw": true,
        "cure": { "class": "immersed-bacon", "method": "dry" } }),
    );
    let nitrate = bag(&caller, &fresh_id(), json!({ "nitrate_percent": 6.25 }));
    let refused = cure(&caller, &pig, &[(&nitrate, 3.84)]).into("wet-bacon", 1_000);
    let refused = refused.refused(422, "inputs");
    assert!(refused.contains("us-N8"), "{refused}");
}
