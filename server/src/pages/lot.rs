//! The page of a lot: what it is, its label, its family, where it went.

use super::format::{self, or_dash};
use super::{tree, trouble};
use crate::app::App;
use crate::error::{Error, Result};
use crate::label_facts::{self, Wanted};
use crate::read::{self, lot_named};
use crate::routes::query;
use crate::serve::blocking;
use crate::wire::answers::{DescendantsRead, LotRead, OriginsRead, PackRead};
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;
use serde::Deserialize;

#[derive(Template)]
#[template(path = "lot.html")]
struct LotPage {
    name: String,
    lot: LotRead,
    packs: Vec<Run>,
    /// The label of the first pack on hand, or why it cannot be made.
    label: Option<std::result::Result<String, String>>,
    origins: OriginsRead,
    forward: DescendantsRead,
    tree: String,
}

/// Packs in a row that are all alike.
struct Run {
    numbers: String,
    left: String,
    has: bool,
    is: String,
    place: String,
    state: String,
    use_by: String,
}

/// A lot.
pub async fn page(app: web::Data<App>, code: web::Path<String>) -> HttpResponse {
    let made = blocking(move || {
        app.store.read(|conn| {
            let row = lot_named(&app, conn, &code)?;
            let lot = read::lot::read(&app, conn, &row)?;
            let forward = read::trace::of_lot(conn, &row)?;
            let origins = read::trace::origins(&app, conn, &row)?;
            let tree = tree::draw(&app, conn, &row)?;
            let language = app.kitchen(conn)?.language().to_owned();
            let name = lot
                .names
                .get(&language)
                .or_else(|| lot.names.values().next())
                .cloned()
                .unwrap_or_default();
            let first_pack = lot
                .packs
                .iter()
                .find(|pack| pack.left_grams.0.milligrams() > 0);
            let label = first_pack.map(|pack| {
                let wanted = Wanted {
                    packs: Some(vec![pack.pack]),
                    ..Wanted::default()
                };
                let placed = label_facts::of_lot(&app, conn, &row, &wanted);
                placed
                    .map(|placed| labels::svg(&placed[0]))
                    .map_err(|error| error.problem().detail)
            });
            Ok(LotPage {
                name,
                packs: runs(&lot.packs),
                label,
                lot,
                origins,
                forward,
                tree,
            })
        })
    });
    super::page(made.await)
}

fn runs(packs: &[PackRead]) -> Vec<Run> {
    let alike = |one: &PackRead, other: &PackRead| {
        (
            one.left_grams,
            &one.is,
            &one.place,
            &one.state,
            one.use_by,
            one.days_left,
        ) == (
            other.left_grams,
            &other.is,
            &other.place,
            &other.state,
            other.use_by,
            other.days_left,
        )
    };
    packs
        .chunk_by(alike)
        .map(|run| {
            let (first, last) = (&run[0], &run[run.len() - 1]);
            Run {
                numbers: if run.len() == 1 {
                    first.pack.to_string()
                } else {
                    format!("{} to {}", first.pack, last.pack)
                },
                left: or_dash(&first.left_grams),
                has: first.left_grams.0.milligrams() > 0,
                is: first.is.replace('-', " "),
                place: first.place.clone(),
                state: first.state.clone(),
                use_by: match (first.use_by, first.days_left) {
                    (Some(day), _) => day.0.to_string(),
                    (None, Some(days)) => format!("{days} days once thawed"),
                    (None, None) => "–".into(),
                },
            }
        })
        .collect()
}

#[derive(Template)]
#[template(path = "animal.html")]
struct AnimalPage {
    title: String,
    forward: DescendantsRead,
}

/// All that came of an animal.
pub async fn animal(app: web::Data<App>, id: web::Path<String>) -> HttpResponse {
    let made = blocking(move || {
        app.store.read(|conn| {
            let forward = read::trace::of_animal(conn, &id)?;
            let uid = crate::routes::id(&id)?;
            let row = store::animals::by_uid(conn, uid.0.as_bytes())?;
            let row = row.ok_or_else(|| Error::not_found("No such animal is on record."))?;
            let carcass = row
                .carcass
                .map_or(String::new(), |carcass| format!(", carcass {carcass}"));
            let title = format!(
                "{} of {}, killed {}{carcass}",
                row.species, row.farm, row.killed_on
            );
            Ok(AnimalPage { title, forward })
        })
    });
    super::page(made.await)
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct LabelAsked {
    pack: Option<u32>,
    template: Option<String>,
}

/// A pack's label as a picture, from the same placed items as the PDF.
pub async fn label(
    request: HttpRequest,
    app: web::Data<App>,
    code: web::Path<String>,
) -> HttpResponse {
    match draw_label(&request, app, code).await {
        Ok(svg) => HttpResponse::Ok().content_type("image/svg+xml").body(svg),
        Err(error) => trouble(&error),
    }
}

async fn draw_label(
    request: &HttpRequest,
    app: web::Data<App>,
    code: web::Path<String>,
) -> Result<String> {
    let asked: LabelAsked = query(request)?;
    let wanted = Wanted {
        packs: asked.pack.map(|pack| vec![pack]),
        template: asked.template,
        ..Wanted::default()
    };
    blocking(move || {
        let placed = app.store.read(|conn| {
            let row = lot_named(&app, conn, &code)?;
            label_facts::of_lot(&app, conn, &row, &wanted)
        })?;
        Ok(labels::svg(&placed[0]))
    })
    .await
}
