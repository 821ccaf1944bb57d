//! Reading a JSON body: what is wrong is told by field, and nothing is half read.

use crate::error::{Error, Problem};
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
                let detail = "Send JSON, with Content-Type: application/json.";
                return Err(Problem::new(
                    StatusCode::UNSUPPORTED_MEDIA_TYPE,
                    "not-json",
                    "Not JSON",
                    detail,
                )
                .into());
            }
            let bytes = bytes.await.map_err(|error| {
                let status = error.as_response_error().status_code();
                match status {
                    StatusCode::PAYLOAD_TOO_LARGE => {
                        let detail = "A body may be at most 1 MB. Send the deed in parts.";
                        Problem::new(status, "too-large", "Too large", detail)
                    }
                    _ => Problem::new(
                        StatusCode::BAD_REQUEST,
                        "cut-off",
                        "Cut off",
                        "The body did not arrive whole.",
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
            .map_err(|error| told(error, String::new()))?;
        let detail = "An object with named fields is expected.";
        return Err(Problem::new(
            StatusCode::UNPROCESSABLE_ENTITY,
            "cannot-be",
            "A value that cannot be",
            detail,
        )
        .into());
    }
    let mut json = serde_json::Deserializer::from_slice(bytes);
    let parsed = serde_path_to_error::deserialize(&mut json).map_err(|error| {
        let path = error.path().to_string();
        told(error.into_inner(), path)
    })?;
    json.end().map_err(|error| told(error, String::new()))?;
    Ok(parsed)
}

fn told(error: serde_json::Error, path: String) -> Error {
    let text = error.to_string();
    let says = text
        .rsplit_once(" at line ")
        .map_or(text.as_str(), |(says, _)| says)
        .to_owned();
    if error.classify() != Category::Data {
        let detail = format!("This is not JSON: {text}.");
        return Problem::new(StatusCode::BAD_REQUEST, "not-json", "Not JSON", detail).into();
    }
    let named = says
        .split('`')
        .nth(1)
        .filter(|_| says.starts_with("missing field") || says.starts_with("unknown field"));
    let inside = if path == "." { "" } else { path.as_str() };
    let field = match named {
        Some(name) if inside.is_empty() => name.to_owned(),
        Some(name) if inside == name || inside.ends_with(&format!(".{name}")) => inside.to_owned(),
        Some(name) => format!("{inside}.{name}"),
        None => inside.to_owned(),
    };
    let mut problem = Problem::new(
        StatusCode::UNPROCESSABLE_ENTITY,
        "cannot-be",
        "A value that cannot be",
        sentence(&says),
    );
    problem.field = Some(field).filter(|field| !field.is_empty());
    problem.into()
}

fn sentence(says: &str) -> String {
    let mut letters = says.chars();
    let first = letters
        .next()
        .map(|first| first.to_uppercase().collect::<String>())
        .unwrap_or_default();
    format!("{first}{}.", letters.as_str().trim_end_matches('.'))
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
