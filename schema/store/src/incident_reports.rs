//! What the reports of incidents say, kept when they are closed.

use crate::conn::Conn;
use crate::db::Tx;
use crate::error::Result;
use crate::tables::{incident_reports, incidents};
use diesel::prelude::*;

/// What the report of an incident says since its close.
#[derive(Debug, Queryable, Selectable, Insertable)]
#[diesel(table_name = incident_reports)]
#[allow(missing_docs, reason = "the columns, described in the migration")]
pub struct ReportRow {
    pub id: i32,
    pub incident_id: i32,
    pub facts: String,
}

/// Keeps what an incident's report says from its close on.
///
/// # Errors
/// The database is away or full.
pub fn keep(tx: &mut Tx<'_>, close: i32, incident: i32, facts: &str) -> Result<()> {
    let row = ReportRow {
        id: close,
        incident_id: incident,
        facts: facts.to_owned(),
    };
    diesel::insert_into(incident_reports::table)
        .values(&row)
        .execute(tx.conn)?;
    tx.seal(close, &row);
    Ok(())
}

/// What an incident's report says since its close.
///
/// # Errors
/// The database is away.
pub fn kept(conn: &mut Conn, incident: i32) -> Result<Option<String>> {
    Ok(incident_reports::table
        .filter(incident_reports::incident_id.eq(incident))
        .order(incident_reports::id)
        .select(incident_reports::facts)
        .first(conn)
        .optional()?)
}

/// What the reports of all drills said at their close, the last drill first.
///
/// # Errors
/// The database is away.
pub fn of_drills(conn: &mut Conn, most: i64) -> Result<Vec<String>> {
    Ok(incident_reports::table
        .inner_join(incidents::table.on(incidents::id.eq(incident_reports::incident_id)))
        .filter(incidents::drill.eq(true))
        .order(incidents::id.desc())
        .select(incident_reports::facts)
        .limit(most)
        .load(conn)?)
}
