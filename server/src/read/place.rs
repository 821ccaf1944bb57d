//! A place: what stands in it, how warm it was, when it was cleaned down.

use super::brief::briefs;
use super::today::place_days;
use crate::caller::Caller;
use crate::error::Result;
use crate::lists::List;
use crate::lists::entry::no_such_entry;
use crate::lists::standing::Standing;
use chrono::{DateTime, Utc};
use domain::family::Listed;
use domain::grams::Grams;
use domain::heat::Broken;
use domain::lot::{Brief, Pack};
use domain::measure::Temperature;
use domain::words::StopKind;
use std::collections::BTreeMap;
use std::sync::Arc;
use store::{Conn, deeds, lots, measurements, stands, stops};

/// A lot of which some stands in a place.
pub struct StandingLot {
    /// The lot.
    pub lot: Brief,
    /// Those of its packs that stand there.
    pub packs: Vec<Pack>,
    /// Does something stand in its way?
    pub stopped: bool,
    /// Is it held, by a person or a recall? Then it is not thrown away by the way.
    pub held: bool,
}

impl StandingLot {
    /// What of it stands there.
    pub fn grams(&self) -> Grams {
        self.packs.iter().map(|pack| pack.now.left).sum()
    }
}

/// A place.
pub struct PlaceView {
    /// The kitchen and its lists.
    pub standing: Arc<Standing>,
    /// Its code.
    pub code: String,
    /// What the list says of it.
    pub listed: Listed,
    /// What stands in it, by the order in which it came to be.
    pub lots: Vec<StandingLot>,
    /// How warm it was, the last first.
    pub warmth: Vec<(DateTime<Utc>, Temperature)>,
    /// When it was cleaned down last, and by whom.
    pub cleaned: Option<(DateTime<Utc>, String)>,
    /// When raw food, and when food that is ready, was worked here since.
    pub worked: (Option<DateTime<Utc>>, Option<DateTime<Utc>>),
    /// The limit that its last reading broke.
    pub beyond: Option<Broken>,
}

impl PlaceView {
    /// How many packs stand there.
    pub fn packs(&self) -> usize {
        self.lots.iter().map(|lot| lot.packs.len()).sum()
    }
}

/// So many readings are told of.
const READINGS: usize = 8;
/// So many clean-downs are looked at for one that was not voided.
const CLEANED: i64 = 12;

/// A place by its code.
///
/// # Errors
/// 404 where the list has none of that code; the database is away, or the record is damaged.
pub fn read(app: &Caller<'_>, conn: &mut Conn, code: &str) -> Result<PlaceView> {
    let standing = app.standing(conn)?;
    let lists = &standing.lists;
    let known = lists.places.get(code).zip(lists.place_key(code));
    let (listed, key) = known.ok_or_else(|| no_such_entry(List::Places, code))?;
    let listed = listed.clone();
    let mut by_lot: BTreeMap<i32, Vec<Pack>> = BTreeMap::new();
    for row in stands::in_place(conn, key.0)? {
        by_lot.entry(row.lot_id).or_default().push(row.pack()?);
    }
    let keys: Vec<i32> = by_lot.keys().copied().collect();
    let rows = lots::by_keys(conn, &keys)?;
    let placed = stops::of_lots(conn, &keys)?;
    let has = |lot: i32, of: &dyn Fn(StopKind) -> bool| {
        let mut open = placed.get(&lot).into_iter().flatten();
        open.any(|stop| stop.ended.is_none() && of(stop.cause.kind))
    };
    let short = briefs(app, conn, &rows)?;
    let each = rows.iter().zip(short).map(|(row, lot)| StandingLot {
        lot,
        packs: by_lot.remove(&row.id).unwrap_or_default(),
        stopped: has(row.id, &|_| true),
        held: has(row.id, &|kind| kind == StopKind::Held),
    });
    let each: Vec<StandingLot> = each.collect();
    let read = measurements::of_place(conn, key.0)?.into_iter().rev();
    let warmth = read.filter_map(|(at, quantity, millionths)| {
        Some((at.and_utc(), Temperature::read(quantity, millionths)?))
    });
    let warmth = warmth.take(READINGS).collect();
    let mut cleaned = None;
    for deed in deeds::clean_downs(conn, code, CLEANED)? {
        if deeds::voided_by(conn, deed.id)?.is_none() {
            cleaned = Some((deed.at.and_utc(), deed.person));
            break;
        }
    }
    let zone = standing.kitchen.zone;
    let days = place_days(app, conn, &standing, app.now(), zone)?;
    let day = days.into_iter().find(|day| day.code == code);
    Ok(PlaceView {
        worked: day
            .as_ref()
            .map_or((None, None), |day| (day.raw, day.ready)),
        beyond: day.and_then(|day| day.beyond).map(|(broken, _)| broken),
        code: code.to_owned(),
        listed,
        lots: each,
        warmth,
        cleaned,
        standing,
    })
}
