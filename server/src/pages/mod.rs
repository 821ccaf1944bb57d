//! The pages: server-rendered, plain words, large type. They only read, but for the
//! page of printing, whose buttons call the API as a device does.
//!
//! A view holds ready strings; a template only lays them out.

mod animals;
mod answer;
mod assets;
mod cure_room;
mod drawing;
mod forward;
mod history;
mod home;
mod label;
mod lot;
mod lots;
mod origins;
mod packs;
mod printing;
pub mod says;
mod scan;
mod spoken;
mod tree;

use crate::caller::Asking;
use crate::error::Error;
use actix_web::ResponseError;
use actix_web::{HttpRequest, HttpResponse, web};
pub use answer::trouble;
use answer::{page, see_other};
use says::PageSays;

/// Registers the pages.
pub fn register(config: &mut web::ServiceConfig) {
    config
        .route("/", web::get().to(home::page))
        .route("/assets/{name}", web::get().to(assets::get))
        .route("/scan", web::get().to(scan::page))
        .route("/lots", web::get().to(lots::page))
        .route("/lots/{code}", web::get().to(lot::page))
        .route("/lots/{code}/label.svg", web::get().to(label::picture))
        .route("/cure-room", web::get().to(cure_room::page))
        .route("/printing", web::get().to(printing::page))
        .route("/animals", web::get().to(animals::list))
        .route("/animals/{id}", web::get().to(animals::one))
        // What the square code of a label holds.
        .route("/{l:[Ll]}/{code}", web::get().to(scan::lot_of_label))
        .route(
            "/{l:[Ll]}/{code}/{pack}",
            web::get().to(scan::pack_of_label),
        );
}

/// 404 for a path that is none: a problem document for programs, a page for people.
pub async fn nothing_here(request: HttpRequest, asking: Asking) -> HttpResponse {
    let path = request.path();
    let error = Error::not_found(PageSays::NothingHere {
        path: path.to_owned(),
    });
    if path == "/api" || path.starts_with("/api/") {
        error.error_response()
    } else {
        trouble(asking.speech(), &error)
    }
}
