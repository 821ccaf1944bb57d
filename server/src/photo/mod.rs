//! A photo of a code, read here where a browser cannot read codes itself: a JPEG or a PNG becomes grey
//! ([`grey`]), and whatever codes are in it become text ([`codes`]). Nothing of a photo is kept.

pub mod codes;
pub mod grey;
mod says;

pub use says::PhotoSays;

use crate::error::{Error, Problem, Result};
use crate::problems::TitleSays;
use actix_web::http::StatusCode;
use codes::Code;
use grey::NotAPhoto;

/// The largest photo, in bytes.
pub const LARGEST: usize = LARGEST_MB << 20;
/// The same in the words of a refusal.
pub const LARGEST_MB: usize = 10;

/// The codes in a photo, the likeliest first.
///
/// # Errors
/// 422 for what is no photo, one with too many dots, or one without a code.
pub fn read(bytes: &[u8]) -> Result<Vec<Code>> {
    let grey = grey::read(bytes).map_err(|why| match why {
        NotAPhoto::Unreadable => refused("not-a-photo", PhotoSays::NotRead),
        NotAPhoto::TooManyDots => {
            let most = grey::MOST_DOTS / 1_000_000;
            refused("too-many-dots", PhotoSays::TooManyDots { most })
        }
    })?;
    let codes = codes::of(&grey);
    match codes.is_empty() {
        true => Err(refused("no-code", PhotoSays::NoCode)),
        false => Ok(codes),
    }
}

fn refused(slug: &str, says: PhotoSays) -> Error {
    let title = match slug {
        "no-code" => TitleSays::NoCode,
        _ => TitleSays::CannotBe,
    };
    Problem::new(StatusCode::UNPROCESSABLE_ENTITY, slug, title, says).into()
}
