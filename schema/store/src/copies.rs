//! Copies of the record: a file that holds all of it at one moment, and what has to happen to one before it may be
//! worked in again.

mod pages;

use crate::Address;
use crate::carry;
use crate::conn::Conn;
use crate::db::{Store, Tx};
use crate::error::{Error, Result};
use crate::series;
use crate::tables::series as table;
use diesel::prelude::*;
use diesel::sql_query;
use diesel::sql_types::Text;
use domain::code::{LETTERS, NUMBERS};
use std::path::Path;
use std::time::Duration;

/// How many of a day's letters are passed over by one restore: so many were perhaps given out since the copy was made.
pub(crate) const LETTERS_AT_ONCE: u32 = 8;

/// Writes a copy of the whole record, as it is at this moment, into a new file, while others go on writing.
///
/// # Errors
/// The file cannot be made; the record is away.
pub fn write(store: &Store, path: &Path) -> Result<()> {
    if path.exists() {
        let says = format!(
            "{} is there already; nothing was overwritten.",
            path.display()
        );
        return Err(Error::Address(says));
    }
    match store.address() {
        Address::Sqlite(record) => {
            pages::copy(record, store.file().as_deref(), path)?;
            as_one_file(path)
        }
        Address::Postgres(_) => {
            let copy = Store::open(&Address::Sqlite(path.to_owned()), true, 1)?;
            store.read(|from| {
                copy.write(|tx| {
                    carry::make_room(tx.conn)?;
                    carry::over(from, tx.conn)
                })
            })?;
            drop(copy);
            as_one_file(path)
        }
    }
}

/// Puts what lies in the log beside a file into the file, and does without a log: it may be moved then. Nobody else
/// has it open.
///
/// # Errors
/// The file does not open, or somebody has it.
pub fn as_one_file(path: &Path) -> Result<()> {
    let shown = path.display();
    let name = path.to_str();
    let name = name.ok_or_else(|| Error::Address("the path is not UTF-8".into()))?;
    for _ in 0..50 {
        let conn = SqliteConnection::establish(name);
        let mut conn = conn.map_err(|error| Error::Away(format!("{shown}: {error}")))?;
        let mode: Vec<Mode> = sql_query("PRAGMA journal_mode = DELETE")
            .load(&mut conn)
            .unwrap_or_default();
        if mode.iter().any(|mode| mode.journal_mode == "delete") {
            return Ok(());
        }
        // Connections that were given back a moment ago are still being closed.
        std::thread::sleep(Duration::from_millis(100));
    }
    Err(Error::Locked(format!("{shown} is open elsewhere")))
}

#[derive(QueryableByName)]
struct Mode {
    #[diesel(sql_type = Text)]
    journal_mode: String,
}

/// How many deeds, lots and packs there are.
///
/// # Errors
/// The database is away.
pub fn counts(conn: &mut Conn) -> Result<(i64, i64, i64)> {
    use crate::tables::{deeds, lots, packs};
    Ok((
        deeds::table.count().get_result(conn)?,
        lots::table.count().get_result(conn)?,
        packs::table.count().get_result(conn)?,
    ))
}

/// How many deeds there are.
///
/// # Errors
/// The database is away.
pub fn deeds(conn: &mut Conn) -> Result<i64> {
    use crate::tables::deeds;
    Ok(deeds::table.count().get_result(conn)?)
}

/// Moves every running number on, so that no code is given out that was perhaps printed after the copy was made; how
/// often this record has been restored, this time included.
///
/// An animal's numbers are closed, and the kitchen's take over. A day's numbers pass over eight of its thirty-two
/// letters, and so do the letters of a farm's day: also those of days that nobody has begun in this copy, which may
/// have been begun since.
///
/// # Errors
/// The database is away or full.
pub fn jump_ahead(tx: &mut Tx<'_>) -> Result<u32> {
    let times = series::restored(tx.conn)? + 1;
    let all: Vec<(i32, String, i32)> = table::table
        .select((table::id, table::key, table::next))
        .load(tx.conn)?;
    for (id, key, next) in all {
        if key == series::RESTORED {
            continue;
        }
        let most = |most: u32| i32::try_from(most).unwrap_or(i32::MAX);
        let to = match series::sort_of(&key) {
            series::Sort::Animal => most(NUMBERS),
            series::Sort::Letters => (next + most(LETTERS_AT_ONCE)).min(most(LETTERS.len() as u32)),
            series::Sort::Day => next + most(LETTERS_AT_ONCE * NUMBERS),
            series::Sort::Other if next > 0 => next + most(LETTERS_AT_ONCE),
            series::Sort::Other => next,
        };
        diesel::update(table::table.find(id))
            .set(table::next.eq(to.max(next)))
            .execute(tx.conn)?;
    }
    series::lock(tx, series::RESTORED)?;
    series::advance(tx, series::RESTORED, times)?;
    Ok(times)
}
