//! What else is done in an incident: who was told, what they answered, whether guests are told, its end.

use super::{Of, done, known};
use crate::caller::Caller;
use crate::deeds::facts::Facts;
use crate::deeds::{DeedHeader, Done, perform};
use crate::error::{Error, Result};
use crate::recall;
use crate::wire::answers::IncidentDone;
use crate::wire::asked::Id;
use crate::wire::incidents::{IncidentCloseAsked, IncidentGuestsAsked, IncidentNoteAsked};
use crate::wire::{By, Instant, Note};
use domain::grams::Grams;
use domain::incident::{Hazard, IncidentSays};
use domain::says::Says;
use domain::words::DeedKind;
use serde::Serialize;
use store::incidents::{self, ActRow, CLOSED, HIDDEN, IncidentRow, SHOWN};

/// What an act of an incident says of itself.
struct Act<'a, A> {
    of: Id,
    id: Id,
    at: Option<Instant>,
    by: &'a By,
    kind: DeedKind,
    note: Option<&'a Note>,
    word: &'a str,
    whom: Option<String>,
    /// Of the record as it was before, where it ends.
    digest: Option<String>,
    asked: &'a A,
}

/// Somebody was told, or answered; or something else is noted. Of a closed incident too.
///
/// # Errors
/// No text; an incident that never was.
pub fn note(app: &Caller<'_>, of: Id, asked: &IncidentNoteAsked) -> Result<Done> {
    if asked.text.0.is_empty() {
        return Err(Error::cannot_be("text", IncidentSays::NoText));
    }
    if !recall::is_said(asked.kind.0, &asked.text.0) {
        let known: Vec<&str> = Hazard::ALL.iter().map(|hazard| hazard.as_str()).collect();
        let says = IncidentSays::NoHazard {
            said: asked.text.0.clone(),
            known: known.join(", "),
        };
        return Err(Error::cannot_be("text", says));
    }
    act(
        app,
        Act {
            of,
            id: asked.id,
            at: asked.at,
            by: &asked.by,
            kind: DeedKind::IncidentNote,
            note: Some(&asked.text),
            word: asked.kind.0.as_str(),
            whom: asked.whom.as_ref().map(|whom| whom.0.clone()),
            digest: None,
            asked,
        },
    )
}

/// Guests who read the code of a pack in scope are told, or no longer.
///
/// # Errors
/// An incident that never was, or is closed.
pub fn guests(app: &Caller<'_>, of: Id, asked: &IncidentGuestsAsked) -> Result<Done> {
    act(
        app,
        Act {
            of,
            id: asked.id,
            at: asked.at,
            by: &asked.by,
            kind: DeedKind::IncidentGuests,
            note: asked.note.as_ref(),
            word: if asked.show { SHOWN } else { HIDDEN },
            whom: None,
            digest: None,
            asked,
        },
    )
}

/// It is over. What is held still stays held; what its report says from now on is kept, with the digest of the record
/// as it was before.
///
/// # Errors
/// An incident that never was, or is closed.
pub fn close(app: &Caller<'_>, of: Id, asked: &IncidentCloseAsked) -> Result<Done> {
    let digest = app.store.read(store::digest::digest)?;
    act(
        app,
        Act {
            of,
            id: asked.id,
            at: asked.at,
            by: &asked.by,
            kind: DeedKind::IncidentClose,
            note: asked.why.as_ref(),
            word: CLOSED,
            whom: None,
            digest: Some(digest),
            asked,
        },
    )
}

fn act<A: Serialize>(app: &Caller<'_>, act: Act<'_, A>) -> Result<Done> {
    let header = DeedHeader {
        id: act.id,
        kind: act.kind,
        at: act.at,
        began_at: None,
        by: act.by,
        place: None,
        note: act.note,
    };
    let asked = Of {
        incident: act.of,
        asked: act.asked,
    };
    perform(app, header, &asked, |facts| {
        let row = match act.kind {
            DeedKind::IncidentNote => super::of_id(facts.tx.conn, act.of, None)?,
            _ => known(facts, act.of)?,
        };
        let kept = ActRow {
            id: facts.deed,
            incident_id: row.id,
            kind: act.word.to_owned(),
            whom: act.whom.clone(),
            text: act.note.map_or(String::new(), |note| note.0.clone()),
        };
        incidents::insert_act(facts.tx, &kept)?;
        let mut done: IncidentDone = done(facts, act.id, &row);
        if act.word == CLOSED {
            let (packs, _) = incidents::on_hand(facts.tx.conn, row.id)?;
            if packs > 0 {
                let number = row.number.clone();
                done.said
                    .push(IncidentSays::StillHeld { number, packs }.into());
            }
            done.said.extend(keep(facts, &row, act.digest.clone())?);
        }
        Ok(done)
    })
}

/// Keeps what the report says, and tells what does not agree.
fn keep(facts: &mut Facts<'_, '_>, row: &IncidentRow, digest: Option<String>) -> Result<Vec<Says>> {
    let at = facts.moment.recorded_at.naive_utc();
    let (kept, text) = recall::to_keep(facts.app, facts.tx.conn, row, at, digest)?;
    store::incident_reports::keep(facts.tx, facts.deed, row.id, &text)?;
    let number = || row.number.clone();
    let mut said = Vec::new();
    if kept.uncounted > 0 {
        let (number, packs) = (number(), kept.uncounted);
        said.push(IncidentSays::NotCounted { number, packs }.into());
    }
    let weight = kept.sums.missing_grams.0;
    if weight > Grams::ZERO {
        let number = number();
        said.push(IncidentSays::Missing { number, weight }.into());
    }
    Ok(said)
}
