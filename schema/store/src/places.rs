//! Places as they were cleaned, worked at and read, and what lies frozen: a statement each for all of them.

use crate::conn::Conn;
use crate::error::Result;
use crate::measurements::{THAT_COUNT, quantity};
use crate::on_each;
use crate::tables::{deeds, entries, lots, packs, versions, voids};
use chrono::{NaiveDate, NaiveDateTime};
use diesel::dsl::{count_star, max};
use diesel::prelude::*;
use diesel::sql_query;
use diesel::sql_types::{BigInt, Date, Integer, Text, Timestamp};
use domain::words::{DeedKind, Quantity, State};
use std::collections::{HashMap, HashSet};

/// When each place was last cleaned down, by its key.
pub fn cleaned(conn: &mut Conn) -> Result<Vec<(Option<i32>, Option<NaiveDateTime>)>> {
    Ok(deeds::table
        .left_join(voids::table.on(voids::deed_id.eq(deeds::id)))
        .filter(deeds::kind.eq(DeedKind::CleanDown.as_str()))
        .filter(voids::id.is_null())
        .group_by(deeds::place_id)
        .select((deeds::place_id, max(deeds::at)))
        .load(conn)?)
}

/// The lots made at places since a moment: the place's key, when, and the version of the product.
pub fn made_since(
    conn: &mut Conn,
    since: NaiveDateTime,
) -> Result<Vec<(Option<i32>, NaiveDateTime, i32)>> {
    Ok(lots::table
        .inner_join(deeds::table.on(deeds::id.eq(lots::deed_id)))
        .filter(deeds::at.gt(since).and(lots::voided.eq(false)))
        .filter(deeds::place_id.is_not_null())
        .filter(deeds::kind.ne(DeedKind::Receive.as_str()))
        .select((deeds::place_id, deeds::at, lots::version_id))
        .distinct()
        .load(conn)?)
}

/// A reading of a place.
#[derive(Debug, Clone, Copy)]
pub struct PlaceRead {
    /// When.
    pub at: NaiveDateTime,
    /// On which scale.
    pub quantity: Quantity,
    /// How warm, in millionths of a degree.
    pub millionths: i64,
}

#[derive(QueryableByName)]
struct PlaceReadRow {
    #[diesel(sql_type = Integer)]
    place_id: i32,
    #[diesel(sql_type = Timestamp)]
    at: NaiveDateTime,
    #[diesel(sql_type = Text)]
    quantity: String,
    #[diesel(sql_type = BigInt)]
    millionths: i64,
}

/// The readings of places' warmth that count: those that were told by themselves, and those of a failure of the place.
/// Of each the place, when, on which scale, how warm, and its key.
fn readings(what: &str) -> [String; 2] {
    let (celsius, fahrenheit) = (Quantity::Celsius.as_str(), Quantity::Fahrenheit.as_str());
    let (measure, failed) = (DeedKind::Measure.as_str(), DeedKind::PlaceFailed.as_str());
    [
        format!(
            "SELECT of.place_id, deeds.at, of.quantity, of.millionths, of.id
             FROM measurements of {THAT_COUNT}
             WHERE of.place_id {what} AND of.lot_id IS NULL AND deeds.kind = '{measure}'
                 AND of.quantity IN ('{celsius}', '{fahrenheit}') AND voids.id IS NULL AND NOT EXISTS (
                     SELECT 1 FROM measurements newer LEFT JOIN voids undone ON undone.deed_id = newer.deed_id
                     WHERE newer.of_deed_id = deeds.id AND newer.deed_id <> of.deed_id AND newer.id > of.id
                         AND undone.id IS NULL)"
        ),
        format!(
            "SELECT deeds.place_id, of.at, of.quantity, of.millionths, of.id
             FROM deeds JOIN core_readings of ON of.deed_id = deeds.id
             LEFT JOIN voids ON voids.deed_id = deeds.id
             WHERE deeds.kind = '{failed}' AND deeds.place_id {what} AND voids.id IS NULL"
        ),
    ]
}

/// How warm each place was when it was read last, by its key.
pub fn read(conn: &mut Conn) -> Result<HashMap<i32, PlaceRead>> {
    let all = readings("IS NOT NULL").join(" UNION ALL ");
    let sql = format!(
        "SELECT place_id, at, quantity, millionths FROM (
             SELECT place_id, at, quantity, millionths, ROW_NUMBER() OVER (
                 PARTITION BY place_id ORDER BY at DESC, id DESC) AS nth FROM ({all}) told
         ) latest WHERE nth = 1"
    );
    let rows: Vec<PlaceReadRow> = on_each!(conn, c => sql_query(sql).load(c)?);
    rows.into_iter().map(PlaceReadRow::read).collect()
}

/// How warm a place was when it was read last. Of those that were entered last: what was told later than it happened is
/// among them, and a scan does not read years.
pub fn read_last(conn: &mut Conn, place: i32) -> Result<Option<PlaceRead>> {
    let [told, failed] = readings("= $1");
    let last = |of: &str| format!("SELECT * FROM ({of} ORDER BY of.id DESC LIMIT 8)");
    let sql = format!(
        "SELECT place_id, at, quantity, millionths FROM (
             {} AS told UNION ALL {} AS failed) latest ORDER BY id DESC",
        last(&told),
        last(&failed)
    );
    let rows: Vec<PlaceReadRow> =
        on_each!(conn, c => sql_query(sql).bind::<Integer, _>(place).load(c)?);
    // The newest first: of two at the same time the one that was entered later.
    let last = rows.into_iter().rev().max_by_key(|row| row.at);
    Ok(last
        .map(PlaceReadRow::read)
        .transpose()?
        .map(|(_, read)| read))
}

/// The readings of a place's warmth, the oldest first; voided ones, and those that others count instead of, are left out,
/// and what a step there read of its food.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn read_of(conn: &mut Conn, place: i32) -> Result<Vec<PlaceRead>> {
    let all = readings("= $1").join(" UNION ALL ");
    let sql =
        format!("SELECT place_id, at, quantity, millionths FROM ({all}) told ORDER BY at, id");
    let rows: Vec<PlaceReadRow> =
        on_each!(conn, c => sql_query(sql).bind::<Integer, _>(place).load(c)?);
    rows.into_iter()
        .map(|row| row.read().map(|(_, read)| read))
        .collect()
}

impl PlaceReadRow {
    fn read(self) -> Result<(i32, PlaceRead)> {
        let read = PlaceRead {
            at: self.at,
            quantity: quantity(&self.quantity)?,
            millionths: self.millionths,
        };
        Ok((self.place_id, read))
    }
}

/// The place where most frozen packs lie, by its key.
pub fn where_frozen(conn: &mut Conn) -> Result<Option<i32>> {
    let places: Vec<(i32, i64)> = packs::table
        .filter(
            packs::state
                .eq(State::Frozen.as_str())
                .and(packs::left_mg.gt(0)),
        )
        .group_by(packs::place_id)
        .select((packs::place_id, count_star()))
        .load(conn)?;
    let most = places.into_iter().max_by_key(|(_, packs)| *packs);
    Ok(most.map(|(place, _)| place))
}

/// The place where what was cut off the last carcass was put, by its key.
pub fn cuts_put_last(conn: &mut Conn) -> Result<Option<i32>> {
    Ok(lots::table
        .inner_join(deeds::table.on(deeds::id.eq(lots::deed_id)))
        .filter(deeds::kind.eq(DeedKind::BreakDown.as_str()))
        .filter(lots::voided.eq(false))
        .order((deeds::id.desc(), lots::id))
        .select(lots::born_place_id)
        .first(conn)
        .optional()?)
}

/// Is all that lies at a place frozen, and is there anything, a lot of one's own left out?
pub fn holds_only_frozen(conn: &mut Conn, place: i32, but: i32) -> Result<bool> {
    let states: Vec<String> = packs::table
        .filter(packs::place_id.eq(place).and(packs::left_mg.gt(0)))
        .filter(packs::lot_id.ne(but))
        .select(packs::state)
        .distinct()
        .load(conn)?;
    Ok(states == [State::Frozen.as_str()])
}

/// What lies frozen at one place.
#[derive(Debug, QueryableByName)]
pub struct FrozenRow {
    /// The place, by its key.
    #[diesel(sql_type = Integer)]
    pub place_id: i32,
    /// How many packs.
    #[diesel(sql_type = BigInt)]
    pub packs: i64,
    /// How much is left in them.
    #[diesel(sql_type = BigInt)]
    pub mg: i64,
}

/// The place where most packs lie frozen; nothing once a pack was thawed on that day.
pub fn frozen_untouched(conn: &mut Conn, day: NaiveDate) -> Result<Option<FrozenRow>> {
    let sql = "SELECT place_id, COUNT(*) AS packs, CAST(SUM(left_mg) AS BIGINT) AS mg FROM packs
        WHERE state = 'frozen' AND left_mg > 0 AND NOT EXISTS (
            SELECT 1 FROM pack_events JOIN deeds ON deeds.id = pack_events.deed_id AND deeds.kind = 'move'
            LEFT JOIN voids ON voids.deed_id = deeds.id
            WHERE pack_events.day = $1 AND pack_events.state = 'chilled' AND voids.id IS NULL)
        GROUP BY place_id ORDER BY COUNT(*) DESC, place_id LIMIT 1";
    let rows: Vec<FrozenRow> = on_each!(conn, c => sql_query(sql).bind::<Date, _>(day).load(c)?);
    Ok(rows.into_iter().next())
}

#[derive(Debug, QueryableByName)]
struct PackedAs {
    #[diesel(sql_type = Text)]
    code: String,
}

/// The products that steps of a kind made, of lots of a product where one is given; what was made last first.
pub fn made_by(conn: &mut Conn, kind: &str, of: Option<&str>) -> Result<Vec<String>> {
    let sql = "SELECT made.code AS code FROM lots
        JOIN versions ON versions.id = lots.version_id
        JOIN entries made ON made.id = versions.entry_id
        JOIN deeds ON deeds.id = lots.deed_id AND deeds.kind = $1
        JOIN pack_events ON pack_events.deed_id = deeds.id AND pack_events.account = 'used'
        JOIN lots used ON used.id = pack_events.lot_id
        JOIN versions was ON was.id = used.version_id
        JOIN entries known ON known.id = was.entry_id
        WHERE NOT lots.voided AND (known.code = $2 OR $2 = '')
        GROUP BY made.code ORDER BY MAX(deeds.id) DESC LIMIT 12";
    let of = of.unwrap_or_default();
    let rows: Vec<PackedAs> = on_each!(conn, c => sql_query(sql)
        .bind::<Text, _>(kind)
        .bind::<Text, _>(of)
        .load(c)?);
    Ok(rows.into_iter().map(|row| row.code).collect())
}

/// Where steps of a kind were done last, by the place's key.
pub fn worked_at(conn: &mut Conn, kind: &str) -> Result<Option<i32>> {
    let last: Option<Option<i32>> = deeds::table
        .filter(deeds::kind.eq(kind).and(deeds::place_id.is_not_null()))
        .order(deeds::id.desc())
        .select(deeds::place_id)
        .first(conn)
        .optional()?;
    Ok(last.flatten())
}

/// Where the last lot of a product was put when it was made, by the place's key.
pub fn laid_at(conn: &mut Conn, product: &str) -> Result<Option<i32>> {
    Ok(lots::table
        .inner_join(versions::table.on(versions::id.eq(lots::version_id)))
        .inner_join(entries::table.on(entries::id.eq(versions::entry_id)))
        .filter(entries::list.eq("products").and(entries::code.eq(product)))
        .filter(lots::voided.eq(false))
        .order(lots::id.desc())
        .select(lots::born_place_id)
        .first(conn)
        .optional()?)
}

/// What was received lately and where it was put, by the product's code and the place's key: the last first, each
/// product once.
pub fn received_lately(conn: &mut Conn) -> Result<Vec<(String, i32)>> {
    let received: Vec<(String, i32)> = lots::table
        .inner_join(versions::table.on(versions::id.eq(lots::version_id)))
        .inner_join(entries::table.on(entries::id.eq(versions::entry_id)))
        .inner_join(deeds::table.on(deeds::id.eq(lots::deed_id)))
        .filter(deeds::kind.eq(DeedKind::Receive.as_str()))
        .filter(lots::voided.eq(false))
        .order(lots::id.desc())
        .limit(LATELY)
        .select((entries::code, lots::born_place_id))
        .load(conn)?;
    let mut seen = HashSet::new();
    let first = received.into_iter();
    Ok(first
        .filter(|(code, _)| seen.insert(code.clone()))
        .collect())
}

/// How many receipts are looked at to see what comes in usually.
const LATELY: i64 = 300;

/// The products that packs were made as of lots of a product, what was made last first.
pub fn packed_as(conn: &mut Conn, product: &str) -> Result<Vec<String>> {
    let sql = "SELECT made.code AS code FROM lots packed
        JOIN versions ON versions.id = packed.version_id
        JOIN entries made ON made.id = versions.entry_id
        JOIN deeds ON deeds.id = packed.deed_id AND deeds.kind IN ('pack', 'portion')
        JOIN pack_events ON pack_events.deed_id = deeds.id AND pack_events.account = 'used'
        JOIN lots used ON used.id = pack_events.lot_id
        JOIN versions was ON was.id = used.version_id
        JOIN entries known ON known.id = was.entry_id
        WHERE NOT packed.voided AND known.code = $1
        GROUP BY made.code ORDER BY MAX(deeds.id) DESC LIMIT 6";
    let rows: Vec<PackedAs> = on_each!(conn, c => sql_query(sql).bind::<Text, _>(product).load(c)?);
    Ok(rows.into_iter().map(|row| row.code).collect())
}
