//! Bad input: each gets its status and its problem document, names the field, and leaves no trace.

use crate::refused::{cases, wrong_check};
use serde_json::{Value, json};
use stories::call::{fresh_id, moment};
use stories::labels::set;
use stories::{Engine, House, on_both_engines};

on_both_engines! {
    refusals_leave_no_trace
    what_is_no_json
    the_same_id
    scans_always_answer
}

fn refusals_leave_no_trace(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let lot = caller.half_pig("0608-17", 10_000);
    let used_up = caller.half_pig("0608-18", 500);
    let step = json!({ "kind": "portion", "place": "bench", "inputs": [{ "lot": used_up }],
        "outputs": [{ "product": "pork-chop", "grams": 480, "pack_count": 12 }] });
    let twelve = caller.deed("/api/steps", step).expect(201).code(0);
    let before = house.check();
    let cases = cases(&lot, &used_up, &twelve);
    assert!(cases.len() > 45);
    for case in cases {
        let answer = caller.deed(case.path, case.body);
        assert_eq!(answer.status, case.status, "{}: {}", case.what, answer.body);
        answer.refused(case.status, case.field);
    }
    caller.get("/api/lots/BRC-26159-A16-R").refused(404, "code");
    caller.get("/api/lots/nonsense").refused(422, "code");
    caller
        .get("/api/lots?killed_on=june")
        .refused(422, "killed_on");
    caller.get("/api/lots?limit=0").refused(422, "limit");
    caller.get("/api/lots?colour=red").expect(422);
    caller.get("/api/lots?q=%00").refused(422, "q");
    caller
        .get(&format!("/api/steps/{}", fresh_id()))
        .refused(404, None);
    caller.get("/api/nowhere").refused(404, None);
    caller.get("/api/receipts").refused(405, None);
    assert_eq!(
        house.check(),
        before,
        "a refusal leaves the record as it was"
    );
}

fn what_is_no_json(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let before = house.check();
    let post = |kind: &str, body: &[u8]| caller.post_bytes("/api/steps", kind, body);
    post("application/json", b"{").refused(400, None);
    post("application/json", b"").refused(400, None);
    post("application/json", b"{\"by\":\"\xff\xfe\"}").refused(400, None);
    post("application/json", b"[1,2]").expect(422);
    post("application/json", &[b'['; 100_000]).refused(400, None);
    post("text/plain", b"{}").refused(415, None);
    post("application/json", &vec![b' '; 10 << 20]).refused(413, None);
    let huge = format!(
        "{{\"id\":\"{}\",\"kind\":\"cut\",\"by\":\"C\",\"place\":\"bench\",\"inputs\":[{{\"lot\":\"x\",\"grams\":{}}}],\"outputs\":[]}}",
        fresh_id(),
        "9".repeat(400)
    );
    post("application/json", huge.as_bytes()).refused(422, "inputs[0].grams");
    assert_eq!(house.check(), before);
}

fn the_same_id(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let lot = caller.half_pig("0608-17", 10_000);
    let sale = json!({ "id": fresh_id(), "by": "Cook", "at": moment(0), "kind": "serve", "lot": lot, "grams": 100 });
    let first = caller.post("/api/departures", &sale).expect(201);
    let mut spelt = sale.clone();
    spelt["grams"] = serde_json::from_str("100.000").unwrap();
    spelt["note"] = Value::Null;
    let again = caller.post("/api/departures", &spelt).expect(200);
    assert_eq!(first.bytes, again.bytes);
    let mut other = sale.clone();
    other["grams"] = json!(101);
    let before = house.check();
    caller.post("/api/departures", &other).refused(409, "id");
    let elsewhere = json!({ "id": sale["id"], "by": "Cook", "lot": lot, "to": "cooler" });
    caller.post("/api/moves", &elsewhere).refused(409, "id");
    assert_eq!(house.check(), before);
    // A refused id stays free.
    let mut refused = sale.clone();
    refused["id"] = json!(fresh_id());
    refused["grams"] = json!(1_000_000);
    caller
        .post("/api/departures", &refused)
        .refused(409, "grams");
    refused["grams"] = json!(1);
    caller.post("/api/departures", &refused).expect(201);
}

fn scans_always_answer(engine: Engine) {
    let mut house = House::furnished(engine);
    let caller = house.caller();
    let lot = caller.half_pig("0608-17", 10_000);
    let verdict = |code: &str| caller.verdict(code).as_str().unwrap().to_owned();
    assert_eq!(verdict(&lot), "sell");
    assert_eq!(verdict(&lot.to_lowercase()), "sell");
    assert_eq!(
        verdict(&format!("https://trace.test.example/L/{lot}/1")),
        "sell"
    );
    assert_eq!(verdict(&format!("{lot}/2")), "unknown");
    assert_eq!(verdict(&wrong_check(&lot)), "unknown");
    assert_eq!(verdict("BRC-26159-A16-R"), "unknown");
    assert_eq!(verdict("https://other.example/L/BRC26159A006"), "unknown");
    assert_eq!(verdict("%00%ff"), "unknown");
    // Whatever address a label once held, it is ours for ever: also after the service was started anew.
    set(
        &caller,
        &[("public_url", json!("https://once.test.example/labels"))],
    );
    set(
        &caller,
        &[("public_url", json!("https://new.test.example"))],
    );
    let held = [
        "https://trace.test.example/L/",
        "HTTPS://TRACE.TEST.EXAMPLE/l/",
        "https://once.test.example/labels/L/",
        "https://new.test.example/L/",
    ];
    for address in held {
        assert_eq!(verdict(&format!("{address}{lot}/1")), "sell", "{address}");
    }
    house.restart();
    let caller = house.caller();
    for address in held {
        let read = caller.verdict(&format!("{address}{lot}/1"));
        assert_eq!(read, "sell", "{address}");
        let found = caller.read(&format!("/api/find?q={address}{lot}"));
        assert!(found.to_string().contains(&lot), "{address}: {found}");
    }
    assert_eq!(
        caller.verdict("https://once.test.example/L/BRC26159A006"),
        "unknown"
    );
    assert_eq!(verdict(""), "unknown");
}
