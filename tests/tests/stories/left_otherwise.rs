//! A correction tells what has left already and is otherwise than was believed; and a wrong species alone is put
//! right.

use serde_json::{Value, json};
use stories::call::{chrono_day, moment};
use stories::day::{Told, farm};
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    what_has_left_is_told_of
    made_lots_whose_list_changes_are_told_of
    a_wrong_species_alone_is_corrected
}

/// Ready food that keeps, bought ready; its receipt and its lot.
fn bought(caller: &Caller) -> (String, String) {
    let product = json!({ "code": "terrine", "names": { "en": "Terrine" }, "kind": "cooked", "species": "pig",
        "raw": false, "storage": "chilled", "for_sale": true, "price_minor_per_kg": 100,
        "keep": { "days": 20, "from": "made", "day_one_counts": true } });
    caller.post("/api/products", &product).expect(201);
    let receipt = caller.receive("terrine").to("cooler").grams(3_000);
    let done = receipt.bought(json!({ "supplier": "PTS", "use_by": chrono_day(10),
        "declares": { "ready": true, "allergens": [] } }));
    let done = done.at(moment(-300)).done();
    (done.body["id"].as_str().unwrap().to_owned(), done.code(0))
}

fn correct(caller: &Caller, receipt: &str, bought: &Value, only_try: bool) -> Value {
    let body = json!({ "step": receipt, "bought": bought, "why": "the paper was read again", "try": only_try });
    let answer = caller.deed("/api/corrections", body);
    answer.expect(if only_try { 200 } else { 201 }).body
}

fn what_has_left_is_told_of(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let (receipt, lot) = bought(&caller);
    let cut = caller
        .step("portion")
        .of_grams(&lot, 1_000)
        .at(moment(-200));
    let slice = cut.into("terrine", 1_000).made();
    caller.depart("ship", &slice).at(moment(-100)).done();
    caller.sell(&lot).with("grams", 500).at(moment(-90)).done();
    for (change, key) in [
        (
            json!({ "use_by": chrono_day(-3) }),
            "correct-deed-left-past",
        ),
        (
            json!({ "declares": { "allergens": ["milk"] } }),
            "correct-deed-left-with-allergens",
        ),
        (
            json!({ "declares": { "ready": false } }),
            "correct-deed-left-not-ready",
        ),
    ] {
        for only_try in [true, false] {
            let told = correct(&caller, &receipt, &change, only_try);
            let keys = told["warning_keys"].as_array().unwrap();
            let of = keys.iter().filter(|of| *of == key).count();
            assert_eq!(of, 2, "{key} {told}");
            let says = told["warnings"].to_string().replace("-", "");
            assert!(says.contains(&lot) && says.contains(&slice), "{says}");
        }
    }
}

fn made_lots_whose_list_changes_are_told_of(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let (receipt, lot) = bought(&caller);
    let pork = caller.half_pig("0608-17", 10_000);
    let mix = caller.step("mix").of_grams(&lot, 500).of_grams(&pork, 500);
    let mixed = mix.into("sausage", 1_000).made();
    let change = json!({ "declares": { "ingredients": { "en": "pork, milk, salt" } } });
    for only_try in [true, false] {
        let told = correct(&caller, &receipt, &change, only_try);
        let changes = told["changes"].as_array().unwrap();
        let of = changes.iter().find(|of| of["lot"] == mixed.as_str());
        let list = of.map(|of| of["ingredients"]["now"]["en"].to_string());
        let list = list.unwrap_or_else(|| panic!("{told}")).to_lowercase();
        assert!(list.contains("milk"), "{list}");
    }
}

fn a_wrong_species_alone_is_corrected(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let half = |side: &str| farm("BRC").carcass("0608-18").side(side);
    let receive = |side: &str| {
        caller
            .receive("pig-half")
            .grams(40_000)
            .from(half(side))
            .done()
    };
    let (done, right) = (receive("left"), receive("right").code(0));
    let (receipt, lot) = (done.body["id"].as_str().unwrap().to_owned(), done.code(0));
    let chops = caller
        .step("cut")
        .of_grams(&lot, 5_000)
        .into("pork-chop", 5_000)
        .made();
    let turn = |species: &str| {
        let corrected = caller
            .correct(&receipt)
            .with("animal", json!({ "species": species }));
        corrected.done().body
    };
    let told = turn("boar");
    let others = told["warnings"].to_string().replace("-", "");
    assert!(others.contains(&right), "{others}");
    for of in [&lot, &chops] {
        let species = caller.lot(of)["species"].to_string();
        assert!(species.contains("boar"), "{of} {species}");
    }
    assert!(!caller.lot(&right)["species"].to_string().contains("boar"));
    // It was a pig after all; and it is the same animal as its other half again.
    turn("pig");
    assert!(!caller.lot(&lot)["species"].to_string().contains("boar"));
}
