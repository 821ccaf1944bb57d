//! Curing salt where no list says how it cures, and nitrate in what is cooked since.

use super::corrections::product;
use super::cures::kitchen;
use serde_json::json;
use stories::day::Told;
use stories::labels::set;
use stories::{Engine, on_both_engines};

on_both_engines! {
    curing_salt_in_what_no_list_cures_goes_on_record
    nitrate_in_what_is_cooked_is_asked_where_the_place_forbids_it
}

fn curing_salt_in_what_no_list_cures_goes_on_record(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let salt = caller.receive("no-1").grams(500);
    let salt = salt.bought(stories::day::bought("PTS", "n")).made();
    let mixed = |kind: &str| {
        let step = caller.step(kind).of_grams(&pig, 1_000).of_grams(&salt, 14);
        step.into("mince", 1_014)
    };
    for kind in ["mix", "grind", "portion"] {
        let asked = mixed(kind).ask().refused(422, "outputs[0].product").body;
        assert_eq!(asked["type"], "/problems/limit", "{asked}");
        assert_eq!(asked["may_be_told"], true, "{asked}");
        let told = mixed(kind).with("as_it_happened", true);
        let lot = told.note("Went in by mistake").made();
        let stops = caller.lot(&lot)["stops"].clone();
        assert_eq!(stops[0]["stop"], "failed", "{stops}");
        caller.sell(&lot).refused(409, "lot");
        // What is made of it inherits that.
        let on = caller.step("portion").of_grams(&lot, 100);
        on.into("mince", 100).refused(409, "inputs[0].lot");
    }
}

/// `confirmed X-EU-3`: no nitrate in what is heated.
fn nitrate_in_what_is_cooked_is_asked_where_the_place_forbids_it(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    product(&caller, "roast", json!({ "cooked_as": "roast" }));
    let more = json!({ "kind": "ingredient", "species": null, "storage": "ambient",
        "curing_salt": { "nitrite_percent": 0, "nitrate_percent": 1 } });
    product(&caller, "saltpetre-mix", more);
    let salt = caller.receive("saltpetre-mix").grams(500);
    let salt = salt.bought(stories::day::bought("PTS", "s")).made();
    let cook = |place: &str| {
        set(&caller, &[("profile", json!(place))]);
        let step = caller.step("cure").of_grams(&pig, 1_000).of_grams(&salt, 8);
        let loin = step.into("loin", 1_000).made();
        let step = caller.step("cook").of_grams(&loin, 500).held(75.0, 20);
        step.into("roast", 450)
    };
    let asked = cook("eu").ask().refused(422, "inputs").body;
    assert!(
        asked["rows"].to_string().contains("confirmed-X-EU-3"),
        "{asked}"
    );
    let told = cook("eu").with("as_it_happened", true);
    let lot = told.note("The wrong loin").made();
    assert_eq!(caller.lot(&lot)["stops"][0]["stop"], "failed");
    let asked = cook("uk").ask().refused(422, "inputs").body;
    assert!(
        asked["rows"].to_string().contains("canada-eu-uk-12.1"),
        "{asked}"
    );
    cook("us").done();
}
