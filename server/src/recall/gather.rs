//! The facts of an incident, from the record as it was at a moment.

use super::facts::{
    ActFacts, InEach, IncidentFacts, KitchenFacts, LotFacts, MilestoneFacts, OutsideFacts,
    SourceFacts, WentFacts,
};
use super::gathered::Gathered;
use super::learned::as_known;
use super::people;
use crate::app::{App, damaged};
use crate::deeds::incident::of_id;
use crate::error::{Error, Result};
use crate::ids::shown_id;
use crate::lists::standing::Standing;
use crate::read::incidents::milestones;
use crate::read::scope;
use crate::wire::Instant;
use crate::wire::answers::instant;
use crate::wire::asked::Id;
use crate::wire::scope::ScopeAsked;
use chrono::NaiveDateTime;
use domain::incident::{IncidentSays, Reckoned, reckon};
use domain::law::Law;
use domain::lot::{DeedId, PackId};
use domain::scope::InScope;
use domain::words::MassUnits;
use std::collections::{BTreeMap, BTreeSet};
use store::Conn;
use store::incident_life::{self as life, LotLife};
use store::incidents::{self, ActRow, CLOSED, Done, IncidentRow, ScopeRow};
use words::{Language, Speech};

/// How much is gathered of an incident.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Depth {
    /// What is told of it.
    Whole,
    /// What is drawn of it: where each lot went, and not why, by whom, from whom.
    Drawn,
}

/// An incident by its id: as it was kept at its close, or as the record is, or was at a moment.
///
/// # Errors
/// 404 for none, 422 for a moment before it began; the database is away, or the record is damaged.
pub fn of(app: &App, conn: &mut Conn, id: Id, at: Option<Instant>) -> Result<IncidentFacts> {
    let row = of_id(conn, id, None)?;
    of_row(app, conn, &row, at)
}

/// The same as it was at a moment, as far as it is drawn.
///
/// # Errors
/// The same.
pub(super) fn to_draw(
    app: &App,
    conn: &mut Conn,
    row: &IncidentRow,
    until: NaiveDateTime,
) -> Result<IncidentFacts> {
    gather(app, conn, row, until, Depth::Drawn)
}

/// The same, by its number.
///
/// # Errors
/// The same.
pub fn of_number(app: &App, conn: &mut Conn, number: &str) -> Result<IncidentFacts> {
    let row = incidents::by_number(conn, number)?;
    let unknown = || IncidentSays::Unknown { id: number.into() };
    let row = row.ok_or_else(|| Error::not_found(unknown()))?;
    of_row(app, conn, &row, None)
}

fn of_row(
    app: &App,
    conn: &mut Conn,
    row: &IncidentRow,
    at: Option<Instant>,
) -> Result<IncidentFacts> {
    match as_of(conn, row, at)? {
        AsOf::Kept(facts) => Ok(*facts),
        AsOf::Now(until) | AsOf::Then(until) => gather(app, conn, row, until, Depth::Whole),
    }
}

/// As of when an incident is told or drawn.
pub(super) enum AsOf {
    /// As it was kept at its close.
    Kept(Box<IncidentFacts>),
    /// As the record is, whose last deed was recorded then.
    Now(NaiveDateTime),
    /// As the record was at a moment.
    Then(NaiveDateTime),
}

/// What a moment that was asked for comes to.
///
/// # Errors
/// The database is away, or the record is damaged.
pub(super) fn as_of(conn: &mut Conn, row: &IncidentRow, at: Option<Instant>) -> Result<AsOf> {
    let at = at.map(|at| at.0.to_utc().naive_utc());
    if let Some(kept) = store::incident_reports::kept(conn, row.id)? {
        let closed = incidents::acts(conn, row.id)?;
        let closed = closed.iter().find(|(act, _)| act.kind == CLOSED);
        let closed = closed.map(|(_, done)| done.recorded_at);
        if at.is_none_or(|at| closed.is_some_and(|closed| closed <= at)) {
            let facts = serde_json::from_str(&kept).map_err(|error| damaged(&error))?;
            return Ok(AsOf::Kept(Box::new(facts)));
        }
    }
    let last = life::last_recorded(conn)?.unwrap_or_default();
    Ok(match at.filter(|at| *at < last) {
        Some(at) => AsOf::Then(at),
        None => AsOf::Now(last),
    })
}

/// What is kept of an incident that closes at a moment: its facts, as text.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn to_keep(
    app: &App,
    conn: &mut Conn,
    row: &IncidentRow,
    at: NaiveDateTime,
    record_digest: Option<String>,
) -> Result<(IncidentFacts, String)> {
    let mut facts = gather(app, conn, row, at, Depth::Whole)?;
    facts.record_digest = record_digest;
    facts.anchor = anchor(conn)?;
    let text = serde_json::to_string(&facts).map_err(|error| damaged(&error))?;
    Ok((facts, text))
}

/// The end of the record's chain, in one line; none of a record that is empty.
///
/// # Errors
/// The database is away.
pub fn anchor(conn: &mut Conn) -> Result<Option<String>> {
    Ok(store::chain::anchor(conn)?.map(|end| end.to_string()))
}

fn gather(
    app: &App,
    conn: &mut Conn,
    row: &IncidentRow,
    until: NaiveDateTime,
    depth: Depth,
) -> Result<IncidentFacts> {
    let standing = app.standing(conn)?;
    let zone = standing.kitchen.zone;
    let mut scopes = incidents::scopes(conn, row.id)?;
    scopes.retain(|(_, done)| done.recorded_at <= until);
    let mut acts = incidents::acts(conn, row.id)?;
    acts.retain(|(_, done)| done.recorded_at <= until);
    let (last, said) = scopes.last().ok_or_else(|| not_begun(row))?;
    let question = question(last)?;
    let found = scope::find(app, conn, &question, "", Some(said.recorded_at))?;
    let lots: Vec<&InScope> = found.scope.lots.iter().collect();
    let keys: Vec<i32> = lots.iter().map(|lot| lot.id.0).collect();
    let life = life::lots(conn, &keys, until)?;
    let reckoned = reckoned(&lots, &life, DeedId(row.id));
    let nth = reckoned.lots.iter().enumerate();
    let codes = lots
        .iter()
        .map(|lot| (lot.id, (lot.code.shown(), lot.product.clone())));
    let of = Gathered {
        standing,
        began: DeedId(row.id),
        nth: nth.map(|(nth, lot)| (lot.id, nth)).collect(),
        codes: codes.collect(),
        reckoned,
        life,
    };
    let (told, went_in, sources) = match depth {
        Depth::Whole => (
            of.told(conn, &lots)?,
            of.went_in(conn, until)?,
            people::sources(app, conn, &of, &lots, until)?,
        ),
        Depth::Drawn => Default::default(),
    };
    let mut read = Vec::with_capacity(lots.len());
    let by_key = found.by_key();
    let because = (depth == Depth::Whole).then_some((&found, &by_key));
    for lot in &lots {
        if let Some(facts) = of.lot(lot, because, &told, &went_in) {
            let received = told.get(&facts.made_by);
            let document = received.and_then(|(_, told)| told.document.clone());
            let from = sources.of.get(&lot.id.0).cloned();
            let from = from.map(|from| SourceFacts { document, ..from });
            read.push(LotFacts { from, ..facts });
        }
    }
    let closed = acts.iter().any(|(act, _)| act.kind == CLOSED);
    let row = &as_known(row, &acts);
    let marks = milestones(row, &scopes, &acts, &of.reckoned);
    let entry = &of.standing.kitchen.entry;
    let began = scopes.first().map_or(row.told_at, |(_, done)| done.at);
    let mut went = WentFacts::default();
    read.iter().for_each(|lot| went.add(&lot.went));
    Ok(IncidentFacts {
        kitchen: KitchenFacts {
            name: entry.name.0.clone(),
            address: entry.address.as_ref().map(|address| address.0.clone()),
            zone: zone.name().to_owned(),
            profile: entry.profile.0.as_str().to_owned(),
            languages: entry.languages.iter().map(|of| of.0.clone()).collect(),
            pounds: entry.weights.is_some_and(|of| of.0 == MassUnits::Pounds),
        },
        id: shown_id(&scopes[0].1.uid),
        number: row.number.clone(),
        told_by: row.told_by.clone(),
        told_at: instant(row.told_at, zone),
        hazard: row.hazard.clone(),
        drill: row.drill,
        holds: row.holds,
        why: row.why.clone(),
        as_of: instant(until, zone),
        closed,
        milestones: marks
            .into_iter()
            .map(|(what, at)| MilestoneFacts {
                what: what.as_str().to_owned(),
                at: instant(at, zone),
                seconds: (at - row.told_at).num_seconds(),
            })
            .collect(),
        places: of.places(),
        sums: of.reckoned.sums.into(),
        went,
        to_count: of.reckoned.to_count,
        uncounted: of.reckoned.uncounted,
        waiting: of.reckoned.waiting,
        outside: found.scope.outside.iter().map(outside).collect(),
        customers: people::customers(&read, &acts, zone),
        sources: people::told(sources.people, &acts, zone),
        sold: of.sold(&lots, &told),
        disposals: of.disposals(&told, began),
        acts: decided(&scopes, &acts, zone),
        place_names: places_named(&of),
        rows: super::sheet::rows(law(app, &of.standing)),
        scope_digest: last.digest.clone(),
        record_digest: None,
        anchor: None,
        lots: read,
    })
}

/// At that moment it had not begun.
pub(super) fn not_begun(row: &IncidentRow) -> Error {
    let number = row.number.clone();
    Error::cannot_be("at", IncidentSays::NotBegun { number })
}

/// What was asked when it was said how far an incident goes.
///
/// # Errors
/// The record is damaged.
pub(super) fn question(of: &ScopeRow) -> Result<ScopeAsked> {
    serde_json::from_str(&of.question).map_err(|error| damaged(&error))
}

fn law<'a>(app: &'a App, standing: &Standing) -> &'a Law {
    let place = standing.kitchen.entry.profile.0;
    app.laws(&standing.confirmed).of(place)
}

fn places_named(of: &Gathered) -> BTreeMap<String, String> {
    let places = of.standing.lists.places.iter();
    places
        .map(|(code, listed)| (code.clone(), listed.name.clone()))
        .collect()
}

fn outside(of: &domain::scope::Outside) -> OutsideFacts {
    OutsideFacts {
        lot: of.lot.as_ref().map(|lot| lot.shown()),
        why: in_each(|speech| speech.say(&of.why)),
    }
}

/// A text in every language that we speak.
pub(super) fn in_each(say: impl Fn(&Speech) -> String) -> InEach {
    let told = |language: Language| {
        let text = say(&Speech::in_language(language));
        (language.tag().to_owned(), text)
    };
    Language::ALL.into_iter().map(told).collect()
}

fn reckoned(lots: &[&InScope], life: &BTreeMap<i32, LotLife>, began: DeedId) -> Reckoned {
    let of = lots.iter().filter_map(|lot| {
        let packs = &life.get(&lot.id.0)?.packs;
        let reached: BTreeSet<PackId> = lot.reached.iter().map(|(pack, _)| *pack).collect();
        let packs = packs.iter().filter(|pack| reached.contains(&pack.id));
        Some((lot.id, packs.collect()))
    });
    reckon(of, began)
}

/// What was decided, told and answered, in the order of its times.
fn decided(
    scopes: &[(ScopeRow, Done)],
    acts: &[(ActRow, Done)],
    zone: chrono_tz::Tz,
) -> Vec<ActFacts> {
    let scopes = scopes.iter().enumerate().map(|(nth, (scope, done))| {
        let kind = if nth == 0 { "begun" } else { "scope" };
        (done, kind.to_owned(), None, scope.why.clone())
    });
    let acts = acts
        .iter()
        .map(|(act, done)| (done, act.kind.clone(), act.whom.clone(), act.text.clone()));
    let mut all: Vec<_> = scopes.chain(acts).collect();
    all.sort_by_key(|(done, ..)| done.at);
    let act = |(done, kind, whom, text): (&Done, String, Option<String>, String)| ActFacts {
        at: instant(done.at, zone),
        by: done.person.clone(),
        kind,
        whom,
        text,
    };
    all.into_iter().map(act).collect()
}
