//! What is affected, and what is deliberately outside: a question; nothing is recorded.

mod lately;
mod named;
mod starts;
mod twins;

use crate::app::App;
use crate::error::{Error, Result};
use crate::lists::standing::Standing;
use crate::wire::answers::ScopeRead;
use crate::wire::answers::scope::Telling;
use crate::wire::asked::{Id, canonical};
use crate::wire::scope::ScopeAsked;
use crate::wire::{InstantOrDay, Word};
use chrono::{DateTime, NaiveDateTime, NaiveTime, TimeZone, Utc};
use chrono_tz::Tz;
use domain::lot::LotId;
use domain::says::Says;
use domain::scope::{
    Because, ByKey, Outside, Question, Scope, ScopeSays, Spreads, Start, World, reason,
};
pub use lately::{Lately, as_listed, listed};
pub use named::{Named, Window};
use starts::Starts;
use std::collections::{BTreeMap, HashMap};
use std::sync::Arc;
use store::Conn;
use store::scope::Asked;
use words::Speech;

/// A scope that was found, with what it is told with.
pub struct Found {
    /// The scope.
    pub scope: Scope,
    standing: Arc<Standing>,
    deeds: HashMap<i32, Vec<u8>>,
}

/// What a page asks: the scope, and the body of the deed that holds it.
///
/// # Errors
/// 422 for what cannot be, 404 for what never was.
pub fn of(
    app: &App,
    conn: &mut Conn,
    named: &Named,
    spreads: Spreads,
    drill: bool,
) -> Result<(Arc<Found>, String)> {
    let asked = ScopeAsked {
        start: vec![named.start()],
        spreads: Word(spreads),
        contact_from: None,
        contact_until: None,
        without: None,
    };
    let found = listed(app, conn, &asked, "")?;
    let scope = canonical(&asked);
    let how = if drill {
        r#""drill":true"#
    } else {
        r#""hold":true"#
    };
    Ok((found, format!(r#"{{{how},"scope":{scope}}}"#)))
}

/// How far an incident goes: its last question, with what was cleaned as it was known then.
///
/// # Errors
/// 404 for none; the database is away, or the record is damaged.
pub fn of_incident(app: &App, conn: &mut Conn, id: Id) -> Result<Found> {
    let row = crate::deeds::incident::of_id(conn, id, None)?;
    let last = store::incidents::scopes(conn, row.id)?.pop();
    let lacks = || store::Error::bad_row("incidents", row.id, "no scope");
    let (last, said) = last.ok_or_else(lacks)?;
    let asked: ScopeAsked =
        serde_json::from_str(&last.question).map_err(|error| crate::app::damaged(&error))?;
    find(app, conn, &asked, "", Some(said.recorded_at))
}

/// A scope with what was loaded for it, before anything more is asked that it is told with.
pub struct Looked {
    /// The scope, without the twins of what was named.
    pub scope: Scope,
    /// Its lots with all that happened to them, as the record is.
    pub world: World,
    /// The kitchen and its lists.
    pub standing: Arc<Standing>,
    named: Vec<LotId>,
}

impl Found {
    /// Its lots by their keys: what reasons are told with, made once for all of them.
    pub fn by_key(&self) -> ByKey<'_> {
        self.scope.lots.iter().map(|lot| (lot.id, lot)).collect()
    }

    /// Why a lot is in scope.
    pub fn because(&self, of: &Because, lots: &ByKey<'_>, language: &str) -> Option<Says> {
        Some(reason(of, lots, &self.standing.lists, language)?.into())
    }

    /// For a reader.
    pub fn read(&self, asked: &ScopeAsked, speech: Speech) -> ScopeRead {
        let telling = Telling {
            lists: &self.standing.lists,
            zone: self.standing.kitchen.zone,
            speech,
            deeds: &self.deeds,
        };
        ScopeRead::of(asked, &self.scope, &telling)
    }
}

/// Asks the record. What was cleaned counts as it was known at a moment; as it is known now if left out.
///
/// # Errors
/// 422 for what cannot be, 404 for what never was.
pub fn find(
    app: &App,
    conn: &mut Conn,
    asked: &ScopeAsked,
    field: &str,
    cleaned_as_known: Option<NaiveDateTime>,
) -> Result<Found> {
    let Looked {
        mut scope,
        standing,
        named,
        ..
    } = look(app, conn, asked, field, cleaned_as_known)?;
    let twins = twins::of(conn, &standing.lists, &named, &scope)?;
    scope.outside.extend(twins);
    let because = scope.lots.iter().flat_map(|lot| &lot.because);
    let deeds = because
        .filter_map(|because| Some(because.deed?.0))
        .collect();
    Ok(Found {
        deeds: store::scope::uids(conn, deeds)?,
        scope,
        standing,
    })
}

/// The same, for who shows no reasons: it is not asked which deeds they name.
///
/// # Errors
/// The same.
pub fn look(
    app: &App,
    conn: &mut Conn,
    asked: &ScopeAsked,
    field: &str,
    cleaned_as_known: Option<NaiveDateTime>,
) -> Result<Looked> {
    let standing = app.standing(conn)?;
    let zone = standing.kitchen.zone;
    let starts = Starts::read(app, conn, &standing, asked, field)?;
    let without = left_out(app, conn, asked, field)?;
    let instant = |time: &Option<InstantOrDay>| time.map(|time| begins(time, zone));
    let (from, until) = (instant(&asked.contact_from), instant(&asked.contact_until));
    if from.zip(until).is_some_and(|(from, until)| until <= from) {
        let field = format!("{field}contact_until");
        return Err(Error::cannot_be(field, ScopeSays::EndsFirst));
    }
    let contact = standing.lists.place_codes.iter();
    let contact = contact.filter(|(_, code)| {
        let place = standing.lists.places.get(code.as_str());
        place.is_some_and(|place| place.is_contact)
    });
    let question = Asked {
        starts: starts.starts.clone(),
        question: Question {
            spreads: asked.spreads.0,
            contact_from: from,
            contact_until: until,
            without: without.keys().copied().collect(),
        },
        without,
        contact: contact.map(|(key, _)| *key).collect(),
        cleaned_as_known,
    };
    let (mut scope, world) = store::scope::ask(conn, &question)?;
    scope.outside.extend(starts.outside);
    Ok(Looked {
        named: starts.starts.iter().flat_map(lots_of).collect(),
        scope,
        world,
        standing,
    })
}

fn lots_of(start: &Start) -> Vec<LotId> {
    match start {
        Start::Lots(lots) => lots.clone(),
        Start::Place { .. } | Start::By { .. } => Vec::new(),
    }
}

/// The instant of an instant, or at which a day of the kitchen begins.
pub fn begins(time: InstantOrDay, zone: Tz) -> DateTime<Utc> {
    match time {
        InstantOrDay::Instant(instant) => instant.0.to_utc(),
        InstantOrDay::Day(day) => {
            let midnight = day.0.and_time(NaiveTime::MIN);
            // Where the clock skips midnight, the day begins an hour later.
            let first = (0..4).find_map(|hour| {
                let local = midnight + chrono::TimeDelta::hours(hour);
                zone.from_local_datetime(&local).earliest()
            });
            first.map_or_else(|| midnight.and_utc(), |first| first.to_utc())
        }
    }
}

/// The lots that a person leaves out, each with the reason.
fn left_out(
    app: &App,
    conn: &mut Conn,
    asked: &ScopeAsked,
    field: &str,
) -> Result<BTreeMap<LotId, String>> {
    let mut without = BTreeMap::new();
    let all = asked.without.iter().flatten().enumerate();
    for (nth, of) in all {
        if of.why.0.is_empty() {
            let field = format!("{field}without[{nth}].why");
            return Err(Error::cannot_be(field, ScopeSays::WhyLeftOut));
        }
        let field = format!("{field}without[{nth}].lot");
        let named = crate::named::named(&of.lot.0, &field, &app.ours())?;
        let row = super::row(conn, &named.code, &field)?;
        without.insert(LotId(row.id), of.why.0.clone());
    }
    Ok(without)
}

/// Something outside that is a lot.
fn outside(lot: domain::code::LotCode, why: impl Into<Says>) -> Outside {
    Outside {
        lot: Some(lot),
        animal: None,
        why: why.into(),
    }
}
