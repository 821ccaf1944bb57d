//! What a deed stopped or let go, for whoever reads its receipt.

use crate::conn::Conn;
use crate::error::Result;
use crate::tables::{packs, stop_ends, stops};
use diesel::prelude::*;

/// The lots on which a deed placed a stop, or of which it ended one, with the number of the pack where it is of one.
///
/// # Errors
/// The database is away.
pub fn of_deed(conn: &mut Conn, deed: i32) -> Result<Vec<(i32, Option<u32>)>> {
    let mut all: Vec<(i32, Option<i32>)> = stops::table
        .left_join(packs::table.on(packs::id.nullable().eq(stops::pack_id)))
        .filter(stops::deed_id.eq(deed))
        .select((stops::lot_id, packs::number.nullable()))
        .load(conn)?;
    if all.is_empty() {
        all = stop_ends::table
            .inner_join(stops::table.on(stops::id.eq(stop_ends::stop_id)))
            .left_join(packs::table.on(packs::id.nullable().eq(stops::pack_id)))
            .filter(stop_ends::deed_id.eq(deed))
            .select((stops::lot_id, packs::number.nullable()))
            .load(conn)?;
    }
    let number = |number: i32| number.unsigned_abs();
    let told = all.into_iter();
    Ok(told.map(|(lot, pack)| (lot, pack.map(number))).collect())
}
