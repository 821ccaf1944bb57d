//! The calls about people: signing in, who they are, tokens, and what each route asks.

use super::Api;
use super::lists::seen;
use crate::app::App;
use crate::body::Body;
use crate::caller::Asking;
use crate::error::{Error, Result};
use crate::lists::entry::which_version;
use crate::rooms::{Room, within};
use crate::who::known::Person;
use crate::who::people::{self as deeds, Told, Written};
use crate::who::says::WhoSays;
use crate::who::{Kind, Who, cookies, signing};
use crate::wire::answers::instant;
use crate::wire::people::*;
use actix_web::http::{StatusCode, header};
use actix_web::{HttpRequest, HttpResponse, web};
use domain::right::{Right, Role};
use uuid::Uuid;

/// Adds them.
pub fn add(api: &mut Api) {
    use Right::{Anyone, People, See};
    api.post(
        "/api/sessions",
        Anyone,
        "Somebody signs in",
        web::post().to(sign_in),
    )
    .takes::<SignInAsked>()
    .answers::<SignedIn>(&[201], "Who it is; the cookie is the session");
    api.get(
        "/api/sessions/mine",
        Anyone,
        "Who is signed in",
        web::get().to(mine),
    )
    .answers::<SignedIn>(&[200], "Who");
    api.delete(
        "/api/sessions/mine",
        Anyone,
        "Whoever is signed in leaves",
        web::delete().to(sign_out),
    )
    .answers_nothing();
    api.put(
        "/api/sessions/mine/pin",
        See,
        "Somebody chooses their PIN",
        web::put().to(choose_pin),
    )
    .takes::<PinAsked>()
    .answers::<PersonRead>(&[200], "The person");
    api.put(
        "/api/sessions/mine/reading",
        Right::Scan,
        "Somebody says in which language and units they read",
        web::put().to(choose_reading),
    )
    .takes::<ReadingAsked>()
    .answers::<PersonRead>(&[200], "The person");
    api.get("/api/people", People, "All people", web::get().to(all))
        .answers::<PeopleRead>(&[200], "The people");
    api.post(
        "/api/people",
        People,
        "Somebody is added",
        web::post().to(add_person),
    )
    .takes::<PersonAsked>()
    .answers::<PersonRead>(&[201], "The person, with a word that signs them in once");
    api.put(
        "/api/people/{id}",
        People,
        "Somebody is changed",
        web::put().to(change_person),
    )
    .takes::<PersonAsked>()
    .header("If-Match", "The version that you have seen")
    .answers::<PersonRead>(&[200], "The person");
    api.post(
        "/api/people/{id}/sign-out",
        People,
        "Somebody is signed out everywhere: a device was lost",
        web::post().to(sign_out_everywhere),
    )
    .answers_nothing();
    api.get(
        "/api/tokens",
        People,
        "All tokens, without their secrets",
        web::get().to(tokens),
    )
    .answers::<TokensRead>(&[200], "The tokens");
    api.post(
        "/api/tokens",
        People,
        "A program gets a token",
        web::post().to(give_token),
    )
    .takes::<TokenAsked>()
    .answers::<TokenRead>(&[201], "The token, told once");
    api.delete(
        "/api/tokens/{id}",
        People,
        "A token is taken away",
        web::delete().to(end_token),
    )
    .answers_nothing();
    api.post(
        "/api/clock-words",
        Right::SetUp,
        "A manager says that the clock is right, whatever was recorded with a wrong one",
        web::post().to(clock_is_right),
    )
    .takes::<ClockAsked>()
    .answers_nothing();
    api.get(
        "/api/rights",
        Anyone,
        "What each route asks",
        web::get().to(rights),
    )
    .answers::<RightsRead>(&[200], "Every route with its right");
}

async fn sign_in(
    request: HttpRequest,
    app: web::Data<App>,
    Body(asked): Body<SignInAsked>,
) -> Result<HttpResponse> {
    let device = cookies::device(&request)?;
    let from = cookies::address(&request);
    let shared = app.clone();
    let (of, own) = (device.clone(), asked.own);
    let begun = within(Room::Sign, move || {
        signing::begin(
            &app,
            &signing::Told {
                person: &asked.person.0,
                pin: asked.pin.as_ref().map(|pin| pin.0.as_str()),
                device: &of,
                from: &from,
                own: asked.own,
            },
        )
    })
    .await?;
    let mut response = HttpResponse::Created();
    cookies::put(&mut response, &request, &shared, &begun, &device, own);
    Ok(response.json(SignedIn {
        choose_pin: begun.choose_pin,
        ..signed_in(&begun.who)
    }))
}

fn signed_in(who: &Who) -> SignedIn {
    let rights = Right::ALL.iter().filter(|right| who.may(**right));
    SignedIn {
        name: who.name.clone(),
        roles: who.roles.iter().map(ToString::to_string).collect(),
        rights: rights.map(ToString::to_string).collect(),
        choose_pin: false,
    }
}

async fn mine(asking: Asking) -> Result<HttpResponse> {
    let who = asking.who();
    who.need(Right::Scan)?;
    Ok(HttpResponse::Ok().json(signed_in(who)))
}

async fn sign_out(request: HttpRequest, asking: Asking) -> Result<HttpResponse> {
    within(Room::Write, move || {
        signing::end(&asking.caller(), asking.who())
    })
    .await?;
    let mut response = HttpResponse::NoContent();
    cookies::take(&mut response, &request);
    Ok(response.finish())
}

async fn choose_pin(asking: Asking, Body(asked): Body<PinAsked>) -> Result<HttpResponse> {
    let Kind::Person { id, .. } = asking.who().kind else {
        return Err(Error::not_found(WhoSays::NoPerson));
    };
    let written = within(Room::Sign, move || {
        deeds::choose_pin(&asking.caller(), id, &asked.pin.0)
    })
    .await?;
    Ok(person(StatusCode::OK, &written))
}

async fn choose_reading(asking: Asking, Body(asked): Body<ReadingAsked>) -> Result<HttpResponse> {
    let Kind::Person { id, .. } = asking.who().kind else {
        return Err(Error::not_found(WhoSays::NoPerson));
    };
    let reading = deeds::Reading {
        language: asked.language.map(|language| language.0),
        weights: asked.weights.map(|word| word.0),
        temperatures: asked.temperatures.map(|word| word.0),
    };
    let written = within(Room::Write, move || {
        deeds::choose_reading(&asking.caller(), id, reading)
    })
    .await?;
    Ok(person(StatusCode::OK, &written))
}

async fn all(app: web::Data<App>) -> HttpResponse {
    let known = app.people();
    HttpResponse::Ok().json(PeopleRead {
        people: known
            .people
            .iter()
            .map(|person| read(person, None))
            .collect(),
    })
}

async fn add_person(asking: Asking, Body(asked): Body<PersonAsked>) -> Result<HttpResponse> {
    let written = within(Room::Sign, move || {
        deeds::add(&asking.caller(), &told(&asked))
    });
    Ok(person(StatusCode::CREATED, &written.await?))
}

async fn change_person(
    request: HttpRequest,
    asking: Asking,
    id: web::Path<String>,
    Body(asked): Body<PersonAsked>,
) -> Result<HttpResponse> {
    let id = of_person(&id)?;
    let version = seen(&request)?.ok_or_else(which_version)?;
    let written = within(Room::Sign, move || {
        deeds::change(&asking.caller(), id, &told(&asked), version)
    });
    Ok(person(StatusCode::OK, &written.await?))
}

async fn sign_out_everywhere(asking: Asking, id: web::Path<String>) -> Result<HttpResponse> {
    let id = of_person(&id)?;
    within(Room::Write, move || deeds::sign_out(&asking.caller(), id)).await?;
    Ok(HttpResponse::NoContent().finish())
}

async fn tokens(asking: Asking) -> HttpResponse {
    let app = asking.caller();
    let zone = app
        .kitchen_seen()
        .map_or(chrono_tz::UTC, |kitchen| kitchen.zone);
    let known = app.people();
    let tokens = known.tokens.iter().map(|token| TokenRead {
        id: token.id,
        name: token.name.clone(),
        role: token.role.clone(),
        until: token.ends_at.map(|ends| instant(ends, zone)),
        speaks_for_others: token.speaks,
        token: None,
    });
    HttpResponse::Ok().json(TokensRead {
        tokens: tokens.collect(),
    })
}

async fn give_token(asking: Asking, Body(asked): Body<TokenAsked>) -> Result<HttpResponse> {
    let read = within(Room::Write, move || {
        let app = asking.caller();
        let until = asked.until.map(|until| until.0.naive_utc());
        let by = &asking.who().name;
        let speaks = asked.speaks_for_others.unwrap_or(true);
        let wanted = deeds::NewToken {
            name: &asked.name.0,
            role: asked.role.0,
            until,
            speaks,
        };
        let (id, token) = deeds::give_token(&app, &wanted, by)?;
        let zone = app
            .kitchen_seen()
            .map_or(chrono_tz::UTC, |kitchen| kitchen.zone);
        Ok(TokenRead {
            id,
            name: asked.name.0,
            role: asked.role.0.to_string(),
            until: until.map(|until| instant(until, zone)),
            speaks_for_others: speaks,
            token: Some(token),
        })
    });
    Ok(HttpResponse::Created().json(read.await?))
}

async fn end_token(asking: Asking, id: web::Path<String>) -> Result<HttpResponse> {
    let id = id.parse().map_err(|_| Error::not_found(WhoSays::NoToken))?;
    within(Room::Write, move || deeds::end_token(&asking.caller(), id)).await?;
    Ok(HttpResponse::NoContent().finish())
}

async fn clock_is_right(asking: Asking, Body(asked): Body<ClockAsked>) -> Result<HttpResponse> {
    let known = asking.caller().people();
    let by = asking
        .who()
        .signs(asked.by.name(), asking.caller().now().naive_utc(), &known)?;
    within(Room::Write, move || {
        crate::clock::set_right(&asking.caller(), &by, &asked.why.0)
    })
    .await?;
    crate::pulse::clock_is_right();
    Ok(HttpResponse::NoContent().finish())
}

async fn rights() -> HttpResponse {
    let routes = super::rights()
        .into_iter()
        .map(|(method, path, right)| RouteRight {
            method: method.to_owned(),
            path: path.to_owned(),
            right: right.to_string(),
            roles: Role::ALL
                .iter()
                .filter(|role| role.may(right))
                .map(ToString::to_string)
                .collect(),
        });
    HttpResponse::Ok().json(RightsRead {
        routes: routes.collect(),
    })
}

fn of_person(text: &str) -> Result<Uuid> {
    text.parse()
        .map_err(|_| Error::not_found(WhoSays::NoPerson))
}

fn told(asked: &PersonAsked) -> Told {
    let mut roles: Vec<Role> = asked.roles.iter().map(|role| role.0).collect();
    roles.sort_unstable();
    roles.dedup();
    Told {
        name: asked.name.0.clone(),
        roles,
        pin: asked.pin.as_ref().map(|pin| pin.0.clone()),
        language: asked.language.as_ref().map(|language| language.0.clone()),
        weights: asked.weights.as_ref().map(|word| word.0),
        temperatures: asked.temperatures.as_ref().map(|word| word.0),
        active: asked.active.unwrap_or(true),
        word: asked.new_word,
    }
}

fn person(status: StatusCode, written: &Written) -> HttpResponse {
    HttpResponse::build(status)
        .insert_header((header::ETAG, format!("\"v{}\"", written.person.row.number)))
        .json(read(&written.person, written.word.clone()))
}

fn read(person: &Person, word: Option<String>) -> PersonRead {
    PersonRead {
        id: person.uid().to_string(),
        name: person.row.name.clone(),
        roles: person.roles.iter().map(ToString::to_string).collect(),
        language: person.row.language.clone(),
        weights: person.row.weights.clone(),
        temperatures: person.row.temperatures.clone(),
        active: person.row.active,
        version: person.row.number,
        has_pin: person.row.pin.is_some(),
        word,
    }
}
