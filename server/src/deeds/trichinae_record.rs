//! A curing against trichinae from what is on record: salt by what went in, stages by the deeds of the piece,
//! the rooms by their readings. Only what nobody weighs or reads is asked: the casing, the size of the pieces.

use super::again::{fields, request};
use super::facts::Facts;
use super::heat_log;
use super::says::DeedSays;
use crate::error::{Error, Result};
use crate::read::LoadedFamily;
use crate::wire::asked::StepAsked;
use crate::wire::cures::{DriedAsked, decimal};
use chrono::{DateTime, Utc};
use domain::family::curing_record;
use domain::lot::{LotId, PlaceId};
use domain::measure::Temperature;
use domain::trichinae::{Drying, Length, Process, StageKind, StageOnRecord};
use domain::words::DeedKind;
use std::collections::BTreeSet;
use store::deeds::DeedRow;
use store::family::Extent;
use store::lots::LotRow;

/// A stage of a piece as its deed has it.
struct Begun {
    stage: StageKind,
    from: DateTime<Utc>,
    until: Option<DateTime<Utc>>,
    place: Option<i32>,
    read: Vec<Temperature>,
}

/// The curing of a piece by a method, and its stages as they are told.
///
/// # Errors
/// It never was in a cure; weights that cannot be.
pub fn process(
    facts: &mut Facts<'_, '_>,
    asked: &DriedAsked,
    row: &LotRow,
) -> Result<(Process, Vec<StageOnRecord>)> {
    let loaded = LoadedFamily::load(facts.app, facts.tx.conn, &[row.id], Extent::ANCESTORS)?;
    let lacks = || {
        let lot = row.code();
        lot.map(|lot| Error::cannot_be("lot", DeedSays::NotFromCure { lot }))
    };
    let Some(record) = curing_record(&loaded.family, LotId(row.id)) else {
        return Err(lacks()?);
    };
    let mut process = Process::of(asked.method.0.clone());
    let millimetres =
        |of: Option<crate::wire::Number>| of.map(|mm| Length::millimetres(decimal(mm)));
    process.casing = millimetres(asked.casing_mm);
    process.piece = millimetres(asked.piece_mm);
    process.mass = millimetres(asked.mass_mm);
    process.is_pepperoni = asked.pepperoni.unwrap_or(false);
    process.heaviest = asked.heaviest_grams.map(|grams| grams.0);
    let methods = &facts.law().trichinae.methods;
    let method = methods.iter().find(|of| of.name == process.method);
    let by_tables = method.is_some_and(|of| of.drying == Drying::SausageTables);
    process.salting = record.mix.salting(by_tables)?;
    let mut born: Vec<(i32, i32)> = Vec::new();
    let lots: Vec<i32> = record.lots.iter().map(|of| of.lot.id.0).collect();
    for lot in store::lots::by_keys(facts.tx.conn, &lots)? {
        born.push((lot.deed_id, lot.born_place_id));
    }
    let piece = record.lots.first();
    let did = piece.into_iter().flat_map(|of| of.steps());
    let did = did.filter(|did| !did.voided).map(|did| did.deed.0);
    let deeds: BTreeSet<i32> = born.iter().map(|(deed, _)| *deed).chain(did).collect();
    let deeds: Vec<i32> = deeds.into_iter().collect();
    let mut begun: Vec<Begun> = Vec::new();
    for deed in store::deeds::by_keys(facts.tx.conn, &deeds)? {
        process.overhauls += u32::from(deed.kind()? == DeedKind::Turn);
        begun.extend(stage(&deed, &born)?);
    }
    begun.sort_by_key(|of| of.from);
    let now = facts.moment.at;
    process.whole = begun.first().map(|first| now - first.from);
    let first = |stage| begun.iter().find(|of| of.stage == stage);
    let day = |at: DateTime<Utc>| domain::moment::day_of(at, facts.kitchen.zone);
    process.cured_on = first(StageKind::Cure).map(|of| day(of.from));
    process.dried = first(StageKind::Dry).map(|of| (day(of.from), day(now)));
    let ends: Vec<DateTime<Utc>> = begun
        .iter()
        .skip(1)
        .map(|of| of.from)
        .chain([now])
        .collect();
    let mut stages = Vec::with_capacity(begun.len());
    for (of, next) in begun.into_iter().zip(ends) {
        let until = of.until.unwrap_or(next);
        let mut read = of.read;
        if let (Some(place), true) = (of.place, read.is_empty()) {
            read = room(facts, place, of.from, until)?;
        }
        let (stage, from) = (of.stage, of.from);
        stages.push(StageOnRecord {
            stage,
            from,
            until,
            read,
        });
    }
    process.runs = stages.iter().filter_map(StageOnRecord::run).collect();
    Ok((process, stages))
}

/// The stage that a deed begins, if it begins one. A smoking is as long as it took.
fn stage(deed: &DeedRow, born: &[(i32, i32)]) -> Result<Option<Begun>> {
    let stage = match deed.kind()? {
        DeedKind::Cure | DeedKind::Grind | DeedKind::Mix => StageKind::Cure,
        DeedKind::Equalise => StageKind::Equalise,
        DeedKind::Rinse => StageKind::Rinse,
        DeedKind::Smoke => StageKind::Smoke,
        DeedKind::Hang => StageKind::Dry,
        _ => return Ok(None),
    };
    let place = born.iter().find(|(of, _)| *of == deed.id);
    let place = place.map(|(_, place)| *place).or(deed.place_id);
    let ended = deed.at.and_utc();
    if stage != StageKind::Smoke {
        let (from, until, read) = (ended, None, Vec::new());
        return Ok(Some(Begun {
            stage,
            from,
            until,
            place,
            read,
        }));
    }
    let asked: StepAsked = request(&fields(&deed.request)?)?;
    let read = heat_log::points(&asked)?.into_iter();
    let read = read.map(|(_, reading)| reading.core).collect();
    let from = deed.began_at.map_or(ended, |began| began.and_utc());
    let (until, place) = (Some(ended), deed.place_id);
    Ok(Some(Begun {
        stage,
        from,
        until,
        place,
        read,
    }))
}

/// What was read of a place in that time.
fn room(
    facts: &mut Facts<'_, '_>,
    place: i32,
    from: DateTime<Utc>,
    until: DateTime<Utc>,
) -> Result<Vec<Temperature>> {
    let read = store::places::read_of(facts.tx.conn, PlaceId(place).0)?;
    let within = read.into_iter().filter(|of| {
        let at = of.at.and_utc();
        from <= at && at <= until
    });
    let degrees = within.filter_map(|of| Temperature::read(of.quantity, of.millionths));
    Ok(degrees.collect())
}
