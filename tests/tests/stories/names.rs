//! What a food may be called: warned of when it is listed, refused or warned of when its label is asked for.

use serde_json::{Value, json};
use stories::call::fresh_id;
use stories::labels::{change, set};
use stories::{Answer, Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_name_is_looked_at_when_it_is_listed
    a_name_that_is_wrong_has_no_label_and_one_that_nobody_can_judge_has
    a_name_is_judged_by_what_went_in_and_not_by_the_list
    each_place_asks_for_its_own
    figures_that_cannot_be_are_refused_at_the_door
    what_is_made_of_several_things_tells_its_parts
    the_share_of_what_the_name_speaks_of_stands_in_the_list
    no_name_denies_what_is_in_it
}

/// A product for the counter, with what is said of it besides.
fn product(code: &str, name: &str, more: Value) -> Value {
    let mut body = json!({ "code": code, "names": { "en": name }, "kind": "cut", "species": "pig",
        "raw": true, "keep": { "days": 5, "from": "made", "day_one_counts": true },
        "price_minor_per_kg": 2_600 });
    for (field, value) in more.as_object().unwrap() {
        body[field] = value.clone();
    }
    body
}

/// Lists a product; what it is warned of, each as key and first row.
pub(super) fn listed(caller: &Caller, code: &str, name: &str, more: Value) -> Vec<String> {
    let answer = caller.post("/api/products", &product(code, name, more));
    warned(&answer.expect(201))
}

fn warned(answer: &Answer) -> Vec<String> {
    let warnings = answer.body["warnings"].as_array().into_iter().flatten();
    let told = warnings.map(|of| {
        let words = |field: &str| of[field].as_str().unwrap().to_owned();
        assert!(words("says").len() > 20, "{of}");
        assert_eq!(
            of["gravity"], "warn",
            "nothing is refused when it is listed"
        );
        format!(
            "{} {}",
            words("key"),
            of["rows"][0].as_str().unwrap_or("no row")
        )
    });
    told.collect()
}

/// Cuts that product from a fresh half pig; the lot.
pub(super) fn cut(caller: &Caller, code: &str) -> String {
    let pig = caller.half_pig(&fresh_id()[..8], 10_000);
    let step = json!({ "kind": "cut", "place": "bench", "inputs": [{ "lot": pig }],
        "outputs": [{ "product": code, "grams": 500 }] });
    caller.deed("/api/steps", step).expect(201).code(0)
}

pub(super) fn label(caller: &Caller, lot: &str) -> Answer {
    caller.get(&format!("/api/lots/{lot}/labels.pdf"))
}

fn a_name_is_looked_at_when_it_is_listed(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    // us-4.5-ham: ham alone is the hind leg of a pig.
    let found = listed(&caller, "fore", "Smoked ham", json!({ "cut": "picnic" }));
    assert_eq!(found, ["name-cut-of us-4.5-ham"]);
    assert_eq!(
        listed(&caller, "hind", "Smoked ham", json!({ "cut": "ham" })),
        Vec::<String>::new()
    );
    assert_eq!(
        listed(&caller, "chop-2", "Pork chop", json!({ "cut": "loin" })),
        Vec::<String>::new()
    );
    // us-4.5-country; bread is no meat.
    let found = listed(
        &caller,
        "country",
        "Country sausage",
        json!({ "kind": "trim" }),
    );
    assert_eq!(found, ["name-made-there us-4.5-country"]);
    let bread = json!({ "kind": "ingredient", "species": null });
    assert_eq!(
        listed(&caller, "bread", "Country bread", bread),
        Vec::<String>::new()
    );
    // A change is looked at too, in the reader's language; what was told may be sent back.
    let entry = caller.get("/api/products/hind").expect(200);
    let mut body = entry.body.clone();
    body["cut"] = json!("butt");
    body["warnings"] = json!([]);
    let changed = caller.put_over("/api/products/hind", &entry.etag.unwrap(), &body);
    let changed = changed.expect(200);
    assert_eq!(warned(&changed), ["name-cut-of us-4.5-ham"]);
    let read = caller.get("/api/products/hind").expect(200).body;
    assert!(
        read["warnings"].is_null(),
        "it would be wrong tomorrow: {read}"
    );
}

fn a_name_that_is_wrong_has_no_label_and_one_that_nobody_can_judge_has(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    caller
        .post(
            "/api/products",
            &product("fore", "Smoked ham", json!({ "cut": "picnic" })),
        )
        .expect(201);
    caller
        .post("/api/products", &product("some", "Smoked ham", json!({})))
        .expect(201);
    caller
        .post(
            "/api/products",
            &product("hind", "Smoked ham", json!({ "cut": "ham" })),
        )
        .expect(201);
    let printer =
        json!({ "code": "pass", "name": "Pass", "address": "ipp://127.0.0.1:9/ipp/print" });
    caller.post("/api/printers", &printer).expect(201);
    let print = |lot: &str| caller.deed("/api/prints", json!({ "printer": "pass", "lot": lot }));

    let wrong = cut(&caller, "fore");
    let refused = label(&caller, &wrong).refused(409, None);
    let detail = refused.body["detail"].as_str().unwrap();
    assert!(detail.contains("us-4.5-ham"), "{detail}");
    print(&wrong).refused(409, None);
    let findings = caller.lot(&wrong)["label_findings"].to_string();
    assert!(findings.contains("name-cut-of"), "{findings}");

    let perhaps = cut(&caller, "some");
    label(&caller, &perhaps).expect(200);
    let told = print(&perhaps).expect(201).body["warnings"].to_string();
    assert!(told.contains("us-4.5-ham"), "{told}");

    let right = cut(&caller, "hind");
    label(&caller, &right).expect(200);
    let told = print(&right).expect(201).body["warnings"].to_string();
    assert!(!told.contains("us-4.5"), "{told}");
    assert!(
        label(&caller, &perhaps)
            .warnings
            .contains("name-cut-of (us-4.5-ham)")
    );
    // This kitchen has not said where it is.
    assert_eq!(label(&caller, &right).warnings, "gate-no-address (us-L5)");
}

fn a_name_is_judged_by_what_went_in_and_not_by_the_list(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    // On the list both are mixed of nobody knows what.
    let mixed = json!({ "kind": "mixed" });
    for (code, name) in [("ham-pie", "Ham mix"), ("fore-pie", "Ham mixture")] {
        let found = listed(&caller, code, name, mixed.clone());
        assert_eq!(found, ["name-cut-of us-4.5-ham"], "{code}");
    }
    for (code, of) in [("hind", "ham"), ("fore", "picnic")] {
        caller
            .post(
                "/api/products",
                &product(code, "Pork, cut", json!({ "cut": of })),
            )
            .expect(201);
    }
    let mix = |from: &str, code: &str| {
        let piece = cut(&caller, from);
        let step = json!({ "kind": "mix", "place": "bench", "inputs": [{ "lot": piece }],
            "outputs": [{ "product": code, "grams": 490 }] });
        caller.deed("/api/steps", step).expect(201).code(0)
    };
    label(&caller, &mix("hind", "ham-pie")).expect(200);
    label(&caller, &mix("fore", "fore-pie")).refused(409, None);
}

fn each_place_asks_for_its_own(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    caller
        .post(
            "/api/products",
            &product("cheese", "Headcheese", json!({ "cut": "jowl" })),
        )
        .expect(201);
    caller
        .post(
            "/api/products",
            &product("fore", "Smoked ham", json!({ "cut": "picnic" })),
        )
        .expect(201);
    let (raw, fore) = (cut(&caller, "cheese"), cut(&caller, "fore"));
    // canada-eu-uk-4.15: headcheese is cooked before it is sold; us-4.5-ham is a rule of the United States.
    for (place, of_raw, of_fore) in [
        ("us", 200, 409),
        ("ca", 409, 200),
        ("eu", 200, 200),
        ("uk", 200, 200),
    ] {
        set(&caller, &[("profile", json!(place))]);
        label(&caller, &raw).expect(of_raw);
        label(&caller, &fore).expect(of_fore);
    }
    set(&caller, &[("profile", json!("uk"))]);
    // additions-F1 and F3: what is sold as mince. Nobody told its fat: a warning. Too much of it: no label.
    let mince = json!({ "kind": "mixed", "cut": "butt" });
    let found = listed(&caller, "mince", "Pork mince", mince);
    assert_eq!(found, ["naming-mince-unknown additions-F1-pork"]);
    let lot = cut(&caller, "mince");
    label(&caller, &lot).expect(200);
    change(
        &caller,
        "mince",
        &[(
            "standard",
            json!({ "fat_percent": 31, "collagen_percent": 15 }),
        )],
    );
    let fat = cut(&caller, "mince");
    let refused = label(&caller, &fat).refused(409, None);
    assert!(
        refused.body["detail"]
            .to_string()
            .contains("additions-F1-pork")
    );
    change(
        &caller,
        "mince",
        &[(
            "standard",
            json!({ "fat_percent": 20, "collagen_percent": 15 }),
        )],
    );
    label(&caller, &cut(&caller, "mince")).expect(200);
}

fn figures_that_cannot_be_are_refused_at_the_door(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let sent = |standard: Value| {
        let body = product("fore", "Pork, cut", json!({ "standard": standard }));
        caller.post("/api/products", &body)
    };
    sent(json!({ "fat_percent": 120 })).refused(422, "standard.fat_percent");
    // Under one in a hundred there may well be of salt or fat, not of meat protein.
    sent(json!({ "protein_percent": 0.2 })).refused(422, "standard.protein_percent");
    sent(json!({ "fat_percent": 60, "protein_percent": 50 }))
        .refused(422, "standard.water_percent");
    sent(json!({ "colour": "red" })).refused(422, "standard.colour");
    sent(json!({ "fat_percent": 0.9, "salt_percent": 0.5, "added_percent": 0.5, "mince": "lean" }))
        .expect(201);
}

/// A mix for the recipe of something else, bought from the pantry as its pack declares it.
fn bought(caller: &Caller, code: &str, declares: Value) -> String {
    let receipt = json!({ "place": "cooler", "product": code, "grams": 1_000,
        "bought": { "supplier": "PTS", "supplier_lot": "K-1", "declares": declares } });
    caller.deed("/api/receipts", receipt).expect(201).code(0)
}

/// `us-I3`: a compound is listed with its parts.
fn what_is_made_of_several_things_tells_its_parts(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let sauce = json!({ "kind": "mixed", "species": null, "raw": false, "storage": "chilled" });
    listed(&caller, "relish", "Relish", sauce);
    listed(
        &caller,
        "relish-sausage",
        "Sausage with relish",
        json!({ "kind": "mixed" }),
    );
    let recipe = json!({ "product": "relish-sausage",
        "parts": [{ "product": "pork-trim", "grams": 900 }, { "product": "relish", "grams": 100 }] });
    let told = caller.post("/api/recipes", &recipe).expect(201);
    assert_eq!(warned(&told), ["naming-unlisted us-I3"]);
    let made = |relish: &str| {
        let trim = cut(&caller, "pork-trim");
        let step = json!({ "kind": "grind", "place": "grinder", "inputs": [{ "lot": trim }, { "lot": relish, "grams": 50 }],
            "outputs": [{ "product": "relish-sausage", "grams": 550 }] });
        caller.deed("/api/steps", step).expect(201).code(0)
    };
    let none = json!({ "allergens": [] });
    let untold = made(&bought(&caller, "relish", none));
    let refused = label(&caller, &untold).refused(409, None);
    assert_eq!(refused.body["rows"], json!(["us-I3"]));
    let list = json!({ "en": "Onions, vinegar, sugar", "fr": "Oignons, vinaigre, sucre" });
    let told = made(&bought(&caller, "relish", json!({ "ingredients": list })));
    label(&caller, &told).expect(200);
}

/// `canada-eu-uk-9.10`, `confirmed X-EU-29`: of what went in; with the law's words in the reader's language.
fn the_share_of_what_the_name_speaks_of_stands_in_the_list(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let apples = json!({ "kind": "ingredient", "species": null, "raw": true });
    listed(&caller, "apples", "Apples", apples);
    listed(
        &caller,
        "apple-sausage",
        "Pork and apple sausage",
        json!({ "kind": "mixed" }),
    );
    let apples = bought(&caller, "apples", json!({}));
    let trim = cut(&caller, "pork-trim");
    let step = json!({ "kind": "grind", "place": "grinder", "inputs": [{ "lot": trim }, { "lot": apples, "grams": 125 }],
        "outputs": [{ "product": "apple-sausage", "grams": 625 }] });
    let sausage = caller.deed("/api/steps", step).expect(201).code(0);
    let list =
        || caller.get(&format!("/api/lots/{sausage}")).expect(200).body["ingredients"].clone();
    assert_eq!(list()["en"], "pork trim, apples");
    set(&caller, &[("profile", json!("eu"))]);
    assert_eq!(list()["en"], "pork trim 80%, apples 20%");
    let french = list()["fr"].as_str().unwrap().to_owned();
    assert!(french.contains("80\u{a0}%"), "{french}");
}

/// The allergens are those of the place's own table (`us-A1`); the name is the food's true one (`us-L2`).
fn no_name_denies_what_is_in_it(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let told = listed(&caller, "beef", "Beef burger", json!({}));
    assert_eq!(told, ["naming-other-animal us-L2"]);
    let milk = json!({ "allergens": ["milk"] });
    let told = listed(&caller, "free", "Dairy-free pork", milk.clone());
    assert_eq!(told, ["naming-denies us-A1"]);
    assert_eq!(
        listed(&caller, "with", "Pork with milk", milk),
        [] as [&str; 0]
    );
    for (code, key) in [("beef", "us-L2"), ("free", "us-A1")] {
        let refused = label(&caller, &cut(&caller, code)).refused(409, None);
        assert_eq!(refused.body["rows"], json!([key]), "{code}");
    }
    label(&caller, &cut(&caller, "with")).expect(200);
}
