//! Records that earlier versions wrote, kept in `tests/fixtures/records`, and what was asked of them then.
//!
//! `examples/keep_record.rs` makes one; the story `old_records` opens them all.

use crate::labels::{run, save, words};
use crate::queue::numbers;
use crate::{Caller, Engine, House};
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// When a record is asked: five minutes after the demo's clock starts, 10:45 in its kitchen.
pub const ASKED_AT: &str = "@2026-06-26 14:45:00";

/// The demo's lots that are asked about: a half pig, a belly, bacon, pulled pork, ribs, duck, rillettes, a ham, a terrine.
pub const LOTS: [&str; 9] = [
    "S10", "B10-03", "L13", "L20", "L22", "L28", "L31", "H-04", "L27",
];

/// What is asked of the kitchen.
const OF_THE_KITCHEN: [&str; 6] = [
    "/api/kitchen",
    "/api/products",
    "/api/lots?limit=50",
    "/api/animals",
    "/api/cure-room",
    "/api/prints",
];

/// Deeds that were added to the demo's: a sale and its void, a count, a correction.
pub const DEEDS: [&str; 4] = [
    "11111111-1111-4111-8111-111111111111",
    "22222222-2222-4222-8222-222222222222",
    "33333333-3333-4333-8333-333333333333",
    "44444444-4444-4444-8444-444444444444",
];

/// Each lot's questions.
const OF_A_LOT: [&str; 6] = ["", "/why", "/origins", "/descendants", "/yield", "/cost"];

/// A record on file.
pub struct OldRecord {
    folder: PathBuf,
    engine: Engine,
}

impl std::fmt::Display for OldRecord {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} ({})", self.folder.display(), self.word())
    }
}

/// All records on file that one engine wrote.
///
/// # Panics
/// There are none.
pub fn all(engine: Engine) -> Vec<OldRecord> {
    let records = folder();
    let mut days: Vec<PathBuf> = std::fs::read_dir(&records)
        .unwrap_or_else(|error| panic!("{}: {error}", records.display()))
        .map(|entry| entry.expect("a folder can be read").path())
        .filter(|path| path.is_dir())
        .collect();
    days.sort();
    assert!(!days.is_empty(), "no record in {}", records.display());
    days.into_iter()
        .map(|folder| OldRecord { folder, engine })
        .collect()
}

/// Where the records are.
pub fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("fixtures/records")
}

impl OldRecord {
    /// The record of that day, for one who makes it.
    pub fn of(day: &str, engine: Engine) -> OldRecord {
        OldRecord {
            folder: folder().join(day),
            engine,
        }
    }

    fn word(&self) -> &'static str {
        match self.engine {
            Engine::Sqlite => "sqlite",
            Engine::Postgres => "postgres",
        }
    }

    /// A copy of it, served as on the morning when it was asked.
    pub fn open(&self) -> House {
        let copy = |folder: &Path, database: &str| match self.engine {
            Engine::Sqlite => {
                let file = self.unpacked("sqlite.db.gz");
                std::fs::write(database, file).expect("a copy can be written");
            }
            Engine::Postgres => {
                let file = save(folder, "restored.sql", &self.unpacked("postgres.sql.gz"));
                let file = file.to_str().expect("a plain path");
                run(
                    "psql",
                    &[
                        database,
                        "-q",
                        "-v",
                        "ON_ERROR_STOP=1",
                        "-o",
                        "/dev/null",
                        "-f",
                        file,
                    ],
                );
            }
        };
        House::over(self.engine, copy, ASKED_AT)
    }

    fn unpacked(&self, name: &str) -> Vec<u8> {
        let file = self.folder.join(name);
        let out = Command::new("gzip").arg("-dc").arg(&file).output();
        let out = out.expect("gzip is there");
        assert!(out.status.success(), "{}", file.display());
        out.stdout
    }

    /// Keeps the record of a house that has ended.
    ///
    /// # Panics
    /// It cannot be written.
    pub fn keep(&self, database: &str) {
        std::fs::create_dir_all(&self.folder).expect("a folder can be made");
        match self.engine {
            Engine::Sqlite => {
                // One file and no journal beside it.
                let journal = std::fs::metadata(format!("{database}-wal"));
                assert!(
                    journal.map_or(true, |file| file.len() == 0),
                    "the service has not ended well"
                );
                self.packed(
                    "sqlite.db.gz",
                    &std::fs::read(database).expect("it is there"),
                );
            }
            Engine::Postgres => {
                let sql = run("pg_dump", &["--no-owner", "--no-privileges", database]);
                // Only the newest psql knows this word of the newest pg_dump.
                let plain = |line: &&str| {
                    !line.starts_with("\\restrict") && !line.starts_with("\\unrestrict")
                };
                let sql: Vec<&str> = sql.lines().filter(plain).collect();
                self.packed("postgres.sql.gz", (sql.join("\n") + "\n").as_bytes());
            }
        }
    }

    fn packed(&self, name: &str, bytes: &[u8]) {
        let file = std::fs::File::create(self.folder.join(name)).expect("a file can be made");
        let mut gzip = Command::new("gzip")
            .args(["-9n"])
            .stdin(Stdio::piped())
            .stdout(file)
            .spawn()
            .expect("gzip is there");
        let mut into = gzip.stdin.take().expect("piped");
        std::io::Write::write_all(&mut into, bytes).expect("gzip reads");
        drop(into);
        assert!(gzip.wait().expect("gzip ends").success());
    }

    /// What the version that wrote it answered, by question.
    ///
    /// # Panics
    /// It is not on file.
    pub fn answers(&self) -> BTreeMap<String, Value> {
        let file = self.folder.join(format!("{}.json", self.word()));
        let text =
            std::fs::read(&file).unwrap_or_else(|error| panic!("{}: {error}", file.display()));
        serde_json::from_slice(&text).expect("answers are JSON")
    }

    /// Keeps those answers: one question a line.
    ///
    /// # Panics
    /// They cannot be written.
    pub fn keep_answers(&self, answers: &BTreeMap<String, Value>) {
        let lines: Vec<String> = answers
            .iter()
            .map(|(question, answer)| format!("{}: {answer}", json!(question)))
            .collect();
        let text = format!("{{\n{}\n}}\n", lines.join(",\n"));
        let file = self.folder.join(format!("{}.json", self.word()));
        std::fs::write(file, text).expect("answers can be written");
    }
}

/// Asks a record all that is asked of old ones.
pub fn ask(caller: &Caller, folder: &Path) -> BTreeMap<String, Value> {
    let mut paths: Vec<String> = OF_THE_KITCHEN.map(str::to_owned).to_vec();
    paths.extend(DEEDS.map(|deed| format!("/api/steps/{deed}")));
    for name in LOTS {
        let code = caller.noted(name);
        paths.extend(OF_A_LOT.map(|question| format!("/api/lots/{code}{question}")));
        paths.push(format!("/api/scan?code={code}/1"));
        let lot = caller.get(&format!("/api/lots/{code}")).expect(200).body;
        let made = lot["made_by_step"].as_str().expect("a step made it");
        paths.push(format!("/api/steps/{made}"));
    }
    let animals = caller.get("/api/animals").expect(200).body;
    let animal = animals["animals"][0]["id"].as_str().expect("an animal");
    paths.push(format!("/api/animals/{animal}/descendants"));
    let mut answers = BTreeMap::new();
    for print in numbers(&caller.get("/api/prints").expect(200).body) {
        paths.push(format!("/api/prints/{print}"));
        // A print is drawn from what was kept with it. Its words must stay, not the way of a PDF.
        let path = format!("/api/prints/{print}/label.pdf");
        let pdf = save(folder, "print.pdf", &caller.get(&path).expect(200).bytes);
        answers.insert(path, json!(words(&pdf)));
    }
    for path in paths {
        // A refusal is an answer too: not every product has a yield to compare with.
        let mut answer = caller.get(&path);
        assert!(answer.status < 500, "{path}: {}", answer.body);
        // An animal that a lot was only once known to be of is listed since it says so; earlier ones left it out.
        if let Some(animals) = answer.body["animals"].as_array_mut() {
            animals.retain(|animal| animal["once"].is_null() || animal["lots"].is_array());
        }
        answers.insert(path, answer.body);
    }
    answers
}

/// What an answer lacks or says otherwise than the one before. Fields that are new are no difference.
pub fn differences(path: &str, before: &Value, now: &Value) -> Vec<String> {
    match (before, now) {
        (Value::Object(before), Value::Object(now)) => before
            .iter()
            .flat_map(|(field, before)| {
                let now = now.get(field).unwrap_or(&Value::Null);
                differences(&format!("{path} {field}"), before, now)
            })
            .collect(),
        (Value::Array(before), Value::Array(now)) if before.len() == now.len() => before
            .iter()
            .zip(now)
            .enumerate()
            .flat_map(|(nth, (before, now))| differences(&format!("{path}[{nth}]"), before, now))
            .collect(),
        _ if before == now => Vec::new(),
        (Value::String(before), Value::String(now)) if as_told_now(before) == plain(now) => {
            Vec::new()
        }
        _ => vec![format!("{path}\n  was {before}\n  is  {now}")],
    }
}

/// No-break spaces as plain ones.
fn plain(text: &str) -> String {
    text.replace('\u{a0}', " ")
}

/// A sentence of the time when days were told as `2026-06-22` and weights as `7 460 g`, as it is told
/// now: `Mon, Jun 22`, `7.46 kg`. Only sentences: what is nothing but a date is a date still.
fn as_told_now(sentence: &str) -> String {
    let words: Vec<&str> = sentence.split(' ').collect();
    let mut told: Vec<String> = Vec::with_capacity(words.len());
    if words.len() == 1 {
        return sentence.to_owned();
    }
    for word in words {
        let bare = word.trim_end_matches([',', '.', ')', ':']);
        let end = &word[bare.len()..];
        if let Ok(day) = bare.parse::<chrono::NaiveDate>() {
            let year = if day.format("%Y").to_string() == "2026" {
                ""
            } else {
                ", %Y"
            };
            told.push(day.format(&format!("%a, %b %-d{year}")).to_string() + end);
            continue;
        }
        told.push(word.to_owned());
        // `7 460 g`: thousands apart, in whole grams.
        if let [.., thousands, grams, unit] = told.as_mut_slice()
            && unit.starts_with('g')
            && unit.trim_end_matches([',', '.', ')', ':']) == "g"
            && grams.len() == 3
            && let (Ok(kilos), Ok(rest)) = (thousands.parse::<u32>(), grams.parse::<u32>())
        {
            let text = format!("{kilos}.{rest:03}");
            let text = text.trim_end_matches('0').trim_end_matches('.').to_owned();
            let unit = format!("k{unit}");
            told.truncate(told.len() - 3);
            told.extend([text, unit]);
        }
    }
    told.join(" ")
}
