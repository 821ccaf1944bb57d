//! A lot in full.

use super::Reading;
use crate::caller::Caller;
use crate::error::Result;
use crate::wire::answers::LotRead;
use crate::wire::answers::lot::lot_read;
use domain::lot::LotId;
use store::Conn;
use store::family::Extent;
use store::lots::LotRow;

/// Everything that the record tells of a lot.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn read(app: &Caller<'_>, conn: &mut Conn, row: &LotRow) -> Result<LotRead> {
    let reading = Reading::load(app.app(), conn, &[row.id], Extent::REASONED)?;
    of(app, &reading, row)
}

/// The same, of a family that was loaded with its ancestors and reasons.
///
/// # Errors
/// The record is damaged.
pub fn of(app: &Caller<'_>, reading: &Reading<'_>, row: &LotRow) -> Result<LotRead> {
    let view = reading.view(LotId(row.id));
    let view = view.ok_or_else(|| store::Error::bad_row("lots", row.id, "is not there"))?;
    let speech = app.speech(reading.kitchen());
    Ok(lot_read(&view, reading, &speech))
}
