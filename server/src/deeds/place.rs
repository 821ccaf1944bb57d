//! Places: what stood in one, whether a reading is beyond its limit, and one that did not stay cold.

use super::facts::Facts;
use super::measure::held_right;
use super::says::PlaceSays;
use super::{DeedHeader, Done, degrees, perform, warm_before};
use crate::app::damaged;
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::lists::List;
use crate::wire::lists::PlaceEntry;
use crate::wire::readings::{PlaceFailureAsked, PlaceReadingAsked};
use chrono::{DateTime, TimeDelta, Utc};
use domain::deed::place_failure::{self, PlaceFailure, Spells};
use domain::heat::{HeatRules, hours};
use domain::lot::{DeedId, Lot, PackId, PlaceId};
use domain::measure::Temperature;
use domain::says::{Arg, Says};
use domain::words::{DeedKind, PlaceKind};
use store::packs::PackChoice;
use store::{entries, occupants};

/// Records that a place did not stay cold; every lot that stood in it is judged.
///
/// # Errors
/// 422 for an end before the beginning, or a reading that cannot be.
pub fn failed(app: &Caller<'_>, asked: &PlaceFailureAsked) -> Result<Done> {
    let header = DeedHeader {
        id: asked.id,
        kind: DeedKind::PlaceFailed,
        at: asked.at,
        began_at: None,
        by: &asked.by,
        place: Some(&asked.place),
        note: asked.note.as_ref(),
    };
    let readings = read(asked)?;
    perform(app, header, asked, |facts| {
        let from = asked.from.0.to_utc();
        let until = asked
            .until
            .map_or(facts.moment.at, |until| until.0.to_utc());
        if until < from || until > facts.moment.at {
            let field = asked.until.map_or("from", |_| "until");
            return Err(Error::cannot_be(field, PlaceSays::EndsFirst));
        }
        // Hours are typed by the minute.
        let minute = TimeDelta::minutes(1);
        let outside = |reading: &PlaceReadingAsked| {
            let at = reading.at.0.to_utc();
            at + minute < from || at - minute > until
        };
        if let Some(nth) = asked.readings.iter().position(outside) {
            let field = format!("readings[{nth}].at");
            return Err(Error::cannot_be(field, PlaceSays::ReadOutside));
        }
        let failure = PlaceFailure {
            place: entry(facts, &asked.place.0)?.name.0,
            from,
            until,
            readings: readings.clone(),
        };
        let law = facts.law();
        let place = facts.place.expect("it is about a place");
        let (lots, there) = all_there(facts, place, &failure, &law.heat)?;
        let others = warm_before::spells(facts, &lots, DeedId(facts.deed))?;
        let plan = place_failure::plan_of(&failure, &lots, &there, &others, &law.heat, &law.rows);
        let points: Vec<_> = readings
            .iter()
            .map(|(at, read)| degrees::point(*at, *read))
            .collect();
        store::probes::insert_log(facts.tx, facts.deed, &points)?;
        facts.record(asked.id.0.to_string(), DeedKind::PlaceFailed, &plan)
    })
}

/// The readings of a failure, the earliest first.
pub(super) fn read(asked: &PlaceFailureAsked) -> Result<Vec<(DateTime<Utc>, Temperature)>> {
    let mut readings = Vec::with_capacity(asked.readings.len());
    for (nth, reading) in asked.readings.iter().enumerate() {
        let (celsius, fahrenheit) = (reading.celsius, reading.fahrenheit);
        let field = format!("readings[{nth}].");
        let read = degrees::temperature(celsius, fahrenheit, degrees::KITCHEN, &field)?;
        let lacks = || Error::cannot_be(format!("{field}celsius"), PlaceSays::NoReading);
        readings.push((reading.at.0.to_utc(), read.ok_or_else(lacks)?));
    }
    readings.sort_by_key(|(at, _)| *at);
    Ok(readings)
}

/// When it is looked who stood there: at the end, and also when it had lasted too long, for what was carried away or
/// used up before the end.
pub(super) fn moments(failure: &PlaceFailure, rules: &HeatRules) -> Vec<DateTime<Utc>> {
    let rules = rules.failure.as_ref();
    let broke = rules.map(|rules| failure.from + hours(rules.hours.bound.value));
    let broke = broke.filter(|broke| *broke < failure.until);
    broke.into_iter().chain([failure.until]).collect()
}

/// What is said of a place that was read: that it is beyond its limit, and what stood in it.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn beyond(facts: &mut Facts<'_, '_>, place: &str, read: Temperature) -> Result<Vec<Says>> {
    let place = entry(facts, place)?;
    let Some(limits) = &place.limits else {
        return warm_for_what_stood(facts, &place, read);
    };
    let Some(limit) = limits.broken(read) else {
        return Ok(Vec::new());
    };
    let at = facts.moment.at;
    let stands = facts.place.expect("it is about a place");
    let lots = stood(facts, stands, &[at])?;
    let name = place.name.0;
    let mut said = vec![Says::from(PlaceSays::Beyond {
        place: name.clone(),
        at: read,
        limit,
    })];
    if !lots.is_empty() {
        let lots = Arg::All(lots.iter().map(place_failure::food).collect());
        said.push(PlaceSays::StoodThere { place: name, lots }.into());
    }
    Ok(said)
}

/// A place to which nobody gave a limit is judged by what stands in it: what the law of the place says of the
/// first that is held wrong, and all that are.
fn warm_for_what_stood(
    facts: &mut Facts<'_, '_>,
    place: &PlaceEntry,
    read: Temperature,
) -> Result<Vec<Says>> {
    if !matches!(place.kind.0, PlaceKind::Storage | PlaceKind::Counter) {
        return Ok(Vec::new());
    }
    let at = facts.moment.at;
    let (mut said, mut foods) = (Vec::new(), Vec::new());
    let stands = facts.place.expect("it is about a place");
    for lot in stood(facts, stands, &[at])? {
        let wrong = held_right(facts, read, &lot)?;
        if wrong.is_empty() {
            continue;
        }
        if said.is_empty() {
            said = wrong;
        }
        foods.push(place_failure::food(&lot));
    }
    if !foods.is_empty() {
        let (place, lots) = (place.name.0.clone(), Arg::All(foods));
        said.push(PlaceSays::StoodThere { place, lots }.into());
    }
    Ok(said)
}

pub(super) fn entry(facts: &mut Facts<'_, '_>, place: &str) -> Result<PlaceEntry> {
    let row = entries::get(facts.tx.conn, List::Places.as_str(), place)?
        .expect("the place was found before");
    serde_json::from_str(&row.body).map_err(|error| damaged(&error))
}

/// The lots that stood in a place at any of some moments, each with the packs that did.
pub(super) fn stood(
    facts: &mut Facts<'_, '_>,
    place: PlaceId,
    at: &[DateTime<Utc>],
) -> Result<Vec<Lot>> {
    let found = stood_at(facts, place, at)?;
    load(facts, &found)
}

/// The same of a failure, with what stood there for a part of it only: each pack from when until when it did, for its
/// hours are counted from when it came in.
pub(super) fn all_there(
    facts: &mut Facts<'_, '_>,
    place: PlaceId,
    failure: &PlaceFailure,
    rules: &HeatRules,
) -> Result<(Vec<Lot>, Spells)> {
    let mut found = stood_at(facts, place, &moments(failure, rules))?;
    let time = (failure.from.naive_utc(), failure.until.naive_utc());
    let mut there = Spells::new();
    for one in occupants::between(facts.tx.conn, place.0, time, None)? {
        let stood = found.get(&one.lot);
        let is_known = stood.is_some_and(|known| known.contains(&one.number));
        // A pack that is emptied now is nobody's to judge, unless it was too late when it was.
        if !is_known && !one.is_left {
            continue;
        }
        if !is_known {
            found.entry(one.lot).or_default().push(one.number);
        }
        let stays = there.entry(PackId(one.pack)).or_default();
        stays.push((one.stay.0.and_utc(), one.stay.1.and_utc()));
    }
    let mut lots = load(facts, &found)?;
    // What came in at its very end was not there for any of it.
    if failure.from < failure.until {
        for lot in &mut lots {
            lot.packs.retain(|pack| there.contains_key(&pack.id));
        }
        lots.retain(|lot| !lot.packs.is_empty());
    }
    Ok((lots, there))
}

fn stood_at(
    facts: &mut Facts<'_, '_>,
    PlaceId(place): PlaceId,
    at: &[DateTime<Utc>],
) -> Result<occupants::Occupants> {
    let mut found = occupants::Occupants::new();
    for at in at {
        for (lot, packs) in occupants::at(facts.tx.conn, place, at.naive_utc())? {
            let known = found.entry(lot).or_default();
            let new = packs.into_iter().filter(|pack| !known.contains(pack));
            let new: Vec<i32> = new.collect();
            known.extend(new);
        }
    }
    Ok(found)
}

fn load(facts: &mut Facts<'_, '_>, found: &occupants::Occupants) -> Result<Vec<Lot>> {
    let keys: Vec<i32> = found.keys().copied().collect();
    let rows = store::lots::by_keys(facts.tx.conn, &keys)?;
    let mut sought = Vec::with_capacity(rows.len());
    for row in &rows {
        let numbers = PackChoice::Numbers(found[&row.id].clone());
        sought.push((row.code()?, numbers, "place".to_owned()));
    }
    let mut lots = facts.lots(&sought)?;
    for (lot, row) in lots.iter_mut().zip(&rows) {
        let stood = &found[&row.id];
        lot.packs
            .retain(|pack| i32::try_from(pack.number).is_ok_and(|number| stood.contains(&number)));
    }
    Ok(lots)
}
