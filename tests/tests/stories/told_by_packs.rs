//! What packs tell and do not tell: a bought mixture of which nobody said anything goes to no customer, and a name
//! denies nothing that a pack declares. And where the animals lived, which a label tells, is corrected on it.

use super::names::{label, listed};
use serde_json::{Value, json};
use stories::day::Told;
use stories::labels::{change, save, set, words};
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_bought_mixture_that_nobody_told_of_goes_to_no_customer
    no_name_denies_the_nitrite_that_a_pack_declares
    a_bag_is_told_once
    where_the_animal_lived_is_corrected_on_labels_that_tell_it
}

fn bought(caller: &Caller, product: &str, declares: Value) -> stories::Answer {
    let mut of = json!({ "supplier": "PTS", "supplier_lot": "K-1" });
    if !declares.is_null() {
        of["declares"] = declares;
    }
    let receipt = json!({ "place": "cooler", "product": product, "grams": 2_000, "bought": of });
    caller.deed("/api/receipts", receipt)
}

fn mixed(caller: &Caller, parts: &[(&str, u64)], into: &str) -> String {
    let inputs: Vec<Value> = parts
        .iter()
        .map(|(lot, grams)| json!({ "lot": lot, "grams": grams }))
        .collect();
    let grams: u64 = parts.iter().map(|(_, grams)| grams).sum();
    let step = json!({ "kind": "mix", "place": "bench", "inputs": inputs,
        "outputs": [{ "product": into, "grams": grams }] });
    caller.deed("/api/steps", step).expect(201).code(0)
}

/// `us-I3`, `canada-eu-uk-9.1`: in every place the same, for what nobody told no law can be held.
fn a_bought_mixture_that_nobody_told_of_goes_to_no_customer(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    listed(
        &caller,
        "link",
        "Bought sausage",
        json!({ "kind": "mixed" }),
    );
    listed(&caller, "dish", "Pork dish", json!({ "kind": "mixed" }));
    listed(&caller, "mince", "Ground pork", json!({ "kind": "mixed" }));
    let pig = caller.half_pig("0608-17", 10_000);
    for place in ["us", "eu"] {
        set(&caller, &[("profile", json!(place))]);
        let came = bought(&caller, "link", Value::Null).expect(201);
        let (receipt, link) = (came.body["id"].as_str().unwrap().to_owned(), came.code(0));
        let keys = came.body["warning_keys"].as_array().unwrap();
        assert!(
            keys.contains(&json!("receive-not-told")),
            "{place} {keys:?}"
        );
        let dish = mixed(&caller, &[(&pig, 400), (&link, 100)], "dish");
        for lot in [&link, &dish] {
            assert_eq!(caller.lot(lot)["allergens_known"], false, "{place} {lot}");
            assert_eq!(caller.verdict(lot), "hold", "{place} {lot}");
            let pack = format!("/api/lots/{lot}/labels.pdf?template=pack-{place}");
            assert_eq!(
                caller.get(&pack).expect(409).body["type"],
                "/problems/label-refused"
            );
        }
        // Letting it go does not tell what is in it; its pack does, once somebody has read it.
        let let_go = json!({ "lot": dish, "what": "released", "why": "it looks good" });
        caller.deed("/api/dispositions", let_go).refused(409, "lot");
        let declares = json!({ "allergens": ["wheat"],
            "ingredients": { "en": "pork, rusk (wheat flour), salt", "fr": "porc, chapelure (farine de blé), sel" } });
        let say = json!({ "step": receipt, "bought": { "declares": declares }, "why": "read it off the pack" });
        let told = caller.deed("/api/corrections", say).expect(201).body;
        assert_eq!(told["changes"].as_array().unwrap().len(), 2, "{told}");
        for lot in [&link, &dish] {
            let read = caller.lot(lot);
            assert_eq!(read["allergens_known"], true, "{place} {lot}");
            assert_eq!(read["allergens"], json!(["wheat"]), "{place} {lot}");
            assert_eq!(caller.verdict(lot), "sell", "{place} {lot}");
            label(&caller, lot).expect(200);
        }
    }
    // What its name alone tells is one thing, and so is what a pack tells to have none.
    let mince = bought(&caller, "mince", Value::Null).expect(201).code(0);
    let link = bought(&caller, "link", json!({ "allergens": [] })).expect(201);
    for lot in [mince, link.code(0)] {
        assert_eq!(caller.lot(&lot)["allergens_known"], true, "{lot}");
    }
}

/// `us-U1`, `us-4.5-fresh`: read against the whole list, the declared words of bought parts included.
fn no_name_denies_the_nitrite_that_a_pack_declares(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let bits = json!({ "kind": "cooked", "raw": false, "storage": "chilled" });
    listed(&caller, "bits", "Bacon bits", bits);
    let names = [
        "Uncured pork mix",
        "Pork mix, no nitrite added",
        "Nitrite-free pork mix",
        "Fresh pork sausage",
    ];
    let pig = caller.half_pig("0608-17", 10_000);
    let made = |declared: &str, nth: usize| {
        let list = json!({ "en": declared, "fr": declared });
        let declares = json!({ "ready": true, "allergens": [], "ingredients": list });
        let bits = bought(&caller, "bits", declares).expect(201).code(0);
        mixed(&caller, &[(&pig, 450), (&bits, 50)], &format!("mix-{nth}"))
    };
    for (nth, name) in names.iter().enumerate() {
        listed(
            &caller,
            &format!("mix-{nth}"),
            name,
            json!({ "kind": "mixed" }),
        );
        for declared in ["pork, salt, sodium nitrite", "pork, salt, E 250"] {
            label(&caller, &made(declared, nth)).refused(409, None);
        }
        label(&caller, &made("pork, salt", nth)).expect(200);
    }
    // Celery powder is no nitrite that was added, but there is some in it.
    let celery = "pork, salt, celery powder";
    label(&caller, &made(celery, 1)).expect(200);
    label(&caller, &made(celery, 2)).refused(409, None);
    label(&caller, &made(celery, 3)).refused(409, None);
}

fn a_bag_is_told_once(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pink = json!({ "code": "pink", "names": { "en": "Pink salt" }, "kind": "ingredient", "storage": "ambient",
        "stable_as": "curing-salt", "curing_salt": { "nitrite_percent": 6.25 } });
    caller.post("/api/products", &pink).expect(201);
    let told = |bag: Value, pack: Value| {
        let of = json!({ "supplier": "PTS", "curing_salt": bag, "declares": { "strength": pack } });
        let receipt = json!({ "place": "cooler", "product": "pink", "grams": 1_000, "bought": of });
        caller.deed("/api/receipts", receipt)
    };
    let percent = |nitrite: f64| json!({ "nitrite_percent": nitrite });
    told(percent(6.25), percent(3.0)).refused(422, "bought.declares.strength");
    let potassium = json!({ "nitrite_percent": 6.25, "nitrite_of": "potassium" });
    let sodium = json!({ "nitrite_percent": 6.25, "nitrite_of": "sodium" });
    told(sodium, potassium).refused(422, "bought.declares.strength");
    let bag = told(percent(6.25), percent(6.25)).expect(201);
    let change = json!({ "curing_salt": percent(6.25), "declares": { "strength": percent(5.0) } });
    let wrong = json!({ "step": bag.body["id"], "bought": change, "why": "read again" });
    caller
        .deed("/api/corrections", wrong)
        .refused(422, "bought.declares.strength");
}

/// `confirmed-10.1`: what a label says of where its animal lived and died is no longer so.
fn where_the_animal_lived_is_corrected_on_labels_that_tell_it(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    set(&caller, &[("profile", json!("eu"))]);
    let entry = |path: &str, fields: Value| {
        let known = caller.get(path).expect(200);
        let mut body = known.body.clone();
        for (key, value) in fields.as_object().unwrap() {
            body[key] = value.clone();
        }
        let etag = known.etag.unwrap();
        caller.put_over(path, &etag, &body).expect(200);
    };
    entry("/api/farms/BRC", json!({ "country": "IE" }));
    entry("/api/farms/NTB", json!({ "country": "FR" }));
    entry("/api/abattoirs/DEMO-17", json!({ "country": "IE" }));
    let pig = caller.half_pig("0608-17", 10_000);
    let cut = caller.step("cut").of_grams(&pig, 2_000);
    let lot = cut.into_packs("pork-chop", 2_000, 2).made();
    let printed = || {
        let text = caller
            .get(&format!("/api/lots/{lot}/labels.pdf"))
            .expect(200);
        words(&save(house.folder(), "origin.pdf", &text.bytes))
    };
    let reared = |of: &str| {
        let said = printed();
        assert!(said.contains(&format!("Reared in: {of}")), "{said}");
    };
    reared("Ireland");
    let asked = |more: Value| {
        let mut asked = json!({ "lot": lot });
        asked
            .as_object_mut()
            .unwrap()
            .extend(more.as_object().unwrap().clone());
        caller.deed("/api/label-documents", asked).expect(201)
    };
    asked(json!({}));
    let wrong = || {
        let read = caller.read("/api/wrong-labels");
        let of = |pack: &Value| pack["untrue"][0]["about"].clone();
        read["packs"]
            .as_array()
            .unwrap()
            .iter()
            .map(of)
            .collect::<Vec<Value>>()
    };
    assert_eq!(
        (wrong(), caller.verdict(&format!("{lot}/1"))),
        (vec![], json!("sell"))
    );
    // It was of another farm, in another country.
    let receipt = caller.lot(&pig)["made_by_step"].clone();
    let other =
        json!({ "step": receipt, "animal": { "farm": "NTB" }, "why": "the papers were swapped" });
    caller.deed("/api/corrections", other).expect(201);
    reared("France");
    let both = vec![json!("origin"); 2];
    assert_eq!(
        (wrong(), caller.verdict(&format!("{lot}/1"))),
        (both.clone(), json!("hold"))
    );
    asked(json!({ "again": { "why": "the origin was wrong" } }));
    assert_eq!(wrong(), Vec::<Value>::new());
    // The list had the wrong country of the abattoir.
    entry("/api/abattoirs/DEMO-17", json!({ "country": "FR" }));
    assert_eq!(wrong(), both);
    entry("/api/abattoirs/DEMO-17", json!({ "country": "IE" }));
    assert_eq!(wrong(), Vec::<Value>::new());
    // Another name of the farm makes no label wrong.
    entry("/api/farms/NTB", json!({ "name": "Harrow Hill" }));
    change(
        &caller,
        "pork-chop",
        &[("price_minor_per_kg", json!(2_000))],
    );
    assert_eq!(wrong(), Vec::<Value>::new());
}
