//! The links of the chain: what each says, what its head is, and how one is put at the end.

use super::line::hexadecimal;
use super::seal::Root;
use crate::conn::Conn;
use crate::error::Result;
use crate::insert_rows;
use crate::prepared::Prepared;
use crate::tables::chain;
use diesel::dsl::max;
use diesel::prelude::*;
use diesel::sql_query;
use sha2::{Digest, Sha256};

/// What every link begins with: how it is written.
const FORM: &str = "gambrel chain 1";
/// The head before the first link.
pub(crate) const BEFORE: &str = "0000000000000000000000000000000000000000000000000000000000000000";

/// A link as the record holds it.
#[derive(Debug, Clone, Queryable, Selectable, Insertable, PartialEq)]
#[diesel(table_name = chain, treat_none_as_default_value = false)]
pub(crate) struct Link {
    /// Its number, from 1, without a gap.
    pub(crate) id: i32,
    /// `deed`, or the table of a row that stands by itself.
    pub(crate) kind: String,
    /// The key of the deed, or of the row.
    pub(crate) of_id: i32,
    /// Was it sealed after it was recorded?
    pub(crate) late: bool,
    /// What it is about, table by table.
    pub(crate) parts: String,
    /// The digest of it and of everything before.
    pub(crate) head: String,
}

/// The rows of one table in a link.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Part {
    /// The table.
    pub(crate) table: String,
    /// How many rows.
    pub(crate) count: u32,
    /// The SHA-256 of their lines.
    pub(crate) digest: String,
}

/// Parts as a link keeps them: a line each.
pub(crate) fn written(parts: &[Part]) -> String {
    let line = |part: &Part| format!("{} {} {}\n", part.table, part.count, part.digest);
    parts.iter().map(line).collect()
}

/// Parts as they were written; none where it is no such text.
pub(crate) fn read(parts: &str) -> Option<Vec<Part>> {
    let part = |line: &str| {
        let mut words = line.split(' ');
        let (table, count, digest) = (words.next()?, words.next()?, words.next()?);
        Some(Part {
            table: table.to_owned(),
            count: count.parse().ok()?,
            digest: digest.to_owned(),
        })
    };
    parts.lines().map(part).collect()
}

impl Link {
    /// What its head must be.
    pub(crate) fn head_after(&self, before: &str) -> String {
        let (id, kind, of, parts) = (self.id, &self.kind, self.of_id, &self.parts);
        let late = if self.late { "late" } else { "at once" };
        let text = format!("{FORM}\n{id}\n{before}\n{kind} {of}\n{late}\n{parts}");
        let mut head = String::with_capacity(64);
        hexadecimal(&Sha256::digest(text), &mut head);
        head
    }
}

/// The end of the chain: the number of its last link, and the head there.
///
/// # Errors
/// The database is away.
pub(crate) fn end(conn: &mut Conn) -> Result<Option<(i32, String)>> {
    // SQLite prepares a statement with a limit anew each time.
    if let Conn::Pg(conn) = conn {
        let end = chain::table.order(chain::id.desc()).limit(1);
        return Ok(end
            .select((chain::id, chain::head))
            .get_result(conn)
            .optional()?);
    }
    let Some(last) = chain::table
        .select(max(chain::id))
        .get_result::<Option<i32>>(conn)?
    else {
        return Ok(None);
    };
    let end = chain::table.find(last).select((chain::id, chain::head));
    Ok(Some(end.get_result(conn)?))
}

/// The head at a link, if there is that link.
///
/// # Errors
/// The database is away.
pub(crate) fn head_at(conn: &mut Conn, number: i32) -> Result<Option<String>> {
    let head = chain::table.find(number).select(chain::head);
    Ok(head.get_result(conn).optional()?)
}

/// Puts links at the end. On PostgreSQL the end belongs to one transaction at a time, from here until it has
/// committed: nothing else is waited for in between, and whoever comes next reads the end anew.
///
/// # Errors
/// The database is away or full.
pub(crate) fn append(conn: &mut Conn, about: &[(Root, Vec<Part>)], late: bool) -> Result<()> {
    if let Conn::Pg(conn) = conn {
        Prepared(sql_query("SELECT pg_advisory_xact_lock(7025)")).execute(conn)?;
    }
    let (mut last, mut head) = end(conn)?.unwrap_or((0, BEFORE.to_owned()));
    let mut links = Vec::with_capacity(about.len());
    for (root, parts) in about {
        last += 1;
        let mut link = Link {
            id: last,
            kind: root.kind.to_owned(),
            of_id: root.of,
            late,
            parts: written(parts),
            head: String::new(),
        };
        link.head = link.head_after(&head);
        head.clone_from(&link.head);
        links.push(link);
    }
    insert_rows!(conn, chain::table, &links);
    Ok(())
}
