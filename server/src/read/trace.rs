//! Back to every source, forward to all that was made from it.

use super::Reading;
use super::says::QuerySays;
use crate::app::App;
use crate::error::{Error, Result};
use crate::wire::answers::{DescendantsRead, OriginsRead};
use crate::wire::answers::{descendants, origins as wire_origins};
use domain::family::{Origins, origins as origins_of};
use domain::lot::{DeedId, LotId};
use store::family::Extent;
use store::lots::LotRow;
use store::trace::{self, Descendant, Forward};
use store::{Conn, animals};
use uuid::Uuid;

/// Where a lot comes from.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn origins(app: &App, conn: &mut Conn, row: &LotRow) -> Result<Origins> {
    let reading = Reading::load(app, conn, &[row.id], Extent::ANCESTORS)?;
    Ok(origins_of(&reading.family, LotId(row.id)))
}

/// The same, as it is answered.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn origins_read(app: &App, conn: &mut Conn, code: &str) -> Result<OriginsRead> {
    let (reading, lot) = Reading::of_code(app, conn, code, Extent::ANCESTORS)?;
    let origins = origins_of(&reading.family, lot);
    Ok(wire_origins::read(&reading.code(lot), &origins))
}

/// All that was made from a lot, without the lot itself.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn of_lot(conn: &mut Conn, row: &LotRow) -> Result<DescendantsRead> {
    let forward = trace::forward(conn, &[row.id])?;
    let has_animal = row.origin()?.has_animal();
    Ok(descendants::read(
        &forward.lots,
        |lot| lot.id != row.id,
        |lot| has_animal.then(|| share(&forward, lot)),
    ))
}

/// All that was made from an animal, with the lots received of it.
///
/// # Errors
/// 404 where there is no such animal.
pub fn of_animal(conn: &mut Conn, id: &str) -> Result<DescendantsRead> {
    let unknown = || Error::not_found(QuerySays::NoAnimal { id: id.to_owned() });
    let uid = Uuid::parse_str(id).map_err(|_| unknown())?;
    let animal = animals::by_uid(conn, uid.as_bytes())?.ok_or_else(unknown)?;
    let starts = animals::received(conn, animal.id)?;
    if starts.is_empty() {
        return Ok(DescendantsRead::default());
    }
    let forward = trace::forward(conn, &starts)?;
    Ok(descendants::read(
        &forward.lots,
        |_| true,
        |lot| match starts.contains(&lot.id) {
            true => Some(1.0),
            false => Some(share(&forward, lot)),
        },
    ))
}

/// The share of the starting lots in what one was made from.
fn share(forward: &Forward, lot: &Descendant) -> f64 {
    let share = forward.step_shares.get(&DeedId(lot.deed_id));
    share.copied().unwrap_or(0.0)
}
