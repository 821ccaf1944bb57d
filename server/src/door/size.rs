//! How long an address and the headers of a request may be.

use crate::error::{Error, Problem};
use crate::problems::{RequestSays, TitleSays};
use actix_web::dev::ServiceRequest;
use actix_web::http::StatusCode;

/// The longest address, in bytes. A scanner may send a long one, and is answered all the same.
const ADDRESS: usize = 60_000;
/// All headers together, in bytes.
const HEADERS: usize = 16 << 10;

/// Refuses what is longer.
///
/// # Errors
/// 414 and 431.
pub fn refuse(request: &ServiceRequest) -> Result<(), Error> {
    let address = request
        .uri()
        .path_and_query()
        .map_or(0, |all| all.as_str().len());
    if address > ADDRESS {
        return Err(too_long(
            StatusCode::URI_TOO_LONG,
            "address-too-long",
            RequestSays::LongAddress,
        ));
    }
    let headers = request.headers().iter();
    let headers: usize = headers
        .map(|(name, value)| name.as_str().len() + value.len())
        .sum();
    if headers > HEADERS {
        return Err(too_long(
            StatusCode::REQUEST_HEADER_FIELDS_TOO_LARGE,
            "headers-too-long",
            RequestSays::LongHeaders,
        ));
    }
    Ok(())
}

fn too_long(status: StatusCode, slug: &str, says: RequestSays) -> Error {
    Problem::new(status, slug, TitleSays::TooLarge, says).into()
}
