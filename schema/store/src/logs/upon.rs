//! The deeds that others void or correct, with their lots.

use crate::conn::Conn;
use crate::deeds::{self, DeedRow};
use crate::error::Result;
use crate::tables::{corrections, lots, pack_events, voids};
use diesel::prelude::*;
use domain::log::Upon;
use domain::lot::LotId;
use domain::words::DeedKind;
use std::collections::HashMap;

/// What the voids and corrections among some deeds are about.
///
/// # Errors
/// The database is away, or the record is damaged.
pub(super) fn of(conn: &mut Conn, rows: &[DeedRow]) -> Result<Vec<(i32, Upon)>> {
    let kinds = [DeedKind::Void.as_str(), DeedKind::Correct.as_str()];
    let keys = rows.iter().filter(|row| kinds.contains(&&*row.kind));
    let keys: Vec<i32> = keys.map(|row| row.id).collect();
    if keys.is_empty() {
        return Ok(Vec::new());
    }
    let mut pairs: Vec<(i32, i32)> = voids::table
        .filter(voids::id.eq_any(&keys))
        .select((voids::id, voids::deed_id))
        .load(conn)?;
    let corrected: Vec<(i32, i32)> = corrections::table
        .filter(corrections::id.eq_any(&keys))
        .select((corrections::id, corrections::deed_id))
        .load(conn)?;
    pairs.extend(corrected);
    let about: Vec<i32> = pairs.iter().map(|(_, about)| *about).collect();
    let known = deeds::by_keys(conn, &about)?;
    let known: HashMap<i32, &DeedRow> = known.iter().map(|row| (row.id, row)).collect();
    let mut touched: Vec<(i32, i32)> = lots::table
        .filter(lots::deed_id.eq_any(&about))
        .order(lots::id)
        .select((lots::deed_id, lots::id))
        .load(conn)?;
    let drawn: Vec<(i32, i32)> = pack_events::table
        .filter(pack_events::deed_id.eq_any(&about))
        .order(pack_events::id)
        .select((pack_events::deed_id, pack_events::lot_id))
        .load(conn)?;
    // What it made stands for it; else what it touched.
    let made: Vec<i32> = touched.iter().map(|(deed, _)| *deed).collect();
    touched.extend(drawn.into_iter().filter(|(deed, _)| !made.contains(deed)));
    let mut found = Vec::with_capacity(pairs.len());
    for (by, about) in pairs {
        let Some(row) = known.get(&about) else {
            continue;
        };
        let mut lots: Vec<LotId> = Vec::new();
        for (_, lot) in touched.iter().filter(|(deed, _)| *deed == about) {
            if !lots.contains(&LotId(*lot)) {
                lots.push(LotId(*lot));
            }
        }
        let upon = Upon {
            kind: row.kind()?,
            at: row.at.and_utc(),
            by: row.person.clone(),
            lots,
        };
        found.push((by, upon));
    }
    Ok(found)
}
