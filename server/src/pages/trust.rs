//! How a tablet is told to trust the kitchen's own certificate; nobody need be signed in for it.

use super::spoken::Words;
use crate::app::App;
use crate::caller::Asking;
use crate::error::Error;
use actix_web::{HttpResponse, web};
use askama::Template;

#[derive(Template)]
#[template(path = "trust.html")]
struct Trust {
    words: Words,
    has_authority: bool,
}

/// What to do on each device.
pub async fn page(app: web::Data<App>, asking: Asking) -> HttpResponse {
    let speech = asking.speech();
    let page = Trust {
        words: Words(speech),
        has_authority: app.authority.is_some(),
    };
    super::page(speech, Ok::<_, Error>(page))
}

/// The file to be trusted.
pub async fn authority(app: web::Data<App>) -> HttpResponse {
    match &app.authority {
        Some(pem) => HttpResponse::Ok()
            .content_type("application/x-x509-ca-cert")
            .insert_header((
                "Content-Disposition",
                "attachment; filename=\"kitchen.crt\"",
            ))
            .body(pem.clone()),
        None => HttpResponse::NotFound().finish(),
    }
}
