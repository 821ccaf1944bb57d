//! The calls that answer a picture, or what others read of the same lots.

use super::Api;
use crate::caller::Asking;
use crate::error::{Error, Result};
use crate::read::says::QuerySays;
use crate::read::{events, lot_named, picture};
use crate::rooms::{Room, within};
use actix_web::{HttpResponse, web};
use domain::right::Right;
use store::{Conn, animals};
use uuid::Uuid;

/// Adds them.
pub fn add(api: &mut Api) {
    api.get(
        "/api/lots/{code}/family.svg",
        Right::See,
        "A lot and all that came of it, as a picture",
        web::get().to(of_lot),
    )
    .answers_file("image/svg+xml", "The picture");
    api.get(
        "/api/animals/{id}/family.svg",
        Right::See,
        "All that came of an animal, as a picture",
        web::get().to(of_animal),
    )
    .answers_file("image/svg+xml", "The picture");
    api.get(
        "/api/lots/{code}/events.jsonld",
        Right::See,
        "The events of a lot and of all that came of it, as EPCIS 2.0",
        web::get().to(events_of_lot),
    )
    .answers_file("application/ld+json", "An EPCIS document in JSON-LD");
}

fn svg(picture: String) -> HttpResponse {
    HttpResponse::Ok()
        .content_type("image/svg+xml")
        .body(picture)
}

async fn of_lot(asking: Asking, code: web::Path<String>) -> Result<HttpResponse> {
    let drawn = within(Room::Draw, move || {
        let app = asking.caller();
        app.store.read(|conn| {
            let row = lot_named(&app, conn, &code)?;
            picture::of_family(&app, conn, &[row.id])
        })
    });
    Ok(svg(drawn.await?))
}

async fn events_of_lot(asking: Asking, code: web::Path<String>) -> Result<HttpResponse> {
    let document = within(Room::Draw, move || {
        let app = asking.caller();
        app.store.read(|conn| {
            let row = lot_named(&app, conn, &code)?;
            events::of_family(app.app(), conn, row.id)
        })
    });
    let document = document.await?.to_string();
    let answer = HttpResponse::Ok()
        .content_type("application/ld+json")
        .body(document);
    Ok(answer)
}

async fn of_animal(asking: Asking, id: web::Path<String>) -> Result<HttpResponse> {
    let drawn = within(Room::Draw, move || {
        let app = asking.caller();
        app.store.read(|conn| {
            let starts = received(conn, &id)?;
            picture::of_family(&app, conn, &starts)
        })
    });
    Ok(svg(drawn.await?))
}

/// The lots that were received of an animal.
fn received(conn: &mut Conn, id: &str) -> Result<Vec<i32>> {
    let unknown = || Error::not_found(QuerySays::NoAnimal { id: id.to_owned() });
    let uid = Uuid::parse_str(id).map_err(|_| unknown())?;
    let animal = animals::by_uid(conn, uid.as_bytes())?.ok_or_else(unknown)?;
    Ok(animals::received(conn, animal.id)?)
}
