//! What the reports of incidents say, kept when they are closed.

use crate::conn::Conn;
use crate::db::Tx;
use crate::error::Result;
use crate::tables::{incident_reports, incidents};
use diesel::prelude::*;

/// Keeps what an incident's report says from its close on.
///
/// # Errors
/// The database is away or full.
pub fn keep(tx: &mut Tx<'_>, close: i32, incident: i32, facts: &str) -> Result<()> {
    diesel::insert_into(incident_reports::table)
        .values((
            incident_reports::id.eq(close),
            incident_reports::incident_id.eq(incident),
            incident_reports::facts.eq(facts),
        ))
        .execute(tx.conn)?;
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
