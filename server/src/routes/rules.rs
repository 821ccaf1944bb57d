//! The calls that ask the rules: why a label says what it says, the law itself, the cure room, yield
//! and cost.

use super::{Api, query};
use crate::body::Body;
use crate::caller::Asking;
use crate::error::{Error, Result};
use crate::read;
use crate::rooms::blocking;
use crate::wire::answers::piece::room_read;
use crate::wire::answers::{LawRead, WhyRead};
use crate::wire::cure_room::{CurePlanRead, CureRoomRead};
use crate::wire::cures::CurePlanAsked;
use crate::wire::money::{CostRead, YieldRead};
use actix_web::{HttpRequest, HttpResponse, web};
use domain::right::Right;
use serde::Deserialize;
use utoipa::IntoParams;

/// Adds them.
pub fn add(api: &mut Api) {
    api.get(
        "/api/lots/{code}/why",
        Right::See,
        "Everything that its label rests on: chains, rows, readings",
        web::get().to(why),
    )
    .answers::<WhyRead>(&[200], "Why");
    api.get(
        "/api/lots/{code}/yield",
        Right::See,
        "What came off it, or out of its cook, against what is usual",
        web::get().to(yields),
    )
    .answers::<YieldRead>(&[200], "The yield");
    api.get(
        "/api/lots/{code}/cost",
        Right::See,
        "What it cost, split by value and by weight",
        web::get().to(cost),
    )
    .answers::<CostRead>(&[200], "The cost");
    api.get(
        "/api/cure-room",
        Right::See,
        "Every piece in salt or hanging: loss, alarms, forecast, what is due",
        web::get().to(cure_room),
    )
    .answers::<CureRoomRead>(&[200], "The pieces");
    api.post(
        "/api/cure-plans",
        Right::See,
        "A cure is worked out; nothing is recorded",
        web::post().to(cure_plan),
    )
    .takes::<CurePlanAsked>()
    .answers::<CurePlanRead>(&[200], "What to weigh");
    api.get(
        "/api/law/{place}",
        Right::See,
        "The rows of a place's law",
        web::get().to(law),
    )
    .reads::<LawQuery>()
    .answers::<LawRead>(&[200], "The rows");
    api.get(
        "/api/rows",
        Right::See,
        "The rows of the law that this kitchen works under, as it has confirmed them",
        web::get().to(rows),
    )
    .reads::<RowsQuery>()
    .answers::<LawRead>(&[200], "The rows");
}

#[derive(Debug, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
struct RowsQuery {
    /// Given, with or without `true`: only those that nobody has confirmed, here or before
    unconfirmed: Option<String>,
}

#[derive(Debug, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
struct LawQuery {
    /// true: only those that nobody has confirmed
    unconfirmed: Option<bool>,
}

async fn why(asking: Asking, code: web::Path<String>) -> Result<HttpResponse> {
    let read = blocking(move || {
        let app = asking.caller();
        app.store
            .read(|conn| read::why::everything(&app, conn, &code))
    })
    .await?;
    Ok(HttpResponse::Ok().json(read))
}

async fn yields(asking: Asking, code: web::Path<String>) -> Result<HttpResponse> {
    let read = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| read::yields::read(&app, conn, &code))
    })
    .await?;
    Ok(HttpResponse::Ok().json(read))
}

async fn cost(asking: Asking, code: web::Path<String>) -> Result<HttpResponse> {
    let read = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| read::cost::read(&app, conn, &code))
    })
    .await?;
    Ok(HttpResponse::Ok().json(read))
}

async fn law(
    asking: Asking,
    place: web::Path<String>,
    request: HttpRequest,
) -> Result<HttpResponse> {
    let asked: LawQuery = query(&request)?;
    let unconfirmed = asked.unconfirmed.unwrap_or(false);
    let language = asking.speech().language.tag();
    let read = read::law::read(&asking.caller(), &place, unconfirmed, language)?;
    Ok(HttpResponse::Ok().json(read))
}

async fn rows(asking: Asking, request: HttpRequest) -> Result<HttpResponse> {
    let asked: RowsQuery = query(&request)?;
    let unconfirmed = asked.unconfirmed.is_some_and(|word| word != "false");
    let read = blocking(move || {
        let language = asking.speech().language.tag();
        let app = asking.caller();
        app.store
            .read(|conn| read::law::of_kitchen(&app, conn, unconfirmed, language))
    });
    Ok(HttpResponse::Ok().json(read.await?))
}

async fn cure_room(asking: Asking) -> Result<HttpResponse> {
    let read = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| {
            let room = read::cure_room::read(app.app(), conn)?;
            let speech = app.speech(room.reading.kitchen());
            Ok::<_, Error>(room_read(&room, &app.law.trade_rows, &speech))
        })
    })
    .await?;
    Ok(HttpResponse::Ok().json(read))
}

async fn cure_plan(asking: Asking, Body(asked): Body<CurePlanAsked>) -> Result<HttpResponse> {
    let read = blocking(move || read::cure_plan::work_out(&asking.caller(), &asked)).await?;
    Ok(HttpResponse::Ok().json(read))
}
