//! People are added and changed, tokens are given and taken away. Nobody is deleted: their names are on deeds.

use super::known::{Known, Person};
use super::says::WhoSays;
use super::secrets;
use crate::app::App;
use crate::error::{Error, Result};
use crate::lists::entry::changed_meanwhile;
use crate::wire::Line;
use chrono::NaiveDateTime;
use domain::right::Role;
use domain::words::{HeatUnits, MassUnits};
use store::people::{HERE, PersonRow, TokenRow};
use uuid::Uuid;

/// The name of the first manager, until somebody gives theirs.
pub const FIRST: &str = "Manager";

/// What is told of a person.
#[derive(Debug, Clone, Default)]
pub struct Told {
    /// Their name.
    pub name: String,
    /// What they are here.
    pub roles: Vec<Role>,
    /// Their PIN, if it is to be another.
    pub pin: Option<String>,
    /// The language they read.
    pub language: Option<String>,
    /// The units in which they read weights, if not the kitchen's.
    pub weights: Option<MassUnits>,
    /// The units in which they read temperatures, if not the kitchen's.
    pub temperatures: Option<HeatUnits>,
    /// May they sign in?
    pub active: bool,
    /// Do they get a new word that signs them in once?
    pub word: bool,
}

impl Told {
    /// A person as they are: what is not told anew stays.
    pub fn of(person: &Person) -> Told {
        Told {
            name: person.row.name.clone(),
            roles: person.roles.clone(),
            pin: None,
            language: person.row.language.clone(),
            weights: person.row.weights.as_deref().and_then(MassUnits::parse),
            temperatures: person
                .row
                .temperatures
                .as_deref()
                .and_then(HeatUnits::parse),
            active: person.row.active,
            word: false,
        }
    }

    /// The row of a person, as it is told anew.
    fn over(&self, row: &PersonRow) -> PersonRow {
        PersonRow {
            name: self.name.clone(),
            language: self.language.clone(),
            weights: self.weights.map(|word| word.as_str().to_owned()),
            temperatures: self.temperatures.map(|word| word.as_str().to_owned()),
            active: self.active,
            ..row.clone()
        }
    }
}

/// A person that was written, with the word that they sign in with once, if they got one.
pub struct Written {
    /// The person.
    pub person: Person,
    /// The word.
    pub word: Option<String>,
}

/// A name as it may be: one line, nothing that nobody sees.
///
/// # Errors
/// 422.
pub fn name(text: &str) -> Result<String> {
    let json = serde_json::to_string(text).unwrap_or_default();
    let read = crate::door::unseen::refuse(json.as_bytes())
        .and_then(|()| crate::body::parse::<Line>(json.as_bytes()));
    let mut problem = match read {
        Ok(line) => return Ok(line.0),
        Err(error) => error.problem(),
    };
    problem.field = Some("name".into());
    Err(problem.into())
}

/// Adds a person. Without a PIN they get a word that signs them in once.
///
/// # Errors
/// 409 where somebody has the name; 422.
pub fn add(app: &App, told: &Told) -> Result<Written> {
    check(&app.people(), told, None)?;
    let uid: [u8; 16] = crate::world::chance().map_err(store::Error::Broken)?;
    let uid = uuid::Builder::from_random_bytes(uid).into_uuid();
    let row = told.over(&PersonRow {
        id: 0,
        uid: uid.as_bytes().to_vec(),
        name: told.name.clone(),
        pin: None,
        word: None,
        language: told.language.clone(),
        active: told.active,
        number: 1,
        made_at: app.now().naive_utc(),
        weights: None,
        temperatures: None,
    });
    let told = Told {
        word: told.word || told.pin.is_none(),
        ..told.clone()
    };
    write(app, row, &told, false)
}

/// Changes a person. `version` is the one that the caller has seen.
///
/// # Errors
/// 404, 409 where nobody could manage the kitchen any more, 412, 422.
pub fn change(app: &App, uid: Uuid, told: &Told, version: i32) -> Result<Written> {
    let known = app.people();
    let person = known.person(uid);
    let person = person.ok_or_else(|| Error::not_found(WhoSays::NoPerson))?;
    if person.row.number != version {
        return Err(changed_meanwhile(person.row.number));
    }
    check(&known, told, Some(person))?;
    write(app, told.over(&person.row), told, true)
}

/// Chooses a PIN for oneself.
///
/// # Errors
/// 422 for one that anybody would try.
pub fn choose_pin(app: &App, id: i32, pin: &str) -> Result<Written> {
    let known = app.people();
    let person = known.people.iter().find(|one| one.row.id == id);
    let person = person.ok_or_else(|| Error::not_found(WhoSays::NoPerson))?;
    let told = Told {
        pin: Some(pin.to_owned()),
        ..Told::of(person)
    };
    check(&known, &told, Some(person))?;
    write(app, person.row.clone(), &told, true)
}

/// How somebody wants to be spoken to: in which language, in which units. Nothing told: as the kitchen is.
#[derive(Debug, Clone, Default)]
pub struct Reading {
    /// The language.
    pub language: Option<String>,
    /// The units of weight.
    pub weights: Option<MassUnits>,
    /// The units of temperature.
    pub temperatures: Option<HeatUnits>,
}

/// Somebody says for themselves how they want to be spoken to.
///
/// # Errors
/// 404 for whoever is no person; 422 for a language that the pages do not speak.
pub fn choose_reading(app: &App, id: i32, reading: Reading) -> Result<Written> {
    let known = app.people();
    let person = known.people.iter().find(|one| one.row.id == id);
    let person = person.ok_or_else(|| Error::not_found(WhoSays::NoPerson))?;
    if let Some(language) = reading.language.as_deref()
        && words::Language::of_tag(language).is_none()
    {
        let tag = language.to_owned();
        return Err(Error::cannot_be("language", WhoSays::NoLanguage { tag }));
    }
    let told = Told {
        language: reading.language,
        weights: reading.weights,
        temperatures: reading.temperatures,
        ..Told::of(person)
    };
    write(app, told.over(&person.row), &told, true)
}

fn check(known: &Known, told: &Told, person: Option<&Person>) -> Result<()> {
    if let Some(pin) = &told.pin {
        secrets::check_pin(pin).map_err(|says| Error::cannot_be("pin", says))?;
    }
    if told.roles.is_empty() && told.active {
        return Err(Error::cannot_be("roles", WhoSays::NoRole));
    }
    let id = person.map(|person| person.row.id);
    // Written another way it would be taken for the same person.
    let alike = |name: &str| name.to_lowercase() == told.name.to_lowercase();
    let other = |one: &&Person| Some(one.row.id) != id && alike(&one.row.name);
    if known.people.iter().any(|one| other(&one)) {
        let name = told.name.clone();
        return Err(Error::clash("name", WhoSays::NameTaken { name }));
    }
    let manages = told.active && told.roles.contains(&Role::Manager);
    let managed = person.is_some_and(|one| one.may(domain::right::Right::People));
    if managed && !manages && !known.has_manager_besides(id) {
        return Err(Error::clash("roles", WhoSays::LastManager));
    }
    Ok(())
}

fn write(app: &App, mut row: PersonRow, told: &Told, known: bool) -> Result<Written> {
    let broken = |why: String| Error::from(store::Error::Broken(why));
    if let Some(pin) = &told.pin {
        row.pin = Some(secrets::keep_pin(pin).map_err(broken)?);
        row.word = None;
    }
    let mut word = None;
    if told.word {
        let (text, hash) = secrets::word().map_err(broken)?;
        (row.word, word) = (Some(hash.to_vec()), Some(text));
        if told.pin.is_none() {
            row.pin = None; // it was forgotten, or others know it
        }
    }
    let roles: Vec<&str> = told.roles.iter().map(|role| role.as_str()).collect();
    let now = app.now().naive_utc();
    app.write_people(|tx| {
        match known {
            true => store::people::change(tx, &row, Some(&roles))?,
            false => drop(store::people::add(tx, &row, &roles)?),
        }
        // Who may sign in no more is signed out, and so is who had a PIN that others knew.
        if known && (!row.active || told.word) {
            store::people::end_sessions(tx, Some(row.id), None, now)?;
        }
        Ok(())
    })?;
    let people = app.people();
    let person = people.named(&row.name).cloned();
    let person = person.ok_or_else(|| broken("a person was written and is not there".into()))?;
    Ok(Written { person, word })
}

/// Signs a person out on every device: one was lost.
///
/// # Errors
/// 404.
pub fn sign_out(app: &App, uid: Uuid) -> Result<()> {
    let known = app.people();
    let person = known.person(uid);
    let person = person.ok_or_else(|| Error::not_found(WhoSays::NoPerson))?;
    let now = app.now().naive_utc();
    app.write_people(|tx| {
        store::people::end_sessions(tx, Some(person.row.id), None, now)?;
        Ok(())
    })
}

/// The first manager of a record that has none who could sign in: the word that they begin with.
///
/// # Errors
/// The database is away.
pub fn first(app: &App) -> Result<Option<(String, String)>> {
    let known = app.people();
    if known.has_manager_besides(None) {
        return Ok(None);
    }
    let waiting = known
        .people
        .iter()
        .find(|one| one.may(domain::right::Right::People));
    let written = match waiting {
        Some(person) => {
            let told = Told {
                active: true,
                word: true,
                ..Told::of(person)
            };
            write(app, person.row.clone(), &told, true)?
        }
        None => {
            let taken = known.named(FIRST).is_some();
            let name = if taken { "Manager 2" } else { FIRST };
            add(
                app,
                &Told {
                    name: name.into(),
                    roles: vec![Role::Manager],
                    active: true,
                    ..Told::default()
                },
            )?
        }
    };
    Ok(written.word.map(|word| (written.person.row.name, word)))
}

/// A token, as it is asked for.
#[derive(Debug, Clone, Copy)]
pub struct NewToken<'a> {
    /// What it is called.
    pub name: &'a str,
    /// What it may do.
    pub role: Role,
    /// When it ends, if it does.
    pub until: Option<NaiveDateTime>,
    /// May it speak for others? A script does, unless it is said that it does not.
    pub speaks: bool,
}

/// Makes a token, which is told once.
///
/// # Errors
/// 422 for an end that is past.
pub fn give_token(app: &App, asked: &NewToken<'_>, by: &str) -> Result<(i32, String)> {
    let now = app.now().naive_utc();
    let until = asked.until;
    if until.is_some_and(|until| until <= now) {
        return Err(Error::cannot_be("until", WhoSays::TokenEnds));
    }
    let (secret, _) = secrets::secret().map_err(store::Error::Broken)?;
    let text = format!("{}{secret}", secrets::TOKEN);
    let row = TokenRow {
        id: 0,
        name: asked.name.to_owned(),
        kitchen: HERE.to_owned(),
        role: asked.role.as_str().to_owned(),
        hash: secrets::hash(&text).to_vec(),
        made_at: now,
        made_by: by.to_owned(),
        ends_at: until,
        speaks: asked.speaks,
    };
    let id = app.write_people(|tx| {
        let id = store::people::add_token(tx, &row)?;
        Ok(id)
    })?;
    Ok((id, text))
}

/// Ends a token.
///
/// # Errors
/// 404.
pub fn end_token(app: &App, id: i32) -> Result<()> {
    if !app.people().tokens.iter().any(|token| token.id == id) {
        return Err(Error::not_found(WhoSays::NoToken));
    }
    let now = app.now().naive_utc();
    app.write_people(|tx| {
        store::people::end_token(tx, id, now)?;
        Ok(())
    })
}
