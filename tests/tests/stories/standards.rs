//! Standards of food by what went into it: water and brine, sausages, tenderised beef, organs.

use super::names::{cut, label, listed};
use serde_json::{Value, json};
use stories::call::fresh_id;
use stories::labels::{change, save, set, words};
use stories::{Answer, Caller, Engine, House, on_both_engines};

on_both_engines! {
    water_that_a_step_poured_in_is_listed_and_named
    a_standard_is_held_against_what_went_in
    tenderised_beef_has_its_words
    tenderised_beef_tells_how_it_is_cooked
    ground_beef_is_of_cattle_alone
    sulphites_in_a_raw_sausage_are_told
}

/// Makes that product of fresh pork, or of what is given, with so much water; the answer.
fn with_water(caller: &Caller, code: &str, kind: &str, grams: (u64, u64, u64)) -> String {
    let (meat, water, made) = grams;
    let pig = caller.half_pig(&fresh_id()[..8], meat);
    let added = json!([{ "what": "water", "grams": water }]);
    let added = if water == 0 { json!([]) } else { added };
    let step = json!({ "kind": kind, "place": "bench", "inputs": [{ "lot": pig }], "added": added,
        "outputs": [{ "product": code, "grams": made }] });
    caller.deed("/api/steps", step).expect(201).code(0)
}

fn rows(refused: &Answer) -> Vec<&str> {
    let rows = refused.body["rows"].as_array().into_iter().flatten();
    rows.filter_map(Value::as_str).collect()
}

fn water_that_a_step_poured_in_is_listed_and_named(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    listed(&caller, "roast", "Pork roast", json!({}));
    let wet = json!({ "names": { "en": "Pork roast with added water" } });
    listed(&caller, "wet-roast", "", wet);
    let stated = json!({ "names": { "en": "Pork roast containing 10% of a solution of water" } });
    listed(&caller, "us-roast", "", stated);
    let ingredients = |lot: &str| {
        let lot = caller.get(&format!("/api/lots/{lot}")).expect(200).body;
        lot["ingredients"]["en"].as_str().unwrap().to_owned()
    };
    // us-F2, us-F3: 1 kg in 10 kg is 10 % of the raw meat.
    let silent = with_water(&caller, "roast", "cut", (10_000, 1_000, 11_000));
    assert!(ingredients(&silent).ends_with(", water"), "us-I4");
    let refused = label(&caller, &silent).refused(409, None);
    assert_eq!(rows(&refused), ["us-F2"]);
    let told = with_water(&caller, "us-roast", "cut", (10_000, 1_000, 11_000));
    label(&caller, &told).expect(200);
    let more = with_water(&caller, "us-roast", "cut", (10_000, 1_200, 11_200));
    assert_eq!(rows(&label(&caller, &more).refused(409, None)), ["us-F2"]);
    // A slice of it has it still.
    let sliced = json!({ "kind": "portion", "place": "bench", "inputs": [{ "lot": silent, "grams": 500 }],
        "outputs": [{ "product": "roast", "grams": 500 }] });
    let slice = caller.deed("/api/steps", sliced).expect(201).code(0);
    assert!(ingredients(&slice).ends_with(", water"));
    for place in ["eu", "uk"] {
        set(&caller, &[("profile", json!(place))]);
        // 9.9: above 5 % of the finished weight; what dripped out again is no part of it.
        for (water, made, status) in [
            (500, 10_000, 200),
            (1_000, 10_526, 200),
            (1_000, 10_560, 409),
            (1_000, 11_000, 409),
        ] {
            let lot = with_water(&caller, "roast", "cut", (10_000, water, made));
            let answer = label(&caller, &lot).expect(status);
            let row: &[&str] = if status == 409 {
                &["canada-eu-uk-9.9"]
            } else {
                &[]
            };
            assert_eq!(rows(&answer), row, "{water} g in {made} g");
        }
        let named = with_water(&caller, "wet-roast", "cut", (10_000, 1_000, 11_000));
        label(&caller, &named).expect(200);
        // Only told, by nobody weighed; and told otherwise than weighed.
        change(
            &caller,
            "roast",
            &[("standard", json!({ "added_percent": 8 }))],
        );
        let dry = cut(&caller, "roast");
        assert_eq!(
            rows(&label(&caller, &dry).refused(409, None)),
            ["canada-eu-uk-9.9"]
        );
        change(
            &caller,
            "roast",
            &[("standard", json!({ "added_percent": 5 }))],
        );
        label(&caller, &cut(&caller, "roast")).expect(200);
    }
    // 4.13: a solid cut with water in it has 10 % meat protein raw.
    set(&caller, &[("profile", json!("ca"))]);
    let protein = |percent: f64| {
        let told = json!({ "added_percent": 12, "protein_percent": percent });
        let name = json!({ "en": format!("Pork roast, {percent}% meat protein") });
        change(&caller, "roast", &[("standard", told), ("names", name)]);
        label(&caller, &cut(&caller, "roast"))
    };
    assert_eq!(
        rows(&protein(9.9).refused(409, None)),
        ["canada-eu-uk-4.13"]
    );
    protein(10.0).expect(200);
    // Nobody measured it, and nobody says it: neither goes out.
    let silent = |told: Value| {
        let name = json!({ "en": "Pork roast" });
        change(&caller, "roast", &[("standard", told), ("names", name)]);
        label(&caller, &cut(&caller, "roast")).refused(409, None)
    };
    for told in [
        json!({ "added_percent": 12 }),
        json!({ "added_percent": 12, "protein_percent": 10 }),
    ] {
        assert_eq!(rows(&silent(told)), ["canada-eu-uk-4.13"]);
    }
    // 4.16: the spleen is no food there.
    let offal = json!({ "kind": "offal" });
    let found = listed(&caller, "spleen", "Pork spleen", offal);
    assert_eq!(found, ["animal-banned canada-eu-uk-4.16"]);
    let spleen = label(&caller, &cut(&caller, "spleen")).refused(409, None);
    assert_eq!(rows(&spleen), ["canada-eu-uk-4.16"]);
}

fn a_standard_is_held_against_what_went_in(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let mixed = json!({ "kind": "mixed" });
    listed(
        &caller,
        "breakfast",
        "Pork breakfast sausage",
        mixed.clone(),
    );
    listed(&caller, "italian", "Italian sausage", mixed.clone());
    // X-US-8: 3 % water of all ingredients, and X-US-9: 50 % fat.
    let made = |grams| with_water(&caller, "breakfast", "mix", grams);
    label(&caller, &made((10_000, 309, 10_309))).expect(200);
    let wet = label(&caller, &made((10_000, 310, 10_310))).refused(409, None);
    assert_eq!(rows(&wet), ["confirmed-X-US-8"]);
    change(
        &caller,
        "breakfast",
        &[("standard", json!({ "fat_percent": 51 }))],
    );
    let fat = label(&caller, &cut(&caller, "breakfast")).refused(409, None);
    assert_eq!(rows(&fat), ["confirmed-X-US-9"]);
    // X-US-11: no fennel, no salt.
    let bare = label(&caller, &cut(&caller, "italian")).refused(409, None);
    assert_eq!(rows(&bare), ["confirmed-X-US-11"]);
}

fn tenderised_beef_has_its_words(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    set(
        &caller,
        &[("profile", json!("ca")), ("languages", json!(["en", "fr"]))],
    );
    let steak = json!({ "species": "cattle", "names": { "en": "Beef steak", "fr": "Bifteck" },
        "standard": { "tenderised": true, "steak": true } });
    listed(&caller, "steak", "", steak);
    let plain =
        json!({ "species": "cattle", "names": { "en": "Beef strip", "fr": "Lanière de bœuf" } });
    listed(&caller, "strip", "", plain);
    let animal = json!({ "farm": "BRC", "species": "cattle", "killed_on": "2026-11-02",
        "carcass": "B-7" });
    let body = json!({ "product": "steak", "grams": 4_000, "place": "cooler", "animal": animal });
    let piece = caller.deed("/api/receipts", body).expect(201).code(0);
    // 4.18: the words of the law are printed, and go on to what is cut of it.
    let strip = json!({ "kind": "cut", "place": "bench", "inputs": [{ "lot": piece, "grams": 500 }],
        "outputs": [{ "product": "strip", "grams": 500 }] });
    let strip = caller.deed("/api/steps", strip).expect(201).code(0);
    for lot in [&piece, &strip] {
        let pdf = label(&caller, lot).expect(200);
        let text = words(&save(house.folder(), "tenderised.pdf", &pdf.bytes));
        // Each language keeps to itself.
        let english =
            "Must Be Cooked. Mechanically tenderized. Cook to a minimum internal temperature";
        let french =
            "Doit être cuit. Attendri mécaniquement. Faire cuire jusqu'à ce que la température";
        for sentence in [english, french] {
            let found = sentence.split(' ').all(|word| text.contains(word));
            assert!(found, "{sentence}: {text}");
        }
        assert!(!text.contains("attendri mécaniquement"), "{text}");
    }
}

fn tenderised_beef_tells_how_it_is_cooked(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let steak = |code: &str, name: &str, told: Value| {
        let told = json!({ "species": "cattle", "names": { "en": name }, "standard": told });
        listed(&caller, code, "", told);
        let animal = json!({ "farm": "BRC", "species": "cattle", "killed_on": "2026-11-02", "carcass": code });
        let body = json!({ "product": code, "grams": 4_000, "place": "cooler", "animal": animal });
        caller.deed("/api/receipts", body).expect(201).code(0)
    };
    let printed = |lot: &str| {
        let pdf = label(&caller, lot).expect(200);
        words(&save(house.folder(), "us-tenderised.pdf", &pdf.bytes))
    };
    let has = |text: &str, sentence: &str| {
        let found = sentence.split(' ').all(|word| text.contains(word));
        assert!(found, "{sentence}: {text}");
    };
    // us-F4: the word in the name, and how it is cooked; us-1.8-ground has the figures.
    let plain = steak("steak", "Beef steak", json!({ "tenderised": true }));
    let text = printed(&plain);
    has(&text, "Mechanically tenderized Beef steak");
    has(&text, "145 °F (63 °C), thermometer.");
    let own = json!({ "tenderised": true, "cooking": { "method": { "en": "Grill, turning twice" },
        "fahrenheit": 160 } });
    let own = steak("needled", "Needle tenderized steak", own);
    let text = printed(&own);
    has(&text, "Grill, turning twice 160 °F (72 °C). thermometer.");
    assert!(!text.contains("echanically"), "{text}");
    // What would not cook it is not printed.
    let cool = json!({ "tenderised": true, "cooking": { "fahrenheit": 140, "hold_minutes": 9 } });
    let cool = steak("rare", "Blade tenderized steak", cool);
    let refused = label(&caller, &cool).refused(409, None);
    assert_eq!(rows(&refused), ["us-1.8-ground"]);
    let none = json!({ "code": "x", "names": { "en": "X" }, "kind": "cut", "species": "cattle", "raw": true,
        "storage": "chilled", "standard": { "tenderised": true, "cooking": {} } });
    let none = caller.post("/api/products", &none);
    none.refused(422, Some("standard.cooking.fahrenheit"));
}

fn ground_beef_is_of_cattle_alone(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let mixed = json!({ "kind": "mixed", "species": "cattle" });
    listed(&caller, "ground", "Ground beef", mixed);
    let lot = with_water(&caller, "ground", "grind", (1_000, 0, 1_000));
    for (place, row) in [
        ("us", "confirmed-X-US-6"),
        ("ca", "canada-eu-uk-2.22-beef"),
        ("eu", "confirmed-X-EU-22-beef"),
        ("uk", "confirmed-X-EU-22-beef"),
    ] {
        set(&caller, &[("profile", json!(place))]);
        let refused = label(&caller, &lot).refused(409, None);
        assert!(rows(&refused).contains(&row), "{place}: {}", refused.body);
    }
}

fn sulphites_in_a_raw_sausage_are_told(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let sausage = |place: &str, nth: u32, name: &str, raw: bool, allergens: Value| {
        set(&caller, &[("profile", json!(place))]);
        let more = json!({ "kind": "mixed", "raw": raw, "allergens": allergens });
        let found = listed(&caller, &format!("{place}-{nth}"), name, more);
        { found.iter() }.any(|of| of == "animal-sulphites confirmed-X-EU-5")
    };
    let sulphites = || json!(["sulphites"]);
    assert!(sausage("eu", 1, "Pork sausage", true, sulphites()));
    assert!(!sausage("eu", 2, "Breakfast sausage", true, sulphites()));
    assert!(!sausage("eu", 3, "Pork sausage", true, json!([])));
    assert!(!sausage("eu", 4, "Cooked sausage", false, sulphites()));
    assert!(!sausage("us", 5, "Pork sausage", true, sulphites()));
}
