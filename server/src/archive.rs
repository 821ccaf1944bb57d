//! `gambrel export` and `gambrel import`: the whole record as plain files, and the same record of them again.

use crate::check;
use crate::config::{ExportArgs, ImportArgs};
use crate::given::why;
use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::fs::{self, File};
use std::io::{BufRead, BufReader, BufWriter, Write};
use std::path::Path;
use store::carry::{self, Row, Table};
use store::{Conn, Store};

/// How the files are written; a later form has another name.
const FORM: &str = "gambrel archive 1";
/// What the files are, for somebody without the program.
const README: &str = include_str!("../assets/archive.md");

/// What stands in `record.json`.
#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Manifest {
    form: String,
    program: String,
    made_at: String,
    /// The digest of the record, as `gambrel check` prints it.
    digest: String,
    /// The end of its chain.
    anchor: Option<String>,
    /// Each table's file.
    tables: BTreeMap<String, FileOf>,
}

/// The file of a table.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct FileOf {
    rows: u64,
    sha256: String,
}

/// Writes the record into a folder; what to tell.
///
/// # Errors
/// In words: the record cannot be read or is not sound, or the folder is there already.
pub fn export(args: &ExportArgs, now: DateTime<Utc>) -> Result<String, String> {
    let place = args.database.resolve(false)?;
    let store = Store::open(&place.address, false, 1).map_err(|error| error.to_string())?;
    let folder = &args.to;
    if folder.exists() {
        return Err(format!(
            "{} is there already; nothing was overwritten.",
            folder.display()
        ));
    }
    let tables = folder.join("tables");
    fs::create_dir_all(&tables).map_err(|error| cannot(&tables, &error))?;
    // Everything of one moment.
    let manifest = store.read(|conn| -> Result<Manifest, Trouble> {
        let proven = check::proven_of(conn)?;
        if let Some(first) = proven.findings.first() {
            let says = format!(
                "the record is not sound: {}: {}. `gambrel check` lists everything.",
                first.about, first.says
            );
            return Err(Trouble(says));
        }
        let mut files = BTreeMap::new();
        for table in carry::tables() {
            files.insert(table.name.to_owned(), write(conn, table, &tables)?);
        }
        Ok(Manifest {
            form: FORM.to_owned(),
            program: env!("CARGO_PKG_VERSION").to_owned(),
            made_at: now.format("%Y-%m-%dT%H:%M:%SZ").to_string(),
            digest: proven.digest,
            anchor: proven.anchor.map(|anchor| anchor.to_string()),
            tables: files,
        })
    });
    let manifest = manifest.map_err(|trouble| trouble.0)?;
    let text = serde_json::to_string_pretty(&manifest).map_err(|error| error.to_string())?;
    for (name, text) in [("README.md", README), ("record.json", &text)] {
        let path = folder.join(name);
        fs::write(&path, text).map_err(|error| cannot(&path, &error))?;
    }
    let rows: u64 = manifest.tables.values().map(|of| of.rows).sum();
    Ok(format!(
        "{}: {rows} rows\ndigest {}",
        folder.display(),
        manifest.digest
    ))
}

/// What went wrong, in words.
struct Trouble(String);

impl From<store::Error> for Trouble {
    fn from(error: store::Error) -> Trouble {
        Trouble(error.to_string())
    }
}

impl From<String> for Trouble {
    fn from(says: String) -> Trouble {
        Trouble(says)
    }
}

impl store::db::MayRetry for Trouble {
    fn is_conflict(&self) -> bool {
        false
    }

    fn of_store(&self) -> Option<&store::Error> {
        None
    }
}

fn cannot(path: &Path, error: &std::io::Error) -> String {
    format!("{}: {}", path.display(), why(error))
}

/// What is known of people besides: who has the files must not be able to sign in with it.
const SECRET: [&str; 2] = ["pin", "word"];

fn write(conn: &mut Conn, table: &Table, folder: &Path) -> Result<FileOf, Trouble> {
    let path = folder.join(format!("{}.jsonl", table.name));
    let file = File::create_new(&path).map_err(|error| cannot(&path, &error))?;
    let (mut file, mut hash, mut rows) = (BufWriter::new(file), Sha256::new(), 0);
    let mut last: Option<Row> = None;
    loop {
        let mut some = carry::read(conn, table, last.as_ref(), carry::at_once(table))?;
        let Some(end) = some.last() else { break };
        last = Some(end.clone());
        for row in &mut some {
            if table.name == "people" {
                for column in SECRET {
                    table.blank(row, column);
                }
            }
            let line = carry::line(table, row) + "\n";
            hash.update(&line);
            file.write_all(line.as_bytes())
                .map_err(|error| cannot(&path, &error))?;
            rows += 1;
        }
    }
    let file = file.into_inner().map_err(|error| error.into_error());
    let synced = file.and_then(|file| file.sync_all());
    synced.map_err(|error| cannot(&path, &error))?;
    Ok(FileOf {
        rows,
        sha256: hexadecimal(hash),
    })
}

fn hexadecimal(hash: Sha256) -> String {
    hash.finalize()
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect()
}

/// Makes the record of the files in a folder; what to tell.
///
/// # Errors
/// In words: a file was changed or is missing, a record is there already, or what comes of it is not what was
/// exported. Nothing is kept then.
pub fn import(args: &ImportArgs) -> Result<String, String> {
    let place = args.database.resolve(true)?;
    let path = args.from.join("record.json");
    let text = fs::read_to_string(&path).map_err(|error| cannot(&path, &error))?;
    let manifest: Manifest =
        serde_json::from_str(&text).map_err(|error| format!("{}: {error}", path.display()))?;
    if manifest.form != FORM {
        return Err(format!(
            "{}: its form is {:?}, and this program reads {FORM:?}",
            path.display(),
            manifest.form
        ));
    }
    let fresh = matches!(&place.address, store::Address::Sqlite(path) if !path.exists());
    let store = Store::open(&place.address, true, 1).map_err(|error| error.to_string())?;
    let done = store.write(|tx| -> Result<check::Proven, Trouble> {
        carry::make_room(tx.conn)?;
        for table in carry::tables() {
            read(tx.conn, table, &args.from.join("tables"), &manifest)?;
        }
        carry::settle_keys(tx.conn)?;
        let proven = check::proven_of(tx.conn)?;
        let anchor = proven.anchor.as_ref().map(ToString::to_string);
        match proven.findings.first() {
            Some(first) => Err(Trouble(format!(
                "what came of it is not sound: {}: {}",
                first.about, first.says
            ))),
            None if proven.digest != manifest.digest || anchor != manifest.anchor => {
                Err(Trouble("what came of it is not what was exported".into()))
            }
            None => Ok(proven),
        }
    });
    match done {
        Ok(proven) => Ok(format!("{}\ndigest {}", proven.counted(), proven.digest)),
        Err(Trouble(says)) => {
            drop(store);
            if let (true, store::Address::Sqlite(path)) = (fresh, &place.address) {
                let _ = fs::remove_file(path);
            }
            Err(format!("{says}. Nothing of it was kept."))
        }
    }
}

fn read(conn: &mut Conn, table: &Table, folder: &Path, manifest: &Manifest) -> Result<(), Trouble> {
    let path = folder.join(format!("{}.jsonl", table.name));
    let named = manifest.tables.get(table.name);
    let named = named.ok_or_else(|| format!("record.json names no table {}", table.name))?;
    let file = File::open(&path).map_err(|error| cannot(&path, &error))?;
    let (mut file, mut hash, mut rows) = (BufReader::new(file), Sha256::new(), 0);
    let (mut line, mut some) = (String::new(), Vec::with_capacity(carry::at_once(table)));
    loop {
        line.clear();
        let length = file
            .read_line(&mut line)
            .map_err(|error| cannot(&path, &error))?;
        if length > 0 {
            hash.update(&line);
            rows += 1;
            let row = carry::parse(table, line.trim_end_matches('\n'));
            let wrong = || {
                format!(
                    "{}, line {rows}: this is no row of {}",
                    path.display(),
                    table.name
                )
            };
            some.push(row.ok_or_else(wrong)?);
        }
        if some.len() == carry::at_once(table) || (length == 0 && !some.is_empty()) {
            carry::put(conn, table, &some)?;
            some.clear();
        }
        if length == 0 {
            break;
        }
    }
    let found = FileOf {
        rows,
        sha256: hexadecimal(hash),
    };
    if found != *named {
        return Err(Trouble(format!(
            "{} is not the file that was exported",
            path.display()
        )));
    }
    Ok(())
}
