//! What a manager said of the clock: that it is right, whatever was recorded with a wrong one.

use crate::conn::Conn;
use crate::db::Tx;
use crate::error::Result;
use crate::tables::clock_words;
use chrono::NaiveDateTime;
use diesel::dsl::max;
use diesel::prelude::*;

/// A manager's word about the clock.
#[derive(Debug, Clone, Queryable, Selectable, Insertable)]
#[diesel(table_name = clock_words)]
pub struct ClockWord {
    /// Its key.
    pub id: i32,
    /// When it was given, by the clock that is right.
    pub at: NaiveDateTime,
    /// The latest time on record that was recorded ahead, if any was.
    pub ahead_until: Option<NaiveDateTime>,
    /// Who gave it.
    pub person: String,
    /// Why it was doubted, or what was wrong.
    pub why: String,
}

/// The last one.
///
/// # Errors
/// The database is away.
pub fn last(conn: &mut Conn) -> Result<Option<ClockWord>> {
    let words = clock_words::table.order(clock_words::id.desc());
    let last = words.select(ClockWord::as_select()).first(conn);
    Ok(last.optional()?)
}

/// Keeps one; its key is given here.
///
/// # Errors
/// The database is away.
pub fn keep(tx: &mut Tx<'_>, word: &ClockWord) -> Result<()> {
    let last: Option<i32> = clock_words::table
        .select(max(clock_words::id))
        .get_result(tx.conn)?;
    diesel::insert_into(clock_words::table)
        .values(ClockWord {
            id: last.unwrap_or(0) + 1,
            ..word.clone()
        })
        .execute(tx.conn)?;
    Ok(())
}
