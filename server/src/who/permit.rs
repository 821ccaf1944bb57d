//! What every route asks before anything of it runs: who is it, and may they?

use super::known::Known;
use super::{Who, secrets, signing};
use crate::app::App;
use crate::door::is_for_programs;
use crate::pages;
use crate::rooms::{Room, within};
use crate::world::Stopwatch;
use actix_web::body::{BoxBody, MessageBody};
use actix_web::dev::{ServiceRequest, ServiceResponse};
use actix_web::http::{Method, header};
use actix_web::middleware::{Next, from_fn};
use actix_web::rt::time::sleep;
use actix_web::{HttpMessage, HttpRequest, HttpResponse, Route, web};
use domain::right::Right;
use std::time::Duration;

/// The cookie of a session.
pub const SESSION: &str = "gambrel";
/// The cookie of a device.
pub const DEVICE: &str = "gambrel_device";

/// A route that only those see who have the right.
pub fn only(right: Right, route: Route) -> Route {
    route.wrap(from_fn(move |request, next| permit(right, request, next)))
}

async fn permit(
    right: Right,
    request: ServiceRequest,
    next: Next<impl MessageBody + 'static>,
) -> Result<ServiceResponse<BoxBody>, actix_web::Error> {
    let Some(app) = request.app_data::<web::Data<App>>().cloned() else {
        return Ok(request.into_response(HttpResponse::InternalServerError().finish()));
    };
    let mut who = who(&app, request.request(), &app.people());
    if who.is_nobody() && is_told(request.request()) {
        who = look_again(&app, request.request()).await;
    }
    let open = right == Right::Scan && app.scans_are_open();
    let need = match open {
        true => Ok(()),
        false => who.need(right),
    };
    let nobody = who.is_nobody();
    prolong(&app, request.request());
    let own = who.language;
    request.extensions_mut().insert(who);
    let error = match need {
        Ok(()) => return Ok(next.call(request).await?.map_into_boxed_body()),
        Err(error) => error,
    };
    let page = !is_for_programs(request.path()) && request.method() == Method::GET;
    let asked = crate::caller::language(request.request());
    // A page is in its reader's own language, whatever the tablet asks for.
    let language = match page {
        true => own.or(asked),
        false => asked.or(own),
    };
    let speech = app.speech_lately(language);
    let mut answer = match page {
        true if nobody => pages::to_sign_in(request.request()),
        true => pages::trouble(speech, &error),
        false => crate::error::respond(&error.problem(), &speech),
    };
    if nobody && !page {
        let bearer = header::HeaderValue::from_static("Bearer");
        answer
            .headers_mut()
            .insert(header::WWW_AUTHENTICATE, bearer);
    }
    Ok(request.into_response(answer))
}

/// Does a request say who it is from, in whatever way?
fn is_told(request: &HttpRequest) -> bool {
    request.headers().contains_key(header::AUTHORIZATION) || cookie(request, SESSION).is_some()
}

/// How often the record is asked for tokens and sessions that nobody knows.
const AGAIN: Duration = Duration::from_millis(250);

/// Whoever is not known may have come just now, on the terminal or through another process. One look at the record
/// answers all who came before it, and the next one waits its time: a newcomer is never sent away unseen.
async fn look_again(app: &web::Data<App>, request: &HttpRequest) -> Who {
    let came = Stopwatch::start();
    let mut last = app.looked_again.lock().await;
    let since = last.map(|last| last.elapsed());
    let known = who(app, request, &app.people());
    if !known.is_nobody() || since.is_some_and(|since| since < came.elapsed()) {
        return known;
    }
    if let Some(rest) = since.and_then(|since| AGAIN.checked_sub(since)) {
        sleep(rest).await;
    }
    *last = Some(Stopwatch::start());
    let shared = app.clone();
    let read = within(Room::Read, move || {
        Ok(shared.store.look(|conn| shared.learn_people(conn))?)
    });
    match read.await {
        Ok(()) => who(app, request, &app.people()),
        Err(_) => known,
    }
}

/// Lets a session last on while it is used, from time to time, without making anybody wait.
fn prolong(app: &web::Data<App>, request: &HttpRequest) {
    let Some(secret) = cookie(request, SESSION) else {
        return;
    };
    let now = app.now().naive_utc();
    let until = signing::prolonged(&app.people(), &secrets::hash(secret), now);
    if let Some((session, until)) = until {
        let app = app.clone();
        actix_web::rt::spawn(within(Room::Write, move || {
            app.write_people(|tx| {
                store::people::prolong(tx, session, until)?;
                Ok(())
            })
        }));
    }
}

/// Who a request is from.
pub fn who(app: &App, request: &HttpRequest, known: &Known) -> Who {
    let now = app.now().naive_utc();
    if let Some(told) = request.headers().get(header::AUTHORIZATION) {
        // A token that is wrong is nobody, whatever cookie comes with it.
        let token = told.to_str().ok().and_then(|told| told.split_once(' '));
        let token = token.filter(|(scheme, _)| scheme.eq_ignore_ascii_case("bearer"));
        let found = token.and_then(|(_, token)| known.token(&secrets::hash(token.trim()), now));
        return found.unwrap_or_else(Who::nobody);
    }
    let session = cookie(request, SESSION);
    let found = session.and_then(|secret| known.session(&secrets::hash(secret), now));
    match found {
        Some((_, who)) => who,
        None => Who::nobody(),
    }
}

/// A cookie's value.
pub fn cookie<'a>(request: &'a HttpRequest, name: &str) -> Option<&'a str> {
    let all = request.headers().get_all(header::COOKIE);
    all.filter_map(|line| line.to_str().ok())
        .flat_map(|line| line.split(';'))
        .find_map(|pair| {
            let (key, value) = pair.trim().split_once('=')?;
            (key == name).then_some(value)
        })
}
