//! What was carried out of a place before that failed, and is entered later than the failure: it did not stand there, and
//! the failure's stop ends. Who may not lift a stop is told of it.

use super::facts::Facts;
use super::{place_late, warm_before};
use crate::error::Result;
use chrono::{DateTime, Utc};
use domain::deed::place_failure::{self, FailureSays, PlaceFailure, Spells};
use domain::lot::{DeedId, Lot, PackId};
use domain::plan::Plan;
use domain::right::Right;
use domain::words::Disposal;
use std::collections::BTreeSet;
use store::occupants;
use store::packs::PackChoice;

/// Ends what failures put on packs that a move, which is on record now, shows to have been elsewhere, or there for too
/// short a time.
///
/// # Errors
/// The database is away or full, or the record is damaged.
pub fn judge(facts: &mut Facts<'_, '_>, moved: &Plan) -> Result<Plan> {
    let mut found = Plan::default();
    let packs: Vec<i32> = moved.changes.iter().map(|change| change.pack.0).collect();
    let stops = store::stops::of_failures(facts.tx.conn, &packs)?;
    if stops.is_empty() {
        return Ok(found);
    }
    let lots: BTreeSet<i32> = moved.changes.iter().map(|change| change.lot.0).collect();
    let rows = store::lots::by_keys(facts.tx.conn, &lots.into_iter().collect::<Vec<_>>())?;
    for row in rows {
        let lot = facts.lot(&row.code()?, PackChoice::OnHand)?;
        for (stop, pack, deed) in &stops {
            let Some(of) = lot.packs.iter().find(|of| of.id == *pack) else {
                continue;
            };
            let (pack, mut alone) = (of.clone(), lot.clone());
            alone.packs = vec![pack];
            let Some(place) = is_free(facts, &alone, *deed)? else {
                continue;
            };
            let lot = place_failure::food(&lot);
            found.warnings.push(match facts.who.may(Right::Lift) {
                true => {
                    found.ends.push((*stop, Disposal::PutRight));
                    FailureSays::LeftBefore { lot, place }.into()
                }
                false => FailureSays::LeftBeforeAsk { lot, place }.into(),
            });
        }
    }
    found.warnings.dedup();
    Ok(found)
}

/// The place of a failure that did nothing to the one pack of a lot, by all that is on record.
fn is_free(facts: &mut Facts<'_, '_>, lot: &Lot, deed: i32) -> Result<Option<String>> {
    let rows = store::deeds::by_keys(facts.tx.conn, &[deed])?;
    let failed = rows.into_iter().find_map(|row| Some((row.place_id?, row)));
    let Some((place, failed)) = failed else {
        return Ok(None);
    };
    let failure = place_late::told(facts, &failed)?;
    let pack = lot.packs[0].id;
    let stays = stays(facts, place, pack, &failure)?;
    if stays.is_empty() {
        return Ok(Some(failure.place));
    }
    let there = Spells::from([(pack, stays)]);
    let lots = [lot.clone()];
    let others = warm_before::spells(facts, &lots, DeedId(deed))?;
    let law = facts.law();
    let judged = place_failure::plan_of(&failure, &lots, &there, &others, &law.heat, &law.rows);
    Ok(judged.stops.is_empty().then_some(failure.place))
}

/// When a pack stood in a place, of the time in which that failed.
fn stays(
    facts: &mut Facts<'_, '_>,
    place: i32,
    pack: PackId,
    failure: &PlaceFailure,
) -> Result<Vec<(DateTime<Utc>, DateTime<Utc>)>> {
    let time = (failure.from.naive_utc(), failure.until.naive_utc());
    let found = occupants::between(facts.tx.conn, place, time, Some(&[pack.0]))?;
    let stays = found.into_iter().map(|one| one.stay);
    Ok(stays
        .map(|(came, went)| (came.and_utc(), went.and_utc()))
        .collect())
}
