//! What a deed says later than it happened: the lots that it is about, and what was done with them since.

use crate::conn::Conn;
use crate::error::Result;
use crate::tables::{deeds, pack_events, stop_ends, stops, voids};
use chrono::NaiveDateTime;
use diesel::dsl::{exists, select};
use diesel::prelude::*;
use domain::words::Account;
use std::collections::BTreeSet;

/// Lots in one statement: SQLite binds some thirty thousand.
const AT_ONCE: usize = 10_000;

/// The lots that a deed touched, stopped or let go, and the first moment that it was about.
///
/// # Errors
/// The database is away.
pub fn told_by(conn: &mut Conn, deed: i32, at: NaiveDateTime) -> Result<(Vec<i32>, NaiveDateTime)> {
    let mut lots: BTreeSet<i32> = pack_events::table
        .filter(pack_events::deed_id.eq(deed))
        .select(pack_events::lot_id)
        .load::<i32>(conn)?
        .into_iter()
        .collect();
    let placed: Vec<(i32, NaiveDateTime)> = stops::table
        .filter(stops::deed_id.eq(deed))
        .select((stops::lot_id, stops::since))
        .load(conn)?;
    let ended: Vec<i32> = stop_ends::table
        .inner_join(stops::table.on(stops::id.eq(stop_ends::stop_id)))
        .filter(stop_ends::deed_id.eq(deed))
        .select(stops::lot_id)
        .load(conn)?;
    let since = placed.iter().map(|(_, since)| *since).min();
    lots.extend(placed.into_iter().map(|(lot, _)| lot));
    lots.extend(ended);
    let since = since.map_or(at, |since| since.min(at));
    Ok((lots.into_iter().collect(), since))
}

/// Was anything made of some lots since a moment, by another deed?
///
/// # Errors
/// The database is away.
pub fn is_overtaken(
    conn: &mut Conn,
    deed: i32,
    lots: &[i32],
    since: NaiveDateTime,
) -> Result<bool> {
    for some in lots.chunks(AT_ONCE) {
        let used = pack_events::table
            .inner_join(deeds::table.on(deeds::id.eq(pack_events::deed_id)))
            .filter(pack_events::lot_id.eq_any(some))
            .filter(pack_events::account.eq(Account::Used.as_str()))
            .filter(deeds::at.ge(since).and(deeds::id.ne(deed)));
        if select(exists(used)).get_result(conn)? {
            return Ok(true);
        }
    }
    Ok(false)
}

/// Food that left.
#[derive(Debug, Clone, Queryable)]
pub struct Left {
    /// Of which lot.
    pub lot_id: i32,
    /// Out of which pack.
    pub pack_id: i32,
    /// What the deed was.
    pub kind: String,
    /// How much.
    pub mg: i64,
    /// When.
    pub at: NaiveDateTime,
}

/// What left some lots to be eaten: sold, served or shipped, by deeds that were not voided.
///
/// # Errors
/// The database is away.
pub fn left(conn: &mut Conn, deed: i32, lots: &[i32]) -> Result<Vec<Left>> {
    let leaves = [Account::Sold, Account::Served, Account::Shipped];
    let leaves = leaves.map(Account::as_str);
    let mut found = Vec::new();
    for some in lots.chunks(AT_ONCE) {
        found.extend(
            pack_events::table
                .inner_join(deeds::table.on(deeds::id.eq(pack_events::deed_id)))
                .left_join(voids::table.on(voids::deed_id.eq(pack_events::deed_id)))
                .filter(pack_events::lot_id.eq_any(some).and(voids::id.is_null()))
                .filter(pack_events::account.eq_any(leaves))
                .filter(deeds::id.ne(deed))
                .order((deeds::at, pack_events::id))
                .select((
                    pack_events::lot_id,
                    pack_events::pack_id,
                    deeds::kind,
                    pack_events::mg,
                    deeds::at,
                ))
                .load::<Left>(conn)?,
        );
    }
    Ok(found)
}
