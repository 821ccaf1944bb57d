//! What the record holds of what goes into a cook: what of it was ground, pumped or stuffed, when the last of it came
//! in, and whether anybody knows of which animal it is.

use super::again::{effective, fields};
use super::facts::Facts;
use crate::error::Result;
use crate::read::LoadedFamily;
use chrono::{DateTime, TimeDelta, Utc};
use domain::code::LotCode;
use domain::cure::Method;
use domain::family::{self, Family, Relative, Together};
use domain::grams::Grams;
use domain::heat::{Pierced, PiercedBy};
use domain::limits::CLOCK_SLACK_MINUTES;
use domain::lot::{DeedId, Lot, LotId};
use domain::says::Texts;
use domain::words::DeedKind;
use std::collections::{BTreeMap, BTreeSet};
use store::family::Extent;

/// What was found of the meat in a cook.
#[derive(Default)]
pub(super) struct Found {
    /// What was ground, pumped or stuffed, if anything was.
    pub(super) pierced: Option<Pierced>,
    /// What went in with it of which the cook says that it fills nothing.
    pub(super) around: Option<(LotCode, Texts)>,
    /// What of the raw food came in last, and when, by what was told.
    pub(super) came_in: Option<(DateTime<Utc>, LotCode)>,
    /// What of it was typed in last without a word on when it came: it was there by then.
    pub(super) typed: Option<(DateTime<Utc>, LotCode)>,
    /// Raw meat of which nobody knows the animal.
    pub(super) unknown: Option<(LotCode, Texts)>,
}

/// Looks at all that the lots came from, and at what goes in together where `asks_pierced`; `said` is what the cook
/// says of that.
///
/// # Errors
/// The database is away, or the record is damaged.
pub(super) fn of(
    facts: &mut Facts<'_, '_>,
    lots: &[Lot],
    grams: impl Fn(usize) -> Result<Grams>,
    asks_pierced: bool,
    said: Option<bool>,
) -> Result<Found> {
    let raw = lots.iter().filter(|lot| !lot.condition().is_ready());
    let raw: Vec<LotId> = raw.map(|lot| lot.id).collect();
    let meat: Vec<&Lot> = lots.iter().filter(|lot| !lot.species.is_empty()).collect();
    let keys: BTreeSet<i32> = { meat.iter().map(|lot| lot.id) }
        .chain(raw.iter().copied())
        .map(|lot| lot.0)
        .collect();
    let keys: Vec<i32> = keys.into_iter().collect();
    let standing = facts.standing.clone();
    let start = store::family::WalkStart::Keys(&keys);
    let conn = &mut *facts.tx.conn;
    let loaded = LoadedFamily::load_with(facts.app, conn, standing, start, Extent::ANCESTORS)?;
    let family = &loaded.family;
    // What is down as later than now was recorded by a clock that was ahead.
    let now = facts.moment.recorded_at + TimeDelta::minutes(CLOCK_SLACK_MINUTES);
    let came: Vec<&Relative> = { family::came_in(family, &raw).into_iter() }
        .filter(|of| of.made_by.at <= now)
        .collect();
    let deeds: BTreeSet<i32> = came.iter().map(|of| of.lot.made_by.0).collect();
    let deeds: Vec<i32> = deeds.into_iter().collect();
    let told = times_told(conn, &deeds)?;
    let last = |is_told: bool| {
        let each = { came.iter() }.filter(|of| told.contains(&of.lot.made_by) == is_told);
        let each = each.map(|of| (of.made_by.at, of.lot.code.clone()));
        each.max_by_key(|(at, _)| *at)
    };
    let unknown = family::unknown_animal(family, &raw);
    let found = Found {
        came_in: last(true),
        typed: last(false),
        unknown: unknown.map(|of| (of.lot.code.clone(), of.lot.product.named())),
        ..Found::default()
    };
    let Some(first) = meat.first().filter(|_| asks_pierced) else {
        return Ok(found);
    };
    if said == Some(true) {
        return Ok(Found {
            pierced: Some(pierced_by(PiercedBy::SaidStuffed, first)),
            ..found
        });
    }
    let keys: Vec<i32> = meat.iter().map(|lot| lot.id.0).collect();
    let told = Told::of(conn, family)?;
    let is_pumped = |of: &Relative| told.pumped.contains(&of.lot.made_by);
    let says_stuffed = |of: &Relative| told.stuffed.get(&of.lot.made_by).copied();
    let before = keys.iter().filter_map(|key| {
        let lot = LotId(*key);
        family::pierced(family, lot, is_pumped, says_stuffed)
    });
    let is_ground = |lot: &Lot| {
        let of = family.get(lot.id);
        of.is_some_and(|of| of.made_by.kind == DeedKind::Grind)
    };
    let mut together = Vec::with_capacity(lots.len());
    for (nth, lot) in lots.iter().enumerate() {
        together.push(Together {
            lot,
            is_ground: is_ground(lot),
            grams: grams(nth)?,
        });
    }
    let filling = family::filling(&together);
    let filled = filling.filter(|_| said.is_none());
    let filled = filled.map(|lot| pierced_by(PiercedBy::Filled, lot));
    Ok(Found {
        pierced: before.chain(filled).min_by_key(|found| found.by),
        around: filling
            .filter(|_| said.is_some())
            .map(|lot| (lot.code.clone(), lot.product.named())),
        ..found
    })
}

/// The deeds of which somebody said when they were done; of the others only that is known by when they were.
fn times_told(conn: &mut store::Conn, deeds: &[i32]) -> Result<BTreeSet<DeedId>> {
    let mut told = BTreeSet::new();
    if deeds.is_empty() {
        return Ok(told);
    }
    for deed in store::deeds::by_keys(conn, deeds)? {
        if fields(&deed.request)?
            .get("at")
            .is_some_and(|at| !at.is_null())
        {
            told.insert(DeedId(deed.id));
        }
    }
    Ok(told)
}

fn pierced_by(by: PiercedBy, lot: &Lot) -> Pierced {
    let (lot, product) = (lot.code.clone(), lot.product.named());
    Pierced { by, lot, product }
}

/// What the deeds before said of their meat: that it was pumped, whatever its product says; whether it is stuffed.
#[derive(Default)]
struct Told {
    pumped: BTreeSet<DeedId>,
    stuffed: BTreeMap<DeedId, bool>,
}

impl Told {
    fn of(conn: &mut store::Conn, family: &Family) -> Result<Told> {
        use DeedKind::{Cook, Cure, Mix, Smoke};
        let made = family.lots.values();
        let made = made.filter(|of| matches!(of.made_by.kind, Cure | Mix | Cook | Smoke));
        let deeds: BTreeSet<i32> = made.map(|of| of.lot.made_by.0).collect();
        let deeds: Vec<i32> = deeds.into_iter().collect();
        let mut told = Told::default();
        if deeds.is_empty() {
            return Ok(told);
        }
        let corrections = store::corrections::of_deeds(conn, &deeds)?;
        for deed in store::deeds::by_keys(conn, &deeds)? {
            let asked = effective(&deed, &corrections)?;
            let cure = asked.get("cure");
            let method = cure.and_then(|cure| cure.get("method")?.as_str());
            if method == Some(Method::Pumped.as_str()) {
                told.pumped.insert(DeedId(deed.id));
            }
            if let Some(stuffed) = asked.get("stuffed").and_then(serde_json::Value::as_bool) {
                told.stuffed.insert(DeedId(deed.id), stuffed);
            }
        }
        Ok(told)
    }
}
