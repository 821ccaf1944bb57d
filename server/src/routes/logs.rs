//! The logs as the rules name them: for a program, a spreadsheet and paper.

use super::{Api, query};
use crate::caller::Asking;
use crate::error::{Error, Result};
use crate::logbook::{self, Telling};
use crate::problems::{LabelsSays, TitleSays};
use crate::read::logs::{self, LogForm, LogQuery, known_log};
use crate::rooms::{Room, blocking, within};
use crate::wire::answers::{LogRead, LogsRead, log_read, logs_read};
use actix_web::{HttpRequest, HttpResponse, web};
use domain::log::{LogKind, due};
use domain::right::Right;

/// Adds them.
pub fn add(api: &mut Api) {
    api.get(
        "/api/logs",
        Right::See,
        "The logs, and which are due by the rules of the place",
        web::get().to(all),
    )
    .answers::<LogsRead>(&[200], "The logs");
    api.get(
        "/api/logs/{which}",
        Right::See,
        "A log of a window: receiving, grinding, batches, cooking, cooling, curing, trichinae, clean-downs, \
         temperatures, corrections or departures",
        web::get().to(one),
    )
    .reads::<LogQuery>()
    .answers_or_files::<LogRead>(
        &["text/csv", "application/pdf"],
        "Its entries; with as=csv a file of text/csv, with as=pdf one of application/pdf",
    );
}

async fn all(asking: Asking) -> Result<HttpResponse> {
    let read = blocking(move || {
        let app = asking.caller();
        app.store.look(|conn| {
            let standing = app.standing(conn)?;
            let speech = app.speech(&standing.kitchen);
            let law = logs::law(&app, &standing);
            Ok::<_, Error>(logs_read(&logs::all(law), &speech))
        })
    });
    Ok(HttpResponse::Ok().json(read.await?))
}

async fn one(
    request: HttpRequest,
    asking: Asking,
    which: web::Path<String>,
) -> Result<HttpResponse> {
    let kind = known_log(&which)?;
    let asked: LogQuery = query(&request)?;
    match asked.form()? {
        LogForm::Json => json(asking, kind, asked).await,
        form => file(asking, kind, asked, form).await,
    }
}

async fn json(asking: Asking, kind: LogKind, asked: LogQuery) -> Result<HttpResponse> {
    let read = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| {
            let page = logs::page(&app, conn, kind, &asked)?;
            let speech = app.speech(page.kitchen());
            let due = due(&logs::law(&app, &page.standing).duties, kind);
            Ok::<_, Error>(log_read(&page, &due, speech))
        })
    });
    Ok(HttpResponse::Ok().json(read.await?))
}

async fn file(
    asking: Asking,
    kind: LogKind,
    asked: LogQuery,
    form: LogForm,
) -> Result<HttpResponse> {
    let (bytes, name) = within(Room::Draw, move || {
        let app = asking.caller();
        let page = app
            .store
            .read(|conn| logs::whole(&app, conn, kind, &asked))?;
        let telling = Telling::of_file(&page, app.speech(page.kitchen()));
        let (first, last) = page.window.days(page.kitchen().zone);
        let name = format!("{kind}-{first}-{last}");
        let bytes = match form {
            LogForm::Csv => logbook::csv(&telling),
            LogForm::Json | LogForm::Pdf => logbook::paper(&telling).map_err(|error| {
                let cause = error.to_string();
                Error::label_refused(TitleSays::LabelNotMade, LabelsSays::NotDrawn { cause })
            })?,
        };
        Ok::<_, Error>((bytes, name))
    })
    .await?;
    let (kind, ending, how) = match form {
        LogForm::Csv => ("text/csv; charset=utf-8", "csv", "attachment"),
        LogForm::Json | LogForm::Pdf => ("application/pdf", "pdf", "inline"),
    };
    let disposition = format!("{how}; filename=\"{name}.{ending}\"");
    Ok(HttpResponse::Ok()
        .content_type(kind)
        .insert_header(("Content-Disposition", disposition))
        .body(bytes))
}
