//! Power loss: what was never synced is dropped, and every acknowledged deed must be there all the same.
//!
//! Kill -9 does not test this: the kernel still has what the process wrote. A shim journals the writes
//! and syncs of the service; the disk is rebuilt as it is when the power goes right after an answer.

use rand::rngs::SmallRng;
use rand::{RngExt, SeedableRng};
use serde_json::json;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::process::Command;
use stories::House;
use stories::call::fresh_id;
use stories::house::binary;

/// One line of the journal.
enum Op {
    Write(PathBuf, u64, Vec<u8>),
    Truncate(PathBuf, u64),
    Sync(PathBuf),
    Unlink(PathBuf),
}

fn read(journal: &[u8]) -> Vec<Op> {
    let (mut ops, mut at) = (Vec::new(), 0);
    let number = |at: usize| i64::from_ne_bytes(journal[at..at + 8].try_into().unwrap());
    // What is under way when the power goes, by a thread that nobody waits for, is half a line: it never came to be.
    while at + 25 <= journal.len() {
        let (path, offset, length) = (
            number(at + 1) as usize,
            number(at + 9) as u64,
            number(at + 17) as usize,
        );
        let start = at + 25;
        if start + path + length > journal.len() {
            break;
        }
        let name =
            PathBuf::from(String::from_utf8_lossy(&journal[start..start + path]).into_owned());
        let bytes = &journal[start + path..start + path + length];
        ops.push(match journal[at] {
            b'w' => Op::Write(name, offset, bytes.to_vec()),
            b't' => Op::Truncate(name, offset),
            b's' => Op::Sync(name),
            _ => Op::Unlink(name),
        });
        at = start + path + length;
    }
    ops
}

/// The files as the disk has them after these operations: what was synced, and of the rest a lucky part.
fn disk(ops: &[Op], mut lucky: impl FnMut() -> bool) -> BTreeMap<PathBuf, Vec<u8>> {
    let mut files: BTreeMap<PathBuf, Vec<u8>> = BTreeMap::new();
    let synced_later = |nth: usize, path: &Path| {
        ops[nth..]
            .iter()
            .any(|op| matches!(op, Op::Sync(other) if other == path))
    };
    for (nth, op) in ops.iter().enumerate() {
        match op {
            Op::Write(path, offset, bytes) if synced_later(nth, path) || lucky() => {
                let file = files.entry(path.clone()).or_default();
                let end = *offset as usize + bytes.len();
                file.resize(file.len().max(end), 0);
                file[*offset as usize..end].copy_from_slice(bytes);
            }
            Op::Truncate(path, length) if synced_later(nth, path) || lucky() => {
                files
                    .entry(path.clone())
                    .or_default()
                    .resize(*length as usize, 0);
            }
            Op::Unlink(path) => {
                files.remove(path);
            }
            Op::Sync(path) => {
                files.entry(path.clone()).or_default();
            }
            _ => {}
        }
    }
    files
}

/// Lays a disk out in a folder and reads the record there: how many deeds it holds, if it is sound.
fn deeds_on(files: &BTreeMap<PathBuf, Vec<u8>>, folder: &Path) -> Option<u64> {
    let _ = std::fs::remove_dir_all(folder);
    std::fs::create_dir_all(folder).unwrap();
    for (path, bytes) in files {
        std::fs::write(folder.join(path.file_name().unwrap()), bytes).unwrap();
    }
    let record = folder.join("kitchen.db");
    let out = Command::new(binary())
        .args(["check", "--database", record.to_str().unwrap()])
        .output()
        .unwrap();
    let told = String::from_utf8_lossy(&out.stdout).into_owned();
    out.status
        .success()
        .then(|| told.split(' ').next().unwrap().parse().unwrap())
}

#[test]
fn what_was_answered_survives_power_loss() {
    let folder = tempfile::tempdir().unwrap();
    let shim = folder.path().join("journal.so");
    let source = concat!(env!("CARGO_MANIFEST_DIR"), "/shim/journal.c");
    let built = Command::new("cc")
        .args([
            "-shared",
            "-fPIC",
            "-O1",
            "-o",
            shim.to_str().unwrap(),
            source,
            "-ldl",
        ])
        .status();
    assert!(
        built
            .expect("cc is missing: install build-essential")
            .success()
    );
    let journal = folder.path().join("journal");
    let mut house = House::journaled(&shim, &journal);
    house.furnish();
    let caller = house.caller();
    let lot = caller.half_pig("0608-17", 100_000);
    // No deed is under way between two of them, so the journal's length tells what was on disk at the answer.
    let length = || std::fs::metadata(&journal).unwrap().len() as usize;
    let mut answered = vec![(1, length())];
    for deed in 0..90 {
        if deed % 3 == 0 {
            caller
                .deed(
                    "/api/departures",
                    json!({ "kind": "serve", "lot": lot, "grams": 5 }),
                )
                .expect(201);
        } else {
            let step = json!({ "id": fresh_id(), "kind": "cut", "place": "bench", "inputs": [{ "lot": lot, "grams": 100 }],
                "outputs": [{ "product": "pork-chop", "grams": 90, "pack_count": 9 }] });
            caller.deed("/api/steps", step).expect(201);
        }
        answered.push((deed + 2, length()));
    }
    house.kill();
    let journal = std::fs::read(&journal).unwrap();
    let mut random = SmallRng::seed_from_u64(7);
    let rebuilt = folder.path().join("rebuilt");
    let mut disks = 0;
    for (nth, (deeds, length)) in answered.iter().enumerate() {
        let ops = read(&journal[..*length]);
        for luck in if nth % 2 == 0 { vec![0] } else { vec![0, 50] } {
            let files = disk(&ops, || random.random_range(0..100) < luck);
            let found = deeds_on(&files, &rebuilt);
            assert_eq!(
                found,
                Some(*deeds),
                "after answer {nth}, with {luck} % of what was not synced"
            );
            disks += 1;
        }
    }
    // The harness can tell: without the last sync the last deed is lost.
    let mut ops = read(&journal[..answered[60].1]);
    let last = ops
        .iter()
        .rposition(|op| matches!(op, Op::Sync(path) if path.to_string_lossy().ends_with("-wal")))
        .unwrap();
    ops.truncate(last);
    let found = deeds_on(&disk(&ops, || false), &rebuilt);
    assert_eq!(
        found,
        Some(answered[60].0 - 1),
        "a deed that was not synced is noticed"
    );
    println!(
        "{disks} disks rebuilt, {} deeds each acknowledged before its power cut",
        answered.len()
    );
}
