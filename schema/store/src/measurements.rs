//! Readings: one quantity a row, in millionths of its unit.

use crate::chain::rows::MeasurementRow;
use crate::conn::Conn;
use crate::db::Tx;
use crate::error::{Error, Result};
use crate::insert_rows;
use crate::on_each;
use crate::tables::measurements;
use chrono::NaiveDateTime;
use diesel::prelude::*;
use diesel::sql_query;
use diesel::sql_types::{BigInt, Integer, Text, Timestamp};
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
    let told = Told {
        of_deed: None,
        lot,
        place,
        readings,
        probe,
    };
    insert_all(tx, deed, &[told])
}

/// Readings of a lot or a place that a deed brings.
#[derive(Debug, Clone)]
pub struct Told<'a> {
    /// The deed whose readings of that lot these count instead of, if they do.
    pub of_deed: Option<i32>,
    /// The lot.
    pub lot: Option<i32>,
    /// Or the place.
    pub place: Option<i32>,
    /// What was read.
    pub readings: &'a [Measurement],
    /// The probe that showed the temperatures among them.
    pub probe: Option<i32>,
}

/// Records readings of many lots.
///
/// # Errors
/// The database is away or full.
pub fn insert_all(tx: &mut Tx<'_>, deed: i32, all: &[Told<'_>]) -> Result<()> {
    let count = all.iter().map(|told| told.readings.len()).sum();
    let mut ids = tx.ids.take(tx.conn, count)?.into_iter();
    let mut rows = Vec::with_capacity(count);
    for told in all {
        rows.extend(
            told.readings
                .iter()
                .zip(&mut ids)
                .map(|(reading, id)| MeasurementRow {
                    id,
                    deed_id: deed,
                    lot_id: told.lot,
                    place_id: told.place,
                    quantity: reading.quantity.as_str().to_owned(),
                    millionths: reading.millionths,
                    probe_id: told.probe.filter(|_| reading.quantity.is_warmth()),
                    of_deed_id: told.of_deed,
                }),
        );
    }
    insert_rows!(tx.conn, measurements::table, &rows);
    tx.seal_all(deed, &rows);
    Ok(())
}

/// What a statement that reads `measurements of` joins, so that it meets only what counts: `deeds` is the
/// deed that said it, also where a correction says it anew; voided deeds are left out.
pub(crate) const THAT_COUNT: &str = "JOIN deeds ON deeds.id = COALESCE(of.of_deed_id, of.deed_id)
     LEFT JOIN voids ON voids.deed_id IN (of.deed_id, of.of_deed_id)";

/// What it asks of them: nothing counts instead of them.
pub(crate) const IF_THEY_COUNT: &str = "voids.id IS NULL AND NOT EXISTS (
         SELECT 1 FROM measurements newer LEFT JOIN voids undone ON undone.deed_id = newer.deed_id
         WHERE newer.of_deed_id = COALESCE(of.of_deed_id, of.deed_id) AND newer.lot_id = of.lot_id
             AND newer.deed_id <> of.deed_id AND newer.id > of.id AND undone.id IS NULL)";

/// A reading of a lot.
#[derive(Debug, Clone, QueryableByName)]
pub struct LotReadingRow {
    /// The lot.
    #[diesel(sql_type = Integer)]
    pub lot_id: i32,
    /// The deed that said it.
    #[diesel(sql_type = Integer)]
    pub deed_id: i32,
    /// When that was.
    #[diesel(sql_type = Timestamp)]
    pub at: NaiveDateTime,
    /// What was measured.
    #[diesel(sql_type = Text)]
    pub quantity: String,
    /// In millionths of its unit.
    #[diesel(sql_type = BigInt)]
    pub millionths: i64,
}

/// The readings of lots, the oldest first; voided ones, and those that others count instead of, are left out.
pub fn of_lots(conn: &mut Conn, lots: &[i32]) -> Result<Vec<LotReadingRow>> {
    if lots.is_empty() {
        return Ok(Vec::new());
    }
    let keys: Vec<String> = lots.iter().map(i32::to_string).collect();
    let sql = format!(
        "SELECT of.lot_id, deeds.id AS deed_id, deeds.at, of.quantity, of.millionths
         FROM measurements of {THAT_COUNT} WHERE of.lot_id IN ({}) AND {IF_THEY_COUNT}
         ORDER BY deeds.at, of.id",
        keys.join(", ")
    );
    Ok(on_each!(conn, c => sql_query(sql).load(c)?))
}

/// What a deed read, as it was told then.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn of_deed(conn: &mut Conn, deed: i32) -> Result<Vec<(Quantity, i64)>> {
    let read: Vec<(String, i64)> = measurements::table
        .filter(measurements::deed_id.eq(deed))
        .order(measurements::id)
        .select((measurements::quantity, measurements::millionths))
        .load(conn)?;
    read.into_iter()
        .map(|(of, millionths)| Ok((quantity(&of)?, millionths)))
        .collect()
}

/// The lots that a deed read.
///
/// # Errors
/// The database is away.
pub fn lots_of(conn: &mut Conn, deed: i32) -> Result<Vec<i32>> {
    let read: Vec<Option<i32>> = measurements::table
        .filter(measurements::deed_id.eq(deed))
        .select(measurements::lot_id)
        .load(conn)?;
    Ok(read.into_iter().flatten().collect())
}

/// The readings of a lot, voided ones left out: when, what, how much.
pub fn of_lot(conn: &mut Conn, lot: i32) -> Result<Vec<(NaiveDateTime, Quantity, i64)>> {
    let read = of_lots(conn, &[lot])?.into_iter();
    read.map(|row| Ok((row.at, quantity(&row.quantity)?, row.millionths)))
        .collect()
}

/// The quantity that a row names.
pub fn quantity(text: &str) -> Result<Quantity> {
    Quantity::parse(text)
        .ok_or_else(|| Error::Broken(format!("measurements: unknown quantity {text:?}")))
}
