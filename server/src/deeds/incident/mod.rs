//! A recall, or a drill of one: it begins, goes further or less far, is noted, and ends.

mod caught;
mod held;
mod note;

pub use caught::caught;
pub use held::{as_counted, may_destroy, not_printed};
pub use note::{close, guests, note};

use super::facts::Facts;
use super::{DeedHeader, Done, perform};
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::read::scope;
use crate::wire::Note;
use crate::wire::Weight;
use crate::wire::answers::IncidentDone;
use crate::wire::answers::ScopeRead;
use crate::wire::asked::{Id, canonical};
use crate::wire::incidents::{IncidentAsked, IncidentScopeAsked};
use crate::wire::scope::ScopeAsked;
use chrono::Datelike;
use domain::incident::{self, IncidentSays, Onto};
use domain::moment::on_clock;
use domain::refusal::{Refusal, RefusalKind};
use domain::stop::IncidentId;
use domain::words::DeedKind;
use serde::Serialize;
use std::collections::BTreeSet;
use std::{panic, thread};
use store::incidents::{self, ActRow, DISPOSED, IncidentRow, ScopeRow};

/// What is asked of an incident that is there: its id in the path, and the body.
#[derive(Serialize)]
struct Of<'a, A> {
    incident: Id,
    asked: &'a A,
}

/// An incident begins.
///
/// # Errors
/// Whatever a scope refuses; no reason; a call that came after it was told of.
pub fn begin(app: &Caller<'_>, asked: &IncidentAsked) -> Result<Done> {
    if let Some(why) = &asked.why {
        needs_why(why)?;
    }
    let header = DeedHeader {
        id: asked.id,
        kind: DeedKind::Incident,
        at: asked.at,
        began_at: None,
        by: &asked.by,
        place: None,
        note: asked.why.as_ref(),
    };
    perform(app, header, asked, |facts| {
        let zone = facts.kitchen.zone;
        let told_at = asked
            .told_at
            .map_or(facts.moment.at, |told| told.0.to_utc());
        if told_at > facts.moment.at {
            let told = on_clock(told_at, zone);
            return Err(Error::cannot_be(
                "told_at",
                IncidentSays::ToldLater { told },
            ));
        }
        let found = scope::as_listed(facts.app, facts.tx.conn, &asked.scope, "scope.")?;
        let number = number(facts, on_clock(told_at, zone).year())?;
        let row = IncidentRow {
            id: facts.deed,
            number: number.clone(),
            told_by: text(asked.told_by.as_ref().map(|by| by.0.as_str())),
            told_at: told_at.naive_utc(),
            hazard: asked.hazard.0.as_str().to_owned(),
            drill: asked.drill,
            holds: asked.hold && !asked.drill,
            why: text(asked.why.as_ref().map(|why| why.0.as_str())),
        };
        incidents::insert(facts.tx, &row)?;
        let speech = facts.speech;
        let in_words = || found.read(&asked.scope, speech);
        let read = beside(in_words, || {
            if row.holds {
                let (new, _) = incident::differ(&found.scope, &BTreeSet::new());
                hold(facts, &row, &new)?;
            }
            Ok(())
        })?;
        keep_scope(facts, row.id, &asked.scope, &read, &row.why)?;
        let mut done = done(facts, asked.id, &row);
        if row.holds {
            let (packs, grams) = incident::on_hand(&found.scope);
            (done.held_packs, done.held_grams) = (Some(packs), Some(Weight(grams)));
        } else {
            (done.held_packs, done.held_grams) =
                (Some(0), Some(Weight(domain::grams::Grams::ZERO)));
            let number = row.number.clone();
            done.said.push(IncidentSays::HoldsNothing { number }.into());
        }
        done.scope_digest = Some(read.digest);
        done.lots = read.lots;
        Ok(done)
    })
}

/// An incident goes further, or less far. What is new is held, what left is listed, and stays held until it is
/// let go.
///
/// # Errors
/// Whatever a scope refuses; no reason; an incident that never was, or is closed.
pub fn rescope(app: &Caller<'_>, of: Id, asked: &IncidentScopeAsked) -> Result<Done> {
    needs_why(&asked.why)?;
    let header = DeedHeader {
        id: asked.id,
        kind: DeedKind::IncidentScope,
        at: asked.at,
        began_at: None,
        by: &asked.by,
        place: None,
        note: Some(&asked.why),
    };
    perform(
        app,
        header,
        &Of {
            incident: of,
            asked,
        },
        |facts| {
            let row = known(facts, of)?;
            let found = scope::find(facts.app, facts.tx.conn, &asked.scope, "scope.", None)?;
            let read = found.read(&asked.scope, facts.speech);
            keep_scope(facts, row.id, &asked.scope, &read, &asked.why.0)?;
            let mut done = done(facts, asked.id, &row);
            if row.holds {
                let held = incidents::held(facts.tx.conn, row.id)?;
                let (new, left) = incident::differ(&found.scope, &held);
                hold(facts, &row, &new)?;
                let (packs, grams) = incident::on_hand(&found.scope);
                (done.held_packs, done.held_grams) = (Some(packs), Some(Weight(grams)));
                done.added = codes(facts, &new)?;
                done.left = codes(facts, &left)?;
                if !done.left.is_empty() {
                    let (number, lots) = (row.number.clone(), done.left.join(", "));
                    done.said
                        .push(IncidentSays::LeftScope { number, lots }.into());
                }
            }
            done.scope_digest = Some(read.digest);
            done.lots = read.lots;
            Ok(done)
        },
    )
}

/// What `work` makes, on a thread of its own, while the record is written: everybody waits for a hold.
fn beside<T: Send>(
    work: impl FnOnce() -> T + Send,
    write: impl FnOnce() -> Result<()>,
) -> Result<T> {
    thread::scope(|scope| {
        let work = scope.spawn(work);
        let written = write();
        let made = work.join();
        written?;
        Ok(made.unwrap_or_else(|panic| panic::resume_unwind(panic)))
    })
}

/// What was said, or nothing.
fn text(said: Option<&str>) -> String {
    said.unwrap_or_default().to_owned()
}

fn needs_why(why: &Note) -> Result<()> {
    match why.0.is_empty() {
        true => Err(Error::cannot_be("why", IncidentSays::Why)),
        false => Ok(()),
    }
}

/// The number of an incident: it runs by the kitchen and the year of the call.
fn number(facts: &mut Facts<'_, '_>, year: i32) -> Result<String> {
    let house = facts.kitchen.house.to_string();
    let key = format!("incidents {house} {year}");
    let next = store::series::lock(facts.tx, &key)? + 1;
    store::series::advance(facts.tx, &key, next)?;
    Ok(incident::number(&house, year, next))
}

fn done(facts: &Facts<'_, '_>, id: Id, row: &IncidentRow) -> IncidentDone {
    IncidentDone {
        id: id.0.to_string(),
        number: row.number.clone(),
        drill: row.drill,
        late: facts.moment.late,
        ..IncidentDone::default()
    }
}

fn keep_scope(
    facts: &mut Facts<'_, '_>,
    incident: i32,
    asked: &ScopeAsked,
    read: &ScopeRead,
    why: &str,
) -> Result<()> {
    let row = ScopeRow {
        id: facts.deed,
        incident_id: incident,
        question: canonical(asked),
        digest: read.digest.clone(),
        lots: i32::try_from(read.lots.len()).unwrap_or(i32::MAX),
        why: why.to_owned(),
    };
    Ok(incidents::insert_scope(facts.tx, &row)?)
}

/// Places holds of an incident: from the moment at which they are recorded.
fn hold(facts: &mut Facts<'_, '_>, row: &IncidentRow, onto: &[Onto]) -> Result<()> {
    let since = match facts.deed == row.id {
        true => facts.moment.stops_from(),
        false => facts.moment.recorded_at,
    };
    let stop = incident::hold(IncidentId(row.id), &row.number, &row.why, since);
    Ok(incidents::hold(facts.tx, row.id, onto, &stop)?)
}

/// The incident of an id, which must be open.
fn known(facts: &mut Facts<'_, '_>, id: Id) -> Result<IncidentRow> {
    let row = of_id(facts.tx.conn, id, None)?;
    if incidents::is_closed(facts.tx.conn, row.id)? {
        let number = row.number.clone();
        return Err(Error::clash("", IncidentSays::Closed { number }));
    }
    Ok(row)
}

/// The incident of an id.
///
/// # Errors
/// 404 where there is none.
pub fn of_id(conn: &mut store::Conn, id: Id, field: Option<&str>) -> Result<IncidentRow> {
    let row = incidents::by_uid(conn, id.0.as_bytes())?;
    Ok(row.ok_or_else(|| {
        let says = IncidentSays::Unknown {
            id: id.0.to_string(),
        };
        Refusal {
            field: field.map(str::to_owned),
            ..Refusal::new(RefusalKind::NeverIssued, "", says)
        }
    })?)
}

/// The codes of lots, each once.
fn codes(facts: &mut Facts<'_, '_>, onto: &[Onto]) -> Result<Vec<String>> {
    let mut keys: Vec<i32> = onto.iter().map(|(lot, _)| lot.0).collect();
    keys.dedup();
    let mut codes = Vec::with_capacity(keys.len());
    for some in keys.chunks(10_000) {
        let rows = store::lots::by_keys(facts.tx.conn, some)?;
        codes.extend(rows.into_iter().map(|row| row.code));
    }
    Ok(codes)
}

/// A disposition is a part of an incident.
///
/// # Errors
/// The database is away or full.
pub fn disposed(facts: &mut Facts<'_, '_>, of: &IncidentRow, why: &str) -> Result<()> {
    let row = ActRow {
        id: facts.deed,
        incident_id: of.id,
        kind: DISPOSED.to_owned(),
        whom: None,
        text: why.to_owned(),
    };
    Ok(incidents::insert_act(facts.tx, &row)?)
}
