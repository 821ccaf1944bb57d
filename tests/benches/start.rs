//! What the service holds in memory ten seconds after it started, and how soon it answers, over an
//! existing record in SQLite.
//!
//! `cargo bench -p stories --bench start`, the binary built before. Wanted: below 40 MB and 300 ms.

#[allow(dead_code, reason = "other benches use the rest of it")]
mod record;

use std::io::{BufRead, BufReader};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};
use stories::bench::{median, ms, size};
use stories::{Caller, Engine};

fn main() {
    let (lots, starts) = (size(100_000, 2_000), size(11, 1));
    let (later, scans) = (size(10, 1), size(5_000, 50));
    let folder = tempfile::tempdir().expect("a temporary folder can be made");
    let grown = record::grow(&record::furnished(Engine::Sqlite, folder.path()), lots);
    let database = folder.path().join("kitchen.db").display().to_string();
    let token = stories::house::token(&database);
    let scan = format!("/api/scan?code={}/1", grown.codes[0]);
    let start = || {
        let begun = Instant::now();
        let (child, caller) = serve(&database, &token);
        caller.get(&scan).expect(200);
        (child, caller, begun.elapsed())
    };
    let first = (0..starts).map(|_| {
        let (mut child, _, took) = start();
        end(&mut child);
        took
    });
    println!(
        "first answer, median of {starts} starts: {} ms",
        ms(median(first.collect()))
    );
    let (mut child, caller, _) = start();
    std::thread::sleep(Duration::from_secs(later));
    println!("resident {later} s after the start: {}", resident(&child));
    for code in grown
        .codes
        .iter()
        .step_by((grown.codes.len() / scans).max(1))
    {
        caller.get(&format!("/api/scan?code={code}/1")).expect(200);
    }
    println!("resident after {scans} scans: {}", resident(&child));
    end(&mut child);
}

fn serve(database: &str, token: &str) -> (Child, Caller) {
    let mut child = Command::new(stories::house::binary())
        .args(["serve", "--database", database])
        .args(["--listen", "127.0.0.1:0", "--workers", "4"])
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .expect("the binary starts");
    let mut line = String::new();
    BufReader::new(child.stdout.take().expect("piped"))
        .read_line(&mut line)
        .expect("it prints where it is");
    let address = line
        .split_whitespace()
        .find(|word| word.starts_with("http"));
    let caller = Caller::new(address.expect("an address").trim_end_matches('/'), token);
    (child, caller)
}

fn resident(child: &Child) -> String {
    let path = format!("/proc/{}/status", child.id());
    let status = std::fs::read_to_string(path).expect("it runs, on Linux");
    let line = status.lines().find_map(|line| line.strip_prefix("VmRSS:"));
    line.expect("the kernel tells").trim().to_owned()
}

fn end(child: &mut Child) {
    child.kill().expect("it runs");
    child.wait().expect("it ends");
}
