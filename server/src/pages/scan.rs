//! The counter's page: one huge word.

use super::{format, see_other};
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
    shown: String,
    allergens: String,
    kind: &'static str,
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
    super::page(ask(&request, asking).await)
}

async fn ask(request: &HttpRequest, asking: Asking) -> Result<ScanPage> {
    let Asked { code } = query(request)?;
    let Some(code) = code.filter(|code| !code.trim().is_empty()) else {
        return Ok(ScanPage { answer: None });
    };
    blocking(move || {
        let app = asking.caller();
        app.store.look(|conn| {
            let currency = app.kitchen_lately(conn)?.entry.currency.0.clone();
            let scan = read::scan::scan(&app, conn, &code)?;
            let kind = match &scan.lot {
                Some(lot) => {
                    let row = read::lot_named(&app, conn, lot)?;
                    format::raw_or_ready(&*app.product(conn, row.version_id)?)
                }
                None => "",
            };
            Ok(ScanPage {
                answer: Some(answer(scan, kind, &code, &currency)),
            })
        })
    })
    .await
}

fn answer(scan: ScanRead, kind: &'static str, code: &str, currency: &str) -> Answer {
    let known = scan.lot.map(|lot| {
        let name = scan.name.unwrap_or_default();
        let shown = format::shown(&lot);
        Known {
            title: match scan.pack {
                Some(pack) => format!("{name}, pack {pack}"),
                None => name,
            },
            whole_lot: scan.pack.is_none(),
            allergens: format::allergens(&scan.allergens),
            kind,
            use_by: scan
                .use_by
                .map_or("No date".into(), |day| format::day(day.0)),
            price: scan
                .price_minor
                .map(|minor| format!("{}.{:02} {currency}", minor / 100, minor % 100)),
            lot,
            shown,
        }
    });
    Answer {
        word: format::plain(&scan.verdict).to_uppercase(),
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
