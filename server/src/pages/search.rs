//! The pages that find: lots and animals.

use super::page;
use crate::app::App;
use crate::error::Result;
use crate::read;
use crate::read::animals::AnimalsQuery;
use crate::read::find::LotsQuery;
use crate::routes::query;
use crate::serve::blocking;
use crate::wire::answers::AnimalRead;
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;

#[derive(Template)]
#[template(path = "lots.html")]
struct LotsPage {
    title: String,
    q: String,
    lots: Vec<Row>,
    next: Option<String>,
}

struct Row {
    code: String,
    shown: String,
    name: String,
    note: Option<String>,
    on_hand: String,
    use_by: String,
    place: String,
}

/// Lots, newest first.
pub async fn lots(request: HttpRequest, app: web::Data<App>) -> HttpResponse {
    page(find_lots(&request, app).await)
}

async fn find_lots(request: &HttpRequest, app: web::Data<App>) -> Result<LotsPage> {
    let asked: LotsQuery = query(request)?;
    blocking(move || {
        let found = read::find::lots(&app, &asked)?;
        let mut lots = Vec::with_capacity(found.lots.len());
        for lot in found.lots {
            let name = app.store.look(|conn| {
                let row = read::lot_named(&app, conn, &lot.code)?;
                let language = app.kitchen(conn)?.language().to_owned();
                Ok::<_, crate::error::Error>(
                    app.product(conn, row.version_id)?
                        .name(&language)
                        .to_owned(),
                )
            })?;
            let empty = lot.on_hand_grams.0 == domain::grams::Grams::ZERO;
            lots.push(Row {
                name,
                on_hand: if empty {
                    "–".into()
                } else {
                    lot.on_hand_grams.0.to_string()
                },
                use_by: lot.use_by.map_or("–".into(), |day| day.0.to_string()),
                place: lot.place.unwrap_or_else(|| "–".into()),
                code: lot.code,
                shown: lot.shown,
                note: lot.note,
            });
        }
        let q = asked.q.clone().unwrap_or_default();
        let title = if q.is_empty() {
            "Lots, newest first".into()
        } else {
            format!("Lots with “{q}”")
        };
        Ok(LotsPage {
            title,
            q,
            lots,
            next: found.next,
        })
    })
    .await
}

#[derive(Template)]
#[template(path = "animals.html")]
struct AnimalsPage {
    carcass: String,
    farm: String,
    animals: Vec<AnimalRead>,
}

/// Source animals, newest kill first.
pub async fn animals(request: HttpRequest, app: web::Data<App>) -> HttpResponse {
    page(find_animals(&request, app).await)
}

async fn find_animals(request: &HttpRequest, app: web::Data<App>) -> Result<AnimalsPage> {
    let asked: AnimalsQuery = query(request)?;
    blocking(move || {
        let animals = read::animals::list(&app, &asked)?.animals;
        let (carcass, farm) = (
            asked.carcass.clone().unwrap_or_default(),
            asked.farm.clone().unwrap_or_default(),
        );
        Ok(AnimalsPage {
            carcass,
            farm,
            animals,
        })
    })
    .await
}
