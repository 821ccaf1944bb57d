//! A place: what stands in it, how warm it was, when it was cleaned down.

use super::brief::briefs;
use super::today::place_days;
use crate::caller::Caller;
use crate::error::Result;
use crate::lists::List;
use crate::lists::entry::no_such_entry;
use crate::lists::standing::Standing;
use chrono::{DateTime, NaiveDate, TimeDelta, Utc};
use domain::family::Listed;
use domain::grams::Grams;
use domain::heat::{Broken, beyond};
use domain::lot::{Brief, Pack, PackId};
use domain::measure::Temperature;
use domain::product::Product;
use domain::words::{DeedKind, ProductKind, StopKind};
use std::collections::{BTreeMap, HashMap};
use std::sync::Arc;
use store::{Conn, deeds, lots, places, stands, stops};

/// What a container of food is to the eye.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StandsAs {
    /// An animal, or a side of one.
    Carcass,
    /// A piece that is cut on, or hangs.
    Piece,
    /// A pack, a tub, a sack.
    Pack,
}

impl StandsAs {
    /// What a container of a lot is: what comes off a carcass, hangs, or is one lump that is cut on, is a piece.
    fn of(product: &Product, made_by: &str, born_packs: i32) -> StandsAs {
        let is_cut = product.kind == ProductKind::Cut;
        let off_a_carcass = made_by == DeedKind::BreakDown.as_str();
        let one = born_packs == 1 && !product.sale.offered;
        match product.kind {
            ProductKind::Carcass => StandsAs::Carcass,
            _ if product.is_hung() || is_cut && (off_a_carcass || one) => StandsAs::Piece,
            _ => StandsAs::Pack,
        }
    }
}

/// How many containers there are of each sort.
#[derive(Debug, Clone, Copy, Default)]
pub struct Counted {
    /// Animals, and sides.
    pub carcasses: usize,
    /// Pieces.
    pub pieces: usize,
    /// Packs.
    pub packs: usize,
}

impl Counted {
    /// So many more.
    pub fn add(&mut self, what: StandsAs, count: usize) {
        *match what {
            StandsAs::Carcass => &mut self.carcasses,
            StandsAs::Piece => &mut self.pieces,
            StandsAs::Pack => &mut self.packs,
        } += count;
    }
}

/// What stands in each place, by its key.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn counted(app: &Caller<'_>, conn: &mut Conn) -> Result<HashMap<i32, Counted>> {
    let mut all: HashMap<i32, Counted> = HashMap::new();
    for one in stands::counted(conn, None)? {
        let product = app.product(conn, one.version_id)?;
        let what = StandsAs::of(&product, &one.made_by, one.pack_count);
        let count = usize::try_from(one.packs).unwrap_or(0);
        all.entry(one.place_id).or_default().add(what, count);
    }
    Ok(all)
}

/// A lot of which some stands in a place.
pub struct StandingLot {
    /// The lot.
    pub lot: Brief,
    /// Those of its packs that stand there.
    pub packs: Vec<Pack>,
    /// What each of them is to the eye.
    pub stands_as: StandsAs,
    /// Does something stand in its way?
    pub stopped: bool,
    /// Is it held, by a person or a recall? Then it is not thrown away by the way.
    pub held: bool,
    /// What its stops are on: one of its packs, or all of it.
    on: Vec<Option<PackId>>,
}

impl StandingLot {
    /// What of it stands there.
    pub fn grams(&self) -> Grams {
        self.packs.iter().map(|pack| pack.now.left).sum()
    }

    /// Does something stand in the way of a pack of it?
    pub fn is_stopped(&self, pack: &Pack) -> bool {
        let mut on = self.on.iter();
        on.any(|one| one.is_none_or(|one| one == pack.id))
    }

    /// Is a pack of it as good as it was: nothing stands in its way, and its day is not over?
    pub fn is_good(&self, pack: &Pack, today: NaiveDate) -> bool {
        !self.is_stopped(pack) && pack.now.use_by.is_none_or(|day| day >= today)
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
    /// When it was read last and was as cold as it has to be, and what it showed.
    pub cold: Option<(DateTime<Utc>, Temperature)>,
    /// When it was cleaned down last, and by whom.
    pub cleaned: Option<(DateTime<Utc>, String)>,
    /// When raw food, and when food that is ready, was worked here since.
    pub worked: (Option<DateTime<Utc>>, Option<DateTime<Utc>>),
    /// Has it failed lately, and has nobody read it cold since?
    pub failed: bool,
    /// The limit that its last reading broke.
    pub beyond: Option<Broken>,
}

impl PlaceView {
    /// How many packs stand there.
    pub fn packs(&self) -> usize {
        self.lots.iter().map(|lot| lot.packs.len()).sum()
    }

    /// How many of each sort.
    pub fn counted(&self) -> Counted {
        let mut all = Counted::default();
        for lot in &self.lots {
            all.add(lot.stands_as, lot.packs.len());
        }
        all
    }
}

/// So many readings are told of.
const READINGS: usize = 8;
/// For so long a failure is what a place is about, unless it is read cold.
const LATELY: TimeDelta = TimeDelta::hours(24);
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
    let mut sorts: HashMap<i32, StandsAs> = HashMap::new();
    for one in stands::counted(conn, Some(key.0))? {
        let product = app.product(conn, one.version_id)?;
        let what = StandsAs::of(&product, &one.made_by, one.pack_count);
        sorts.insert(one.lot_id, what);
    }
    let each = rows.iter().zip(short);
    let each = each.map(|(row, lot)| StandingLot {
        lot,
        stands_as: sorts.get(&row.id).copied().unwrap_or(StandsAs::Pack),
        packs: by_lot.remove(&row.id).unwrap_or_default(),
        stopped: has(row.id, &|_| true),
        held: has(row.id, &|kind| kind == StopKind::Held),
        on: { placed.get(&row.id).into_iter().flatten() }
            .filter(|stop| stop.ended.is_none())
            .map(|stop| stop.pack)
            .collect(),
    });
    let each: Vec<StandingLot> = each.collect();
    let read = places::read_of(conn, key.0)?.into_iter().rev();
    let warmth = read.filter_map(|of| {
        let read = Temperature::read(of.quantity, of.millionths)?;
        Some((of.at.and_utc(), read))
    });
    let mut warmth: Vec<(DateTime<Utc>, Temperature)> = warmth.collect();
    let law = app.laws(&standing.confirmed);
    let heat = &law.of(standing.kitchen.entry.profile.0).heat;
    let is_cold = |read: Temperature| beyond(listed.bounds, true, read, heat).is_none();
    let cold = warmth.iter().find(|(_, read)| is_cold(*read)).copied();
    warmth.truncate(READINGS);
    let failed = deeds::failures(conn, key.0, (app.now() - LATELY).naive_utc())?;
    let failed = failed.iter().map(|deed| deed.at.and_utc()).max();
    let failed = failed.is_some_and(|at| cold.is_none_or(|(read, _)| read < at));
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
        cold,
        failed,
        cleaned,
        standing,
    })
}
