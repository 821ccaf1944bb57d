//! The frame of a page as it leaves: who is at work stands in it, and it is packed where the browser takes that.

use super::spoken::Words;
use crate::who::Who;
use actix_web::HttpMessage;
use actix_web::body::{BoxBody, MessageBody};
use actix_web::dev::ServiceResponse;
use actix_web::http::header::{ACCEPT_ENCODING, CONTENT_ENCODING, CONTENT_TYPE, HeaderValue, VARY};
use actix_web::web::Bytes;
use flate2::Compression;
use flate2::write::GzEncoder;
use std::io::Write;
use words::{Language, Speech};

/// What is smaller goes out as it is.
const WORTH_IT: usize = 1_400;

/// Finishes a page, a style sheet or a script; anything else stays as it is.
pub fn finish(mut response: ServiceResponse<BoxBody>) -> ServiceResponse<BoxBody> {
    let kind = response.headers().get(CONTENT_TYPE);
    let kind = kind.and_then(|kind| kind.to_str().ok()).unwrap_or_default();
    let is_page = kind.starts_with("text/html");
    let is_text = is_page
        || ["text/css", "text/javascript"]
            .iter()
            .any(|of| kind.starts_with(of));
    if !is_text || response.headers().contains_key(CONTENT_ENCODING) {
        return response;
    }
    let who = response.request().extensions().get::<Who>().cloned();
    let takes = response.request().headers().get(ACCEPT_ENCODING);
    let takes_gzip = takes
        .and_then(|takes| takes.to_str().ok())
        .is_some_and(|takes| takes.contains("gzip"));
    response = response.map_body(|head, body| {
        head.headers_mut().insert(
            VARY,
            HeaderValue::from_static("accept-encoding, accept-language"),
        );
        let mut bytes = match body.try_into_bytes() {
            Ok(bytes) => bytes,
            Err(body) => return body,
        };
        if is_page {
            bytes = with_who(bytes, who.as_ref());
        }
        match takes_gzip && bytes.len() > WORTH_IT {
            true => match packed(&bytes) {
                Some(packed) => {
                    head.headers_mut()
                        .insert(CONTENT_ENCODING, HeaderValue::from_static("gzip"));
                    BoxBody::new(packed)
                }
                None => BoxBody::new(bytes),
            },
            false => BoxBody::new(bytes),
        }
    });
    response
}

fn packed(bytes: &Bytes) -> Option<Bytes> {
    let mut encoder = GzEncoder::new(Vec::with_capacity(bytes.len() / 3), Compression::new(4));
    encoder.write_all(bytes).ok()?;
    encoder.finish().ok().map(Bytes::from)
}

/// The person's name on the rail; who is nobody finds the way to sign in there.
fn with_who(bytes: Bytes, who: Option<&Who>) -> Bytes {
    let Some(who) = who.filter(|who| !who.name.is_empty()) else {
        return bytes;
    };
    let Ok(html) = std::str::from_utf8(&bytes) else {
        return bytes;
    };
    let Some((before, rest)) = html.split_once("data-who>") else {
        return bytes;
    };
    let Some((_, after)) = rest.split_once("</a>") else {
        return bytes;
    };
    let escaped = super::answer::escaped(&who.name);
    let whole = escaped.replace('"', "&quot;");
    let words = Words(Speech::in_language(language(before)));
    let name = short(&super::answer::escaped(&words.person(&who.name)));
    format!("{before}data-who=\"{whole}\">{name}</a>{after}").into()
}

/// The language that a page says it is in.
fn language(page: &str) -> Language {
    let tag = page.split_once("<html lang=\"").map(|(_, rest)| rest);
    let tag = tag.and_then(|rest| rest.split('"').next());
    tag.and_then(Language::of_tag).unwrap_or_default()
}

/// A name of which a narrow screen shows the first part.
fn short(name: &str) -> String {
    match name.split_once(' ') {
        Some((first, rest)) => format!("{first}<span class=\"rest\">&nbsp;{rest}</span>"),
        None => name.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::who::Kind;
    use crate::who::people::FIRST;

    #[test]
    fn the_name_stands_on_the_rail_and_nothing_of_it_is_markup() {
        let page = Bytes::from_static(b"<a class=\"who\" data-who>Sign in</a><p>");
        let who = Who::of(Kind::House, "Oda <b>", Vec::new());
        let told = with_who(page.clone(), Some(&who));
        assert_eq!(
            &told[..],
            b"<a class=\"who\" data-who=\"Oda &lt;b&gt;\">Oda<span class=\"rest\">&nbsp;&lt;b&gt;</span></a><p>"
        );
        assert_eq!(with_who(page.clone(), Some(&Who::nobody())), page);
    }

    #[test]
    fn who_has_no_name_yet_is_called_what_they_are() {
        let who = Who::of(Kind::House, FIRST, Vec::new());
        let called = |page: &'static str| {
            let told = with_who(Bytes::from_static(page.as_bytes()), Some(&who));
            String::from_utf8(told.to_vec()).expect("it is text")
        };
        let french = called("<html lang=\"fr\"><a data-who>Se connecter</a>");
        assert_eq!(
            french,
            "<html lang=\"fr\"><a data-who=\"Manager\">Responsable</a>"
        );
        let english = called("<html lang=\"en\"><a data-who>Sign in</a>");
        assert!(english.ends_with("data-who=\"Manager\">Manager</a>"));
    }
}
