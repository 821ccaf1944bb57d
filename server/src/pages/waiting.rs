//! What waits on a device while the network is away: the page holds only its words and the kitchen's hour; what waits
//! stands in the browser.

use super::spoken::Words;
use crate::caller::Asking;
use crate::rooms::blocking;
use actix_web::HttpResponse;
use askama::Template;

#[derive(Template)]
#[template(path = "waiting.html")]
struct WaitingPage {
    words: Words,
    /// The kitchen's moment, in milliseconds since 1970: that of the device may be another.
    now: i64,
    /// The kitchen's zone; nothing where the record cannot be read, for what waits is shown all the same.
    zone: String,
}

/// The page.
pub async fn page(asking: Asking) -> HttpResponse {
    let speech = asking.speech();
    let made = blocking(move || {
        let app = asking.caller();
        let standing = app.store.read(|conn| app.standing_seen(conn)).ok();
        Ok(WaitingPage {
            words: Words(speech),
            now: app.now().timestamp_millis(),
            zone: standing.map_or_else(String::new, |of| of.kitchen.zone.name().to_owned()),
        })
    });
    super::page(speech, made.await)
}
