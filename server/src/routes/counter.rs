//! The calls of the counter besides the scan: a photo of a code, and a guest's question.

use super::{Api, query};
use crate::body::{PHOTOS, whole};
use crate::caller::Asking;
use crate::error::{Error, Problem, Result};
use crate::photo::{self, LARGEST_MB, PhotoSays};
use crate::problems::TitleSays;
use crate::read::ask::{self, AskQuery};
use crate::rooms::{Room, blocking, within};
use crate::wire::answers::{AskRead, PhotoRead, ask_read};
use actix_web::http::{StatusCode, header};
use actix_web::{HttpRequest, HttpResponse, web};
use domain::right::Right;

/// Adds them.
pub fn add(api: &mut Api) {
    api.get(
        "/api/ask",
        Right::See,
        "A guest asks: what of everything on hand has it in it, what has not, and of what it is not known",
        web::get().to(guest),
    )
    .reads::<AskQuery>()
    .answers::<AskRead>(&[200], "Three groups; what is not known is never among what is without");
    api.post(
        "/api/photo-scans",
        Right::Scan,
        "Read the codes in a photo, of at most 10 MB; nothing of it is kept",
        web::post().to(photo),
    )
    .takes_files(&["image/jpeg", "image/png"])
    .answers::<PhotoRead>(&[200], "The codes, the likeliest first");
}

async fn guest(request: HttpRequest, asking: Asking) -> Result<HttpResponse> {
    let query: AskQuery = query(&request)?;
    let read = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| {
            let asked = ask::ask(app.app(), conn, &query)?;
            let speech = app.speech(asked.reading.kitchen());
            Ok::<_, Error>(ask_read(&asked, &speech))
        })
    });
    Ok(HttpResponse::Ok().json(read.await?))
}

async fn photo(request: HttpRequest, payload: web::Payload) -> Result<HttpResponse> {
    let kind = request.headers().get(header::CONTENT_TYPE);
    let kind = kind.and_then(|kind| kind.to_str().ok()).unwrap_or_default();
    if !matches!(kind, "image/jpeg" | "image/png") {
        let (status, title) = (StatusCode::UNSUPPORTED_MEDIA_TYPE, TitleSays::CannotBe);
        return Err(Problem::new(status, "not-a-photo", title, PhotoSays::Send).into());
    }
    let too_large = || {
        let (status, most) = (StatusCode::PAYLOAD_TOO_LARGE, LARGEST_MB);
        let says = PhotoSays::TooLarge { most };
        Problem::new(status, "too-large", TitleSays::TooLarge, says).into()
    };
    let (bytes, held) = whole(&request, payload.into_inner(), &PHOTOS, too_large).await?;
    let codes = within(Room::Photo, move || {
        let codes = photo::read(&bytes);
        drop(held);
        codes
    });
    Ok(HttpResponse::Ok().json(PhotoRead::of(codes.await?)))
}
