//! The logs as the rules name them: a page of one for a program, the whole of a window for a file.

mod query;

pub use query::{LogForm, LogQuery, Window, day_of_page, known_log};

use super::LoadedFamily;
use super::says::QuerySays;
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::lists::kitchen::Kitchen;
use crate::lists::standing::Standing;
use crate::wire::told::told;
use chrono::{Days, NaiveDateTime};
use domain::law::Law;
use domain::log::{Bought, Due, Known, Log, LogKind, Party, due, log};
use domain::lot::{LotId, PlaceId};
use domain::words::DeedKind;
use std::collections::{BTreeSet, HashMap};
use std::sync::Arc;
use store::Conn;
use store::corrections::CorrectionRow;
use store::deeds::DeedRow;
use store::family::Extent;
use store::logs::{self, DeedSearch};

/// The most entries of one file. More is asked for in shorter windows.
pub const MOST: usize = 5_000;
/// How many deeds are loaded at once: each costs the same few statements.
const AT_ONCE: i64 = 500;
/// How many lots go into one walk back to their sources.
const LOTS_AT_ONCE: usize = 4_000;

/// A log of a window, or a page of it.
pub struct LogPage {
    /// The log.
    pub log: Log,
    /// The window, and what else narrows it.
    pub window: Window,
    /// The kitchen and its lists.
    pub standing: Arc<Standing>,
    /// The id of the last deed, where there are more.
    pub next: Option<Vec<u8>>,
    /// Who asked for it.
    pub asked_by: String,
    /// The end of the record's chain, as a line.
    pub anchor: Option<String>,
}

impl LogPage {
    /// The kitchen.
    pub fn kitchen(&self) -> &Kitchen {
        &self.standing.kitchen
    }
}

/// The law of the kitchen's place, as the kitchen has confirmed it.
pub fn law<'a>(app: &'a Caller<'_>, standing: &Standing) -> &'a Law {
    let place = standing.kitchen.entry.profile.0;
    app.app().laws(&standing.confirmed).of(place)
}

/// The logs, each with what makes it due here.
pub fn all<'a>(law: &'a Law) -> Vec<(LogKind, Vec<Due<'a>>)> {
    let kinds = LogKind::ALL.iter();
    kinds.map(|kind| (*kind, due(&law.duties, *kind))).collect()
}

/// A page of a log.
///
/// # Errors
/// 422 for a window or another value that cannot be; 404 for a lot that was never issued.
pub fn page(app: &Caller<'_>, conn: &mut Conn, kind: LogKind, query: &LogQuery) -> Result<LogPage> {
    let standing = app.standing(conn)?;
    let window = Window::read(app, conn, &standing, query)?;
    let limit = super::find::limit(query.limit.as_deref())?;
    let mut rows = logs::deeds(conn, &search(kind, &window), limit + 1)?;
    let more = rows.len() as i64 > limit;
    rows.truncate(usize::try_from(limit).unwrap_or(0));
    let next = rows.last().filter(|_| more).map(|row| row.uid.clone());
    let log = of_deeds(app, conn, kind, &standing, &window, &rows)?;
    Ok(LogPage {
        log,
        window,
        standing,
        next,
        asked_by: app.who.name.to_string(),
        anchor: store::chain::anchor(conn)?.map(|anchor| anchor.in_groups()),
    })
}

/// The whole of a log in a window.
///
/// # Errors
/// 422 where that is more than one file holds, or for what [`page`] refuses.
pub fn whole(
    app: &Caller<'_>,
    conn: &mut Conn,
    kind: LogKind,
    query: &LogQuery,
) -> Result<LogPage> {
    let standing = app.standing(conn)?;
    let mut window = Window::read(app, conn, &standing, query)?;
    window.after = None;
    let mut log = Log {
        kind,
        entries: Vec::new(),
    };
    loop {
        let rows = logs::deeds(conn, &search(kind, &window), AT_ONCE)?;
        let part = of_deeds(app, conn, kind, &standing, &window, &rows)?;
        log.entries.extend(part.entries);
        if log.entries.len() > MOST {
            let says = QuerySays::LogTooLong { most: MOST };
            return Err(Error::cannot_be("until", says));
        }
        match rows.last() {
            Some(last) if rows.len() as i64 == AT_ONCE => {
                window.after = Some((last.at, last.id));
            }
            _ => break,
        }
    }
    window.after = None;
    Ok(LogPage {
        log,
        window,
        standing,
        next: None,
        asked_by: app.who.name.to_string(),
        anchor: store::chain::anchor(conn)?.map(|anchor| anchor.in_groups()),
    })
}

fn search<'a>(kind: LogKind, window: &'a Window) -> DeedSearch<'a> {
    DeedSearch {
        from: window.from.naive_utc(),
        until: window.until.naive_utc(),
        kinds: kind.deeds(),
        or_stopped: kind.lists_stops(),
        made_lots: kind.wants_lots(),
        place: window.place,
        by: window.by.as_deref(),
        lot: window.lot.as_ref().map(|(key, _)| *key),
        after: window.after,
    }
}

/// The log of some deeds.
fn of_deeds(
    app: &Caller<'_>,
    conn: &mut Conn,
    kind: LogKind,
    standing: &Arc<Standing>,
    window: &Window,
    rows: &[DeedRow],
) -> Result<Log> {
    let logs::Loaded {
        mut doings,
        corrections,
    } = logs::load(conn, rows)?;
    for (doing, row) in doings.iter_mut().zip(rows) {
        doing.told = told(&row.request, &now(&corrections, row.id))?;
    }
    let (cleaned, ground) = around(conn, kind, window, rows)?;
    let mut lots: BTreeSet<i32> = BTreeSet::new();
    for doing in &doings {
        lots.extend(doing.made.iter().map(|lot| lot.0));
        lots.extend(doing.drew.iter().map(|drawn| drawn.lot.0));
        lots.extend(doing.lots().iter().map(|lot| lot.0));
    }
    lots.extend(ground.iter().map(|of| of.lot.0));
    let lots: Vec<i32> = lots.into_iter().collect();
    let mut reading = LoadedFamily::load(app.app(), conn, &[], Extent::ANCESTORS)?;
    for some in lots.chunks(LOTS_AT_ONCE) {
        let more = LoadedFamily::load(app.app(), conn, some, Extent::ANCESTORS)?.family;
        reading.family.lots.extend(more.lots);
        reading
            .family
            .ancestry
            .made_by
            .extend(more.ancestry.made_by);
        reading.family.ancestry.uses.extend(more.ancestry.uses);
    }
    let bought = bought(conn, &reading)?;
    let checked = match kind.columns().contains(&domain::log::Column::Probe) {
        true => {
            // A check of a year ago says nothing more.
            let from = window.from - chrono::TimeDelta::days(366);
            logs::probe_checks(conn, from.naive_utc(), window.until.naive_utc())?
        }
        false => Default::default(),
    };
    let entry = &standing.kitchen.entry;
    let kitchen = Party {
        name: entry.name.0.clone(),
        address: entry.address.as_ref().map(|address| address.0.clone()),
        number: None,
    };
    let known = Known {
        family: &reading.family,
        lists: &standing.lists,
        law: law(app, standing),
        kitchen: &kitchen,
        bought: &bought,
        cleaned: &cleaned,
        ground: &ground,
        checked: &checked,
        zone: standing.kitchen.zone,
    };
    Ok(log(kind, &doings, &known))
}

/// What corrections say of a deed, in the order in which they were recorded.
fn now(corrections: &[CorrectionRow], deed: i32) -> Vec<&str> {
    let of = corrections.iter().filter(|of| of.deed_id == deed);
    of.map(|of| of.now.as_str()).collect()
}

/// The clean-downs round the deeds of a log, and what was worked at the same places.
fn around(
    conn: &mut Conn,
    kind: LogKind,
    window: &Window,
    rows: &[DeedRow],
) -> Result<(Vec<domain::log::Cleaned>, Vec<domain::log::Ground>)> {
    if !matches!(kind, LogKind::Grinding | LogKind::CleanDowns) {
        return Ok((Vec::new(), Vec::new()));
    }
    let places: BTreeSet<i32> = rows.iter().filter_map(|row| row.place_id).collect();
    let places: Vec<i32> = places.into_iter().collect();
    let (Some(first), Some(last)) = (rows.first(), rows.last()) else {
        return Ok((Vec::new(), Vec::new()));
    };
    let began = |row: &DeedRow| row.began_at.unwrap_or(row.at);
    let from: NaiveDateTime = rows.iter().map(began).min().unwrap_or(first.at);
    let until = last.at + chrono::TimeDelta::microseconds(1);
    let cleaned = logs::cleaned(conn, &places, from, until)?;
    // What lies longer back than a month was not carried over, whatever was written down.
    let month = (window.from - Days::new(31)).naive_utc();
    let of = |place: &i32| {
        let own = cleaned.iter().filter(|of| of.place == PlaceId(*place));
        own.map(|of| of.at.naive_utc()).find(|at| *at < from)
    };
    let since = places.iter().map(|place| of(place).unwrap_or(month));
    let since = since.min().unwrap_or(from).max(month);
    let kinds: &[DeedKind] = match kind {
        LogKind::Grinding => &[DeedKind::Grind],
        _ => &[],
    };
    let ground = logs::ground(conn, &places, since, until, kinds)?;
    Ok((cleaned, ground))
}

/// What was told of the bought lots of a family besides who sold them.
fn bought(conn: &mut Conn, reading: &LoadedFamily<'_>) -> Result<HashMap<LotId, Bought>> {
    let lots = reading.family.lots.values();
    let received = lots.filter(|of| of.source.as_ref().is_some_and(|of| of.animal.is_none()));
    let keys: Vec<i32> = received.map(|of| of.lot.id.0).collect();
    let mut bought = HashMap::new();
    for some in keys.chunks(LOTS_AT_ONCE) {
        for row in store::sources::current(conn, some)? {
            let told = Bought {
                packed_on: row.packed_on,
                use_by: row.use_by,
            };
            bought.insert(LotId(row.lot_id), told);
        }
    }
    Ok(bought)
}
