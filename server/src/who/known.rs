//! Everybody, kept in memory: who asks is looked up on every request, and no scan waits for that.

use super::secrets::Hash;
use super::{Kind, Who};
use crate::app::App;
use crate::error::Result;
use crate::lists::kitchen::{heat, mass};
use crate::read::seek::fold;
use chrono::{NaiveDateTime, TimeDelta};
use domain::right::{Right, Role};
use domain::words::{HeatUnits, MassUnits};
use std::collections::HashMap;
use std::sync::PoisonError;
use store::Conn;
use store::Tx;
use store::people::{Everybody, PersonRow, SessionRow, TokenRow};
use words::Language;

/// How long after its end a session still says who was there: deeds that waited come late.
const REMEMBERED: TimeDelta = TimeDelta::days(14);

/// Everybody, as they were read last.
#[derive(Debug, Default)]
pub struct Known {
    /// People, by name.
    pub people: Vec<Person>,
    /// Tokens, in the order they were made.
    pub tokens: Vec<TokenRow>,
    sessions: HashMap<Vec<u8>, SessionRow>,
    by_hash: HashMap<Vec<u8>, usize>,
}

/// A person with their roles.
#[derive(Debug, Clone)]
pub struct Person {
    /// As they are kept.
    pub row: PersonRow,
    /// What they are here.
    pub roles: Vec<Role>,
}

impl Person {
    /// May they do that?
    pub fn may(&self, right: Right) -> bool {
        self.row.active && self.roles.iter().any(|role| role.may(right))
    }

    /// Their id outside.
    pub fn uid(&self) -> uuid::Uuid {
        uuid::Uuid::from_slice(&self.row.uid).unwrap_or_default()
    }
}

impl Known {
    /// From what was read.
    pub fn of(all: Everybody) -> Known {
        let mut roles: HashMap<i32, Vec<Role>> = HashMap::new();
        for (person, role) in all.roles {
            roles.entry(person).or_default().extend(Role::parse(&role));
        }
        let person = |row: PersonRow| Person {
            roles: roles.remove(&row.id).unwrap_or_default(),
            row,
        };
        let tokens = all.tokens.iter().enumerate();
        let mut people: Vec<Person> = all.people.into_iter().map(person).collect();
        people.sort_by_cached_key(|one| fold(&one.row.name));
        Known {
            by_hash: tokens
                .map(|(nth, token)| (token.hash.clone(), nth))
                .collect(),
            people,
            tokens: all.tokens,
            sessions: all
                .sessions
                .into_iter()
                .map(|one| (one.hash.clone(), one))
                .collect(),
        }
    }

    /// The person of a name.
    pub fn named(&self, name: &str) -> Option<&Person> {
        self.people.iter().find(|person| person.row.name == name)
    }

    /// The person of an id.
    pub fn person(&self, uid: uuid::Uuid) -> Option<&Person> {
        self.people
            .iter()
            .find(|person| person.row.uid == uid.as_bytes())
    }

    /// The session with that secret.
    pub fn session(&self, hash: &Hash, now: NaiveDateTime) -> Option<(&SessionRow, Who)> {
        let session = self.sessions.get(hash.as_slice())?;
        let person = self
            .people
            .iter()
            .find(|one| one.row.id == session.person_id)?;
        if session.ends_at <= now || !person.row.active {
            return None;
        }
        let kind = Kind::Person {
            id: person.row.id,
            device: session.device.clone(),
        };
        let mut who = Who::of(kind, &person.row.name, person.roles.clone());
        who.language = person.row.language.as_deref().and_then(Language::of_tag);
        who.mass = person
            .row
            .weights
            .as_deref()
            .and_then(MassUnits::parse)
            .map(mass);
        let heats = person.row.temperatures.as_deref();
        who.heat = heats.and_then(HeatUnits::parse).map(heat);
        Some((session, who))
    }

    /// The program with that token.
    pub fn token(&self, hash: &Hash, now: NaiveDateTime) -> Option<Who> {
        let token = &self.tokens[*self.by_hash.get(hash.as_slice())?];
        if token.ends_at.is_some_and(|ends| ends <= now) {
            return None;
        }
        let roles = Role::parse(&token.role).into_iter().collect();
        let (id, speaks) = (token.id, token.speaks);
        Some(Who::of(Kind::Token { id, speaks }, &token.name, roles))
    }

    /// Was somebody of that name signed in on a device at a moment?
    pub fn was_signed_in(&self, name: &str, device: &str, at: NaiveDateTime) -> bool {
        let Some(person) = self.named(name) else {
            return false;
        };
        self.sessions.values().any(|session| {
            session.person_id == person.row.id
                && session.device == device
                && session.began_at <= at
                && at < session.ends_at
        })
    }

    /// Has that person signed in on that device of late?
    pub fn knows_device(&self, person: i32, device: &str) -> bool {
        let mut sessions = self.sessions.values();
        sessions.any(|session| session.person_id == person && session.device == device)
    }

    /// Is there a manager who can sign in by a PIN, other than one person?
    pub fn has_manager_besides(&self, person: Option<i32>) -> bool {
        self.people.iter().any(|one| {
            Some(one.row.id) != person && one.may(Right::People) && one.row.pin.is_some()
        })
    }
}

impl App {
    /// Reads everybody anew.
    ///
    /// # Errors
    /// The database is away.
    pub fn learn_people(&self, conn: &mut Conn) -> store::Result<()> {
        // Read and kept in one turn: else who read before another did may keep what they read after them.
        let _turn = self.learning.lock().unwrap_or_else(PoisonError::into_inner);
        let after = (self.now() - REMEMBERED).naive_utc();
        let known = Known::of(store::people::everybody(conn, after)?);
        self.keep_people(known);
        Ok(())
    }

    /// Writes something about people, and reads everybody anew when it is on record: nobody else sees it before.
    ///
    /// # Errors
    /// Whatever `write` says, or the database being away or full.
    pub fn write_people<T>(&self, write: impl FnMut(&mut Tx<'_>) -> Result<T>) -> Result<T> {
        let done = self.store.write(write)?;
        self.store.look(|conn| self.learn_people(conn))?;
        Ok(done)
    }
}
