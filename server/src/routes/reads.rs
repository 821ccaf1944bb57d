//! The calls that only read.

use super::Api;
use crate::app::App;
use crate::caller::Asking;
use crate::deeds::says::DeedSays;
use crate::door::unseen;
use crate::error::{Error, Result};
use crate::metrics;
use crate::problems::RequestSays;
use crate::pulse::{self, Trouble};
use crate::read::animals::AnimalsQuery;
use crate::read::find::LotsQuery;
use crate::read::seek::SeekQuery;
use crate::read::today::TodayQuery;
use crate::read::wrong_labels::WrongLabelsQuery;
use crate::read::{self, lot_named};
use crate::rooms::{Room, blocking, within};
use crate::wire::answers::copies::copies_health;
use crate::wire::answers::*;
use crate::wire::says::ValueSays;
use crate::wire::unread::unread;
use actix_web::http::header;
use actix_web::{HttpRequest, HttpResponse, web};
use domain::right::Right;
use serde::Deserialize;
use serde::de::DeserializeOwned;
use std::sync::LazyLock;
use utoipa::IntoParams;

/// Adds them.
pub fn add(api: &mut Api) {
    for (path, says) in [
        ("/api/health", "How the service is"),
        ("/api/ready", "Does the service take deeds now?"),
    ] {
        api.get(path, Right::Anyone, says, web::get().to(health))
            .answers::<HealthRead>(&[200, 503], "200 where all is well, 503 where it is not");
    }
    api.get(
        "/metrics",
        Right::Watch,
        "Figures for whoever watches the service",
        web::get().to(metrics),
    )
    .answers_file("text/plain", "The open text format");
    api.get(
        "/api/openapi.json",
        Right::Anyone,
        "This document",
        web::get().to(openapi),
    )
    .answers_file("application/json", "OpenAPI 3.1");
    api.get(
        "/api/lots",
        Right::See,
        "Lots that fit, newest first",
        web::get().to(lots),
    )
    .reads::<LotsQuery>()
    .answers::<LotsPage>(&[200], "The lots");
    api.get(
        "/api/lots/{code}",
        Right::See,
        "A lot in full",
        web::get().to(lot),
    )
    .answers::<LotRead>(&[200], "The lot");
    api.get(
        "/api/lots/{code}/origins",
        Right::See,
        "Back to every source",
        web::get().to(origins),
    )
    .answers::<OriginsRead>(&[200], "Its sources");
    api.get(
        "/api/lots/{code}/descendants",
        Right::See,
        "Forward to all that came of it",
        web::get().to(descendants),
    )
    .answers::<DescendantsRead>(&[200], "The lots made from it");
    api.get(
        "/api/animals",
        Right::See,
        "Source animals that fit",
        web::get().to(animals),
    )
    .reads::<AnimalsQuery>()
    .answers::<AnimalsPage>(&[200], "The animals");
    api.get(
        "/api/animals/{id}/descendants",
        Right::See,
        "All that came of an animal",
        web::get().to(animal_descendants),
    )
    .answers::<DescendantsRead>(&[200], "The lots made from it");
    api.get(
        "/api/find",
        Right::See,
        "What somebody may mean: a scan, half a code, a carcass number, a product, a place, a person",
        web::get().to(find),
    )
    .reads::<SeekQuery>()
    .answers::<SoughtRead>(&[200], "What may be meant");
    api.get(
        "/api/scan",
        Right::Scan,
        "May this pack be sold?",
        web::get().to(scan),
    )
    .reads::<ScanQuery>()
    .answers::<ScanRead>(&[200], "The verdict");
    api.get(
        "/api/stops",
        Right::See,
        "Every stop that stands, by place",
        web::get().to(stops),
    )
    .answers::<StopsRead>(&[200], "The stops");
    api.get(
        "/api/today",
        Right::See,
        "What needs a hand today, in the order of the hour",
        web::get().to(today),
    )
    .reads::<TodayQuery>()
    .answers::<TodayRead>(&[200], "The things, each with what to do");
    api.get(
        "/api/copies",
        Right::See,
        "The copies of the record: their timetable, what came of the last ones, and when one was last tried",
        web::get().to(copies),
    )
    .answers::<CopiesRead>(&[200], "The copies");
    api.get(
        "/api/wrong-labels",
        Right::See,
        "Packs whose last printed label is no longer true: what it says, what is true",
        web::get().to(wrong_labels),
    )
    .reads::<WrongLabelsQuery>()
    .answers::<WrongLabelsRead>(&[200], "The packs");
    api.get(
        "/api/steps/{id}",
        Right::See,
        "Any deed on record",
        web::get().to(deed),
    )
    .answers::<DeedRead>(&[200], "The deed");
}

/// The most letters of one value of a query: more than any name or code has.
const LONGEST: usize = 500;

/// Reads a query; an unknown field or a wrong value is 422.
pub fn query<T: DeserializeOwned>(request: &HttpRequest) -> Result<T> {
    let all = web::Query::<Vec<(String, String)>>::from_query(request.query_string());
    for (field, text) in all.map(web::Query::into_inner).unwrap_or_default() {
        if text.chars().count() > LONGEST {
            let says = ValueSays::TooLong { most: LONGEST };
            return Err(Error::cannot_be(field, says));
        }
        if let Some(letter) = text.chars().find(|letter| unseen::is_unseen(*letter)) {
            return Err(Error::cannot_be(field, unseen::says(letter)));
        }
        if text.chars().any(char::is_control) {
            return Err(Error::cannot_be(field, ValueSays::Unprintable));
        }
    }
    any_query(request)
}

/// Reads a query that may be as long and as strange as a scanner sends it.
pub fn any_query<T: DeserializeOwned>(request: &HttpRequest) -> Result<T> {
    web::Query::<T>::from_query(request.query_string())
        .map(web::Query::into_inner)
        .map_err(|error| {
            let text = error.to_string();
            let says = text.trim_start_matches("Query deserialize error: ");
            let unread = unread(says);
            let field = unread.field.unwrap_or_else(|| "query".to_owned());
            Error::cannot_be(field, RequestSays::Query { says: unread.says })
        })
}

/// How the record was felt a moment ago, how the clock stands: nobody is asked, so nobody is waited for.
async fn health(asking: Asking) -> HttpResponse {
    let app = asking.caller();
    let kitchen = app.kitchen_seen();
    let zone = kitchen.map_or(chrono_tz::UTC, |kitchen| kitchen.zone);
    let trouble = pulse::trouble().or_else(|| {
        let why = pulse::clock_doubt()?.into();
        Some(Trouble {
            status: "clock",
            why,
        })
    });
    let mut response = match trouble {
        None => HttpResponse::Ok(),
        Some(_) => HttpResponse::ServiceUnavailable(),
    };
    if trouble.is_some() {
        response.insert_header((header::RETRY_AFTER, "2"));
    }
    response.json(HealthRead {
        status: trouble
            .as_ref()
            .map_or("ok", |trouble| trouble.status)
            .to_owned(),
        version: env!("CARGO_PKG_VERSION").to_owned(),
        database: app.store.address().engine().to_owned(),
        now: instant(app.now().naive_utc(), zone),
        copies: copies_health(app.app(), zone),
        why: trouble.map(|trouble| asking.speech().say(&trouble.why)),
    })
}

async fn copies(asking: Asking) -> Result<HttpResponse> {
    let read = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| {
            let found = read::copies::read(&app, conn)?;
            let kitchen = app.kitchen(conn)?;
            Ok::<_, Error>(copies_read(&found, kitchen.zone, &app.speech(&kitchen)))
        })
    });
    Ok(HttpResponse::Ok().json(read.await?))
}

async fn metrics() -> HttpResponse {
    HttpResponse::Ok()
        .content_type("text/plain; version=0.0.4; charset=utf-8")
        .body(metrics::text())
}

/// Made once: it is the same for everybody.
static DOCUMENT: LazyLock<web::Bytes> =
    LazyLock::new(|| super::api().document().to_string().into());

async fn openapi() -> HttpResponse {
    HttpResponse::Ok()
        .content_type("application/json")
        .body(DOCUMENT.clone())
}

async fn lots(request: HttpRequest, app: web::Data<App>) -> Result<HttpResponse> {
    let query: LotsQuery = query(&request)?;
    let found = blocking(move || read::find::lots(&app, &query)).await?;
    Ok(HttpResponse::Ok().json(LotsPage::of(&found)))
}

async fn lot(asking: Asking, code: web::Path<String>) -> Result<HttpResponse> {
    let read = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| read::lot::read(&app, conn, &code))
    })
    .await?;
    Ok(HttpResponse::Ok().json(read))
}

async fn origins(asking: Asking, code: web::Path<String>) -> Result<HttpResponse> {
    let read = blocking(move || {
        let app = asking.caller();
        app.store
            .read(|conn| read::trace::origins_named(&app, conn, &code))
            .map(|(code, found)| origins::read(&code, &found))
    })
    .await?;
    Ok(HttpResponse::Ok().json(read))
}

async fn descendants(app: web::Data<App>, code: web::Path<String>) -> Result<HttpResponse> {
    let read = blocking(move || {
        app.store
            .read(|conn| {
                let row = lot_named(&app, conn, &code)?;
                read::trace::of_lot(conn, &row)
            })
            .map(|found| DescendantsRead::of(&found))
    })
    .await?;
    Ok(HttpResponse::Ok().json(read))
}

async fn animals(request: HttpRequest, app: web::Data<App>) -> Result<HttpResponse> {
    let query: AnimalsQuery = query(&request)?;
    let found = blocking(move || read::animals::list(&app, &query)).await?;
    Ok(HttpResponse::Ok().json(AnimalsPage::of(&found)))
}

async fn animal_descendants(app: web::Data<App>, id: web::Path<String>) -> Result<HttpResponse> {
    let found = blocking(move || app.store.read(|conn| read::trace::of_animal(conn, &id))).await?;
    Ok(HttpResponse::Ok().json(DescendantsRead::of(&found)))
}

#[derive(Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
struct ScanQuery {
    /// Whatever the scanner sent
    code: Option<String>,
}

async fn scan(request: HttpRequest, asking: Asking) -> Result<HttpResponse> {
    let ScanQuery { code } = any_query(&request)?;
    let code = code.ok_or_else(|| Error::cannot_be("code", RequestSays::Scanned))?;
    let read = within(Room::Scan, move || {
        let app = asking.caller();
        app.store.look(|conn| {
            let kitchen = app.kitchen_lately(conn)?;
            let view = read::scan::scan(&app, conn, &kitchen, &code)?;
            Ok::<_, Error>(scan_read(&view, &app.speech(&kitchen)))
        })
    })
    .await?;
    Ok(HttpResponse::Ok().json(read))
}

async fn find(request: HttpRequest, asking: Asking) -> Result<HttpResponse> {
    let SeekQuery { q } = query(&request)?;
    let read = blocking(move || {
        let app = asking.caller();
        let said = q.unwrap_or_default();
        app.store.read(|conn| read::seek::seek(&app, conn, &said))
    });
    Ok(HttpResponse::Ok().json(sought_read(&read.await?)))
}

async fn deed(app: web::Data<App>, id: web::Path<String>) -> Result<HttpResponse> {
    let read = blocking(move || {
        app.store.read(|conn| {
            let deed = known(conn, &id)?;
            read::deed::read(&app, conn, &deed)
        })
    })
    .await?;
    Ok(HttpResponse::Ok().json(read))
}

/// The deed of an id in a path.
pub fn known(conn: &mut store::Conn, id: &str) -> Result<store::deeds::DeedRow> {
    let uid = super::deeds::id(id)?;
    let deed = store::deeds::by_uid(conn, uid.0.as_bytes())?;
    deed.ok_or_else(|| Error::not_found(DeedSays::Unknown { id: id.to_owned() }))
}

async fn stops(asking: Asking) -> Result<HttpResponse> {
    let read = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| read::stops::standing(&app, conn))
    });
    Ok(HttpResponse::Ok().json(read.await?))
}

async fn wrong_labels(request: HttpRequest, asking: Asking) -> Result<HttpResponse> {
    let query: WrongLabelsQuery = query(&request)?;
    let read = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| {
            let kitchen = app.kitchen(conn)?;
            let found = read::wrong_labels::list(&app, conn, query.sold.unwrap_or(false))?;
            let speech = app.speech(&kitchen);
            Ok::<_, Error>(wrong_labels_read(&found, kitchen.zone, &speech))
        })
    });
    Ok(HttpResponse::Ok().json(read.await?))
}

async fn today(request: HttpRequest, asking: Asking) -> Result<HttpResponse> {
    let query: TodayQuery = query(&request)?;
    let read = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| {
            let found = read::today::read(&app, conn, &query)?;
            let kitchen = app.kitchen(conn)?;
            Ok::<_, Error>(today_read(&found, &app.speech(&kitchen)))
        })
    });
    Ok(HttpResponse::Ok().json(read.await?))
}
