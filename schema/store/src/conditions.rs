//! What lots are from a deed on: proofs that came later, and what a person let go by name.

use crate::conn::Conn;
use crate::db::Tx;
use crate::error::{Error, Result};
use crate::insert_rows;
use crate::tables::{conditions, voids};
use diesel::prelude::*;
use domain::condition::Condition;
use domain::lot::LotId;
use std::collections::HashMap;

/// A change of a lot's condition as the record holds it.
#[derive(Debug, Clone, Queryable, Selectable, Insertable, PartialEq)]
#[diesel(table_name = conditions, treat_none_as_default_value = false)]
#[allow(missing_docs, reason = "the columns, described in the migration")]
pub struct ConditionRow {
    pub id: i32,
    pub deed_id: i32,
    pub lot_id: i32,
    pub condition: String,
}

/// Writes down what lots are from a deed on, and notes on them that there is something to look for.
pub(crate) fn change(tx: &mut Tx<'_>, deed: i32, all: &[(LotId, Condition)]) -> Result<()> {
    if all.is_empty() {
        return Ok(());
    }
    let ids = tx.ids.take(tx.conn, all.len())?;
    let row = |((lot, condition), id): (&(LotId, Condition), i32)| ConditionRow {
        id,
        deed_id: deed,
        lot_id: lot.0,
        condition: condition.to_string(),
    };
    let rows: Vec<ConditionRow> = all.iter().zip(ids).map(row).collect();
    insert_rows!(tx.conn, conditions::table, &rows);
    tx.seal_all(deed, &rows);
    let keys = all.iter().map(|(lot, _)| lot.0);
    crate::stops::mark(tx.conn, keys.collect())?;
    Ok(())
}

/// What lots are now, where a deed that is not voided changed it since they were made.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn of_lots(conn: &mut Conn, lots: &[i32]) -> Result<HashMap<i32, Condition>> {
    let mut found = HashMap::new();
    if lots.is_empty() {
        return Ok(found);
    }
    let rows: Vec<ConditionRow> = conditions::table
        .left_join(voids::table.on(voids::deed_id.eq(conditions::deed_id)))
        .filter(conditions::lot_id.eq_any(lots).and(voids::id.is_null()))
        .order(conditions::id)
        .select(ConditionRow::as_select())
        .load(conn)?;
    for row in rows {
        let condition = Condition::parse(&row.condition);
        let bad = || Error::bad_row("conditions", row.id, "unknown condition");
        found.insert(row.lot_id, condition.ok_or_else(bad)?);
    }
    Ok(found)
}
