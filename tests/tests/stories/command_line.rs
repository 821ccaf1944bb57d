//! The command line, as somebody meets it who has never seen the program.

use serde_json::json;
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Child, Command, Output, Stdio};
use std::sync::mpsc::{Receiver, channel};
use std::time::Duration;
use stories::house::binary;
use stories::{Engine, House};

fn gambrel(args: &[&str]) -> Output {
    let mut command = Command::new(binary());
    for name in [
        "GAMBREL_DATABASE",
        "GAMBREL_CONFIG",
        "GAMBREL_LISTEN",
        "GAMBREL_CREATE",
        "GAMBREL_DEMO",
    ] {
        command.env_remove(name);
    }
    command.args(args).output().expect("the binary runs")
}

#[track_caller]
fn refused(args: &[&str], says: &str) {
    let out = gambrel(args);
    let told = String::from_utf8_lossy(&out.stderr).into_owned();
    assert!(!out.status.success(), "{args:?}");
    assert!(told.contains(says), "{args:?}: {told}");
    assert!(out.stdout.is_empty(), "answers only on standard output");
}

#[test]
fn a_wrong_address_is_a_clear_error_and_never_a_new_file() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("typo.db");
    let path = path.to_str().unwrap();
    refused(
        &["serve", "--listen", "127.0.0.1:0", "--database", path],
        "there is no database at",
    );
    refused(&["check", "--database", path], "there is no database at");
    refused(
        &[
            "serve",
            "--database",
            "postgress://nobody/x",
            "--listen",
            "127.0.0.1:0",
        ],
        "is not a database this program knows",
    );
    refused(
        &[
            "serve",
            "--listen",
            "127.0.0.1:0",
            "--database",
            "postgres://127.0.0.1:1/x",
        ],
        "PostgreSQL does not answer",
    );
    refused(
        &[
            "serve",
            "--listen",
            "127.0.0.1:0",
            "--database",
            folder.path().to_str().unwrap(),
        ],
        "is a folder",
    );
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 0);
}

#[test]
fn what_is_not_ours_is_left_untouched() {
    let folder = tempfile::tempdir().unwrap();
    let text = folder.path().join("letter.txt");
    std::fs::write(
        &text,
        "Dear farmer, this is a letter and not a database at all, as anybody can see.",
    )
    .unwrap();
    refused(
        &[
            "serve",
            "--listen",
            "127.0.0.1:0",
            "--create",
            "--database",
            text.to_str().unwrap(),
        ],
        "is not a database",
    );
    assert!(
        std::fs::read_to_string(&text)
            .unwrap()
            .starts_with("Dear farmer")
    );
}

#[test]
fn a_newer_record_is_refused_untouched() {
    use diesel::connection::SimpleConnection;
    use diesel::{Connection, SqliteConnection};
    let mut house = House::furnished(Engine::Sqlite);
    house.kill();
    let sql = "INSERT INTO __diesel_schema_migrations (version) VALUES ('99990101000000')";
    let mut conn = SqliteConnection::establish(&house.database).unwrap();
    conn.batch_execute(sql).unwrap();
    conn.batch_execute("PRAGMA wal_checkpoint(TRUNCATE)")
        .unwrap();
    drop(conn);
    let before = std::fs::read(&house.database).unwrap();
    refused(
        &[
            "serve",
            "--listen",
            "127.0.0.1:0",
            "--database",
            &house.database,
        ],
        "newer version",
    );
    refused(&["check", "--database", &house.database], "newer version");
    assert_eq!(std::fs::read(&house.database).unwrap(), before);
    let mut conn = SqliteConnection::establish(&house.database).unwrap();
    conn.batch_execute("DELETE FROM __diesel_schema_migrations WHERE version = '99990101000000'")
        .unwrap();
}

#[test]
fn nobody_else_may_reach_it_without_tls_or_a_named_proxy() {
    refused(
        &["serve", "--demo", "--listen", "0.0.0.0:0"],
        "could be reached from other machines",
    );
    refused(
        &["serve", "--demo", "--listen", "here"],
        "is not an address",
    );
}

#[test]
fn check_finds_what_was_spoilt() {
    use diesel::connection::SimpleConnection;
    use diesel::{Connection, SqliteConnection};
    let mut house = House::furnished(Engine::Sqlite);
    let caller = house.caller();
    let pig = caller.half_pig("1", 10_000);
    let step = json!({ "kind": "cut", "place": "bench", "inputs": [{ "lot": pig, "grams": 4_000 }],
        "outputs": [{ "product": "pork-chop", "grams": 3_900, "pack_count": 3 }] });
    caller.deed("/api/steps", step).expect(201);
    let sound = house.check();
    house.kill();
    let spoilt = [
        (
            "UPDATE lots SET made_mg = made_mg + 1 WHERE deed_id IN (SELECT id FROM steps)",
            "is not out",
        ),
        (
            "UPDATE packs SET left_mg = left_mg - 1 WHERE number = 3",
            "its events make",
        ),
        (
            "UPDATE lots SET sold_mg = 5, on_hand_mg = on_hand_mg - 5 WHERE pack_count = 3",
            "its events sum to",
        ),
        (
            "UPDATE lots SET code = 'BRC26159A007' WHERE pack_count = 3",
            "not well formed",
        ),
        (
            "UPDATE lots SET origin = 'mixed', animal_id = NULL WHERE pack_count = 3",
            "its parts of",
        ),
        ("DELETE FROM sources", "has no source"),
        ("UPDATE series SET next = 0", "past its highest number"),
        (
            "UPDATE pack_events SET lot_id = (SELECT MAX(id) FROM lots), pack_id = (SELECT MAX(id) FROM packs)",
            "came of itself",
        ),
        (
            "UPDATE lots SET allergens = 'milk' WHERE deed_id NOT IN (SELECT id FROM steps)",
            "lacks an allergen of what went into it",
        ),
        (
            "UPDATE lots SET allergens = '; milk' WHERE deed_id NOT IN (SELECT id FROM steps)",
            "lacks an allergen that what went into it may contain",
        ),
        ("DELETE FROM answers", "was never answered"),
        ("UPDATE lots SET stopped = TRUE", "is marked as stopped"),
    ];
    let whole = std::fs::read(&house.database).unwrap();
    let wal = std::fs::read(format!("{}-wal", house.database)).unwrap_or_default();
    for (sql, says) in spoilt {
        let copy = house.folder().join("copy.db");
        let copy = copy.to_str().unwrap();
        std::fs::write(copy, &whole).unwrap();
        std::fs::write(format!("{copy}-wal"), &wal).unwrap();
        let _ = std::fs::remove_file(format!("{copy}-shm"));
        let mut conn = SqliteConnection::establish(copy).unwrap();
        conn.batch_execute(&format!("PRAGMA foreign_keys = OFF; {sql}"))
            .unwrap();
        drop(conn);
        let out = gambrel(&["check", "--database", copy]);
        let told = String::from_utf8_lossy(&out.stdout).into_owned();
        assert!(!out.status.success(), "{sql}");
        assert!(told.contains(says), "{sql}: {told}");
        assert!(!told.contains(&sound), "the digest tells too");
    }
}

/// The clock is set for one process only, by Debian's libfaketime.
#[test]
fn a_clock_that_is_behind_takes_no_deed_and_answers_reads() {
    let mut house = House::furnished(Engine::Sqlite);
    house.kill();
    house.restart_at("+2d");
    let pig = house.caller().half_pig("1", 10_000);
    let before = house.check();
    for (clock, says) in [
        ("+0d", "before what was recorded last"),
        ("@2020-01-01 00:00:00", "before this program was built"),
    ] {
        house.kill();
        house.restart_at(clock);
        let caller = house.caller();
        // Felt a moment after the start, without asking anybody.
        stories::queue::until(|| caller.get("/api/health").status == 503);
        let health = caller.get("/api/health").expect(503).body;
        assert_eq!(health["status"], "clock");
        assert!(health["why"].as_str().unwrap().contains(says), "{health}");
        caller.get(&format!("/api/lots/{pig}")).expect(200);
        let serve = json!({ "kind": "serve", "lot": pig, "grams": 5 });
        let refused = caller.deed("/api/departures", serve).expect(503);
        assert_eq!(refused.body["type"], "/problems/clock");
    }
    assert_eq!(house.check(), before);
    house.kill();
    house.restart_at("+3d");
    house
        .caller()
        .deed(
            "/api/departures",
            json!({ "kind": "serve", "lot": pig, "grams": 5 }),
        )
        .expect(201);
}

/// Facts for a label, in a file of that folder.
fn facts(folder: &Path, name: &str) -> String {
    let texts = json!({ "name": name, "use-by-heading": "USE BY", "use-by-short": "FRI 26 JUN", "lot": "BRC-26159-A00-6" });
    let whole = json!({ "texts": texts, "qr": "HTTPS://TRACE.TEST.EXAMPLE/L/BRC26159A006/1", "linear": "BRC26159A006" });
    let path = folder.join("facts.json");
    std::fs::write(&path, whole.to_string()).unwrap();
    path.to_str().unwrap().to_owned()
}

#[test]
fn a_label_without_a_server() {
    let folder = tempfile::tempdir().unwrap();
    let path = |name: &str| folder.path().join(name).to_str().unwrap().to_owned();
    let facts_file = facts(folder.path(), "Pâté de campagne");
    let begins: [(&str, &[u8]); 4] = [
        ("label.pdf", b"%PDF"),
        ("label.png", b"\x89PNG"),
        ("label.svg", b"<svg"),
        ("label.pwg", b"RaS2PwgRaster"),
    ];
    let outs = begins.map(|(name, _)| path(name));
    let mut args = vec!["label", &facts_file, "--template", "tub"];
    args.extend(outs.iter().flat_map(|out| ["--out", out]));
    let done = gambrel(&args);
    let told = String::from_utf8_lossy(&done.stderr).into_owned();
    assert!(done.status.success(), "{told}");
    for (name, begin) in begins {
        let bytes = std::fs::read(path(name)).unwrap();
        assert!(bytes.starts_with(begin), "{name}");
        std::fs::remove_file(path(name)).unwrap();
    }
    facts(folder.path(), &"Very ".repeat(90));
    refused(&args, "does not fit");
    assert!(!outs.iter().any(|out| Path::new(out).exists()));
    let asked = |template, out| ["label", &facts_file, "--template", template, "--out", out];
    refused(&asked("poster", "x.pdf"), "there is no label");
    refused(&asked("tub", "x.doc"), "has no ending");
    refused(&asked("none.json", "x.pdf"), "none.json cannot be read");
}

#[test]
fn the_shipped_labels_are_listed() {
    let done = gambrel(&["label", "--list"]);
    let told = String::from_utf8(done.stdout).unwrap();
    assert!(done.status.success());
    let templates = concat!(env!("CARGO_MANIFEST_DIR"), "/../label-templates");
    let files = std::fs::read_dir(templates).unwrap();
    let template = |name: &str| name.ends_with(".json") && !name.ends_with(".schema.json");
    let files = files.map(|file| file.unwrap().file_name().into_string().unwrap());
    let files = files.filter(|name| template(name));
    assert_eq!(told.lines().count(), files.count(), "{told}");
    assert!(told.lines().any(|line| line.starts_with("tub ")), "{told}");
}

/// A label that is made anew after each save, until the test is over.
struct Watch {
    child: Child,
    lines: Receiver<String>,
}

impl Watch {
    fn start(args: &[&str]) -> Watch {
        let mut command = Command::new(binary());
        let mut child = command.args(args).stdout(Stdio::piped()).spawn().unwrap();
        let out = BufReader::new(child.stdout.take().unwrap());
        let (tell, lines) = channel();
        std::thread::spawn(move || out.lines().try_for_each(|line| tell.send(line.unwrap())));
        Watch { child, lines }
    }

    /// The next line without the time of day before it.
    fn line(&self) -> String {
        let line = self.lines.recv_timeout(Duration::from_secs(30));
        let line = line.expect("a line after each save");
        let (time, says) = line.split_once(' ').unwrap();
        assert!(time.len() == 8 && time.split(':').count() == 3, "{line}");
        says.to_owned()
    }
}

impl Drop for Watch {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

#[test]
fn a_label_that_follows_its_files() {
    let folder = tempfile::tempdir().unwrap();
    let path = |name: &str| folder.path().join(name).to_str().unwrap().to_owned();
    let (template, pdf, png) = (path("mine.json"), path("mine.pdf"), path("mine.png"));
    let good = include_str!("../../../label-templates/tub.json");
    std::fs::write(&template, good).unwrap();
    let facts_file = facts(folder.path(), "Pork stock");
    let args = ["label", &facts_file, "--template", &template, "--watch"];
    let watch = Watch::start(&[&args[..], &["--out", &pdf, "--out", &png]].concat());
    let ok = watch.line();
    assert!(
        ok.starts_with(&format!("{template}: ok, {pdf} ")) && ok.contains(&png),
        "{ok}"
    );
    let first = std::fs::read(&png).unwrap();
    std::fs::write(
        &template,
        good.replacen("\"width_mm\"", "\"breadth_mm\"", 1),
    )
    .unwrap();
    let says = watch.line();
    assert!(
        says.contains("mine.json") && says.contains("line 4"),
        "{says}"
    );
    assert_eq!(
        std::fs::read(&png).unwrap(),
        first,
        "a fault touches no file"
    );
    std::fs::remove_file(&template).unwrap();
    let says = watch.line();
    assert!(says.contains("cannot be read"), "{says}");
    std::fs::write(&template, good).unwrap();
    assert_eq!(watch.line(), ok);
    facts(folder.path(), "Beef stock");
    assert!(watch.line().starts_with(&format!("{template}: ok")));
    assert_ne!(std::fs::read(&png).unwrap(), first);
}

#[test]
fn both_engines_keep_the_same_record() {
    let told = |engine| {
        let house = House::demo(engine);
        let page = house.caller().read("/api/lots?limit=200");
        let lots: Vec<String> = page["lots"]
            .as_array()
            .unwrap()
            .iter()
            .map(|lot| lot.to_string())
            .collect();
        lots
    };
    assert_eq!(told(Engine::Sqlite), told(Engine::Postgres));
}
