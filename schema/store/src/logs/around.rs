//! What happened round the deeds of a log: clean-downs, what was worked at the same benches and machines, checks of
//! probes.

use crate::conn::Conn;
use crate::error::Result;
use crate::tables::{deeds, entries, lots, probe_checks, voids};
use chrono::{DateTime, NaiveDateTime, Utc};
use diesel::dsl::{max, min};
use diesel::prelude::*;
use domain::log::{Cleaned, Ground};
use domain::lot::{LotId, PlaceId};
use domain::words::DeedKind;
use std::collections::BTreeMap;

/// The clean-downs of places from the last before a window to the first after it, in the order of their times.
///
/// # Errors
/// The database is away.
pub fn cleaned(
    conn: &mut Conn,
    places: &[i32],
    from: NaiveDateTime,
    until: NaiveDateTime,
) -> Result<Vec<Cleaned>> {
    if places.is_empty() {
        return Ok(Vec::new());
    }
    let of_them = || {
        deeds::table
            .left_join(voids::table.on(voids::deed_id.eq(deeds::id)))
            .filter(deeds::kind.eq(DeedKind::CleanDown.as_str()))
            .filter(deeds::place_id.eq_any(places).assume_not_null())
            .filter(voids::id.is_null())
    };
    type Row = (Option<i32>, Option<NaiveDateTime>);
    let before: Vec<Row> = of_them()
        .filter(deeds::at.lt(from))
        .group_by(deeds::place_id)
        .select((deeds::place_id, max(deeds::at)))
        .load(conn)?;
    let after: Vec<Row> = of_them()
        .filter(deeds::at.ge(until))
        .group_by(deeds::place_id)
        .select((deeds::place_id, min(deeds::at)))
        .load(conn)?;
    let within: Vec<(Option<i32>, NaiveDateTime)> = of_them()
        .filter(deeds::at.ge(from).and(deeds::at.lt(until)))
        .select((deeds::place_id, deeds::at))
        .load(conn)?;
    let within = within.into_iter().map(|(place, at)| (place, Some(at)));
    let all = before.into_iter().chain(within).chain(after);
    let mut cleaned: Vec<Cleaned> = all
        .filter_map(|(place, at)| {
            Some(Cleaned {
                place: PlaceId(place?),
                at: at?.and_utc(),
            })
        })
        .collect();
    cleaned.sort_by_key(|of| (of.at, of.place));
    Ok(cleaned)
}

/// The most lots that are told as worked at a place before.
const MOST: i64 = 5_000;

/// What was made at places in a time, in that order; only of some kinds of deed, where kinds are named.
///
/// # Errors
/// The database is away.
pub fn ground(
    conn: &mut Conn,
    places: &[i32],
    from: NaiveDateTime,
    until: NaiveDateTime,
    kinds: &[DeedKind],
) -> Result<Vec<Ground>> {
    if places.is_empty() {
        return Ok(Vec::new());
    }
    let mut query = lots::table
        .inner_join(deeds::table.on(deeds::id.eq(lots::deed_id)))
        .filter(deeds::place_id.eq_any(places).assume_not_null())
        .filter(deeds::kind.ne(DeedKind::Receive.as_str()))
        .filter(deeds::at.ge(from).and(deeds::at.lt(until)))
        .filter(lots::voided.eq(false))
        .order((deeds::at, lots::id))
        .limit(MOST)
        .select((deeds::place_id, deeds::at, lots::id))
        .into_boxed();
    if !kinds.is_empty() {
        let kinds: Vec<&str> = kinds.iter().map(|kind| kind.as_str()).collect();
        query = query.filter(deeds::kind.eq_any(kinds));
    }
    let rows: Vec<(Option<i32>, NaiveDateTime, i32)> = query.load(conn)?;
    let ground = rows.into_iter().filter_map(|(place, at, lot)| {
        Some(Ground {
            place: PlaceId(place?),
            at: at.and_utc(),
            lot: LotId(lot),
        })
    });
    Ok(ground.collect())
}

/// When each probe was checked in a time, by its code.
///
/// # Errors
/// The database is away.
pub fn probe_checks(
    conn: &mut Conn,
    from: NaiveDateTime,
    until: NaiveDateTime,
) -> Result<BTreeMap<String, Vec<DateTime<Utc>>>> {
    let rows: Vec<(String, NaiveDateTime)> = probe_checks::table
        .inner_join(deeds::table.on(deeds::id.eq(probe_checks::id)))
        .inner_join(entries::table.on(entries::id.eq(probe_checks::probe_id)))
        .left_join(voids::table.on(voids::deed_id.eq(probe_checks::id)))
        .filter(deeds::at.ge(from).and(deeds::at.lt(until)))
        .filter(voids::id.is_null())
        .order(deeds::at)
        .select((entries::code, deeds::at))
        .load(conn)?;
    let mut checks: BTreeMap<String, Vec<DateTime<Utc>>> = BTreeMap::new();
    for (probe, at) in rows {
        checks.entry(probe).or_default().push(at.and_utc());
    }
    Ok(checks)
}
