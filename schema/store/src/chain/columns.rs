//! The columns that change: each must be what follows from the rows that do not.

use super::born::{self, Order};
use crate::conn::Conn;
use crate::error::Result;
use crate::lots::LotRow;
use crate::on_each;
use crate::tables::{judged_again, lots, sources, voids};
use diesel::prelude::*;
use diesel::sql_query;
use diesel::sql_types::{BigInt, Text};
use domain::audit::AuditFinding;
use std::collections::{HashMap, HashSet};

#[derive(QueryableByName)]
struct Wrong {
    #[diesel(sql_type = Text)]
    about: String,
}

#[derive(QueryableByName)]
struct Count {
    #[diesel(sql_type = BigInt)]
    count: i64,
}

/// What is wrong, told by one statement a kind.
const ASKED: [(&str, &str); 4] = [
    (
        "does not stand at its last version",
        "SELECT list || ' ' || code AS about FROM entries WHERE version_id <> COALESCE((SELECT id FROM versions
             WHERE entry_id = entries.id ORDER BY number DESC LIMIT 1), 0) ORDER BY id",
    ),
    (
        "has had more happen to it than it counts",
        "SELECT 'lot ' || lots.code AS about FROM lots JOIN (SELECT lot_id, MAX(seq) AS last FROM pack_events GROUP BY lot_id)
             AS of_lot ON of_lot.lot_id = lots.id WHERE of_lot.last >= lots.seq ORDER BY lots.id",
    ),
    (
        "is marked as printed without a label, or has one and is not marked",
        "SELECT 'lot ' || lots.code || '/' || packs.number AS about FROM packs JOIN lots ON lots.id = packs.lot_id
             WHERE packs.printed <> EXISTS (SELECT 1 FROM prints WHERE prints.pack_id = packs.id
                 AND prints.claims_id IS NOT NULL) ORDER BY packs.id",
    ),
    (
        "has a text that is another's",
        "SELECT 'kept text ' || later.id AS about FROM kept_texts later JOIN kept_texts first
             ON first.hash = later.hash AND first.id < later.id ORDER BY later.id",
    ),
];

/// Everything that does not follow.
///
/// # Errors
/// The database is away, or the record is damaged.
pub(crate) fn check(conn: &mut Conn, order: &Order) -> Result<Vec<AuditFinding>> {
    let mut findings = Vec::new();
    for (says, sql) in ASKED {
        let wrong: Vec<Wrong> = on_each!(&mut *conn, c => sql_query(sql).load(c)?);
        let wrong = wrong.into_iter();
        findings.extend(wrong.map(|of| AuditFinding::new(of.about, says)));
    }
    findings.extend(judged(conn, order)?);
    findings.extend(current_sources(conn, order)?);
    if let Conn::Sqlite(conn) = conn {
        let sql = "SELECT COUNT(*) AS count FROM counters WHERE id = 1 AND next <= (SELECT MAX(
                       COALESCE((SELECT MAX(id) FROM deeds), 0), COALESCE((SELECT MAX(id) FROM pack_events), 0),
                       COALESCE((SELECT MAX(id) FROM packs), 0), COALESCE((SELECT MAX(id) FROM reasons), 0)))";
        let behind: Vec<Count> = sql_query(sql).load(conn)?;
        if behind.iter().any(|of| of.count > 0) {
            findings.push(AuditFinding::new(
                "counters",
                "does not stand past the keys that were given out",
            ));
        }
    }
    Ok(findings)
}

/// What was judged again of a lot holds together, and the lot is what was judged last.
fn judged(conn: &mut Conn, order: &Order) -> Result<Vec<AuditFinding>> {
    let keys = judged_again::table.select(judged_again::lot_id).distinct();
    let mut keys: Vec<i32> = keys.load(conn)?;
    keys.sort_unstable();
    let mut findings = Vec::new();
    for some in keys.chunks(super::read::AT_ONCE) {
        let rows: Vec<LotRow> = lots::table
            .filter(lots::id.eq_any(some))
            .order(lots::id)
            .select(LotRow::as_select())
            .load(conn)?;
        let judged = born::judged(conn, some, order)?;
        for row in &rows {
            let of_lot = judged.get(&row.id).map(Vec::as_slice).unwrap_or_default();
            if let Some(column) = born::broken(row, of_lot)? {
                let says = format!("its {column} is not what was last judged of it");
                findings.push(AuditFinding::new(format!("lot {}", row.code), says));
            }
        }
    }
    Ok(findings)
}

/// Of what was told of a lot's source, the last word that was not voided counts, and no other.
fn current_sources(conn: &mut Conn, order: &Order) -> Result<Vec<AuditFinding>> {
    let voided: HashSet<i32> = voids::table
        .select(voids::deed_id)
        .load(conn)?
        .into_iter()
        .collect();
    let mut rows: Vec<(i32, i32, i32, bool)> = sources::table
        .select((
            sources::lot_id,
            sources::id,
            sources::deed_id,
            sources::is_current,
        ))
        .load(conn)?;
    let place = |deed: i32| order.get(&deed).copied().unwrap_or(deed);
    rows.sort_by_key(|(lot, id, deed, _)| (*lot, place(*deed), *id));
    let mut last: HashMap<i32, i32> = HashMap::new();
    for (lot, id, deed, _) in &rows {
        if !voided.contains(deed) {
            last.insert(*lot, *id);
        }
    }
    let wrong = rows
        .iter()
        .filter(|(lot, id, _, current)| match last.get(lot) {
            Some(last) => *current != (last == id),
            None => false, // the lot itself was voided: its word stays as it was
        });
    let mut wrong: Vec<i32> = wrong.map(|(lot, ..)| *lot).collect();
    wrong.dedup();
    let says = "its source is not the last that was told of it";
    let finding = |lot: &i32| AuditFinding::new(format!("lot {lot}"), says);
    Ok(wrong.iter().map(finding).collect())
}
