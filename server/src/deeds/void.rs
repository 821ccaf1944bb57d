//! A deed is voided by a new one that says why.

use super::lifts::Standing;
use super::perform::known_deed;
use super::says::{CorrectDeedSays, DeedSays};
use super::{DeedHeader, Done, again, confirm_row, found_warm, perform, unprint};
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::wire::asked::{Id, VoidAsked};
use domain::dates::Because;
use domain::deed::void::{self, Target, Touched};
use domain::grams::Grams;
use domain::lot::{DeedId, PackId};
use domain::plan::Plan;
use domain::right::Right;
use domain::words::DeedKind;
use serde::Serialize;
use store::deeds::DeedRow;
use store::voids;

/// A void with the deed that it is about: both are what "the same request" means.
#[derive(Serialize)]
struct Asked<'a> {
    step: Id,
    void: &'a VoidAsked,
}

/// Voids a deed.
///
/// # Errors
/// 404 where there is no such deed; 409 where later deeds depend on it, or it cannot be voided.
pub fn take(app: &Caller<'_>, step: Id, asked: &VoidAsked) -> Result<Done> {
    if asked.why.0.is_empty() {
        return Err(Error::cannot_be("why", DeedSays::WhyVoid));
    }
    let header = DeedHeader {
        id: asked.id,
        kind: DeedKind::Void,
        at: asked.at,
        began_at: None,
        by: &asked.by,
        place: None,
        note: asked.note.as_ref().or(Some(&asked.why)),
    };
    perform(app, header, &Asked { step, void: asked }, |facts| {
        let deed = known_deed(facts.tx, step, None)?;
        if !facts.who.is_own(&deed.person, &facts.by) {
            facts.who.need(Right::Void)?;
        }
        if store::stops::hangs_on(facts.tx.conn, deed.id)? {
            facts.who.need(Right::Lift)?;
        }
        if deed.kind()? == DeedKind::ConfirmRow {
            facts.who.need(Right::Confirm)?;
            confirm_row::take_back(facts, &deed)?;
        }
        let mut hanging = voids::hanging(facts.tx, deed.id)?;
        // What was said right of it stands on it.
        let right = store::corrections::of_deeds(facts.tx.conn, &[deed.id])?;
        for correction in right {
            if !hanging.later_corrections.contains(&correction.id) {
                hanging.later_corrections.insert(0, correction.id);
            }
        }
        let born: Vec<i32> = hanging.births.iter().map(|lot| lot.id).collect();
        if Standing::of(facts, &born)?.has_past_day() {
            facts.who.need(Right::Lift)?;
        }
        let reached = reached(facts, &deed, &hanging)?;
        let standing = Standing::of(facts, &reached)?;
        let read = match hanging.births.is_empty() && read_degrees(&deed)? {
            true => reached.as_slice(),
            false => &[],
        };
        let warm = found_warm::known(facts, read)?;
        let target = target(facts, &deed, &hanging)?;
        let packs = void::plan(&target)?;
        facts
            .moment
            .not_before_deed(deed.at.and_utc(), facts.kitchen.zone)?;
        voids::record(
            facts.tx,
            facts.deed,
            deed.id,
            &asked.why.0,
            &hanging,
            &packs,
        )?;
        let uid = asked.id.0.to_string();
        let mut done = match corrected(facts, &deed, &hanging)? {
            Some(wrong) => {
                let judged = again::judge(facts, &wrong, Some(deed.id))?;
                let (by, why) = (facts.by.clone(), asked.why.0.clone());
                let kind = wrong.kind()?;
                let says = match wrong.id == deed.id {
                    true => CorrectDeedSays::ReadingVoided { by, why },
                    false => CorrectDeedSays::Undone { by, kind, why },
                };
                let because = Because::house(says, CorrectDeedSays::Rule);
                again::write(facts, uid, DeedKind::Void, judged, &because)?
            }
            None => {
                let mut done = facts.record(uid, DeedKind::Void, &Plan::default())?;
                let reached = store::again::judged_by(facts.tx.conn, deed.id)?;
                if hanging.births.is_empty() || !reached.is_empty() {
                    again::undone(facts, &deed, &asked.why.0, &mut done)?;
                }
                done
            }
        };
        let mut keys: Vec<i32> = hanging.births.iter().map(|lot| lot.id).collect();
        keys.extend(hanging.touched.iter().map(|(lot, _, _)| lot.id));
        keys.sort_unstable();
        keys.dedup();
        // What it did to packs and labels is undone: their labels are judged as if it had not been.
        let at = facts.moment.at.naive_utc();
        store::wrong_labels::of_lots(facts.tx, &keys, at)?;
        let rows = store::lots::by_keys(facts.tx.conn, &keys)?;
        done.lots.extend(facts.briefs(&rows)?);
        done.said.extend(unprint::labels(facts, &deed, &hanging)?);
        standing.lifted(facts, &reached)?;
        found_warm::since(facts, &warm, &mut done)?;
        Ok(done)
    })
}

/// Did it tell how warm something was? What was read before and after it is then all that is known.
fn read_degrees(deed: &DeedRow) -> Result<bool> {
    let asked = again::effective(deed, &[])?;
    let mut fields = ["celsius", "fahrenheit", "readings", "log"].iter();
    Ok(fields.any(|field| asked.contains_key(*field)))
}

/// The lots that were there before a deed and that it did something to, or read.
fn reached(
    facts: &mut super::facts::Facts<'_, '_>,
    deed: &DeedRow,
    hanging: &voids::Hanging,
) -> Result<Vec<i32>> {
    let touched = hanging.touched.iter().map(|(lot, ..)| lot.id);
    let mut keys: Vec<i32> = touched.collect();
    keys.extend(store::measurements::lots_of(facts.tx.conn, deed.id)?);
    keys.sort_unstable();
    keys.dedup();
    Ok(keys)
}

/// The deed that a correction was about, which counts again as it was; or a reading that counts no longer: all
/// that follows from it is judged again.
fn corrected(
    facts: &mut super::facts::Facts<'_, '_>,
    deed: &DeedRow,
    hanging: &voids::Hanging,
) -> Result<Option<DeedRow>> {
    let kind = deed.kind()?;
    if kind == DeedKind::Measure {
        // What it showed of a lot, and of all that was made of it, is shown no longer.
        let asked = again::effective(deed, &[])?;
        let shows = ["ph", "water_activity"].iter();
        let shows =
            asked.contains_key("lot") && shows.into_iter().any(|of| asked.contains_key(*of));
        return Ok(shows.then(|| deed.clone()));
    }
    if kind != DeedKind::Correct {
        return Ok(None);
    }
    let mut wrong = store::corrections::corrected_by(facts.tx.conn, deed.id)?;
    if let (None, Some(lot)) = (wrong, hanging.source_of) {
        // One of the time before it was kept what was corrected: a receipt.
        let rows = store::lots::by_keys(facts.tx.conn, &[lot])?;
        wrong = rows.first().map(|row| row.deed_id);
    }
    let wrong = wrong.into_iter().collect::<Vec<_>>();
    Ok(store::deeds::by_keys(facts.tx.conn, &wrong)?.pop())
}

fn target(
    facts: &mut super::facts::Facts<'_, '_>,
    deed: &DeedRow,
    hanging: &voids::Hanging,
) -> Result<Target> {
    let mut packs = Vec::with_capacity(hanging.touched.len());
    for (lot, pack, events) in &hanging.touched {
        let made = Grams::from_milligrams(pack.made_mg);
        let product = facts.app.product(facts.tx.conn, lot.version_id)?;
        let mut history = Vec::with_capacity(events.len());
        for event in events {
            history.push((DeedId(event.row.deed_id), event.event()?));
        }
        packs.push(Touched {
            pack: PackId(pack.id),
            shown: format!("{}/{}", lot.code()?.shown(), pack.number),
            born: lot.born(made)?,
            made,
            later: lot.later(&product)?,
            history,
        });
    }
    Ok(Target {
        deed: DeedId(deed.id),
        kind: deed.kind()?,
        voided: store::deeds::voided_by(facts.tx.conn, deed.id)?.is_some(),
        uses_of_outputs: hanging
            .uses_of_births
            .iter()
            .map(|deed| DeedId(*deed))
            .collect(),
        packs,
        later_corrections: hanging
            .later_corrections
            .iter()
            .map(|deed| DeedId(*deed))
            .collect(),
    })
}
