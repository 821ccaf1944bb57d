//! The first page: scan something, or see what ends today.

use super::format;
use crate::app::App;
use crate::blocking::blocking;
use crate::read::due;
use actix_web::{HttpResponse, web};
use askama::Template;
use domain::moment::day_of;

/// The most lines of the list; the lots' page has all.
const MOST: usize = 30;

#[derive(Template)]
#[template(path = "home.html")]
struct Home {
    kitchen: String,
    today: String,
    due: Vec<Line>,
    /// How many lines are left out, in words.
    left_out: Option<String>,
    /// Tomorrow, for the page with all of them.
    before: String,
}

struct Line {
    code: String,
    shown: String,
    name: String,
    past: bool,
    stands: &'static str,
    last_day: String,
    left: String,
    places: String,
}

/// What there is to do.
pub async fn page(app: web::Data<App>) -> HttpResponse {
    let made = blocking(move || {
        app.store.read(|conn| {
            let kitchen = app.kitchen(conn)?;
            let today = day_of(app.now(), kitchen.zone);
            let (found, more) = due::by(&app, conn, today)?;
            let left_out = (more || found.len() > MOST).then(|| match more {
                true => "There are many more.".to_owned(),
                false => format!("And {} more.", found.len() - MOST),
            });
            let line = |one: due::Due| Line {
                past: one.last_day < today,
                stands: format::standing(one.last_day, today).unwrap_or_default(),
                last_day: format::day(one.last_day),
                left: format!(
                    "{}, {}",
                    format::count(one.packs, "pack", "packs"),
                    one.left
                ),
                places: one.places.join(", "),
                code: one.code,
                shown: one.shown,
                name: one.name,
            };
            Ok(Home {
                kitchen: kitchen.entry.name.0.clone(),
                today: format::day(today),
                due: found.into_iter().take(MOST).map(line).collect(),
                left_out,
                before: today.succ_opt().unwrap_or(today).to_string(),
            })
        })
    });
    super::page(made.await)
}
