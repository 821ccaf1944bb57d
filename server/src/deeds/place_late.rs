//! What is put into a place later on record than the place's failure was told: it stood there all the same. And
//! what is set down in a place that nobody has said is cold again.

use super::again::{self, request};
use super::facts::Facts;
use super::{left_before, place, warm_before};
use crate::error::Result;
use crate::wire::answers::DeedDone;
use crate::wire::readings::PlaceFailureAsked;
use chrono::TimeDelta;
use domain::deed::place_failure::{self, FailureSays, PlaceFailure};
use domain::lot::{DeedId, Lot, PackId, PlaceId};
use domain::plan::Plan;
use domain::words::{DeedKind, Topic};
use std::collections::BTreeSet;
use store::deeds::DeedRow;
use store::lots::LotRow;

/// Judges what a deed put into places that had failed at that time, as is on record already.
///
/// # Errors
/// The database is away or full, or the record is damaged.
pub fn judge(
    facts: &mut Facts<'_, '_>,
    kind: DeedKind,
    plan: &Plan,
    made: &[LotRow],
    done: &mut DeedDone,
) -> Result<()> {
    let is_late = facts.moment.at < facts.moment.recorded_at && kind != DeedKind::PlaceFailed;
    let sets_down = matches!(kind, DeedKind::Move | DeedKind::Receive);
    if !is_late && !sets_down {
        return Ok(());
    }
    let moved = plan.changes.iter().filter_map(|change| change.place);
    let born = made.iter().map(|lot| PlaceId(lot.born_place_id));
    let places: BTreeSet<PlaceId> = moved.chain(born).collect();
    for place in &places {
        if sets_down {
            tell_still_failed(facts, *place, done)?;
        }
    }
    if !is_late {
        return Ok(());
    }
    if kind == DeedKind::Move && !places.is_empty() {
        let left = left_before::judge(facts, plan)?;
        store::record::plan(facts.tx, facts.deed, &facts.moment, &left)?;
        done.said.extend(left.warnings);
    }
    for place in places {
        let since = facts.moment.at.naive_utc();
        for failed in store::deeds::failures(facts.tx.conn, place.0, since)? {
            let failure = told(facts, &failed)?;
            let heat = facts.law().heat.clone();
            let (mut lots, there) = place::all_there(facts, place, &failure, &heat)?;
            for lot in &mut lots {
                keep_new(lot, place, plan, made, &failure);
            }
            lots.retain(|lot| !lot.packs.is_empty());
            if lots.is_empty() {
                continue;
            }
            let others = warm_before::spells(facts, &lots, DeedId(failed.id))?;
            let rows = &facts.law().rows;
            let found = place_failure::plan_of(&failure, &lots, &there, &others, &heat, rows);
            store::record::plan(facts.tx, facts.deed, &facts.moment, &found)?;
            done.said.extend(found.warnings.iter().cloned());
            again::told(facts, kind, &found, done)?;
        }
    }
    Ok(())
}

/// How long somebody is asked about a failure that nobody has said is over.
const ASKED_DAYS: i64 = 30;

/// The place failed, nobody said until when, and nobody has read it since.
fn tell_still_failed(facts: &mut Facts<'_, '_>, place: PlaceId, done: &mut DeedDone) -> Result<()> {
    let now = facts.moment.at.naive_utc();
    let since = now - TimeDelta::days(ASKED_DAYS);
    let failures = store::deeds::failures(facts.tx.conn, place.0, since)?;
    let before = failures.into_iter().filter(|failed| failed.at <= now);
    let Some(last) = before.max_by_key(|failed| failed.at) else {
        return Ok(());
    };
    let asked: PlaceFailureAsked = request(&super::again::fields(&last.request)?)?;
    let is_over = asked.until.is_some();
    if !is_over && !store::deeds::is_place_read(facts.tx.conn, place.0, last.at)? {
        let says = FailureSays::StillOpen {
            place: place::entry(facts, &asked.place.0)?.name.0,
            at: last
                .at
                .and_utc()
                .with_timezone(&facts.kitchen.zone)
                .naive_local(),
        };
        done.said.push(says.into());
    }
    Ok(())
}

/// The failure as it was told.
pub(super) fn told(facts: &mut Facts<'_, '_>, failed: &DeedRow) -> Result<PlaceFailure> {
    let asked: PlaceFailureAsked = request(&super::again::fields(&failed.request)?)?;
    let noticed = failed.at.and_utc();
    Ok(PlaceFailure {
        place: place::entry(facts, &asked.place.0)?.name.0,
        from: asked.from.0.to_utc(),
        until: asked.until.map_or(noticed, |until| until.0.to_utc()),
        readings: place::read(&asked)?,
    })
}

/// Keeps the packs that this deed put there and that no failure has stopped since then.
fn keep_new(lot: &mut Lot, place: PlaceId, plan: &Plan, made: &[LotRow], failure: &PlaceFailure) {
    let is_born = made
        .iter()
        .any(|row| row.id == lot.id.0 && row.born_place_id == place.0);
    let moved = plan.changes.iter();
    let moved = moved.filter(|change| change.lot == lot.id && change.place == Some(place));
    let moved: Vec<PackId> = moved.map(|change| change.pack).collect();
    let stopped: Vec<Option<PackId>> = lot
        .stops
        .iter()
        .filter(|stop| stop.cause.topic == Topic::Cold && stop.ended.is_none())
        .filter(|stop| stop.cause.since >= failure.from)
        .map(|stop| stop.pack)
        .collect();
    lot.packs.retain(|pack| {
        let is_new = is_born || moved.contains(&pack.id);
        is_new && !stopped.contains(&None) && !stopped.contains(&Some(pack.id))
    });
}
