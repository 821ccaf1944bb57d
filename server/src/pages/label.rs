//! A pack's label as a picture, from the same placed items as the PDF.

use super::trouble;
use crate::app::App;
use crate::caller::Asking;
use crate::error::Result;
use crate::label_facts::{self, Wanted};
use crate::read::LoadedFamily;
use crate::rooms::{Room, within};
use crate::routes::query;
use actix_web::{HttpRequest, HttpResponse, web};
use domain::lot::LotId;
use domain::says::Says;
use serde::Deserialize;
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
            draw(&app, &reading, lot, asked.pack, asked.template).map(|drawn| drawn.svg)
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
}

/// Draws the label of one pack.
///
/// # Errors
/// 422 for a pack or a template that is not there; 409 where a text does not fit.
pub fn draw(
    app: &App,
    reading: &LoadedFamily<'_>,
    lot: LotId,
    pack: Option<u32>,
    template: Option<String>,
) -> Result<Picture> {
    let wanted = Wanted {
        packs: pack.map(|pack| vec![pack]),
        template,
        ..Wanted::default()
    };
    let drawn = label_facts::of_lot(app, reading, lot, &wanted)?;
    let told = drawn.warnings.iter();
    Ok(Picture {
        svg: drawn
            .placed
            .first()
            .map(|label| labels::svg(&label.joined()))
            .unwrap_or_default(),
        warnings: told.map(|of| of.with_sources(&reading.law.rows)).collect(),
    })
}
