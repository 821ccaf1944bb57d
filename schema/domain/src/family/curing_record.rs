//! What a piece was made of in its cure, and the lots that it was on its way.

use super::piece::cured_line;
use super::{Family, Relative};
use crate::grams::Grams;
use crate::lot::LotId;
use crate::product::InCure;
use crate::trichinae::MixOnRecord;
use crate::words::CurePart;

/// The lots that a piece was, newest first, and what went into its cure.
#[derive(Debug)]
pub struct CuringRecord<'a> {
    /// The lots, back to the cure.
    pub lots: Vec<&'a Relative>,
    /// What went in there.
    pub mix: MixOnRecord,
}

/// How a piece was cured, as the record holds it.
pub fn curing_record(family: &Family, lot: LotId) -> Option<CuringRecord<'_>> {
    let lots = cured_line(family, lot)?;
    let first = lots.last()?.lot.id;
    let mut mix = MixOnRecord::default();
    for used in family.ancestry.uses_of(first) {
        let grams = Grams::from_milligrams(used.milligrams);
        let Some(of) = family.get(used.lot) else {
            continue;
        };
        mix.all += grams;
        let part = of.lot.product.part.in_cure;
        if part.is_some() {
            mix.dry += grams;
        }
        if part == Some(InCure::Other(CurePart::Salt)) {
            mix.salt += grams;
        }
        if of.has_species() {
            mix.meat += grams;
        }
    }
    let step = family.ancestry.made_by.get(&first);
    let water = step.and_then(|step| family.water.get(step));
    mix.all += water.copied().unwrap_or(Grams::ZERO);
    Some(CuringRecord { lots, mix })
}
