//! A warm reading of a lot or a place, held against the readings before and after it.

use super::facts::Facts;
use super::measure::held_right;
use super::{place, warm_before};
use crate::error::Result;
use chrono::{DateTime, TimeDelta, Utc};
use domain::deed::found_warm::{self, Found};
use domain::deed::place_failure::{self, PlaceFailure};
use domain::lot::{DeedId, Lot, PackId};
use domain::measure::Temperature;
use domain::plan::Plan;
use domain::words::{PlaceKind, StepKind};
use std::collections::HashSet;
use store::{lots, measurements};

/// Judges a reading that is on record now; it is never refused, as nothing that was read is: two warm ones too far apart
/// are a stop.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn judge(
    facts: &mut Facts<'_, '_>,
    lot: &Lot,
    read: Temperature,
    plan: &mut Plan,
) -> Result<()> {
    let Some(rules) = facts.law().heat.failure.clone() else {
        return Ok(());
    };
    if !lot.needs_cold() || !is_warm(facts, lot, read)? {
        return Ok(());
    }
    let cooled = cooled_by(facts, lot)?;
    let mut all = Vec::new();
    for (at, quantity, millionths) in measurements::of_lot(facts.tx.conn, lot.id.0)? {
        let Some(read) = Temperature::read(quantity, millionths) else {
            continue;
        };
        let at = at.and_utc();
        if at >= cooled {
            all.push((at, is_warm(facts, lot, read)?));
        }
    }
    all.sort_by_key(|(at, _)| *at);
    let nth = all
        .iter()
        .rposition(|(at, warm)| *at == facts.moment.at && *warm);
    let law = facts.law();
    let judged = nth.and_then(|nth| found_warm::judge(lot, &all, nth, &rules, &law.rows));
    if let Some((finding, cause)) = judged {
        plan.warnings.push(finding.with_sources(&law.rows));
        plan.stops.push((lot.id, None, cause.into()));
    }
    Ok(())
}

/// What a warm reading of a place, which is on record now, does to what has stood there since an earlier one with nothing
/// cold read in between: the place did not stay cold all that time, as far as anybody knows.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn of_place(facts: &mut Facts<'_, '_>, place: &str) -> Result<Plan> {
    let heat = facts.law().heat.clone();
    let (Some(rules), Some(stands)) = (heat.failure.as_ref(), facts.place) else {
        return Ok(Plan::default());
    };
    let entry = place::entry(facts, place)?;
    if !matches!(entry.kind.0, PlaceKind::Storage | PlaceKind::Counter) {
        return Ok(Plan::default());
    }
    let mut read = Vec::new();
    for (at, quantity, millionths) in measurements::of_place(facts.tx.conn, stands.0)? {
        read.extend(Temperature::read(quantity, millionths).map(|read| (at.and_utc(), read)));
    }
    read.sort_by_key(|(at, _)| *at);
    let warm = |(at, read): &(DateTime<Utc>, Temperature)| (*at, !rules.cold.allows(*read));
    let all: Vec<Found> = read.iter().map(warm).collect();
    let nth = all.iter().rposition(|(at, _)| *at == facts.moment.at);
    let run = nth.and_then(|nth| found_warm::run(&all, nth));
    let Some((from, until)) = run.filter(|(from, until)| from < until) else {
        return Ok(Plan::default());
    };
    let within = |(at, _): &(DateTime<Utc>, Temperature)| (from..=until).contains(at);
    let failure = PlaceFailure {
        place: entry.name.0,
        from,
        until,
        readings: read.into_iter().filter(within).collect(),
    };
    // What came in meanwhile did not stand there so long.
    let first = place::stood(facts, stands, &[from])?;
    let packs = first.iter().flat_map(|lot| &lot.packs);
    let there: HashSet<PackId> = packs.map(|pack| pack.id).collect();
    let mut lots = place::stood(facts, stands, &place::moments(&failure, &heat))?;
    for lot in &mut lots {
        lot.packs.retain(|pack| there.contains(&pack.id));
    }
    lots.retain(|lot| !lot.packs.is_empty());
    if lots.is_empty() {
        return Ok(Plan::default());
    }
    let others = warm_before::spells(facts, &lots, DeedId(facts.deed))?;
    let plan = place_failure::plan(&failure, &lots, &others, &heat, &facts.law().rows);
    Ok(match plan.stops.is_empty() {
        true => Plan::default(),
        false => plan,
    })
}

/// Too warm for what it is, and not hot: what is kept hot is kept right.
fn is_warm(facts: &Facts<'_, '_>, lot: &Lot, read: Temperature) -> Result<bool> {
    let hot = facts.law().heat.come_up.as_ref();
    let is_hot = hot.is_some_and(|hot| read.reaches(&hot.to));
    Ok(!is_hot && !held_right(facts, read, lot)?.is_empty())
}

/// When what was made with heat is cold at the latest: how it cools is judged by its log.
fn cooled_by(facts: &mut Facts<'_, '_>, lot: &Lot) -> Result<DateTime<Utc>> {
    let rows = lots::by_keys(facts.tx.conn, &[lot.id.0])?;
    let makers: Vec<i32> = rows.iter().map(|row| row.deed_id).collect();
    let makers = store::deeds::by_keys(facts.tx.conn, &makers)?;
    let of_heat = |kind| matches!(kind, StepKind::Cook | StepKind::Render | StepKind::Smoke);
    let hot = makers
        .iter()
        .any(|deed| StepKind::parse(&deed.kind).is_some_and(of_heat));
    let cooling = match hot {
        true => facts.law().heat.cooled_within(),
        false => TimeDelta::zero(),
    };
    Ok(lot.made_at + cooling)
}
