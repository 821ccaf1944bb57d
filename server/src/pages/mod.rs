//! The pages: server-rendered, plain words, large type. They only read.

mod assets;
mod format;
mod lot;
mod scan;
mod search;
mod tree;

use crate::error::{Error, Problem, respond};
use actix_web::http::StatusCode;
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;

/// Registers the pages.
pub fn register(config: &mut web::ServiceConfig) {
    config
        .route("/", web::get().to(|| async { see_other("/scan") }))
        .route("/assets/{name}", web::get().to(assets::get))
        .route("/scan", web::get().to(scan::page))
        .route("/lots", web::get().to(search::lots))
        .route("/lots/{code}", web::get().to(lot::page))
        .route("/lots/{code}/label.svg", web::get().to(lot::label))
        .route("/animals", web::get().to(search::animals))
        .route("/animals/{id}", web::get().to(lot::animal))
        // What the square code of a label holds.
        .route("/{l:[Ll]}/{code}", web::get().to(scan::lot_of_label))
        .route(
            "/{l:[Ll]}/{code}/{pack}",
            web::get().to(scan::pack_of_label),
        );
}

/// 404 for a path that is none.
pub async fn nothing_here(request: HttpRequest) -> HttpResponse {
    let detail = format!("There is nothing at {}.", request.path());
    let problem = Problem::new(StatusCode::NOT_FOUND, "not-found", "Not found", detail);
    if request.path().starts_with("/api") {
        respond(&problem)
    } else {
        trouble(&Error::from(problem))
    }
}

#[derive(Template)]
#[template(path = "trouble.html")]
struct Trouble {
    title: String,
    detail: String,
}

/// A page that says what is wrong.
fn trouble(error: &Error) -> HttpResponse {
    if let Error::Store(error) = error {
        eprintln!("gambrel: {error}");
    }
    let problem = error.problem();
    let status = StatusCode::from_u16(problem.status).unwrap_or(StatusCode::INTERNAL_SERVER_ERROR);
    rendered(
        status,
        &Trouble {
            title: problem.title,
            detail: problem.detail,
        },
    )
}

/// A page, or the page that says why there is none.
fn page(made: Result<impl Template, Error>) -> HttpResponse {
    match made {
        Ok(template) => rendered(StatusCode::OK, &template),
        Err(error) => trouble(&error),
    }
}

fn rendered(status: StatusCode, template: &impl Template) -> HttpResponse {
    match template.render() {
        Ok(html) => HttpResponse::build(status)
            .content_type("text/html; charset=utf-8")
            .insert_header((
                "Content-Security-Policy",
                "default-src 'self'; frame-ancestors 'none'",
            ))
            .insert_header(("X-Content-Type-Options", "nosniff"))
            .insert_header(("Cache-Control", "no-store"))
            .body(html),
        Err(error) => HttpResponse::InternalServerError().body(error.to_string()),
    }
}

fn see_other(to: &str) -> HttpResponse {
    HttpResponse::SeeOther()
        .insert_header(("Location", to))
        .finish()
}
