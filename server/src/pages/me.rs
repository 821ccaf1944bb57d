//! Who am I, what may I do, and my PIN.

use super::spoken::Words;
use super::{see_other, trouble};
use crate::app::App;
use crate::caller::Asking;
use crate::error::Error;
use crate::rooms::{Room, within};
use crate::who::{Kind, people};
use actix_web::{HttpResponse, web};
use askama::Template;
use domain::right::Right;
use domain::words::{HeatUnits, MassUnits};
use serde::Deserialize;

#[derive(Template)]
#[template(path = "me.html")]
struct Me {
    words: Words,
    name: String,
    roles: String,
    /// What they may do, in words.
    rights: Vec<String>,
    is_person: bool,
    has_pin: bool,
    manages: bool,
    says: Option<String>,
    reading: Reading,
    sets_up: bool,
}

/// In which language and units they read, as it was chosen; empty where the tablet or the kitchen says.
#[derive(Default)]
struct Reading {
    language: String,
    weights: String,
    temperatures: String,
}

/// What the form for that sends.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ReadingSent {
    language: String,
    weights: String,
    temperatures: String,
}

/// What the form sends.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PinSent {
    pin: String,
}

/// Who is signed in.
pub async fn page(app: web::Data<App>, asking: Asking) -> HttpResponse {
    super::page(asking.speech(), Ok::<_, Error>(me(&app, &asking, None)))
}

/// A PIN is chosen.
pub async fn choose_pin(
    app: web::Data<App>,
    asking: Asking,
    web::Form(sent): web::Form<PinSent>,
) -> HttpResponse {
    let Kind::Person { id, .. } = asking.who().kind else {
        return see_other("/me");
    };
    let shared = app.clone();
    let chosen = within(Room::Sign, move || {
        people::choose_pin(&shared, id, sent.pin.trim())
    });
    match chosen.await {
        Ok(_) => see_other("/?pin=kept"),
        Err(error) if error.problem().status.is_client_error() => {
            let says = Some(asking.speech().say(&error.problem().detail));
            super::page(asking.speech(), Ok::<_, Error>(me(&app, &asking, says)))
        }
        Err(error) => trouble(asking.speech(), &error),
    }
}

/// Somebody says in which language and units they read.
pub async fn choose_reading(
    app: web::Data<App>,
    asking: Asking,
    web::Form(sent): web::Form<ReadingSent>,
) -> HttpResponse {
    let Kind::Person { id, .. } = asking.who().kind else {
        return see_other("/me");
    };
    let reading = people::Reading {
        language: Some(sent.language).filter(|text| !text.is_empty()),
        weights: MassUnits::parse(&sent.weights),
        temperatures: HeatUnits::parse(&sent.temperatures),
    };
    let chosen = within(Room::Write, move || {
        people::choose_reading(&app, id, reading)
    });
    match chosen.await {
        Ok(_) => see_other("/me"),
        Err(error) => trouble(asking.speech(), &error),
    }
}

fn me(app: &App, asking: &Asking, says: Option<String>) -> Me {
    let (words, who) = (Words(asking.speech()), asking.who());
    let known = app.people();
    let person = known.named(&who.name);
    let rights = Right::ALL.iter().filter(|right| who.may(**right));
    Me {
        words,
        name: who.name.clone(),
        roles: words.roles(&who.roles),
        rights: rights
            .filter(|right| **right != Right::Anyone)
            .map(|right| words.say(right.says()))
            .collect(),
        is_person: matches!(who.kind, Kind::Person { .. }),
        has_pin: person.is_some_and(|person| person.row.pin.is_some()),
        manages: who.may(Right::People),
        sets_up: who.may(Right::SetUp),
        reading: person.map_or_else(Reading::default, |person| Reading {
            language: person.row.language.clone().unwrap_or_default(),
            weights: person.row.weights.clone().unwrap_or_default(),
            temperatures: person.row.temperatures.clone().unwrap_or_default(),
        }),
        says,
    }
}
