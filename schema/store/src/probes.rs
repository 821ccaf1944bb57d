//! Probes: their checks, and the points of the logs that were read with them.

use crate::chain::rows::{CoreReadingRow, ProbeCheckRow};
use crate::conn::Conn;
use crate::db::Tx;
use crate::error::{Error, Result};
use crate::measurements::{Measurement, quantity};
use crate::tables::{core_readings, deeds, probe_checks, voids};
use chrono::{DateTime, NaiveDateTime, Utc};
use diesel::prelude::*;
use domain::heat::Bath;
use domain::words::Quantity;

/// A check as it is on record: when, in what, and what it showed on which scale.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CheckRow {
    /// When.
    pub at: DateTime<Utc>,
    /// In what.
    pub bath: Bath,
    /// The scale.
    pub quantity: Quantity,
    /// In millionths of a degree.
    pub millionths: i64,
}

/// Records a check of a probe; the deed is the check.
///
/// # Errors
/// The database is away or full.
pub fn insert_check(
    tx: &mut Tx<'_>,
    deed: i32,
    probe: i32,
    bath: Bath,
    read: &Measurement,
) -> Result<()> {
    let row = ProbeCheckRow {
        id: deed,
        probe_id: probe,
        bath: bath.as_str().to_owned(),
        quantity: read.quantity.as_str().to_owned(),
        millionths: read.millionths,
    };
    diesel::insert_into(probe_checks::table)
        .values(&row)
        .execute(tx.conn)?;
    tx.seal(deed, &row);
    Ok(())
}

/// The checks of a probe, voided ones left out, the oldest first.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn checks(conn: &mut Conn, probe: i32) -> Result<Vec<CheckRow>> {
    let rows: Vec<(i32, NaiveDateTime, String, String, i64)> = probe_checks::table
        .inner_join(deeds::table.on(deeds::id.eq(probe_checks::id)))
        .left_join(voids::table.on(voids::deed_id.eq(probe_checks::id)))
        .filter(probe_checks::probe_id.eq(probe).and(voids::id.is_null()))
        .order((deeds::at, probe_checks::id))
        .select((
            probe_checks::id,
            deeds::at,
            probe_checks::bath,
            probe_checks::quantity,
            probe_checks::millionths,
        ))
        .load(conn)?;
    rows.into_iter()
        .map(|(id, at, bath, of, millionths)| {
            let bath = Bath::parse(&bath);
            let bath = bath.ok_or_else(|| Error::bad_row("probe_checks", id, "unknown bath"))?;
            Ok(CheckRow {
                at: at.and_utc(),
                bath,
                quantity: quantity(&of)?,
                millionths,
            })
        })
        .collect()
}

/// A point of a heat log.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CorePoint {
    /// When.
    pub at: DateTime<Utc>,
    /// How warm, on which scale.
    pub read: Measurement,
    /// With which probe.
    pub probe: Option<i32>,
}

/// Records the points of a heat log.
///
/// # Errors
/// The database is away or full.
pub fn insert_log(tx: &mut Tx<'_>, deed: i32, points: &[CorePoint]) -> Result<()> {
    let ids = tx.ids.take(tx.conn, points.len())?;
    for (point, id) in points.iter().zip(ids) {
        let row = CoreReadingRow {
            id,
            deed_id: deed,
            at: point.at.naive_utc(),
            quantity: point.read.quantity.as_str().to_owned(),
            millionths: point.read.millionths,
            probe_id: point.probe,
        };
        diesel::insert_into(core_readings::table)
            .values(&row)
            .execute(tx.conn)?;
        tx.seal(deed, &row);
    }
    Ok(())
}

/// The points of the heat log of a deed, the earliest first.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn log(conn: &mut Conn, deed: i32) -> Result<Vec<CorePoint>> {
    let rows: Vec<(NaiveDateTime, String, i64, Option<i32>)> = core_readings::table
        .filter(core_readings::deed_id.eq(deed))
        .order((core_readings::at, core_readings::id))
        .select((
            core_readings::at,
            core_readings::quantity,
            core_readings::millionths,
            core_readings::probe_id,
        ))
        .load(conn)?;
    rows.into_iter()
        .map(|(at, of, millionths, probe)| {
            Ok(CorePoint {
                at: at.and_utc(),
                read: Measurement {
                    quantity: quantity(&of)?,
                    millionths,
                },
                probe,
            })
        })
        .collect()
}
