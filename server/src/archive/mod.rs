//! `gambrel export`: the whole record as plain files. The tables and the papers are the record; spreadsheets and
//! labels are derived from them, for whoever opens the folder without the program.

mod import;
mod labels;
pub mod says;
mod sheets;

pub use import::import;

use crate::app::App;
use crate::caller::Caller;
use crate::check;
use crate::config::ExportArgs;
use crate::given::why;
use crate::read::names::Names;
use crate::world::Clock;
use domain::paper::PaperForm;
use law::Shipped;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::fs::{self, File};
use std::io::{BufWriter, Write};
use std::path::Path;
use store::carry::{self, Row, Table};
use store::papers::{self, PaperFound, Which};
use store::{Conn, Store};

/// How the files are written; a later form has another name.
const FORM: &str = "gambrel archive 2";
/// The form of the time before papers, which is read as well.
const FORM_BEFORE: &str = "gambrel archive 1";
/// The table that no file is made of: each paper is a file itself.
const PAPERS: &str = "paper_parts";
/// What is derived from the rest, and not read back.
const DERIVED: [&str; 2] = ["sheets", "labels"];
/// What the files are, for somebody without the program.
const README: &str = include_str!("../../assets/archive.md");

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
    /// The folders that follow from the rest, and are not read back.
    #[serde(default)]
    derived: Vec<String>,
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
pub fn export(args: &ExportArgs, law: Shipped) -> Result<String, String> {
    let place = args.database.resolve(false)?;
    let store = Store::open(&place.address, false, 1).map_err(|error| error.to_string())?;
    let app = App::new(store, Clock::Machine, String::new(), BTreeMap::new(), law);
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
    let written = app.store.read(|conn| -> Result<(Manifest, u64), Trouble> {
        let proven = check::proven_of(conn)?;
        if let Some(first) = proven.findings.first() {
            let says = format!(
                "the record is not sound: {}: {}. `gambrel check` lists everything.",
                first.about, first.says
            );
            return Err(Trouble(says));
        }
        let mut files = BTreeMap::new();
        for table in carry::tables().filter(|table| table.name != PAPERS) {
            files.insert(table.name.to_owned(), write(conn, table, &tables)?);
        }
        write_papers(conn, &folder.join("papers"))?;
        let names = Names::load(&Caller::new(&app), conn)?;
        sheets::write(conn, &names, &folder.join("sheets"))?;
        let undrawn = labels::write(conn, &folder.join("labels"))?;
        let manifest = Manifest {
            form: FORM.to_owned(),
            program: env!("CARGO_PKG_VERSION").to_owned(),
            made_at: app.now().format("%Y-%m-%dT%H:%M:%SZ").to_string(),
            digest: proven.digest,
            anchor: proven.anchor.map(|anchor| anchor.to_string()),
            tables: files,
            derived: DERIVED.map(str::to_owned).to_vec(),
        };
        Ok((manifest, undrawn))
    });
    let (manifest, undrawn) = written.map_err(|trouble| trouble.0)?;
    let text = serde_json::to_string_pretty(&manifest).map_err(|error| error.to_string())?;
    for (name, text) in [("README.md", README), ("record.json", &text)] {
        let path = folder.join(name);
        fs::write(&path, text).map_err(|error| cannot(&path, &error))?;
    }
    let rows: u64 = manifest.tables.values().map(|of| of.rows).sum();
    let undrawn = match undrawn {
        0 => String::new(),
        some => format!(
            "\n{some} labels of an earlier version can not be drawn any more; the tables have what they said"
        ),
    };
    Ok(format!(
        "{}: {rows} rows{undrawn}\ndigest {}",
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

impl From<crate::error::Error> for Trouble {
    fn from(error: crate::error::Error) -> Trouble {
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

/// The file of a paper in its folder.
fn paper_file(paper: &PaperFound) -> String {
    let ending = PaperForm::parse(&paper.row.form).map_or("bin", PaperForm::ending);
    format!("{}.{ending}", crate::ids::shown_id(&paper.uid))
}

/// Writes what each paper holds.
fn write_papers(conn: &mut Conn, folder: &Path) -> Result<(), Trouble> {
    fs::create_dir(folder).map_err(|error| cannot(folder, &error))?;
    let mut after = i32::MIN;
    loop {
        let some = papers::find(conn, Which::Whole(after), 100)?;
        let Some(last) = some.last() else {
            return Ok(());
        };
        after = last.row.id;
        for paper in &some {
            let path = folder.join(paper_file(paper));
            let bytes = papers::content(conn, paper.row.id)?;
            fs::write(&path, bytes).map_err(|error| cannot(&path, &error))?;
        }
    }
}
