//! Incidents: what is told of them.

use super::scope;
use crate::app::damaged;
use crate::caller::Caller;
use crate::deeds::incident::of_id;
use crate::error::Result;
use crate::recall;
use crate::wire::Weight;
use crate::wire::answers::incident::{
    CountRead, IncidentBrief, IncidentNoteRead, IncidentRead, IncidentScopeRead, IncidentsRead,
    MilestoneRead,
};
use crate::wire::answers::{instant, shown_id};
use crate::wire::asked::Id;
use crate::wire::scope::ScopeAsked;
use chrono::{DateTime, NaiveDateTime, Utc};
use chrono_tz::Tz;
use domain::grams::Grams;
use domain::incident::{IncidentNote, Milestone, Reckoned};

use store::Conn;
use store::incidents::{
    self, ActRow, CLOSED, DISPOSED, Done, HIDDEN, IncidentRow, SHOWN, ScopeRow,
};

/// Every incident, the newest first.
///
/// # Errors
/// The database is away.
pub fn all(app: &Caller<'_>, conn: &mut Conn) -> Result<IncidentsRead> {
    let zone = app.standing(conn)?.kitchen.zone;
    let rows = incidents::all(conn)?;
    let mut read = Vec::with_capacity(rows.len());
    for (row, done) in &rows {
        let acts = incidents::acts(conn, row.id)?;
        let known = recall::as_known(row, &acts);
        read.push(brief(&known, &done.uid, is_open(&acts), zone));
    }
    Ok(IncidentsRead { incidents: read })
}

/// An incident, as a page lists it.
pub struct Standing {
    /// Its id.
    pub id: String,
    /// Its number.
    pub number: String,
    /// When it was begun here.
    pub began_at: DateTime<Utc>,
    /// Who told it.
    pub told_by: String,
    /// When.
    pub told_at: DateTime<Utc>,
    /// Is it a drill?
    pub drill: bool,
    /// Is it open still?
    pub open: bool,
    /// How many packs it holds.
    pub packs: usize,
    /// What they weigh.
    pub weight: Grams,
}

/// Nobody closed it.
fn is_open(acts: &[(ActRow, Done)]) -> bool {
    !acts.iter().any(|(act, _)| act.kind == CLOSED)
}

/// The most that a page lists.
const MOST: usize = 20;

/// The last incidents, the newest first, with what each holds.
///
/// # Errors
/// The database is away.
pub fn standing(conn: &mut Conn) -> Result<Vec<Standing>> {
    let mut all = Vec::new();
    for (row, done) in incidents::all(conn)?.into_iter().take(MOST) {
        let acts = incidents::acts(conn, row.id)?;
        let row = recall::as_known(&row, &acts);
        let (packs, weight) = incidents::on_hand(conn, row.id)?;
        all.push(Standing {
            open: is_open(&acts),
            id: shown_id(&done.uid),
            began_at: done.at.and_utc(),
            number: row.number,
            told_by: row.told_by,
            told_at: row.told_at.and_utc(),
            drill: row.drill,
            packs,
            weight,
        });
    }
    Ok(all)
}

/// An incident.
///
/// # Errors
/// 404 where there is none; the database is away, or the record is damaged.
pub fn read(app: &Caller<'_>, conn: &mut Conn, id: Id) -> Result<IncidentRead> {
    let kitchen = app.standing(conn)?.kitchen.clone();
    let (zone, speech) = (kitchen.zone, app.speech(&kitchen));
    let row = of_id(conn, id, None)?;
    let facts = recall::of(app, conn, id, None)?;
    let scopes = incidents::scopes(conn, row.id)?;
    let acts = incidents::acts(conn, row.id)?;
    let last = scopes.last();
    let (last, said) =
        last.ok_or_else(|| store::Error::bad_row("incidents", row.id, "no scope"))?;
    let question: ScopeAsked =
        serde_json::from_str(&last.question).map_err(|error| damaged(&error))?;
    let found = scope::find(app, conn, &question, "", Some(said.recorded_at))?;
    let (held_packs, grams) = incidents::on_hand(conn, row.id)?;
    let shown = acts
        .iter()
        .rev()
        .find(|(act, _)| [SHOWN, HIDDEN].contains(&act.kind.as_str()));
    let open = is_open(&acts);
    Ok(IncidentRead {
        brief: brief(&recall::as_known(&row, &acts), id.0.as_bytes(), open, zone),
        guests: open && shown.is_some_and(|(act, _)| act.kind == SHOWN),
        scope: found.read(&question, speech),
        question,
        held_packs,
        held_grams: Weight(grams),
        milestones: facts
            .milestones
            .iter()
            .map(|mark| MilestoneRead {
                what: mark.what.clone(),
                says: Milestone::parse(&mark.what)
                    .map_or_else(String::new, |what| speech.say(&what.says())),
                at: mark.at.clone(),
                seconds: mark.seconds,
            })
            .collect(),
        count: CountRead::of(&facts),
        notices: recall::notices(&facts),
        sources: facts.sources,
        customers: facts.customers,
        sold: facts.sold,
        disposals: facts.disposals,
        scopes: scopes
            .into_iter()
            .map(|(scope, done)| IncidentScopeRead {
                id: shown_id(&done.uid),
                at: instant(done.at, zone),
                by: done.person,
                digest: scope.digest,
                lots: scope.lots,
                why: scope.why,
            })
            .collect(),
        notes: acts
            .into_iter()
            .map(|(act, done)| IncidentNoteRead {
                id: shown_id(&done.uid),
                at: instant(done.at, zone),
                by: done.person,
                kind: act.kind,
                whom: act.whom,
                text: act.text,
            })
            .collect(),
    })
}

/// What was done when, each for the first time; what ends it, for the last.
pub fn milestones(
    row: &IncidentRow,
    scopes: &[(ScopeRow, Done)],
    acts: &[(ActRow, Done)],
    count: &Reckoned,
) -> Vec<(Milestone, NaiveDateTime)> {
    let mut all = vec![(Milestone::Called, row.told_at)];
    if let Some((_, first)) = scopes.first() {
        all.push((Milestone::Scoped, first.at));
        all.extend(row.holds.then_some((Milestone::Held, first.at)));
    }
    let first = |kind: &str| acts.iter().find(|(act, _)| act.kind == kind);
    let last = |kind: &str| acts.iter().rev().find(|(act, _)| act.kind == kind);
    all.extend(count.located.map(|at| (Milestone::Located, at.naive_utc())));
    all.extend(count.counted.map(|at| (Milestone::Counted, at.naive_utc())));
    let told = first(IncidentNote::Told.as_str());
    all.extend(told.map(|(_, done)| (Milestone::Told, done.at)));
    // The last of it is disposed of only where nothing is left.
    let ended = last(DISPOSED).filter(|_| count.sums.left == Grams::ZERO);
    all.extend(ended.map(|(_, done)| (Milestone::Disposed, done.at)));
    all.extend(first(CLOSED).map(|(_, done)| (Milestone::Closed, done.at)));
    all
}

fn brief(row: &IncidentRow, uid: &[u8], open: bool, zone: Tz) -> IncidentBrief {
    IncidentBrief {
        id: shown_id(uid),
        number: row.number.clone(),
        told_by: row.told_by.clone(),
        told_at: instant(row.told_at, zone),
        hazard: row.hazard.clone(),
        drill: row.drill,
        holds: row.holds,
        open,
        why: row.why.clone(),
    }
}
