//! A lot in full.

use super::Reading;
use crate::caller::Caller;
use crate::error::Result;
use crate::wire::answers::LotRead;
use crate::wire::answers::lot::lot_read;
use domain::lot::LotId;
use store::Conn;
use store::family::Extent;

/// Everything that the record tells of the lot that a path names.
///
/// # Errors
/// 422 or 404 for a code that is none; the database is away, or the record is damaged.
pub fn read(app: &Caller<'_>, conn: &mut Conn, code: &str) -> Result<LotRead> {
    let (reading, lot) = Reading::of_code(app.app(), conn, code, Extent::REASONED)?;
    of(app, &reading, lot)
}

/// The same, of a family that was loaded with its ancestors and reasons.
///
/// # Errors
/// The record is damaged.
pub fn of(app: &Caller<'_>, reading: &Reading<'_>, lot: LotId) -> Result<LotRead> {
    let view = reading.view(lot);
    let view = view.ok_or_else(|| store::Error::bad_row("lots", lot.0, "is not there"))?;
    let speech = app.speech(reading.kitchen());
    Ok(lot_read(&view, reading, &speech))
}
