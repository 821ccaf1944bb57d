//! The calls for the kitchen's lists: the same four for each.

use super::Api;
use crate::app::App;
use crate::body::Body;
use crate::caller::{Asking, Caller};
use crate::error::{Error, Problem, Result};
use crate::lists::entry::{self, Entry, EntryOutcome};
use crate::lists::kitchen;
use crate::lists::says::ListSays;
use crate::problems::TitleSays;
use crate::rooms::{Room, blocking, within};
use crate::wire::answers::{FindingRead, finding_read};
use crate::wire::lists::*;
use crate::wire::starters::StartersRead;
use actix_web::http::{StatusCode, header};
use actix_web::{HttpRequest, HttpResponse, web};
use domain::right::Right;
use serde::Serialize;
use serde_json::{Value, json};
use utoipa::ToSchema;

/// The whole of a list.
#[derive(Serialize, ToSchema)]
struct ListRead {
    /// Its entries, by code.
    #[schema(value_type = Vec<Object>)]
    entries: Vec<Value>,
}

/// Adds them.
pub fn add(api: &mut Api) {
    api.get(
        "/api/kitchen",
        Right::See,
        "The kitchen, with what is still missing",
        web::get().to(kitchen_get),
    )
    .answers::<KitchenEntry>(&[200], "The kitchen");
    api.put(
        "/api/kitchen",
        Right::SetUp,
        "Sets the kitchen up",
        web::put().to(kitchen_put),
    )
    .takes::<KitchenEntry>()
    .header(
        "If-Match",
        "The version that you have seen, once it is set up",
    )
    .answers::<KitchenEntry>(&[200], "The kitchen");
    api.get(
        "/api/starters",
        Right::See,
        "Products, cuts and cures of the trade to begin with",
        web::get().to(starters),
    )
    .answers::<StartersRead>(&[200], "By group, with what stands behind each");
    list::<FarmEntry>(api, "/api/farms", "/api/farms/{code}", "farms");
    list::<AbattoirEntry>(api, "/api/abattoirs", "/api/abattoirs/{code}", "abattoirs");
    list::<SupplierEntry>(api, "/api/suppliers", "/api/suppliers/{code}", "suppliers");
    list::<PlaceEntry>(api, "/api/places", "/api/places/{code}", "places");
    list::<ProductEntry>(api, "/api/products", "/api/products/{code}", "products");
    list::<RecipeEntry>(api, "/api/recipes", "/api/recipes/{code}", "recipes");
    list::<PrinterEntry>(api, "/api/printers", "/api/printers/{code}", "printers");
    list::<ProbeEntry>(api, "/api/probes", "/api/probes/{code}", "probes");
}

fn list<E: Entry + ToSchema + Send + 'static>(
    api: &mut Api,
    all: &'static str,
    one: &'static str,
    name: &str,
) {
    api.get(
        all,
        Right::See,
        &format!("All {name}"),
        web::get().to(get_all::<E>),
    )
    .answers::<ListRead>(&[200], "The list");
    api.post(
        all,
        Right::SetUp,
        &format!("Adds to the {name}"),
        web::post().to(post::<E>),
    )
    .takes::<E>()
    .answers::<E>(&[201, 200], "201 for a new one, 200 for the same again");
    api.get(
        one,
        Right::See,
        &format!("One of the {name}"),
        web::get().to(get_one::<E>),
    )
    .answers::<E>(&[200], "The entry; ETag is its version");
    api.put(
        one,
        Right::SetUp,
        &format!("Changes one of the {name}"),
        web::put().to(put::<E>),
    )
    .takes::<E>()
    .header("If-Match", "The version that you have seen")
    .answers::<E>(&[200], "The entry");
}

async fn get_all<E: Entry + 'static>(app: web::Data<App>) -> Result<HttpResponse> {
    let entries = blocking(move || {
        let rows = app
            .store
            .look(|conn| store::entries::all(conn, E::LIST.as_str()))?;
        rows.iter()
            .map(|row| parsed(&row.body))
            .collect::<Result<Vec<Value>>>()
    })
    .await?;
    Ok(HttpResponse::Ok().json(ListRead { entries }))
}

async fn get_one<E: Entry + 'static>(
    app: web::Data<App>,
    code: web::Path<String>,
) -> Result<HttpResponse> {
    let code = printable(code.into_inner(), E::LIST)?;
    let row = blocking(move || {
        let row = app
            .store
            .look(|conn| store::entries::get(conn, E::LIST.as_str(), &code))?;
        row.ok_or_else(|| entry::no_such_entry(E::LIST, &code))
    })
    .await?;
    Ok(written(StatusCode::OK, row.number, &parsed(&row.body)?))
}

async fn post<E: Entry + Send + 'static>(
    asking: Asking,
    Body(asked): Body<E>,
) -> Result<HttpResponse> {
    let (outcome, number, body) = within(Room::Write, move || {
        let app = asking.caller();
        let (outcome, number) = entry::add(&app, &asked)?;
        Ok((outcome, number, with_warnings(&app, &asked)?))
    })
    .await?;
    let status = if outcome == EntryOutcome::Written {
        StatusCode::CREATED
    } else {
        StatusCode::OK
    };
    Ok(written(status, number, &body))
}

async fn put<E: Entry + Send + 'static>(
    request: HttpRequest,
    asking: Asking,
    code: web::Path<String>,
    Body(asked): Body<E>,
) -> Result<HttpResponse> {
    let code = printable(code.into_inner(), E::LIST)?;
    let version = seen(&request)?.ok_or_else(entry::which_version)?;
    let (number, body) = within(Room::Write, move || {
        let app = asking.caller();
        let number = entry::change(&app, &code, &asked, version)?;
        Ok((number, with_warnings(&app, &asked)?))
    })
    .await?;
    Ok(written(StatusCode::OK, number, &body))
}

/// The entry as it was sent, with what it is warned of, if anything.
fn with_warnings<E: Entry>(app: &Caller<'_>, asked: &E) -> Result<Value> {
    let mut body = serde_json::to_value(asked).unwrap_or_default();
    let warnings: Vec<FindingRead> = app.store.look(|conn| {
        let found = asked.warnings(app, conn)?;
        let standing = app.standing(conn)?;
        let law = app.laws(&standing.confirmed);
        let law = law.of(standing.kitchen.entry.profile.0);
        let speech = app.speech(&standing.kitchen);
        let read = found.iter().map(|of| finding_read(of, &law.rows, &speech));
        Ok::<_, Error>(read.collect())
    })?;
    if !warnings.is_empty() {
        body["warnings"] = json!(warnings);
    }
    Ok(body)
}

async fn starters(asking: Asking) -> Result<HttpResponse> {
    let read = blocking(move || {
        let language = asking.speech().language.tag();
        let app = asking.caller();
        app.store
            .read(|conn| crate::read::starters::read(&app, conn, language))
    });
    Ok(HttpResponse::Ok().json(read.await?))
}

async fn kitchen_get(app: web::Data<App>) -> Result<HttpResponse> {
    let (number, entry, missing, set) = blocking(move || {
        app.store.look(|conn| {
            let number =
                store::entries::get(conn, "kitchen", "kitchen")?.map_or(0, |row| row.number);
            let kitchen = app.kitchen(conn)?;
            Ok((
                number,
                kitchen.entry.clone(),
                kitchen.missing(),
                kitchen.is_set,
            ))
        })
    })
    .await?;
    let mut body = serde_json::to_value(&entry).unwrap_or_default();
    body["missing"] = json!(missing);
    body["set_up"] = json!(set);
    Ok(written(StatusCode::OK, number, &body))
}

async fn kitchen_put(
    request: HttpRequest,
    app: web::Data<App>,
    Body(asked): Body<KitchenEntry>,
) -> Result<HttpResponse> {
    let version = seen(&request)?;
    let (number, asked) = within(Room::Write, move || {
        let number = kitchen::put(&app, &asked, version)?;
        if let Some(url) = &asked.public_url {
            app.hear(&url.0);
        }
        // Who may scan is looked up without asking the record.
        app.store.look(|conn| app.kitchen(conn))?;
        Ok((number, asked))
    })
    .await?;
    Ok(written(StatusCode::OK, number, &asked))
}

/// The version that `If-Match` names.
pub(super) fn seen(request: &HttpRequest) -> Result<Option<i32>> {
    let Some(value) = request.headers().get(header::IF_MATCH) else {
        return Ok(None);
    };
    let text = value
        .to_str()
        .unwrap_or("")
        .trim()
        .trim_start_matches("W/")
        .trim_matches('"');
    let number = text.trim_start_matches('v').parse().ok();
    number.map(Some).ok_or_else(|| {
        let detail = ListSays::NoVersion {
            text: text.to_owned(),
        };
        Problem::new(
            StatusCode::PRECONDITION_FAILED,
            "changed-meanwhile",
            TitleSays::ChangedMeanwhile,
            detail,
        )
        .into()
    })
}

/// A code in a path, as far as a database can be asked for it.
fn printable(code: String, list: crate::lists::List) -> Result<String> {
    if code.chars().any(char::is_control) {
        Err(entry::no_such_entry(list, &code))
    } else {
        Ok(code)
    }
}

fn written(status: StatusCode, version: i32, body: &impl Serialize) -> HttpResponse {
    HttpResponse::build(status)
        .insert_header((header::ETAG, format!("\"v{version}\"")))
        .json(body)
}

fn parsed(body: &str) -> Result<Value> {
    serde_json::from_str(body).map_err(|error| crate::app::damaged(&error))
}
