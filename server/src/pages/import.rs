//! A table from a spreadsheet: chosen or pasted, tried, looked at line by line, taken over whole.

use super::lists::{is_imported, named};
use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::lists::fields;
use crate::read::names::Names;
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;
use domain::right::Right;
use serde::Deserialize;
use store::Conn;

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
