//! What an incident's report is made of: what happened to the packs of some lots, as it was on record at a moment.
//!
//! A deed recorded later than the moment is not there yet, and a void recorded later has not voided it yet.

use crate::conn::Conn;
use crate::error::{Error, Result};
use crate::keyed::{self, AT_ONCE};
use crate::on_each;
use chrono::{NaiveDate, NaiveDateTime};
use diesel::prelude::*;
use diesel::sql_query;
use diesel::sql_types::{BigInt, Binary, Bool, Date, Integer, Nullable, Text, Timestamp};
use domain::grams::Grams;
use domain::incident::{PackEvent, PackTold};
use domain::lot::{DeedId, PackId, PlaceId};
use domain::words::{Account, DeedKind};
use std::collections::{BTreeMap, BTreeSet, HashMap};

/// A deed was on record at a moment, the second parameter, and was not voided then.
const STOOD: &str = "deeds.recorded_at <= $2 AND NOT EXISTS (
    SELECT 1 FROM voids JOIN deeds AS undone ON undone.id = voids.id
    WHERE voids.deed_id = deeds.id AND undone.recorded_at <= $2)";

#[derive(QueryableByName)]
struct LotFound {
    #[diesel(sql_type = Integer)]
    id: i32,
    #[diesel(sql_type = Timestamp)]
    made_at: NaiveDateTime,
    #[diesel(sql_type = Integer)]
    deed_id: i32,
    #[diesel(sql_type = Text)]
    kind: String,
    #[diesel(sql_type = Nullable<Integer>)]
    place_id: Option<i32>,
    #[diesel(sql_type = Integer)]
    born_place_id: i32,
}

#[derive(QueryableByName)]
struct PackFound {
    #[diesel(sql_type = Integer)]
    id: i32,
    #[diesel(sql_type = Integer)]
    lot_id: i32,
    #[diesel(sql_type = Integer)]
    number: i32,
    #[diesel(sql_type = BigInt)]
    made_mg: i64,
}

#[derive(QueryableByName)]
struct EventFound {
    #[diesel(sql_type = Integer)]
    id: i32,
    #[diesel(sql_type = Integer)]
    pack_id: i32,
    #[diesel(sql_type = Integer)]
    deed_id: i32,
    #[diesel(sql_type = Text)]
    kind: String,
    #[diesel(sql_type = Timestamp)]
    at: NaiveDateTime,
    #[diesel(sql_type = Nullable<Integer>)]
    done_at: Option<i32>,
    #[diesel(sql_type = Text)]
    account: String,
    #[diesel(sql_type = BigInt)]
    mg: i64,
    #[diesel(sql_type = Bool)]
    whole_pack: bool,
    #[diesel(sql_type = Nullable<Integer>)]
    place_id: Option<i32>,
}

/// A lot and what happened to its packs.
#[derive(Debug)]
pub struct LotLife {
    /// Its key.
    pub id: i32,
    /// When it was made.
    pub made_at: NaiveDateTime,
    /// The deed that made it.
    pub made_by: i32,
    /// What that was.
    pub made_kind: DeedKind,
    /// Where it was made.
    pub made_place: Option<i32>,
    /// Its packs, by number.
    pub packs: Vec<PackTold>,
}

/// Some lots as they were on record at a moment. One that was not made yet is left out.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn lots(conn: &mut Conn, keys: &[i32], until: NaiveDateTime) -> Result<BTreeMap<i32, LotLife>> {
    let mut lots = BTreeMap::new();
    for some in keys.chunks(AT_ONCE) {
        some_lots(conn, some, until, &mut lots)?;
    }
    Ok(lots)
}

fn some_lots(
    conn: &mut Conn,
    some: &[i32],
    until: NaiveDateTime,
    lots: &mut BTreeMap<i32, LotLife>,
) -> Result<()> {
    let found: Vec<LotFound> = keyed::of_until(conn, some, until, |these| {
        format!(
            "SELECT lots.id, lots.made_at, lots.deed_id, deeds.kind, deeds.place_id, lots.born_place_id
             FROM lots JOIN deeds ON deeds.id = lots.deed_id WHERE lots.id {these} AND {STOOD}"
        )
    })?;
    let packs: Vec<PackFound> = keyed::of(conn, some, |these| {
        format!(
            "SELECT id, lot_id, number, made_mg FROM packs WHERE lot_id {these} ORDER BY lot_id, number"
        )
    })?;
    let events: Vec<EventFound> = keyed::of_until(conn, some, until, |these| {
        format!(
            "SELECT pack_events.id, pack_events.pack_id, deeds.id AS deed_id, deeds.kind, deeds.at,
                 deeds.place_id AS done_at, pack_events.account, pack_events.mg, pack_events.whole_pack,
                 pack_events.place_id
             FROM pack_events JOIN deeds ON deeds.id = pack_events.deed_id
             WHERE pack_events.lot_id {these} AND {STOOD}
             ORDER BY pack_events.lot_id, pack_events.seq"
        )
    })?;
    let mut happened: HashMap<i32, Vec<PackEvent>> = HashMap::new();
    for of in events {
        happened.entry(of.pack_id).or_default().push(event(&of)?);
    }
    let mut born = HashMap::new();
    for lot in found {
        born.insert(lot.id, PlaceId(lot.born_place_id));
        let life = LotLife {
            id: lot.id,
            made_at: lot.made_at,
            made_by: lot.deed_id,
            made_kind: kind(&lot.kind, "lots", lot.id)?,
            made_place: lot.place_id,
            packs: Vec::new(),
        };
        lots.insert(lot.id, life);
    }
    for pack in packs {
        let Some(lot) = lots.get_mut(&pack.lot_id) else {
            continue;
        };
        lot.packs.push(PackTold {
            id: PackId(pack.id),
            number: pack.number.unsigned_abs(),
            made: Grams::from_milligrams(pack.made_mg),
            born: born[&pack.lot_id],
            events: happened.remove(&pack.id).unwrap_or_default(),
        });
    }
    Ok(())
}

fn kind(text: &str, table: &'static str, id: i32) -> Result<DeedKind> {
    DeedKind::parse(text).ok_or_else(|| Error::bad_row(table, id, "unknown kind of deed"))
}

fn event(of: &EventFound) -> Result<PackEvent> {
    let account = Account::parse(&of.account);
    Ok(PackEvent {
        deed: DeedId(of.deed_id),
        kind: kind(&of.kind, "pack_events", of.id)?,
        at: of.at.and_utc(),
        place: of.done_at.map(PlaceId),
        account: account.ok_or_else(|| Error::bad_row("pack_events", of.id, "unknown account"))?,
        grams: Grams::from_milligrams(of.mg),
        whole_pack: of.whole_pack,
        to: of.place_id.map(PlaceId),
    })
}

/// What went into a deed, of lots inside an incident and outside of it.
#[derive(Debug, Clone, QueryableByName)]
pub struct WentIn {
    /// The deed.
    #[diesel(sql_type = Integer)]
    pub deed_id: i32,
    /// The lot's code.
    #[diesel(sql_type = Text)]
    pub code: String,
    /// Its product's code.
    #[diesel(sql_type = Text)]
    pub product: String,
    /// How much of it.
    #[diesel(sql_type = BigInt)]
    pub mg: i64,
}

/// What went into some deeds, each lot once.
///
/// # Errors
/// The database is away.
pub fn went_in(conn: &mut Conn, deeds: &[i32], until: NaiveDateTime) -> Result<Vec<WentIn>> {
    let mut all = Vec::new();
    for some in deeds.chunks(AT_ONCE) {
        let some: Vec<WentIn> = keyed::of_until(conn, some, until, |these| {
            format!(
                "SELECT deeds.id AS deed_id, lots.code, entries.code AS product,
                     CAST(SUM(pack_events.mg) AS BIGINT) AS mg
                 FROM pack_events JOIN deeds ON deeds.id = pack_events.deed_id
                 JOIN lots ON lots.id = pack_events.lot_id
                 JOIN versions ON versions.id = lots.version_id JOIN entries ON entries.id = versions.entry_id
                 WHERE pack_events.deed_id {these} AND pack_events.account = 'used' AND {STOOD}
                 GROUP BY deeds.id, lots.code, entries.code ORDER BY deeds.id, lots.code"
            )
        })?;
        all.extend(some);
    }
    Ok(all)
}

/// A deed that told more than its events: to whom, who saw it, on which paper.
#[derive(Debug, Clone, QueryableByName)]
pub struct ToldOf {
    /// Its key.
    #[diesel(sql_type = Integer)]
    pub id: i32,
    /// Its id.
    #[diesel(sql_type = Binary)]
    pub uid: Vec<u8>,
    /// What it was.
    #[diesel(sql_type = Text)]
    pub kind: String,
    /// When.
    #[diesel(sql_type = Timestamp)]
    pub at: NaiveDateTime,
    /// Who.
    #[diesel(sql_type = Text)]
    pub person: String,
    /// Where.
    #[diesel(sql_type = Nullable<Integer>)]
    pub place_id: Option<i32>,
    /// A word about it.
    #[diesel(sql_type = Nullable<Text>)]
    pub note: Option<String>,
    /// What was asked.
    #[diesel(sql_type = Text)]
    pub request: String,
}

/// Deeds by their keys, the oldest first.
///
/// # Errors
/// The database is away.
pub fn deeds_told(conn: &mut Conn, keys: &[i32]) -> Result<Vec<ToldOf>> {
    let mut all: Vec<ToldOf> = Vec::new();
    for some in keys.chunks(AT_ONCE) {
        let some: Vec<ToldOf> = keyed::of(conn, some, |these| {
            format!(
                "SELECT id, uid, kind, at, person, place_id, note, request FROM deeds WHERE id {these}"
            )
        })?;
        all.extend(some);
    }
    all.sort_by_key(|deed| (deed.at, deed.id));
    Ok(all)
}

/// Where a lot of an incident came from.
#[derive(Debug, Clone, QueryableByName)]
pub struct CameFrom {
    /// The lot.
    #[diesel(sql_type = Integer)]
    pub lot_id: i32,
    /// The farm's code.
    #[diesel(sql_type = Nullable<Text>)]
    pub farm: Option<String>,
    /// The day of the kill.
    #[diesel(sql_type = Nullable<Date>)]
    pub killed_on: Option<NaiveDate>,
    /// The number of the abattoir.
    #[diesel(sql_type = Nullable<Text>)]
    pub abattoir: Option<String>,
    /// The carcass.
    #[diesel(sql_type = Nullable<Text>)]
    pub carcass: Option<String>,
    /// The tag.
    #[diesel(sql_type = Nullable<Text>)]
    pub tag: Option<String>,
    /// The supplier's code.
    #[diesel(sql_type = Nullable<Text>)]
    pub supplier: Option<String>,
    /// The supplier's lot.
    #[diesel(sql_type = Nullable<Text>)]
    pub supplier_lot: Option<String>,
}

/// Where some lots came from, as it was known at a moment: the last word counts.
///
/// # Errors
/// The database is away.
pub fn came_from(conn: &mut Conn, lots: &[i32], until: NaiveDateTime) -> Result<Vec<CameFrom>> {
    let mut all: BTreeMap<i32, CameFrom> = BTreeMap::new();
    for some in lots.chunks(AT_ONCE) {
        let found: Vec<CameFrom> = keyed::of_until(conn, some, until, |these| {
            format!(
                "SELECT sources.lot_id, animals.farm, animals.killed_on, animals.abattoir, animals.carcass,
                     animals.tag, sources.supplier, sources.supplier_lot
                 FROM sources JOIN deeds ON deeds.id = sources.deed_id
                 LEFT JOIN animals ON animals.id = sources.animal_id
                 WHERE sources.lot_id {these} AND {STOOD} ORDER BY sources.id"
            )
        })?;
        all.extend(found.into_iter().map(|of| (of.lot_id, of)));
    }
    Ok(all.into_values().collect())
}

#[derive(QueryableByName)]
struct Key {
    #[diesel(sql_type = Integer)]
    id: i32,
}

/// Which of some packs were counted, or came back, since a deed.
///
/// # Errors
/// The database is away.
pub fn counted_since(conn: &mut Conn, deed: i32, packs: &[i32]) -> Result<BTreeSet<i32>> {
    let mut all = BTreeSet::new();
    for some in packs.chunks(AT_ONCE) {
        let these = keyed::among(some);
        let sql = format!(
            "SELECT DISTINCT pack_events.pack_id AS id FROM pack_events JOIN deeds ON deeds.id = pack_events.deed_id
             WHERE pack_events.pack_id {these} AND deeds.id > {deed}
                 AND deeds.kind IN ('count', 'adopt', 'take-back')
                 AND NOT EXISTS (SELECT 1 FROM voids WHERE voids.deed_id = deeds.id)"
        );
        let found: Vec<Key> = on_each!(&mut *conn, c => sql_query(sql).load(c)?);
        all.extend(found.into_iter().map(|key| key.id));
    }
    Ok(all)
}

#[derive(QueryableByName)]
struct Since {
    #[diesel(sql_type = Nullable<Timestamp>)]
    told_at: Option<NaiveDateTime>,
    #[diesel(sql_type = Nullable<Timestamp>)]
    made_at: Option<NaiveDateTime>,
}

/// When the last incident was told of, and when the first lot of the record was made.
///
/// # Errors
/// The database is away.
pub fn last_told_and_first_made(
    conn: &mut Conn,
) -> Result<(Option<NaiveDateTime>, Option<NaiveDateTime>)> {
    let sql = "SELECT (SELECT MAX(told_at) FROM incidents) AS told_at,
        (SELECT made_at FROM lots ORDER BY id LIMIT 1) AS made_at";
    let since: Since = on_each!(conn, c => sql_query(sql).get_result(c)?);
    Ok((since.told_at, since.made_at))
}

/// When the last deed was recorded.
///
/// # Errors
/// The database is away.
pub fn last_recorded(conn: &mut Conn) -> Result<Option<NaiveDateTime>> {
    use crate::tables::deeds;
    Ok(deeds::table
        .select(diesel::dsl::max(deeds::recorded_at))
        .get_result(conn)?)
}
