//! Why: the links of each chain, as they were when the deed was done.

use crate::conn::Conn;
use crate::db::Tx;
use crate::error::Result;
use crate::on_each;
use crate::tables::{deeds, reasons, voids};
use diesel::prelude::*;
use domain::plan::Reason;

/// A link as the record holds it.
#[derive(Debug, Clone, Queryable, Selectable, Insertable, PartialEq)]
#[diesel(table_name = reasons, treat_none_as_default_value = false)]
#[allow(missing_docs, reason = "the columns, told of in the migration")]
pub struct ReasonRow {
    pub id: i32,
    pub deed_id: i32,
    pub lot_id: i32,
    pub topic: String,
    pub says: String,
    pub rule: String,
    pub source: String,
}

/// Adds the links of a deed, each about a lot.
pub(crate) fn insert(tx: &mut Tx<'_>, deed: i32, links: Vec<(i32, &Reason)>) -> Result<()> {
    let ids = tx.ids.take(tx.conn, links.len())?;
    let row = |((lot, reason), id): ((i32, &Reason), i32)| ReasonRow {
        id,
        deed_id: deed,
        lot_id: lot,
        topic: reason.topic.as_str().to_owned(),
        says: reason.because.says.clone(),
        rule: reason.because.rule.clone(),
        source: reason.because.source.clone(),
    };
    let rows: Vec<ReasonRow> = links.into_iter().zip(ids).map(row).collect();
    for rows in rows.chunks(1_000) {
        on_each!(&mut *tx.conn, c => diesel::insert_into(reasons::table).values(rows).execute(c)?);
    }
    Ok(())
}

/// The lots among these that have links of a kind, each once.
pub fn with_topic(conn: &mut Conn, lots: &[i32], topic: &str) -> Result<Vec<i32>> {
    Ok(reasons::table
        .filter(reasons::lot_id.eq_any(lots).and(reasons::topic.eq(topic)))
        .select(reasons::lot_id)
        .distinct()
        .load(conn)?)
}

/// The links about a lot, in order; those of voided deeds are left out.
pub fn of_lot(conn: &mut Conn, lot: i32) -> Result<Vec<ReasonRow>> {
    Ok(reasons::table
        .inner_join(deeds::table.on(deeds::id.eq(reasons::deed_id)))
        .left_join(voids::table.on(voids::deed_id.eq(reasons::deed_id)))
        .filter(reasons::lot_id.eq(lot).and(voids::id.is_null()))
        .order(reasons::id)
        .select(ReasonRow::as_select())
        .load(conn)?)
}
