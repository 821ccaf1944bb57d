//! What stands in places now, and which packs nobody finds.

use crate::conn::Conn;
use crate::error::Result;
use crate::packs::PackRow;
use crate::tables::packs;
use diesel::dsl::count_star;
use diesel::prelude::*;
use domain::words::Being;

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
