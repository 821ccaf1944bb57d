//! What the pages need besides themselves, embedded: one style sheet and the label's own font.

use actix_web::{HttpResponse, web};
use labels::Weight;

const STYLE: &str = include_str!("../../assets/gambrel.css");

/// One of them.
pub async fn get(name: web::Path<String>) -> HttpResponse {
    let (kind, body): (&str, &'static [u8]) = match name.as_str() {
        "gambrel.css" => ("text/css; charset=utf-8", STYLE.as_bytes()),
        "regular.ttf" => ("font/ttf", Weight::Regular.font_file()),
        "bold.ttf" => ("font/ttf", Weight::Bold.font_file()),
        _ => return HttpResponse::NotFound().finish(),
    };
    HttpResponse::Ok()
        .content_type(kind)
        .insert_header(("Cache-Control", "public, max-age=3600"))
        .body(body)
}
