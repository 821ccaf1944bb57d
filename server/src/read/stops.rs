//! Every stop that stands on something on hand, by place.

use super::LoadedFamily;
use crate::caller::Caller;
use crate::error::Result;
use crate::wire::answers::{StoppedRead, StopsRead, stop_read};
use chrono::{DateTime, Utc};
use domain::lot::{Lot, Pack};
use domain::moment::day_of;
use domain::stop::{self, Stop};
use domain::words::StopKind;
use std::collections::{BTreeMap, HashSet};
use store::Conn;
use store::family::Extent;
use store::lots::LotRow;

/// The stops that stand now.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn standing(app: &Caller<'_>, conn: &mut Conn) -> Result<StopsRead> {
    let now = app.now();
    let standing = app.standing(conn)?;
    let zone = standing.kitchen.zone;
    let today = day_of(now, zone);
    let mut keys = store::stops::stopped_lots(conn)?;
    keys.extend(store::stops::past_lots(conn, today)?);
    keys.extend(store::stops::unproven_lots(conn, today)?);
    keys.extend(store::wrong_labels::lots_on_hand(conn)?);
    keys.extend(super::cure_room::hanging(conn, &standing.lists)?);
    keys.sort_unstable();
    keys.dedup();
    let reading = LoadedFamily::load(app.app(), conn, &keys, Extent::ALONE)?;
    let speech = app.speech(reading.kitchen());
    let lots = keys.iter().filter_map(|key| {
        let of = reading.family.get(domain::lot::LotId(*key))?;
        Some(&of.lot)
    });
    let mut found = BTreeMap::new();
    for lot in lots {
        for pack in lot.on_hand() {
            let place = reading.standing.lists.place_code(pack.now.place);
            let stops = stop::on(lot, Some(pack), now, today).into_iter();
            // What waits in the bin is told by its own page.
            for stop in stops.filter(|stop| stop.kind != StopKind::Waste) {
                add(&mut found, place, lot, pack, stop);
            }
        }
    }
    let told = |((place, _, _), (lot, packs, stop)): (Key, (&Lot, Vec<u32>, Stop))| StoppedRead {
        place,
        lot: lot.code.to_string(),
        packs,
        product: lot.product.code.clone(),
        stop: stop_read(&stop, zone, &speech),
    };
    let before = store::stops::judged_before(conn)?;
    let before = store::lots::by_keys(conn, &before)?;
    let listed = store::stops::read_from_list(conn)?;
    let listed = store::lots::by_keys(conn, &listed)?;
    Ok(StopsRead {
        stops: found.into_iter().map(told).collect(),
        judged_before: before.into_iter().map(|row| row.code).collect(),
        read_from_list: listed.into_iter().map(|row| row.code).collect(),
    })
}

/// The stop that was placed on each of these lots and stands on something that is left of it, where there is one: for lists.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn marked(
    conn: &mut Conn,
    lots: &[LotRow],
    now: DateTime<Utc>,
) -> Result<Vec<Option<StopKind>>> {
    let on_hand = lots.iter().filter(|row| row.stopped && row.on_hand_mg > 0);
    let on_hand: Vec<i32> = on_hand.map(|row| row.id).collect();
    let mut placed = store::stops::of_lots(conn, &on_hand)?;
    for stops in placed.values_mut() {
        stops.retain(|stop| stop.stands(now));
    }
    let by_pack = placed
        .iter()
        .filter(|(_, stops)| stops.iter().any(|stop| stop.pack.is_some()));
    let by_pack: Vec<i32> = by_pack.map(|(lot, _)| *lot).collect();
    let left = match by_pack[..] {
        [] => Vec::new(),
        _ => store::packs::left_of_lots(conn, &by_pack)?,
    };
    let left: HashSet<i32> = left.iter().map(|pack| pack.id).collect();
    let mark = |row: &LotRow| {
        let mut stops = placed.get(&row.id)?.iter();
        let stop = stops.find(|stop| stop.pack.is_none_or(|pack| left.contains(&pack.0)))?;
        Some(stop.cause.told().kind)
    };
    Ok(lots.iter().map(mark).collect())
}

/// The place, the lot, and which of its stops there.
type Key = (String, i32, String);

fn add<'a>(
    found: &mut BTreeMap<Key, (&'a Lot, Vec<u32>, Stop)>,
    place: &str,
    lot: &'a Lot,
    pack: &Pack,
    stop: Stop,
) {
    // Packs that are past the same day are listed together.
    let which = match stop.root {
        Some(root) => format!("{} {} {:10}", stop.kind, stop.topic, root.0),
        // Each pack has a label of its own.
        None if stop.kind == StopKind::WrongLabel => format!("{} {:10}", stop.kind, pack.number),
        None => format!("{} {:?}", stop.kind, pack.now.use_by),
    };
    let key = (place.to_owned(), lot.id.0, which);
    let (_, packs, _) = found.entry(key).or_insert((lot, Vec::new(), stop));
    packs.push(pack.number);
}
