//! The cure room of the demo, on the morning of its story; cures that are refused with their numbers;
//! what the animal came to.

use serde_json::{Value, json};
use stories::day::{Told, farm};
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    every_piece_stands_where_the_story_says
    an_alarm_blocks_the_release_until_somebody_looked
    the_numbers_of_a_cure_are_its_own
    a_cure_beyond_the_law_is_refused_with_its_numbers
    a_cure_is_worked_out_before_anybody_weighs
    the_pig_adds_up_in_weight_and_money
    a_piece_that_nobody_weighed_is_noticed_at_the_bench
    a_salometer_tells_its_scale
}

fn number(value: &Value) -> f64 {
    value
        .as_f64()
        .unwrap_or_else(|| panic!("no number: {value}"))
}

fn every_piece_stands_where_the_story_says(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let room = caller.read("/api/cure-room");
    let pieces = room["pieces"].as_array().unwrap();
    let piece = |tag: &str| {
        pieces
            .iter()
            .find(|piece| piece["tag"] == tag)
            .unwrap_or_else(|| panic!("no {tag}"))
    };
    // The weighings of the story: grams of green weight, per cent lost, per cent expected.
    for (tag, days, lost, expected) in [
        ("H-01", 413, 31.89, 32.2),
        ("H-02", 413, 32.71, 32.2),
        ("H-03", 281, 27.85, 27.3),
        ("H-04", 281, 32.42, 27.3),
        ("H-05", 218, 23.53, 23.6),
        ("H-06", 106, 8.04, 13.8),
    ] {
        let piece = piece(tag);
        assert_eq!(piece["days"], days, "{tag}");
        assert!(
            (number(&piece["loss_percent"]) - lost).abs() < 0.01,
            "{piece}"
        );
        assert!(
            (number(&piece["expected_loss_percent"]) - expected).abs() < 0.1,
            "{piece}"
        );
    }
    for (tag, word) in [("H-04", "too fast"), ("H-06", "too slowly")] {
        assert!(
            piece(tag)["alarms"].to_string().contains(word),
            "{}",
            piece(tag)
        );
    }
    for tag in ["H-01", "H-02", "H-03", "H-05"] {
        assert_eq!(piece(tag)["alarms"].as_array().unwrap().len(), 0, "{tag}");
    }
    for tag in ["H-01", "C-02", "P-01"] {
        assert_eq!(piece(tag)["stage"], "released", "{tag}");
    }
    assert_eq!(piece("H-02")["may_be_released"], true);
    // H-07 and H-08 lie in salt and were never weighed.
    for tag in ["L09", "L10"] {
        assert_eq!(
            (&piece(tag)["stage"], &piece(tag)["loss_percent"]),
            (&json!("in-salt"), &Value::Null)
        );
    }
    let code = |tag: &str| piece(tag)["lot"].as_str().unwrap();
    let released = |tag: &str| caller.release(code(tag)).by("Oda Marsh");
    for (tag, says) in [("G-03", "19.54"), ("D-01", "29.49"), ("L09", "270")] {
        let refused = released(tag).refused(409, "lot");
        assert!(refused.contains(says), "{refused}");
    }
    released("H-02").done();
    assert_eq!(caller.verdict(code("L17")), "hold");
}

fn an_alarm_blocks_the_release_until_somebody_looked(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let ham = caller.noted("H-04");
    let release = || caller.release(&ham).by("Oda Marsh");
    let refused = release().refused(409, "lot");
    assert!(refused.contains("alarm"), "{refused}");
    let looked = "opened at the shank, no hard case, aw 0.88";
    release().with("alarm_looked_at", looked).done();
}

fn the_numbers_of_a_cure_are_its_own(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    // 17 g and 16 g of a 6.25 % cure on 6.975 kg and 6.510 kg.
    for (name, ppm) in [
        ("L11", 152.3),
        ("L15", 153.6),
        ("L13", 152.3),
        ("L17", 156.25),
    ] {
        let lot = caller.lot(&caller.noted(name));
        assert!(
            (number(&lot["cure"]["nitrite_ppm"]) - ppm).abs() < 0.05,
            "{name}: {}",
            lot["cure"]
        );
        assert!(
            lot["cure"]["because"][0]["source"]
                .as_str()
                .unwrap()
                .contains("us-"),
            "{}",
            lot["cure"]
        );
    }
}

fn salts(caller: &Caller) {
    let product = |code: &str, more: Value| {
        let mut body = json!({ "code": code, "names": { "en": code }, "kind": "ingredient", "storage": "ambient" });
        for (key, value) in more.as_object().unwrap() {
            body[key] = value.clone();
        }
        caller.post("/api/products", &body).expect(201);
    };
    product(
        "no-1",
        json!({ "curing_salt": { "nitrite_percent": 6.25 } }),
    );
    product(
        "no-2",
        json!({ "curing_salt": { "nitrite_percent": 6.25, "nitrate_percent": 4 } }),
    );
    product("unlabelled", json!({ "curing_salt": {} }));
    product(
        "belly",
        json!({ "kind": "cured", "species": "pig", "raw": true, "storage": "chilled", "cure": { "class": "bacon", "method": "dry" } }),
    );
    product(
        "plain",
        json!({ "kind": "cured", "species": "pig", "raw": true, "storage": "chilled" }),
    );
}

fn a_cure_beyond_the_law_is_refused_with_its_numbers(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    salts(&caller);
    let bag = |product: &str| {
        let bag = caller.receive(product).to("cooler").grams(1_000);
        bag.bought(json!({ "supplier": "PTS", "curing_salt": null }))
    };
    bag("unlabelled").refused(422, "bought.curing_salt");
    let first = bag("no-1").done();
    assert!(
        first.body["warnings"]
            .to_string()
            .contains("How strong the bag is"),
        "{}",
        first.body
    );
    let (one, two) = (first.code(0), bag("no-2").made());
    let pig = caller.half_pig("0608-17", 10_000);
    let cure = |salt: &str, grams: f64, product: &str| {
        let cure = caller.step("cure").of_grams(&pig, 1_000);
        cure.of_grams(salt, grams).into(product, 1_000)
    };
    // trade-N6: 7.8 g of no. 1 on a kilogram of belly is 487.5 ppm, and dry-cured bacon may have 200 (us-N14).
    let says = cure(&one, 7.8, "belly").refused(422, "inputs");
    assert!(
        says.contains("487.5") && says.contains("200") && says.contains("us-N14"),
        "{says}"
    );
    // us-N8: no nitrate in bacon.
    let refused = cure(&two, 2.5, "belly").refused(422, "inputs");
    assert!(refused.contains("us-N8"), "{refused}");
    // Nobody says how it is cured.
    cure(&one, 2.5, "plain").refused(422, "outputs[0].product");
    assert_eq!(
        caller.lot(&pig)["on_hand_grams"],
        10_000,
        "nothing was recorded"
    );
    let done = cure(&one, 2.5, "belly").done();
    assert!(
        done.body["warnings"].to_string().contains("poison"),
        "the caution stands where somebody decides: {}",
        done.body
    );
    let lot = caller.lot(&done.code(0));
    assert_eq!(lot["cure"]["nitrite_ppm"], 156.25);
}

fn a_cure_is_worked_out_before_anybody_weighs(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let plan = |more: Value| {
        let mut body = json!({ "class": "whole-muscle", "method": "equilibrium-brine", "meat_grams": 1000, "water_grams": 500, "salt_percent": 2,
            "curing_salt": { "nitrite_percent": 6.25 }, "target_ppm": 120 });
        for (key, value) in more.as_object().unwrap() {
            body[key] = value.clone();
        }
        caller.post("/api/cure-plans", &body)
    };
    // trade-N5: 120 ppm on 1000 g and 500 g of water are 2.88 g of a 6.25 % cure.
    let told = plan(json!({})).expect(200).body;
    assert!(
        (number(&told["curing_salt_grams"]) - 2.88).abs() < 0.001,
        "{told}"
    );
    assert_eq!(told["allowed"], true);
    assert!(told["caution"].as_str().unwrap().contains("poison"));
    // The salt in the cure counts: 2 % of 1500 g less what 2.88 g of cure bring.
    assert!((number(&told["salt_grams"]) - 27.3).abs() < 0.01, "{told}");
    assert_eq!(
        plan(json!({ "target_ppm": 400 })).expect(200).body["allowed"],
        false
    );
    plan(json!({ "salt_percent": 600 })).expect(422);
    plan(json!({ "curing_salt": {} })).expect(422);
    plan(json!({ "curing_salt": { "nitrite_percent": 0.0625 } })).expect(422);
    plan(json!({ "target_ppm": null })).refused(422, "dose_percent");
}

fn a_piece_that_nobody_weighed_is_noticed_at_the_bench(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let animal = farm("NTB").killed("2026-06-24").carcass("0624-9");
    let side = caller.receive("pig-half").grams(40_000);
    let side = side.from(animal.side("left")).made();
    let cut = caller.step("break-down").of(&side);
    let cut = cut.into("pork-ham", 9_800).into("pork-loin", 7_400);
    let warnings = cut.done().body["warnings"].to_string();
    assert!(
        warnings.contains("loss") || warnings.contains("weighed"),
        "{warnings}"
    );
}

fn a_salometer_tells_its_scale(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let read = |scale: &str| {
        let salometer = json!({ "degrees": 40, "scale": scale, "celsius": 4 });
        caller
            .deed(
                "/api/readings",
                json!({ "place": "cooler", "salometer": salometer }),
            )
            .expect(201)
            .body["warnings"]
            .clone()
    };
    // trade-2.4: 40 degrees of the scale of 60 °F are 10.56 %.
    let (sixty, cold) = (read("60F"), read("38F"));
    assert!(
        sixty[0].as_str().unwrap().contains("10.56\u{a0}%"),
        "{sixty}"
    );
    assert!(
        cold.as_array().unwrap().len() > sixty.as_array().unwrap().len(),
        "another scale warns: {cold}"
    );
}

fn the_pig_adds_up_in_weight_and_money(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let read =
        |name: &str, what: &str| caller.read(&format!("/api/lots/{}/{what}", caller.noted(name)));
    let cut = read("S10", "yield");
    let lines = cut["lines"].as_array().unwrap();
    assert_eq!(lines.len(), 13, "twelve pieces and the loss");
    let fine = |line: &Value| line["verdict"] == "usual" || line["verdict"] == "no-band";
    assert!(lines.iter().all(fine), "{cut}");
    // trade-8: the table of the half pig, 234.00 by sales value.
    for (name, cost) in [
        ("B10-01", 5553),
        ("B10-02", 6589),
        ("B10-03", 4768),
        ("B10-05", 2072),
        ("B10-11", 445),
    ] {
        assert_eq!(read(name, "cost")["cost_minor"], cost, "{name}");
    }
    // Curing, smoking and slicing carry the belly's cost on; a kilogram becomes dearer.
    let (belly, bacon) = (read("B10-03", "cost"), read("L13", "cost"));
    assert!(
        number(&bacon["per_kg_minor"]) > number(&belly["per_kg_minor"]),
        "{bacon}"
    );
    // The story counts the 9 g of salt in its 77.1 % of lard; salt is no yield.
    for (name, amount) in [("L18", 52.04), ("L12", 88.93), ("L25", 77.01)] {
        let line = read(name, "yield")["lines"][0].clone();
        assert!(
            (number(&line["amount"]) - amount).abs() < 0.1,
            "{name}: {line}"
        );
        assert_eq!(line["verdict"], "usual", "{name}: {line}");
    }
    let missing = read("L18", "cost");
    assert!(
        missing["cost_minor"].is_null() && missing["how"].to_string().contains("price_minor"),
        "{missing}"
    );
}
