//! Signing in: a name, a PIN. In the demo the name is enough.

use super::spoken::Words;
use super::{see_other, trouble, way_back};
use crate::app::App;
use crate::caller::Asking;
use crate::error::{Error, Result};
use crate::log::Refused;
use crate::rooms::{Room, within};
use crate::routes::query;
use crate::who::{cookies, signing};
use actix_web::http::header::{self, HeaderValue};
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;
use serde::Deserialize;
use words::Speech;

#[derive(Template)]
#[template(path = "sign-in.html")]
struct SignIn {
    words: Words,
    demo: bool,
    people: Vec<Name>,
    chosen: Option<Name>,
    then: String,
    says: Option<String>,
}

struct Name {
    id: String,
    name: String,
    roles: String,
    /// Is a word waiting that signs them in once? It has letters: a keypad of figures cannot write it.
    has_word: bool,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    person: Option<String>,
    then: Option<String>,
}

/// What the form sends.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sent {
    person: String,
    pin: Option<String>,
    then: Option<String>,
}

/// To the page where one signs in, and back from there to where one wanted to go.
pub fn to_sign_in(request: &HttpRequest) -> HttpResponse {
    let wanted = request
        .uri()
        .path_and_query()
        .map_or("/", |path| path.as_str());
    let encoded: String = wanted
        .bytes()
        .map(|byte| match byte {
            b'a'..=b'z' | b'A'..=b'Z' | b'0'..=b'9' | b'/' | b'-' | b'.' | b'_' => {
                char::from(byte).to_string()
            }
            byte => format!("%{byte:02X}"),
        })
        .collect();
    match wanted {
        "/" => see_other("/sign-in"),
        _ if encoded.len() > 400 => see_other("/sign-in"),
        _ => see_other(&format!("/sign-in?then={encoded}")),
    }
}

/// Who is it?
pub async fn page(request: HttpRequest, app: web::Data<App>, asking: Asking) -> HttpResponse {
    let speech = asking.speech();
    let made = query::<Asked>(&request).map(|asked| {
        let then = ours(asked.then.as_deref());
        form(&app, speech, asked.person.as_deref(), then, None)
    });
    super::page(speech, made)
}

/// It is them: a session begins.
pub async fn begin(
    request: HttpRequest,
    app: web::Data<App>,
    asking: Asking,
    web::Form(sent): web::Form<Sent>,
) -> HttpResponse {
    let speech = asking.speech();
    match signed_in(&request, &app, &sent).await {
        Ok(response) => response,
        Err(error) => {
            let problem = error.problem();
            if problem.status.is_server_error() {
                return trouble(speech, &error);
            }
            let then = ours(sent.then.as_deref());
            let says = Some(speech.say(&problem.detail));
            let mut page = super::page(
                speech,
                Ok::<_, Error>(form(&app, speech, Some(&sent.person), then, says)),
            );
            *page.status_mut() = problem.status;
            if let Some(seconds) = problem.again_in {
                let seconds = HeaderValue::from(seconds);
                page.headers_mut().insert(header::RETRY_AFTER, seconds);
            }
            page.extensions_mut().insert(Refused::from(&problem));
            page
        }
    }
}

async fn signed_in(
    request: &HttpRequest,
    app: &web::Data<App>,
    sent: &Sent,
) -> Result<HttpResponse> {
    let device = cookies::device(request)?;
    let from = cookies::address(request);
    let (shared, of) = (app.clone(), device.clone());
    let (person, pin) = (sent.person.clone(), sent.pin.clone());
    let begun = within(Room::Sign, move || {
        signing::begin(
            &shared,
            &signing::Told {
                person: &person,
                pin: pin.as_deref(),
                device: &of,
                from: &from,
                own: false,
            },
        )
    })
    .await?;
    let to = match begun.choose_pin && !app.demo {
        true => "/me",
        false => ours(sent.then.as_deref()),
    };
    let mut response = HttpResponse::SeeOther();
    cookies::put(&mut response, request, app, &begun, &device, false);
    Ok(response.insert_header(("Location", to)).finish())
}

/// Nobody any more.
pub async fn end(request: HttpRequest, asking: Asking) -> HttpResponse {
    let speech = asking.speech();
    let ended = within(Room::Write, move || {
        signing::end(&asking.caller(), asking.who())
    })
    .await;
    if let Err(error) = ended {
        return trouble(speech, &error);
    }
    let mut response = HttpResponse::SeeOther();
    cookies::take(&mut response, &request);
    response.insert_header(("Location", "/sign-in")).finish()
}

/// Where to go then.
fn ours(then: Option<&str>) -> &str {
    way_back::ours(then).unwrap_or("/")
}

/// What stands beside a name: nothing where somebody is called what they are.
fn beside(name: &str, roles: String) -> String {
    match name.to_lowercase() == roles {
        true => String::new(),
        false => roles,
    }
}

fn form(
    app: &App,
    speech: Speech,
    chosen: Option<&str>,
    then: &str,
    says: Option<String>,
) -> SignIn {
    let words = Words(speech);
    let known = app.people();
    let active = known.people.iter().filter(|person| person.row.active);
    let people: Vec<Name> = active
        .map(|person| Name {
            id: person.uid().to_string(),
            name: person.row.name.clone(),
            roles: beside(&words.person(&person.row.name), words.roles(&person.roles)),
            has_word: person.row.word.is_some(),
        })
        .collect();
    // One who is alone need not be chosen.
    let chosen = chosen.map(str::to_owned).or_else(|| match &people[..] {
        [one] => Some(one.id.clone()),
        _ => None,
    });
    let is_chosen = |one: &&Name| {
        chosen
            .as_ref()
            .is_some_and(|id| *id == one.id || *id == one.name)
    };
    let chosen = people.iter().find(is_chosen).map(|one| Name {
        id: one.id.clone(),
        name: one.name.clone(),
        roles: one.roles.clone(),
        has_word: one.has_word,
    });
    SignIn {
        words,
        demo: app.demo,
        people,
        chosen,
        then: then.to_owned(),
        says,
    }
}
