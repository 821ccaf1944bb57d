//! Labels that leave as a document count as printed: they may be on a pack, and what they say that is no
//! longer true keeps the pack from sale. To read labels as PDF records nothing.

use serde_json::{Value, json};
use stories::queue::{chops, numbers};
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_label_that_left_as_a_document_is_on_the_pack
    to_read_labels_records_nothing
    a_document_is_asked_for_by_right_and_once
}

fn ask(caller: &Caller, lot: &str, more: Value) -> stories::Answer {
    let mut asked = json!({ "lot": lot });
    for (name, value) in more.as_object().unwrap() {
        asked[name] = value.clone();
    }
    caller.deed("/api/label-documents", asked)
}

/// What is wrong, pack by pack.
fn wrong(caller: &Caller) -> Vec<(Value, Value)> {
    let read = caller.read("/api/wrong-labels");
    let of = |pack: &Value| (pack["pack"].clone(), pack["untrue"][0]["about"].clone());
    read["packs"].as_array().unwrap().iter().map(of).collect()
}

fn word(caller: &Caller, code: &str) -> String {
    caller.verdict(code).as_str().unwrap().to_owned()
}

fn a_label_that_left_as_a_document_is_on_the_pack(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let lot = chops(&caller, "0608-17", 2);
    let done = ask(&caller, &lot, json!({})).expect(201).body;
    let of: Vec<(&Value, &Value, &Value)> = done["prints"]
        .as_array()
        .unwrap()
        .iter()
        .map(|print| (&print["state"], &print["printer"], &print["reprint"]))
        .collect();
    assert_eq!(of, [(&json!("printed"), &json!("pdf"), &json!(0)); 2]);
    assert_eq!(done["prints"][0]["says"], "left as a PDF");
    let path = done["document"].as_str().unwrap().to_owned();
    assert_eq!(done["prints"][0]["document"], done["document"]);
    let document = caller.get(&path).expect(200);
    assert!(document.bytes.starts_with(b"%PDF"));
    assert_eq!(document.recorded, "yes");
    // What a pack holds changes: its label is no longer true.
    let served = json!({ "kind": "serve", "lot": lot, "pack": 1, "grams": 1_000 });
    caller.deed("/api/departures", served).expect(201);
    assert_eq!(wrong(&caller), [(json!(1), json!("weight"))]);
    assert_eq!(word(&caller, &format!("{lot}/1")), "hold");
    assert_eq!(word(&caller, &format!("{lot}/2")), "sell");
    // The document stays what it was.
    assert_eq!(caller.get(&path).expect(200).bytes, document.bytes);
    // A new one ends it, as a reprint, with its reason.
    let refused = ask(&caller, &lot, json!({ "packs": [1] })).expect(409).body;
    assert_eq!(refused["type"], "/problems/printed-before");
    let again = json!({ "packs": [1], "again": { "why": "the weight" } });
    let again = ask(&caller, &lot, again).expect(201).body;
    assert_eq!(again["prints"][0]["reprint"], 1);
    assert_eq!(wrong(&caller), []);
    assert_eq!(word(&caller, &format!("{lot}/1")), "sell");
    // Somebody sees that the new one never came out: the old one is still on the pack, and nothing waits.
    let seen = json!({ "prints": [{ "print": numbers(&again)[0], "came_out": false }] });
    let settled = caller.deed("/api/print-settlements", seen).expect(201).body;
    assert_eq!(settled["prints"].as_array().unwrap().len(), 1);
    assert_eq!(wrong(&caller), [(json!(1), json!("weight"))]);
    let waiting = caller.read("/api/prints?state=waiting");
    assert_eq!(waiting["prints"], json!([]));
    let page = caller.get("/printing").expect(200).bytes;
    assert!(String::from_utf8_lossy(&page).contains("printed by hand"));
    let printers = caller.read("/api/printers").to_string();
    assert!(!printers.contains("pdf"), "{printers}");
}

fn to_read_labels_records_nothing(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let lot = chops(&caller, "0608-17", 1);
    let before = house.check();
    let read = caller
        .get(&format!("/api/lots/{lot}/labels.pdf"))
        .expect(200);
    assert_eq!(read.recorded, "no");
    assert_eq!(house.check(), before);
    let served = json!({ "kind": "serve", "lot": lot, "pack": 1, "grams": 1_000 });
    caller.deed("/api/departures", served).expect(201);
    assert_eq!(wrong(&caller), []);
}

fn a_document_is_asked_for_by_right_and_once(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let lot = chops(&caller, "0608-17", 101);
    let refused = ask(&caller, &lot, json!({})).expect(422).body;
    assert_eq!(refused["field"], "packs");
    let some: Vec<u32> = (2..=101).collect();
    let done = ask(&caller, &lot, json!({ "packs": some, "dpi": 300 }))
        .expect(201)
        .body;
    assert_eq!(numbers(&done).len(), 100);
    let path = done["document"].as_str().unwrap();
    assert!(caller.get(&format!("{path}?sheet=poster")).status == 422);
    assert_eq!(
        ask(&caller, &lot, json!({ "packs": [1], "dpi": 77 }))
            .expect(422)
            .body["field"],
        "dpi"
    );
    let both = json!({ "step": done["id"], "packs": [1] });
    ask(&caller, &lot, both).expect(422);
    caller
        .get("/api/label-documents/018f0000-0000-7000-8000-000000000000/labels.pdf")
        .expect(404);
    // That of a deed that is no document is none either.
    let step = caller.read(&format!("/api/lots/{lot}"))["made_by_step"].clone();
    let step = step.as_str().unwrap();
    caller
        .get(&format!("/api/label-documents/{step}/labels.pdf"))
        .expect(404);
    let page = caller
        .get(&format!("/printing?step={step}"))
        .expect(200)
        .bytes;
    assert!(String::from_utf8_lossy(&page).contains(step));
}
