//! What is taken away of a recall: its report on paper, its record for a spreadsheet, its picture, its events.

use crate::caller::Asking;
use crate::error::{Error, Result};
use crate::pictures;
use crate::problems::{LabelsSays, TitleSays};
use crate::read::{events, scope};
use crate::recall::{self, IncidentFacts};
use crate::rooms::{Room, within};
use crate::routes::deeds::id;
use crate::routes::{Api, query};
use crate::wire::Instant;
use actix_web::{HttpRequest, HttpResponse, web};
use domain::incident::IncidentSays;
use domain::right::Right;
use serde::Deserialize;
use store::Conn;
use utoipa::IntoParams;
use words::Speech;

/// As of when. What is said of the field stands in the API's document.
#[derive(Debug, Default, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
pub struct AtQuery {
    /// As the record was at this moment; of one that is closed as it was at its close, else as it is now
    pub at: Option<String>,
}

impl AtQuery {
    fn at(&self) -> Result<Option<Instant>> {
        let Some(text) = &self.at else {
            return Ok(None);
        };
        let read = chrono::DateTime::parse_from_rfc3339(text.trim());
        let text = text.clone();
        let read = read.map_err(|_| Error::cannot_be("at", IncidentSays::NoMoment { text }))?;
        Ok(Some(Instant(read)))
    }
}

/// Adds them.
pub fn add(api: &mut Api) {
    let one = |api: &mut Api, path: &'static str, says, route, kind| {
        api.get(path, Right::See, says, route)
            .reads::<AtQuery>()
            .answers_file(
                kind,
                "The file: the same bytes whenever it is asked of the same record",
            );
    };
    one(
        api,
        "/api/incidents/{id}/report.pdf",
        "The report of a recall on paper",
        web::get().to(report),
        "application/pdf",
    );
    one(
        api,
        "/api/incidents/{id}/record.csv",
        "The record of a recall for a spreadsheet, with the rows that name its fields",
        web::get().to(record),
        "text/csv",
    );
    one(
        api,
        "/api/incidents/{id}/family.svg",
        "The lots of a recall as a picture",
        web::get().to(picture),
        "image/svg+xml",
    );
    api.get(
        "/api/incidents/{id}/events.jsonld",
        Right::See,
        "The events of the lots of a recall, as EPCIS 2.0",
        web::get().to(events_of),
    )
    .answers_file("application/ld+json", "An EPCIS document in JSON-LD");
}

/// The file of an incident: what its facts become for a reader.
async fn file(
    request: &HttpRequest,
    asking: Asking,
    path: &str,
    made: impl FnOnce(&IncidentFacts, Speech) -> Result<Vec<u8>> + Send + 'static,
    with_digest: bool,
) -> Result<(Vec<u8>, String)> {
    let of = id(path)?;
    let at = query::<AtQuery>(request)?.at()?;
    within(Room::Draw, move || {
        let app = asking.caller();
        let (facts, speech) = app.store.read(|conn| {
            let mut facts = recall::of(&app, conn, of, at)?;
            // The record as a whole is known as it is now only.
            if with_digest && !facts.closed && at.is_none() {
                facts.record_digest = Some(store::digest::digest(conn)?);
                facts.anchor = recall::anchor(conn)?;
            }
            let speech = app.speech(&app.standing(conn)?.kitchen);
            Ok::<_, Error>((facts, speech))
        })?;
        let speech = Speech {
            today: None,
            ..speech
        };
        let number = facts.number.clone();
        Ok((made(&facts, speech)?, number))
    })
    .await
}

fn answer(kind: &str, bytes: Vec<u8>, disposition: Option<String>) -> HttpResponse {
    let mut answer = HttpResponse::Ok();
    answer.content_type(kind);
    if let Some(disposition) = disposition {
        answer.insert_header(("Content-Disposition", disposition));
    }
    answer.body(bytes)
}

async fn report(
    request: HttpRequest,
    asking: Asking,
    path: web::Path<String>,
) -> Result<HttpResponse> {
    let made = |facts: &IncidentFacts, speech: Speech| {
        recall::paper(facts, speech.language).map_err(|error| {
            let cause = error.to_string();
            Error::label_refused(TitleSays::LabelNotMade, LabelsSays::NotDrawn { cause })
        })
    };
    let (bytes, number) = file(&request, asking, &path, made, true).await?;
    let disposition = format!("inline; filename=\"{number}.pdf\"");
    Ok(answer("application/pdf", bytes, Some(disposition)))
}

async fn record(
    request: HttpRequest,
    asking: Asking,
    path: web::Path<String>,
) -> Result<HttpResponse> {
    let made = |facts: &IncidentFacts, speech: Speech| Ok(recall::sheet(facts, &speech));
    let (bytes, number) = file(&request, asking, &path, made, false).await?;
    let disposition = format!("attachment; filename=\"{number}.csv\"");
    Ok(answer("text/csv; charset=utf-8", bytes, Some(disposition)))
}

async fn picture(
    request: HttpRequest,
    asking: Asking,
    path: web::Path<String>,
) -> Result<HttpResponse> {
    let of = id(&path)?;
    let at = query::<AtQuery>(&request)?.at()?;
    let drawn = within(Room::Draw, move || {
        let app = asking.caller();
        let (family, speech) = app.store.read(|conn| {
            let speech = app.speech(&app.standing(conn)?.kitchen);
            let family = recall::drawn(&app, conn, of, at, speech.language.tag())?;
            Ok::<_, Error>((family, speech))
        })?;
        let speech = Speech {
            today: None,
            ..speech
        };
        Ok(pictures::family(&family, &speech))
    });
    Ok(answer("image/svg+xml", drawn.await?.into_bytes(), None))
}

async fn events_of(asking: Asking, path: web::Path<String>) -> Result<HttpResponse> {
    let of = id(&path)?;
    let document = within(Room::Draw, move || {
        let app = asking.caller();
        app.store.read(|conn: &mut Conn| {
            let found = scope::of_incident(&app, conn, of)?;
            let lots = found.scope.lots.iter().map(|lot| lot.id.0).collect();
            events::of_lots(app.app(), conn, &lots)
        })
    });
    let document = document.await?.to_string();
    Ok(answer("application/ld+json", document.into_bytes(), None))
}
