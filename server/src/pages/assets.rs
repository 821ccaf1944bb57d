//! What the pages need besides themselves, embedded: a style sheet, a script, and the labels' font.

use actix_web::{HttpRequest, HttpResponse, web};
use labels::Weight;
use std::collections::hash_map::DefaultHasher;
use std::hash::{Hash, Hasher};
use std::sync::LazyLock;

const STYLE: &str = include_str!("../../assets/gambrel.css");
const PAGES: &str = include_str!("../../assets/pages.css");
const DEEDS: &str = include_str!("../../assets/deeds.js");
const DRAFTS: &str = include_str!("../../assets/drafts.js");
const REFUSED: &str = include_str!("../../assets/refused.js");
const RECALL: &str = include_str!("../../assets/recall.js");
const COUNT: &str = include_str!("../../assets/count.js");
const COUNTER: &str = include_str!("../../assets/counter.js");
const COUNTER_STYLE: &str = include_str!("../../assets/counter.css");
const CAMERA: &str = include_str!("../../assets/camera.js");
const BREAK_DOWN: &str = include_str!("../../assets/break-down.js");
const BREAK_DOWN_SCALE: &str = include_str!("../../assets/break-down-scale.js");
const BREAK_DOWN_END: &str = include_str!("../../assets/break-down-end.js");
const BREAK_DOWN_STYLE: &str = include_str!("../../assets/break-down.css");
const ODD: &str = include_str!("../../assets/odd.js");
const PLACE: &str = include_str!("../../assets/place.js");
const WAITING: &str = include_str!("../../assets/waiting.js");
const WAITING_PAGE: &str = include_str!("../../assets/waiting-page.js");
const WORKER: &str = include_str!("../../assets/worker.js");
const WEIGHTS: &str = include_str!("../../assets/weights.js");
const BENCH: &str = include_str!("../../assets/bench.js");
const LISTS: &str = include_str!("../../assets/lists.js");
const CODES: &str = include_str!("../../assets/codes.js");
const GUEST_STYLE: &str = include_str!("../../assets/guest.css");
const PAPERS: &str = include_str!("../../assets/papers.js");
const SCRIPT: &str = include_str!("../../assets/gambrel.js");

struct Asset {
    name: &'static str,
    kind: &'static str,
    body: &'static [u8],
    /// Changes when the body does.
    tag: String,
}

static ASSETS: LazyLock<[Asset; 27]> = LazyLock::new(|| {
    [
        ("gambrel.css", "text/css; charset=utf-8", STYLE.as_bytes()),
        ("pages.css", "text/css; charset=utf-8", PAGES.as_bytes()),
        (
            "gambrel.js",
            "text/javascript; charset=utf-8",
            SCRIPT.as_bytes(),
        ),
        (
            "papers.js",
            "text/javascript; charset=utf-8",
            PAPERS.as_bytes(),
        ),
        (
            "deeds.js",
            "text/javascript; charset=utf-8",
            DEEDS.as_bytes(),
        ),
        (
            "drafts.js",
            "text/javascript; charset=utf-8",
            DRAFTS.as_bytes(),
        ),
        (
            "refused.js",
            "text/javascript; charset=utf-8",
            REFUSED.as_bytes(),
        ),
        (
            "recall.js",
            "text/javascript; charset=utf-8",
            RECALL.as_bytes(),
        ),
        (
            "count.js",
            "text/javascript; charset=utf-8",
            COUNT.as_bytes(),
        ),
        (
            "break-down.js",
            "text/javascript; charset=utf-8",
            BREAK_DOWN.as_bytes(),
        ),
        (
            "break-down-scale.js",
            "text/javascript; charset=utf-8",
            BREAK_DOWN_SCALE.as_bytes(),
        ),
        (
            "break-down-end.js",
            "text/javascript; charset=utf-8",
            BREAK_DOWN_END.as_bytes(),
        ),
        (
            "break-down.css",
            "text/css; charset=utf-8",
            BREAK_DOWN_STYLE.as_bytes(),
        ),
        (
            "weights.js",
            "text/javascript; charset=utf-8",
            WEIGHTS.as_bytes(),
        ),
        (
            "bench.js",
            "text/javascript; charset=utf-8",
            BENCH.as_bytes(),
        ),
        ("odd.js", "text/javascript; charset=utf-8", ODD.as_bytes()),
        (
            "place.js",
            "text/javascript; charset=utf-8",
            PLACE.as_bytes(),
        ),
        (
            "waiting.js",
            "text/javascript; charset=utf-8",
            WAITING.as_bytes(),
        ),
        (
            "waiting-page.js",
            "text/javascript; charset=utf-8",
            WAITING_PAGE.as_bytes(),
        ),
        ("regular.ttf", "font/ttf", Weight::Regular.font_file()),
        ("bold.ttf", "font/ttf", Weight::Bold.font_file()),
        (
            "counter.js",
            "text/javascript; charset=utf-8",
            COUNTER.as_bytes(),
        ),
        (
            "camera.js",
            "text/javascript; charset=utf-8",
            CAMERA.as_bytes(),
        ),
        (
            "counter.css",
            "text/css; charset=utf-8",
            COUNTER_STYLE.as_bytes(),
        ),
        (
            "lists.js",
            "text/javascript; charset=utf-8",
            LISTS.as_bytes(),
        ),
        (
            "codes.js",
            "text/javascript; charset=utf-8",
            CODES.as_bytes(),
        ),
        (
            "guest.css",
            "text/css; charset=utf-8",
            GUEST_STYLE.as_bytes(),
        ),
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

/// What keeps pages for when the network is away: it stands at the root, as only so it may see all of them.
pub async fn worker() -> HttpResponse {
    HttpResponse::Ok()
        .content_type("text/javascript; charset=utf-8")
        .insert_header(("Content-Security-Policy", super::answer::POLICY))
        .insert_header(("Cache-Control", "no-cache"))
        .insert_header(("X-Content-Type-Options", "nosniff"))
        .body(WORKER)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_worker_keeps_every_file_that_a_page_of_the_bench_needs() {
        for asset in ASSETS.iter().filter(|asset| asset.name != "guest.css") {
            let named = format!("\"/assets/{}\"", asset.name);
            assert!(WORKER.contains(&named), "{named}");
        }
    }
}
