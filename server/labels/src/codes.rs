//! Which code goes into a place.

use crate::facts::Facts;
use crate::length::Dpi;
use crate::placed::Code;
use crate::refusal::{CodeKind, Refusal};
use crate::template::CodePlace;
use crate::{code128, qr};

/// Places the code that belongs there.
pub(crate) fn place(place: &CodePlace, facts: &Facts, dpi: Dpi) -> Result<Code, Refusal> {
    match place.kind {
        CodeKind::Qr => qr::place(&facts.qr, place.area, place.level, dpi),
        CodeKind::Code128 => code128::place(&facts.linear, place.area, dpi),
    }
}
