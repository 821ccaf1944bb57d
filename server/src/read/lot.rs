//! A lot in full.

use super::Reading;
use crate::caller::Caller;
use crate::error::Result;
use crate::wire::answers::LotRead;
use crate::wire::answers::lot::lot_read;
use store::Conn;
use store::family::Extent;

/// Everything that the record tells of the lot that a path names.
///
/// # Errors
/// 422 or 404 for a code that is none; the database is away, or the record is damaged.
pub fn read(app: &Caller<'_>, conn: &mut Conn, code: &str) -> Result<LotRead> {
    let (reading, lot) = Reading::of_code(app.app(), conn, code, Extent::REASONED)?;
    let view = reading.told(lot)?;
    Ok(lot_read(&view, &reading, &app.speech(reading.kitchen())))
}
