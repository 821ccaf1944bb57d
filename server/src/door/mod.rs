//! The door: what every request passes before anything of ours reads it, and every answer on its way out.
//!
//! Reading order: [`hosts`] (which names are ours), [`size`] (how long an address and headers may be), [`unseen`] (letters that nobody sees),
//! [`unread`] (bodies that nobody reads), [`headers`] (what a browser is told of every answer), and here: what goes wrong outside our own
//! handlers is answered with a problem document too.

pub mod headers;
pub mod hosts;
pub mod size;
pub mod unread;
pub mod unseen;

use crate::app::App;
use crate::error::{Error, Problem};
use crate::problems::{RequestSays, TitleSays};
use actix_web::body::{BoxBody, MessageBody};
use actix_web::dev::{ServiceRequest, ServiceResponse};
use actix_web::http::{Method, StatusCode, header};
use actix_web::middleware::Next;
use actix_web::web;
use words::Speech;

/// Lets a request in, and sees its answer out.
///
/// # Errors
/// As what is inside.
pub async fn guard(
    mut request: ServiceRequest,
    next: Next<impl MessageBody + 'static>,
) -> Result<ServiceResponse<BoxBody>, actix_web::Error> {
    let incoming = unread::look_after(&mut request);
    let answer = answered(request, next).await?;
    Ok(match incoming {
        Some(incoming) => unread::see_out(answer, incoming).await,
        None => answer,
    })
}

async fn answered(
    mut request: ServiceRequest,
    next: Next<impl MessageBody + 'static>,
) -> Result<ServiceResponse<BoxBody>, actix_web::Error> {
    let app = request.app_data::<web::Data<App>>().cloned();
    let asked = crate::caller::language(request.request());
    let speech = app
        .as_ref()
        .map_or_else(Speech::default, |app| app.speech_lately(asked));
    let api = is_for_programs(request.path());
    if let Err(error) = admit(&request, app.as_ref().map(|app| app.get_ref())) {
        let answer = match api {
            true => crate::error::respond(&error.problem(), &speech),
            false => crate::pages::trouble(speech, &error),
        };
        return Ok(headers::put(
            request.into_response(answer.map_into_boxed_body()),
        ));
    }
    // Whatever can be got can be asked for without its body; the connection leaves that out by itself.
    if request.method() == Method::HEAD {
        request.head_mut().method = Method::GET;
    }
    let response = next.call(request).await?;
    Ok(headers::put(told(response, api, &speech)))
}

/// Is a path for programs, which read problem documents and no pages?
pub fn is_for_programs(path: &str) -> bool {
    path == "/api" || path.starts_with("/api/") || path == "/metrics"
}

/// What may come in at all.
fn admit(request: &ServiceRequest, app: Option<&App>) -> Result<(), Error> {
    if let Some(app) = app {
        hosts::refuse(app, request.request())?;
    }
    size::refuse(request)?;
    if let Some(letter) = control_in(request.uri().path()) {
        let path = format!("%{letter}");
        return Err(Error::not_found(
            crate::pages::says::PageSays::NothingHere { path },
        ));
    }
    Ok(())
}

/// A control character that is written in an address, by its two digits. A scanner's separator is none.
pub fn control_in(path: &str) -> Option<&str> {
    path.split('%').skip(1).find_map(|rest| {
        let digits = rest.get(..2)?;
        let byte = u8::from_str_radix(digits, 16).ok()?;
        (char::from(byte).is_ascii_control() && byte != 0x1d).then_some(digits)
    })
}

/// Whatever goes wrong outside our own handlers is answered with a problem document too.
fn told(
    response: ServiceResponse<impl MessageBody + 'static>,
    api: bool,
    speech: &Speech,
) -> ServiceResponse<BoxBody> {
    let error = response.response().error();
    if let Some(problem) = error
        .and_then(|error| error.as_error::<Error>())
        .map(Error::problem)
        && api
    {
        let mut anew = crate::error::respond(&problem, speech);
        if let Some(allow) = response.headers().get("allow") {
            anew.headers_mut().insert(header::ALLOW, allow.clone());
        }
        let (request, _) = response.into_parts();
        return ServiceResponse::new(request, anew.map_into_boxed_body());
    }
    let status = response.status();
    let told = response
        .headers()
        .get("content-type")
        .is_some_and(|kind| kind.as_bytes().starts_with(b"application/problem"));
    if api && status.is_client_error() && !told {
        let problem = Problem::new(status, slug(status), title(status), RequestSays::Unreadable);
        let (request, _) = response.into_parts();
        let anew = crate::error::respond(&problem, speech);
        return ServiceResponse::new(request, anew.map_into_boxed_body());
    }
    response.map_into_boxed_body()
}

fn title(status: StatusCode) -> TitleSays {
    match status {
        StatusCode::NOT_FOUND => TitleSays::NotFound,
        StatusCode::METHOD_NOT_ALLOWED => TitleSays::Method,
        StatusCode::PAYLOAD_TOO_LARGE => TitleSays::TooLarge,
        _ => TitleSays::Unreadable,
    }
}

fn slug(status: StatusCode) -> &'static str {
    match status {
        StatusCode::NOT_FOUND => "not-found",
        StatusCode::METHOD_NOT_ALLOWED => "method",
        StatusCode::PAYLOAD_TOO_LARGE => "too-large",
        _ => "unreadable",
    }
}

#[cfg(test)]
mod tests {
    use super::control_in;

    #[test]
    fn controls_are_seen_however_they_are_written() {
        assert_eq!(control_in("/api/printers/a%00b/state"), Some("00"));
        assert_eq!(control_in("/lots/%0a"), Some("0a"));
        assert_eq!(control_in("/lots/%7F"), Some("7F"));
        assert_eq!(control_in("/lots/01095%1d10A"), None);
        assert_eq!(control_in("/lots/%C3%A9%"), None);
    }
}
