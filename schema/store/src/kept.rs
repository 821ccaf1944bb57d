//! Texts that many rows share, kept once each by what they are.

use crate::conn::Conn;
use crate::db::Tx;
use crate::error::Result;
use crate::tables::kept_texts;
use diesel::prelude::*;
use sha2::{Digest, Sha256};

/// SHA-256 of some bytes, as lower-case hexadecimal.
pub fn hash(bytes: &[u8]) -> String {
    Sha256::digest(bytes)
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect()
}

/// Keeps a text, if it is not kept already; its key.
pub fn keep(tx: &mut Tx<'_>, text: &str) -> Result<i32> {
    let hash = hash(text.as_bytes());
    let known = kept_texts::table
        .filter(kept_texts::hash.eq(&hash))
        .select(kept_texts::id)
        .get_result(tx.conn)
        .optional()?;
    if let Some(known) = known {
        return Ok(known);
    }
    let id = tx.ids.one(tx.conn)?;
    diesel::insert_into(kept_texts::table)
        .values((
            kept_texts::id.eq(id),
            kept_texts::hash.eq(&hash),
            kept_texts::text.eq(text),
        ))
        .execute(tx.conn)?;
    Ok(id)
}

/// A kept text.
pub fn text(conn: &mut Conn, id: i32) -> Result<String> {
    Ok(kept_texts::table
        .find(id)
        .select(kept_texts::text)
        .get_result(conn)?)
}

/// The kept texts that are not what their hash says: none, in a sound record.
pub(crate) fn spoilt(conn: &mut Conn) -> Result<Vec<i32>> {
    let all: Vec<(i32, String, String)> = kept_texts::table.order(kept_texts::id).load(conn)?;
    Ok(all
        .into_iter()
        .filter(|(_, known, text)| *known != hash(text.as_bytes()))
        .map(|(id, _, _)| id)
        .collect())
}
