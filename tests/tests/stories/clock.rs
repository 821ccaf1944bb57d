//! A clock that is wrong: ahead it is questioned when it happens, and what it recorded closes no kitchen.

use serde_json::json;
use stories::{Engine, House};

#[test]
fn a_clock_far_ahead_is_questioned_until_a_manager_says_that_it_is_right() {
    let mut house = House::furnished(Engine::Sqlite);
    let pig = house.caller().half_pig("1", 10_000);
    assert_eq!(house.caller().verdict(&pig), "sell");
    house.kill();
    house.restart_at("+60d");
    let caller = house.caller();
    let health = caller.get("/api/health").expect(503).body;
    assert_eq!(health["status"], "clock", "{health}");
    let serve = json!({ "kind": "serve", "lot": pig, "grams": 5 });
    let refused = caller.deed("/api/departures", serve.clone()).expect(503);
    assert_eq!(refused.body["type"], "/problems/clock");
    // By that clock the pig is long past its day; but nobody throws it away for that.
    let scan = caller
        .get(&format!("/api/scan?code={pig}"))
        .expect(200)
        .body;
    assert_eq!(scan["verdict"], "hold", "{scan}");
    assert_eq!(scan["key"], "verdict-clock-in-doubt", "{scan}");
    let page = String::from_utf8(caller.get("/lots").expect(200).bytes).unwrap();
    assert!(
        page.contains("role=\"alert\""),
        "every page says why: {page}"
    );
    let counter = json!({ "name": "counter", "role": "counter" });
    let token = caller.post("/api/tokens", &counter).expect(201).body["token"].clone();
    let counter = caller.showing(token.as_str().unwrap());
    let right = json!({ "why": "we were closed", "by": "Oda" });
    counter.post("/api/clock-words", &right).refused(403, None);
    caller.post("/api/clock-words", &right).expect(204);
    assert_eq!(caller.get("/api/health").status, 200);
    caller.deed("/api/departures", serve).expect(201);
}

#[test]
fn what_was_recorded_ahead_is_set_right_by_name_and_the_kitchen_works_on() {
    let mut house = House::furnished(Engine::Sqlite);
    house.kill();
    house.restart_at("+20d");
    let pig = house.caller().half_pig("1", 10_000);
    house.kill();
    house.restart();
    let caller = house.caller();
    let serve = json!({ "kind": "serve", "lot": pig, "grams": 5 });
    caller.deed("/api/departures", serve.clone()).expect(503);
    assert_eq!(caller.verdict(&pig), "hold", "no verdict says sell");
    let right = json!({ "why": "the battery was flat", "by": "Oda" });
    caller.post("/api/clock-words", &right).expect(204);
    assert_eq!(caller.get("/api/health").status, 200);
    assert_eq!(caller.verdict(&pig), "hold", "made by a wrong clock");
    // What the counter does not hand over is not sold past it either.
    for kind in ["sell", "serve", "ship"] {
        let leave = json!({ "kind": kind, "lot": pig, "grams": 5 });
        let refused = caller.deed("/api/departures", leave).expect(409);
        assert_eq!(refused.body["key"], "stop-made-ahead", "{}", refused.body);
    }
    let mut happened = serve;
    happened["as_it_happened"] = json!(true);
    happened["note"] = json!("it came in this morning, I was there");
    caller.deed("/api/departures", happened).expect(201);
    let bin = json!({ "kind": "discard", "lot": pig, "grams": 5, "why": "unsure of it" });
    caller.deed("/api/departures", bin).expect(201);
    let other = caller.half_pig("2", 10_000);
    assert_eq!(caller.verdict(&other), "sell");
    // The next start knows it too.
    house.kill();
    house.restart();
    let clean = json!({ "place": "bench" });
    let caller = house.caller();
    caller.deed("/api/clean-downs", clean.clone()).expect(201);
    // And a clock that is behind what was recorded since is doubted, however far ahead it once was.
    house.kill();
    house.restart_at("-30m");
    let caller = house.caller();
    let health = caller.get("/api/health").expect(503).body;
    assert_eq!(health["status"], "clock", "{health}");
    caller.deed("/api/clean-downs", clean).expect(503);
}
