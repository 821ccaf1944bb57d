//! Whether the file of a record on SQLite is sound in itself, and every row that another names is there. PostgreSQL
//! sees to both by itself.

use crate::conn::Conn;
use crate::error::Result;
use diesel::sql_types::{BigInt, Nullable, Text};
use diesel::{QueryableByName, RunQueryDsl, sql_query};
use domain::audit::AuditFinding;

#[derive(QueryableByName)]
struct Told {
    #[diesel(sql_type = Text)]
    integrity_check: String,
}

#[derive(QueryableByName)]
struct Dangling {
    #[diesel(sql_type = Text)]
    table: String,
    #[diesel(sql_type = Nullable<BigInt>)]
    rowid: Option<i64>,
    #[diesel(sql_type = Text)]
    parent: String,
}

/// Everything that SQLite itself finds wrong.
///
/// # Errors
/// The file does not read.
pub fn check(conn: &mut Conn) -> Result<Vec<AuditFinding>> {
    let Conn::Sqlite(conn) = conn else {
        return Ok(Vec::new());
    };
    let told: Vec<Told> = sql_query("PRAGMA integrity_check").load(conn)?;
    let wrong = told.into_iter().filter(|told| told.integrity_check != "ok");
    let mut findings: Vec<AuditFinding> = wrong
        .map(|told| AuditFinding::new("the file", told.integrity_check))
        .collect();
    let dangling: Vec<Dangling> = sql_query("PRAGMA foreign_key_check").load(conn)?;
    findings.extend(dangling.into_iter().map(|row| {
        let about = format!("{} {}", row.table, row.rowid.unwrap_or_default());
        AuditFinding::new(
            about,
            format!("names a row of {} that is not there", row.parent),
        )
    }));
    Ok(findings)
}
