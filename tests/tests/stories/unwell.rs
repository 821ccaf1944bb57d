//! A record that is unwell: a disk that is full, a file that is written over, another program that does not let
//! go. The service says so before anybody asks for a deed, takes none, and is well again by itself.

use diesel::connection::SimpleConnection;
use diesel::{Connection, SqliteConnection};
use serde_json::{Value, json};
use std::os::unix::fs::FileExt;
use std::process::Command;
use std::time::{Duration, Instant};
use stories::queue::until;
use stories::{Caller, Engine, House, on_both_engines};

fn status(caller: &Caller) -> Value {
    caller.get("/api/health").body["status"].clone()
}

/// How long a file of the service may get, in bytes, from now on.
fn limit_files(house: &House, bytes: &str) {
    let pid = house.pid().to_string();
    let limit = format!("--fsize={bytes}:unlimited");
    let mut command = Command::new("prlimit");
    let done = command.args(["--pid", &pid, &limit]).status();
    let done = done.expect("prlimit is missing: install util-linux");
    assert!(done.success());
}

#[test]
fn a_full_disk_is_told_before_a_deed_and_after_it_all_is_well_by_itself() {
    let house = House::furnished(Engine::Sqlite);
    let caller = house.caller();
    assert_eq!(status(&caller), "ok");
    limit_files(&house, "8192");
    until(|| status(&caller) == "disk-full");
    let health = caller.get("/api/health").expect(503);
    assert_eq!(health.retry_after, Some(2));
    let clean = json!({ "place": "bench" });
    let refused = caller.deed("/api/clean-downs", clean.clone()).expect(503);
    assert!(refused.retry_after.is_some());
    assert_ne!(status(&caller), "ok", "it stays so");
    limit_files(&house, "unlimited");
    // Nobody sends a deed; it is well all the same.
    until(|| status(&caller) == "ok");
    caller.deed("/api/clean-downs", clean).expect(201);
}

#[test]
fn a_file_that_is_written_over_takes_no_deed() {
    let mut house = House::furnished(Engine::Sqlite);
    let caller = house.caller();
    let lot = caller.half_pig("0608-17", 10_000);
    let there = house.database.clone();
    let whole = std::fs::read(&there).unwrap();
    let file = std::fs::File::options().write(true).open(&there).unwrap();
    let noise: Vec<u8> = (0..whole.len()).map(|nth| (nth * 7 + 13) as u8).collect();
    file.write_all_at(&noise, 0).unwrap();
    let serve = json!({ "kind": "serve", "lot": lot, "grams": 5 });
    let refused = caller.deed("/api/departures", serve.clone()).expect(503);
    assert_eq!(refused.body["type"], "/problems/database-damaged");
    until(|| status(&caller) == "damaged");
    caller.deed("/api/departures", serve.clone()).expect(503);
    // Put back as it was, it goes on.
    file.write_all_at(&whole, 0).unwrap();
    file.set_len(whole.len() as u64).unwrap();
    until(|| status(&caller) == "ok");
    caller.deed("/api/departures", serve).expect(201);
    house.end();
}

#[test]
fn behind_another_program_nobody_waits_for_long_and_health_says_so() {
    let house = House::furnished(Engine::Sqlite);
    let caller = house.caller();
    let lot = caller.half_pig("0608-17", 10_000);
    let mut other = SqliteConnection::establish(&house.database).unwrap();
    other
        .batch_execute("PRAGMA busy_timeout = 5000; BEGIN IMMEDIATE")
        .unwrap();
    let serve = json!({ "kind": "serve", "lot": lot, "grams": 5 });
    let began = Instant::now();
    // However many wait, none of them waits for those before it.
    std::thread::scope(|scope| {
        for _ in 0..6 {
            scope.spawn(|| {
                let refused = caller.deed("/api/departures", serve.clone()).expect(503);
                assert_eq!(refused.body["type"], "/problems/database-locked");
                assert!(refused.retry_after.is_some());
            });
        }
    });
    let waited = began.elapsed();
    assert!(waited < Duration::from_secs(6), "{waited:?}");
    until(|| status(&caller) == "locked");
    assert_eq!(
        caller.verdict(&lot),
        "sell",
        "a scan asks nobody who writes"
    );
    other.batch_execute("ROLLBACK").unwrap();
    until(|| status(&caller) == "ok");
    caller.deed("/api/departures", serve).expect(201);
}

on_both_engines! {
    it_is_proven_that_something_can_be_written
}

/// What is written to prove it leaves the record as it was.
fn it_is_proven_that_something_can_be_written(engine: Engine) {
    let house = House::furnished(engine);
    let before = house.check();
    std::thread::sleep(Duration::from_secs(6));
    assert_eq!(status(&house.caller()), "ok");
    assert_eq!(house.check(), before);
}
