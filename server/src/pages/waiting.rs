//! What waits on a device while the network is away: the page holds only its words; what waits stands in the browser.

use super::spoken::Words;
use crate::caller::Asking;
use crate::error::Result;
use actix_web::HttpResponse;
use askama::Template;

#[derive(Template)]
#[template(path = "waiting.html")]
struct WaitingPage {
    words: Words,
}

/// The page.
pub async fn page(asking: Asking) -> HttpResponse {
    let speech = asking.speech();
    super::page(speech, made(Words(speech)))
}

fn made(words: Words) -> Result<WaitingPage> {
    Ok(WaitingPage { words })
}
