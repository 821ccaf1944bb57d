//! The family of a lot, read from the record: back to its sources, forward to all lots made from it.
//!
//! The walks recurse on keys alone, with `UNION`: each lot is met once, and a cycle cannot hang them.
//! `CROSS JOIN` keeps SQLite to the order written, from what was reached to its rows: left to itself
//! it reads all lots and looks each up among those reached.

use crate::conn::Conn;
use crate::error::{Error, Result};
use crate::keyed;
use crate::on_each;
use crate::prepared::Prepared;
use crate::tables::entries;
use chrono::NaiveDateTime;
use diesel::prelude::*;
use diesel::sql_query;
use diesel::sql_types::{BigInt, Integer, Nullable, Text, Timestamp};
use domain::code::LotCode;
use domain::family::Went;
use domain::genealogy::{Ancestry, Onward, Use, shares_forward};
use domain::grams::Grams;
use domain::lot::{DeedId, LotId};
use std::collections::HashMap;

/// A lot on the way forward, with where its weight went.
#[derive(Debug, Clone, QueryableByName, PartialEq)]
#[allow(
    missing_docs,
    reason = "the columns of lots, described in the migration"
)]
pub struct Reached {
    #[diesel(sql_type = Integer)]
    pub id: i32,
    #[diesel(sql_type = Integer)]
    pub deed_id: i32,
    #[diesel(sql_type = Text)]
    pub code: String,
    #[diesel(sql_type = Text)]
    pub product: String,
    #[diesel(sql_type = Timestamp)]
    pub made_at: NaiveDateTime,
    #[diesel(sql_type = Text)]
    pub origin: String,
    #[diesel(sql_type = Nullable<Text>)]
    pub note: Option<String>,
    #[diesel(sql_type = BigInt)]
    pub made_mg: i64,
    #[diesel(sql_type = BigInt)]
    pub taken_back_mg: i64,
    #[diesel(sql_type = BigInt)]
    pub used_mg: i64,
    #[diesel(sql_type = BigInt)]
    pub sold_mg: i64,
    #[diesel(sql_type = Integer)]
    pub sold_packs: i32,
    #[diesel(sql_type = BigInt)]
    pub served_mg: i64,
    #[diesel(sql_type = BigInt)]
    pub discarded_mg: i64,
    #[diesel(sql_type = BigInt)]
    pub shipped_mg: i64,
    #[diesel(sql_type = BigInt)]
    pub returned_mg: i64,
    #[diesel(sql_type = BigInt)]
    pub lost_mg: i64,
    #[diesel(sql_type = BigInt)]
    pub on_hand_mg: i64,
    #[diesel(sql_type = BigInt)]
    pub unexplained_mg: i64,
    /// Of that, what there is too much of, count by count.
    #[diesel(sql_type = BigInt)]
    pub surplus_mg: i64,
    /// Where most of what is left is.
    #[diesel(sql_type = Nullable<Integer>)]
    pub place_id: Option<i32>,
}

impl Reached {
    /// Its code.
    pub fn code(&self) -> Result<LotCode> {
        let code = LotCode::read(&self.code);
        code.map_err(|_| Error::bad_row("lots", self.id, "malformed code"))
    }

    /// How much was in it at first, and where that went.
    pub fn went(&self) -> Went {
        let grams = Grams::from_milligrams;
        Went {
            made: grams(self.made_mg),
            taken_back: grams(self.taken_back_mg),
            used: grams(self.used_mg),
            sold: grams(self.sold_mg),
            sold_packs: i64::from(self.sold_packs),
            served: grams(self.served_mg),
            discarded: grams(self.discarded_mg),
            shipped: grams(self.shipped_mg),
            returned: grams(self.returned_mg),
            lost: grams(self.lost_mg),
            on_hand: grams(self.on_hand_mg),
            unexplained: grams(self.unexplained_mg),
            missing: grams(self.unexplained_mg + self.surplus_mg),
            surplus: grams(self.surplus_mg),
        }
    }
}

#[derive(Debug, QueryableByName)]
struct OnwardRow {
    #[diesel(sql_type = Integer)]
    lot_id: i32,
    #[diesel(sql_type = Integer)]
    deed_id: i32,
    #[diesel(sql_type = BigInt)]
    mg: i64,
    #[diesel(sql_type = BigInt)]
    animal_mg: i64,
}

/// All lots made from some lots.
#[derive(Debug)]
pub struct Forward {
    /// The lots, oldest first; the starting lots are among them.
    pub lots: Vec<Reached>,
    /// The share of the starting lots in what each step made.
    pub step_shares: HashMap<DeedId, f64>,
    /// The codes of the places where something is left.
    pub places: HashMap<i32, String>,
}

impl Forward {
    /// Where most of what is left of a lot is.
    pub fn place(&self, lot: &Reached) -> Option<&str> {
        self.places.get(&lot.place_id?).map(String::as_str)
    }
}

/// Walks forward from `starts`, which must not be empty.
pub fn forward(conn: &mut Conn, starts: &[i32]) -> Result<Forward> {
    let lots = descendants(conn, starts)?;
    let start_lots: Vec<LotId> = starts.iter().map(|start| LotId(*start)).collect();
    // Most lots are packs that nothing was made of; shares flow through the others only.
    let used: Vec<&Reached> = lots.iter().filter(|lot| lot.used_mg > 0).collect();
    let made: Vec<(LotId, DeedId)> = used
        .iter()
        .map(|lot| (LotId(lot.id), DeedId(lot.deed_id)))
        .collect();
    let onward = onward(conn, &used)?;
    Ok(Forward {
        step_shares: shares_forward(&start_lots, &made, &onward),
        places: places(conn, &lots)?,
        lots,
    })
}

/// The beginning of a query over `reach(id)`: the lots whose key is one of some, and all that are made from them.
pub(crate) fn with_reach(these: &str) -> String {
    // Not as VALUES: SQLite takes each of them for a part of the union, and has at most five hundred.
    format!(
        "WITH RECURSIVE reach(id) AS (
             SELECT lots.id FROM lots WHERE lots.id {these}
             UNION
             SELECT made.id FROM reach CROSS JOIN pack_events used CROSS JOIN lots made
             WHERE used.lot_id = reach.id AND used.account = 'used'
                 AND made.deed_id = used.deed_id AND NOT made.voided
         )"
    )
}

/// What was found too much of a lot, count by count: what one count missed and another found stays both, also
/// where it is the same pack.
const SURPLUS_OF_LOT: &str = "(
    SELECT CAST(COALESCE(-SUM(of.mg), 0) AS BIGINT) FROM pack_events of
    WHERE of.lot_id = lots.id AND of.account = 'unexplained' AND of.mg < 0
        AND NOT EXISTS (SELECT 1 FROM voids WHERE voids.deed_id = of.deed_id)
)";

fn descendants(conn: &mut Conn, starts: &[i32]) -> Result<Vec<Reached>> {
    keyed::of(conn, starts, |these| {
        let reach = with_reach(these);
        format!(
            "{reach}
             SELECT lots.id, lots.deed_id, lots.code, entries.code AS product, lots.made_at, lots.origin, lots.note,
                 made_mg, taken_back_mg, used_mg, sold_mg, sold_packs, served_mg, discarded_mg, shipped_mg,
                 returned_mg, lost_mg, on_hand_mg, unexplained_mg, {SURPLUS_OF_LOT} AS surplus_mg,
                 CASE WHEN on_hand_mg > 0 THEN (
                     SELECT packs.place_id FROM packs WHERE packs.lot_id = lots.id AND packs.left_mg > 0
                     ORDER BY packs.left_mg DESC, packs.number LIMIT 1
                 ) END AS place_id
             FROM reach CROSS JOIN lots CROSS JOIN versions CROSS JOIN entries
             WHERE lots.id = reach.id AND versions.id = lots.version_id AND entries.id = versions.entry_id
             ORDER BY lots.id"
        )
    })
}

/// The few places are asked for once: joined to each lot, PostgreSQL sorts for each.
fn places(conn: &mut Conn, lots: &[Reached]) -> Result<HashMap<i32, String>> {
    let mut keys: Vec<i32> = lots.iter().filter_map(|lot| lot.place_id).collect();
    keys.sort_unstable();
    keys.dedup();
    let places = entries::table.filter(entries::id.eq_any(keys));
    let rows: Vec<(i32, String)> = places.select((entries::id, entries::code)).load(conn)?;
    Ok(rows.into_iter().collect())
}

fn onward(conn: &mut Conn, used: &[&Reached]) -> Result<Vec<Onward>> {
    let mut onward = Vec::with_capacity(used.len());
    for some in used.chunks(1_000) {
        let keys: Vec<i32> = some.iter().map(|lot| lot.id).collect();
        let rows: Vec<OnwardRow> = keyed::of(conn, &keys, |these| {
            format!(
                "SELECT used.lot_id, used.deed_id, used.mg, steps.animal_mg
                 FROM pack_events used CROSS JOIN steps
                 WHERE used.lot_id {these} AND used.account = 'used' AND steps.id = used.deed_id"
            )
        })?;
        onward.extend(rows.into_iter().map(|row| Onward {
            lot: LotId(row.lot_id),
            step: DeedId(row.deed_id),
            milligrams: row.mg,
            step_milligrams: row.animal_mg,
        }));
    }
    Ok(onward)
}

#[derive(Debug, QueryableByName)]
struct ForwardUseRow {
    #[diesel(sql_type = Integer)]
    child_id: i32,
    #[diesel(sql_type = Integer)]
    deed_id: i32,
    #[diesel(sql_type = Integer)]
    lot_id: i32,
    #[diesel(sql_type = BigInt)]
    mg: i64,
    #[diesel(sql_type = Text)]
    origin: String,
}

/// Walks back from a lot to everything that went into it.
pub fn back(conn: &mut Conn, lot: i32) -> Result<Ancestry> {
    let sql = "WITH RECURSIVE up(id, deed_id) AS (
                   SELECT id, deed_id FROM lots WHERE id = $1
                   UNION
                   SELECT parent.id, parent.deed_id FROM up CROSS JOIN pack_events used CROSS JOIN lots parent
                   WHERE used.deed_id = up.deed_id AND used.account = 'used' AND parent.id = used.lot_id
               )
               SELECT up.id AS child_id, used.deed_id, used.lot_id, used.mg, parent.origin
               FROM up CROSS JOIN pack_events used CROSS JOIN lots parent
               WHERE used.deed_id = up.deed_id AND used.account = 'used' AND parent.id = used.lot_id";
    let rows: Vec<ForwardUseRow> =
        on_each!(conn, c => Prepared(sql_query(sql).bind::<Integer, _>(lot)).load(c)?);
    let mut ancestry = Ancestry::default();
    // A step that made several of the lots comes back once for each of them.
    let mut told_by: HashMap<DeedId, i32> = HashMap::new();
    for row in rows {
        let step = DeedId(row.deed_id);
        ancestry.made_by.insert(LotId(row.child_id), step);
        if *told_by.entry(step).or_insert(row.child_id) == row.child_id {
            let has_animal = matches!(row.origin.as_str(), "one" | "mixed");
            let used = Use {
                step,
                lot: LotId(row.lot_id),
                milligrams: row.mg,
                has_animal,
            };
            ancestry.uses.entry(step).or_default().push(used);
        }
    }
    Ok(ancestry)
}

#[derive(Debug, QueryableByName)]
struct ChildRow {
    #[diesel(sql_type = Integer)]
    id: i32,
    #[diesel(sql_type = BigInt)]
    made_mg: i64,
}

/// The lots that were made of a lot in one step, each with its milligrams at birth.
pub fn children(conn: &mut Conn, lot: i32) -> Result<Vec<(i32, i64)>> {
    let sql = "SELECT DISTINCT made.id, made.made_mg FROM pack_events used
               JOIN lots made ON made.deed_id = used.deed_id
               WHERE used.lot_id = $1 AND used.account = 'used' AND NOT made.voided ORDER BY made.id";
    let rows: Vec<ChildRow> = on_each!(conn, c => sql_query(sql).bind::<Integer, _>(lot).load(c)?);
    Ok(rows.into_iter().map(|row| (row.id, row.made_mg)).collect())
}
