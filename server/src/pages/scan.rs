//! The counter's page: one huge word.

use super::says::PageSays;
use super::see_other;
use super::spoken::{Words, shown};
use crate::blocking::blocking;
use crate::caller::Asking;
use crate::error::Result;
use crate::read;
use crate::routes::query;
use crate::wire::answers::ScanRead;
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;
use serde::Deserialize;

#[derive(Template)]
#[template(path = "scan.html")]
struct ScanPage {
    words: Words,
    answer: Option<Answer>,
}

struct Answer {
    /// The verdict as the API spells it: its shape and pattern go by it.
    verdict: String,
    word: String,
    says: String,
    asked: String,
    pack: Option<Known>,
}

/// What is known of what was scanned.
struct Known {
    lot: String,
    title: String,
    /// The words that lead to the lot.
    link: String,
    allergens: String,
    kind: String,
    use_by: String,
    price: Option<String>,
    whole_lot: bool,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    code: Option<String>,
}

/// The verdict on what was scanned; without a code, the field alone.
pub async fn page(request: HttpRequest, asking: Asking) -> HttpResponse {
    super::page(asking.speech(), ask(&request, asking).await)
}

async fn ask(request: &HttpRequest, asking: Asking) -> Result<ScanPage> {
    let Asked { code } = query(request)?;
    let Some(code) = code.filter(|code| !code.trim().is_empty()) else {
        return Ok(ScanPage {
            words: Words(asking.speech()),
            answer: None,
        });
    };
    blocking(move || {
        let app = asking.caller();
        app.store.look(|conn| {
            let kitchen = app.kitchen_lately(conn)?;
            let words = Words(app.speech(&kitchen));
            let currency = &kitchen.entry.currency.0;
            let scan = read::scan::scan(&app, conn, &code)?;
            let kind = match &scan.lot {
                Some(lot) => {
                    let row = read::lot_named(&app, conn, lot)?;
                    words.raw_or_ready(&*app.product(conn, row.version_id)?)
                }
                None => String::new(),
            };
            Ok(ScanPage {
                words,
                answer: Some(answer(&words, scan, kind, &code, currency)),
            })
        })
    })
    .await
}

fn answer(words: &Words, scan: ScanRead, kind: String, code: &str, currency: &str) -> Answer {
    let known = scan.lot.map(|lot| {
        let name = scan.name.unwrap_or_default();
        Known {
            title: match scan.pack {
                Some(pack) => words.say(PageSays::PackOf { name, pack }),
                None => name,
            },
            whole_lot: scan.pack.is_none(),
            allergens: words.allergens(&scan.allergens),
            kind,
            use_by: scan
                .use_by
                .map_or_else(|| words.t("page-no-date"), |day| words.day(day.0)),
            price: scan.price_minor.map(|minor| words.money(minor, currency)),
            link: words.say(PageSays::ToLot { lot: shown(&lot) }),
            lot,
        }
    });
    Answer {
        word: words.word("Verdict", &scan.verdict),
        verdict: scan.verdict,
        says: scan.says,
        asked: code.trim().chars().take(80).collect(),
        pack: known,
    }
}

/// What a label's square code leads to.
pub async fn lot_of_label(path: web::Path<(String, String)>) -> HttpResponse {
    see_other(&format!("/scan?code={}", plain(&path.1)))
}

/// The same, with a pack.
pub async fn pack_of_label(path: web::Path<(String, String, String)>) -> HttpResponse {
    see_other(&format!("/scan?code={}/{}", plain(&path.1), plain(&path.2)))
}

/// Codes need no escaping; whatever else was sent is dropped.
fn plain(text: &str) -> String {
    text.chars()
        .filter(|letter| letter.is_ascii_alphanumeric() || *letter == '-')
        .collect()
}
