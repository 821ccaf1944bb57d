//! What is known of where a received lot came from. A correction adds to it; the last word counts.

use crate::conn::Conn;
use crate::db::Tx;
use crate::error::Result;
use crate::tables::{sources, voids};
use chrono::NaiveDate;
use diesel::prelude::*;
use domain::deed::receive::Bought;
use domain::words::Side;

/// A source as the record holds it.
#[derive(Debug, Clone, Queryable, Selectable, Insertable, PartialEq)]
#[diesel(table_name = sources, treat_none_as_default_value = false)]
#[allow(missing_docs, reason = "the columns, described in the migration")]
pub struct SourceRow {
    pub id: i32,
    pub lot_id: i32,
    pub deed_id: i32,
    pub is_current: bool,
    pub animal_id: Option<i32>,
    pub side: Option<String>,
    pub supplier: Option<String>,
    pub supplier_lot: Option<String>,
    pub packed_on: Option<NaiveDate>,
    pub use_by: Option<NaiveDate>,
    pub gtin: Option<String>,
}

impl SourceRow {
    /// Which part of the animal the lot is.
    pub fn side(&self) -> Option<Side> {
        self.side.as_deref().and_then(Side::parse)
    }

    /// The domain's bought-in source.
    pub fn bought(&self) -> Bought {
        Bought {
            supplier: self.supplier.clone(),
            supplier_lot: self.supplier_lot.clone(),
            packed_on: self.packed_on,
            use_by: self.use_by,
            gtin: self.gtin.clone(),
        }
    }
}

/// What a lot is now known to be of.
#[derive(Debug, Clone)]
pub enum NewSource<'a> {
    /// An animal, and which part of it.
    Animal(i32, Option<Side>),
    /// A supplier's lot.
    Bought(&'a Bought),
}

/// Adds what is now known; what was known before stays visible.
pub fn insert(tx: &mut Tx<'_>, lot: i32, deed: i32, known: &NewSource<'_>) -> Result<()> {
    diesel::update(sources::table.filter(sources::lot_id.eq(lot)))
        .set(sources::is_current.eq(false))
        .execute(tx.conn)?;
    let nothing = Bought::default();
    let (animal, side, bought) = match known {
        NewSource::Animal(animal, side) => (Some(*animal), *side, &nothing),
        NewSource::Bought(bought) => (None, None, *bought),
    };
    let row = SourceRow {
        id: tx.ids.one(tx.conn)?,
        lot_id: lot,
        deed_id: deed,
        is_current: true,
        animal_id: animal,
        side: side.map(|side| side.as_str().to_owned()),
        supplier: bought.supplier.clone(),
        supplier_lot: bought.supplier_lot.clone(),
        packed_on: bought.packed_on,
        use_by: bought.use_by,
        gtin: bought.gtin.clone(),
    };
    diesel::insert_into(sources::table)
        .values(&row)
        .execute(tx.conn)?;
    tx.seal(deed, &row);
    Ok(())
}

/// Everything ever known of a lot's source, the oldest first.
pub fn history(conn: &mut Conn, lot: i32) -> Result<Vec<SourceRow>> {
    let rows = sources::table
        .filter(sources::lot_id.eq(lot))
        .order(sources::id);
    Ok(rows.select(SourceRow::as_select()).load(conn)?)
}

/// What is known now of these lots' sources.
pub fn current(conn: &mut Conn, lots: &[i32]) -> Result<Vec<SourceRow>> {
    let rows = sources::table.filter(
        sources::lot_id
            .eq_any(lots)
            .and(sources::is_current.eq(true)),
    );
    Ok(rows
        .order(sources::lot_id)
        .select(SourceRow::as_select())
        .load(conn)?)
}

/// Makes the last word that was not voided the current one again, after a correction was voided.
pub(crate) fn settle(tx: &mut Tx<'_>, lot: i32) -> Result<Option<SourceRow>> {
    let voided: Vec<i32> = sources::table
        .inner_join(voids::table.on(voids::deed_id.eq(sources::deed_id)))
        .filter(sources::lot_id.eq(lot))
        .select(sources::id)
        .load(tx.conn)?;
    let rows = history(tx.conn, lot)?;
    let Some(last) = rows.into_iter().rev().find(|row| !voided.contains(&row.id)) else {
        return Ok(None);
    };
    diesel::update(sources::table.filter(sources::lot_id.eq(lot)))
        .set(sources::is_current.eq(false))
        .execute(tx.conn)?;
    diesel::update(sources::table.find(last.id))
        .set(sources::is_current.eq(true))
        .execute(tx.conn)?;
    Ok(Some(last))
}
