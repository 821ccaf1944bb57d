//! Signing in and out: a PIN or a word for a session on a device.

use super::known::{Known, Person};
use super::says::WhoSays;
use super::{Kind, Who, secrets};
use crate::app::App;
use crate::error::{Error, Problem, Result};
use crate::problems::TitleSays;
use actix_web::http::StatusCode;
use chrono::{NaiveDateTime, TimeDelta};
use store::people::SessionRow;

/// How long nobody may do anything on a shared device before its session ends.
const SHARED: TimeDelta = TimeDelta::hours(1);
/// The same on somebody's own device.
const OWN: TimeDelta = TimeDelta::hours(12);

/// A session that has begun.
pub struct Begun {
    /// What the cookie holds.
    pub secret: String,
    /// Who it is.
    pub who: Who,
    /// Until when, if nothing is done.
    pub ends_at: NaiveDateTime,
    /// Have they still to choose a PIN?
    pub choose_pin: bool,
}

/// What was told to sign in with.
pub struct Told<'a> {
    /// The person's name or id.
    pub person: &'a str,
    /// Their PIN, or the word that they were given.
    pub pin: Option<&'a str>,
    /// The device.
    pub device: &'a str,
    /// The address that it comes from: a device that the person has not signed in on is counted by that, or whoever
    /// tries PINs would be a new device each time; also who has a PIN and is known on each of them.
    pub from: &'a str,
    /// Is the device one person's own?
    pub own: bool,
}

/// Begins a session. Another's on the same device ends.
///
/// # Errors
/// 401 for a wrong PIN or nobody of that name, 429 while somebody has to wait.
pub fn begin(app: &App, told: &Told<'_>) -> Result<Begun> {
    let known = app.people();
    let asked = known.named(told.person).or_else(|| {
        let uid = told.person.parse().ok()?;
        known.person(uid)
    });
    let Some(person) = asked.filter(|person| person.row.active) else {
        // As slow as a wrong PIN: whoever tries names learns nothing by the clock.
        secrets::is_pin("0000", DUMMY);
        return Err(unauthorized(WhoSays::WrongPin));
    };
    let tries_from = match known.knows_device(person.row.id, told.device) {
        true => told.device,
        false => told.from,
    };
    if let Some(wait) = app.lockout.wait(person.row.id, tries_from) {
        let seconds = usize::try_from(wait.as_secs() + 1).unwrap_or(1);
        let (title, detail) = (TitleSays::SignIn, WhoSays::Wait { seconds });
        let mut problem = Problem::new(StatusCode::TOO_MANY_REQUESTS, "wait", title, detail);
        problem.again_in = Some(seconds);
        return Err(problem.into());
    }
    let (person, word) = match proof(app, person, told.pin) {
        Some(word) => (person.clone(), word),
        None => match with_new_word(app, person, told.pin)? {
            Some(person) => (person, true),
            None => {
                app.lockout.failed(person.row.id, tries_from);
                return Err(unauthorized(WhoSays::WrongPin));
            }
        },
    };
    app.lockout.passed(person.row.id, tries_from);
    let begun = write(app, &person, told, word)?;
    Ok(begun)
}

/// A hash that no PIN has.
const DUMMY: &str = "argon2id 19456 2 1 00000000000000000000000000000000 \
                     0000000000000000000000000000000000000000000000000000000000000000";

/// Did they prove who they are? And was it by the word that is good once?
fn proof(app: &App, person: &Person, pin: Option<&str>) -> Option<bool> {
    let Some(pin) = pin.map(str::trim).filter(|pin| !pin.is_empty()) else {
        // A tap is enough in the demo, and nowhere else.
        return app.demo.then_some(false);
    };
    let is_pin = |kept: &String| pin.len() <= 12 && secrets::is_pin(pin, kept);
    if person.row.pin.as_ref().is_some_and(is_pin) {
        return Some(false);
    }
    is_word(person, pin).then_some(true)
}

fn is_word(person: &Person, told: &str) -> bool {
    let told = secrets::hash_of_word(told);
    person
        .row
        .word
        .as_ref()
        .is_some_and(|word| told.as_slice() == word.as_slice())
}

/// The person as they are now, where the word was given on the terminal since everybody was read last.
fn with_new_word(app: &App, person: &Person, told: Option<&str>) -> Result<Option<Person>> {
    let Some(told) = told.map(str::trim).filter(|told| !told.is_empty()) else {
        return Ok(None);
    };
    app.store.look(|conn| app.learn_people(conn))?;
    let now = app.people().person(person.uid()).cloned();
    Ok(now.filter(|person| is_word(person, told)))
}

fn write(app: &App, person: &Person, told: &Told<'_>, by_word: bool) -> Result<Begun> {
    let (secret, hash) = secrets::secret().map_err(store::Error::Broken)?;
    let now = app.now().naive_utc();
    let ends_at = now + if told.own { OWN } else { SHARED };
    app.write_people(|tx| {
        store::people::end_sessions(tx, None, Some(told.device), now)?;
        if by_word {
            let used = store::people::PersonRow {
                word: None,
                ..person.row.clone()
            };
            store::people::change(tx, &used, None)?;
        }
        let session = SessionRow {
            id: 0,
            person_id: person.row.id,
            hash: hash.to_vec(),
            device: told.device.to_owned(),
            began_at: now,
            ends_at,
        };
        store::people::begin(tx, &session)?;
        Ok(())
    })?;
    let kind = Kind::Person {
        id: person.row.id,
        device: told.device.to_owned(),
    };
    Ok(Begun {
        secret,
        who: Who::of(kind, &person.row.name, person.roles.clone()),
        ends_at,
        choose_pin: person.row.pin.is_none(),
    })
}

/// Ends the session of who asks.
///
/// # Errors
/// The database is away.
pub fn end(app: &App, who: &Who) -> Result<()> {
    let Kind::Person { id, device } = &who.kind else {
        return Ok(());
    };
    let now = app.now().naive_utc();
    app.write_people(|tx| {
        store::people::end_sessions(tx, Some(*id), Some(device), now)?;
        Ok(())
    })
}

/// When a session that is used now should end, if it is time to say so. A shared one lasts an hour from
/// the last time that anything was done, somebody's own the whole day from its beginning.
pub fn prolonged(
    known: &Known,
    hash: &secrets::Hash,
    now: NaiveDateTime,
) -> Option<(i32, NaiveDateTime)> {
    let (session, _) = known.session(hash, now)?;
    // Not with every request: every six minutes is soon enough.
    let soon = session.ends_at - now < SHARED - SHARED / 10;
    let own = session.ends_at - session.began_at == OWN;
    (soon && !own).then(|| (session.id, now + SHARED))
}

fn unauthorized(says: WhoSays) -> Error {
    Problem::new(StatusCode::UNAUTHORIZED, "sign-in", TitleSays::SignIn, says).into()
}
