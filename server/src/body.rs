//! Reading a JSON body: what is wrong is answered by field, and nothing is half read.

use crate::door::unseen;
use crate::error::{Error, Problem};
use crate::problems::{RequestSays, TitleSays};
use crate::wire::unread::unread;
use actix_web::dev::Payload;
use actix_web::http::{StatusCode, header};
use actix_web::rt::time::timeout;
use actix_web::web::{Bytes, BytesMut};
use actix_web::{FromRequest, HttpMessage, HttpRequest};
use futures_util::StreamExt;
use futures_util::future::LocalBoxFuture;
use serde::de::DeserializeOwned;
use serde_json::error::Category;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::Duration;

/// The largest body, in bytes.
pub const LARGEST: usize = 1 << 20;

/// A JSON body, parsed.
#[derive(Debug)]
pub struct Body<T>(pub T);

impl<T: DeserializeOwned> FromRequest for Body<T> {
    type Error = Error;
    type Future = LocalBoxFuture<'static, Result<Self, Error>>;

    fn from_request(request: &HttpRequest, payload: &mut Payload) -> Self::Future {
        let is_json = request
            .headers()
            .get(header::CONTENT_TYPE)
            .and_then(|value| value.to_str().ok())
            .is_some_and(|value| {
                value
                    .split(';')
                    .next()
                    .unwrap_or("")
                    .trim()
                    .eq_ignore_ascii_case("application/json")
            });
        let (request, payload) = (request.clone(), payload.take());
        Box::pin(async move {
            if !is_json {
                return Err(Problem::new(
                    StatusCode::UNSUPPORTED_MEDIA_TYPE,
                    "not-json",
                    TitleSays::NotJson,
                    RequestSays::SendJson,
                )
                .into());
            }
            let (bytes, held) = whole(&request, payload, &BODIES, too_large).await?;
            // Whatever refuses the deed, its id stands in the log.
            request.extensions_mut().insert(Received(bytes.clone()));
            unseen::refuse(&bytes)?;
            let parsed = parse(&bytes).map(Body);
            drop(held);
            parsed
        })
    }
}

/// A body as it came, for the log of a refusal.
pub struct Received(Bytes);

impl Received {
    /// The id that it gives itself, if it is one.
    pub fn id(&self) -> Option<uuid::Uuid> {
        #[derive(serde::Deserialize)]
        struct OnlyId {
            id: uuid::Uuid,
        }
        let told: OnlyId = serde_json::from_slice(&self.0).ok()?;
        Some(told.id)
    }
}

/// How long a body may take to arrive.
const SLOWEST: Duration = Duration::from_secs(SLOWEST_SECONDS as u64);
const SLOWEST_SECONDS: usize = 10;

/// What bodies of one kind may hold: each, and all together that are arriving.
pub struct Share {
    held: AtomicUsize,
    each: usize,
    all: usize,
}

/// Deeds.
static BODIES: Share = Share::new(LARGEST, 16 << 20);
/// Tables: a spreadsheet of products or farms.
pub static TABLES: Share = Share::new(crate::lists::table::LARGEST, 8 << 20);
/// Papers that are kept with a deed.
pub static PAPERS: Share = Share::new(domain::paper::LARGEST, 24 << 20);
/// Photos. They have a share of their own: however many come, deeds are taken.
pub static PHOTOS: Share = Share::new(crate::photo::LARGEST, 24 << 20);

impl Share {
    const fn new(each: usize, all: usize) -> Share {
        Share {
            held: AtomicUsize::new(0),
            each,
            all,
        }
    }
}

/// The room that a body takes up while it arrives, and until it was looked at.
pub struct Held(&'static Share, usize);

impl Held {
    fn more(&mut self, bytes: usize) -> Result<(), Error> {
        self.1 += bytes;
        match self.0.held.fetch_add(bytes, Ordering::Relaxed) + bytes > self.0.all {
            true => Err(crate::rooms::busy()),
            false => Ok(()),
        }
    }
}

impl Drop for Held {
    fn drop(&mut self) {
        self.0.held.fetch_sub(self.1, Ordering::Relaxed);
    }
}

/// Takes in a body, as far as it may be long, in its time.
///
/// # Errors
/// What `too_large` says; 400 where it is cut off, 408 where it is slow, 503 where too much arrives at once.
pub async fn whole(
    request: &HttpRequest,
    payload: Payload,
    share: &'static Share,
    too_large: impl Fn() -> Error,
) -> Result<(Bytes, Held), Error> {
    let told = request.headers().get(header::CONTENT_LENGTH);
    let told = told.and_then(|length| length.to_str().ok()?.parse::<usize>().ok());
    if told.is_some_and(|told| told > share.each) {
        return Err(too_large());
    }
    let read = timeout(SLOWEST, taken_in(payload, share, too_large)).await;
    read.map_err(|_| too_slow())?
}

async fn taken_in(
    mut payload: Payload,
    share: &'static Share,
    too_large: impl Fn() -> Error,
) -> Result<(Bytes, Held), Error> {
    let mut held = Held(share, 0);
    let mut body = BytesMut::new();
    while let Some(part) = payload.next().await {
        let part = part.map_err(|_| {
            let (title, detail) = (TitleSays::CutOff, RequestSays::CutOff);
            Problem::new(StatusCode::BAD_REQUEST, "cut-off", title, detail)
        })?;
        if body.len() + part.len() > share.each {
            return Err(too_large());
        }
        held.more(part.len())?;
        body.extend_from_slice(&part);
    }
    Ok((body.freeze(), held))
}

fn too_large() -> Error {
    let status = StatusCode::PAYLOAD_TOO_LARGE;
    Problem::new(
        status,
        "too-large",
        TitleSays::TooLarge,
        RequestSays::TooLarge,
    )
    .into()
}

fn too_slow() -> Error {
    let seconds = SLOWEST_SECONDS;
    let (title, detail) = (TitleSays::TooSlow, RequestSays::TooSlow { seconds });
    Problem::new(StatusCode::REQUEST_TIMEOUT, "too-slow", title, detail).into()
}

/// Parses JSON, and names the field at fault.
pub fn parse<T: DeserializeOwned>(bytes: &[u8]) -> Result<T, Error> {
    if bytes
        .iter()
        .find(|byte| !byte.is_ascii_whitespace())
        .is_some_and(|first| *first != b'{' && *first != b'"')
    {
        // A struct would also be read from a list of its fields in order; nobody means that.
        serde_json::from_slice::<serde::de::IgnoredAny>(bytes)
            .map_err(|error| body_error(&error, String::new()))?;
        return Err(Problem::new(
            StatusCode::UNPROCESSABLE_ENTITY,
            "cannot-be",
            TitleSays::CannotBe,
            RequestSays::NoObject,
        )
        .into());
    }
    let mut json = serde_json::Deserializer::from_slice(bytes);
    let parsed = serde_path_to_error::deserialize(&mut json).map_err(|error| {
        let path = error.path().to_string();
        body_error(error.inner(), path)
    })?;
    json.end()
        .map_err(|error| body_error(&error, String::new()))?;
    Ok(parsed)
}

fn body_error(error: &serde_json::Error, path: String) -> Error {
    match error.classify() {
        Category::Data => {}
        Category::Eof => return not_json(RequestSays::EndsEarly),
        Category::Syntax | Category::Io => {
            let (line, column) = (error.line(), error.column());
            return not_json(RequestSays::NotJson { line, column });
        }
    }
    let text = error.to_string();
    let says = text.rsplit_once(" at line ");
    let unread = unread(says.map_or(text.as_str(), |(says, _)| says));
    let inside = if path == "." { "" } else { path.as_str() };
    let field = match unread.field {
        Some(name) if inside.is_empty() => name,
        Some(name) if inside == name || inside.ends_with(&format!(".{name}")) => inside.to_owned(),
        Some(name) => format!("{inside}.{name}"),
        None => inside.to_owned(),
    };
    let mut problem = Problem::new(
        StatusCode::UNPROCESSABLE_ENTITY,
        "cannot-be",
        TitleSays::CannotBe,
        unread.says,
    );
    problem.field = Some(field).filter(|field| !field.is_empty());
    problem.into()
}

fn not_json(says: RequestSays) -> Error {
    Problem::new(
        StatusCode::BAD_REQUEST,
        "not-json",
        TitleSays::NotJson,
        says,
    )
    .into()
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde::Deserialize;

    #[derive(Debug, Deserialize)]
    #[serde(deny_unknown_fields)]
    #[allow(dead_code, reason = "only parsed")]
    struct Outer {
        inputs: Vec<Inner>,
    }

    #[derive(Debug, Deserialize)]
    #[serde(deny_unknown_fields)]
    #[allow(dead_code, reason = "only parsed")]
    struct Inner {
        grams: crate::wire::Weight,
    }

    fn check(json: &[u8], status: u16, field: Option<&str>) {
        let problem = parse::<Outer>(json).unwrap_err().problem();
        assert_eq!(
            (problem.status.as_u16(), problem.field.as_deref()),
            (status, field),
            "{problem:?}"
        );
    }

    #[test]
    fn the_field_at_fault_is_named() {
        check(
            br#"{"inputs":[{"grams":"x"}]}"#,
            422,
            Some("inputs[0].grams"),
        );
        check(
            br#"{"inputs":[{"grams":1},{"grams":1.0001}]}"#,
            422,
            Some("inputs[1].grams"),
        );
        check(
            br#"{"inputs":[{"grams":1e400}]}"#,
            422,
            Some("inputs[0].grams"),
        );
        check(
            br#"{"inputs":[{"grams":1,"gram":2}]}"#,
            422,
            Some("inputs[0].gram"),
        );
        check(br#"{"inputs":[{}]}"#, 422, Some("inputs[0].grams"));
        check(br#"{}"#, 422, Some("inputs"));
        check(br#"[]"#, 422, None);
        check(br#"{"inputs":["#, 400, None);
        check(b"{\"inputs\":\"\xff\"}", 400, None);
        check(br#"{"inputs":[]} x"#, 400, None);
        check(b"", 400, None);
    }
}
