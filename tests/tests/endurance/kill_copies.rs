//! Kill -9 in copies and restores while deeds go on: nothing that was answered is lost, no half copy is taken for
//! one, nothing is overwritten, and a copy that is restored has every deed that was answered before it was begun.
//!
//! `GAMBREL_COPY_KILLS` says how often; `GAMBREL_SEED` repeats a run.

use crate::kill::{number, seeded};
use rand::rngs::SmallRng;
use rand::{RngExt, SeedableRng};
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::Mutex;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::{Duration, Instant};
use store::{Address, Store};
use stories::call::fresh_id;
use stories::house::{binary, fresh_database};
use stories::{Caller, Engine, House};

const CLIENTS: usize = 2;

/// What was answered: the ids of deeds, and the codes of what they made.
#[derive(Default)]
struct Answered {
    deeds: BTreeMap<String, String>,
    codes: BTreeSet<String>,
}

impl Answered {
    fn keep(&mut self, bytes: &[u8]) {
        let told: Value = serde_json::from_slice(bytes).unwrap();
        let lots = told["lots"].as_array().into_iter().flatten();
        let codes = lots.map(|lot| lot["code"].as_str().unwrap().to_owned());
        self.codes.extend(codes);
        let text = String::from_utf8(bytes.to_vec()).unwrap();
        self.deeds
            .insert(told["id"].as_str().unwrap().to_owned(), text);
    }
}

/// A client until it is told to stop, or nobody answers.
fn work(caller: &Caller, seed: u64, stop: &AtomicBool, answered: &Mutex<Answered>) {
    let mut random = SmallRng::seed_from_u64(seed);
    let mut lot: Option<String> = None;
    while !stop.load(Ordering::Relaxed) {
        let (path, body) = match (&lot, random.random_range(0..6)) {
            (Some(lot), 1..) => (
                "/api/steps",
                json!({ "id": fresh_id(), "by": "Cook", "kind": "cut", "place": "bench",
                    "inputs": [{ "lot": lot, "grams": 20 }],
                    "outputs": [{ "product": "pork-chop", "grams": 18, "pack_count": 2 }] }),
            ),
            _ => (
                "/api/receipts",
                json!({ "id": fresh_id(), "by": "Cook", "place": "rail", "product": "pig-half", "grams": 1000,
                    "animal": { "farm": "BRC", "species": "pig", "killed_on": stories::call::chrono_day(-2) } }),
            ),
        };
        let Ok(answer) = caller.try_post(path, &body) else {
            return;
        };
        if answer.status == 201 {
            if path == "/api/receipts" {
                lot = Some(answer.code(0));
            }
            answered.lock().unwrap().keep(&answer.bytes);
        } else {
            lot = None;
        }
    }
}

/// Runs the program and kills it after a while, if it has not ended by then; did it succeed?
fn cut_short(args: &[&str], after: Duration) -> bool {
    let mut child = Command::new(binary())
        .args(args)
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    std::thread::sleep(after);
    let _ = child.kill();
    child.wait().unwrap().success()
}

/// Runs the program to its end; what it says, and whether it succeeded.
fn run_through(args: &[&str]) -> (bool, String) {
    let out = Command::new(binary()).args(args).output().unwrap();
    let says = [out.stdout, out.stderr].concat();
    (
        out.status.success(),
        String::from_utf8_lossy(&says).into_owned(),
    )
}

#[track_caller]
fn done(args: &[&str]) -> String {
    let (well, says) = run_through(args);
    assert!(well, "{args:?}: {says}");
    says
}

/// What has the name of a copy in a folder.
fn copies(folder: &Path) -> Vec<PathBuf> {
    let entries = std::fs::read_dir(folder).into_iter().flatten().flatten();
    let mut found: Vec<PathBuf> = entries
        .map(|entry| entry.path())
        .filter(|path| {
            let name = path.file_name().unwrap().to_string_lossy().into_owned();
            name.ends_with(".db") || name.ends_with(".db.locked")
        })
        .collect();
    found.sort();
    found
}

/// Each of these deeds is on record, and was answered so.
fn holds(database: &str, deeds: &BTreeMap<String, String>) {
    let store = Store::open(&Address::parse(database).unwrap(), false, 1).unwrap();
    store
        .look(|conn| {
            for (id, answer) in deeds {
                let deed = store::deeds::by_uid(conn, &bytes_of(id))?;
                let deed = deed.unwrap_or_else(|| panic!("{id} was answered and is not there"));
                assert_eq!(&store::deeds::answer(conn, deed.id)?, answer, "{id}");
            }
            Ok::<_, store::Error>(())
        })
        .unwrap();
}

fn bytes_of(id: &str) -> [u8; 16] {
    let digits: String = id.chars().filter(char::is_ascii_hexdigit).collect();
    std::array::from_fn(|nth| u8::from_str_radix(&digits[2 * nth..2 * nth + 2], 16).unwrap())
}

fn run(engine: Engine, rounds: u64) {
    let rounds = number("GAMBREL_COPY_KILLS", rounds);
    let seed = seeded();
    println!("seed {seed}: run it again with GAMBREL_SEED={seed}");
    let mut random = SmallRng::seed_from_u64(seed);
    let mut house = House::furnished(engine);
    let answered = Mutex::new(Answered::default());
    let keep = tempfile::tempdir().unwrap();
    let folder = keep.path().join("copies");
    let (to, key) = (folder.to_str().unwrap().to_owned(), keep.path().join("key"));
    let key = key.to_str().unwrap().to_owned();
    done(&["key", "--to", &key]);
    let (mut backups_cut, mut restores_cut) = (0, 0);
    let mut took = [Duration::from_secs(1); 2];
    for round in 0..rounds {
        let locked = round % 2 == 1;
        let caller = house.caller();
        let stop = AtomicBool::new(false);
        let seeds: Vec<u64> = (0..CLIENTS).map(|_| random.random()).collect();
        let database = house.database.clone();
        let mut backup = vec![
            "backup",
            "--database",
            &database,
            "--to",
            &to,
            "--keep",
            "3",
        ];
        if locked {
            backup.extend(["--key", &key]);
        }
        let (before, kills_service) = std::thread::scope(|scope| {
            for seed in &seeds {
                let (caller, stop, answered) = (&caller, &stop, &answered);
                scope.spawn(move || work(caller, *seed, stop, answered));
            }
            std::thread::sleep(Duration::from_millis(random.random_range(50..300)));
            // Somewhere in it, or just behind its end.
            let known = copies(&folder);
            let after = took[0].mul_f64(random.random_range(0.0..1.1));
            if !cut_short(&backup, after) {
                backups_cut += 1;
            }
            for copy in copies(&folder).iter().filter(|copy| !known.contains(copy)) {
                if !locked {
                    done(&["check", "--database", copy.to_str().unwrap()]);
                }
            }
            // What is answered by now is in the next copy.
            let before = answered.lock().unwrap().deeds.clone();
            // Names are to the second.
            std::thread::sleep(Duration::from_millis(1_100));
            let kills_service = random.random_range(0..3) == 0;
            let begun = Instant::now();
            if kills_service {
                std::thread::scope(|scope| {
                    let copying = scope.spawn(|| done(&backup));
                    std::thread::sleep(took[0].mul_f64(random.random_range(0.0..0.9)));
                    house.kill();
                    copying.join().unwrap();
                });
            } else {
                done(&backup);
            }
            took[0] = begun.elapsed();
            stop.store(true, Ordering::Relaxed);
            (before, kills_service)
        });
        if kills_service {
            house.restart();
            holds(&house.database, &answered.lock().unwrap().deeds);
        }
        let copy = copies(&folder).pop().expect("a copy was made");
        let copy = copy.to_str().unwrap().to_owned();
        let place = tempfile::tempdir().unwrap();
        let target = fresh_database(engine, place.path());
        let mut restore = vec!["restore", copy.as_str(), "--database", &target];
        if copy.ends_with(".locked") {
            restore.extend(["--key", &key]);
        }
        if cut_short(&restore, took[1].mul_f64(random.random_range(0.0..1.1))) {
            // It was through.
        } else {
            restores_cut += 1;
            let begun = Instant::now();
            let (well, says) = run_through(&restore);
            took[1] = begun.elapsed();
            // What has its name was whole before it got it.
            assert!(well || says.contains("is there already"), "{says}");
        }
        let digest = done(&["check", "--database", &target]);
        let (well, says) = run_through(&restore);
        assert!(!well && says.contains("is there already"), "{says}");
        assert_eq!(
            done(&["check", "--database", &target]),
            digest,
            "nothing was overwritten"
        );
        holds(&target, &before);
        let mut drill = vec!["drill", "--database", &house.database, "--copies", &to];
        if copy.ends_with(".locked") {
            drill.extend(["--key", &key]);
        }
        done(&drill);
        // What the restored record gives out was on no label of the one that was lost.
        let restored = House::at(engine, &target, &[]);
        let theirs = restored.caller();
        assert_eq!(theirs.read("/api/copies")["lease"]["why"], "restored");
        let given = answered.lock().unwrap().codes.clone();
        for nth in 0..3 {
            let lot = theirs.half_pig(&format!("{round}-{nth}"), 500);
            assert!(!given.contains(&lot), "{lot} was given out before");
        }
    }
    house.check();
    let all = answered.lock().unwrap();
    println!(
        "{engine:?}: {rounds} rounds, {backups_cut} copies and {restores_cut} restores cut short, {} deeds answered, {} codes",
        all.deeds.len(),
        all.codes.len()
    );
    assert!(backups_cut > 0 || rounds < 4, "some were cut short");
}

#[test]
fn copies_killed_on_sqlite() {
    run(Engine::Sqlite, 3);
}

#[test]
fn copies_killed_on_postgres() {
    run(Engine::Postgres, 2);
}
