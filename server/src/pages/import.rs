//! A table from a spreadsheet: chosen or pasted, tried, looked at line by line, taken over whole.

use super::lists::{is_imported, named};
use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::lists::fields::{self, Field};
use crate::lists::{List, cells};
use crate::read::names::Names;
use crate::read::starters;
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;
use domain::right::Right;
use serde::Deserialize;
use serde_json::{Value, json};
use store::Conn;
use words::Speech;

#[derive(Template)]
#[template(path = "import.html")]
struct ImportPage {
    words: Words,
    title: String,
    list: &'static str,
    columns: Vec<(&'static str, String)>,
    may: bool,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Nothing {}

/// The page.
pub async fn page(request: HttpRequest, list: web::Path<String>, asking: Asking) -> HttpResponse {
    super::asked(&request, asking, move |app, conn, _: &Nothing| {
        read(app, conn, &list)
    })
    .await
}

fn read(app: &Caller<'_>, conn: &mut Conn, list: &str) -> Result<ImportPage> {
    let path = format!("/lists/{list}/import");
    let list = named(list)?;
    if !is_imported(list) {
        return Err(super::nowhere(&path));
    }
    let words = Words::of(&Names::load(app, conn)?);
    let columns = fields::of(list).iter();
    Ok(ImportPage {
        title: words.headed(list.says()),
        list: list.as_str(),
        columns: columns
            .map(|field| {
                let heading = super::field_words::heading(field.name);
                (field.column(), words.t(heading))
            })
            .collect(),
        may: app.who.may(Right::SetUp),
        words,
    })
}

/// A table to begin with: the fields that are asked for most, in the reader's words, and a row or two to write over.
pub async fn sample(asking: Asking, list: web::Path<String>) -> HttpResponse {
    let speech = asking.speech();
    let path = format!("/lists/{list}/sample.csv");
    let known = named(&list).ok().filter(|list| is_imported(*list));
    let Some(list) = known else {
        return super::trouble(speech, &super::nowhere(&path));
    };
    let name = format!("attachment; filename=\"{}.csv\"", list.as_str());
    HttpResponse::Ok()
        .content_type("text/csv; charset=utf-8")
        .insert_header(("Content-Disposition", name))
        .insert_header(("X-Content-Type-Options", "nosniff"))
        .insert_header(("Cache-Control", "no-store"))
        .body(sample_of(list, speech))
}

/// The fields of a product that a table usually has.
const USUAL: [&str; 12] = [
    "code",
    "names.en",
    "names.fr",
    "kind",
    "species",
    "raw",
    "allergens",
    "storage",
    "keep.days",
    "keep.from",
    "keep.day_one_counts",
    "for_sale",
];

/// Two products of the starter list; of anything else one line that names nobody.
fn sample_of(list: List, speech: Speech) -> String {
    let is_usual = |field: &&Field| list != List::Products || USUAL.contains(&field.name);
    let columns: Vec<&Field> = fields::of(list).iter().filter(is_usual).collect();
    let rows: Vec<Value> = match list {
        List::Products => starters::bodies(&["pork-belly", "fennel-sausage"]),
        List::Places => vec![json!({ "code": "cooler-9", "name": "…", "kind": "storage",
            "limits": { "below_celsius": 4 } })],
        List::Farms => vec![json!({ "code": "XYZ", "name": "…", "country": "US" })],
        _ => vec![json!({ "code": "xyz", "number": "123", "name": "…", "country": "US" })],
    };
    // The byte order mark tells a spreadsheet that accents are written as they are.
    let mut text = String::from("\u{feff}");
    let head = columns.iter();
    let head = head.map(|field| speech.text(super::field_words::heading(field.name)));
    text.push_str(&line(head));
    for row in &rows {
        text.push_str(&line(columns.iter().map(|field| {
            let value = cells::find(row, field.name);
            value.map_or_else(String::new, |value| cells::shown(field, value, speech))
        })));
    }
    text
}

/// A line of a table; semicolons part its cells, so that a comma may stand in a figure.
fn line(cells: impl Iterator<Item = String>) -> String {
    let cells = cells.map(|cell| match cell.contains([';', '"', '\n']) {
        true => format!("\"{}\"", cell.replace('"', "\"\"")),
        false => cell,
    });
    cells.collect::<Vec<_>>().join(";") + "\r\n"
}
