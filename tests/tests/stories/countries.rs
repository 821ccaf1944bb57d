//! The countries of fresh meat, which its labels tell in the European Union: what is missing is told where an animal comes
//! in and on its lots, with the way to where it is entered.

use serde_json::json;
use stories::call::chrono_day;
use stories::day::Told;
use stories::labels::set;
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_country_that_a_label_will_tell_is_asked_for_before_anything_is_packed
    an_abattoir_that_nobody_entered_is_entered_on_the_page_of_the_animal
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

fn an_abattoir_that_nobody_entered_is_entered_on_the_page_of_the_animal(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    set(&caller, &[("profile", json!("eu"))]);
    let animal = json!({ "farm": "BRC", "species": "pig", "killed_on": chrono_day(-2), "carcass": "0777", "side": "left" });
    let pig = caller.receive("pig-half").grams(45_000);
    let pig = pig.with("animal", animal).made();
    let lot = || caller.page(&format!("/lots/{pig}"));
    let said = "No abattoir is entered for the animal of";
    assert!(lot().contains(said), "{}", lot());
    let origins = caller.read(&format!("/api/lots/{pig}/origins"));
    let animal = origins["animals"][0]["id"].as_str().expect("an animal");
    assert!(lot().contains(&format!("href=\"/animals/{animal}\">To the animal")));
    let lacks = "<details open><summary>Enter the place of slaughter";
    let page = caller.page(&format!("/animals/{animal}"));
    assert!(page.contains(lacks), "{page}");
    let told =
        json!({ "step": animal, "animal": { "abattoir": "DEMO-17" }, "why": "It was left out" });
    caller.deed("/api/corrections", told).expect(201);
    assert!(!lot().contains(said), "{}", lot());
}
