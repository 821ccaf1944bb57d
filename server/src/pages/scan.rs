//! The counter's page: one huge word.

use super::see_other;
use crate::app::App;
use crate::error::Result;
use crate::read;
use crate::routes::query;
use crate::serve::blocking;
use crate::wire::answers::ScanRead;
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;
use serde::Deserialize;

#[derive(Template)]
#[template(path = "scan.html")]
struct ScanPage {
    scan: Option<ScanRead>,
    word: String,
    /// A shape for each verdict, so that colour never tells alone.
    mark: &'static str,
    price: Option<String>,
    raw: bool,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    code: Option<String>,
}

/// The verdict on what was scanned; without a code, the field alone.
pub async fn page(request: HttpRequest, app: web::Data<App>) -> HttpResponse {
    super::page(ask(&request, app).await)
}

async fn ask(request: &HttpRequest, app: web::Data<App>) -> Result<ScanPage> {
    let Asked { code } = query(request)?;
    let Some(code) = code.filter(|code| !code.trim().is_empty()) else {
        return Ok(ScanPage {
            scan: None,
            word: String::new(),
            mark: "",
            price: None,
            raw: false,
        });
    };
    blocking(move || {
        app.store.look(|conn| {
            let currency = app.kitchen(conn)?.entry.currency.0.clone();
            let scan = read::scan::scan(&app, conn, &code)?;
            Ok(ScanPage {
                word: scan.verdict.replace('-', " ").to_uppercase(),
                mark: mark(&scan.verdict),
                price: scan
                    .price_minor
                    .map(|minor| format!("{}.{:02} {currency}", minor / 100, minor % 100)),
                raw: scan.raw.unwrap_or(false),
                scan: Some(scan),
            })
        })
    })
    .await
}

fn mark(verdict: &str) -> &'static str {
    match verdict {
        "sell" => "✓",
        "sell-today" => "◔",
        "pull" => "✕",
        "hold" => "■",
        "gone" => "○",
        "not-for-sale" => "–",
        _ => "?",
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
