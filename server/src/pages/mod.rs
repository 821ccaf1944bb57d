//! The pages: server-rendered, plain words, large type.

use crate::error::{Problem, respond};
use actix_web::http::StatusCode;
use actix_web::{HttpRequest, HttpResponse, web};

/// Registers the pages.
pub fn register(_config: &mut web::ServiceConfig) {}

/// 404 for a path that is none.
pub async fn nothing_here(request: HttpRequest) -> HttpResponse {
    let detail = format!("There is nothing at {}.", request.path());
    respond(&Problem::new(
        StatusCode::NOT_FOUND,
        "not-found",
        "Not found",
        detail,
    ))
}
