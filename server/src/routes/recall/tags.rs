//! The tags of everything that a recall holds, place by place as one walks.

use crate::app::App;
use crate::caller::Asking;
use crate::error::Result;
use crate::label_facts::{self, Wanted};
use crate::problems::LabelsSays;
use crate::read::LoadedFamily;
use crate::recall;
use crate::rooms::{Room, within};
use crate::routes::deeds::id;
use crate::routes::labels::{LabelsOf, PdfQuery, in_part, pdf};
use crate::routes::{Api, query};
use actix_web::{HttpRequest, HttpResponse, web};
use domain::lot::LotId;
use domain::right::Right;
use serde::Deserialize;
use std::collections::HashMap;
use store::family::Extent;

/// The label that such a tag is.
const TAG: &str = "hold";

/// Adds it.
pub fn add(api: &mut Api) {
    api.get(
        "/api/incidents/{id}/tags.pdf",
        Right::See,
        "The hold tags of everything that a recall holds: its places in the order in which one walks, each with its packs",
        web::get().to(tags),
    )
    .query("part", "Which part of more than 100 tags: 1, 2 …")
    .query("dpi", "Which printer: 203 or 300")
    .answers_file("application/pdf", "One page a tag");
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    part: Option<usize>,
    dpi: Option<u16>,
}

async fn tags(
    request: HttpRequest,
    shared: web::Data<App>,
    asking: Asking,
    path: web::Path<String>,
) -> Result<HttpResponse> {
    let of = id(&path)?;
    let asked: Asked = query(&request)?;
    let drawn = within(Room::Draw, move || {
        let app = asking.caller();
        app.store.read(|conn| {
            let facts = recall::of(&app, conn, of, None)?;
            let held = facts.held_by_place();
            if held.is_empty() {
                return Err(label_facts::nothing_to_label(LabelsSays::NothingHeld));
            }
            let codes: Vec<&str> = held.iter().map(|(lot, _)| lot.code.as_str()).collect();
            let rows = store::scope::lots_of_codes(conn, &codes)?;
            let keys: HashMap<String, i32> =
                rows.into_iter().map(|row| (row.code, row.id)).collect();
            let wanted: Vec<LabelsOf> = held
                .into_iter()
                .filter_map(|(lot, packs)| {
                    let wanted = Wanted {
                        packs: Some(packs),
                        template: Some(TAG.to_owned()),
                        dpi: asked.dpi,
                        ..Wanted::default()
                    };
                    let key = keys.get(&lot.code)?;
                    Some((LotId(*key), wanted))
                })
                .collect();
            let lots: Vec<i32> = keys.into_values().collect();
            let reading = LoadedFamily::load(&app, conn, &lots, Extent::ANCESTORS)?;
            in_part(&app, &reading, &wanted, asked.part)
        })
    })
    .await?;
    pdf(shared, drawn, PdfQuery::default()).await
}
