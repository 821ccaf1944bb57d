//! The people of the kitchen: who they are, what they are here, and a new word for whoever has none.

use super::spoken::Words;
use super::trouble;
use crate::app::App;
use crate::caller::Asking;
use crate::error::{Error, Result};
use crate::rooms::{Room, within};
use crate::who::people::{self, Told, Written};
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
    roles: Vec<(String, String)>,
    /// A name and the word that signs them in once: told now and never again.
    word: Option<(String, String)>,
    says: Option<String>,
}

struct Line {
    id: String,
    name: String,
    roles: String,
    active: bool,
    has_pin: bool,
}

/// What the form for a new person sends.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Added {
    name: String,
    role: String,
}

/// What the buttons beside a person send.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Act {
    act: String,
}

/// All of them.
pub async fn page(app: web::Data<App>, asking: Asking) -> HttpResponse {
    super::page(
        asking.speech(),
        Ok::<_, Error>(all(&app, &asking, None, None)),
    )
}

/// Somebody is added.
pub async fn add(
    app: web::Data<App>,
    asking: Asking,
    web::Form(sent): web::Form<Added>,
) -> HttpResponse {
    let shared = app.clone();
    let written = within(Room::Sign, move || {
        let role =
            Role::parse(&sent.role).ok_or_else(|| Error::cannot_be("role", WhoSays::NoRole))?;
        let name = people::name(&sent.name)?;
        people::add(
            &shared,
            &Told {
                name,
                roles: vec![role],
                active: true,
                ..Told::default()
            },
        )
    });
    answer(&app, &asking, written.await.map(Some))
}

/// Somebody gets a new word, is signed out, may come no more or may again.
pub async fn change(
    app: web::Data<App>,
    asking: Asking,
    id: web::Path<String>,
    web::Form(sent): web::Form<Act>,
) -> HttpResponse {
    let shared = app.clone();
    let done = within(Room::Sign, move || changed(&shared, &id, &sent.act));
    answer(&app, &asking, done.await)
}

fn changed(app: &App, id: &str, act: &str) -> Result<Option<Written>> {
    let uid = id
        .parse()
        .map_err(|_| Error::not_found(WhoSays::NoPerson))?;
    if act == "sign-out" {
        return people::sign_out(app, uid).map(|()| None);
    }
    let known = app.people();
    let person = known
        .person(uid)
        .ok_or_else(|| Error::not_found(WhoSays::NoPerson))?;
    let told = Told {
        active: match act {
            "leave" => false,
            "return" => true,
            _ => person.row.active,
        },
        word: matches!(act, "word" | "return"),
        ..Told::of(person)
    };
    people::change(app, uid, &told, person.row.number).map(Some)
}

fn answer(app: &App, asking: &Asking, written: Result<Option<Written>>) -> HttpResponse {
    let speech = asking.speech();
    match written {
        Ok(written) => {
            let word = written.and_then(|one| Some((one.person.row.name, one.word?)));
            super::page(speech, Ok::<_, Error>(all(app, asking, word, None)))
        }
        Err(error) if error.problem().status.is_client_error() => {
            let says = Some(speech.say(&error.problem().detail));
            super::page(speech, Ok::<_, Error>(all(app, asking, None, says)))
        }
        Err(error) => trouble(speech, &error),
    }
}

fn all(app: &App, asking: &Asking, word: Option<(String, String)>, says: Option<String>) -> People {
    let words = Words(asking.speech());
    let known = app.people();
    let line = |person: &crate::who::known::Person| Line {
        id: person.uid().to_string(),
        name: person.row.name.clone(),
        roles: words.roles(&person.roles),
        active: person.row.active,
        has_pin: person.row.pin.is_some(),
    };
    let roles = Role::ALL.iter();
    People {
        words,
        people: known.people.iter().map(line).collect(),
        roles: roles
            .map(|role| (role.to_string(), words.say(role.says())))
            .collect(),
        word,
        says,
    }
}
