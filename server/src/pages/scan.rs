//! The counter's page: one huge word.

use super::done::Done;
use super::says::PageSays;
use super::see_other;
use super::spoken::Words;
use crate::caller::Asking;
use crate::error::Result;
use crate::read;
use crate::rooms::{Room, blocking, within};
use crate::routes::any_query;
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;
use domain::counter::{self, ScanView};
use domain::right::Right;
use domain::words::Verdict;
use serde::Deserialize;
use serde_json::json;

#[derive(Template)]
#[template(path = "scan.html")]
struct ScanPage {
    words: Words,
    answer: Option<Answer>,
    done: Option<Done>,
}

struct Answer {
    /// The verdict as it is spelt: its shape and pattern go by it.
    verdict: String,
    word: String,
    /// Is it too long for the largest letters?
    long: bool,
    says: String,
    asked: String,
    pack: Option<Known>,
    /// What selling it is, where it may be sold: the body of the deed.
    sells: Option<String>,
}

/// What is known of what was scanned.
struct Known {
    lot: String,
    title: String,
    /// The words that lead to the lot.
    link: String,
    allergens: String,
    kind: String,
    kind_class: &'static str,
    species: String,
    use_by: String,
    price: Option<String>,
    whole_lot: bool,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    code: Option<String>,
    did: Option<String>,
}

/// The verdict on what was scanned; without a code, the field alone.
pub async fn page(request: HttpRequest, asking: Asking) -> HttpResponse {
    super::page(asking.speech(), ask(&request, asking).await)
}

async fn ask(request: &HttpRequest, asking: Asking) -> Result<ScanPage> {
    let Asked { code, did } = any_query(request)?;
    let sells = asking.who().may(Right::Sell);
    let Some(code) = code.filter(|code| !code.trim().is_empty()) else {
        return just_done(asking, did).await;
    };
    within(Room::Scan, move || {
        let app = asking.caller();
        app.store.look(|conn| {
            let kitchen = app.kitchen_lately(conn)?;
            let words = Words(app.speech(&kitchen));
            let currency = &kitchen.entry.currency.0;
            let scan = read::scan::scan(&app, conn, &kitchen, &code)?;
            let mut answer = answer(&words, &scan, &code, currency);
            answer.sells = answer.sells.filter(|_| sells);
            Ok(ScanPage {
                words,
                answer: Some(answer),
                done: None,
            })
        })
    })
    .await
}

fn answer(words: &Words, scan: &ScanView, code: &str, currency: &str) -> Answer {
    let verdict = scan.answer.verdict;
    Answer {
        long: matches!(
            verdict,
            Verdict::SellToday | Verdict::NotForSale | Verdict::Unknown
        ),
        word: words.say(verdict.says()),
        verdict: verdict.to_string(),
        says: words.say(scan.answer.says.clone()),
        sells: sells(scan),
        asked: code.trim().chars().take(80).collect(),
        pack: scan
            .known
            .as_ref()
            .map(|known| told(words, known, currency)),
    }
}

/// The counter's field alone, or with what was just done there.
async fn just_done(asking: Asking, did: Option<String>) -> Result<ScanPage> {
    let words = Words(asking.speech());
    let done = match did {
        None => None,
        Some(did) => {
            blocking(move || {
                let app = asking.caller();
                app.store
                    .read(|conn| Done::of(&app, conn, &words, Some(did.as_str()), "/scan"))
            })
            .await?
        }
    };
    Ok(ScanPage {
        words,
        answer: None,
        done,
    })
}

/// The deed that sells a pack which may be sold.
fn sells(scan: &ScanView) -> Option<String> {
    let known = scan.known.as_ref()?;
    let may = matches!(scan.answer.verdict, Verdict::Sell | Verdict::SellToday);
    let pack = known.pack.filter(|_| may)?;
    let lot = known.lot.code.to_string();
    Some(json!({ "kind": "sell", "lot": lot, "pack": pack }).to_string())
}

fn told(words: &Words, known: &counter::Known, currency: &str) -> Known {
    let lot = &known.lot;
    let name = lot.product.name(words.lang()).to_owned();
    let price = known.price_minor();
    Known {
        title: match known.pack {
            Some(pack) => words.say(PageSays::PackOf { name, pack }),
            None => name,
        },
        whole_lot: known.pack.is_none(),
        allergens: words.allergens(lot),
        kind: words.raw_or_ready(lot),
        kind_class: if lot.is_called_ready() { "ready" } else { "" },
        species: words.species(&lot.species),
        use_by: known
            .use_by()
            .map_or_else(|| words.t("page-no-date"), |day| words.day(day)),
        // An empty pack costs nothing, and has no price.
        price: price
            .filter(|minor| *minor > 0)
            .map(|minor| words.money(minor, currency)),
        link: words.say(PageSays::ToLot {
            lot: lot.code.shown(),
        }),
        lot: lot.code.to_string(),
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
