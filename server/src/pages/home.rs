//! The first page: scan something, or see what ends today.

use super::says::PageSays;
use super::spoken::Words;
use crate::caller::Asking;
use crate::read::due;
use crate::rooms::blocking;
use actix_web::HttpResponse;
use askama::Template;
use domain::moment::day_of;

/// The most lines of the list; the lots' page has all.
const MOST: usize = 30;

#[derive(Template)]
#[template(path = "home.html")]
struct Home {
    words: Words,
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
    stands: String,
    last_day: String,
    left: String,
    places: String,
}

/// What there is to do.
pub async fn page(asking: Asking) -> HttpResponse {
    let speech = asking.speech();
    let made = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| {
            let kitchen = app.kitchen(conn)?;
            let words = Words(app.speech(&kitchen));
            let today = day_of(app.now(), kitchen.zone);
            let (found, more) = due::by(&app, conn, today)?;
            let left_out = (more || found.len() > MOST).then(|| match more {
                true => words.t("page-many-more"),
                false => words.say(PageSays::More {
                    more: found.len() - MOST,
                }),
            });
            let line = |one: due::DuePacks| Line {
                past: one.last_day < today,
                stands: words.standing(one.last_day, today).unwrap_or_default(),
                last_day: words.day(one.last_day),
                left: format!("{}, {}", words.packs(one.packs), words.grams(one.left)),
                places: one.places.join(", "),
                code: one.code,
                shown: one.shown,
                name: one.name,
            };
            Ok(Home {
                words,
                kitchen: kitchen.entry.name.0.clone(),
                today: words.day(today),
                due: found.into_iter().take(MOST).map(line).collect(),
                left_out,
                before: today.succ_opt().unwrap_or(today).to_string(),
            })
        })
    });
    super::page(speech, made.await)
}
