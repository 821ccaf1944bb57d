//! Reading a JSON body: what is wrong is answered by field, and nothing is half read.

use crate::error::{Error, Problem};
use crate::problems::{RequestSays, TitleSays};
use crate::wire::unread::unread;
use actix_web::dev::Payload;
use actix_web::http::{StatusCode, header};
use actix_web::web::Bytes;
use actix_web::{FromRequest, HttpRequest};
use futures_util::future::LocalBoxFuture;
use serde::de::DeserializeOwned;
use serde_json::error::Category;

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
        let bytes = Bytes::from_request(request, payload);
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
            let bytes = bytes.await.map_err(|error| {
                let status = error.as_response_error().status_code();
                match status {
                    StatusCode::PAYLOAD_TOO_LARGE => {
                        let detail = RequestSays::TooLarge;
                        Problem::new(status, "too-large", TitleSays::TooLarge, detail)
                    }
                    _ => Problem::new(
                        StatusCode::BAD_REQUEST,
                        "cut-off",
                        TitleSays::CutOff,
                        RequestSays::CutOff,
                    ),
                }
            })?;
            parse(&bytes).map(Body)
        })
    }
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
