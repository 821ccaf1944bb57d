//! What is entered late gives what its own moment gives: days that were used are used, and what was held then was held.

use serde_json::{Value, json};
use stories::call::{chrono_day, moment};
use stories::day::{Told, bought, farm};
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    what_is_drawn_from_a_frozen_pack_gives_it_no_day
    what_was_made_after_a_hold_that_is_entered_late_is_held
    a_makers_day_is_over_in_the_freezer_too
}

/// Slices of bought ham that the maker says keeps for twenty days.
fn slices(caller: &Caller) -> String {
    let mut of = bought("PTS", "26160-211");
    of["use_by"] = json!(chrono_day(20));
    of["declares"] = json!({ "allergens": [], "ready": true });
    let ham = caller.receive("cooked-pork").grams(1_000).bought(of);
    let ham = ham.at(moment(-60)).made();
    let cut = caller.step("portion").of_grams(&ham, 600);
    cut.into("cooked-pork", 600).at(moment(-50)).made()
}

fn what_is_drawn_from_a_frozen_pack_gives_it_no_day(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let day = |lot: &str| caller.lot(lot)["packs"][0]["use_by"].clone();
    let kept = |lot: &str, state: &str, minutes: i64| {
        let kept = json!({ "lot": lot, "state": state, "at": moment(-minutes) });
        caller.deed("/api/moves", kept).expect(201);
    };
    let drawn = |lot: &str| {
        let cut = caller.step("portion").of_grams(lot, 50);
        cut.into("cooked-pork", 50).at(moment(-30)).made()
    };
    let untouched = slices(&caller);
    let before = day(&untouched);
    kept(&untouched, "frozen", 40);
    kept(&untouched, "chilled", 20);
    let thawed = day(&untouched);
    assert!(thawed.as_str() <= before.as_str(), "{thawed} {before}");
    // Whatever is entered first, and never the maker's day.
    let (first, second) = (slices(&caller), slices(&caller));
    kept(&first, "frozen", 40);
    let of_first = drawn(&first);
    assert_eq!(day(&first), Value::Null, "frozen still");
    kept(&first, "chilled", 20);
    drawn(&second);
    kept(&second, "frozen", 40);
    kept(&second, "chilled", 20);
    assert_eq!((day(&first), day(&second)), (thawed.clone(), thawed));
    assert!(day(&of_first).as_str() <= before.as_str(), "{of_first}");
    house.check();
}

fn what_was_made_after_a_hold_that_is_entered_late_is_held(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.receive("pig-half").grams(4_000);
    let pig = pig.from(farm("BRC").carcass("1").side("left"));
    let pig = pig.at(moment(-600)).made();
    let cut = |of: &str, grams: i64, minutes: i64| {
        let cut = caller.step("cut").of_grams(of, grams);
        cut.into("pork-chop", grams).at(moment(-minutes)).made()
    };
    let before = cut(&pig, 500, 400);
    let after = cut(&pig, 500, 200);
    let of_after = cut(&after, 100, 100);
    let of_before = cut(&before, 100, 90);
    let hold = json!({ "lots": [{ "lot": pig }], "why": "The farm phoned", "at": moment(-300) });
    let told = caller.deed("/api/holds", hold).expect(201).body;
    assert!(
        told["warning_keys"].to_string().contains("hold-made-since"),
        "{told}"
    );
    let stands = |lot: &str| caller.lot(lot)["holds"].as_array().unwrap().len();
    let all = [&pig, &before, &of_before, &after, &of_after];
    assert_eq!(all.map(|lot| stands(lot)), [1, 0, 0, 1, 1]);
    house.check();
    // Who lets the first go lets those go too.
    let free = json!({ "lots": [{ "lot": pig }], "why": "Another farm" });
    caller.deed("/api/hold-releases", free).expect(201);
    assert_eq!(all.map(|lot| stands(lot)), [0; 5]);
    house.check();
}

fn a_makers_day_is_over_in_the_freezer_too(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let days_ago = |days: i64| moment(-days * 24 * 60);
    let frozen = |last: i64| {
        let mut of = bought("PTS", "26160-212");
        of["use_by"] = json!(chrono_day(last));
        of["declares"] = json!({ "allergens": [], "ready": true });
        let ham = caller.receive("cooked-pork").grams(1_000).bought(of);
        let ham = ham.at(days_ago(3)).made();
        let kept = json!({ "lot": ham, "state": "frozen", "at": days_ago(2) });
        caller.deed("/api/moves", kept).expect(201);
        ham
    };
    let stops = |lot: &str| caller.lot(lot)["stops"].to_string();
    let (good, over) = (frozen(20), frozen(-1));
    assert!(!stops(&good).contains("past-day"), "{}", stops(&good));
    assert!(stops(&over).contains("past-day"), "{}", stops(&over));
    caller.sell(&over).refused(422, "lot");
    let hands = caller.get("/api/today").expect(200).body["hands"].to_string();
    assert!(hands.contains(&over), "{hands}");
    assert!(!hands.contains(&good), "{hands}");
    house.check();
}
