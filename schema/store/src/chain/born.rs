//! Lots as they were when they were made: what was judged again since is put back, as `judged_again` kept it.

use super::rows::JudgedRow;
use crate::conn::Conn;
use crate::error::{Error, Result};
use crate::lots::LotRow;
use crate::tables::judged_again;
use chrono::NaiveDate;
use diesel::prelude::*;
use serde_json::{Map, Value};
use std::collections::HashMap;

/// Keys in one statement.
const AT_ONCE: usize = 10_000;

/// Where each deed is in the chain, by its key.
pub(crate) type Order = HashMap<i32, i32>;

/// What was judged again of some lots, the oldest first.
///
/// # Errors
/// The database is away.
pub(crate) fn judged(
    conn: &mut Conn,
    lots: &[i32],
    order: &Order,
) -> Result<HashMap<i32, Vec<JudgedRow>>> {
    let mut found: HashMap<i32, Vec<JudgedRow>> = HashMap::new();
    for some in lots.chunks(AT_ONCE) {
        let rows: Vec<JudgedRow> = judged_again::table
            .filter(judged_again::lot_id.eq_any(some))
            .order(judged_again::id)
            .select(JudgedRow::as_select())
            .load(conn)?;
        for row in rows {
            found.entry(row.lot_id).or_default().push(row);
        }
    }
    for rows in found.values_mut() {
        let place = |deed: i32| order.get(&deed).copied().unwrap_or(deed);
        rows.sort_by_key(|row| (place(row.deed_id), row.id));
    }
    Ok(found)
}

/// The columns that a row of `judged_again` names, as they were or as they are from then on.
fn columns(row: &JudgedRow, text: &str) -> Result<Map<String, Value>> {
    let bad = |_| Error::bad_row("judged_again", row.id, "does not read");
    serde_json::from_str(text).map_err(bad)
}

/// Puts a lot back to what it was when it was made.
///
/// # Errors
/// The record is damaged.
pub(crate) fn put_back(lot: &mut LotRow, judged: &[JudgedRow]) -> Result<()> {
    for row in judged.iter().rev() {
        for (name, value) in columns(row, &row.was)? {
            set(lot, &name, &value);
        }
    }
    Ok(())
}

fn set(lot: &mut LotRow, name: &str, value: &Value) {
    let text = || value.as_str().map(str::to_owned);
    let number = || value.as_i64().and_then(|number| i32::try_from(number).ok());
    match name {
        "allergens" => lot.allergens = text().unwrap_or_default(),
        "species" => lot.species = text().unwrap_or_default(),
        "origin" => lot.origin = text().unwrap_or_default(),
        "animal" => lot.animal_id = number(),
        "later" => lot.later = text(),
        "use_by" => {
            lot.born_use_by = value.as_str().and_then(|day| day.parse::<NaiveDate>().ok());
        }
        "days_left" => lot.born_days_left = number(),
        _ => {}
    }
}

/// The first column of a lot that is not what was last judged of it, or that was not what the judgement before
/// had made of it.
///
/// # Errors
/// The record is damaged.
pub(crate) fn broken(lot: &LotRow, judged: &[JudgedRow]) -> Result<Option<String>> {
    let mut stands: Map<String, Value> = Map::new();
    for row in judged {
        for (name, was) in columns(row, &row.was)? {
            if stands.get(&name).is_some_and(|last| *last != was) {
                return Ok(Some(name));
            }
        }
        stands.extend(columns(row, &row.now)?);
    }
    let mut like = lot.clone();
    for (name, value) in &stands {
        set(&mut like, name, value);
        if like != *lot {
            return Ok(Some(name.clone()));
        }
    }
    Ok(None)
}
