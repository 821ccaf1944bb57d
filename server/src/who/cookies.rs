//! The cookies: one is the session, one the device. No script reads them, and no other site sends them.

use super::permit::{DEVICE, SESSION, cookie};
use super::secrets;
use super::signing::Begun;
use crate::app::App;
use crate::error::Result;
use actix_web::http::header;
use actix_web::{HttpRequest, HttpResponseBuilder};

/// How long a device is known again, in seconds.
const YEAR: u32 = 365 * 24 * 3_600;

/// The device that a request comes from, as it was named at its first sign-in; else a new name.
///
/// # Errors
/// The machine has no source of chance.
pub fn device(request: &HttpRequest) -> Result<String> {
    let known = cookie(request, DEVICE).filter(|name| {
        (20..=64).contains(&name.len()) && name.bytes().all(|byte| byte.is_ascii_alphanumeric())
    });
    match known {
        Some(name) => Ok(name.to_owned()),
        None => Ok(secrets::secret().map_err(store::Error::Broken)?.0),
    }
}

/// The address that a request comes from, as the machine says it.
pub fn address(request: &HttpRequest) -> String {
    request
        .peer_addr()
        .map_or_else(String::new, |peer| peer.ip().to_string())
}

/// Puts both on an answer.
pub fn put(
    response: &mut HttpResponseBuilder,
    request: &HttpRequest,
    app: &App,
    begun: &Begun,
    device: &str,
    own: bool,
) {
    let secure = secure(request);
    // A shared device forgets the session with its window; somebody's own keeps it for the day.
    let left = (begun.ends_at - app.now().naive_utc()).num_seconds();
    let age = if own {
        format!("; Max-Age={left}")
    } else {
        String::new()
    };
    for line in [
        format!(
            "{SESSION}={}; Path=/; HttpOnly; SameSite=Strict{age}{secure}",
            begun.secret
        ),
        format!("{DEVICE}={device}; Path=/; HttpOnly; SameSite=Strict; Max-Age={YEAR}{secure}"),
    ] {
        response.append_header((header::SET_COOKIE, line));
    }
}

/// Takes the session away.
pub fn take(response: &mut HttpResponseBuilder, request: &HttpRequest) {
    let secure = secure(request);
    let line = format!("{SESSION}=; Path=/; HttpOnly; SameSite=Strict; Max-Age=0{secure}");
    response.append_header((header::SET_COOKIE, line));
}

fn secure(request: &HttpRequest) -> &'static str {
    match request.app_config().secure() || crate::door::hosts::came_by_tls(request) {
        true => "; Secure",
        false => "",
    }
}
