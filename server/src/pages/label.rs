//! A pack's label as a picture, from the same placed items as the PDF.

use super::trouble;
use crate::app::App;
use crate::caller::Asking;
use crate::error::Result;
use crate::label_facts::says::SizeOf;
use crate::label_facts::{self, Wanted};
use crate::printing::seen::{self, Listed, OnPaper};
use crate::read::LoadedFamily;
use crate::rooms::{Room, within};
use crate::routes::query;
use actix_web::{HttpRequest, HttpResponse, web};
use domain::lot::LotId;
use domain::says::Says;
use serde::Deserialize;
use store::Conn;
use store::family::Extent;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    pack: Option<u32>,
    template: Option<String>,
}

/// The picture; of the first pack on hand if none is named.
pub async fn picture(
    request: HttpRequest,
    asking: Asking,
    code: web::Path<String>,
) -> HttpResponse {
    let speech = asking.speech();
    match asked(&request, asking, code).await {
        Ok(svg) => HttpResponse::Ok()
            .content_type("image/svg+xml")
            .insert_header((
                "Content-Security-Policy",
                "default-src 'none'; style-src-attr 'unsafe-inline'",
            ))
            .insert_header(("X-Content-Type-Options", "nosniff"))
            .insert_header(("Cache-Control", "no-store"))
            .body(svg),
        Err(error) => trouble(speech, &error),
    }
}

async fn asked(request: &HttpRequest, asking: Asking, code: web::Path<String>) -> Result<String> {
    let asked: Asked = query(request)?;
    within(Room::Draw, move || {
        let app = asking.caller();
        app.store.read(|conn| {
            let extent = Extent {
                packs: asked.pack.as_ref().map(std::slice::from_ref),
                ..Extent::ANCESTORS
            };
            let (reading, lot) = LoadedFamily::of_code(&app, conn, &code, extent)?;
            let drawn = match asked.template {
                Some(template) => draw(&app, &reading, lot, asked.pack, Some(template), None)?,
                None => as_printed(&app, conn, &reading, lot, asked.pack)?,
            };
            Ok(drawn.svg)
        })
    })
    .await
}

/// A label as a picture, with what is to be told to whoever prints it.
pub struct Picture {
    /// The picture.
    pub svg: String,
    /// What is to be told.
    pub warnings: Vec<Says>,
    /// Of which printer it comes out so, by name, and how large.
    pub on: Option<(String, SizeOf)>,
    /// The printer that is to be asked first which paper it has, by code: nobody did since the service began.
    pub ask: Option<String>,
}

/// Draws the label of one pack as the first printer that has paper for it will print it; where nobody knows of any,
/// the smallest that holds it.
///
/// # Errors
/// As [`draw`]; the database is away, or an entry is damaged.
pub fn as_printed(
    app: &App,
    conn: &mut Conn,
    reading: &LoadedFamily<'_>,
    lot: LotId,
    pack: Option<u32>,
) -> Result<Picture> {
    let mut ask = None;
    for printer in seen::listed(app, conn)? {
        let on = match printer {
            Listed::Answered(on) => on,
            Listed::Unasked(code) => {
                ask.get_or_insert(code);
                continue;
            }
        };
        if let Ok(drawn) = draw(app, reading, lot, pack, None, Some(&on))
            && drawn.on.is_some()
        {
            return Ok(drawn);
        }
    }
    let drawn = draw(app, reading, lot, pack, None, None)?;
    Ok(Picture { ask, ..drawn })
}

/// Draws the label of one pack.
///
/// # Errors
/// 422 for a pack or a template that is not there; 409 where a text does not fit.
fn draw(
    app: &App,
    reading: &LoadedFamily<'_>,
    lot: LotId,
    pack: Option<u32>,
    template: Option<String>,
    on: Option<&OnPaper>,
) -> Result<Picture> {
    let wanted = Wanted {
        packs: pack.map(|pack| vec![pack]),
        template,
        among: on.map(|on| on.labels.clone()).unwrap_or_default(),
        dpi: on.and_then(|on| on.can.dpi()),
        ..Wanted::default()
    };
    let drawn = label_facts::of_lot(app, reading, lot, &wanted)?;
    let told = drawn.warnings.iter();
    let first = drawn.placed.first();
    let hundredths = |um: i64| i32::try_from((um + 5) / 10).unwrap_or(i32::MAX);
    let fits = |on: &&OnPaper| {
        first.is_some_and(|label| {
            let (x, y) = (label.width.um(), label.tallest().um());
            on.can.size_for(hundredths(x), hundredths(y)).is_ok()
        })
    };
    let on = on.filter(fits).zip(first);
    Ok(Picture {
        on: on.map(|(on, label)| (on.name.clone(), SizeOf::of_placed(label))),
        ask: None,
        svg: drawn
            .placed
            .first()
            .map(|label| labels::svg(&label.joined()))
            .unwrap_or_default(),
        warnings: told.map(|of| of.with_sources(&reading.law.rows)).collect(),
    })
}
