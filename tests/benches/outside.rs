//! Scans while what comes from outside is at its worst: twelve large label calls, 600 slow bodies and a printer that
//! says nothing, against the same scans with nothing else to do.
//!
//! `cargo bench -p stories --bench outside`, the binary built before. Wanted: the 99th percentile within 5 times the
//! quiet one, and below 200 MB at the most. `BENCH_CALLS`, `BENCH_BODIES` say how many calls and bodies instead.

use serde_json::json;
use std::io::Write;
use std::net::{TcpListener, TcpStream};
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::time::{Duration, Instant};
use stories::bench::{ms, row, size};
use stories::{Caller, Engine, House};

/// Labels that one call draws.
const PART: usize = 100;
/// A slow body brings a byte so often.
const A_BYTE: Duration = Duration::from_millis(500);

fn main() {
    let (scans, packs) = (size(4_000, 20), size(9_999, 240));
    let calls = given("BENCH_CALLS").unwrap_or(size(12, 2));
    let bodies = given("BENCH_BODIES").unwrap_or(size(600, 20));
    row(&[
        "engine",
        "quiet p99",
        "p99 ms",
        "times",
        "most MB",
        "labels",
    ]);
    let engines = [Engine::Sqlite, Engine::Postgres];
    for engine in engines.into_iter().filter(|engine| {
        *engine == Engine::Sqlite || std::env::var_os("TEST_DATABASE_URL").is_some()
    }) {
        let house = House::furnished(engine);
        let caller = house.caller();
        let (lot, printer) = (large(&caller, packs), silent());
        let entry = json!({ "code": "mute", "name": "Mute", "address": printer });
        caller.post("/api/printers", &entry).expect(201);
        scanned(&caller, &lot, scans / 10);
        let quiet = scanned(&caller, &lot, scans);
        let print = json!({ "printer": "mute", "lot": lot, "packs": [1, 2, 3] });
        caller.deed("/api/prints", print).expect(201);
        let (over, drawn) = (AtomicBool::new(false), AtomicUsize::new(0));
        let besieged = std::thread::scope(|all| {
            all.spawn(|| slow(&house, bodies, &over));
            for nth in 0..calls {
                let (house, lot, over, drawn) = (&house, &lot, &over, &drawn);
                all.spawn(move || {
                    let caller = house.caller();
                    let parts = packs.div_ceil(PART);
                    let mut part = nth * parts / calls;
                    while !over.load(Ordering::Relaxed) {
                        part = part % parts + 1;
                        let path = format!("/api/lots/{lot}/labels.pdf?part={part}");
                        let made = caller.get(&path).status == 200;
                        drawn.fetch_add(usize::from(made), Ordering::Relaxed);
                    }
                });
            }
            std::thread::sleep(Duration::from_secs(1));
            let besieged = scanned(&caller, &lot, scans);
            over.store(true, Ordering::Relaxed);
            besieged
        });
        row(&[
            &format!("{engine:?}"),
            &ms(quiet),
            &ms(besieged),
            &format!("{:.1}", besieged.as_secs_f64() / quiet.as_secs_f64()),
            &held(house.pid()).to_string(),
            &(drawn.into_inner() * PART).to_string(),
        ]);
    }
}

fn given(name: &str) -> Option<usize> {
    std::env::var(name).ok().and_then(|of| of.parse().ok())
}

/// A lot of many packs.
fn large(caller: &Caller, packs: usize) -> String {
    let pig = caller.half_pig("0608-17", 45_000);
    let step = json!({ "kind": "cut", "place": "bench", "inputs": [{ "lot": pig }],
        "outputs": [{ "product": "pork-trim", "grams": 40_000, "pack_count": packs }] });
    caller.deed("/api/steps", step).expect(201).code(0)
}

/// The address of a printer that takes what it is sent and says nothing.
fn silent() -> String {
    let listener = TcpListener::bind("127.0.0.1:0").expect("a port");
    let port = listener.local_addr().expect("a port").port();
    std::thread::spawn(move || {
        let kept: Vec<TcpStream> = listener.incoming().flatten().collect();
        drop(kept);
    });
    format!("ipp://127.0.0.1:{port}/ipp/print")
}

/// Keeps so many bodies coming, a byte at a time; a new one for each that is not waited for any longer.
fn slow(house: &House, bodies: usize, over: &AtomicBool) {
    let host = house.address.trim_start_matches("http://");
    let says = house.caller().header();
    let head = format!(
        "POST /api/moves HTTP/1.1\r\nHost: {host}\r\nContent-Type: application/json\r\n{says}Content-Length: 900000\r\n\r\n{{"
    );
    let begin = || {
        let mut stream = TcpStream::connect(host).ok()?;
        stream.write_all(head.as_bytes()).ok().map(|()| stream)
    };
    let mut all: Vec<TcpStream> = Vec::new();
    while !over.load(Ordering::Relaxed) {
        all.retain_mut(|stream| stream.write_all(b" ").is_ok());
        all.extend((all.len()..bodies).map_while(|_| begin()));
        std::thread::sleep(A_BYTE);
    }
}

/// The 99th percentile of so many scans.
#[allow(clippy::disallowed_methods, reason = "a bench measures time")]
fn scanned(caller: &Caller, lot: &str, scans: usize) -> Duration {
    let scan = |nth: usize| {
        let begun = Instant::now();
        let path = format!("/api/scan?code={lot}/{}", 1 + nth % 200);
        caller.get(&path).expect(200);
        begun.elapsed()
    };
    let mut times: Vec<Duration> = (0..scans).map(scan).collect();
    times.sort_unstable();
    times[scans * 99 / 100]
}

/// The most memory that the process has held so far, in megabytes.
fn held(pid: u32) -> u32 {
    let status = std::fs::read_to_string(format!("/proc/{pid}/status")).expect("it runs, on Linux");
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    let words = line.and_then(|line| line.split_whitespace().next());
    words
        .and_then(|kb| kb.parse::<u32>().ok())
        .expect("the kernel tells")
        / 1_024
}
