//! What stands in places now, and which packs nobody finds.

use crate::conn::Conn;
use crate::error::Result;
use crate::on_each;
use crate::packs::PackRow;
use crate::tables::{deeds, pack_events, packs};
use chrono::{NaiveDate, NaiveDateTime};
use diesel::prelude::*;
use diesel::sql_query;
use diesel::sql_types::{BigInt, Integer, Text};
use domain::words::{Account, Being};

/// The packs that stand in a place with something left in them, by lot and number.
///
/// # Errors
/// The database is away.
pub fn in_place(conn: &mut Conn, place: i32) -> Result<Vec<PackRow>> {
    Ok(packs::table
        .filter(packs::place_id.eq(place).and(packs::left_mg.gt(0)))
        .order((packs::lot_id, packs::number))
        .select(PackRow::as_select())
        .load(conn)?)
}

/// What of a lot stands in a place.
#[derive(Debug, QueryableByName)]
pub struct StandsThere {
    /// The place.
    #[diesel(sql_type = Integer)]
    pub place_id: i32,
    /// The lot.
    #[diesel(sql_type = Integer)]
    pub lot_id: i32,
    /// The version of its product.
    #[diesel(sql_type = Integer)]
    pub version_id: i32,
    /// The kind of the deed that made it.
    #[diesel(sql_type = Text)]
    pub made_by: String,
    /// How many packs it was born with.
    #[diesel(sql_type = Integer)]
    pub pack_count: i32,
    /// How many of them stand there.
    #[diesel(sql_type = BigInt)]
    pub packs: i64,
}

/// What of each lot stands in each place, or in one.
///
/// # Errors
/// The database is away.
pub fn counted(conn: &mut Conn, place: Option<i32>) -> Result<Vec<StandsThere>> {
    let there = place.map_or_else(String::new, |place| format!("AND packs.place_id = {place}"));
    let sql = format!(
        "SELECT packs.place_id, packs.lot_id, lots.version_id, deeds.kind AS made_by, lots.pack_count,
             COUNT(*) AS packs
         FROM packs JOIN lots ON lots.id = packs.lot_id JOIN deeds ON deeds.id = lots.deed_id
         WHERE packs.left_mg > 0 {there}
         GROUP BY packs.place_id, packs.lot_id, lots.version_id, deeds.kind, lots.pack_count"
    );
    Ok(on_each!(conn, c => sql_query(sql).load(c)?))
}

/// The packs that were counted as missing and not found since, those of the newest lots first.
///
/// # Errors
/// The database is away.
pub fn missing(conn: &mut Conn, limit: i64) -> Result<Vec<PackRow>> {
    Ok(packs::table
        .filter(packs::being.eq(Being::Missing.as_str()))
        .order((packs::lot_id.desc(), packs::number))
        .limit(limit)
        .select(PackRow::as_select())
        .load(conn)?)
}

/// The packs that a count since a moment did not find, and nobody since, each with the day of that count; by lot and
/// number.
///
/// # Errors
/// The database is away.
pub fn missing_since(conn: &mut Conn, since: NaiveDateTime) -> Result<Vec<(PackRow, NaiveDate)>> {
    let mut found: Vec<(PackRow, NaiveDate)> = deeds::table
        .inner_join(pack_events::table.on(pack_events::deed_id.eq(deeds::id)))
        .inner_join(packs::table.on(packs::id.eq(pack_events::pack_id)))
        .filter(deeds::at.gt(since))
        .filter(pack_events::account.eq(Account::Unexplained.as_str()))
        .filter(packs::being.eq(Being::Missing.as_str()))
        .order((packs::lot_id, packs::number, deeds::at.desc()))
        .select((PackRow::as_select(), deeds::day))
        .load(conn)?;
    found.dedup_by_key(|(pack, _)| pack.id);
    Ok(found)
}
