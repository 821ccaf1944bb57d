//! Today: what needs a hand, for a page and for programs.

use super::LoadedFamily;
use super::cure_room::at_work;
use super::prints::{PrinterView, printers};
use super::says::QuerySays;
use crate::caller::Caller;
use crate::error::{Error, Result};
use chrono::{DateTime, Days, NaiveDate, TimeDelta, Utc};
use chrono_tz::Tz;
use domain::family::{Lists, lying, room};
use domain::grams::Grams;
use domain::heat::beyond;
use domain::lot::{LotId, PlaceId};
use domain::measure::Temperature;
use domain::moment::day_of;
use domain::today::{Frozen, Hand, Known, MissingPacks, OpenRecall, PlaceDay, Printer, hands};
use domain::words::PrintState;
use serde::Deserialize;
use std::collections::{BTreeMap, HashMap};
use store::family::{Extent, WalkStart};
use store::{Conn, places};
use utoipa::IntoParams;

/// Which part of the day is wanted. What is said of each field stands in the API's document.
#[derive(Debug, Default, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
pub struct TodayQuery {
    /// How many of them were read already
    pub after: Option<usize>,
    /// How many, at most 200; 50 if left out
    pub limit: Option<usize>,
}

/// The most of one page.
const MOST: usize = 200;
/// The most lots at or past their day that are looked at: the list of lots has all.
const MOST_LOTS: usize = 300;
/// What a count did not find longer ago than this is no more today's affair.
const MISSED: TimeDelta = TimeDelta::days(7);
/// What was worked at a place longer ago than this is no more today's affair.
const LOOKED_BACK: TimeDelta = TimeDelta::days(3);

/// A part of what needs a hand today.
pub struct Today {
    /// The things, in the order of the hour.
    pub hands: Vec<Hand>,
    /// How many there are in all.
    pub all: usize,
    /// Where the next part begins, if there is one.
    pub next: Option<usize>,
    /// The moment.
    pub now: DateTime<Utc>,
    /// The kitchen's time zone.
    pub zone: Tz,
    /// What an empty kitchen has already, in the order in which it is set up.
    pub begun: Begun,
    /// Labels on their way to a printer of which no hand tells.
    pub printing: usize,
}

/// How far a kitchen is set up.
#[derive(Debug, Clone, Copy, Default)]
pub struct Begun {
    /// It says who it is.
    pub kitchen: bool,
    /// It has places.
    pub places: bool,
    /// It has people besides the first.
    pub people: bool,
    /// It has a printer.
    pub printer: bool,
    /// A label came out at one of them, and nothing is wrong there.
    pub printer_prints: bool,
    /// It has products.
    pub products: bool,
    /// Something came in.
    pub lots: bool,
}

impl Begun {
    /// Each step, in the order in which a kitchen is set up. A printer that no test label came out of is none yet.
    pub const fn steps(self) -> [bool; 6] {
        [
            self.kitchen,
            self.places,
            self.people,
            self.printer_prints,
            self.products,
            self.lots,
        ]
    }

    /// Is nothing left to set up before work begins?
    pub fn is_done(self) -> bool {
        self.kitchen && self.places && self.products && self.lots
    }
}

/// How far a kitchen is set up.
///
/// # Errors
/// The database is away, or an entry is damaged.
pub fn begun(app: &Caller<'_>, conn: &mut Conn) -> Result<Begun> {
    let standing = app.standing(conn)?;
    let printers = printers(conn)?;
    let came_in = super::drills::due(app, conn)?.is_some();
    Ok(begun_of(app, &standing, &printers, came_in))
}

fn begun_of(
    app: &Caller<'_>,
    standing: &crate::lists::standing::Standing,
    printers: &[PrinterView],
    lots: bool,
) -> Begun {
    Begun {
        kitchen: standing.kitchen.is_set,
        places: !standing.lists.places.is_empty(),
        people: app.people().people.len() > 1,
        printer: !printers.is_empty(),
        printer_prints: printers
            .iter()
            .any(|one| one.came_out && one.trouble.is_none()),
        products: !standing.lists.products.is_empty(),
        lots,
    }
}

/// What needs a hand.
///
/// # Errors
/// The database is away, or the record is damaged; 422 for a part that cannot be.
pub fn read(app: &Caller<'_>, conn: &mut Conn, query: &TodayQuery) -> Result<Today> {
    let limit = query.limit.unwrap_or(50);
    if !(1..=MOST).contains(&limit) {
        let says = QuerySays::LimitRange { most: MOST as i64 };
        return Err(Error::cannot_be("limit", says));
    }
    let now = app.now();
    let standing = app.standing(conn)?;
    let zone = standing.kitchen.zone;
    let today = day_of(now, zone);
    let pieces = at_work(conn, &standing.lists)?;
    let hot = super::cooling::out_of_heat(conn, now)?;
    let days = place_days(app, conn, &standing, now, zone)?;
    let mut keys = keys(conn, today, &pieces)?;
    keys.extend(in_the_warm(conn, &standing.lists, &days)?);
    keys.extend(hot.iter().map(|(lot, _)| *lot));
    keys.sort_unstable();
    keys.dedup();
    let start = WalkStart::Keys(&keys);
    let reading =
        LoadedFamily::load_with(app.app(), conn, standing.clone(), start, Extent::ANCESTORS)?;
    let rules = &app.law.trade.cure_room;
    let of = || pieces.iter().copied().map(LotId);
    let lying = lying(&reading.family, of(), zone, today, rules);
    let pieces = room(&reading.family, of(), zone, today, rules);
    let cooling = super::cooling::going_on(conn, &hot, &reading.family, reading.law, zone)?;
    let names: BTreeMap<PlaceId, String> = standing
        .lists
        .place_codes
        .iter()
        .map(|(key, code)| (*key, standing.lists.place(code).to_owned()))
        .collect();
    let views = printers(conn)?;
    let printing = views.iter().map(on_the_way).sum();
    // Where nothing came in yet, no drill is due ever.
    let drill = super::drills::due_by(app, conn, &standing)?;
    let begun = begun_of(app, &standing, &views, drill.is_some());
    let printers: Vec<Printer> = views.into_iter().map(printer).collect();
    let frozen = frozen(conn, &standing.lists, today)?;
    let recalls = recalls(conn)?;
    let missing = missing(app, conn, now)?;
    let found = hands(&Known {
        today,
        now,
        family: &reading.family,
        pieces: &pieces,
        lying: &lying,
        cooling: &cooling,
        places: &names,
        recalls: &recalls,
        printers: &printers,
        days: &days,
        drill: drill.map(|drill| (drill.by, drill.last)),
        frozen,
        missing: &missing,
        copies: &super::copies::today(app, zone),
    });
    let all = found.len();
    let after = query.after.unwrap_or(0);
    if after > all {
        let says = QuerySays::NotAfter {
            after: after.to_string(),
        };
        return Err(Error::cannot_be("after", says));
    }
    let end = (after + limit).min(all);
    Ok(Today {
        hands: found.into_iter().skip(after).take(limit).collect(),
        all,
        next: (end < all).then_some(end),
        now,
        zone,
        begun,
        printing,
    })
}

/// What counts of these days did not find, by lot; the page of a lot tells of it for ever.
fn missing(app: &Caller<'_>, conn: &mut Conn, now: DateTime<Utc>) -> Result<Vec<MissingPacks>> {
    let found = store::stands::missing_since(conn, (now - MISSED).naive_utc())?;
    let mut keys: Vec<i32> = found.iter().map(|(pack, _)| pack.lot_id).collect();
    keys.dedup();
    keys.truncate(MOST_LOTS);
    if keys.is_empty() {
        return Ok(Vec::new());
    }
    let mut all = Vec::new();
    for row in store::lots::by_keys(conn, &keys)? {
        let of_lot = || found.iter().filter(|(pack, _)| pack.lot_id == row.id);
        let packs: Vec<u32> = of_lot()
            .map(|(pack, _)| pack.number.unsigned_abs())
            .collect();
        let lot = row.code()?;
        let numbers: Vec<String> = packs.iter().map(u32::to_string).collect();
        let days = of_lot().map(|(_, day)| *day);
        all.push(MissingPacks {
            shown: match row.pack_count {
                1 => lot.shown(),
                _ => format!("{}/{}", lot.shown(), numbers.join(", ")),
            },
            name: app.product(conn, row.version_id)?.named(),
            weight: Grams::from_milligrams(of_lot().map(|(pack, _)| pack.made_mg).sum()),
            day: days.max().unwrap_or(now.date_naive()),
            packs,
            lot,
        });
    }
    Ok(all)
}

/// The recalls that nobody has closed; a drill holds nothing.
fn recalls(conn: &mut Conn) -> Result<Vec<OpenRecall>> {
    let all = super::incidents::standing(conn)?.into_iter();
    let open = all.filter(|of| of.open && !of.drill);
    Ok(open
        .map(|of| OpenRecall {
            number: of.number,
            packs: of.packs,
            grams: of.weight,
        })
        .collect())
}

/// The lots that may need a hand: stopped, unproven, with a wrong label, at their day, or in the cure room.
fn keys(conn: &mut Conn, today: NaiveDate, pieces: &[i32]) -> Result<Vec<i32>> {
    let tomorrow = today.checked_add_days(Days::new(1)).unwrap_or(today);
    let mut keys = store::stops::past_lots(conn, tomorrow)?;
    keys.truncate(MOST_LOTS);
    keys.extend(store::stops::stopped_lots(conn)?);
    keys.extend(store::stops::unproven_lots(conn, today)?);
    keys.extend(store::wrong_labels::lots_on_hand(conn)?);
    keys.extend(pieces);
    keys.sort_unstable();
    keys.dedup();
    Ok(keys)
}

/// The lots of which some lie where it was too warm when it was read last.
fn in_the_warm(conn: &mut Conn, lists: &Lists, days: &[PlaceDay]) -> Result<Vec<i32>> {
    let mut keys = Vec::new();
    for day in days {
        let is_warm = day.beyond.as_ref().is_some_and(|(of, _)| of.is_warm);
        if let Some(place) = lists.place_key(&day.code).filter(|_| is_warm) {
            let packs = store::stands::in_place(conn, place.0)?.into_iter();
            keys.extend(packs.map(|pack| pack.lot_id));
        }
    }
    keys.dedup();
    keys.truncate(MOST_LOTS);
    Ok(keys)
}

/// What lies frozen, as long as nothing was thawed today.
fn frozen(conn: &mut Conn, lists: &Lists, today: NaiveDate) -> Result<Option<Frozen>> {
    let found = places::frozen_untouched(conn, today)?;
    Ok(found.map(|row| {
        let code = lists.place_code(PlaceId(row.place_id)).to_owned();
        Frozen {
            name: lists.place(&code).to_owned(),
            code,
            packs: usize::try_from(row.packs).unwrap_or(0),
            grams: Grams::from_milligrams(row.mg),
        }
    }))
}

fn count(view: &PrinterView, wanted: PrintState) -> usize {
    let of = view.counts.iter().filter(|(state, _)| *state == wanted);
    of.map(|(_, labels)| usize::try_from(*labels).unwrap_or(0))
        .sum()
}

/// Labels that have not come out yet, where a printer's trouble does not tell of them.
fn on_the_way(view: &PrinterView) -> usize {
    use PrintState::{Sending, Sent, Waiting};
    match view.trouble {
        Some(_) => 0,
        None => [Waiting, Sending, Sent]
            .map(|of| count(view, of))
            .iter()
            .sum(),
    }
}

fn printer(view: PrinterView) -> Printer {
    Printer {
        unsure: count(&view, PrintState::Unsure),
        waiting: count(&view, PrintState::Waiting),
        trouble: view.trouble.clone(),
        name: view.name.clone(),
    }
}

/// Every place that is cleaned down or read.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn place_days(
    app: &Caller<'_>,
    conn: &mut Conn,
    standing: &crate::lists::standing::Standing,
    now: DateTime<Utc>,
    zone: Tz,
) -> Result<Vec<PlaceDay>> {
    let cleaned: HashMap<_, _> = places::cleaned(conn)?.into_iter().collect();
    let read = places::read(conn)?;
    let law = app.laws(&standing.confirmed);
    let heat = &law.of(standing.kitchen.entry.profile.0).heat;
    let made = places::made_since(conn, (now - LOOKED_BACK).naive_utc())?;
    let mut days = Vec::new();
    for (code, listed) in &standing.lists.places {
        let key = standing.lists.place_key(code).map(|key| key.0);
        let last_clean = cleaned.get(&key).copied().flatten();
        let of_place = key.and_then(|key| read.get(&key));
        let mut day = PlaceDay {
            code: code.clone(),
            name: listed.name.clone(),
            has_limits: listed.has_limits,
            read: of_place.map(|read| day_of(read.at.and_utc(), zone)),
            beyond: of_place.and_then(|of| {
                let read = Temperature::read(of.quantity, of.millionths)?;
                let broken = beyond(listed.bounds, listed.keeps_food, read, heat)?;
                let at = of.at.and_utc().with_timezone(&zone).naive_local();
                Some((broken, at))
            }),
            is_cleaned: listed.is_contact,
            ..PlaceDay::default()
        };
        let here = made
            .iter()
            .filter(|(place, _, _)| listed.is_contact && *place == key);
        for (_, at, version) in here.filter(|(_, at, _)| last_clean.is_none_or(|clean| *at > clean))
        {
            let product = app.product(conn, *version)?;
            if product.species.is_none() && product.raw {
                continue;
            }
            let last = if product.raw {
                &mut day.raw
            } else {
                &mut day.ready
            };
            *last = (*last).max(Some(at.and_utc()));
        }
        days.push(day);
    }
    Ok(days)
}
