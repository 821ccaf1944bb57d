//! Running numbers: locked, read and advanced inside the deed that uses them.

use crate::db::Tx;
use crate::error::{Error, Result};
use crate::on_each;
use crate::tables::series;
use diesel::prelude::*;
use domain::code::LotCode;
use domain::series::Series;

/// Locks a key until the end of the transaction and returns its count; 0 when it is new.
pub fn lock(tx: &mut Tx<'_>, key: &str) -> Result<u32> {
    let id = tx.ids.one(tx.conn)?;
    // By diesel's own words, not as a text: so the prepared statement is kept.
    let next: i32 = on_each!(&mut *tx.conn, c => {
        diesel::insert_into(series::table)
            .values((series::id.eq(id), series::key.eq(key), series::next.eq(0)))
            .on_conflict(series::key)
            .do_update()
            .set(series::next.eq(series::next))
            .returning(series::next)
            .get_result(c)?
    });
    u32::try_from(next).map_err(|_| Error::bad_row("series", id, "next is below zero"))
}

/// Moves a locked key on.
pub fn advance(tx: &mut Tx<'_>, key: &str, next: u32) -> Result<()> {
    let next = i32::try_from(next)
        .map_err(|_| Error::Broken(format!("series {key} has run out of numbers")))?;
    diesel::update(series::table.filter(series::key.eq(key)))
        .set(series::next.eq(next))
        .execute(tx.conn)?;
    Ok(())
}

/// The next `count` codes, from the first series that has any, then from the next, and so on.
pub fn codes(tx: &mut Tx<'_>, wanted: &[Series], count: usize) -> Result<Vec<LotCode>> {
    let mut codes = Vec::with_capacity(count);
    let mut rest = wanted.iter().cloned();
    let mut current = rest.next();
    while let Some(series) = current.filter(|_| codes.len() < count) {
        let key = series.key();
        let stands = lock(tx, &key)?;
        let (some, next) = series.take(stands, count - codes.len());
        advance(tx, &key, next)?;
        codes.extend(some);
        current = rest.next().or_else(|| series.after());
    }
    if codes.len() < count {
        return Err(Error::Broken("no series has any number left".into()));
    }
    Ok(codes)
}
