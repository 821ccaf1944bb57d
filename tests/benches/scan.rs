//! Scans of random packs at 16 connections, alone and while packing goes on, against a path that
//! answers nothing behind the same middleware.
//!
//! `cargo bench -p stories --bench scan`, the binary built before. PostgreSQL too where
//! `TEST_DATABASE_URL` names a server. The load runs on the same cores as the service. Wanted: at least
//! a fifth of the empty answers, and the 99th percentile below 5 ms while packing goes on.

#[allow(dead_code, reason = "other benches use the rest of it")]
mod record;

use gambrel::world::Clock;
use rand::rngs::SmallRng;
use rand::{RngExt, SeedableRng};
use serde_json::json;
use std::net::SocketAddr;
use std::sync::Mutex;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::Duration;
use store::Address;
use stories::bench::load::{Seen, load};
use stories::bench::{ms, row, size};
use stories::{Engine, House};

const CONNECTIONS: usize = 16;

fn main() {
    let lots = size(100_000, 2_000);
    println!("{CONNECTIONS} connections, {lots} lots");
    row(&["", "a second", "p50 ms", "p99 ms", "of empty"]);
    for engine in record::engines() {
        measure(
            engine,
            lots,
            size(Duration::from_secs(5), Duration::from_secs(1)),
        );
    }
}

fn measure(engine: Engine, lots: usize, lasts: Duration) {
    // With the log as it is in a kitchen: a line for each request.
    let log = tempfile::tempfile().expect("a temporary file can be made");
    let mut house = House::logging(engine, log);
    let address = Address::parse(&house.database).expect("an address");
    let grown = record::grow(&record::open(&address, Clock::Machine), lots);
    let address: SocketAddr = house.address["http://".len()..]
        .parse()
        .expect("an address");
    let header = house.caller().header();
    let randoms: Vec<_> = (0..CONNECTIONS as u64)
        .map(|seed| Mutex::new(SmallRng::seed_from_u64(seed)))
        .collect();
    let any_pack = |nth: usize, _: usize| {
        let mut random = randoms[nth].lock().expect("nobody panicked");
        let code = &grown.codes[random.random_range(0..grown.codes.len())];
        format!("/api/scan?code={code}/1")
    };
    let caller = house.caller();
    let lot = caller.half_pig("1", 2_000_000);
    let pack = || {
        let step = json!({ "kind": "pack", "place": "bench", "inputs": [{ "lot": lot, "grams": 60 }],
            "outputs": [{ "product": "pork-chop", "grams": 60, "pack_count": 60 }] });
        caller.deed("/api/steps", step).expect(201);
    };
    let empty = load(address, &header, CONNECTIONS, lasts, 404, |_, _| {
        "/assets/none".into()
    });
    let told = |what: &str, seen: &Seen| {
        row(&[
            &format!("{engine:?}, {what}"),
            &format!("{:.0}", seen.a_second),
            &ms(seen.percentile(50.0)),
            &ms(seen.percentile(99.0)),
            &format!("{:.2}", seen.a_second / empty.a_second),
        ]);
    };
    told("empty", &empty);
    told(
        "scan",
        &load(address, &header, CONNECTIONS, lasts, 200, any_pack),
    );
    let packing = AtomicBool::new(true);
    let (seen, packed) = std::thread::scope(|scope| {
        let packer = scope.spawn(|| {
            let mut packed = 0;
            while packing.load(Ordering::Relaxed) {
                pack();
                packed += 1;
            }
            packed
        });
        let seen = load(address, &header, CONNECTIONS, lasts, 200, any_pack);
        packing.store(false, Ordering::Relaxed);
        (seen, packer.join().expect("packing went on"))
    });
    told("scan while packing", &seen);
    println!(
        "   meanwhile {} deeds of 60 packs a second",
        packed / lasts.as_secs()
    );
    // What was grown was written past the program, so no chain holds it: such a record is not checked when it goes.
    house.kill();
    if engine == Engine::Sqlite {
        std::fs::remove_file(&house.database).expect("the record of the bench is a file");
    }
    std::mem::forget(house);
}
