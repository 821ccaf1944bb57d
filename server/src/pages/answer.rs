//! How a page goes out: rendered, guarded by headers, or replaced by one that says what is wrong.

use super::spoken::Words;
use crate::app::App;
use crate::caller::{Asking, Caller};
use crate::error::{Error, Problem};
use crate::log::Refused;
use crate::problems::{RequestSays, ServiceSays, TitleSays};
use crate::pulse;
use crate::rooms::blocking;
use crate::routes::query;
use actix_web::error::{InternalError, UrlencodedError};
use actix_web::http::StatusCode;
use actix_web::{HttpRequest, HttpResponse, HttpResponseBuilder, web};
use askama::Template;
use serde::de::DeserializeOwned;
use store::Conn;
use words::Speech;

/// Nothing but our own files; the label's drawing carries one style of its own.
pub(super) const POLICY: &str = "default-src 'self'; img-src 'self' data:; style-src-attr 'unsafe-inline'; base-uri 'none'; \
                      form-action 'self'; frame-ancestors 'none'";

#[derive(Template)]
#[template(path = "trouble.html")]
struct Trouble {
    words: Words,
    title: String,
    detail: String,
    again: bool,
}

/// A page, or the page that says why there is none, in the reader's language.
pub fn page(speech: Speech, made: Result<impl Template, Error>) -> HttpResponse {
    match made {
        Ok(template) => rendered(HttpResponse::Ok(), &template, speech),
        Err(error) => trouble(speech, &error),
    }
}

/// A page of what the record holds, read in one snapshot away from those who wait at the door.
pub async fn from_record<T: Template + Send + 'static>(
    asking: Asking,
    read: impl FnOnce(&Caller<'_>, &mut Conn) -> Result<T, Error> + Send + 'static,
) -> HttpResponse {
    let speech = asking.speech();
    let made = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| read(&app, conn))
    });
    page(speech, made.await)
}

/// The same, of what its address asks.
pub async fn asked<Q: DeserializeOwned + Send + 'static, T: Template + Send + 'static>(
    request: &HttpRequest,
    asking: Asking,
    read: impl FnOnce(&Caller<'_>, &mut Conn, &Q) -> Result<T, Error> + Send + 'static,
) -> HttpResponse {
    match query::<Q>(request) {
        Ok(asked) => from_record(asking, move |app, conn| read(app, conn, &asked)).await,
        Err(error) => trouble(asking.speech(), &error),
    }
}

/// A page that says what is wrong.
pub fn trouble(speech: Speech, error: &Error) -> HttpResponse {
    if let Error::Store(error) = error {
        tracing::error!("{error}");
    }
    let problem = error.problem();
    let status = problem.status;
    let again = status == StatusCode::SERVICE_UNAVAILABLE;
    let mut response = HttpResponse::build(status);
    if let Some(seconds) = problem.again_in {
        response.insert_header(("Retry-After", seconds.to_string()));
    }
    let page = Trouble {
        words: Words(speech),
        title: speech.say(&problem.title),
        detail: speech.say(&problem.detail),
        again,
    };
    let mut response = rendered(response, &page, speech);
    response.extensions_mut().insert(Refused::from(&problem));
    response
}

/// A form that cannot be read: too large, cut off, or none.
pub fn no_form(error: &UrlencodedError, request: &HttpRequest) -> actix_web::Error {
    let app = request.app_data::<web::Data<App>>();
    let asked = crate::caller::language(request);
    let speech = app.map_or_else(Speech::default, |app| app.speech_lately(asked));
    let (status, slug, title, says) = match error {
        UrlencodedError::Overflow { .. } => (
            StatusCode::PAYLOAD_TOO_LARGE,
            "too-large",
            TitleSays::TooLarge,
            RequestSays::Unreadable,
        ),
        UrlencodedError::Payload(_) => (
            StatusCode::BAD_REQUEST,
            "cut-off",
            TitleSays::CutOff,
            RequestSays::CutOff,
        ),
        _ => (
            StatusCode::BAD_REQUEST,
            "unreadable",
            TitleSays::Unreadable,
            RequestSays::Unreadable,
        ),
    };
    let page = trouble(speech, &Problem::new(status, slug, title, says).into());
    InternalError::from_response(slug, page).into()
}

fn rendered(
    mut response: HttpResponseBuilder,
    template: &impl Template,
    speech: Speech,
) -> HttpResponse {
    match template.render().map(|html| with_doubt(html, speech)) {
        Ok(html) => response
            .content_type("text/html; charset=utf-8")
            .insert_header(("Content-Security-Policy", POLICY))
            .insert_header(("X-Content-Type-Options", "nosniff"))
            .insert_header(("Referrer-Policy", "same-origin"))
            .insert_header(("Cache-Control", "no-store"))
            .body(html),
        Err(error) => {
            tracing::error!("a page cannot be rendered: {error}");
            HttpResponse::InternalServerError().body("This page cannot be shown. See the log.")
        }
    }
}

/// While the clock is in doubt every page says so, before anything that goes by it.
fn with_doubt(html: String, speech: Speech) -> String {
    let Some(why) = pulse::clock_doubt() else {
        return html;
    };
    let says = |says: ServiceSays| escaped(&speech.say(&says.into()));
    let warning = format!(
        "<main><p class=\"warning\" role=\"alert\">{} {}</p>",
        says(why),
        says(ServiceSays::SetItRight)
    );
    html.replacen("<main>", &warning, 1)
}

/// A text as it stands in a page.
pub(super) fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
}

/// On to another page.
pub fn see_other(to: &str) -> HttpResponse {
    HttpResponse::SeeOther()
        .insert_header(("Location", to))
        .finish()
}
