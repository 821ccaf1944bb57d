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
        CodeKind::Code128 | CodeKind::Gs1128 | CodeKind::Ean13 => linear(place, facts, dpi),
    }
}

/// The lot with its pack; on a narrow label the lot alone.
fn linear(place: &CodePlace, facts: &Facts, dpi: Dpi) -> Result<Code, Refusal> {
    let whole = code128::place(&facts.linear, place.area, dpi);
    match (whole, facts.linear.split_once('/')) {
        (Err(Refusal::CodeTooLarge { .. }), Some((lot, _))) => code128::place(lot, place.area, dpi),
        (placed, _) => placed,
    }
}
