//! Deeds that undo, correct and count, and what the record tells of them afterwards.

use serde_json::json;
use stories::call::{chrono_day, fresh_id, moment};
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_mistake_is_voided_and_stays_visible
    what_was_used_stands_in_the_way
    a_voided_lot_stays_void_when_its_move_is_voided
    a_wrong_farm_is_corrected_after_use
    two_sides_are_one_animal
    one_animal_keeps_its_series_and_a_mix_does_not
    frozen_days_wait
    a_ham_dries_and_keeps_its_lot
    a_carton_tells_of_itself
    an_earlier_time_is_late
    the_lists_change_by_version
}

fn split(caller: &Caller, lot: &str, grams: &[u64]) -> Vec<String> {
    let outputs: Vec<_> = grams
        .iter()
        .map(|grams| json!({ "product": "pork-trim", "grams": grams }))
        .collect();
    let step = json!({ "kind": "break-down", "place": "bench", "inputs": [{ "lot": lot }], "outputs": outputs });
    let done = caller.deed("/api/steps", step).expect(201);
    (0..grams.len()).map(|nth| done.code(nth)).collect()
}

fn a_mistake_is_voided_and_stays_visible(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("0608-17", 10_000);
    let id = fresh_id();
    let step = json!({ "id": id, "by": "Cook", "kind": "cut", "place": "bench", "inputs": [{ "lot": pig, "grams": 4_000 }],
        "outputs": [{ "product": "pork-chop", "grams": 3_900 }] });
    let made = caller.post("/api/steps", &step).expect(201).code(0);
    let void = json!({ "id": fresh_id(), "by": "Cook", "why": "weighed the wrong piece" });
    caller
        .post(&format!("/api/steps/{id}/void"), &void)
        .expect(201);
    caller
        .post(&format!("/api/steps/{id}/void"), &void)
        .expect(200);
    let lot = caller.get(&format!("/api/lots/{pig}")).expect(200).body;
    assert_eq!(lot["on_hand_grams"], 10_000);
    assert!(
        lot["steps"]
            .as_array()
            .unwrap()
            .iter()
            .any(|step| step["voided"] == true)
    );
    assert_eq!(
        caller
            .get(&format!("/api/scan?code={made}"))
            .expect(200)
            .body["verdict"],
        "pull"
    );
    assert_eq!(
        caller.get(&format!("/api/steps/{id}")).expect(200).body["voided"]["why"],
        "weighed the wrong piece"
    );
    caller
        .deed("/api/departures", json!({ "kind": "serve", "lot": made }))
        .refused(409, "lot");
    caller
        .deed(&format!("/api/steps/{id}/void"), json!({ "why": "again" }))
        .refused(409, None);
    let void_id = void["id"].as_str().unwrap();
    caller
        .deed(
            &format!("/api/steps/{void_id}/void"),
            json!({ "why": "a void" }),
        )
        .refused(409, None);
    // The code stays taken.
    let again = caller
        .deed("/api/steps", {
            let mut step = step.clone();
            step["id"] = json!(null);
            step
        })
        .expect(201)
        .code(0);
    assert_ne!(again, made);
}

fn what_was_used_stands_in_the_way(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("0608-17", 10_000);
    let id = fresh_id();
    let step = json!({ "id": id, "by": "Cook", "kind": "cut", "place": "bench", "inputs": [{ "lot": pig }],
        "outputs": [{ "product": "pork-chop", "grams": 3_900 }] });
    let chops = caller.post("/api/steps", &step).expect(201).code(0);
    let (sold, served) = (fresh_id(), fresh_id());
    caller
        .post(
            "/api/departures",
            &json!({ "id": sold, "by": "C", "kind": "sell", "lot": chops, "grams": 200 }),
        )
        .expect(201);
    caller
        .post(
            "/api/departures",
            &json!({ "id": served, "by": "C", "kind": "serve", "lot": chops, "grams": 200 }),
        )
        .expect(201);
    let refused = caller
        .deed(&format!("/api/steps/{id}/void"), json!({ "why": "wrong" }))
        .refused(409, None);
    let in_the_way: Vec<&str> = refused.body["in_the_way"]
        .as_array()
        .unwrap()
        .iter()
        .map(|deed| deed["id"].as_str().unwrap())
        .collect();
    assert_eq!(in_the_way, [served.as_str(), sold.as_str()], "newest first");
    for deed in [&served, &sold, &id] {
        caller
            .deed(
                &format!("/api/steps/{deed}/void"),
                json!({ "why": "wrong" }),
            )
            .expect(201);
    }
    assert_eq!(
        caller.get(&format!("/api/lots/{pig}")).expect(200).body["on_hand_grams"],
        10_000
    );
}

fn a_voided_lot_stays_void_when_its_move_is_voided(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("0608-17", 10_000);
    let (cut, moved) = (fresh_id(), fresh_id());
    let step = json!({ "id": cut, "by": "Cook", "kind": "cut", "place": "bench", "inputs": [{ "lot": pig }],
        "outputs": [{ "product": "pork-chop", "grams": 3_900 }] });
    let chops = caller.post("/api/steps", &step).expect(201).code(0);
    let to = json!({ "id": moved, "by": "Cook", "lot": chops, "to": "cooler" });
    caller.post("/api/moves", &to).expect(201);
    for deed in [&cut, &moved] {
        caller
            .deed(
                &format!("/api/steps/{deed}/void"),
                json!({ "why": "wrong" }),
            )
            .expect(201);
    }
    let lot = caller.get(&format!("/api/lots/{chops}")).expect(200).body;
    assert_eq!(
        (&lot["on_hand_grams"], &lot["packs"][0]["is"]),
        (&json!(0), &json!("void"))
    );
    assert_eq!(
        caller
            .get(&format!("/api/scan?code={chops}"))
            .expect(200)
            .body["verdict"],
        "pull"
    );
}

fn a_wrong_farm_is_corrected_after_use(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let id = fresh_id();
    let receipt = json!({ "id": id, "by": "Cook", "place": "rail", "product": "pig-half", "grams": 10_000,
        "animal": { "farm": "BRC", "species": "pig", "killed_on": chrono_day(-2), "abattoir": "DEMO-17", "carcass": "7" } });
    let pig = caller.post("/api/receipts", &receipt).expect(201).code(0);
    let trim = split(&caller, &pig, &[6_000, 3_900]);
    let before = caller
        .get(&format!("/api/lots/{}/origins", trim[0]))
        .expect(200)
        .body;
    let correction = json!({ "step": id, "animal": { "farm": "NTB", "carcass": "8" }, "why": "the paper was of the other pig" });
    caller
        .deed("/api/corrections", correction.clone())
        .expect(201);
    let after = caller
        .get(&format!("/api/lots/{}/origins", trim[0]))
        .expect(200)
        .body;
    assert_eq!(
        (&before["animals"][0]["farm"], &after["animals"][0]["farm"]),
        (&json!("BRC"), &json!("NTB"))
    );
    assert_eq!(after["animals"][0]["carcass"], "8");
    assert_eq!(
        caller
            .get(&format!("/api/lots/{}", trim[0]))
            .expect(200)
            .body["code"],
        trim[0].as_str(),
        "codes stay"
    );
    let read = caller.get(&format!("/api/steps/{id}")).expect(200).body;
    assert_eq!(read["corrections"].as_array().unwrap().len(), 1);
    assert_eq!(
        read["asked"]["animal"]["farm"], "BRC",
        "the old fact stays visible"
    );
    caller
        .deed("/api/corrections", correction)
        .refused(422, "animal");
    // Forward from the animal as it is now known; the one it was taken for has nothing.
    let animals = caller.get("/api/animals?farm=NTB").expect(200).body;
    let now = animals["animals"][0]["id"].as_str().unwrap();
    let forward = caller
        .get(&format!("/api/animals/{now}/descendants"))
        .expect(200)
        .body;
    assert_eq!(forward["lots"].as_array().unwrap().len(), 3);
    assert!(
        caller.get("/api/animals?farm=BRC").expect(200).body["animals"]
            .as_array()
            .unwrap()
            .is_empty()
    );
    let void_of_correction = read["corrections"][0].as_str().unwrap();
    caller
        .deed(
            &format!("/api/steps/{void_of_correction}/void"),
            json!({ "why": "it was right" }),
        )
        .expect(201);
    let again = caller
        .get(&format!("/api/lots/{}/origins", trim[1]))
        .expect(200)
        .body;
    assert_eq!(again["animals"][0]["farm"], "BRC");
}

fn two_sides_are_one_animal(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let side = |side: &str| {
        json!({ "place": "rail", "product": "pig-half", "grams": 45_000,
        "animal": { "farm": "BRC", "species": "pig", "killed_on": chrono_day(-2), "abattoir": "DEMO-17", "carcass": "0608-17", "side": side } })
    };
    let left = caller
        .deed("/api/receipts", side("left"))
        .expect(201)
        .code(0);
    let right = caller
        .deed("/api/receipts", side("right"))
        .expect(201)
        .code(0);
    assert_eq!(left[..9], right[..9], "both are of the same letter");
    assert!(left.contains("A00") && right.contains("A0"));
    caller
        .deed("/api/receipts", side("left"))
        .refused(409, "animal.side");
    let step = json!({ "kind": "break-down", "place": "bench", "inputs": [{ "lot": left }, { "lot": right }],
        "outputs": [{ "product": "pork-trim", "grams": 80_000 }] });
    let trim = caller.deed("/api/steps", step).expect(201).code(0);
    assert_eq!(trim[..9], left[..9]);
    let origins = caller
        .get(&format!("/api/lots/{trim}/origins"))
        .expect(200)
        .body;
    assert_eq!(origins["animals"].as_array().unwrap().len(), 1);
    assert_eq!(origins["animals"][0]["share"], 1.0);
    let animal = origins["animals"][0]["id"].as_str().unwrap();
    let forward = caller
        .get(&format!("/api/animals/{animal}/descendants"))
        .expect(200)
        .body;
    assert_eq!(
        forward["lots"].as_array().unwrap().len(),
        3,
        "with the lots received of it"
    );
}

fn one_animal_keeps_its_series_and_a_mix_does_not(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let (one, other) = (caller.half_pig("1", 10_000), caller.half_pig("2", 10_000));
    let salt = caller.salt(1_000);
    let mix = |inputs: serde_json::Value| {
        let step = json!({ "kind": "mix", "place": "bench", "inputs": inputs, "outputs": [{ "product": "sausage", "grams": 900 }] });
        caller.deed("/api/steps", step).expect(201).code(0)
    };
    let salted = mix(json!([{ "lot": one, "grams": 1000 }, { "lot": salt, "grams": 16.5 }]));
    assert_eq!(salted[..9], one[..9], "salt has no species");
    let both = mix(json!([{ "lot": one, "grams": 600 }, { "lot": other, "grams": 400 }]));
    assert!(both.starts_with("CHK"), "{both}");
    let origins = caller
        .get(&format!("/api/lots/{both}/origins"))
        .expect(200)
        .body;
    let shares: Vec<f64> = origins["animals"]
        .as_array()
        .unwrap()
        .iter()
        .map(|animal| animal["share"].as_f64().unwrap())
        .collect();
    assert!(
        (shares[0] - 0.6).abs() < 1e-9 && (shares[1] - 0.4).abs() < 1e-9,
        "{shares:?}"
    );
    let read = caller.get(&format!("/api/lots/{salted}")).expect(200).body;
    assert_eq!(read["ingredients"]["en"], "half pig, salt");
}

fn frozen_days_wait(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("1", 10_000);
    let trim = split(&caller, &pig, &[6_000])[0].clone();
    let use_by = |caller: &Caller| {
        caller.get(&format!("/api/lots/{trim}")).expect(200).body["packs"][0].clone()
    };
    let fresh = use_by(&caller);
    let freeze = fresh_id();
    caller
        .post(
            "/api/moves",
            &json!({ "id": freeze, "by": "C", "lot": trim, "to": "freezer", "state": "frozen" }),
        )
        .expect(201);
    let frozen = use_by(&caller);
    assert_eq!(
        (&frozen["use_by"], &frozen["days_left"], &frozen["state"]),
        (&json!(null), &json!(4), &json!("frozen"))
    );
    assert_eq!(
        caller
            .get(&format!("/api/scan?code={trim}"))
            .expect(200)
            .body["verdict"],
        "not-for-sale"
    );
    caller
        .deed(
            &format!("/api/steps/{freeze}/void"),
            json!({ "why": "it was the other bag" }),
        )
        .expect(201);
    assert_eq!(use_by(&caller), fresh, "as if it had not been frozen");
}

fn a_ham_dries_and_keeps_its_lot(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("1", 10_000);
    let salt = caller.salt(1_000);
    let cure = json!({ "kind": "cure", "place": "bench", "inputs": [{ "lot": pig }, { "lot": salt }],
        "outputs": [{ "product": "ham", "grams": 10_000 }] });
    let ham = caller.deed("/api/steps", cure).expect(201);
    assert_eq!(ham.body["loss_grams"], 1_000);
    let ham = ham.code(0);
    caller
        .deed(
            "/api/steps",
            json!({ "kind": "hang", "place": "rail", "inputs": [{ "lot": ham }] }),
        )
        .expect(201);
    let weighed = caller
        .deed(
            "/api/readings",
            json!({ "lot": ham, "grams": 9_700.5, "water_activity": 0.914 }),
        )
        .expect(201);
    assert_eq!(weighed.body["lost_grams"].to_string(), "299.5");
    let lot = caller.get(&format!("/api/lots/{ham}")).expect(200).body;
    assert_eq!(lot["on_hand_grams"].to_string(), "9700.5");
    assert_eq!(lot["packs"][0]["place"], "rail");
    assert_eq!(lot["readings"].as_array().unwrap().len(), 2);
    let forward = caller
        .get(&format!("/api/lots/{pig}/descendants"))
        .expect(200)
        .body;
    assert_eq!(forward["lots"][0]["lost_grams"].to_string(), "299.5");
}

fn a_carton_tells_of_itself(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let carton = json!({ "place": "cooler", "product": "salt", "barcode": "]C1019952123454321631030012501026P0718-BEL7\u{1d}17301231" });
    let salt = caller.deed("/api/receipts", carton).expect(201);
    assert_eq!(
        (
            &salt.body["lots"][0]["grams"],
            &salt.body["lots"][0]["use_by"]
        ),
        (&json!(1_250), &json!("2030-12-31"))
    );
    let read = caller
        .get(&format!("/api/lots/{}/origins", salt.code(0)))
        .expect(200)
        .body;
    assert_eq!(read["bought"][0]["supplier_lot"], "26P0718-BEL7");
    let differs = json!({ "place": "cooler", "product": "salt", "grams": 5, "bought": { "supplier": "PTS", "supplier_lot": "X" },
        "barcode": "(01)99521234543216(10)26P0718-BEL7" });
    caller
        .deed("/api/receipts", differs)
        .refused(422, "bought.supplier_lot");
}

fn an_earlier_time_is_late(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let receipt = |at: String, note: Option<&str>| {
        json!({ "at": at, "note": note, "place": "cooler", "product": "salt", "grams": 10,
        "bought": { "supplier": "PTS" } })
    };
    let late = caller
        .deed("/api/receipts", receipt(moment(-120), None))
        .expect(201);
    assert_eq!(late.body["late"], true);
    let old = caller
        .deed(
            "/api/receipts",
            receipt(moment(-20 * 24 * 60), Some("found in the notebook")),
        )
        .expect(201);
    let read = caller
        .get(&format!("/api/steps/{}", old.body["id"].as_str().unwrap()))
        .expect(200)
        .body;
    assert!(read["at"].as_str().unwrap() < read["recorded_at"].as_str().unwrap());
}

fn the_lists_change_by_version(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let farm = json!({ "code": "MRF", "name": "Mire" });
    caller.post("/api/farms", &farm).expect(201);
    caller.post("/api/farms", &farm).expect(200);
    let other = json!({ "code": "MRF", "name": "Mirefold" });
    caller.post("/api/farms", &other).refused(409, "code");
    caller.put("/api/farms/MRF", &other).refused(428, None);
    let etag = caller.get("/api/farms/MRF").expect(200).etag.unwrap();
    let changed = caller
        .put_over("/api/farms/MRF", &etag, &other)
        .expect(200)
        .etag
        .unwrap();
    caller
        .put_over("/api/farms/MRF", &etag, &farm)
        .refused(412, None);
    assert_ne!(etag, changed);
    caller
        .post(
            "/api/farms",
            &json!({ "code": "CHK", "name": "The kitchen's own" }),
        )
        .refused(409, "code");
    caller
        .post(
            "/api/farms",
            &json!({ "code": "LOU", "name": "Look-alikes" }),
        )
        .refused(422, "code");
    let kitchen = caller.get("/api/kitchen").expect(200).body;
    assert_eq!(kitchen["missing"], json!(["address"]));
    caller.get("/api/farms/XYZ").refused(404, None);
    let recipe = json!({ "product": "sausage", "parts": [{ "product": "pork-trim", "grams": 767 }, { "product": "wine", "grams": 33 }] });
    caller.post("/api/recipes", &recipe).expect(201);
    caller
        .post(
            "/api/recipes",
            &json!({ "product": "wine", "parts": [{ "product": "sausage", "grams": 1 }] }),
        )
        .refused(422, "parts[0].product");
    let pig = caller.half_pig("1", 10_000);
    let step = json!({ "kind": "grind", "place": "grinder", "inputs": [{ "lot": pig }], "outputs": [{ "product": "sausage", "grams": 9_000 }] });
    let sausage = caller.deed("/api/steps", step).expect(201).code(0);
    let read = caller.get(&format!("/api/lots/{sausage}")).expect(200).body;
    assert_eq!(
        read["allergens"],
        json!(["sulphites"]),
        "the recipe brings what the inputs may not tell"
    );
}
