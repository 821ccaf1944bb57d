//! The rules that the kitchen works under: each row with what it says, how far it was read and where. What nobody
//! has confirmed is a list of work: somebody reads the law's own text and says what stands there.

use super::done::Done;
use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::read::law;
use crate::read::names::Names;
use actix_web::{HttpRequest, HttpResponse};
use askama::Template;
use domain::right::Right;
use serde::Deserialize;
use serde_json::json;
use store::Conn;

/// The most rows of one page.
const MOST: usize = 20;

#[derive(Template)]
#[template(path = "rules.html")]
struct RulesPage {
    words: Words,
    place: String,
    open: usize,
    only_open: bool,
    q: String,
    rows: Vec<Row>,
    next: Option<String>,
    may: bool,
    done: Option<Done>,
}

/// A row, ready to be read.
struct Row {
    id: String,
    says: String,
    mark: String,
    cite: String,
    also: String,
    /// Where it was read: an address, or a name.
    sources: Vec<(String, bool)>,
    is_open: bool,
    /// What is sent when somebody confirms it.
    body: String,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    /// Words, or the name of a row.
    q: Option<String>,
    /// `open`: only those that nobody has confirmed.
    show: Option<String>,
    after: Option<usize>,
    /// The deed that was just done.
    did: Option<String>,
}

/// The page.
pub async fn page(request: HttpRequest, asking: Asking) -> HttpResponse {
    super::asked(&request, asking, read).await
}

fn read(app: &Caller<'_>, conn: &mut Conn, asked: &Asked) -> Result<RulesPage> {
    let names = Names::load(app, conn)?;
    let words = Words::of(&names);
    let only_open = asked.show.as_deref() == Some("open");
    let q = asked.q.clone().unwrap_or_default();
    let wanted = q.trim().to_lowercase();
    let mut all = law::of_kitchen(app, conn, false, words.lang())?.rows;
    let trade = law::of_trade(app, words.lang());
    let known: std::collections::BTreeSet<String> = all.iter().map(|row| row.id.clone()).collect();
    all.extend(trade.into_iter().filter(|row| !known.contains(&row.id)));
    let profile = app.kitchen(conn)?.entry.profile.0;
    // What the house settled for itself, or the trade does without a source, stands in no law to be read.
    let is_open = |id: &str, mark: &str| known.contains(id) && matches!(mark, "READ-2" | "MEMORY");
    let open = all.iter().filter(|row| is_open(&row.id, &row.mark)).count();
    all.retain(|row| {
        let text = format!(
            "{} {} {}",
            row.id,
            row.says,
            row.cite.as_deref().unwrap_or("")
        );
        (!only_open || is_open(&row.id, &row.mark)) && text.to_lowercase().contains(&wanted)
    });
    let after = asked.after.unwrap_or(0);
    let more = all.len() > after.saturating_add(MOST);
    let show = if only_open { "open" } else { "" };
    let rows = all.into_iter().skip(after).take(MOST).map(|row| Row {
        is_open: is_open(&row.id, &row.mark),
        mark: words.t(mark(&row.mark)),
        cite: row.cite.unwrap_or_default(),
        also: row.also.join(", "),
        sources: row
            .sources
            .into_iter()
            .map(|source| {
                let is_address = source.starts_with("https://") || source.starts_with("http://");
                (source, is_address)
            })
            .collect(),
        body: json!({ "row": row.id }).to_string(),
        id: row.id,
        says: row.says,
    });
    let rows: Vec<Row> = rows.collect();
    Ok(RulesPage {
        place: words.headed(profile.says()),
        open,
        only_open,
        next: more.then(|| {
            format!(
                "/rules?show={show}&q={}&after={}",
                encoded(&q),
                after + MOST
            )
        }),
        q,
        rows,
        may: app.who.may(Right::Confirm),
        done: Done::of(app, conn, &words, asked.did.as_deref(), "/rules?show=open")?,
        words,
    })
}

/// How far a row was read, in words.
fn mark(mark: &str) -> &'static str {
    match mark {
        "READ" => "page-mark-read",
        "READ-2" => "page-mark-second-hand",
        "MEMORY" => "page-mark-memory",
        "DERIVED" => "page-mark-derived",
        "OURS" | "house" => "page-mark-house",
        "confirmed by the kitchen" => "page-mark-kitchen",
        _ => "page-mark-practice",
    }
}

/// A text as a part of an address.
fn encoded(text: &str) -> String {
    let each = text.bytes().map(|byte| match byte {
        b'a'..=b'z' | b'A'..=b'Z' | b'0'..=b'9' | b'-' | b'.' | b'_' => {
            char::from(byte).to_string()
        }
        _ => format!("%{byte:02X}"),
    });
    each.collect()
}
