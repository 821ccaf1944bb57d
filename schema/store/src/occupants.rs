//! Which packs stood in a place at a moment.

use crate::conn::Conn;
use crate::error::Result;
use crate::lots::LotRow;
use crate::tables::{deeds, lots, pack_events, packs, voids};
use chrono::NaiveDateTime;
use diesel::prelude::*;
use domain::words::Account;
use std::collections::{BTreeMap, BTreeSet};

/// A pack's number, in its lot.
pub type Occupants = BTreeMap<i32, Vec<i32>>;

/// The packs that stood in a place at a moment with something left in them, by lot: from where each is
/// now, back through what was done with it since.
///
/// # Errors
/// The database is away.
pub fn at(conn: &mut Conn, place: i32, moment: NaiveDateTime) -> Result<Occupants> {
    let all = maybe_there(conn, place, moment)?;
    let mut found = Occupants::new();
    for (lot, number, _) in among(conn, place, moment, &all)? {
        found.entry(lot).or_default().push(number);
    }
    Ok(found)
}

/// Those of some packs that stood in a place at a moment with something left in them: the lot, the number, the key.
///
/// # Errors
/// The database is away.
pub fn among(
    conn: &mut Conn,
    place: i32,
    moment: NaiveDateTime,
    all: &[i32],
) -> Result<Vec<(i32, i32, i32)>> {
    let mut found = Vec::new();
    for keys in all.chunks(500) {
        let rows: Vec<(i32, i32, i32, i64, i32)> = packs::table
            .inner_join(lots::table.on(lots::id.eq(packs::lot_id)))
            .filter(packs::id.eq_any(keys))
            .filter(lots::made_at.le(moment).and(lots::voided.eq(false)))
            .order((packs::lot_id, packs::number))
            .select((
                packs::id,
                packs::lot_id,
                packs::number,
                packs::left_mg,
                lots::born_place_id,
            ))
            .load(conn)?;
        let events: Vec<(i32, NaiveDateTime, String, i64, Option<i32>)> = pack_events::table
            .inner_join(deeds::table.on(deeds::id.eq(pack_events::deed_id)))
            .left_join(voids::table.on(voids::deed_id.eq(pack_events::deed_id)))
            .filter(pack_events::pack_id.eq_any(keys).and(voids::id.is_null()))
            .order((deeds::at, pack_events::id))
            .select((
                pack_events::pack_id,
                deeds::at,
                pack_events::account,
                pack_events::mg,
                pack_events::place_id,
            ))
            .load(conn)?;
        for (pack, lot, number, left, born) in rows {
            let of_pack = || events.iter().filter(|event| event.0 == pack);
            let then = of_pack().filter(|event| event.1 <= moment);
            let stood = then.filter_map(|event| event.4).next_back().unwrap_or(born);
            let since = of_pack().filter(|event| event.1 > moment);
            let taken: i64 = since
                .map(|event| match Account::parse(&event.2) {
                    Some(Account::TakenBack) => -event.3,
                    Some(Account::Moved | Account::Noted) => 0,
                    _ => event.3,
                })
                .sum();
            if stood == place && left + taken > 0 {
                found.push((lot, number, pack));
            }
        }
    }
    Ok(found)
}

/// From when until when a pack was in a place.
pub type Stay = (NaiveDateTime, NaiveDateTime);

/// A pack that stood in a place for a time.
#[derive(Debug, Clone, Copy)]
pub struct Stayed {
    /// Its lot.
    pub lot: i32,
    /// Its number in that.
    pub number: i32,
    /// Its key.
    pub pack: i32,
    /// From when until when.
    pub stay: Stay,
    /// Is anything left in it now?
    pub is_left: bool,
}

/// The packs that stood in a place for a part of a time, wherever they went since. Some packs, or any.
///
/// # Errors
/// The database is away.
pub fn between(
    conn: &mut Conn,
    place: i32,
    (from, until): Stay,
    some: Option<&[i32]>,
) -> Result<Vec<Stayed>> {
    let all = match some {
        Some(some) => some.to_vec(),
        None => maybe_there(conn, place, from)?,
    };
    let mut found = Vec::new();
    for keys in all.chunks(500) {
        let rows: Vec<(i32, i32, i32, i32, NaiveDateTime, i64)> = packs::table
            .inner_join(lots::table.on(lots::id.eq(packs::lot_id)))
            .filter(packs::id.eq_any(keys))
            .filter(lots::made_at.lt(until).and(lots::voided.eq(false)))
            .order((packs::lot_id, packs::number))
            .select((
                packs::id,
                packs::lot_id,
                packs::number,
                lots::born_place_id,
                lots::made_at,
                packs::left_mg,
            ))
            .load(conn)?;
        let moves: Vec<(i32, NaiveDateTime, Option<i32>)> = pack_events::table
            .inner_join(deeds::table.on(deeds::id.eq(pack_events::deed_id)))
            .left_join(voids::table.on(voids::deed_id.eq(pack_events::deed_id)))
            .filter(pack_events::pack_id.eq_any(keys).and(voids::id.is_null()))
            .filter(pack_events::place_id.is_not_null())
            .order((deeds::at, pack_events::id))
            .select((pack_events::pack_id, deeds::at, pack_events::place_id))
            .load(conn)?;
        for (pack, lot, number, born, made, left) in rows {
            let mut here = (born, made);
            let mut stays: Vec<Stay> = Vec::new();
            let of_pack = moves.iter().filter(|moved| moved.0 == pack);
            let moved = of_pack.filter_map(|moved| Some((moved.2?, moved.1)));
            for (to, at) in moved.chain([(0, until.max(made))]) {
                if here.0 == place {
                    stays.push((here.1.max(from), at.min(until)));
                }
                here = (to, at);
            }
            let stays = stays.into_iter().filter(|(came, went)| came < went);
            found.extend(stays.map(|stay| Stayed {
                lot,
                number,
                pack,
                stay,
                is_left: left > 0,
            }));
        }
    }
    Ok(found)
}

/// The packs that stand in a place, and those with which anything was done since a moment.
fn maybe_there(conn: &mut Conn, place: i32, moment: NaiveDateTime) -> Result<Vec<i32>> {
    let here: Vec<i32> = packs::table
        .filter(packs::place_id.eq(place).and(packs::left_mg.gt(0)))
        .select(packs::id)
        .load(conn)?;
    let touched: Vec<i32> = pack_events::table
        .inner_join(deeds::table.on(deeds::id.eq(pack_events::deed_id)))
        .filter(deeds::at.gt(moment))
        .select(pack_events::pack_id)
        .distinct()
        .load(conn)?;
    let all: BTreeSet<i32> = here.into_iter().chain(touched).collect();
    Ok(all.into_iter().collect())
}

/// What a lot was made of: each pack that went into its step, with when it did.
///
/// # Errors
/// The database is away.
pub fn parts_of(conn: &mut Conn, lot: i32) -> Result<Vec<(LotRow, i32, NaiveDateTime)>> {
    let made = lots::table
        .filter(lots::id.eq(lot))
        .select(lots::deed_id)
        .first::<i32>(conn)?;
    Ok(pack_events::table
        .inner_join(deeds::table.on(deeds::id.eq(pack_events::deed_id)))
        .inner_join(lots::table.on(lots::id.eq(pack_events::lot_id)))
        .filter(pack_events::deed_id.eq(made))
        .filter(pack_events::account.eq(Account::Used.as_str()))
        .order(pack_events::id)
        .select((LotRow::as_select(), pack_events::pack_id, deeds::at))
        .load(conn)?)
}

/// The lots that were made of a lot, or of one pack of it, after a moment, and what was made of those since.
///
/// # Errors
/// The database is away.
pub fn made_since(
    conn: &mut Conn,
    lot: i32,
    pack: Option<i32>,
    moment: NaiveDateTime,
) -> Result<Vec<LotRow>> {
    let mut found: Vec<LotRow> = Vec::new();
    let mut open = vec![lot];
    while !open.is_empty() {
        let mut used = pack_events::table
            .inner_join(deeds::table.on(deeds::id.eq(pack_events::deed_id)))
            .filter(pack_events::lot_id.eq_any(std::mem::take(&mut open)))
            .filter(pack_events::account.eq(Account::Used.as_str()))
            .filter(deeds::at.gt(moment))
            .select(pack_events::deed_id)
            .into_boxed();
        // Only of the first is it known which pack is meant.
        if let (true, Some(pack)) = (found.is_empty(), pack) {
            used = used.filter(pack_events::pack_id.eq(pack));
        }
        let steps: Vec<i32> = used.load(conn)?;
        let made: Vec<LotRow> = lots::table
            .filter(lots::deed_id.eq_any(steps).and(lots::voided.eq(false)))
            .order(lots::id)
            .select(LotRow::as_select())
            .load(conn)?;
        for row in made {
            if !found.iter().any(|known| known.id == row.id) {
                open.push(row.id);
                found.push(row);
            }
        }
    }
    Ok(found)
}
