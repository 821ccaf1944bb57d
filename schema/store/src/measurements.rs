//! Readings: one quantity a row, in millionths of its unit.

use crate::conn::Conn;
use crate::db::Tx;
use crate::error::{Error, Result};
use crate::tables::{deeds, measurements, voids};
use chrono::NaiveDateTime;
use diesel::prelude::*;
use domain::words::Quantity;

/// A reading to be recorded.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Measurement {
    /// What was measured.
    pub quantity: Quantity,
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
    insert_with(tx, deed, lot, place, readings, None)
}

/// Records readings, and the probe that showed the temperatures among them.
///
/// # Errors
/// The database is away or full.
pub fn insert_with(
    tx: &mut Tx<'_>,
    deed: i32,
    lot: Option<i32>,
    place: Option<i32>,
    readings: &[Measurement],
    probe: Option<i32>,
) -> Result<()> {
    let ids = tx.ids.take(tx.conn, readings.len())?;
    for (reading, id) in readings.iter().zip(ids) {
        diesel::insert_into(measurements::table)
            .values((
                measurements::id.eq(id),
                measurements::deed_id.eq(deed),
                measurements::lot_id.eq(lot),
                measurements::place_id.eq(place),
                measurements::quantity.eq(reading.quantity.as_str()),
                measurements::millionths.eq(reading.millionths),
                measurements::probe_id.eq(probe.filter(|_| reading.quantity.is_warmth())),
            ))
            .execute(tx.conn)?;
    }
    Ok(())
}

/// The readings of a lot, voided ones left out: when, what, how much.
pub fn of_lot(conn: &mut Conn, lot: i32) -> Result<Vec<(NaiveDateTime, Quantity, i64)>> {
    let read: Vec<(NaiveDateTime, String, i64)> = measurements::table
        .inner_join(deeds::table.on(deeds::id.eq(measurements::deed_id)))
        .left_join(voids::table.on(voids::deed_id.eq(measurements::deed_id)))
        .filter(measurements::lot_id.eq(lot).and(voids::id.is_null()))
        .order((deeds::at, measurements::id))
        .select((deeds::at, measurements::quantity, measurements::millionths))
        .load(conn)?;
    read.into_iter()
        .map(|(at, of, millionths)| Ok((at, quantity(&of)?, millionths)))
        .collect()
}

/// The quantity that a row names.
pub(crate) fn quantity(text: &str) -> Result<Quantity> {
    Quantity::parse(text)
        .ok_or_else(|| Error::Broken(format!("measurements: unknown quantity {text:?}")))
}
