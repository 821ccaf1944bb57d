//! Copies of the record and its archive: made while it is worked in, proven, and a record again.

use serde_json::{Value, json};
use std::path::{Path, PathBuf};
use std::process::Command;
use stories::call::fresh_id;
use stories::house::fresh_database;
use stories::old_records::{ASKED_AT, ask};
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_copy_is_made_while_deeds_go_on_and_becomes_a_record_again
    no_code_is_given_out_twice_after_a_restore
    an_archive_is_the_same_record_on_the_other_engine_and_back
}

/// The command succeeds; what it prints.
#[track_caller]
pub fn gambrel(args: &[&str]) -> String {
    let out = Command::new(stories::house::binary()).args(args).output();
    let out = out.expect("the binary runs");
    let error = String::from_utf8_lossy(&out.stderr);
    assert!(out.status.success(), "{args:?}: {error}");
    String::from_utf8(out.stdout).expect("plain text")
}

/// The command is refused; why.
#[track_caller]
pub fn refused(args: &[&str]) -> String {
    let out = Command::new(stories::house::binary()).args(args).output();
    let out = out.expect("the binary runs");
    assert!(
        !out.status.success(),
        "{args:?}: {}",
        String::from_utf8_lossy(&out.stdout)
    );
    String::from_utf8(out.stderr).expect("plain text")
}

fn digest(told: &str) -> String {
    let line = told.lines().find_map(|line| line.strip_prefix("digest "));
    line.expect("a digest is printed").to_owned()
}

pub fn copies(folder: &Path) -> Vec<PathBuf> {
    let mut found: Vec<PathBuf> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        // A seal is of its copy.
        .filter(|path| path.extension().is_none_or(|ending| ending != "sha256"))
        .collect();
    found.sort();
    found
}

pub fn clean(caller: &Caller, times: usize) {
    for _ in 0..times {
        let cleaned = json!({ "place": "bench" });
        caller.deed("/api/clean-downs", cleaned).expect(201);
    }
}

fn a_copy_is_made_while_deeds_go_on_and_becomes_a_record_again(engine: Engine) {
    let house = House::demo(engine);
    let (caller, keep) = (house.caller(), tempfile::tempdir().unwrap());
    let folder = house.folder().join("copies");
    let to = folder.to_str().unwrap();
    let told = std::thread::scope(|scope| {
        let cleaning = scope.spawn(|| clean(&house.caller(), 30));
        let told = gambrel(&["backup", "--database", &house.database, "--to", to]);
        cleaning.join().unwrap();
        told
    });
    let made = copies(&folder);
    assert_eq!(made.len(), 1, "{made:?}: nothing unproven is left behind");
    let copy = made[0].to_str().unwrap();
    let anchor = told
        .lines()
        .find_map(|line| line.strip_prefix("anchor "))
        .unwrap();
    // The original went on, and still has the copy's anchor on its way.
    clean(&caller, 1);
    let checked = gambrel(&["check", "--database", &house.database, "--anchor", anchor]);
    assert!(checked.contains("nothing up to link"), "{checked}");
    // Where a record is, nothing is overwritten.
    let says = refused(&["restore", copy, "--database", &house.database]);
    assert!(says.contains("is there already"), "{says}");
    let target = fresh_database(engine, keep.path());
    let told = gambrel(&["restore", copy, "--database", &target]);
    assert!(told.contains("restored 4"), "{told}");
    let mut sums = Command::new("sha256sum");
    let sums = sums.args(["--check", "--quiet", &format!("{copy}.sha256")]);
    assert!(sums.current_dir(&folder).status().unwrap().success());
    let checked = gambrel(&["check", "--database", &target, "--anchor", anchor]);
    assert!(checked.contains("nothing up to link"), "{checked}");
    // A copy that was altered is no copy.
    use diesel::connection::SimpleConnection;
    use diesel::{Connection, SqliteConnection};
    let mut conn = SqliteConnection::establish(copy).unwrap();
    conn.batch_execute("UPDATE deeds SET person = 'Nobody' WHERE id = (SELECT MIN(id) FROM deeds)")
        .unwrap();
    drop(conn);
    let again = tempfile::tempdir().unwrap();
    let other = fresh_database(engine, again.path());
    let says = refused(&["restore", copy, "--database", &other]);
    assert!(
        says.contains("was changed or cut short since it was proven"),
        "{says}"
    );
    // Without its seal it is proven whole.
    std::fs::remove_file(format!("{copy}.sha256")).unwrap();
    let says = refused(&["restore", copy, "--database", &other]);
    assert!(says.contains("the copy is not sound"), "{says}");
}

/// What is received and made after the copy has codes that the restored record never gives out.
fn no_code_is_given_out_twice_after_a_restore(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let make = |caller: &Caller, carcass: &str, lot: &str| -> Vec<String> {
        let pig = caller.half_pig(carcass, 20_000);
        let cut = |lot: &str| {
            let step = json!({ "kind": "cut", "place": "bench", "inputs": [{ "lot": lot, "grams": 2_000 }],
                "outputs": [{ "product": "pork-chop", "grams": 1_900, "pack_count": 2 }] });
            caller.deed("/api/steps", step).expect(201).code(0)
        };
        vec![cut(&pig), cut(if lot.is_empty() { &pig } else { lot }), pig]
    };
    let first = make(&caller, "0608-17", "");
    let old = first[2].clone();
    let folder = house.folder().join("copies");
    gambrel(&[
        "backup",
        "--database",
        &house.database,
        "--to",
        folder.to_str().unwrap(),
    ]);
    let copy = copies(&folder)[0].clone();
    // Printed since the copy, and lost with the machine.
    let mut since: Vec<String> = make(&caller, "0608-18", &old);
    since.extend(make(&caller, "0608-19", &old));
    let restore = |_: &Path, database: &str| {
        gambrel(&["restore", copy.to_str().unwrap(), "--database", database]);
    };
    let restored = House::over(engine, restore, "+0d");
    let caller = restored.caller();
    let again: Vec<String> = (0..3)
        .flat_map(|nth| make(&caller, &format!("0608-2{nth}"), &old))
        .collect();
    for code in &again {
        assert!(
            !since.contains(code),
            "{code} was printed before: {since:?}"
        );
        assert!(!first.contains(code), "{code} is another lot's");
    }
}

/// Papers with a deed of the demo, one of a megabyte and one of a PDF, and labels that left as a document; the PDF's id.
fn with_papers(caller: &Caller, pdf: &[u8]) -> String {
    let lot = caller.noted("L13");
    let of = caller.lot(&lot)["made_by_step"]
        .as_str()
        .unwrap()
        .to_owned();
    let put = |kind: &str, form: &str, holds: &[u8]| {
        let id = fresh_id();
        let path = format!("/api/papers?id={id}&of={of}&kind={kind}&by=Oda%20Marsh");
        caller.post_bytes(&path, form, holds).expect(201);
        id
    };
    put(
        "print-out",
        "text/plain",
        "10:00;3,4\n".repeat(100_000).as_bytes(),
    );
    let step = json!({ "step": of, "by": "Oda Marsh" });
    caller.deed("/api/label-documents", step).expect(201);
    put("delivery-note", "application/pdf", pdf)
}

/// What the folder holds for somebody without the program.
fn for_a_reader(archive: &Path, paper: &str, pdf: &[u8]) {
    let read = |name: &str| std::fs::read_to_string(archive.join(name)).unwrap();
    assert_eq!(
        std::fs::read(archive.join(format!("papers/{paper}.pdf"))).unwrap(),
        pdf
    );
    let lots = read("sheets/lots.csv");
    let head = lots.lines().next().unwrap();
    assert!(head.contains("\"Lot\",\"Product\",\"Made\""), "{head}");
    let rows = |name: &str| read(&format!("tables/{name}.jsonl")).lines().count();
    for (sheet, table) in [
        ("lots", "lots"),
        ("packs", "packs"),
        ("animals", "animals"),
        ("deeds", "deeds"),
        ("incidents", "incidents"),
        ("papers", "papers"),
    ] {
        let lines = read(&format!("sheets/{sheet}.csv")).lines().count();
        assert_eq!(lines, rows(table) + 1, "{sheet}");
    }
    assert!(
        lots.contains("BRC26159A006") && lots.contains("Pork"),
        "in words"
    );
    assert!(read("sheets/papers.csv").contains(&format!("papers/{paper}.pdf")));
    let labels = std::fs::read_dir(archive.join("labels")).unwrap();
    let labels: Vec<_> = labels
        .map(|file| std::fs::read(file.unwrap().path()).unwrap())
        .collect();
    assert!(!labels.is_empty() && labels.iter().all(|pdf| pdf.starts_with(b"%PDF-")));
    let says = read("README.md");
    for folder in ["sheets/", "papers/", "labels/", "tables/"] {
        assert!(says.contains(folder), "{folder}");
    }
}

/// The demo's record: to the other engine and back, the same to the last letter, and whatever is asked is answered alike.
fn an_archive_is_the_same_record_on_the_other_engine_and_back(engine: Engine) {
    let mut house = House::demo(engine);
    let pdf = b"%PDF-1.4\n%%EOF\n";
    let paper = with_papers(&house.caller(), pdf);
    let (folder, keep) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    house.kill();
    let before = digest(&gambrel(&["check", "--database", &house.database]));
    let other = match engine {
        Engine::Sqlite => Engine::Postgres,
        Engine::Postgres => Engine::Sqlite,
    };
    let archive = |name: &str| folder.path().join(name).to_str().unwrap().to_owned();
    let there = fresh_database(other, keep.path());
    let third = tempfile::tempdir().unwrap();
    let back = fresh_database(engine, third.path());
    let (first, second) = (archive("first"), archive("second"));
    gambrel(&["export", "--database", &house.database, "--to", &first]);
    let told = gambrel(&["import", &first, "--database", &there]);
    assert_eq!(digest(&told), before);
    assert!(
        told.contains("not read, because they follow from the rest: sheets, labels"),
        "{told}"
    );
    for_a_reader(Path::new(&first), &paper, pdf);
    gambrel(&["export", "--database", &there, "--to", &second]);
    assert_eq!(
        digest(&gambrel(&["import", &second, "--database", &back])),
        before
    );
    for file in copies(&Path::new(&first).join("tables")) {
        let twin = Path::new(&second)
            .join("tables")
            .join(file.file_name().unwrap());
        let (one, two) = (
            std::fs::read_to_string(&file).unwrap(),
            std::fs::read_to_string(twin).unwrap(),
        );
        let is_of_keys = file.ends_with("counters.jsonl");
        assert!(one == two || is_of_keys, "{}", file.display());
        assert!(
            !one.contains("\"pin\":\"") && !one.contains("\"word\":\""),
            "{}",
            file.display()
        );
    }
    // Nothing is put into a record that is there, and a line that was changed is found.
    let says = refused(&["import", &first, "--database", &there]);
    assert!(says.contains("a record is there already"), "{says}");
    let lots = Path::new(&first).join("tables/lots.jsonl");
    let changed = std::fs::read_to_string(&lots).unwrap().replacen(
        "\"species\":\"pig\"",
        "\"species\":\"cow\"",
        1,
    );
    std::fs::write(&lots, changed).unwrap();
    let again = tempfile::tempdir().unwrap();
    let fresh = fresh_database(Engine::Sqlite, again.path());
    let says = refused(&["import", &first, "--database", &fresh]);
    assert!(
        says.contains("lots.jsonl is not the file that was exported"),
        "{says}"
    );
    assert!(!Path::new(&fresh).exists());
    let note = Path::new(&second).join(format!("papers/{paper}.pdf"));
    std::fs::write(&note, b"%PDF-1.4\nanother\n%%EOF\n").unwrap();
    let says = refused(&["import", &second, "--database", &fresh]);
    assert!(says.contains("is not the file that was exported"), "{says}");
    std::fs::write(&note, pdf).unwrap();
    let answers = |engine: Engine, archive: &str| {
        let import = |_: &Path, database: &str| {
            gambrel(&["import", archive, "--database", database]);
        };
        let house = House::over(engine, import, ASKED_AT);
        let held = house
            .caller()
            .get(&format!("/api/papers/{paper}"))
            .expect(200);
        assert_eq!(held.bytes, pdf);
        let answers = ask(&house.caller(), house.folder());
        answers.into_iter().collect::<Vec<(String, Value)>>()
    };
    let (here, other) = (answers(engine, &second), answers(other, &second));
    assert!(here.len() > 80);
    for (one, two) in here.iter().zip(&other) {
        assert_eq!(one, two);
    }
}
