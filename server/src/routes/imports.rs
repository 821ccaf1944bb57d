//! The calls that take a table of entries over into a list, or try it.

use super::{Api, query};
use crate::body::{TABLES, whole};
use crate::caller::Asking;
use crate::error::{Error, Problem, Result};
use crate::lists::import::{self, Report};
use crate::lists::says::ImportSays;
use crate::lists::table::{LARGEST, Table, table as read_table};
use crate::lists::{Entry, List, fields};
use crate::problems::TitleSays;
use crate::rooms::{Room, within};
use crate::wire::answers::{ImportRead, import_read};
use crate::wire::lists::{AbattoirEntry, FarmEntry, PlaceEntry, ProductEntry, SupplierEntry};
use actix_web::http::{StatusCode, header};
use actix_web::{HttpRequest, HttpResponse, web};
use domain::right::Right;
use serde::Deserialize;
use std::collections::BTreeMap;
use utoipa::IntoParams;

/// Adds them.
pub fn add(api: &mut Api) {
    table::<ProductEntry>(api, "/api/products/import");
    table::<FarmEntry>(api, "/api/farms/import");
    table::<SupplierEntry>(api, "/api/suppliers/import");
    table::<AbattoirEntry>(api, "/api/abattoirs/import");
    table::<PlaceEntry>(api, "/api/places/import");
}

#[derive(Debug, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
struct ImportQuery {
    /// true: only tell line by line what would become of it
    r#try: Option<bool>,
}

fn table<E: Entry + Send + 'static>(api: &mut Api, path: &'static str) {
    let columns: Vec<&str> = fields::of(E::LIST)
        .iter()
        .map(|field| field.column())
        .collect();
    let says = format!(
        "A table of {}, all of it or nothing; its first line names the columns: {}",
        E::LIST.as_str(),
        columns.join(", ")
    );
    api.post(path, Right::SetUp, &says, web::post().to(take::<E>))
        .reads::<ImportQuery>()
        .takes_files(&["text/csv"])
        .answers::<ImportRead>(&[200], "Line by line what became of it, or would");
}

/// Headings in the screen's words become the fields' names; what they were called, by those.
fn named(list: List, table: &mut Table) -> BTreeMap<&'static str, String> {
    let mut called = BTreeMap::new();
    for nth in 0..table.columns.len() {
        if let Some(column) = crate::pages::column(list, &table.columns[nth], &table.columns) {
            let said = std::mem::replace(&mut table.columns[nth], column.to_owned());
            called.insert(column, said);
        }
    }
    called
}

async fn take<E: Entry + Send + 'static>(
    request: HttpRequest,
    asking: Asking,
    payload: web::Payload,
) -> Result<HttpResponse> {
    let is_tried = query::<ImportQuery>(&request)?.r#try.unwrap_or(false);
    let kind = request.headers().get(header::CONTENT_TYPE);
    let kind = kind.and_then(|kind| kind.to_str().ok()).unwrap_or_default();
    if kind.split(';').next().map(str::trim) != Some("text/csv") {
        let (status, title) = (StatusCode::UNSUPPORTED_MEDIA_TYPE, TitleSays::Table);
        return Err(Problem::new(status, "table", title, ImportSays::SendTable).into());
    }
    let too_large = || {
        let says = ImportSays::TooLarge {
            most: LARGEST / 1024,
        };
        let status = StatusCode::PAYLOAD_TOO_LARGE;
        Problem::new(status, "too-large", TitleSays::TooLarge, says).into()
    };
    let (bytes, held) = whole(&request, payload.into_inner(), &TABLES, too_large).await?;
    let read = within(Room::Write, move || {
        let mut table: Table = read_table(&bytes)?;
        let called = named(E::LIST, &mut table);
        drop(held);
        let app = asking.caller();
        let mut report: Report = import::take::<E>(&app, &table, is_tried)?;
        // Who wrote a heading in the screen's words reads it so again.
        for column in report.lines.iter_mut().flat_map(|line| &mut line.columns) {
            if let Some(said) = called.get(column.as_str()) {
                said.clone_into(column);
            }
        }
        let kitchen = app.store.look(|conn| app.kitchen(conn))?;
        Ok::<_, Error>(import_read(&report, is_tried, &app.speech(&kitchen)))
    });
    Ok(HttpResponse::Ok().json(read.await?))
}
