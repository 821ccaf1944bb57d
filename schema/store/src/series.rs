//! Running numbers: locked, read and advanced inside the deed that uses them.

use crate::conn::Conn;
use crate::copies::LETTERS_AT_ONCE;
use crate::db::Tx;
use crate::error::{Error, Result};
use crate::on_each;
use crate::prepared::Prepared;
use crate::tables::series;
use diesel::prelude::*;
use domain::code::{LotCode, NUMBERS};
use domain::series::Series;

/// The key that counts how often the record has been restored from a copy.
pub(crate) const RESTORED: &str = "restored";

/// What runs under a key.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Sort {
    /// The numbers of one animal: `BRC26159A`.
    Animal,
    /// The letters of a farm's day: `BRC26159/`.
    Letters,
    /// The numbers of a kitchen's day, every letter in turn: `CHK26159`.
    Day,
    /// Whatever else is counted.
    Other,
}

/// What runs under this key.
pub(crate) fn sort_of(key: &str) -> Sort {
    let letters = key.bytes().take_while(u8::is_ascii_uppercase).count();
    let rest = key.as_bytes().get(letters..).unwrap_or_default();
    let (day, after) = rest.split_at(rest.len().min(5));
    if !(2..=3).contains(&letters) || day.len() < 5 || !day.iter().all(u8::is_ascii_digit) {
        return Sort::Other;
    }
    match after {
        b"" => Sort::Day,
        b"/" => Sort::Letters,
        [_] => Sort::Animal,
        _ => Sort::Other,
    }
}

/// How often the record has been restored from a copy.
///
/// # Errors
/// The database is away.
pub(crate) fn restored(conn: &mut Conn) -> Result<u32> {
    let times: Option<i32> = series::table
        .filter(series::key.eq(RESTORED))
        .select(series::next)
        .get_result(conn)
        .optional()?;
    Ok(times.map_or(0, i32::unsigned_abs))
}

/// Where a key begins that nobody has used in this record. In a restored one others may have used it since the copy
/// was made.
fn first(key: &str, restored: u32) -> i32 {
    let passed = restored * LETTERS_AT_ONCE;
    let first = match sort_of(key) {
        Sort::Letters => passed.min(32),
        Sort::Day => passed * NUMBERS,
        Sort::Animal | Sort::Other => 0,
    };
    i32::try_from(first).unwrap_or(i32::MAX)
}

/// Locks a key until the end of the transaction and returns its count; where it begins when it is new.
pub fn lock(tx: &mut Tx<'_>, key: &str) -> Result<u32> {
    let id = tx.ids.one(tx.conn)?;
    let first = first(key, tx.restored);
    // By diesel's own words, not as a text: so the prepared statement is kept.
    let next: i32 = on_each!(&mut *tx.conn, c => {
        diesel::insert_into(series::table)
            .values((series::id.eq(id), series::key.eq(key), series::next.eq(first)))
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
    Prepared(diesel::update(series::table.filter(series::key.eq(key))).set(series::next.eq(next)))
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keys_are_told_apart_and_new_ones_of_a_restored_record_begin_further_on() {
        for (key, sort, begins) in [
            ("BRC26159A", Sort::Animal, 0),
            ("BRC261590", Sort::Animal, 0),
            ("BRC26159/", Sort::Letters, 8),
            ("CHK26159", Sort::Day, 8_192),
            ("QU26159", Sort::Day, 8_192),
            ("lists", Sort::Other, 0),
            ("restored", Sort::Other, 0),
        ] {
            assert_eq!(sort_of(key), sort, "{key}");
            assert_eq!((first(key, 0), first(key, 1)), (0, begins), "{key}");
        }
    }
}
