//! What somebody changes in a record past the program is found, and named.

mod changes;

use changes::{ASTRAY, CHANGES, Change, OF_SQLITE};
use serde_json::{Value, json};
use std::path::Path;
use std::process::{Command, Output};
use stories::call::fresh_id;
use stories::queue::until;
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    each_change_is_found_and_named
    a_chain_made_anew_is_no_match_for_an_anchor
}

/// The demo's record with whatever it lacks: a void, a correction, a recall, a check of a probe.
fn record(engine: Engine) -> (House, String) {
    let mut house = House::demo(engine);
    let caller = house.caller();
    let (bacon, pig) = (caller.noted("L13"), caller.noted("S10"));
    let packs = caller.lot(&bacon)["packs"].clone();
    let mut left = packs.as_array().unwrap().iter();
    let pack = left.find(|pack| pack["is"] == "on-hand").unwrap()["pack"].clone();
    let sold = json!({ "kind": "sell", "lot": bacon, "pack": pack });
    let sold = caller.deed("/api/departures", sold).expect(201).body["id"].clone();
    let void = format!("/api/steps/{}/void", sold.as_str().unwrap());
    caller
        .deed(&void, json!({ "why": "rung up twice" }))
        .expect(201);
    let corrected = json!({ "step": caller.lot(&pig)["made_by_step"], "animal": { "carcass": "0608-18" },
        "why": "the tag was misread" });
    caller.deed("/api/corrections", corrected).expect(201);
    recall(&caller);
    let of = caller.lot(&pig)["made_by_step"]
        .as_str()
        .unwrap()
        .to_owned();
    let path = format!("/api/papers?id={}&of={of}&kind=certificate", fresh_id());
    let note = b"%PDF-1.4\n%%EOF\n";
    caller
        .post_bytes(&path, "application/pdf", note)
        .expect(201);
    let probe = json!({ "code": "red", "name": "The red one" });
    caller.post("/api/probes", &probe).expect(201);
    let check = json!({ "probe": "red", "bath": "ice", "celsius": 0.5 });
    caller.deed("/api/probe-checks", check).expect(201);
    house.kill();
    let out = gambrel(&["anchor", "--database", &house.database]);
    assert!(out.status.success(), "{out:?}");
    (
        house,
        String::from_utf8(out.stdout).unwrap().trim().to_owned(),
    )
}

fn recall(caller: &Caller) {
    let lot = caller.noted("L16");
    let body = json!({ "told_by": "Harle Gate", "hazard": "residue", "hold": true, "why": "Called",
        "scope": { "start": [{ "lot": lot }], "spreads": "lineage" } });
    let begun = caller.deed("/api/incidents", body).expect(201).body;
    let id = begun["id"].as_str().unwrap();
    let note = json!({ "kind": "note", "text": "the shop was called" });
    let path = format!("/api/incidents/{id}/notes");
    caller.deed(&path, note).expect(201);
    let released = json!({ "lots": [{ "lot": lot }], "why": "looked at", "incident": Value::String(id.to_owned()) });
    caller.deed("/api/hold-releases", released).expect(201);
}

fn gambrel(args: &[&str]) -> Output {
    let command = Command::new(stories::house::binary()).args(args).output();
    command.expect("the binary runs")
}

fn checked(database: &str, anchor: &str) -> (bool, String) {
    let out = gambrel(&["check", "--database", database, "--anchor", anchor]);
    let (told, error) = (
        String::from_utf8_lossy(&out.stdout),
        String::from_utf8_lossy(&out.stderr),
    );
    (out.status.success(), format!("{told}{error}"))
}

/// Copies of a record, each with another change.
struct Copies<'a> {
    house: &'a House,
    engine: Engine,
    made: usize,
}

impl Copies<'_> {
    /// A copy on which somebody ran some statements past the program.
    fn with(&mut self, sql: &str) -> String {
        self.made += 1;
        match self.engine {
            Engine::Sqlite => {
                let copy = self.house.folder().join("copy.db");
                changed_file(Path::new(&self.house.database), &copy, sql);
                copy.to_str().unwrap().to_owned()
            }
            Engine::Postgres => {
                let (front, name) = self.house.database.rsplit_once('/').unwrap();
                let copy = format!("{name}c{}", self.made);
                let make = format!("CREATE DATABASE {copy} TEMPLATE {name}");
                let copied = format!("{front}/{copy}");
                let server = std::env::var("TEST_DATABASE_URL").expect("a server is named");
                // Whoever had it open a moment ago may still be leaving.
                until(|| psql(&server, &make).is_ok());
                let sql = format!("SET session_replication_role = replica; {sql}");
                psql(&copied, &sql).unwrap_or_else(|error| panic!("{error}"));
                copied
            }
        }
    }
}

fn changed_file(from: &Path, copy: &Path, sql: &str) {
    use diesel::connection::SimpleConnection;
    use diesel::{Connection, SqliteConnection};
    for ending in ["", "-wal", "-shm"] {
        let beside = |path: &Path| format!("{}{ending}", path.display());
        let _ = std::fs::remove_file(beside(copy));
        if ending != "-shm" && Path::new(&beside(from)).exists() {
            std::fs::copy(beside(from), beside(copy)).unwrap();
        }
    }
    let mut conn = SqliteConnection::establish(copy.to_str().unwrap()).unwrap();
    let sql = format!("PRAGMA foreign_keys = OFF; {sql}");
    conn.batch_execute(&sql)
        .unwrap_or_else(|error| panic!("{sql}: {error}"));
}

fn psql(database: &str, sql: &str) -> Result<(), String> {
    let out = Command::new("psql")
        .args([database, "-q", "-v", "ON_ERROR_STOP=1", "-c", sql])
        .output()
        .expect("psql is missing: install postgresql-client");
    match out.status.success() {
        true => Ok(()),
        false => Err(format!("{sql}: {}", String::from_utf8_lossy(&out.stderr))),
    }
}

fn each_change_is_found_and_named(engine: Engine) {
    let (house, anchor) = record(engine);
    let (sound, told) = checked(&house.database, &anchor);
    assert!(sound && told.contains("nothing up to link"), "{told}");
    let mut copies = Copies {
        house: &house,
        engine,
        made: 0,
    };
    let changes: Vec<&Change> = match engine {
        Engine::Sqlite => CHANGES.iter().chain(OF_SQLITE).chain([&ASTRAY]).collect(),
        // The checker is the same: a part of them, so that each table and each kind is there.
        Engine::Postgres => CHANGES.iter().step_by(4).chain([&ASTRAY]).collect(),
    };
    let mut missed = Vec::new();
    for (sql, about, says) in &changes {
        let copy = copies.with(sql);
        let (sound, told) = checked(&copy, &anchor);
        let named = |line: &str| line.contains(about) && line.contains(says);
        if sound || !told.lines().any(named) {
            missed.push(format!("{sql}\n{told}"));
        }
    }
    assert!(
        missed.is_empty(),
        "{} of {}:\n{}",
        missed.len(),
        changes.len(),
        missed.join("\n")
    );
}

fn a_chain_made_anew_is_no_match_for_an_anchor(engine: Engine) {
    let (house, anchor) = record(engine);
    let mut copies = Copies {
        house: &house,
        engine,
        made: 100,
    };
    let forged = copies.with(
        "UPDATE deeds SET person = 'Nobody' WHERE id = (SELECT MAX(id) FROM deeds WHERE kind = 'sell');
         DELETE FROM chain; INSERT INTO chain_due (id) VALUES (1)",
    );
    let out = gambrel(&["check", "--database", &forged]);
    let told = String::from_utf8_lossy(&out.stdout).into_owned();
    assert!(
        out.status.success() && told.contains("sealed when the record got its chain"),
        "{told}"
    );
    let (sound, told) = checked(&forged, &anchor);
    assert!(
        !sound && told.contains("is another than that of the anchor"),
        "{told}"
    );
    // The end taken away, with its link: only the anchor tells.
    let shorter = copies.with(
        "DELETE FROM probe_checks; DELETE FROM answers WHERE id = (SELECT MAX(id) FROM deeds);
         DELETE FROM chain WHERE id = (SELECT MAX(id) FROM chain); DELETE FROM deeds WHERE id = (SELECT MAX(id) FROM deeds)",
    );
    let (sound, told) = checked(&shorter, &anchor);
    assert!(!sound && told.contains("the end was taken away"), "{told}");
    assert!(gambrel(&["check", "--database", &shorter]).status.success());
    let (sound, told) = checked(&shorter, "GAMBREL 12");
    assert!(!sound && told.contains("is no anchor"), "{told}");
}

/// A copy on a disk that takes no writes is proven where it lies, and nothing is put beside it.
#[test]
fn a_copy_that_cannot_be_written_is_checked() {
    let (house, anchor) = record(Engine::Sqlite);
    let folder = tempfile::tempdir().unwrap();
    let to = folder.path().to_str().unwrap();
    let out = gambrel(&["backup", "--database", &house.database, "--to", to]);
    assert!(out.status.success(), "{out:?}");
    // Its seal lies beside it.
    let mut files = std::fs::read_dir(folder.path())
        .unwrap()
        .map(|file| file.unwrap().path());
    let copy = files
        .find(|path| path.extension().is_some_and(|of| of == "db"))
        .unwrap();
    let before = std::fs::read(&copy).unwrap();
    let closed = |closed: bool| {
        for path in [copy.as_path(), folder.path()] {
            let mut rights = std::fs::metadata(path).unwrap().permissions();
            rights.set_readonly(closed);
            std::fs::set_permissions(path, rights).unwrap();
        }
    };
    closed(true);
    let (sound, told) = checked(copy.to_str().unwrap(), &anchor);
    closed(false);
    assert!(sound && told.contains("nothing up to link"), "{told}");
    assert_eq!(std::fs::read(&copy).unwrap(), before);
}
