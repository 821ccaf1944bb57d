//! What stands in places now, and which packs nobody finds.

use crate::conn::Conn;
use crate::error::Result;
use crate::packs::PackRow;
use crate::tables::{deeds, pack_events, packs};
use chrono::{NaiveDate, NaiveDateTime};
use diesel::dsl::count_star;
use diesel::prelude::*;
use domain::words::{Account, Being};

/// The packs that stand in a place with something left in them, by lot and number.
///
/// # Errors
/// The database is away.
pub fn in_place(conn: &mut Conn, place: i32) -> Result<Vec<PackRow>> {
    Ok(packs::table
        .filter(packs::place_id.eq(place).and(packs::left_mg.gt(0)))
        .order((packs::lot_id, packs::number))
        .select(PackRow::as_select())
        .load(conn)?)
}

/// How many packs stand in each place, by its key.
///
/// # Errors
/// The database is away.
pub fn counted(conn: &mut Conn) -> Result<Vec<(i32, i64)>> {
    Ok(packs::table
        .filter(packs::left_mg.gt(0))
        .group_by(packs::place_id)
        .select((packs::place_id, count_star()))
        .load(conn)?)
}

/// The packs that were counted as missing and not found since, those of the newest lots first.
///
/// # Errors
/// The database is away.
pub fn missing(conn: &mut Conn, limit: i64) -> Result<Vec<PackRow>> {
    Ok(packs::table
        .filter(packs::being.eq(Being::Missing.as_str()))
        .order((packs::lot_id.desc(), packs::number))
        .limit(limit)
        .select(PackRow::as_select())
        .load(conn)?)
}

/// The packs that a count since a moment did not find, and nobody since, each with the day of that count; by lot and
/// number.
///
/// # Errors
/// The database is away.
pub fn missing_since(conn: &mut Conn, since: NaiveDateTime) -> Result<Vec<(PackRow, NaiveDate)>> {
    let mut found: Vec<(PackRow, NaiveDate)> = deeds::table
        .inner_join(pack_events::table.on(pack_events::deed_id.eq(deeds::id)))
        .inner_join(packs::table.on(packs::id.eq(pack_events::pack_id)))
        .filter(deeds::at.gt(since))
        .filter(pack_events::account.eq(Account::Unexplained.as_str()))
        .filter(packs::being.eq(Being::Missing.as_str()))
        .order((packs::lot_id, packs::number, deeds::at.desc()))
        .select((PackRow::as_select(), deeds::day))
        .load(conn)?;
    found.dedup_by_key(|(pack, _)| pack.id);
    Ok(found)
}
