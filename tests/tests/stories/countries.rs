//! The countries of fresh meat, which its labels tell in the European Union: what is missing is told where an animal comes
//! in and on its lots, with the way to where it is entered.

use serde_json::json;
use stories::day::Told;
use stories::labels::set;
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_country_that_a_label_will_tell_is_asked_for_before_anything_is_packed
}

const OF_FARM: &str = "Brindle: no country is entered for this farm.";
const OF_ABATTOIR: &str = "Harle Gate: no country is entered for this abattoir.";

/// Enters the country of a farm or an abattoir.
fn in_france(caller: &Caller, path: &str) {
    let entry = caller.get(path).expect(200);
    let mut body = entry.body.clone();
    body["country"] = json!("FR");
    caller
        .put_over(path, &entry.etag.unwrap(), &body)
        .expect(200);
}

fn a_country_that_a_label_will_tell_is_asked_for_before_anything_is_packed(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("0608-17", 9_000);
    let page = |pig: &str| caller.page(&format!("/lots/{pig}"));
    let lacks = |list: &str| {
        let option = format!("data-lacks=\"/lists/{list}/");
        caller.page("/receive").contains(&option)
    };
    // No label tells it in the United States.
    assert!(!page(&pig).contains(OF_FARM));
    set(&caller, &[("profile", json!("eu"))]);
    let told = page(&pig);
    assert!(
        told.contains(OF_FARM) && told.contains(OF_ABATTOIR),
        "{told}"
    );
    assert!(
        told.contains("href=\"/lists/farms/BRC\"")
            && told.contains("href=\"/lists/abattoirs/DEMO-17\""),
        "{told}"
    );
    assert!(lacks("farms") && lacks("abattoirs"));
    // What is cut of it tells it above, and below its label.
    let cut = caller.step("cut").of(&pig);
    let chops = cut.into_packs("pork-chop", 8_000, 4).made();
    assert_eq!(page(&chops).matches(OF_FARM).count(), 2);
    in_france(&caller, "/api/farms/BRC");
    let told = page(&chops);
    assert!(!told.contains(OF_FARM) && told.contains(OF_ABATTOIR));
    in_france(&caller, "/api/abattoirs/DEMO-17");
    assert!(!page(&chops).contains(OF_ABATTOIR));
    assert!(!lacks("abattoirs"));
    // The first farm of a kitchen is asked for its country, too, where a label tells it.
    in_france(&caller, "/api/farms/NTB");
    assert!(!lacks("farms"));
}
