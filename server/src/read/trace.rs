//! Back to every source, forward to all that was made from it.

use super::LoadedFamily;
use super::says::QuerySays;
use crate::app::App;
use crate::error::{Error, Result};
use domain::family::{Descendant, Descendants, Origins, origins as origins_of};
use domain::lot::{DeedId, LotId};
use store::family::Extent;
use store::lots::LotRow;
use store::trace::{self, Forward, Reached};
use store::{Conn, animals};
use uuid::Uuid;

/// Where a lot comes from.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn origins(app: &App, conn: &mut Conn, row: &LotRow) -> Result<Origins> {
    let reading = LoadedFamily::load(app, conn, &[row.id], Extent::ANCESTORS)?;
    Ok(origins_of(&reading.family, LotId(row.id)))
}

/// The lot that a path names, and where it comes from.
///
/// # Errors
/// 422 or 404 for what is not a code; the database is away, or the record is damaged.
pub fn origins_named(app: &App, conn: &mut Conn, code: &str) -> Result<(String, Origins)> {
    let (reading, lot) = LoadedFamily::of_code(app, conn, code, Extent::ANCESTORS)?;
    Ok((reading.code(lot), origins_of(&reading.family, lot)))
}

/// All that was made from a lot, without the lot itself.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn of_lot(conn: &mut Conn, row: &LotRow) -> Result<Descendants> {
    let forward = trace::forward(conn, &[row.id])?;
    let has_animal = row.origin()?.has_animal();
    let lots = forward.lots.iter().filter(|lot| lot.id != row.id);
    lots.map(|lot| descendant(&forward, lot, has_animal.then(|| share(&forward, lot))))
        .collect()
}

/// All that was made from an animal, with the lots received of it.
///
/// # Errors
/// 404 where there is no such animal.
pub fn of_animal(conn: &mut Conn, id: &str) -> Result<Descendants> {
    let unknown = || Error::not_found(QuerySays::NoAnimal { id: id.to_owned() });
    let uid = Uuid::parse_str(id).map_err(|_| unknown())?;
    let animal = animals::by_uid(conn, uid.as_bytes())?.ok_or_else(unknown)?;
    let starts = animals::received(conn, animal.id)?;
    let once = animals::once_of(conn, &[animal.id])?.remove(&animal.id);
    let once = once.unwrap_or_default();
    if starts.is_empty() {
        return Ok(Descendants {
            once,
            ..Descendants::default()
        });
    }
    let forward = trace::forward(conn, &starts)?;
    let share = |lot: &Reached| match starts.contains(&lot.id) {
        true => 1.0,
        false => share(&forward, lot),
    };
    let lots = forward.lots.iter();
    let all: Result<Descendants> = lots
        .map(|lot| descendant(&forward, lot, Some(share(lot))))
        .collect();
    Ok(Descendants { once, ..all? })
}

fn descendant(forward: &Forward, lot: &Reached, share: Option<f64>) -> Result<Descendant> {
    Ok(Descendant {
        code: lot.code()?,
        product: lot.product.clone(),
        went: lot.went(),
        place: forward.place(lot).map(str::to_owned),
        share,
        note: lot.note.clone(),
    })
}

/// The share of the starting lots in what one was made from.
fn share(forward: &Forward, lot: &Reached) -> f64 {
    let share = forward.step_shares.get(&DeedId(lot.deed_id));
    share.copied().unwrap_or(0.0)
}
