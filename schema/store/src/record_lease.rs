//! Which record this is, and in which file or database it is worked in.
//!
//! A record has one identity, and every copy of it has the same. The lease names the file or the database in which
//! it was last worked in: by what the machine itself knows it by, not by its path. A record that is found in another
//! than its lease says was copied or moved; who opens it must know that.

use crate::Address;
use crate::conn::Conn;
use crate::db::{Store, Tx};
use crate::error::Result;
use crate::tables::{identities, record_leases};
use chrono::NaiveDateTime;
use diesel::dsl::max;
use diesel::prelude::*;
use diesel::sql_query;
use diesel::sql_types::Text;
use std::path::Path;
use std::time::UNIX_EPOCH;

/// It began here.
pub const MADE: &str = "made";
/// It was restored from a copy.
pub const RESTORED: &str = "restored";
/// It was found elsewhere than it was last worked in.
pub const MOVED: &str = "moved";

/// A lease.
#[derive(Debug, Clone, PartialEq, Eq, Queryable, Selectable, Insertable)]
#[diesel(table_name = record_leases)]
pub struct LeaseRow {
    /// Its key.
    pub id: i32,
    /// What tells it from all others.
    pub mark: Vec<u8>,
    /// When it was taken.
    pub at: NaiveDateTime,
    /// The file or database, as the machine knows it.
    pub medium: String,
    /// Where that was then: a path, or an address without its secrets.
    pub place: String,
    /// [`MADE`], [`RESTORED`] or [`MOVED`].
    pub why: String,
}

#[derive(QueryableByName)]
struct Said {
    #[diesel(sql_type = Text)]
    says: String,
}

/// What the machine knows the record's file or database by: it outlives restarts and new names, and no copy has it.
///
/// # Errors
/// The database is away.
pub fn medium(store: &Store) -> Result<String> {
    match store.address() {
        Address::Sqlite(path) => Ok(medium_of(path)),
        Address::Postgres(_) => {
            let ask = |sql: &str| {
                store.look(|conn| -> Result<String> {
                    let said: Said = crate::on_each!(conn, c => sql_query(sql).get_result(c)?);
                    Ok(said.says)
                })
            };
            let database = ask(
                "SELECT CAST(oid AS TEXT) AS says FROM pg_database WHERE datname = current_database()",
            )?;
            // Whoever has few rights may not be told which server it is.
            let server =
                ask("SELECT CAST(system_identifier AS TEXT) AS says FROM pg_control_system()");
            Ok(format!(
                "database {database} of {}",
                server.unwrap_or_default()
            ))
        }
    }
}

/// The same of a file: its number on its disk, and when it was made, where the disk keeps that.
pub fn medium_of(path: &Path) -> String {
    let about = std::fs::metadata(path).ok();
    let born = about
        .as_ref()
        .and_then(|about| about.created().ok()?.duration_since(UNIX_EPOCH).ok());
    let born = born.map_or(0, |since| since.as_nanos());
    #[cfg(unix)]
    let number = {
        use std::os::unix::fs::MetadataExt;
        about.map_or(0, |about| about.ino())
    };
    #[cfg(not(unix))]
    let number = 0;
    format!("file {number} of {born}")
}

/// Where the record is, as people know it: nothing secret.
pub fn place(store: &Store) -> String {
    match store.address() {
        Address::Sqlite(path) => {
            let whole = std::fs::canonicalize(path).unwrap_or_else(|_| path.clone());
            whole.display().to_string()
        }
        Address::Postgres(url) => {
            let after = url.split("://").nth(1).unwrap_or_default();
            let host = after.rsplit('@').next().unwrap_or_default();
            let host = host.split('?').next().unwrap_or_default();
            format!("postgres://{host}")
        }
    }
}

/// Which record it is, if it was told.
///
/// # Errors
/// The database is away.
pub fn identity(conn: &mut Conn) -> Result<Option<Vec<u8>>> {
    let mark = identities::table.find(1).select(identities::mark);
    Ok(mark.get_result(conn).optional()?)
}

/// Says which record it is, once and for all.
///
/// # Errors
/// The database is away.
pub fn identify(tx: &mut Tx<'_>, mark: &[u8], now: NaiveDateTime) -> Result<()> {
    diesel::insert_into(identities::table)
        .values((
            identities::id.eq(1),
            identities::mark.eq(mark),
            identities::made_at.eq(now),
        ))
        .execute(tx.conn)?;
    Ok(())
}

/// The lease that stands.
///
/// # Errors
/// The database is away.
pub fn last(conn: &mut Conn) -> Result<Option<LeaseRow>> {
    let all = record_leases::table.order(record_leases::id.desc());
    Ok(all.select(LeaseRow::as_select()).first(conn).optional()?)
}

/// Takes a lease; its key is given here.
///
/// # Errors
/// The database is away.
pub fn take(tx: &mut Tx<'_>, row: &LeaseRow) -> Result<()> {
    let last: Option<i32> = record_leases::table
        .select(max(record_leases::id))
        .get_result(tx.conn)?;
    let id = last.unwrap_or(0) + 1;
    diesel::insert_into(record_leases::table)
        .values(LeaseRow { id, ..row.clone() })
        .execute(tx.conn)?;
    Ok(())
}

/// The same file has another name now.
///
/// # Errors
/// The database is away.
pub fn renamed(tx: &mut Tx<'_>, id: i32, place: &str) -> Result<()> {
    diesel::update(record_leases::table.find(id))
        .set(record_leases::place.eq(place))
        .execute(tx.conn)?;
    Ok(())
}
