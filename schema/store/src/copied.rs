//! What came of each copy and of each trial of one, kept beside the record and no part of it.

use crate::conn::Conn;
use crate::db::Tx;
use crate::error::Result;
use crate::tables::copies;
use chrono::NaiveDateTime;
use diesel::dsl::max;
use diesel::prelude::*;

/// A copy was made.
pub const COPY: &str = "copy";
/// A copy was tried: restored, proven and thrown away.
pub const DRILL: &str = "drill";
/// So many are kept; older ones say nothing to anybody.
const MOST: i32 = 400;

/// What came of a copy, or of a trial of one.
#[derive(Debug, Clone, Default, Queryable, Selectable, Insertable)]
#[diesel(table_name = copies, treat_none_as_default_value = false)]
pub struct CopyRow {
    /// Its key.
    pub id: i32,
    /// When it was done.
    pub at: NaiveDateTime,
    /// [`COPY`] or [`DRILL`].
    pub what: String,
    /// What sort of trouble there was, in a word; none where it is good.
    pub trouble: Option<String>,
    /// The file's path.
    pub name: String,
    /// How long the file is.
    pub bytes: i64,
    /// How long it took.
    pub took_ms: i64,
    /// How many deeds there are in it.
    pub deeds: i64,
    /// The end of its chain.
    pub anchor: Option<String>,
    /// What was said of the trouble.
    pub says: Option<String>,
}

/// Keeps one; its key is given here.
///
/// # Errors
/// The database is away.
pub fn keep(tx: &mut Tx<'_>, row: &CopyRow) -> Result<()> {
    let last: Option<i32> = copies::table.select(max(copies::id)).get_result(tx.conn)?;
    let id = last.unwrap_or(0) + 1;
    let row = CopyRow { id, ..row.clone() };
    diesel::insert_into(copies::table)
        .values(&row)
        .execute(tx.conn)?;
    diesel::delete(copies::table.filter(copies::id.le(id - MOST))).execute(tx.conn)?;
    Ok(())
}

/// The last so many, the newest first.
///
/// # Errors
/// The database is away.
pub fn last(conn: &mut Conn, most: i64) -> Result<Vec<CopyRow>> {
    let all = copies::table.order(copies::id.desc()).limit(most);
    Ok(all.select(CopyRow::as_select()).load(conn)?)
}

/// The last good one of a sort.
///
/// # Errors
/// The database is away.
pub fn last_good(conn: &mut Conn, what: &str) -> Result<Option<CopyRow>> {
    let good = copies::table
        .filter(copies::what.eq(what).and(copies::trouble.is_null()))
        .order(copies::id.desc())
        .select(CopyRow::as_select());
    Ok(good.first(conn).optional()?)
}
