//! What the pages need besides themselves, embedded: a style sheet, a script, and the labels' font.

use actix_web::{HttpRequest, HttpResponse, web};
use labels::Weight;
use std::collections::hash_map::DefaultHasher;
use std::hash::{Hash, Hasher};
use std::sync::LazyLock;

const STYLE: &str = include_str!("../../assets/gambrel.css");
const PAGES: &str = include_str!("../../assets/pages.css");
const DEEDS: &str = include_str!("../../assets/deeds.js");
const BENCH: &str = include_str!("../../assets/bench.js");
const SCRIPT: &str = include_str!("../../assets/gambrel.js");

struct Asset {
    name: &'static str,
    kind: &'static str,
    body: &'static [u8],
    /// Changes when the body does.
    tag: String,
}

static ASSETS: LazyLock<[Asset; 7]> = LazyLock::new(|| {
    [
        ("gambrel.css", "text/css; charset=utf-8", STYLE.as_bytes()),
        ("pages.css", "text/css; charset=utf-8", PAGES.as_bytes()),
        (
            "gambrel.js",
            "text/javascript; charset=utf-8",
            SCRIPT.as_bytes(),
        ),
        (
            "deeds.js",
            "text/javascript; charset=utf-8",
            DEEDS.as_bytes(),
        ),
        (
            "bench.js",
            "text/javascript; charset=utf-8",
            BENCH.as_bytes(),
        ),
        ("regular.ttf", "font/ttf", Weight::Regular.font_file()),
        ("bold.ttf", "font/ttf", Weight::Bold.font_file()),
    ]
    .map(|(name, kind, body)| {
        let mut hasher = DefaultHasher::new();
        body.hash(&mut hasher);
        Asset {
            name,
            kind,
            body,
            tag: format!("\"{:016x}\"", hasher.finish()),
        }
    })
});

/// One of them; 304 where the browser has it already.
pub async fn get(request: HttpRequest, name: web::Path<String>) -> HttpResponse {
    let Some(asset) = ASSETS.iter().find(|asset| asset.name == name.as_str()) else {
        return HttpResponse::NotFound().finish();
    };
    let tags = request.headers().get("If-None-Match");
    let known = tags
        .and_then(|tags| tags.to_str().ok())
        .is_some_and(|tags| tags.contains(&asset.tag));
    let mut response = match known {
        true => HttpResponse::NotModified(),
        false => HttpResponse::Ok(),
    };
    response
        .content_type(asset.kind)
        .insert_header(("ETag", asset.tag.as_str()))
        // Letters stay as they are; style and script are asked for anew, and answered with nothing.
        .insert_header((
            "Cache-Control",
            match asset.kind {
                "font/ttf" => "max-age=2592000",
                _ => "no-cache",
            },
        ))
        .insert_header(("X-Content-Type-Options", "nosniff"));
    match known {
        true => response.finish(),
        false => response.body(asset.body),
    }
}
