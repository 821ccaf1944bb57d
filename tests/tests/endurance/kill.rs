//! Kill -9 in a stream of deeds: what was acknowledged is there once, nothing is half done, and no code
//! is given out twice.
//!
//! The kill comes after a number of acknowledged deeds, whatever the machine's speed; the other clients
//! are in the middle of theirs. `GAMBREL_KILLS` says how often; `GAMBREL_SEED` repeats a run.

use rand::rngs::SmallRng;
use rand::{RngExt, SeedableRng};
use serde_json::{Value, json};
use std::collections::HashMap;
use std::sync::mpsc::{Sender, channel};
use std::time::Duration;
use stories::call::fresh_id;
use stories::{Caller, Engine, House};

const CLIENTS: usize = 3;

/// What a client sent, and what it got, if it got anything.
struct Sent {
    path: &'static str,
    body: Value,
    answer: Option<(u16, Vec<u8>)>,
}

/// A figure of the environment.
pub fn number(name: &str, otherwise: u64) -> u64 {
    std::env::var(name)
        .ok()
        .and_then(|text| text.parse().ok())
        .unwrap_or(otherwise)
}

/// The seed of this run: a new one, where none is named.
pub fn seeded() -> u64 {
    let digits = |seed, byte: u8| seed * 31 % 1_000_003 + u64::from(byte);
    number("GAMBREL_SEED", fresh_id().bytes().fold(7, digits))
}

/// One client until the service is gone: receives, cuts, sells, counts, voids.
fn client(caller: &Caller, seed: u64, acknowledged: Sender<()>) -> Vec<Sent> {
    let mut random = SmallRng::seed_from_u64(seed);
    let mut journal: Vec<Sent> = Vec::new();
    let (mut lots, mut last): (Vec<String>, Option<String>) = (Vec::new(), None);
    loop {
        let lot = lots.get(random.random_range(0..lots.len().max(1))).cloned();
        let (path, mut body) = match (random.random_range(0..9), lot, &last) {
            (0..3, Some(lot), _) => (
                "/api/steps",
                json!({ "kind": "cut", "place": "bench", "inputs": [{ "lot": lot, "grams": 50 }],
                "outputs": [{ "product": "pork-chop", "grams": 24, "pack_count": 6 }, { "product": "pork-trim", "grams": 25 }] }),
            ),
            (3..5, Some(lot), _) => (
                "/api/departures",
                json!({ "kind": "sell", "lot": lot, "grams": 3 }),
            ),
            (5, Some(lot), _) => (
                "/api/counts",
                json!({ "lot": lot, "packs": [{ "pack": 1, "grams": 900 }] }),
            ),
            (6, Some(lot), _) => ("/api/moves", json!({ "lot": lot, "to": "cooler" })),
            (7, _, Some(deed)) => ("void", json!({ "step": deed, "why": "a mistake" })),
            _ => (
                "/api/receipts",
                json!({ "place": "rail", "product": "pig-half", "grams": 1000,
                "animal": { "farm": "BRC", "species": "pig", "killed_on": stories::call::chrono_day(-2) } }),
            ),
        };
        body["id"] = json!(fresh_id());
        body["by"] = json!("Cook");
        let answer = post(caller, path, &body);
        let gone = answer.is_none();
        if let Some((201, bytes)) = &answer {
            let told: Value = serde_json::from_slice(bytes).unwrap();
            if path == "/api/receipts" {
                lots.push(told["lots"][0]["code"].as_str().unwrap().to_owned());
            }
            last = Some(told["id"].as_str().unwrap().to_owned());
            // Nobody counts any more once the service is killed.
            let _ = acknowledged.send(());
        }
        journal.push(Sent { path, body, answer });
        if gone {
            return journal;
        }
    }
}

fn post(caller: &Caller, path: &str, body: &Value) -> Option<(u16, Vec<u8>)> {
    let answer = if path == "void" {
        let mut body = body.clone();
        let step = body.as_object_mut().unwrap().remove("step").unwrap();
        caller.try_post(
            &format!("/api/steps/{}/void", step.as_str().unwrap()),
            &body,
        )
    } else {
        caller.try_post(path, body)
    };
    answer.ok().map(|answer| (answer.status, answer.bytes))
}

fn run(engine: Engine, kills: u64) {
    let kills = number("GAMBREL_KILLS", kills);
    let seed = seeded();
    println!("seed {seed}: run it again with GAMBREL_SEED={seed}");
    let mut random = SmallRng::seed_from_u64(seed);
    let mut house = House::furnished(engine);
    let mut owner: HashMap<String, String> = HashMap::new();
    let (mut acknowledged, mut unknown) = (0, 0);
    for kill in 0..kills {
        let caller = house.caller();
        let seeds: Vec<u64> = (0..CLIENTS).map(|_| random.random()).collect();
        let enough = random.random_range(1..40);
        let journals: Vec<Vec<Sent>> = std::thread::scope(|scope| {
            let (tell, told) = channel();
            let clients: Vec<_> = seeds
                .iter()
                .map(|seed| {
                    let (caller, tell) = (&caller, tell.clone());
                    scope.spawn(move || client(caller, *seed, tell))
                })
                .collect();
            for _ in 0..enough {
                let one = told.recv_timeout(Duration::from_secs(120));
                one.expect("deeds are acknowledged");
            }
            house.kill();
            clients
                .into_iter()
                .map(|client| client.join().unwrap())
                .collect()
        });
        house.restart();
        let caller = house.caller();
        for sent in journals.iter().flatten() {
            let (status, bytes) = answered(&caller, sent);
            match &sent.answer {
                Some((201, first)) => {
                    acknowledged += 1;
                    assert_eq!(
                        (status, &bytes),
                        (200, first),
                        "an acknowledged deed is there, once"
                    );
                }
                // Somebody who is told to come again knows as little as somebody who is told nothing.
                Some((503, _)) | None => unknown += 1,
                Some((first, _)) => assert!(*first >= 400 && *first < 500, "{first}"),
            }
            // Whatever the outcome was, it stays.
            let again = answered(&caller, sent);
            if status < 300 {
                assert_eq!(again, (200, bytes.clone()));
                if matches!(sent.path, "/api/receipts" | "/api/steps") {
                    remember(&mut owner, &bytes);
                }
            } else {
                assert!(status < 500, "{}", String::from_utf8_lossy(&bytes));
            }
        }
        if kill % 20 == 19 {
            house.check();
        }
    }
    println!(
        "{kills} kills: {acknowledged} deeds acknowledged, {unknown} cut off, {} codes",
        owner.len()
    );
    assert!(acknowledged > kills, "the stream was a stream");
}

/// What a deed that is sent again is told, by a service that is up; a slow machine may say for a while that it is busy.
fn answered(caller: &Caller, sent: &Sent) -> (u16, Vec<u8>) {
    let mut told = None;
    stories::queue::until(|| {
        told = post(caller, sent.path, &sent.body);
        told.as_ref().expect("the service is up").0 != 503
    });
    told.expect("an answer")
}

/// A code belongs to one deed for ever.
fn remember(owner: &mut HashMap<String, String>, answer: &[u8]) {
    let told: Value = serde_json::from_slice(answer).unwrap();
    let deed = told["id"].as_str().unwrap();
    for lot in told["lots"].as_array().unwrap() {
        let code = lot["code"].as_str().unwrap().to_owned();
        let known = owner.entry(code.clone()).or_insert_with(|| deed.to_owned());
        assert_eq!(known, deed, "{code} was given out twice");
    }
}

#[test]
fn kill_nine_on_sqlite() {
    run(Engine::Sqlite, 200);
}

#[test]
fn kill_nine_on_postgres() {
    run(Engine::Postgres, 30);
}
