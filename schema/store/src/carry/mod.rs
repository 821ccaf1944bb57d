//! The record row by row, in a form that is the same on both engines: read from one, written to the other, to files
//! and back. What is carried is everything, as it stands; nothing is worked out anew.

mod rows;
mod shape;

pub use rows::{Row, line, parse, put, read};
pub(crate) use shape::every;
pub use shape::{Table, tables};

use crate::conn::Conn;
use crate::error::{Error, Result};
use crate::on_each;
use diesel::connection::SimpleConnection;
use diesel::sql_types::BigInt;
use diesel::{QueryableByName, RunQueryDsl, sql_query};

/// Rows in one statement; of papers fewer, whose parts are large.
pub const fn at_once(table: &Table) -> usize {
    match table.is_large {
        true => 8,
        false => 500,
    }
}

#[derive(QueryableByName)]
struct Count {
    #[diesel(sql_type = BigInt)]
    count: i64,
}

fn count(conn: &mut Conn, sql: &str) -> Result<i64> {
    let found: Vec<Count> = on_each!(conn, c => sql_query(sql).load(c)?);
    Ok(found.first().map_or(0, |found| found.count))
}

/// Empties a record into which another is to be carried: one that was just made, with nothing in it but what the
/// migrations put there.
///
/// # Errors
/// Something is on record already; the database is away.
pub fn make_room(conn: &mut Conn) -> Result<()> {
    for table in ["deeds", "versions", "people", "chain"] {
        if count(conn, &format!("SELECT COUNT(*) AS count FROM {table}"))? > 0 {
            let says = "a record is there already; nothing of it was changed. Name a database that is empty.";
            return Err(Error::Address(says.into()));
        }
    }
    let all: Vec<&Table> = tables().collect();
    for table in all.iter().rev() {
        conn.batch_execute(&format!("DELETE FROM {}", table.name))?;
    }
    Ok(())
}

/// Carries the whole record from one database to another that has room for it.
///
/// # Errors
/// One of the databases is away or full.
pub fn over(from: &mut Conn, to: &mut Conn) -> Result<()> {
    for table in tables() {
        let mut last: Option<Row> = None;
        loop {
            let rows = read(from, table, last.as_ref(), at_once(table))?;
            let Some(end) = rows.last() else { break };
            last = Some(end.clone());
            put(to, table, &rows)?;
        }
    }
    settle_keys(to)
}

/// Sees to it that keys which are given out from now on are above all that were.
///
/// # Errors
/// The database is away or full.
pub fn settle_keys(conn: &mut Conn) -> Result<()> {
    let mut highest = 0;
    for table in tables().filter(|table| table.name != "chain" && table.columns[0].0 == "id") {
        let sql = format!(
            "SELECT CAST(COALESCE(MAX(id), 0) AS BIGINT) AS count FROM {}",
            table.name
        );
        highest = highest.max(count(conn, &sql)?);
    }
    let block = highest / crate::ids::BLOCK + 1;
    let next = block * crate::ids::BLOCK;
    Ok(conn.batch_execute(&match conn {
        Conn::Sqlite(_) => format!("UPDATE counters SET next = MAX(next, {next}) WHERE id = 1"),
        Conn::Pg(_) => format!("SELECT setval('keys', {block})"),
    })?)
}
