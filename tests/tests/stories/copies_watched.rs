//! Copies that are made by themselves, locked, tried, told when they fail; a record that is opened beside its copy.

use crate::copies::{clean, copies, gambrel, refused};
use serde_json::{Value, json};
use std::path::Path;
use std::process::Command;
use stories::house::fresh_database;
use stories::queue::until;
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    copies_are_made_by_the_timetable_under_lock_and_tried
    a_copy_that_comes_to_nothing_is_told
    a_record_that_is_served_again_is_where_it_was
    a_copy_that_went_its_own_way_is_noticed
}

/// What `GET /api/copies` says.
fn told(caller: &Caller) -> Value {
    caller.read("/api/copies")
}

/// The keys of what Today says of copies.
fn on_today(caller: &Caller) -> Vec<String> {
    let today: Value = caller.read("/api/today");
    let hands = today["hands"].as_array().unwrap().iter();
    let of_copies = hands.filter(|hand| hand["sort"] == "copies");
    of_copies
        .map(|hand| hand["key"].as_str().unwrap().to_owned())
        .collect()
}

/// Today says so of copies, at the latest two seconds later.
#[track_caller]
fn says_today(caller: &Caller, keys: &[&str]) {
    until(|| on_today(caller) == keys);
}

fn copies_are_made_by_the_timetable_under_lock_and_tried(engine: Engine) {
    let keep = tempfile::tempdir().unwrap();
    let path = |name: &str| keep.path().join(name).to_str().unwrap().to_owned();
    let (key, other, folder) = (path("key"), path("other-key"), path("copies"));
    let printed = gambrel(&["key", "--to", &key]);
    assert!(
        printed.contains("GAMBREL-KEY") && printed.contains("paper"),
        "{printed}"
    );
    assert!(refused(&["key", "--to", &key]).contains("is there already"));
    gambrel(&["key", "--to", &other]);
    let flags = [
        "--copies",
        &folder,
        "--copies-key",
        &key,
        "--copies-every",
        "12h",
    ];
    let house = House::empty_with(engine, &flags);
    house.furnish();
    let caller = house.caller();
    let health = || -> Value { caller.read("/api/health") };
    until(|| health()["copies"]["last"].is_string());
    assert_eq!(health()["copies"]["status"], "on-time");
    let read = told(&caller);
    assert_eq!(read["timetable"]["every_minutes"], 720);
    assert_eq!(read["timetable"]["locked"], true);
    assert_eq!(read["copies"][0]["what"], "copy");
    assert_eq!(read["lease"]["why"], "made");
    let made = copies(Path::new(&folder));
    assert_eq!(made.len(), 1, "{made:?}");
    let copy = made[0].to_str().unwrap();
    assert!(copy.ends_with(".db.locked"), "{copy}");
    let bytes = std::fs::read(copy).unwrap();
    assert!(!bytes.windows(15).any(|some| some == b"SQLite format 3"));
    says_today(&caller, &[]);
    // It is tried, and the record goes on meanwhile.
    clean(&caller, 3);
    let drill = [
        "drill",
        "--database",
        &house.database,
        "--copies",
        &folder,
        "--key",
    ];
    let says = gambrel(&[&drill[..], &[&key]].concat());
    assert!(
        says.contains("goes on from its link") && says.contains("thrown away"),
        "{says}"
    );
    assert!(told(&caller)["last_drill"]["at"].is_string());
    // With another key, or none, it is said which one is missing, and told until it is tried with the right one.
    let says = refused(&[&drill[..], &[&other]].concat());
    assert!(says.contains("was locked with the key"), "{says}");
    says_today(&caller, &["today-copy-no-good"]);
    assert_eq!(told(&caller)["copies"][0]["trouble"], "key");
    gambrel(&[&drill[..], &[&key]].concat());
    says_today(&caller, &[]);
    let target = fresh_database(engine, keep.path());
    let restore = ["restore", copy, "--database", &target];
    let says = refused(&restore);
    assert!(says.contains("is under lock"), "{says}");
    let says = refused(&[&restore[..], &["--key", &other]].concat());
    assert!(says.contains("Look for the other one"), "{says}");
    assert!(engine == Engine::Postgres || !Path::new(&target).exists());
    let says = gambrel(&[&restore[..], &["--key", &key]].concat());
    assert!(says.contains("new lease"), "{says}");
    gambrel(&["check", "--database", &target]);
    // A copy of which one byte was changed is none, and a key with a wrong digit is no key.
    let mut turned = bytes;
    let middle = turned.len() / 2;
    turned[middle] ^= 1;
    std::fs::write(copy, turned).unwrap();
    let says = refused(&[&restore[..], &["--key", &key]].concat());
    assert!(
        says.contains("was changed or cut short") || says.contains("is there already"),
        "{says}"
    );
    let text = std::fs::read_to_string(&key).unwrap();
    let wrong = text.replace("GAMBREL-KEY ", "GAMBREL-KEY 0");
    std::fs::write(&key, wrong).unwrap();
    let says = refused(&[&drill[..], &[&key]].concat());
    assert!(says.contains("wrong digit"), "{says}");
    // Nothing that lay open is left anywhere.
    for folder in [house.folder(), keep.path(), Path::new(&folder)] {
        for entry in std::fs::read_dir(folder).unwrap().flatten() {
            assert!(
                !entry.file_name().to_string_lossy().contains("unproven"),
                "{entry:?}"
            );
        }
    }
}

fn a_copy_that_comes_to_nothing_is_told(engine: Engine) {
    let keep = tempfile::tempdir().unwrap();
    let file = keep.path().join("no-folder");
    std::fs::write(&file, "a file").unwrap();
    let folder = file.join("copies").to_str().unwrap().to_owned();
    let mut house = House::empty_with(engine, &["--copies", &folder]);
    let caller = house.caller();
    let health = |caller: &Caller| -> Value { caller.read("/api/health") };
    until(|| health(&caller)["copies"]["status"] == "failed");
    says_today(&caller, &["today-copy-failed"]);
    let read = told(&caller);
    assert_eq!(read["copies"][0]["trouble"], "folder");
    assert!(
        read["copies"][0]["detail"]
            .as_str()
            .unwrap()
            .contains("no folder")
    );
    let page = String::from_utf8(caller.get("/copies").expect(200).bytes).unwrap();
    assert!(page.contains("came to nothing") && page.contains("no-folder"));
    // A drill without a copy is told as well.
    let empty = keep.path().join("empty");
    std::fs::create_dir(&empty).unwrap();
    let says = refused(&[
        "drill",
        "--database",
        &house.database,
        "--copies",
        empty.to_str().unwrap(),
    ]);
    assert!(says.contains("there is no copy"), "{says}");
    until(|| on_today(&caller).len() == 2);
    // As soon as one is made by hand, all is well.
    gambrel(&[
        "backup",
        "--database",
        &house.database,
        "--to",
        empty.to_str().unwrap(),
    ]);
    gambrel(&[
        "drill",
        "--database",
        &house.database,
        "--copies",
        empty.to_str().unwrap(),
    ]);
    says_today(&caller, &[]);
    house.kill();
    house.restart();
    until(|| health(&house.caller())["copies"]["status"] == "off");
}

/// A kill, a restart, a new name: none of them is an alarm.
fn a_record_that_is_served_again_is_where_it_was(engine: Engine) {
    let mut house = House::furnished(engine);
    let lease = told(&house.caller())["lease"].clone();
    assert_eq!(lease["why"], "made");
    for _ in 0..3 {
        clean(&house.caller(), 1);
        house.kill();
        house.restart();
        assert_eq!(told(&house.caller())["lease"], lease);
        assert!(on_today(&house.caller()).is_empty());
    }
    house.end();
    if engine == Engine::Sqlite {
        let renamed = house.folder().join("renamed.db");
        with_its_log(&house.database, renamed.to_str().unwrap(), |from, to| {
            std::fs::rename(from, to).unwrap();
        });
        house.database = renamed.to_str().unwrap().to_owned();
        house.restart();
        let read = told(&house.caller());
        assert_eq!(
            (&read["lease"]["why"], &read["lease"]["mark"]),
            (&lease["why"], &lease["mark"])
        );
        assert!(
            read["lease"]["place"]
                .as_str()
                .unwrap()
                .ends_with("renamed.db")
        );
        assert!(on_today(&house.caller()).is_empty());
    } else {
        house.restart();
    }
}

/// What is done to a file is done to the log beside it, where there is one: it may hold all of a young record.
fn with_its_log(from: &str, to: &str, act: impl Fn(&str, &str)) {
    act(from, to);
    let log = |path: &str| format!("{path}-wal");
    if Path::new(&log(from)).exists() {
        act(&log(from), &log(to));
    }
}

/// Copies the very file or database, as one who knows no better would.
fn copied_by_hand(engine: Engine, from: &str, folder: &Path) -> String {
    let to = fresh_database(engine, folder);
    match engine {
        Engine::Sqlite => with_its_log(from, &to, |from, to| {
            std::fs::copy(from, to).unwrap();
        }),
        Engine::Postgres => {
            let server = std::env::var("TEST_DATABASE_URL").unwrap();
            let name = |url: &str| url.rsplit('/').next().unwrap().to_owned();
            for sql in [
                format!("DROP DATABASE {}", name(&to)),
                format!("CREATE DATABASE {} TEMPLATE {}", name(&to), name(from)),
            ] {
                let done = Command::new("psql")
                    .args([&server, "-q", "-c", &sql])
                    .output()
                    .unwrap();
                assert!(
                    done.status.success(),
                    "{}",
                    String::from_utf8_lossy(&done.stderr)
                );
            }
        }
    }
    to
}

fn a_copy_that_went_its_own_way_is_noticed(engine: Engine) {
    let mut house = House::furnished(engine);
    let pig = |caller: &Caller, nth: u32| caller.half_pig(&format!("0608-{nth}"), 20_000);
    let cut = |caller: &Caller, lot: &str| {
        let step = json!({ "kind": "cut", "place": "bench", "inputs": [{ "lot": lot, "grams": 2_000 }],
            "outputs": [{ "product": "pork-chop", "grams": 1_900, "pack_count": 2 }] });
        caller.deed("/api/steps", step).expect(201).code(0)
    };
    let lot = pig(&house.caller(), 17);
    cut(&house.caller(), &lot);
    house.end();
    let keep = tempfile::tempdir().unwrap();
    let twin = copied_by_hand(engine, &house.database, keep.path());
    if engine == Engine::Sqlite {
        // Beside its original it is not opened at all.
        let says = refused(&["serve", "--database", &twin, "--listen", "127.0.0.1:0"]);
        assert!(
            says.contains("is a copy of") && says.contains("--moved"),
            "{says}"
        );
    }
    // The original goes on, and gives out codes.
    house.restart();
    let caller = house.caller();
    let given: Vec<String> = [cut(&caller, &lot), pig(&caller, 18), pig(&caller, 19)].into();
    assert_eq!(told(&caller)["lease"]["why"], "made");
    // The copy is opened on purpose: it says so, and no code of the original's is given out again.
    let other = House::at(engine, &twin, &["--moved"]);
    let theirs = other.caller();
    assert_eq!(told(&theirs)["lease"]["why"], "moved");
    says_today(&theirs, &["today-moved"]);
    assert_eq!(told(&theirs)["record"], told(&caller)["record"]);
    for code in [cut(&theirs, &lot), pig(&theirs, 20), pig(&theirs, 21)] {
        assert!(
            !given.contains(&code),
            "{code} is on a label already: {given:?}"
        );
    }
    // It copies into the same folder as the original: a trial notices that they went different ways.
    let folder = keep.path().join("copies").to_str().unwrap().to_owned();
    gambrel(&["backup", "--database", &other.database, "--to", &folder]);
    let says = refused(&["drill", "--database", &house.database, "--copies", &folder]);
    assert!(says.contains("different ways"), "{says}");
    says_today(&caller, &["today-copy-no-good"]);
    assert_eq!(told(&caller)["copies"][0]["trouble"], "apart");
}
