//! A label that says what is no longer true keeps its pack from sale until it is printed anew, and what
//! was sold with it is a list for the recall.

use serde_json::{Value, json};
use stories::day::{Told, bought};
use stories::printer::Manners;
use stories::queue::{chops, kitchen, numbers, print, wait};
use stories::{Caller, Engine, House, Printer, on_both_engines};

on_both_engines! {
    a_pack_that_holds_less_than_its_label_says_is_not_sold
    thawed_with_the_label_of_the_freezer_it_has_no_day
    a_void_makes_the_label_true_again
    a_label_that_did_not_come_out_is_on_no_pack
    an_allergen_that_nobody_knew_of
}

/// A kitchen with two packs of chops whose labels came out.
fn printed(engine: Engine, printer: &Printer) -> (House, Caller, String) {
    let house = kitchen(engine, printer);
    let caller = house.caller();
    let lot = chops(&caller, "0608-17", 2);
    wait(&caller, &print(&caller, &lot), &["printed"]);
    (house, caller, lot)
}

fn listed(caller: &Caller, query: &str) -> Vec<Value> {
    let read = caller.read(&format!("/api/wrong-labels{query}"));
    read["packs"].as_array().unwrap().clone()
}

/// What is wrong, pack by pack.
fn about(caller: &Caller, query: &str) -> Vec<(Value, Value)> {
    let of = |pack: &Value| (pack["pack"].clone(), pack["untrue"][0]["about"].clone());
    listed(caller, query).iter().map(of).collect()
}

fn word(caller: &Caller, code: &str) -> String {
    caller.verdict(code).as_str().unwrap().to_owned()
}

/// Prints the labels of a pack again.
fn again(caller: &Caller, lot: &str, pack: u32) -> Vec<Value> {
    let asked = json!({ "printer": "bench", "lot": lot, "packs": [pack], "again": { "why": "the label was wrong" } });
    let asked = caller.deed("/api/prints", asked).expect(201).body;
    wait(caller, &numbers(&asked), &["printed"])
}

fn sale(caller: &Caller, lot: &str, pack: u32) -> stories::Answer {
    let sale = json!({ "kind": "sell", "lot": lot, "pack": pack });
    caller.deed("/api/departures", sale)
}

fn a_pack_that_holds_less_than_its_label_says_is_not_sold(engine: Engine) {
    let printer = Printer::new(Manners::default());
    let (_house, caller, lot) = printed(engine, &printer);
    let (first, second) = (format!("{lot}/1"), format!("{lot}/2"));
    assert_eq!(
        (listed(&caller, ""), word(&caller, &first)),
        (vec![], "sell".into())
    );
    let served = json!({ "kind": "serve", "lot": lot, "pack": 1, "grams": 1_000 });
    caller.deed("/api/departures", served.clone()).expect(201);
    let found = listed(&caller, "");
    assert_eq!(about(&caller, ""), [(json!(1), json!("weight"))]);
    let untrue = &found[0]["untrue"][0];
    assert!(
        untrue["label_says"].as_str().unwrap().contains("4"),
        "{untrue}"
    );
    assert!(
        untrue["is_true"].as_str().unwrap().contains("3"),
        "{untrue}"
    );
    assert_eq!(
        (&found[0]["place"], &found[0]["is"]),
        (&json!("bench"), &json!("open"))
    );
    // The scan says why; the other pack is as good as before.
    let scan = caller.read(&format!("/api/scan?code={first}"));
    assert_eq!(scan["verdict"], "hold");
    assert!(
        scan["says"].as_str().unwrap().contains("no longer true"),
        "{scan}"
    );
    assert_eq!(word(&caller, &second), "sell");
    let stops = caller.read("/api/stops");
    let kinds: Vec<&Value> = stops["stops"]
        .as_array()
        .unwrap()
        .iter()
        .map(|stop| &stop["stop"])
        .collect();
    assert!(kinds.contains(&&json!("wrong-label")), "{stops}");
    let refused = sale(&caller, &lot, 1).expect(409);
    assert_eq!(refused.body["type"], "/problems/stopped");
    assert_eq!(refused.body["may_be_told"], true);
    // Whom it is served to reads no label.
    caller.deed("/api/departures", served).expect(201);
    let reprint = again(&caller, &lot, 1);
    assert_eq!(reprint[0]["reprint"], 1);
    assert_eq!(
        (listed(&caller, ""), word(&caller, &first)),
        (vec![], "sell".into())
    );
    sale(&caller, &lot, 1).expect(201);
    assert_eq!(listed(&caller, "?sold=true"), Vec::<Value>::new());
    // The page says the same.
    let page = caller.get("/wrong-labels").expect(200).bytes;
    assert!(String::from_utf8_lossy(&page).contains("Wrong labels"));
}

fn thawed_with_the_label_of_the_freezer_it_has_no_day(engine: Engine) {
    let mut manners = Manners::default();
    manners.sizes.push((10_200, 7_600));
    let printer = Printer::new(manners);
    let (_house, caller, lot) = printed(engine, &printer);
    let keep = |state: &str| {
        let moved = json!({ "lot": lot, "state": state, "to": if state == "frozen" { "freezer" } else { "cooler" } });
        caller.deed("/api/moves", moved).expect(201);
    };
    keep("frozen");
    // The label bears a day that is not later than any that is to come: it endangers nobody.
    assert_eq!(listed(&caller, ""), Vec::<Value>::new());
    for pack in [1, 2] {
        assert_eq!(again(&caller, &lot, pack)[0]["use_by"], Value::Null);
    }
    keep("chilled");
    assert_eq!(
        about(&caller, ""),
        [(json!(1), json!("date")), (json!(2), json!("date"))]
    );
    assert_eq!(word(&caller, &format!("{lot}/2")), "hold");
    // One of them went over the counter all the same, and is told.
    sale(&caller, &lot, 2).expect(409);
    let sold = json!({ "kind": "sell", "lot": lot, "pack": 2, "as_it_happened": true, "note": "nobody looked" });
    let sold = caller.deed("/api/departures", sold).expect(201).body;
    assert_eq!(sold["warning_keys"], json!(["stop-passed"]));
    assert_eq!(about(&caller, ""), [(json!(1), json!("date"))]);
    assert_eq!(about(&caller, "?sold=true"), [(json!(2), json!("date"))]);
    let dated = again(&caller, &lot, 1);
    assert!(dated[0]["use_by"].is_string());
    assert_eq!(listed(&caller, ""), Vec::<Value>::new());
    // A tag that hangs beside it is not its label, and hides none.
    let tag = json!({ "printer": "bench", "lot": lot, "packs": [1], "template": "hold", "again": { "why": "held" } });
    let tag = caller.deed("/api/prints", tag).expect(201).body;
    wait(&caller, &numbers(&tag), &["printed"]);
    assert_eq!(listed(&caller, ""), Vec::<Value>::new());
    let served = json!({ "kind": "serve", "lot": lot, "pack": 1, "grams": 500 });
    caller.deed("/api/departures", served).expect(201);
    assert_eq!(about(&caller, ""), [(json!(1), json!("weight"))]);
    assert_eq!(about(&caller, "?sold=true"), [(json!(2), json!("date"))]);
}

fn a_void_makes_the_label_true_again(engine: Engine) {
    let printer = Printer::new(Manners::default());
    let (_house, caller, lot) = printed(engine, &printer);
    let served = json!({ "kind": "serve", "lot": lot, "pack": 2, "grams": 500 });
    let served = caller.deed("/api/departures", served).expect(201).body;
    assert_eq!(word(&caller, &format!("{lot}/2")), "hold");
    caller
        .void(served["id"].as_str().unwrap())
        .why("not served")
        .done();
    assert_eq!(
        (listed(&caller, ""), word(&caller, &format!("{lot}/2"))),
        (vec![], "sell".into())
    );
    let count = |grams: u64| json!({ "lot": lot, "packs": [{ "pack": 2, "grams": grams }] });
    caller.deed("/api/counts", count(4_400)).expect(201);
    assert_eq!(about(&caller, ""), [(json!(2), json!("weight"))]);
    // The rest is found.
    caller.deed("/api/counts", count(4_500)).expect(201);
    assert_eq!(listed(&caller, ""), Vec::<Value>::new());
}

fn a_label_that_did_not_come_out_is_on_no_pack(engine: Engine) {
    let printer = Printer::new(Manners::default());
    let (_house, caller, lot) = printed(engine, &printer);
    let served = json!({ "kind": "serve", "lot": lot, "pack": 1, "grams": 500 });
    caller.deed("/api/departures", served).expect(201);
    let reprint = again(&caller, &lot, 1);
    assert_eq!(listed(&caller, ""), Vec::<Value>::new());
    // The printer said that it was done, and the label is blank: the old one is still on the pack.
    let seen =
        json!({ "prints": [{ "print": reprint[0]["print"], "came_out": false }], "again": false });
    caller.deed("/api/print-settlements", seen).expect(201);
    assert_eq!(about(&caller, ""), [(json!(1), json!("weight"))]);
    again(&caller, &lot, 1);
    assert_eq!(listed(&caller, ""), Vec::<Value>::new());
}

fn an_allergen_that_nobody_knew_of(engine: Engine) {
    let printer = Printer::new(Manners::default());
    let house = kitchen(engine, &printer);
    let caller = house.caller();
    let rub = json!({ "code": "rub", "names": { "en": "Rub" }, "kind": "ingredient", "storage": "ambient" });
    caller.post("/api/products", &rub).expect(201);
    let rub = caller.receive("rub").to("cooler").grams(500);
    let rub = rub.bought(bought("PTS", "R-1")).done();
    let pig = caller.half_pig("0608-17", 10_000);
    let mix = caller.step("mix").of_grams(&pig, 980);
    let mix = mix.of_grams(&rub.code(0), 20);
    let lot = mix.into_packs("sausage", 1_000, 2).made();
    wait(&caller, &print(&caller, &lot), &["printed"]);
    sale(&caller, &lot, 1).expect(201);
    let declares = json!({ "declares": { "allergens": ["milk"] } });
    let receipt = rub.body["id"].as_str().unwrap();
    caller.correct(receipt).with("bought", declares).done();
    assert_eq!(about(&caller, ""), [(json!(2), json!("allergen"))]);
    assert_eq!(
        about(&caller, "?sold=true"),
        [(json!(1), json!("allergen"))]
    );
    let untrue = &listed(&caller, "")[0]["untrue"][0];
    assert_eq!(
        (&untrue["label_says"], &untrue["is_true"]),
        (&json!("none"), &json!("milk"))
    );
    assert_eq!(word(&caller, &format!("{lot}/2")), "hold");
    sale(&caller, &lot, 2).expect(409);
    again(&caller, &lot, 2);
    assert_eq!(listed(&caller, ""), Vec::<Value>::new());
    sale(&caller, &lot, 2).expect(201);
    // Who bought the first has to be told; the second went out with what is true.
    assert_eq!(
        about(&caller, "?sold=true"),
        [(json!(1), json!("allergen"))]
    );
}
