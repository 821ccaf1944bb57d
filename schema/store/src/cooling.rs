//! What came out of the heat lately, and what was read of it while it cooled.

use crate::conn::Conn;
use crate::error::Result;
use crate::measurements::quantity;
use crate::tables::{core_readings, deeds, lots, pack_events, voids};
use chrono::{DateTime, NaiveDateTime, Utc};
use diesel::prelude::*;
use domain::words::{DeedKind, Quantity};
use std::collections::BTreeMap;

/// A reading of a core: when, on which scale, in millionths of a degree.
pub type CoreRead = (DateTime<Utc>, Quantity, i64);

/// The lots that came out of the heat since a moment and of which something is left, each with the deed that made it.
///
/// # Errors
/// The database is away.
pub fn out_of_heat(conn: &mut Conn, since: NaiveDateTime) -> Result<Vec<(i32, i32)>> {
    let heats = [DeedKind::Cook, DeedKind::Smoke].map(DeedKind::as_str);
    Ok(lots::table
        .inner_join(deeds::table.on(deeds::id.eq(lots::deed_id)))
        .filter(lots::made_at.gt(since).and(deeds::kind.eq_any(heats)))
        .filter(lots::on_hand_mg.gt(0).and(lots::voided.eq(false)))
        .order(lots::id)
        .select((lots::id, lots::deed_id))
        .load(conn)?)
}

/// What was read of the cores of some lots: in the log of the deed that made each, and while it was chilled; by lot, the
/// earliest first.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn readings(conn: &mut Conn, of: &[(i32, i32)]) -> Result<BTreeMap<i32, Vec<CoreRead>>> {
    if of.is_empty() {
        return Ok(BTreeMap::new());
    }
    let keys: Vec<i32> = of.iter().map(|(lot, _)| *lot).collect();
    let chilled: Vec<(i32, i32)> = pack_events::table
        .inner_join(deeds::table.on(deeds::id.eq(pack_events::deed_id)))
        .left_join(voids::table.on(voids::deed_id.eq(pack_events::deed_id)))
        .filter(pack_events::lot_id.eq_any(&keys))
        .filter(
            deeds::kind
                .eq(DeedKind::Chill.as_str())
                .and(voids::id.is_null()),
        )
        .select((pack_events::lot_id, pack_events::deed_id))
        .distinct()
        .load(conn)?;
    let by: Vec<(i32, i32)> = of.iter().copied().chain(chilled).collect();
    let all: Vec<i32> = by.iter().map(|(_, deed)| *deed).collect();
    let rows: Vec<(i32, NaiveDateTime, String, i64)> = core_readings::table
        .filter(core_readings::deed_id.eq_any(&all))
        .order((core_readings::at, core_readings::id))
        .select((
            core_readings::deed_id,
            core_readings::at,
            core_readings::quantity,
            core_readings::millionths,
        ))
        .load(conn)?;
    let mut found: BTreeMap<i32, Vec<CoreRead>> = BTreeMap::new();
    for (deed, at, what, millionths) in rows {
        let read = (at.and_utc(), quantity(&what)?, millionths);
        for (lot, _) in by.iter().filter(|(_, of)| *of == deed) {
            let kept = found.entry(*lot).or_default();
            // Whoever reads on hands in what was read before as well.
            if !kept.iter().any(|(before, _, _)| *before == read.0) {
                kept.push(read);
            }
        }
    }
    Ok(found)
}
