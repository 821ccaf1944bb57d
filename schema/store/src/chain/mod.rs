//! The chain: every deed carries the digest of its own rows and of everything before it.
//!
//! A **line** is a row written as one object of JSON, without blanks, with the columns that `rows` names, in that
//! order: integers in digits, days as `"2026-03-09"`, times in UTC as `"2026-03-09T04:05:06.007008Z"`, ids of
//! devices in hexadecimal, texts with `"`, `\` and what is below a blank escaped and nothing else.
//!
//! The **parts** of a link have a line for each table, in the order of their names: the table, how many rows the
//! link is about, and the SHA-256 of their lines in the order of their keys, each with a line feed behind it.
//!
//! The **head** of a link is the SHA-256 of these lines: `gambrel chain 1`; its number; the head before it (64
//! zeros before the first); what it is of (`deed 1234`, or a table and a key); `at once`, or `late` where it was
//! sealed after it was recorded; its parts.
//!
//! A link is written by the transaction that writes its rows, as its last act before it commits: so no deed is ever
//! answered that is outside the chain. On PostgreSQL, where deeds run at once, the end of the chain has one lock,
//! taken last and held until the commit; deeds are in the chain in the order in which they committed.
//!
//! Columns that change later (what is left of a lot, where a pack is) are in no line. They follow from lines, and
//! `check` works them out.

mod audit;
mod before;
mod born;
mod columns;
pub(crate) mod line;
mod link;
mod read;
pub(crate) mod rows;
mod seal;

pub use audit::{Anchor, Chain, check};
pub(crate) use before::{is_due, seal_what_is_due};
pub(crate) use seal::Sealing;

use crate::conn::Conn;
use crate::db::Tx;
use crate::error::Result;
use crate::kept;
use crate::prints::PrintRow;
use rows::PrintLine;
use std::collections::HashMap;

/// The end of the chain, to be kept outside; none while nothing is on record.
///
/// # Errors
/// The database is away.
pub fn anchor(conn: &mut Conn) -> Result<Option<Anchor>> {
    let end = link::end(conn)?;
    Ok(end.map(|(number, head)| Anchor { number, head }))
}

/// Does the chain go through an anchor? Whether the chain itself is whole says [`check`].
///
/// # Errors
/// The database is away.
pub fn goes_through(conn: &mut Conn, anchor: &Anchor) -> Result<bool> {
    Ok(link::head_at(conn, anchor.number)?.as_deref() == Some(anchor.head.as_str()))
}

/// Takes prints into the chain, with what the texts are that they point at.
pub(crate) fn seal_prints(tx: &mut Tx<'_>, rows: &[PrintRow]) -> Result<()> {
    let unknown = rows.iter().flat_map(texts_of);
    let mut unknown: Vec<i32> = unknown
        .filter(|text| !tx.sealing.texts.contains_key(text))
        .collect();
    unknown.sort_unstable();
    unknown.dedup();
    if !unknown.is_empty() {
        let known = kept::hashes(tx.conn, &unknown)?;
        tx.sealing.texts.extend(known);
    }
    let texts = std::mem::take(&mut tx.sealing.texts);
    for row in rows {
        tx.seal(row.deed_id, &line_of(row, &texts));
    }
    tx.sealing.texts = texts;
    Ok(())
}

/// The keys of the texts that a print points at.
fn texts_of(row: &PrintRow) -> impl Iterator<Item = i32> {
    [Some(row.form_id), Some(row.base_id), row.claims_id]
        .into_iter()
        .flatten()
}

fn line_of<'a>(row: &'a PrintRow, texts: &'a HashMap<i32, String>) -> PrintLine<'a> {
    let hash = |key: i32| texts.get(&key).map_or("", String::as_str);
    PrintLine {
        id: row.id,
        row,
        form: hash(row.form_id),
        base: hash(row.base_id),
        claims: row.claims_id.map(hash),
    }
}
