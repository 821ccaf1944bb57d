//! A lot in full.

use super::LoadedFamily;
use crate::caller::Caller;
use crate::error::Result;
use crate::wire::answers::LotRead;
use crate::wire::answers::lot::lot_read;
use store::Conn;
use store::family::Extent;

/// Everything that the record holds about the lot that a path names.
///
/// # Errors
/// 422 or 404 for what is not a code; the database is away, or the record is damaged.
pub fn read(app: &Caller<'_>, conn: &mut Conn, code: &str) -> Result<LotRead> {
    let (reading, lot) = LoadedFamily::of_code(app.app(), conn, code, Extent::REASONED)?;
    let view = reading.lot_view(lot)?;
    Ok(lot_read(&view, &reading, &app.speech(reading.kitchen())))
}
