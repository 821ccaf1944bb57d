//! The calls of a recall: what is affected, incidents, holds.

mod files;
mod tags;

use super::Api;
use super::deeds::{answer, deed, id};
use crate::body::Body;
use crate::caller::{Asking, Caller};
use crate::deeds::{Done, incident};
use crate::error::{Error, Result};
use crate::read;
use crate::rooms::{Room, blocking, within};
use crate::wire::answers::{IncidentDone, IncidentRead, IncidentsRead, ScopeRead};
use crate::wire::asked::Id;
use crate::wire::incidents::{
    IncidentAsked, IncidentCloseAsked, IncidentGuestsAsked, IncidentNoteAsked, IncidentScopeAsked,
};
use crate::wire::scope::ScopeAsked;
use actix_web::{HttpResponse, Route, web};
use domain::right::Right;
use serde::de::DeserializeOwned;

/// Adds them.
pub fn add(api: &mut Api) {
    api.post(
        "/api/scopes",
        Right::See,
        "What is affected, and why: a question, nothing is recorded",
        web::post().to(scope),
    )
    .takes::<ScopeAsked>()
    .answers::<ScopeRead>(&[200], "The lots, and what is outside");
    let done = "Done: 201 the first time, 200 for the same again";
    api.post(
        "/api/incidents",
        Right::Recall,
        "A recall begins, or a drill of one: its scope, and its hold at once",
        deed(incident::begin),
    )
    .takes::<IncidentAsked>()
    .answers::<IncidentDone>(&[201, 200], done);
    api.post(
        "/api/incidents/{id}/scope",
        Right::Recall,
        "A recall goes further, or less far",
        of_incident(incident::rescope),
    )
    .takes::<IncidentScopeAsked>()
    .answers::<IncidentDone>(&[201, 200], done);
    api.post(
        "/api/incidents/{id}/notes",
        Right::Work,
        "Somebody was told, or answered; anything else",
        of_incident(incident::note),
    )
    .takes::<IncidentNoteAsked>()
    .answers::<IncidentDone>(&[201, 200], done);
    api.post(
        "/api/incidents/{id}/guests",
        Right::Recall,
        "Guests who read the code of a pack in scope are told, or no longer",
        of_incident(incident::guests),
    )
    .takes::<IncidentGuestsAsked>()
    .answers::<IncidentDone>(&[201, 200], done);
    api.post(
        "/api/incidents/{id}/close",
        Right::Recall,
        "A recall is over",
        of_incident(incident::close),
    )
    .takes::<IncidentCloseAsked>()
    .answers::<IncidentDone>(&[201, 200], done);
    api.get(
        "/api/incidents",
        Right::See,
        "Recalls and drills, the newest first",
        web::get().to(incidents),
    )
    .answers::<IncidentsRead>(&[200], "The incidents");
    api.get(
        "/api/incidents/{id}",
        Right::See,
        "A recall: its scope, its hold, who was told, its clock",
        web::get().to(one),
    )
    .answers::<IncidentRead>(&[200], "The incident");
    files::add(api);
    tags::add(api);
}

/// A deed about the incident that the path names.
fn of_incident<A: DeserializeOwned + Send + 'static>(
    act: fn(&Caller<'_>, Id, &A) -> Result<Done>,
) -> Route {
    web::post().to(
        move |asking: Asking, path: web::Path<String>, Body(asked): Body<A>| async move {
            let of = id(&path)?;
            let done = within(Room::Write, move || act(&asking.caller(), of, &asked)).await?;
            Ok::<_, Error>(answer(done))
        },
    )
}

async fn incidents(asking: Asking) -> Result<HttpResponse> {
    let read = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| read::incidents::all(&app, conn))
    });
    Ok(HttpResponse::Ok().json(read.await?))
}

async fn one(asking: Asking, path: web::Path<String>) -> Result<HttpResponse> {
    let of = id(&path)?;
    let read = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| read::incidents::read(&app, conn, of))
    });
    Ok(HttpResponse::Ok().json(read.await?))
}

async fn scope(asking: Asking, Body(asked): Body<ScopeAsked>) -> Result<HttpResponse> {
    let read = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| {
            let found = read::scope::listed(&app, conn, &asked, "")?;
            let kitchen = app.standing(conn)?.kitchen.clone();
            Ok::<_, Error>(found.read(&asked, app.speech(&kitchen)))
        })
    });
    Ok(HttpResponse::Ok().json(read.await?))
}
