//! The people of the kitchen: who they are, what they are here, and a new word for whoever has none.

use super::spoken::Words;
use super::trouble;
use crate::app::App;
use crate::caller::Asking;
use crate::error::{Error, Result};
use crate::rooms::{Room, within};
use crate::who::people::{self, Written};
use crate::who::says::WhoSays;
use actix_web::{HttpResponse, web};
use askama::Template;
use domain::right::Role;
use serde::Deserialize;

#[derive(Template)]
#[template(path = "people.html")]
struct People {
    words: Words,
    people: Vec<Line>,
    roles: Vec<Works>,
    /// Of whom was it kept how they are called and what they work as?
    kept: Option<String>,
    /// A name and the word that signs them in once: told now and never again.
    word: Option<(String, String)>,
    says: Option<String>,
}

struct Line {
    id: String,
    name: String,
    roles: String,
    works: Vec<Works>,
    active: bool,
    has_pin: bool,
}

/// What somebody may work as.
struct Works {
    code: String,
    name: String,
    /// What they do then.
    more: String,
    /// Does somebody?
    chosen: bool,
}

/// What the form for a new person sends, and the buttons and the form beside a person: each role that is ticked is a
/// field of its own.
#[derive(Default, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Sent {
    act: String,
    name: String,
    pin: String,
    cook: Option<String>,
    counter: Option<String>,
    manager: Option<String>,
}

impl Sent {
    fn roles(&self) -> Result<Vec<Role>> {
        let ticked = |role: &&Role| match role {
            Role::Cook => self.cook.is_some(),
            Role::Counter => self.counter.is_some(),
            Role::Manager => self.manager.is_some(),
        };
        let roles: Vec<Role> = Role::ALL.iter().filter(ticked).copied().collect();
        match roles.is_empty() {
            true => Err(Error::cannot_be("role", WhoSays::NoRole)),
            false => Ok(roles),
        }
    }
}

/// All of them.
pub async fn page(app: web::Data<App>, asking: Asking) -> HttpResponse {
    super::page(
        asking.speech(),
        Ok::<_, Error>(all(&app, &asking, Told::default())),
    )
}

/// Somebody is added.
pub async fn add(
    app: web::Data<App>,
    asking: Asking,
    web::Form(sent): web::Form<Sent>,
) -> HttpResponse {
    let shared = app.clone();
    let written = within(Room::Sign, move || {
        let pin = Some(sent.pin.trim().to_owned());
        let person = people::Told {
            name: people::name(&sent.name)?,
            roles: sent.roles()?,
            pin: pin.filter(|pin| !pin.is_empty()),
            active: true,
            ..people::Told::default()
        };
        people::add(&shared, &person)
    });
    answer(&app, &asking, written.await.map(Some))
}

/// Somebody gets a new word, is signed out, may come no more or may again.
pub async fn change(
    app: web::Data<App>,
    asking: Asking,
    id: web::Path<String>,
    web::Form(sent): web::Form<Sent>,
) -> HttpResponse {
    let shared = app.clone();
    let done = within(Room::Sign, move || changed(&shared, &id, &sent));
    answer(&app, &asking, done.await)
}

fn changed(app: &App, id: &str, sent: &Sent) -> Result<Option<Written>> {
    let uid = id
        .parse()
        .map_err(|_| Error::not_found(WhoSays::NoPerson))?;
    let act = sent.act.as_str();
    if act == "sign-out" {
        return people::sign_out(app, uid).map(|()| None);
    }
    let known = app.people();
    let person = known
        .person(uid)
        .ok_or_else(|| Error::not_found(WhoSays::NoPerson))?;
    let as_is = people::Told::of(person);
    let told = match act {
        "keep" => people::Told {
            name: people::name(&sent.name)?,
            roles: sent.roles()?,
            ..as_is
        },
        _ => people::Told {
            active: match act {
                "leave" => false,
                "return" => true,
                _ => person.row.active,
            },
            word: matches!(act, "word" | "return"),
            ..as_is
        },
    };
    people::change(app, uid, &told, person.row.number).map(Some)
}

/// What a page of people tells besides who they are.
#[derive(Default)]
struct Told {
    /// A name and the word that signs them in once.
    word: Option<(String, String)>,
    /// Who was kept.
    kept: Option<String>,
    /// What was refused.
    says: Option<String>,
}

fn answer(app: &App, asking: &Asking, written: Result<Option<Written>>) -> HttpResponse {
    let speech = asking.speech();
    let told = match written {
        Ok(None) => Told::default(),
        Ok(Some(Written { person, word })) => match word {
            Some(word) => Told {
                word: Some((person.row.name, word)),
                ..Told::default()
            },
            None => Told {
                kept: Some(person.row.name),
                ..Told::default()
            },
        },
        Err(error) if error.problem().status.is_client_error() => Told {
            says: Some(speech.say(&error.problem().detail)),
            ..Told::default()
        },
        Err(error) => return trouble(speech, &error),
    };
    super::page(speech, Ok::<_, Error>(all(app, asking, told)))
}

fn all(app: &App, asking: &Asking, Told { word, kept, says }: Told) -> People {
    let words = Words(asking.speech());
    let known = app.people();
    let works = |chosen: &[Role]| {
        let roles = Role::ALL.iter();
        let works = roles.map(|role| Works {
            code: role.to_string(),
            name: words.headed(role.says()),
            more: words.t(does(*role)),
            chosen: chosen.contains(role),
        });
        works.collect()
    };
    let line = |person: &crate::who::known::Person| Line {
        id: person.uid().to_string(),
        name: person.row.name.clone(),
        roles: words.roles(&person.roles),
        works: works(&person.roles),
        active: person.row.active,
        has_pin: person.row.pin.is_some(),
    };
    People {
        people: known.people.iter().map(line).collect(),
        roles: works(&[Role::Cook]),
        kept,
        word,
        says,
        words,
    }
}

/// What somebody does who works as that, in a few words.
pub(super) fn does(role: Role) -> &'static str {
    match role {
        Role::Cook => "page-set-up-cook",
        Role::Counter => "page-set-up-counter",
        Role::Manager => "page-set-up-manager",
    }
}
