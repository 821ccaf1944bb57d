//! What comes from outside: strange letters, endless lists, slow bodies, a record that is taken away. None
//! of it is a 500, and none of it makes the counter wait.

use serde_json::{Value, json};
use std::io::{Read, Write};
use std::net::TcpStream;
use std::time::{Duration, Instant};
use stories::call::fresh_id;
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    what_no_database_takes
    what_nobody_sees
    kills_that_cannot_be
}

fn what_no_database_takes(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let lot = caller.half_pig("0608-17", 10_000);
    let before = house.check();
    let long = "a".repeat(49_999);
    for path in [
        "/api/lots?q=",
        "/api/lots?place=",
        "/api/animals?carcass=",
        "/lots?q=",
    ] {
        assert_eq!(caller.get(&format!("{path}{long}")).status, 422, "{path}");
    }
    assert_eq!(caller.verdict(&long), "unknown");
    let numbers: Vec<u32> = (1..=32_766).collect();
    let found: Vec<Value> = numbers
        .iter()
        .map(|pack| json!({ "pack": pack, "missing": true }))
        .collect();
    for (path, body, field) in [
        (
            "/api/moves",
            json!({ "lot": lot, "packs": numbers, "to": "cooler" }),
            "packs",
        ),
        (
            "/api/departures",
            json!({ "kind": "sell", "lot": lot, "packs": numbers }),
            "packs",
        ),
        (
            "/api/counts",
            json!({ "lot": lot, "packs": found }),
            "packs",
        ),
        (
            "/api/holds",
            json!({ "lots": [{ "lot": lot, "packs": numbers }], "why": "x" }),
            "lots[0].packs",
        ),
        (
            "/api/label-documents",
            json!({ "lot": lot, "packs": numbers }),
            "packs",
        ),
    ] {
        caller.deed(path, body).refused(422, field);
    }
    // As many lots as a question may name, and more than SQLite has parts of a union.
    let start = vec![json!({ "lot": lot }); 10_000];
    let asked = json!({ "start": start, "spreads": "lineage" });
    let found = caller.post("/api/scopes", &asked).expect(200).body;
    assert_eq!(found["lots"].as_array().unwrap().len(), 1);
    for path in [
        "/api/printers/%00/state",
        "/api/products/%00",
        "/api/lots/%0a",
        "/lots/%00",
    ] {
        assert_eq!(caller.get(path).status, 404, "{path}");
    }
    assert_eq!(house.check(), before);
}

fn what_nobody_sees(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let before = house.check();
    for name in [
        "pork\u{202e}krop",
        "a\u{200b}b",
        "\u{feff}x",
        "a\u{7}",
        "a\u{1d}b",
    ] {
        let code = json!({ "code": name, "name": "A supplier" });
        caller.post("/api/suppliers", &code).refused(422, "code");
        let named = json!({ "code": "NEW", "name": name });
        caller.post("/api/suppliers", &named).refused(422, "name");
    }
    caller.get("/api/lots?q=a%E2%80%AEb").refused(422, "q");
    for body in [
        json!({ "lot": 5 }),
        json!({ "packs": [-1] }),
        json!({ "lot": {}, "x": 1 }),
    ] {
        let answer = caller.deed("/api/moves", body).expect(422);
        let detail = answer.body["detail"].as_str().unwrap().to_owned();
        for word in ["struct", "variant", "u32", "expected", "serde"] {
            assert!(!detail.contains(word), "{detail}");
        }
    }
    assert_eq!(house.check(), before);
}

fn kills_that_cannot_be(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    for day in [
        "-999-01-01",
        "0000-01-01",
        "1899-12-31",
        "2016-06-25",
        "9999-12-31",
    ] {
        let receipt = json!({ "product": "pig-half", "place": "cooler", "grams": 1_000,
            "animal": { "farm": "BRC", "species": "pig", "killed_on": day, "carcass": "1", "side": "left" } });
        caller
            .deed("/api/receipts", receipt)
            .refused(422, "animal.killed_on");
    }
}

#[test]
fn what_can_be_got_can_be_asked_for_without_its_body() {
    let house = House::demo(Engine::Sqlite);
    for path in [
        "/",
        "/api/health",
        "/api/lots",
        "/assets/gambrel.css",
        "/nowhere",
    ] {
        let got = house.caller().get(path).status;
        let answer = raw(
            &house,
            &format!(
                "HEAD {path} HTTP/1.1\r\nHost: {}\r\n{}Connection: close\r\n\r\n",
                host(&house),
                house.caller().header()
            ),
        );
        assert!(answer.starts_with(&format!("HTTP/1.1 {got} ")), "{answer}");
        assert!(answer.ends_with("\r\n\r\n"), "no body: {answer}");
    }
}

#[test]
fn slow_bodies_make_no_scan_wait_and_are_told_so() {
    let house = House::furnished(Engine::Sqlite);
    let caller = house.caller();
    let lot = caller.half_pig("0608-17", 10_000);
    let host = host(&house);
    let mut slow: Vec<TcpStream> = (0..200)
        .map(|_| {
            let mut stream = TcpStream::connect(&host).unwrap();
            let head = format!("POST /api/moves HTTP/1.1\r\nHost: {host}\r\nContent-Type: application/json\r\n{}Content-Length: 900000\r\n\r\n{{", caller.header());
            stream.write_all(head.as_bytes()).unwrap();
            stream
        })
        .collect();
    for _ in 0..50 {
        let began = Instant::now();
        assert_eq!(caller.verdict(&lot), "sell");
        assert!(began.elapsed() < Duration::from_secs(1));
    }
    let mut told = String::new();
    slow[0]
        .set_read_timeout(Some(Duration::from_secs(30)))
        .unwrap();
    let mut part = [0; 512];
    let read = slow[0].read(&mut part).unwrap();
    told += &String::from_utf8_lossy(&part[..read]);
    assert!(told.starts_with("HTTP/1.1 408 "), "{told}");
}

#[test]
fn a_record_that_is_taken_away_takes_no_deed_and_is_never_made_anew() {
    let mut house = House::furnished(Engine::Sqlite);
    let caller = house.caller();
    let lot = caller.half_pig("0608-17", 10_000);
    assert_eq!(caller.get("/api/ready").status, 200);
    let (there, away) = (house.database.clone(), format!("{}.away", house.database));
    std::fs::rename(&there, &away).unwrap();
    is_told(&caller, "gone");
    let serve = json!({ "id": fresh_id(), "kind": "serve", "lot": lot, "grams": 5 });
    let refused = caller.deed("/api/departures", serve.clone()).expect(503);
    assert_eq!(refused.body["type"], "/problems/database-gone");
    std::fs::rename(&away, &there).unwrap();
    stories::queue::until(|| caller.get("/api/health").status == 200);
    caller.deed("/api/departures", serve).expect(201);
    // Emptied under it, it takes no deed either, whatever the log beside it still holds.
    let whole = std::fs::read(&there).unwrap();
    let record = std::fs::File::options().write(true).open(&there).unwrap();
    // Again and again: what was just being put into the file may come after it was emptied.
    is_told_of(&caller, "emptied", || record.set_len(0).unwrap());
    let other = json!({ "id": fresh_id(), "kind": "serve", "lot": lot, "grams": 5 });
    caller.deed("/api/departures", other).expect(503);
    house.kill();
    std::fs::write(&there, whole).unwrap();
    // Emptied, it is no new kitchen, whatever the options say.
    std::fs::write(&away, "").unwrap();
    let began = std::process::Command::new(stories::house::binary())
        .args([
            "serve",
            "--create",
            "--listen",
            "127.0.0.1:0",
            "--database",
            &away,
        ])
        .output()
        .unwrap();
    assert!(!began.status.success());
    let says = String::from_utf8_lossy(&began.stderr).into_owned();
    assert!(says.contains("is empty"), "{says}");
    assert_eq!(std::fs::metadata(&away).unwrap().len(), 0, "untouched");
    house.restart();
}

/// The service says so of its record; a slow machine may have been told late for a moment before.
fn is_told(caller: &Caller, status: &str) {
    is_told_of(caller, status, || ());
}

/// The same of what happens to it until then.
fn is_told_of(caller: &Caller, status: &str, happens: impl Fn()) {
    let health = || caller.get("/api/health").body;
    let told = || {
        happens();
        health()["status"] == status
    };
    stories::queue::until_or(told, || health().to_string());
}

#[test]
fn the_figures_are_told_in_the_open_text_format() {
    let house = House::furnished(Engine::Sqlite);
    let answer = house.caller().get("/metrics").expect(200);
    assert!(
        answer.kind.starts_with("text/plain; version=0.0.4"),
        "{}",
        answer.kind
    );
    let text = String::from_utf8(answer.bytes).unwrap();
    let line = "gambrel_requests_total{method=\"POST\",route=\"/api/products\",status=\"201\"}";
    assert!(text.contains(line), "{text}");
    assert!(text.contains("gambrel_record_well 1"), "{text}");
}

fn host(house: &House) -> String {
    house.address.trim_start_matches("http://").to_owned()
}

fn raw(house: &House, request: &str) -> String {
    let mut stream = TcpStream::connect(host(house)).unwrap();
    stream.write_all(request.as_bytes()).unwrap();
    let mut answer = String::new();
    stream.read_to_string(&mut answer).unwrap();
    answer
}
