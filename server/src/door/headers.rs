//! What a browser is told of every answer: nothing of it is guessed, framed, or kept for others.

use actix_web::body::BoxBody;
use actix_web::dev::ServiceResponse;
use actix_web::http::header::{HeaderName, HeaderValue};

/// Where an answer says nothing else: it is data, and nothing in it is run or fetched.
const NOTHING: &str =
    "default-src 'none'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'";

const ALWAYS: [(&str, &str); 5] = [
    ("x-content-type-options", "nosniff"),
    ("x-frame-options", "DENY"),
    ("referrer-policy", "same-origin"),
    ("cross-origin-opener-policy", "same-origin"),
    ("cross-origin-resource-policy", "same-origin"),
];

/// Puts the headers on an answer; what it says itself stays.
pub fn put(mut response: ServiceResponse<BoxBody>) -> ServiceResponse<BoxBody> {
    let api = super::is_for_programs(response.request().path());
    let headers = response.headers_mut();
    let mut add = |name: &'static str, value: &'static str| {
        let name = HeaderName::from_static(name);
        if !headers.contains_key(&name) {
            headers.insert(name, HeaderValue::from_static(value));
        }
    };
    for (name, value) in ALWAYS {
        add(name, value);
    }
    add("content-security-policy", NOTHING);
    if api {
        add("cache-control", "no-store");
    }
    response
}
