//! Sixteen writers on one lot, against one writer in the same run: the 99th percentile is to be at most
//! 3 x 16 x the single writer's median.
#![allow(clippy::disallowed_methods, reason = "a bench measures time")]

use serde_json::json;
use std::time::Instant;
use stories::bench::size;
use stories::{Caller, Engine, House};

fn draws(caller: &Caller, lot: &str, count: usize) -> Vec<f64> {
    let mut times: Vec<f64> = (0..count)
        .map(|_| {
            let start = Instant::now();
            let step = json!({ "kind": "portion", "place": "bench", "inputs": [{ "lot": lot, "grams": 1 }], "outputs": [{ "product": "pork-chop", "grams": 1 }] });
            caller.deed("/api/steps", step).expect(201);
            start.elapsed().as_secs_f64() * 1e3
        })
        .collect();
    times.sort_by(f64::total_cmp);
    times
}

fn main() {
    println!(
        "| engine | one writer, median ms | 16 writers: median ms | p99 ms | bound ms | deeds/s |\n|---|---|---|---|---|---|"
    );
    let engines = [Engine::Sqlite, Engine::Postgres];
    for engine in engines.into_iter().filter(|engine| {
        *engine == Engine::Sqlite || std::env::var_os("TEST_DATABASE_URL").is_some()
    }) {
        let house = House::furnished(engine);
        let caller = house.caller();
        let lot = caller.half_pig("1", 1_000_000);
        draws(&caller, &lot, size(50, 1));
        let count = size(400, 10);
        let alone = draws(&caller, &lot, count)[count / 2];
        let begun = Instant::now();
        let mut all: Vec<f64> = std::thread::scope(|scope| {
            let clients: Vec<_> = (0..16)
                .map(|_| scope.spawn(|| draws(&house.caller(), &lot, size(150, 5))))
                .collect();
            clients
                .into_iter()
                .flat_map(|client| client.join().unwrap())
                .collect()
        });
        let rate = all.len() as f64 / begun.elapsed().as_secs_f64();
        all.sort_by(f64::total_cmp);
        let p99 = all[all.len() * 99 / 100];
        println!(
            "| {engine:?} | {alone:.2} | {:.2} | {p99:.2} | {:.2} | {rate:.0} |",
            all[all.len() / 2],
            48.0 * alone
        );
    }
}
