//! What one count missed and another found stays both.

use serde_json::json;
use stories::day::Told;
use stories::{Answer, Engine, House, on_both_engines};

on_both_engines! {
    missing_and_surplus_stay_apart
    what_was_missing_and_is_found_again_is_held
}

fn missing_and_surplus_stay_apart(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("0608-17", 9_000);
    let chops = caller.step("cut").of_grams(&pig, 750);
    let chops = chops.into_packs("pork-chop", 750, 3).made();
    let id = |done: Answer| done.body["id"].as_str().unwrap().to_owned();
    let sold = id(caller.sell(&chops).pack(1).done());
    caller.count(&chops).missing(2).done();
    let count = |pack: u32| {
        let found = json!([{ "pack": pack, "grams": 250 }]);
        id(caller.count(&chops).with("packs", found).done())
    };
    // One of another pack went over the counter than the one that was scanned.
    let found = count(1);
    let gone = || {
        let went = caller.read(&format!("/api/lots/{pig}/descendants"));
        let totals = &went["totals"];
        ["unexplained_grams", "missing_grams", "surplus_grams"].map(|of| totals[of].clone())
    };
    assert_eq!(gone(), [json!(0), json!(250), json!(250)]);
    let page = caller.get(&format!("/lots/{pig}")).expect(200);
    let page = String::from_utf8(page.bytes).unwrap();
    assert!(
        page.contains("250\u{a0}g missing. 250\u{a0}g too much."),
        "{page}"
    );
    // What one count missed and another found stays both, also of one pack; a count that is taken back never was.
    count(2);
    assert_eq!(gone(), [json!(-250), json!(250), json!(500)]);
    caller.void(&found).done();
    assert_eq!(gone(), [json!(0), json!(250), json!(250)]);
    caller.void(&sold).done();
    for grams in [150, 200] {
        let found = json!([{ "pack": 3, "grams": grams }]);
        caller.count(&chops).with("packs", found).done();
    }
    assert_eq!(gone(), [json!(50), json!(350), json!(300)]);
    // More than ever was in a pack is asked about, and goes on record as it is: too much, and nobody knows of what.
    let heavy = json!([{ "pack": 3, "grams": 290 }]);
    let heavy = caller.count(&chops).with("packs", heavy);
    let asked = heavy.clone().ask().refused(422, "packs[0].grams").body;
    assert_eq!(asked["type"], "/problems/limit");
    assert_eq!(asked["may_be_told"], true, "{asked}");
    let told = heavy.with("as_it_happened", true);
    told.clone().refused(422, "note");
    let done = told
        .note("Weighed three times, without the box")
        .done()
        .body;
    assert!(done["warning_keys"].to_string().contains("count-heavier"));
    assert_eq!(gone(), [json!(-40), json!(350), json!(390)]);
    caller.sell(&chops).pack(3).refused(409, "lot");
    // Counted again as it lies there, it is no news.
    let same = caller
        .count(&chops)
        .with("packs", json!([{ "pack": 3, "grams": 290 }]));
    assert_eq!(same.done().body["warnings"], json!([]));
}

fn what_was_missing_and_is_found_again_is_held(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("0608-17", 9_000);
    let chops = caller.step("cut").of_grams(&pig, 750);
    let chops = chops.into_packs("pork-chop", 750, 3).made();
    let id = |done: &Answer| done.body["id"].as_str().unwrap().to_owned();
    let missed = caller.count(&chops).missing(3).done();
    let packs = json!([{ "pack": 3, "grams": 250 }]);
    let found = caller.count(&chops).with("packs", packs).done();
    let told = found.body["warning_keys"].to_string();
    assert!(told.contains("count-was-missing"), "{told}");
    let verdict =
        |pack: u32| caller.read(&format!("/api/scan?code={chops}/{pack}"))["verdict"].clone();
    assert_eq!((verdict(3), verdict(2)), (json!("hold"), json!("sell")));
    caller.sell(&chops).pack(3).refused(409, "lot");
    // What is in it is known, only not where it stood.
    assert_eq!(caller.lot(&chops)["allergens_known"], true);
    // It was overlooked where it belongs: both counts never were.
    caller.void(&id(&found)).why("a slip").done();
    caller
        .void(&id(&missed))
        .why("it stood behind the others")
        .done();
    assert_eq!(verdict(3), "sell");
}
