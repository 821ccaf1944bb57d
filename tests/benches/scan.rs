//! Scans at 16 connections while packing goes on, against an empty route behind the same middleware;
//! and what the service holds in memory and how soon it answers.
#![allow(clippy::disallowed_methods, reason = "a bench measures time")]

use serde_json::json;
use std::io::{Read, Write};
use std::net::TcpStream;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::{Duration, Instant};
use stories::{Engine, House};

const CONNECTIONS: usize = 16;
const SECONDS: u64 = 5;

/// Asks the same over one connection until told to stop; each answer's milliseconds.
fn ask(address: &str, path: &str, stop: &AtomicBool) -> Vec<f64> {
    let mut stream = TcpStream::connect(address.trim_start_matches("http://")).expect("it listens");
    stream.set_nodelay(true).expect("a socket can");
    let request = format!("GET {path} HTTP/1.1\r\nHost: x\r\n\r\n");
    let (mut times, mut buffer) = (Vec::new(), vec![0; 16_384]);
    while !stop.load(Ordering::Relaxed) {
        let start = Instant::now();
        stream.write_all(request.as_bytes()).expect("it reads");
        let mut have = 0;
        loop {
            have += stream.read(&mut buffer[have..]).expect("it answers");
            let text = String::from_utf8_lossy(&buffer[..have]);
            let Some((head, body)) = text.split_once("\r\n\r\n") else {
                continue;
            };
            let length = head.lines().find_map(|line| {
                line.to_ascii_lowercase()
                    .strip_prefix("content-length: ")?
                    .trim()
                    .parse::<usize>()
                    .ok()
            });
            if body.len() >= length.unwrap_or(0) {
                break;
            }
        }
        times.push(start.elapsed().as_secs_f64() * 1e3);
    }
    times
}

fn load(address: &str, path: &str) -> (f64, f64, f64) {
    let stop = AtomicBool::new(false);
    let mut times: Vec<f64> = std::thread::scope(|scope| {
        let connections: Vec<_> = (0..CONNECTIONS)
            .map(|_| scope.spawn(|| ask(address, path, &stop)))
            .collect();
        std::thread::sleep(Duration::from_secs(SECONDS));
        stop.store(true, Ordering::Relaxed);
        connections
            .into_iter()
            .flat_map(|connection| connection.join().expect("it ends"))
            .collect()
    });
    times.sort_by(f64::total_cmp);
    (
        times.len() as f64 / SECONDS as f64,
        times[times.len() / 2],
        times[times.len() * 99 / 100],
    )
}

fn measure(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let lot = caller.half_pig("1", 2_000_000);
    let pack = |grams: u64| {
        let step = json!({ "kind": "pack", "place": "bench", "inputs": [{ "lot": lot, "grams": grams }], "outputs": [{ "product": "pork-chop", "grams": grams, "pack_count": 60 }] });
        caller.deed("/api/steps", step).expect(201).code(0)
    };
    let packed = pack(6_000);
    let (floor, _, _) = load(&house.address, "/assets/none");
    let path = format!("/api/scan?code={packed}/17");
    let (quiet, _, quiet_p99) = load(&house.address, &path);
    let packing = AtomicBool::new(true);
    let (busy, median, p99) = std::thread::scope(|scope| {
        scope.spawn(|| {
            while packing.load(Ordering::Relaxed) {
                pack(60);
            }
        });
        let told = load(&house.address, &path);
        packing.store(false, Ordering::Relaxed);
        told
    });
    println!(
        "| {engine:?} | {floor:.0} | {quiet:.0} | {quiet_p99:.2} | {busy:.0} | {median:.2} | {p99:.2} | {:.2} |",
        quiet / floor
    );
}

/// Resident memory ten seconds after a start on the demo's record, and the time to the first answer.
fn start() {
    let mut house = House::demo(Engine::Sqlite);
    house.kill();
    let begun = Instant::now();
    house.restart();
    let caller = house.caller();
    caller.get("/api/health").expect(200);
    let first = begun.elapsed().as_secs_f64() * 1e3;
    std::thread::sleep(Duration::from_secs(10));
    let status = std::fs::read_to_string(format!("/proc/{}/status", house.pid())).expect("it runs");
    let resident = status
        .lines()
        .find_map(|line| line.strip_prefix("VmRSS:"))
        .unwrap_or("?")
        .trim()
        .to_owned();
    println!("\nFirst answer after {first:.0} ms; resident 10 s after start: {resident}.");
}

fn main() {
    println!(
        "| engine | empty route, 1/s | scan, 1/s | p99 ms | while packing, 1/s | median ms | p99 ms | scan / empty |\n|---|---|---|---|---|---|---|---|"
    );
    measure(Engine::Sqlite);
    if std::env::var_os("TEST_DATABASE_URL").is_some() {
        measure(Engine::Postgres);
    }
    start();
}
