//! One label asked for over HTTP, and 10,000 of them in parts: time, and what the service holds.
//!
//! `cargo bench -p stories --bench labels`, the binary built before. Wanted: one label in 5 ms (p99
//! 10 ms), and below 80 MB at the most while 10,000 come in parts.

use serde_json::json;
use std::time::{Duration, Instant};
use stories::bench::{median, ms, size};
use stories::{Engine, House};

const PART: usize = 100;

#[allow(clippy::disallowed_methods, reason = "a bench reads the clock")]
fn main() {
    let (asked, packs) = (size(1_000, 20), size(9_999, 240));
    let house = House::furnished(Engine::Sqlite);
    let caller = house.caller();
    let pig = caller.half_pig("0608-17", 45_000);
    let step = json!({ "kind": "cut", "place": "bench", "inputs": [{ "lot": pig }],
        "outputs": [{ "product": "pork-trim", "grams": 40_000, "pack_count": packs }] });
    let lot = caller.deed("/api/steps", step).expect(201).code(0);
    let pack = |nth: usize| format!("/api/lots/{lot}/labels.pdf?packs={}", 1 + nth % packs);
    let chop = json!({ "kind": "cut", "place": "bench", "inputs": [{ "lot": caller.half_pig("0608-18", 9_000) }],
        "outputs": [{ "product": "pork-chop", "grams": 8_000, "pack_count": 40 }] });
    let chops = caller.deed("/api/steps", chop).expect(201).code(0);
    let chop = |nth: usize| format!("/api/lots/{chops}/labels.pdf?packs={}", 1 + nth % 40);
    let sorts: [(&str, &dyn Fn(usize) -> String); 2] =
        [("of a lot of 40 packs", &chop), ("of the large lot", &pack)];
    for (what, path) in sorts {
        let took = |nth: usize| {
            let begun = Instant::now();
            caller.get(&path(nth)).expect(200);
            begun.elapsed()
        };
        let mut times: Vec<Duration> = (0..asked).map(took).collect();
        times.sort();
        let p99 = times[asked * 99 / 100];
        println!(
            "one label {what}: median {} ms, p99 {} ms",
            ms(median(times)),
            ms(p99)
        );
    }
    println!("held before the parts: {}", held(house.pid()));
    let begun = Instant::now();
    let bytes: usize = (1..=packs.div_ceil(PART))
        .map(|part| {
            caller
                .get(&format!("/api/lots/{lot}/labels.pdf?part={part}"))
                .expect(200)
        })
        .map(|answer| answer.bytes.len())
        .sum();
    println!(
        "{packs} labels in parts of {PART}: {} ms, {bytes} bytes",
        ms(begun.elapsed())
    );
    println!("held at the most: {}", held(house.pid()));
}

/// The most memory that the process has held so far.
fn held(pid: u32) -> String {
    let status = std::fs::read_to_string(format!("/proc/{pid}/status")).expect("it runs, on Linux");
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    line.expect("the kernel tells").trim().to_owned()
}
