//! `gambrel import`: the same record again of the files in an archive, on either engine.

use super::{
    FORM, FORM_BEFORE, FileOf, Manifest, PAPERS, Trouble, cannot, hexadecimal, paper_file,
};
use crate::check;
use crate::config::ImportArgs;
use sha2::{Digest, Sha256};
use std::fs::{self, File};
use std::io::{BufRead, BufReader};
use std::path::Path;
use store::carry::{self, Table};
use store::papers::{self, Which};
use store::{Conn, Store, Tx};

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
    if ![FORM, FORM_BEFORE].contains(&manifest.form.as_str()) {
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
        for table in carry::tables().filter(|table| table.name != PAPERS) {
            // What an archive of the time before lacks, no record of that time had.
            if manifest.tables.contains_key(table.name) || manifest.form == FORM {
                read(tx.conn, table, &args.from.join("tables"), &manifest)?;
            }
        }
        carry::settle_keys(tx.conn)?;
        read_papers(tx, &args.from.join("papers"))?;
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
        Ok(proven) => Ok(format!(
            "{}\nnot read, because they follow from the rest: {}\ndigest {}",
            proven.counted(),
            manifest.derived.join(", "),
            proven.digest
        )),
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

/// What papers hold, each in a file of its own. Whether it is what was sealed, the check of the whole says.
fn read_papers(tx: &mut Tx<'_>, folder: &Path) -> Result<(), Trouble> {
    let mut after = i32::MIN;
    loop {
        let some = papers::find(tx.conn, Which::Whole(after), 100)?;
        let Some(last) = some.last() else {
            return Ok(());
        };
        after = last.row.id;
        for paper in &some {
            let path = folder.join(paper_file(paper));
            let bytes = fs::read(&path).map_err(|error| cannot(&path, &error))?;
            if store::kept::hash(&bytes) != paper.row.hash {
                return Err(Trouble(format!(
                    "{} is not the file that was exported",
                    path.display()
                )));
            }
            papers::put_parts(tx, paper.row.id, &bytes)?;
        }
    }
}
