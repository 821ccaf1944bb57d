//! Copies of a large record: what a copy costs those who pack meanwhile, what a restore costs against a plain copy of
//! the file, and how long it takes to prove the whole record.
//!
//! `cargo bench -p stories --bench copies`, the binary built before. `GAMBREL_LOTS` says how many lots, `GAMBREL_GROWN` a file
//! that the grown record is kept in, and copied from the next time. Wanted: no deed
//! slower than 5 times the median while a copy is made; a restore in at most twice the time of a plain copy; a proof of
//! a million lots in less than 60 s.
#![allow(clippy::disallowed_methods, reason = "a bench measures time")]

#[allow(dead_code, reason = "other benches use the rest of it")]
mod record;

use gambrel::app::App;
use gambrel::caller::Caller as InProcess;
use gambrel::deeds::{receive, step};
use serde_json::{Value, json};
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::{Duration, Instant};
use stories::bench::{row, size};
use stories::call::{chrono_day, fresh_id};
use stories::house::binary;
use stories::{Engine, House};

/// Lots that one deed makes.
const AT_ONCE: usize = 60;
const CLIENTS: usize = 8;
/// How often a plain copy and a restore are timed.
const TURNS: usize = 5;

fn main() {
    let lots = std::env::var("GAMBREL_LOTS").ok();
    let lots = lots.and_then(|lots| lots.parse().ok());
    let lots = lots.unwrap_or_else(|| size(100_000, 600));
    let keep = tempfile::tempdir().expect("a temporary folder can be made");
    let path = keep.path().join("kitchen.db");
    let grown = std::env::var_os("GAMBREL_GROWN").map(PathBuf::from);
    match grown.as_ref().filter(|grown| grown.exists()) {
        Some(grown) => drop(std::fs::copy(grown, &path).expect("it is copied")),
        None => {
            grow(&record::furnished(Engine::Sqlite, keep.path()), lots);
            store::copies::as_one_file(&path).expect("nobody has it open");
            let kept = grown.map(|grown| std::fs::copy(&path, grown));
            kept.transpose().expect("it is kept");
        }
    }
    // As a kitchen's record does, it lies on the disk, and not before it in the memory.
    on_disk(&path);
    let database = path.to_str().expect("UTF-8").to_owned();
    let house = House::at(Engine::Sqlite, &database, &[]);
    row(&[
        "",
        "writes",
        "median ms",
        "p99 ms",
        "slowest ms",
        "",
        "at s",
    ]);
    told(
        "the disk alone: 4 KiB, and fdatasync",
        written(&keep.path().join("beside")),
    );
    row(&[
        "8 clients pack",
        "deeds",
        "median ms",
        "p99 ms",
        "slowest ms",
        "of the median",
        "at s",
    ]);
    let folder = keep.path().join("copies");
    let to = folder.to_str().expect("UTF-8").to_owned();
    let mut took = Duration::ZERO;
    let during = packed(&house, || {
        took = timed(|| run(&["backup", "--database", &database, "--to", &to]));
    });
    told("while a copy is made and proven", during);
    // For as long: a disk that stalls once a minute by itself stalls as often.
    let alone = packed(&house, || std::thread::sleep(took.max(a_while())));
    told("alone, for as long", alone);
    let copy = copy_in(&folder);
    let megabytes = length(&copy) as f64 / 1e6;
    let plain = keep.path().join("plain.db");
    let copied = || {
        std::fs::copy(&copy, &plain).expect("it is copied");
        on_disk(&plain);
    };
    told("while the copy is copied plainly", packed(&house, copied));
    // Turn by turn, so that both meet the same disk, and each into a folder that is empty.
    let (mut floors, mut restores) = (Vec::new(), Vec::new());
    let mut restored = String::new();
    let mut turn = None;
    for _ in 0..TURNS {
        std::fs::remove_file(&plain).expect("the one before goes");
        floors.push(timed(copied));
        let folder = turn.insert(tempfile::tempdir_in(keep.path()).expect("a folder can be made"));
        restored = folder.path().join("restored.db").display().to_string();
        restores.push(timed(|| {
            run(&[
                "restore",
                copy.to_str().expect("UTF-8"),
                "--database",
                &restored,
            ])
        }));
    }
    let (floor, restore) = (middle(floors), middle(restores));
    let check = timed(|| run(&["check", "--database", &restored]));
    row(&["", "seconds", "of a plain copy"]);
    let line = |what: &str, took: Duration| {
        let seconds = took.as_secs_f64();
        row(&[
            what,
            &format!("{seconds:.2}"),
            &format!("{:.2}", seconds / floor.as_secs_f64()),
        ]);
    };
    line(
        &format!("plain copy of {megabytes:.0} MB, {lots} lots"),
        floor,
    );
    line("copy made and proven, while 8 clients pack", took);
    line("restored", restore);
    line("check", check);
}

/// So long is packed without a copy, and written without anybody: a disk stalls by itself now and then.
fn a_while() -> Duration {
    size(Duration::from_secs(60), Duration::from_millis(300))
}

/// How long each write took of what a log's frame is, one after another with the pause of a deed between, while nothing
/// else uses the disk: the floor of the slowest deed, whatever program keeps the record.
fn written(path: &Path) -> Vec<(f64, f64)> {
    let mut file = std::fs::File::create(path).expect("the folder can be written");
    let start = Instant::now();
    let mut all = Vec::new();
    while start.elapsed() < a_while() {
        let begun = Instant::now();
        let kept = file
            .write_all(&[0x5a; 4096])
            .and_then(|()| file.sync_data());
        kept.expect("it is on disk");
        let at = (begun - start).as_secs_f64();
        all.push((begun.elapsed().as_secs_f64() * 1e3, at));
        std::thread::sleep(Duration::from_millis(1));
    }
    all.sort_by(|(one, _), (other, _)| one.total_cmp(other));
    all
}

/// Makes that many lots by deeds, so that the chain holds them.
fn grow(app: &App, lots: usize) {
    let mut left = 0;
    let mut source = String::new();
    for _ in 0..lots.div_ceil(AT_ONCE) {
        if left == 0 {
            (source, left) = (received(app), 150);
        }
        left -= 1;
        let output = json!({ "product": "pork-chop", "grams": 100, "pack_count": 1 });
        let asked = json!({ "id": fresh_id(), "kind": "pack", "by": "Cook", "place": "bench",
            "inputs": [{ "lot": source, "grams": 100 * AT_ONCE }], "outputs": vec![output; AT_ONCE] });
        step::take(&InProcess::new(app), &record::read(&asked)).expect("it is taken");
    }
}

fn received(app: &App) -> String {
    let receipt = json!({ "id": fresh_id(), "by": "Cook", "place": "cooler", "product": "pork-trim", "grams": 1_000_000,
        "animal": { "farm": "BRC", "species": "pig", "killed_on": chrono_day(-1), "abattoir": "DEMO-17",
            "carcass": fresh_id() } });
    let done = receive::take(&InProcess::new(app), &record::read(&receipt)).expect("it is taken");
    let answer: Value = serde_json::from_str(&done.body).expect("JSON");
    answer["lots"][0]["code"]
        .as_str()
        .expect("a code")
        .to_owned()
}

/// How long each deed of eight clients took while something was done, in milliseconds, in order, and when it began, in
/// seconds.
fn packed(house: &House, meanwhile: impl FnOnce()) -> Vec<(f64, f64)> {
    let stop = AtomicBool::new(false);
    let start = Instant::now();
    let mut all: Vec<(f64, f64)> = std::thread::scope(|scope| {
        let clients: Vec<_> = (0..CLIENTS)
            .map(|nth| {
                let (caller, stop) = (house.caller(), &stop);
                scope.spawn(move || {
                    let lot = caller.half_pig(&format!("{nth}-{}", fresh_id()), 1_000_000);
                    let mut times = Vec::new();
                    // One at least: a small file is copied before anybody has begun.
                    while times.is_empty() || !stop.load(Ordering::Relaxed) {
                        let step = json!({ "kind": "pack", "place": "bench", "inputs": [{ "lot": lot, "grams": 12 }],
                            "outputs": [{ "product": "pork-chop", "grams": 12, "pack_count": 12 }] });
                        let begun = Instant::now();
                        caller.deed("/api/steps", step).expect(201);
                        let at = (begun - start).as_secs_f64();
                        times.push((begun.elapsed().as_secs_f64() * 1e3, at));
                    }
                    times
                })
            })
            .collect();
        meanwhile();
        stop.store(true, Ordering::Relaxed);
        clients
            .into_iter()
            .flat_map(|client| client.join().expect("it packs"))
            .collect()
    });
    all.sort_by(|(one, _), (other, _)| one.total_cmp(other));
    all
}

fn told(what: &str, times: Vec<(f64, f64)>) {
    let at = |percent: usize| times[(times.len() - 1) * percent / 100].0;
    let (median, slowest) = (at(50), at(100));
    row(&[
        what,
        &times.len().to_string(),
        &format!("{median:.2}"),
        &format!("{:.2}", at(99)),
        &format!("{slowest:.2}"),
        &format!("{:.1}", slowest / median),
        &format!("{:.1}", times[times.len() - 1].1),
    ]);
}

fn timed(act: impl FnOnce()) -> Duration {
    let begun = Instant::now();
    act();
    begun.elapsed()
}

fn run(args: &[&str]) {
    let out = Command::new(binary())
        .args(args)
        .output()
        .expect("the binary runs");
    assert!(
        out.status.success(),
        "{args:?}: {}",
        String::from_utf8_lossy(&out.stderr)
    );
}

fn copy_in(folder: &Path) -> std::path::PathBuf {
    let entries = std::fs::read_dir(folder).expect("the folder is there");
    let mut paths = entries.map(|entry| entry.expect("it reads").path());
    paths
        .find(|path| path.extension().is_some_and(|ending| ending == "db"))
        .expect("a copy")
}

/// The middle one of some times.
fn middle(mut times: Vec<Duration>) -> Duration {
    times.sort();
    times[times.len() / 2]
}

fn on_disk(path: &Path) {
    std::fs::File::open(path)
        .and_then(|file| file.sync_all())
        .expect("it is on disk");
}

fn length(path: &Path) -> u64 {
    path.metadata().map_or(0, |about| about.len())
}
