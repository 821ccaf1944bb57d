//! Texts that many rows share, kept once each by what they are.

use crate::conn::Conn;
use crate::db::Tx;
use crate::error::Result;
use crate::insert_rows;
use crate::tables::kept_texts;
use diesel::prelude::*;
use sha2::{Digest, Sha256};
use std::collections::{HashMap, HashSet};

/// How many texts are looked up in one statement.
const AT_ONCE: usize = 10_000;

/// SHA-256 of some bytes, as lower-case hexadecimal.
pub fn hash(bytes: &[u8]) -> String {
    hexadecimal(&Sha256::digest(bytes))
}

/// Bytes as lower-case hexadecimal.
pub(crate) fn hexadecimal(bytes: &[u8]) -> String {
    let mut text = String::with_capacity(bytes.len() * 2);
    crate::chain::line::hexadecimal(bytes, &mut text);
    text
}

/// Keeps a text, if it is not kept already; its key.
pub fn keep(tx: &mut Tx<'_>, text: &str) -> Result<i32> {
    Ok(keep_all(tx, &[text])?[0])
}

#[derive(Debug, Insertable)]
#[diesel(table_name = kept_texts, treat_none_as_default_value = false)]
struct NewText {
    id: i32,
    hash: String,
    text: String,
}

/// Keeps texts, those that are not kept already; their keys, in their order. Two statements and one more for
/// what is new, however many they are.
pub fn keep_all<T: AsRef<str>>(tx: &mut Tx<'_>, texts: &[T]) -> Result<Vec<i32>> {
    let hashes: Vec<String> = texts
        .iter()
        .map(|text| hash(text.as_ref().as_bytes()))
        .collect();
    let mut known: HashMap<String, i32> = HashMap::new();
    for some in hashes.chunks(AT_ONCE) {
        let found: Vec<(String, i32)> = kept_texts::table
            .filter(kept_texts::hash.eq_any(some))
            .select((kept_texts::hash, kept_texts::id))
            .load(tx.conn)?;
        known.extend(found);
    }
    let mut new: Vec<(&str, &str)> = Vec::new();
    let mut seen: HashSet<&str> = HashSet::new();
    for (hash, text) in hashes.iter().zip(texts) {
        if !known.contains_key(hash) && seen.insert(hash) {
            new.push((hash, text.as_ref()));
        }
    }
    if !new.is_empty() {
        let ids = tx.ids.take(tx.conn, new.len())?;
        let rows = new.iter().zip(ids).map(|((hash, text), id)| NewText {
            id,
            hash: (*hash).to_owned(),
            text: (*text).to_owned(),
        });
        let rows: Vec<NewText> = rows.collect();
        insert_rows!(tx.conn, kept_texts::table, &rows);
        known.extend(rows.into_iter().map(|row| (row.hash, row.id)));
    }
    let keys = hashes.iter().map(|hash| (known[hash], hash.clone()));
    tx.sealing.texts.extend(keys);
    Ok(hashes.iter().map(|hash| known[hash]).collect())
}

/// A kept text.
pub fn text(conn: &mut Conn, id: i32) -> Result<String> {
    Ok(kept_texts::table
        .find(id)
        .select(kept_texts::text)
        .get_result(conn)?)
}

/// The hashes of some kept texts.
pub(crate) fn hashes(conn: &mut Conn, keys: &[i32]) -> Result<HashMap<i32, String>> {
    let mut known = HashMap::new();
    for some in keys.chunks(AT_ONCE) {
        let found: Vec<(i32, String)> = kept_texts::table
            .filter(kept_texts::id.eq_any(some))
            .select((kept_texts::id, kept_texts::hash))
            .load(conn)?;
        known.extend(found);
    }
    Ok(known)
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
