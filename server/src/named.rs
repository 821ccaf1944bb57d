//! Reading the name of a lot in any spelling: what a deed or a question names.

use crate::error::{Error, Result};
use domain::code::{LotCode, NotACode};
use domain::scanned::{self, Scanned};

/// A lot as a caller named it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Named {
    /// Its code.
    pub code: LotCode,
    /// The pack that the same text named.
    pub pack: Option<u32>,
}

/// Reads the name of a lot: any spelling of its code, an address, a GS1 string.
///
/// # Errors
/// 422 where it is none of ours.
pub fn named(text: &str, field: &str, public_url: &str) -> Result<Named> {
    let detail = match scanned::read(text, public_url) {
        Scanned::Lot { code, pack } => return Ok(Named { code, pack }),
        Scanned::Elsewhere(_) => format!("{text:?} is another kitchen's label."),
        Scanned::Unreadable(NotACode::CheckCharacter) => {
            format!(
                "{text:?} does not add up: one of its characters is wrong. Read it from the label again."
            )
        }
        Scanned::Unreadable(NotACode::Pattern) => {
            format!("{text:?} is not a lot code; they look like BRC-26159-A03-0.")
        }
    };
    Err(Error::cannot_be(field, detail))
}
