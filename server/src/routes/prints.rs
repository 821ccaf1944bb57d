//! The calls about printers and what they print.

use super::deeds::{deed, deed_in};
use super::reads::query;
use super::{Api, labels};
use crate::caller::Asking;
use crate::deeds;
use crate::error::Result;
use crate::read::prints::{self, PrintsQuery};
use crate::rooms::{Room, blocking, within};
use crate::wire::prints::*;
use actix_web::{HttpRequest, HttpResponse, web};
use domain::right::Right;
use serde::Deserialize;

/// Adds them.
pub fn add(api: &mut Api) {
    let done = "Done: 201 the first time, 200 for the same again";
    api.post(
        "/api/prints",
        Right::Print,
        "Labels are asked of a printer, each once",
        deed_in(Room::Printer, deeds::print::take),
    )
    .takes::<PrintAsked>()
    .answers::<PrintsDone>(&[201, 200], done);
    api.post(
        "/api/label-documents",
        Right::Print,
        "Labels leave as a document, and count as printed",
        deed(deeds::hand_out::take),
    )
    .takes::<DocumentAsked>()
    .answers::<PrintsDone>(&[201, 200], done);
    api.get(
        "/api/label-documents/{id}/labels.pdf",
        Right::See,
        "The labels that left as a document by that deed",
        web::get().to(document),
    )
    .query("sheet", "Many on a sheet: letter or a4")
    .query(
        "skip",
        "Places at the start of the first sheet that are used up",
    )
    .answers_file("application/pdf", "One page a label, or a sheet of many");
    api.post(
        "/api/print-settlements",
        Right::Print,
        "Somebody looked which labels came out",
        deed(deeds::settle_print::take),
    )
    .takes::<SettlementAsked>()
    .answers::<PrintsDone>(&[201, 200], done);
    api.post(
        "/api/print-cancellations",
        Right::Print,
        "Labels that wait are wanted no more",
        deed(deeds::cancel_print::take),
    )
    .takes::<CancellationAsked>()
    .answers::<PrintsDone>(&[201, 200], done);
    api.post(
        "/api/printers/{code}/test-label",
        Right::Print,
        "A label to try a printer with: it names no lot and is on no record",
        web::post().to(test_label),
    )
    .answers::<TestLabelSent>(&[200], "It was sent");
    api.get(
        "/api/prints",
        Right::See,
        "Prints that fit, newest first",
        web::get().to(page),
    )
    .reads::<PrintsQuery>()
    .answers::<PrintsPage>(&[200], "The prints");
    api.get(
        "/api/prints/{number}",
        Right::See,
        "A print with its whole story",
        web::get().to(one),
    )
    .answers::<PrintInFull>(&[200], "The print");
    api.get(
        "/api/prints/{number}/label.pdf",
        Right::See,
        "The label as it was printed",
        web::get().to(label),
    )
    .answers_file("application/pdf", "One page");
    api.get(
        "/api/printers/{code}/state",
        Right::See,
        "How a printer is now",
        web::get().to(state),
    )
    .answers::<PrinterState>(&[200], "How it is");
}

async fn page(request: HttpRequest, asking: Asking) -> Result<HttpResponse> {
    let query: PrintsQuery = query(&request)?;
    Ok(HttpResponse::Ok().json(blocking(move || prints::page(&asking.caller(), &query)).await?))
}

async fn one(asking: Asking, number: web::Path<String>) -> Result<HttpResponse> {
    let read = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| prints::one(&app, conn, &number))
    })
    .await?;
    Ok(HttpResponse::Ok().json(read))
}

async fn label(asking: Asking, number: web::Path<String>) -> Result<HttpResponse> {
    let bytes = within(Room::Draw, move || prints::label(&asking.caller(), &number)).await?;
    Ok(HttpResponse::Ok()
        .content_type("application/pdf")
        .insert_header(("Content-Disposition", "inline; filename=\"label.pdf\""))
        .body(bytes))
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct OnSheet {
    sheet: Option<String>,
    skip: Option<usize>,
}

async fn document(
    request: HttpRequest,
    asking: Asking,
    id: web::Path<String>,
) -> Result<HttpResponse> {
    let asked: OnSheet = query(&request)?;
    let bytes = within(Room::Draw, move || {
        let app = asking.caller();
        let placed = prints::document(&app, &id)?;
        labels::drawn(&app, placed, asked.sheet.as_deref(), asked.skip)
    })
    .await?;
    Ok(labels::file(true).body(bytes))
}

async fn test_label(asking: Asking, code: web::Path<String>) -> Result<HttpResponse> {
    let sent = within(Room::Printer, move || {
        let app = asking.caller();
        let says = crate::printing::trial::send(&app, &code)?;
        Ok::<_, crate::error::Error>(TestLabelSent {
            says: asking.speech().say(&says),
        })
    });
    Ok(HttpResponse::Ok().json(sent.await?))
}

async fn state(asking: Asking, code: web::Path<String>) -> Result<HttpResponse> {
    Ok(HttpResponse::Ok().json(
        within(Room::Printer, move || {
            prints::state(&asking.caller(), &code)
        })
        .await?,
    ))
}
