//! Walking the record from some lots: back to everything that went into them, one step on to what was
//! made of them.

use crate::conn::Conn;
use crate::error::Result;
use crate::keyed;
use diesel::prelude::*;
use diesel::sql_types::{BigInt, Bool, Integer, Text};
use domain::code::LotCode;
use domain::genealogy::{Ancestry, Onward, Use};
use domain::lot::{DeedId, LotId};
use std::collections::{BTreeSet, HashMap, HashSet};

/// What a walk back reached.
pub struct Reached {
    /// What went into what.
    pub ancestry: Ancestry,
    /// Every lot that went into one of them, or was made from one of them.
    pub lots: Vec<i32>,
    /// What was made from them, with what it was made from.
    pub onward: Vec<Onward>,
    /// The lots that each step on the way made.
    pub made: BTreeSet<(i32, i32)>,
}

#[derive(Debug, QueryableByName)]
struct UseRow {
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
    #[diesel(sql_type = Integer)]
    event_id: i32,
    #[diesel(sql_type = Bool)]
    onward: bool,
    #[diesel(sql_type = BigInt)]
    animal_mg: i64,
}

/// What a walk starts from.
#[derive(Debug, Clone, Copy)]
pub enum WalkStart<'a> {
    /// Lots by their keys.
    Keys(&'a [i32]),
    /// The lot of a code.
    Code(&'a LotCode),
}

const UP: &str = "up(id, deed_id) AS (
         SELECT id, deed_id FROM lots WHERE {start}
         UNION
         SELECT parent.id, parent.deed_id FROM up CROSS JOIN pack_events used CROSS JOIN lots parent
         WHERE used.deed_id = up.deed_id AND used.account = 'used' AND parent.id = used.lot_id
     )";
const USES: &str = "SELECT up.id AS child_id, used.deed_id, used.lot_id, used.mg, parent.origin,
         used.id AS event_id, FALSE AS onward, CAST(0 AS BIGINT) AS animal_mg
     FROM up CROSS JOIN pack_events used CROSS JOIN lots parent
     WHERE used.deed_id = up.deed_id AND used.account = 'used' AND parent.id = used.lot_id";
const DOWN: &str = "down(id) AS (
         SELECT id FROM lots WHERE {start}
         UNION
         SELECT made.id FROM down CROSS JOIN pack_events used CROSS JOIN lots made
         WHERE used.lot_id = down.id AND used.account = 'used'
             AND made.deed_id = used.deed_id AND NOT made.voided
     )";
const ONWARD: &str = "SELECT made.id AS child_id, used.deed_id, used.lot_id, used.mg, made.origin,
         used.id AS event_id, TRUE AS onward, steps.animal_mg
     FROM down CROSS JOIN pack_events used CROSS JOIN lots made CROSS JOIN steps
     WHERE used.lot_id = down.id AND used.account = 'used' AND made.deed_id = used.deed_id
         AND NOT made.voided AND steps.id = used.deed_id";

/// Walks back from lots to everything that went into them. See [`crate::trace`] for the form of the
/// statement.
pub fn back(conn: &mut Conn, start: WalkStart<'_>) -> Result<Reached> {
    let sql = format!("WITH RECURSIVE {UP} {USES}");
    load(conn, start, &sql)
}

/// Walks back, and on to everything that was made from them, in one statement.
pub fn both_ways(conn: &mut Conn, start: WalkStart<'_>) -> Result<Reached> {
    let sql = format!("WITH RECURSIVE {UP}, {DOWN} {USES} UNION ALL {ONWARD}");
    load(conn, start, &sql)
}

fn load(conn: &mut Conn, start: WalkStart<'_>, sql: &str) -> Result<Reached> {
    let from = |is: &str| sql.replace("{start}", is);
    let rows: Vec<UseRow> = match start {
        WalkStart::Keys(keys) => keyed::of(conn, keys, |these| from(&format!("lots.id {these}")))?,
        WalkStart::Code(code) => keyed::of_code(conn, code, |is| from(&format!("lots.code {is}")))?,
    };
    Ok(reached(rows))
}

/// Walks so many steps back.
pub fn steps_back(conn: &mut Conn, lots: &[i32], steps: u32) -> Result<Reached> {
    let (mut all, mut next) = (Vec::new(), lots.to_vec());
    let mut seen: Vec<i32> = Vec::new();
    for _ in 0..steps {
        next.retain(|lot| !seen.contains(lot));
        if next.is_empty() {
            break;
        }
        let rows: Vec<UseRow> = keyed::of(conn, &next, |these| {
            format!(
                "SELECT child.id AS child_id, used.deed_id, used.lot_id, used.mg, parent.origin,
                     used.id AS event_id, FALSE AS onward, CAST(0 AS BIGINT) AS animal_mg
                 FROM lots child CROSS JOIN pack_events used CROSS JOIN lots parent
                 WHERE child.id {these} AND used.deed_id = child.deed_id AND used.account = 'used'
                     AND parent.id = used.lot_id"
            )
        })?;
        seen.append(&mut next);
        next = rows.iter().map(|row| row.lot_id).collect();
        next.sort_unstable();
        next.dedup();
        all.extend(rows);
    }
    Ok(reached(all))
}

fn reached(rows: Vec<UseRow>) -> Reached {
    let mut ancestry = Ancestry::default();
    let mut lots = Vec::with_capacity(rows.len());
    let (mut onward, mut made) = (Vec::new(), BTreeSet::new());
    // A step that made several of the lots comes back once for each of them.
    let mut told_by: HashMap<DeedId, i32> = HashMap::new();
    let mut seen: HashSet<i32> = HashSet::new();
    for row in rows {
        let step = DeedId(row.deed_id);
        if row.onward {
            lots.push(row.child_id);
            made.insert((row.deed_id, row.child_id));
            if seen.insert(row.event_id) {
                onward.push(Onward {
                    lot: LotId(row.lot_id),
                    step,
                    milligrams: row.mg,
                    step_milligrams: row.animal_mg,
                });
            }
            continue;
        }
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
            lots.push(row.lot_id);
        }
    }
    Reached {
        ancestry,
        lots,
        onward,
        made,
    }
}

#[derive(Debug, QueryableByName)]
struct MadeRow {
    #[diesel(sql_type = Integer)]
    deed_id: i32,
    #[diesel(sql_type = Integer)]
    id: i32,
}

/// The lots that were made of some lots in one step: the step and the lot.
pub fn children(conn: &mut Conn, lots: &[i32]) -> Result<Vec<(i32, i32)>> {
    let rows: Vec<MadeRow> = keyed::of(conn, lots, |these| {
        format!(
            "SELECT DISTINCT made.deed_id, made.id FROM pack_events used
             JOIN lots made ON made.deed_id = used.deed_id
             WHERE used.lot_id {these} AND used.account = 'used' ORDER BY made.id"
        )
    })?;
    Ok(rows.into_iter().map(|row| (row.deed_id, row.id)).collect())
}
