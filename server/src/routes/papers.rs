//! The calls about papers: they are kept, read and thinned; and how long everything is kept.

use super::deeds::{answer, deed};
use super::{Api, query};
use crate::body::{PAPERS, whole};
use crate::caller::Asking;
use crate::deeds;
use crate::error::{Error, Problem, Result};
use crate::problems::TitleSays;
use crate::read::keeping;
use crate::read::papers::{self, PapersQuery};
use crate::rooms::{Room, blocking, within};
use crate::wire::answers::{DeedDone, KeepingRead, PapersRead, paper_read};
use crate::wire::papers::{PaperAsked, ThinningAsked};
use actix_web::http::{StatusCode, header};
use actix_web::{HttpRequest, HttpResponse, web};
use domain::paper::{LARGEST_MB, PaperForm, PaperSays};
use domain::right::Right;

/// What a sender may say that it is; what it is, its content says.
const KINDS: [&str; 5] = [
    "application/pdf",
    "image/jpeg",
    "image/png",
    "text/csv",
    "text/plain",
];

/// Adds them.
pub fn add(api: &mut Api) {
    let done = "Done: 201 the first time, 200 for the same again";
    api.post(
        "/api/papers",
        Right::Work,
        "A delivery note, a certificate, a photo or a print-out is kept with the deed that it belongs to: the body is \
         what it holds, at most 10 MB, a PDF, a JPEG, a PNG or a plain text",
        web::post().to(take),
    )
    .reads::<PaperAsked>()
    .takes_files(&KINDS)
    .answers::<DeedDone>(&[201, 200], done);
    api.get(
        "/api/papers",
        Right::See,
        "The papers of a deed, of a lot and all it was made from, of an animal; or all, the newest first",
        web::get().to(find),
    )
    .reads::<PapersQuery>()
    .answers::<PapersRead>(&[200], "The papers, without what they hold");
    api.get(
        "/api/papers/{id}",
        Right::See,
        "What a paper holds, byte for byte; 410 where that was thinned",
        web::get().to(content),
    )
    .answers_file("application/octet-stream", "In the form that it has");
    api.get(
        "/api/keeping",
        Right::See,
        "How long each record is kept by the rules of the place, and which papers may be thinned",
        web::get().to(kept),
    )
    .answers::<KeepingRead>(&[200], "The rules, and what may go");
    api.post(
        "/api/thinnings",
        Right::Thin,
        "The content of papers is thrown away that nobody has to keep any more; that they were there stays",
        deed(deeds::thin::take),
    )
    .takes::<ThinningAsked>()
    .answers::<DeedDone>(&[201, 200], done);
}

async fn take(request: HttpRequest, asking: Asking, payload: web::Payload) -> Result<HttpResponse> {
    let kind = request.headers().get(header::CONTENT_TYPE);
    let kind = kind.and_then(|kind| kind.to_str().ok()).unwrap_or_default();
    let kind = kind.split(';').next().unwrap_or_default().trim();
    if !KINDS.iter().any(|known| kind.eq_ignore_ascii_case(known)) {
        let (status, title) = (StatusCode::UNSUPPORTED_MEDIA_TYPE, TitleSays::CannotBe);
        return Err(Problem::new(status, "not-a-paper", title, PaperSays::Send).into());
    }
    let asked: PaperAsked = query(&request)?;
    let too_large = || {
        let (status, most) = (StatusCode::PAYLOAD_TOO_LARGE, LARGEST_MB);
        let says = PaperSays::TooLarge { most };
        Problem::new(status, "too-large", TitleSays::TooLarge, says).into()
    };
    let (bytes, held) = whole(&request, payload.into_inner(), &PAPERS, too_large).await?;
    let done = within(Room::Write, move || {
        let done = deeds::paper::take(&asking.caller(), &asked, &bytes);
        drop(held);
        done
    });
    Ok(answer(done.await?))
}

async fn find(request: HttpRequest, asking: Asking) -> Result<HttpResponse> {
    let asked: PapersQuery = query(&request)?;
    let read = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| {
            let zone = app.kitchen(conn)?.zone;
            let found = papers::find(&app, conn, &asked)?;
            let papers = found.papers.iter().map(|paper| paper_read(paper, zone));
            Ok::<_, Error>(PapersRead {
                papers: papers.collect(),
                next: found.next,
            })
        })
    });
    Ok(HttpResponse::Ok().json(read.await?))
}

async fn content(asking: Asking, id: web::Path<String>) -> Result<HttpResponse> {
    let read = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| papers::content(conn, &id))
    });
    let (paper, bytes) = read.await?;
    let form = paper.row.form()?;
    let kind = match form {
        PaperForm::Text if std::str::from_utf8(&bytes).is_ok() => "text/plain; charset=utf-8",
        PaperForm::Text => "text/plain; charset=iso-8859-1",
        form => form.as_str(),
    };
    let how = if form.is_picture() {
        "inline"
    } else {
        "attachment"
    };
    let name = format!("{}-{}-{}", paper.row.kind, paper.day, paper.row.id);
    Ok(HttpResponse::Ok()
        .content_type(kind)
        .insert_header((
            "Content-Disposition",
            format!("{how}; filename=\"{name}.{}\"", form.ending()),
        ))
        .insert_header(("Content-Security-Policy", "sandbox; default-src 'none'"))
        .insert_header(("X-Content-Type-Options", "nosniff"))
        .body(bytes))
}

async fn kept(asking: Asking) -> Result<HttpResponse> {
    let read = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| keeping::read(&app, conn))
    });
    Ok(HttpResponse::Ok().json(read.await?))
}
