//! What is in a bought lot is fixed when it is received: a list that changes later changes no lot, no label,
//! no scan and no step.

use super::corrections::{alike, corrects, product};
use serde_json::{Value, json};
use stories::call::fresh_id;
use stories::day::{Told, bought};
use stories::labels::{change, save, set, words};
use stories::printer::Manners;
use stories::queue::{numbers, print, wait};
use stories::{Caller, Engine, House, Printer, on_both_engines};

on_both_engines! {
    a_recipe_that_changes_later_changes_no_lot
    what_the_pack_declares_stands_on_the_label
    what_may_be_in_it_follows_to_the_label
    ingredients_that_were_wrong_make_labels_wrong
    what_a_pack_cannot_say_is_refused
}

/// A kitchen in which a sauce is bought whose recipe has fish and flour.
fn kitchen(engine: Engine) -> (House, Caller) {
    let house = House::furnished(engine);
    let caller = house.caller();
    with_sauce(&caller);
    (house, caller)
}

fn with_sauce(caller: &Caller) {
    let plain = |code: &str, allergens: Value| {
        let more = json!({ "species": null, "kind": "ingredient", "storage": "ambient", "allergens": allergens });
        product(caller, code, more);
    };
    plain("anchovy-paste", json!(["anchovy"]));
    plain("flour", json!(["wheat"]));
    plain("tomato", json!([]));
    plain("milk-powder", json!(["milk"]));
    plain("sauce", json!([]));
    plain("beans", json!([]));
    product(
        caller,
        "stew",
        json!({ "species": null, "kind": "mixed", "names": { "en": "Stew", "fr": "Ragoût" } }),
    );
    let recipe = json!({ "product": "sauce", "parts": [{ "product": "tomato", "grams": 800 },
        { "product": "anchovy-paste", "grams": 150 }, { "product": "flour", "grams": 50 }] });
    caller.post("/api/recipes", &recipe).expect(201);
}

fn sauce(caller: &Caller, id: &str, declares: Value) -> String {
    let mut paper = bought("PTS", "S-1");
    if !declares.is_null() {
        paper["declares"] = declares;
    }
    let sauce = caller.receive("sauce").to("cooler").grams(2_000);
    sauce.bought(paper).id(id).made()
}

fn beans(caller: &Caller) -> String {
    let beans = caller.receive("beans").to("cooler").grams(5_000);
    beans.bought(bought("PTS", "B-1")).made()
}

fn stew(caller: &Caller, beans: &str, sauce: &str) -> String {
    let mix = caller.step("mix").of_grams(beans, 900).of_grams(sauce, 100);
    mix.into("stew", 1_000).made()
}

fn told(caller: &Caller, lot: &str) -> Value {
    let of = caller.lot(lot);
    let why = caller.why(lot);
    let scan = caller.read(&format!("/api/scan?code={lot}"));
    json!([
        of["ingredients"],
        of["contains"],
        of["allergens"],
        of["may_contain"],
        of["names"],
        of["raw"],
        of["species"],
        of["declared"],
        why["allergens"],
        why["ingredients"],
        why["because"]["contents"],
        scan["allergens"],
        scan["may_contain"],
        scan["verdict"],
    ])
}

fn a_recipe_that_changes_later_changes_no_lot(engine: Engine) {
    let (house, caller) = kitchen(engine);
    let beans = beans(&caller);
    let old = sauce(&caller, &fresh_id(), Value::Null);
    let made = stew(&caller, &beans, &old);
    let lot = caller.lot(&old);
    assert_eq!(lot["allergens"], json!(["wheat", "anchovy"]));
    assert_eq!(lot["declared"]["ingredients_by"], "list");
    assert_eq!(caller.lot(&made)["allergens"], json!(["wheat", "anchovy"]));
    let list = caller.lot(&made)["ingredients"]["en"].to_string();
    assert!(
        list.contains("sauce (tomato, anchovy-paste, flour)"),
        "{list}"
    );
    let why = caller.why(&made)["because"]["contents"].to_string();
    assert!(
        why.contains("counts as the supplier's declaration"),
        "{why}"
    );
    let scan = caller.read(&format!("/api/scan?code={old}"));
    assert_eq!(scan["allergens"], json!(["wheat", "anchovy"]));
    let label = |lot: &str| {
        let path = format!("/api/lots/{lot}/labels.pdf?template=pack-tall");
        words(&save(
            house.folder(),
            "pack.pdf",
            &caller.get(&path).expect(200).bytes,
        ))
    };
    let before = (told(&caller, &old), told(&caller, &made), label(&made));
    // The supplier has a new recipe, and the list learns more of everything.
    let path = "/api/recipes/sauce";
    let entry = caller.get(path).expect(200);
    let recipe = json!({ "product": "sauce", "parts": [{ "product": "tomato", "grams": 700 },
        { "product": "milk-powder", "grams": 300 }] });
    caller
        .put_over(path, &entry.etag.unwrap(), &recipe)
        .expect(200);
    change(
        &caller,
        "sauce",
        &[
            ("names", json!({ "en": "Red sauce" })),
            ("allergens", json!(["celery"])),
            ("raw", json!(true)),
            ("species", json!("chicken")),
        ],
    );
    change(
        &caller,
        "tomato",
        &[
            ("names", json!({ "en": "Peeled tomato" })),
            ("allergens", json!(["egg"])),
        ],
    );
    assert_eq!(
        (told(&caller, &old), told(&caller, &made), label(&made)),
        before
    );
    // A step that is made of it later is made of what came in.
    let later = stew(&caller, &beans, &old);
    assert_eq!(caller.lot(&later)["allergens"], json!(["wheat", "anchovy"]));
    assert_eq!(
        caller.lot(&later)["ingredients"],
        caller.lot(&made)["ingredients"]
    );
    // What comes in now is by the list of now.
    let new = sauce(&caller, &fresh_id(), Value::Null);
    assert_eq!(
        caller.lot(&new)["allergens"],
        json!(["milk", "egg", "celery"])
    );
    let list = caller.lot(&new)["ingredients"]["en"].to_string();
    assert!(list.contains("peeled tomato, milk-powder"), "{list}");
}

fn what_the_pack_declares_stands_on_the_label(engine: Engine) {
    let (house, caller) = kitchen(engine);
    let beans = beans(&caller);
    let declares =
        json!({ "ingredients": { "en": "tomato 60 %, water, Milk, salt" }, "allergens": ["milk"] });
    let sauce = sauce(&caller, &fresh_id(), declares);
    let made = stew(&caller, &beans, &sauce);
    let lot = caller.lot(&made);
    assert_eq!(lot["allergens"], json!(["milk"]));
    assert_eq!(caller.lot(&sauce)["declared"]["ingredients_by"], "pack");
    assert_eq!(caller.lot(&sauce)["declared"]["allergens_by"], "pack");
    let list = lot["ingredients"]["en"].as_str().unwrap();
    assert!(
        list.contains("sauce (tomato 60 %, water, Milk, salt)"),
        "{list}"
    );
    // The pack has no French: its own words stand there, and somebody is told.
    let french = lot["ingredients"]["fr"].as_str().unwrap();
    assert!(french.contains("tomato 60 %"), "{french}");
    let findings = lot["statement_findings"].to_string();
    assert!(
        findings.contains("statement-declared-elsewhere"),
        "{findings}"
    );
    // In Europe the word stands out in the list.
    set(&caller, &[("profile", json!("eu"))]);
    let list = caller.lot(&made)["ingredients"]["en"].to_string();
    assert!(list.contains("MILK") && !list.contains("TOMATO"), "{list}");
    let own = caller.lot(&sauce)["ingredients"]["en"].to_string();
    assert_eq!(own, "\"tomato 60 %, water, MILK, salt\"");
    set(&caller, &[("profile", json!("us"))]);
    let path = format!("/api/lots/{made}/labels.pdf?template=pack-tall");
    let label = words(&save(
        house.folder(),
        "pack.pdf",
        &caller.get(&path).expect(200).bytes,
    ));
    assert!(label.contains("tomato 60 %, water, Milk, salt"), "{label}");
    // An allergen that the words name and nobody told is counted in.
    let paper = json!({ "supplier": "PTS", "supplier_lot": "S-2", "declares": {
        "ingredients": { "en": "tomato, celery, mustard seed, wheat flour" }, "allergens": ["milk"] } });
    let other = caller.receive("sauce").to("cooler").grams(500);
    let other = other.bought(paper).done();
    assert_eq!(
        caller.lot(&other.code(0))["allergens"],
        json!(["milk", "wheat"])
    );
    let keys = other.body["warning_keys"].to_string();
    assert!(keys.contains("supplied-named"), "{keys}");
    // So is one that only a plain food's own name tells (us-A1, trade-food-words), and what may be in it is no more
    // than that.
    let paper = json!({ "supplier": "PTS", "supplier_lot": "S-3", "declares": { "allergens": [],
        "ingredients": { "en": "cream, tahini, coconut milk, cocoa butter. May contain almonds" } } });
    let plain = caller.receive("sauce").to("cooler").grams(500);
    let plain = plain.bought(paper).done();
    let lot = caller.lot(&plain.code(0));
    assert_eq!(lot["allergens"], json!(["milk", "sesame"]));
    assert_eq!(lot["may_contain"], json!(["almond"]));
    let keys = plain.body["warning_keys"].to_string();
    assert!(keys.contains("supplied-named"), "{keys}");
    let why = caller.why(&plain.code(0))["because"]["contents"].to_string();
    assert!(why.contains("us-A1"), "{why}");
}

fn what_may_be_in_it_follows_to_the_label(engine: Engine) {
    let (house, caller) = kitchen(engine);
    let beans = beans(&caller);
    let declares =
        json!({ "allergens": ["wheat", "anchovy"], "may_contain": ["wheat", "egg", "pecan"] });
    let sauce = sauce(&caller, &fresh_id(), declares);
    let made = stew(&caller, &beans, &sauce);
    let tubs = caller.step("pack").of_grams(&made, 500);
    let tubs = tubs.into_packs("stew", 500, 2).made();
    for lot in [&sauce, &made, &tubs] {
        let of = caller.lot(lot);
        assert_eq!(of["may_contain"], json!(["egg", "pecan"]), "{lot}");
        assert_eq!(of["allergens"], json!(["wheat", "anchovy"]), "{lot}");
        let scan = caller.read(&format!("/api/scan?code={lot}/1"));
        assert_eq!(scan["may_contain"], json!(["egg", "pecan"]), "{lot}");
        let why = caller.why(lot);
        assert_eq!(why["may_contain"], json!(["egg", "pecan"]), "{lot}");
        let because = why["because"]["contents"].to_string();
        assert!(because.contains("may contain"), "{because}");
    }
    let path = format!("/api/lots/{tubs}/labels.pdf?packs=1&template=pack-tall");
    let label = words(&save(
        house.folder(),
        "pack.pdf",
        &caller.get(&path).expect(200).bytes,
    ));
    assert!(
        label.contains("Contains: anchovy, wheat") && label.contains("May contain: egg, pecan"),
        "{label}"
    );
    for page in [format!("/lots/{tubs}"), format!("/scan?code={tubs}/1")] {
        let page = String::from_utf8_lossy(&caller.get(&page).expect(200).bytes).into_owned();
        let page = page.to_lowercase();
        assert!(page.contains("may contain: egg, pecan"), "{page}");
    }
    // Once it is in it, it does not perhaps.
    let egg = json!({ "species": null, "kind": "ingredient", "storage": "ambient", "allergens": ["egg"] });
    product(&caller, "egg", egg);
    let egg = caller.receive("egg").to("cooler").grams(100);
    let egg = egg.bought(bought("PTS", "E-1")).made();
    let mix = caller.step("mix").of_grams(&made, 400).of_grams(&egg, 50);
    let mixed = caller.lot(&mix.into("stew", 450).made());
    assert_eq!(mixed["allergens"], json!(["egg", "wheat", "anchovy"]));
    assert_eq!(mixed["may_contain"], json!(["pecan"]));
}

fn ingredients_that_were_wrong_make_labels_wrong(engine: Engine) {
    let printer = Printer::new(Manners::default());
    let house = stories::queue::kitchen(engine, &printer);
    let caller = house.caller();
    with_sauce(&caller);
    let wrong = json!({ "ingredients": { "en": "tomato, salt" }, "allergens": ["milk"], "may_contain": ["egg"] });
    let right = json!({ "ingredients": { "en": "tomato, cream" }, "allergens": ["milk"], "may_contain": ["pecan"] });
    let day = |caller: &Caller, declares: &Value| {
        let id = fresh_id();
        let beans = beans(caller);
        let sauce = sauce(caller, &id, declares.clone());
        let made = stew(caller, &beans, &sauce);
        let tubs = caller.step("pack").of_grams(&made, 800);
        let tubs = tubs.into_packs("stew", 800, 2).made();
        (id, vec![sauce, made, tubs])
    };
    let (receipt, lots) = day(&caller, &wrong);
    wait(&caller, &print(&caller, &lots[2]), &["printed"]);
    caller.sell(&format!("{}/1", lots[2])).done();
    let tried = caller
        .correct(&receipt)
        .with("bought", json!({ "declares": right }));
    let tried = tried
        .with("try", true)
        .why("its paper")
        .ask()
        .expect(200)
        .body;
    assert_eq!(
        tried["changes"][0]["ingredients"]["now"],
        json!({ "en": "tomato, cream" })
    );
    assert_eq!(tried["changes"][1]["may_contain"]["now"], json!(["pecan"]));
    let listed = |query: &str| caller.read(&format!("/api/wrong-labels{query}"))["packs"].clone();
    assert_eq!(listed(""), json!([]), "nothing was recorded");
    let done = corrects(
        caller
            .correct(&receipt)
            .with("bought", json!({ "declares": right })),
    );
    let (_other, second) = kitchen(engine);
    let (_, its) = day(&second, &right);
    alike((&caller, &lots[..2]), (&second, &its[..2]));
    for (one, other) in lots.iter().zip(&its) {
        for field in [
            "ingredients",
            "may_contain",
            "may_contain_statement",
            "allergens",
        ] {
            assert_eq!(
                caller.lot(one)[field],
                second.lot(other)[field],
                "{one} {field}"
            );
        }
    }
    let about = |packs: &Value| -> Vec<Value> {
        let untrue = packs[0]["untrue"].as_array().unwrap().iter();
        untrue.map(|one| one["about"].clone()).collect()
    };
    assert_eq!(about(&listed("")), [json!("allergen"), json!("ingredient")]);
    assert_eq!(listed("")[0]["pack"], 2);
    assert_eq!(listed("?sold=true")[0]["pack"], 1);
    assert_eq!(caller.verdict(&format!("{}/2", lots[2])), "hold");
    caller
        .void(done["id"].as_str().unwrap())
        .why("it was right")
        .done();
    assert_eq!(listed(""), json!([]));
    assert_eq!(caller.lot(&lots[1])["may_contain"], json!(["egg"]));
    // Of ingredients alone, the lists of what was made of it are otherwise too, and the labels of all.
    let only = json!({ "declares": { "ingredients": { "en": "tomato, cream" } } });
    let done = corrects(caller.correct(&receipt).with("bought", only));
    assert_eq!(done["changes"].as_array().map(Vec::len), Some(3));
    assert_eq!(about(&listed("")), [json!("ingredient")]);
    let again = json!({ "printer": "bench", "lot": lots[2], "packs": [2], "again": { "why": "the label was wrong" } });
    let again = caller.deed("/api/prints", again).expect(201).body;
    wait(&caller, &numbers(&again), &["printed"]);
    assert_eq!(listed(""), json!([]));
}

fn what_a_pack_cannot_say_is_refused(engine: Engine) {
    let (_house, caller) = kitchen(engine);
    for declares in [
        json!({ "ingredients": { "en": " " } }),
        json!({ "ingredients": { "english": "tomato" } }),
        json!({ "ingredients": { "": "tomato" } }),
    ] {
        let sauce = caller.receive("sauce").to("cooler").grams(500);
        let answer = sauce
            .bought(json!({ "supplier": "PTS", "declares": declares }))
            .ask();
        assert_eq!(answer.status, 422, "{declares}: {}", answer.body);
    }
    let sauce = caller.receive("sauce").to("cooler").grams(500);
    let answer = sauce
        .bought(json!({ "supplier": "PTS", "declares": { "may_contain": ["gravel"] } }))
        .ask();
    assert_eq!(answer.status, 422, "{}", answer.body);
}
