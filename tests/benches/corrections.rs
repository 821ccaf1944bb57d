//! A correction that ten thousand lots follow from: told and done, against reading the same lots forward in
//! the same run. To be told in two seconds and done in five.
#![allow(clippy::disallowed_methods, reason = "a bench measures time")]

use serde_json::{Value, json};
use std::time::Instant;
use stories::bench::size;
use stories::call::fresh_id;
use stories::day::{Told, bought};
use stories::{Caller, Engine, House};

/// Lots that one step makes: as many as it may.
const OF_EACH: usize = 200;

fn timed<T>(what: impl FnOnce() -> T) -> (T, f64) {
    let start = Instant::now();
    let done = what();
    (done, start.elapsed().as_secs_f64())
}

/// A spice that goes into every tub of so many batches; the id of its receipt, and its code.
fn kitchen(caller: &Caller, batches: usize) -> (String, String) {
    let spice = json!({ "code": "spice", "names": { "en": "Spice" }, "kind": "ingredient", "species": null, "raw": false,
        "storage": "ambient", "keep": { "days": 300, "from": "received", "day_one_counts": true } });
    caller.post("/api/products", &spice).expect(201);
    let rub = json!({ "code": "rub", "names": { "en": "Rub" }, "kind": "mixed", "species": null, "raw": false,
        "storage": "ambient", "keep": { "days": 60, "from": "made", "day_one_counts": true } });
    caller.post("/api/products", &rub).expect(201);
    let id = fresh_id();
    let spice = caller.receive("spice").to("cooler").grams(1_000_000);
    let spice = spice.bought(bought("PTS", "S-1")).id(&id).made();
    for _ in 0..batches {
        let outputs: Vec<Value> = (0..OF_EACH)
            .map(|_| json!({ "product": "rub", "grams": 10 }))
            .collect();
        let step = json!({ "kind": "mix", "place": "bench", "inputs": [{ "lot": spice, "grams": 10 * OF_EACH }], "outputs": outputs });
        caller.deed("/api/steps", step).expect(201);
    }
    (id, spice)
}

fn main() {
    println!(
        "| engine | lots | forward, s | told, s | done, s | voided, s |\n|---|---|---|---|---|---|"
    );
    let engines = [Engine::Sqlite, Engine::Postgres];
    for engine in engines.into_iter().filter(|engine| {
        *engine == Engine::Sqlite || std::env::var_os("TEST_DATABASE_URL").is_some()
    }) {
        let house = House::furnished(engine);
        let caller = house.caller();
        let (receipt, spice) = kitchen(&caller, size(50, 1));
        let (_, forward) = timed(|| caller.descendants(&spice));
        let milk = json!({ "use_by": stories::call::chrono_day(20), "declares": { "allergens": ["milk"], "ready": false } });
        let correction = caller
            .correct(&receipt)
            .with("bought", milk)
            .why("its paper");
        let (told, telling) = timed(|| correction.clone().with("try", true).ask().expect(200));
        let lots = told.body["changes"].as_array().map_or(0, Vec::len);
        let (done, doing) = timed(|| correction.done());
        let id = done.body["id"].as_str().unwrap_or_default().to_owned();
        let (_, voiding) = timed(|| caller.void(&id).done());
        println!(
            "| {engine:?} | {lots} | {forward:.2} | {telling:.2} | {doing:.2} | {voiding:.2} |"
        );
    }
}
