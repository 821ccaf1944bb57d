//! Corrections: what another deed said wrong, and what is right. The deed itself stays as it was.

use crate::chain::rows::CorrectedRow;
use crate::conn::Conn;
use crate::db::Tx;
use crate::error::Result;
use crate::tables::{corrections, deeds, voids};
use chrono::NaiveDateTime;
use diesel::prelude::*;

/// A correction with the deed that brought it.
#[derive(Debug, Clone, Queryable)]
pub struct CorrectionRow {
    /// Its deed.
    pub id: i32,
    /// The deed that said it wrong.
    pub deed_id: i32,
    /// What it had said: fields as they were asked, as JSON.
    pub was: String,
    /// What is right.
    pub now: String,
    /// The id of the correction.
    pub uid: Vec<u8>,
    /// When.
    pub at: NaiveDateTime,
    /// Who.
    pub person: String,
}

/// Keeps what a correction says.
///
/// # Errors
/// The database is away or full.
pub fn insert(tx: &mut Tx<'_>, by: i32, deed: i32, was: &str, now: &str) -> Result<()> {
    let row = CorrectedRow {
        id: by,
        deed_id: deed,
        was: was.to_owned(),
        now: now.to_owned(),
    };
    diesel::insert_into(corrections::table)
        .values(&row)
        .execute(tx.conn)?;
    tx.seal(by, &row);
    Ok(())
}

/// What is known to be wrong of some deeds, in the order in which it was recorded; voided corrections are
/// left out.
///
/// # Errors
/// The database is away.
pub fn of_deeds(conn: &mut Conn, of: &[i32]) -> Result<Vec<CorrectionRow>> {
    Ok(corrections::table
        .inner_join(deeds::table.on(deeds::id.eq(corrections::id)))
        .left_join(voids::table.on(voids::deed_id.eq(corrections::id)))
        .filter(corrections::deed_id.eq_any(of).and(voids::id.is_null()))
        .order((deeds::recorded_at, corrections::id))
        .select((
            corrections::id,
            corrections::deed_id,
            corrections::was,
            corrections::now,
            deeds::uid,
            deeds::at,
            deeds::person,
        ))
        .load(conn)?)
}

/// The deed that a correction is about, voided or not; none where it is of the time before it was kept.
///
/// # Errors
/// The database is away.
pub fn corrected_by(conn: &mut Conn, correction: i32) -> Result<Option<i32>> {
    Ok(corrections::table
        .find(correction)
        .select(corrections::deed_id)
        .get_result(conn)
        .optional()?)
}

/// Every correction of a deed, voided or not.
///
/// # Errors
/// The database is away.
pub fn ever(conn: &mut Conn, deed: i32) -> Result<Vec<i32>> {
    Ok(corrections::table
        .filter(corrections::deed_id.eq(deed))
        .order(corrections::id)
        .select(corrections::id)
        .load(conn)?)
}
