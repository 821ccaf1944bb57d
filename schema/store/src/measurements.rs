//! Readings: one quantity a row, in millionths of its unit.

use crate::conn::Conn;
use crate::db::Tx;
use crate::error::Result;
use crate::tables::{deeds, measurements, voids};
use chrono::NaiveDateTime;
use diesel::prelude::*;

/// A reading to be recorded.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Measurement {
    /// What was measured: `grams`, `celsius`, `ph`, `water-activity`, `salometer-60F` …
    pub quantity: &'static str,
    /// In millionths of the unit.
    pub millionths: i64,
}

/// Records readings of a lot or a place.
pub fn insert(
    tx: &mut Tx<'_>,
    deed: i32,
    lot: Option<i32>,
    place: Option<i32>,
    readings: &[Measurement],
) -> Result<()> {
    let ids = tx.ids.take(tx.conn, readings.len())?;
    for (reading, id) in readings.iter().zip(ids) {
        diesel::insert_into(measurements::table)
            .values((
                measurements::id.eq(id),
                measurements::deed_id.eq(deed),
                measurements::lot_id.eq(lot),
                measurements::place_id.eq(place),
                measurements::quantity.eq(reading.quantity),
                measurements::millionths.eq(reading.millionths),
            ))
            .execute(tx.conn)?;
    }
    Ok(())
}

/// Numbers of one quantity of several lots, voided ones left out, oldest first: the lot, how much.
pub fn of_lots(conn: &mut Conn, lots: &[i32], quantity: &str) -> Result<Vec<(i32, i64)>> {
    let found: Vec<(Option<i32>, i64)> = measurements::table
        .left_join(voids::table.on(voids::deed_id.eq(measurements::deed_id)))
        .filter(measurements::lot_id.eq_any(lots).and(voids::id.is_null()))
        .filter(measurements::quantity.eq(quantity))
        .order(measurements::id)
        .select((measurements::lot_id, measurements::millionths))
        .load(conn)?;
    Ok(found
        .into_iter()
        .filter_map(|(lot, much)| Some((lot?, much)))
        .collect())
}

/// The readings of a lot, voided ones left out: when, what, how much.
pub fn of_lot(conn: &mut Conn, lot: i32) -> Result<Vec<(NaiveDateTime, String, i64)>> {
    Ok(measurements::table
        .inner_join(deeds::table.on(deeds::id.eq(measurements::deed_id)))
        .left_join(voids::table.on(voids::deed_id.eq(measurements::deed_id)))
        .filter(measurements::lot_id.eq(lot).and(voids::id.is_null()))
        .order((deeds::at, measurements::id))
        .select((deeds::at, measurements::quantity, measurements::millionths))
        .load(conn)?)
}
