//! Reading the name of a lot in any spelling: what a deed or a question names.

use crate::error::{Error, Result};
use domain::code::{LotCode, NotACode};
use domain::messages;
use domain::scanned::{self, Scanned};

messages! {
    /// What is said of the name of a lot.
    NamedSays in "named" {
        Elsewhere "elsewhere" { text: String },
        Misread "misread" { text: String },
        NoLot "no-lot" { text: String },
    }
}

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
/// 422 where it is not one of ours.
pub fn named(text: &str, field: &str, ours: &[String]) -> Result<Named> {
    let text = text.to_owned();
    let detail = match scanned::read(&text, ours) {
        Scanned::Lot { code, pack } => return Ok(Named { code, pack }),
        Scanned::Elsewhere(_) => NamedSays::Elsewhere { text },
        Scanned::Unreadable(NotACode::CheckCharacter) => NamedSays::Misread { text },
        Scanned::Unreadable(NotACode::Pattern) => NamedSays::NoLot { text },
    };
    Err(Error::cannot_be(field, detail))
}
