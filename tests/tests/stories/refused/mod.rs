//! Deeds that are refused, each with what is wrong with it.

use serde_json::{Value, json};
use stories::call::{chrono_day, fresh_id, moment};

/// One refusal: what is asked, and how it is answered.
pub struct Case {
    pub what: &'static str,
    pub path: &'static str,
    pub body: Value,
    pub status: u16,
    pub field: Option<&'static str>,
}

/// Every refusal of a step, a receipt and the other deeds, with what is wrong with it.
pub fn cases(lot: &str, used_up: &str, twelve: &str) -> Vec<Case> {
    let mut cases = Vec::new();
    let mut add = |what, path, status, field, body| {
        cases.push(Case {
            what,
            path,
            body,
            status,
            field,
        })
    };
    let step = |inputs: Value, outputs: Value| json!({ "kind": "cut", "place": "bench", "inputs": inputs, "outputs": outputs });
    let out = |grams: Value| json!([{ "product": "pork-trim", "grams": grams }]);
    let one = |grams: Value| step(json!([{ "lot": lot, "grams": grams }]), out(json!(1)));
    let steps = "/api/steps";
    add(
        "unknown lot",
        steps,
        404,
        Some("inputs[0].lot"),
        step(json!([{ "lot": "BRC-26159-A16-R" }]), out(json!(1))),
    );
    add(
        "wrong check character",
        steps,
        422,
        Some("inputs[0].lot"),
        step(json!([{ "lot": wrong_check(lot) }]), out(json!(1))),
    );
    add(
        "no code at all",
        steps,
        422,
        Some("inputs[0].lot"),
        step(json!([{ "lot": "the big tub" }]), out(json!(1))),
    );
    add(
        "another kitchen's label",
        steps,
        422,
        Some("inputs[0].lot"),
        step(
            json!([{ "lot": "https://other.example/L/BRC26159A006" }]),
            out(json!(1)),
        ),
    );
    add(
        "more than is left",
        steps,
        409,
        Some("inputs[0].grams"),
        one(json!(10_001)),
    );
    add(
        "nothing left",
        steps,
        409,
        Some("inputs[0].lot"),
        step(json!([{ "lot": used_up }]), out(json!(1))),
    );
    add("zero", steps, 422, Some("inputs[0].grams"), one(json!(0)));
    add(
        "negative",
        steps,
        422,
        Some("inputs[0].grams"),
        one(json!(-5)),
    );
    add(
        "absurd",
        steps,
        422,
        Some("inputs[0].grams"),
        one(json!(2_000_001)),
    );
    add(
        "too fine",
        steps,
        422,
        Some("inputs[0].grams"),
        one(json!(0.1234)),
    );
    add(
        "text for a number",
        steps,
        422,
        Some("inputs[0].grams"),
        one(json!("12")),
    );
    add(
        "outputs heavier",
        steps,
        422,
        Some("outputs"),
        step(json!([{ "lot": lot, "grams": 10 }]), out(json!(11))),
    );
    add(
        "output of nothing",
        steps,
        422,
        Some("outputs[0].grams"),
        step(json!([{ "lot": lot, "grams": 10 }]), out(json!(0))),
    );
    add(
        "no outputs",
        steps,
        422,
        Some("outputs"),
        step(json!([{ "lot": lot, "grams": 10 }]), json!([])),
    );
    add(
        "no inputs",
        steps,
        422,
        Some("inputs"),
        step(json!([]), out(json!(1))),
    );
    add(
        "no such product",
        steps,
        422,
        Some("outputs[0].product"),
        step(
            json!([{ "lot": lot }]),
            json!([{ "product": "unicorn", "grams": 1 }]),
        ),
    );
    add(
        "no such place",
        steps,
        422,
        Some("place"),
        json!({ "kind": "cut", "place": "attic", "inputs": [{ "lot": lot }], "outputs": out(json!(1)) }),
    );
    add(
        "the same pack twice",
        steps,
        422,
        Some("inputs[1].pack"),
        step(
            json!([{ "lot": lot, "grams": 1 }, { "lot": lot, "grams": 1 }]),
            out(json!(1)),
        ),
    );
    add(
        "which pack?",
        steps,
        422,
        Some("inputs[0].pack"),
        step(json!([{ "lot": twelve, "grams": 1 }]), out(json!(1))),
    );
    add(
        "no such pack",
        steps,
        422,
        Some("inputs[0].pack"),
        step(json!([{ "lot": twelve, "pack": 13 }]), out(json!(1))),
    );
    add(
        "an absurd pack",
        steps,
        422,
        Some("inputs[0].pack"),
        step(
            json!([{ "lot": twelve, "pack": 4_000_000_000_u64 }]),
            out(json!(1)),
        ),
    );
    add(
        "too many packs",
        steps,
        422,
        Some("outputs[0].pack_count"),
        step(
            json!([{ "lot": lot }]),
            json!([{ "product": "pork-trim", "grams": 1000, "pack_count": 10_000 }]),
        ),
    );
    add(
        "packs that do not sum",
        steps,
        422,
        Some("outputs[0].pack_grams"),
        step(
            json!([{ "lot": lot }]),
            json!([{ "product": "pork-trim", "grams": 100, "pack_grams": [50, 49] }]),
        ),
    );
    add(
        "an unknown field",
        steps,
        422,
        Some("inputs[0].gram"),
        step(json!([{ "lot": lot, "gram": 5 }]), out(json!(1))),
    );
    add(
        "a kind with its own call",
        steps,
        422,
        Some("kind"),
        json!({ "kind": "sell", "place": "bench", "inputs": [{ "lot": lot }], "outputs": out(json!(1)) }),
    );
    add(
        "too much scale difference",
        steps,
        422,
        Some("added[0].grams"),
        json!({ "kind": "cut", "place": "bench", "inputs": [{ "lot": lot, "grams": 1000 }], "outputs": out(json!(1)), "added": [{ "what": "scale-difference", "grams": 5.001 }] }),
    );
    add(
        "salt is a lot",
        steps,
        422,
        Some("added[0].what"),
        json!({ "kind": "cut", "place": "bench", "inputs": [{ "lot": lot, "grams": 1000 }], "outputs": out(json!(1)), "added": [{ "what": "salt", "grams": 5 }] }),
    );
    let timed = |at: String| {
        let mut body = one(json!(1));
        body["at"] = json!(at);
        body
    };
    add("the future", steps, 422, Some("at"), timed(moment(5)));
    add(
        "before it was made",
        steps,
        422,
        Some("at"),
        timed(moment(-60)),
    );
    add(
        "long ago without a note",
        steps,
        422,
        Some("note"),
        timed(moment(-8 * 24 * 60)),
    );
    add("no time", steps, 422, Some("at"), timed("yesterday".into()));
    add(
        "no id",
        steps,
        422,
        Some("id"),
        json!({ "id": "x", "kind": "cut", "by": "C", "place": "bench", "inputs": [], "outputs": [] }),
    );
    let receipt = |animal: Value| json!({ "place": "rail", "product": "pig-half", "grams": 1000, "animal": animal });
    let pig = json!({ "farm": "BRC", "species": "pig", "killed_on": chrono_day(-2), "abattoir": "DEMO-17", "carcass": "x" });
    let but = |field: &str, value: Value| {
        let mut animal = pig.clone();
        animal[field] = value;
        receipt(animal)
    };
    let receipts = "/api/receipts";
    add(
        "killed tomorrow",
        receipts,
        422,
        Some("animal.killed_on"),
        but("killed_on", json!(chrono_day(2))),
    );
    add(
        "no such farm",
        receipts,
        422,
        Some("animal.farm"),
        but("farm", json!("XYZ")),
    );
    add(
        "no such abattoir",
        receipts,
        422,
        Some("animal.abattoir"),
        but("abattoir", json!("Z-9")),
    );
    add(
        "another species",
        receipts,
        422,
        Some("animal.species"),
        but("species", json!("sheep")),
    );
    add(
        "no animal and no supplier",
        receipts,
        422,
        Some("animal"),
        json!({ "place": "rail", "product": "pig-half", "grams": 1000 }),
    );
    add(
        "a NUL in a name",
        receipts,
        422,
        Some("by"),
        json!({ "by": "a\u{0}b", "place": "rail", "product": "pig-half", "grams": 1000, "animal": pig }),
    );
    add(
        "a bad barcode",
        receipts,
        422,
        Some("barcode"),
        json!({ "place": "rail", "product": "salt", "barcode": "(01)09506000134353(10)A" }),
    );
    add(
        "Fahrenheit",
        "/api/readings",
        422,
        Some("celsius"),
        json!({ "lot": lot, "celsius": 451 }),
    );
    add(
        "a percentage",
        "/api/readings",
        422,
        Some("water_activity"),
        json!({ "lot": lot, "water_activity": 86 }),
    );
    add(
        "heavier than before",
        "/api/readings",
        422,
        Some("grams"),
        json!({ "lot": lot, "grams": 10_101 }),
    );
    add(
        "a move to nowhere",
        "/api/moves",
        422,
        Some("to"),
        json!({ "lot": lot }),
    );
    add(
        "cleaning a freezer",
        "/api/clean-downs",
        422,
        Some("place"),
        json!({ "place": "freezer" }),
    );
    add(
        "more than was sold",
        "/api/take-backs",
        409,
        Some("pack"),
        json!({ "lot": lot, "pack": 1, "why": "x" }),
    );
    add(
        "selling what is gone",
        "/api/departures",
        409,
        Some("lot"),
        json!({ "kind": "sell", "lot": used_up }),
    );
    add(
        "counting a pack that never was",
        "/api/counts",
        422,
        Some("packs[0].pack"),
        json!({ "lot": lot, "packs": [{ "pack": 2, "missing": true }] }),
    );
    add(
        "correcting nothing",
        "/api/corrections",
        404,
        Some("step"),
        json!({ "step": fresh_id(), "animal": { "tag": "1" }, "why": "x" }),
    );
    cases
}

/// The same code with another check character.
pub fn wrong_check(code: &str) -> String {
    let (body, check) = code.split_at(code.len() - 1);
    format!("{body}{}", if check == "0" { "1" } else { "0" })
}
