//! What came off an animal, or out of a cook, against what is usual.

use super::Family;
use crate::grams::Grams;
use crate::lot::LotId;
use crate::messages;
use crate::product::YieldOf;
use crate::refusal::{Refusal, Result};
use crate::says::Texts;
use crate::words::{Account, DeedKind};
use crate::yields::{self, Cooked, CutOut, YieldRules, YieldShown};

messages! {
    /// Why there is nothing to compare a lot with.
    NothingToCompare in "yield" {
        NoStyle "no-style" { product: Texts },
        NothingCut "nothing-cut",
    }
}

/// The yield of a lot: of a carcass, what was cut off it; of a cooked lot, what came out. With what
/// it is a part of.
///
/// # Errors
/// The list does not say how it is cut or cooked, or nothing was cut off it yet.
pub fn yields(family: &Family, lot: LotId, usual: &YieldRules) -> Result<(Grams, Vec<YieldShown>)> {
    let nothing = |says: NothingToCompare| Refusal::cannot_be("code", says);
    let of = family
        .get(lot)
        .ok_or_else(|| nothing(NothingToCompare::NothingCut))?;
    match &of.lot.product.yields {
        Some(YieldOf::CutStyle(style)) => cut_out(family, lot, style, usual),
        Some(YieldOf::Process(process)) => cooked(family, lot, process, usual),
        None => Err(nothing(NothingToCompare::NoStyle {
            product: of.lot.product.named(),
        })),
    }
}

/// What was cut off a carcass: how much of it went under the knife, and each piece by its key where it has
/// one, else by its product's code.
pub fn cut_off(family: &Family, lot: LotId) -> (Grams, Vec<(&str, Grams)>) {
    let (mut hanging, mut pieces) = (Grams::ZERO, Vec::new());
    let of = family.get(lot);
    for did in of.map(|of| of.steps()).unwrap_or_default() {
        let cuts = matches!(did.kind, DeedKind::BreakDown | DeedKind::Cut);
        if did.voided || did.account != Account::Used || !cuts {
            continue;
        }
        hanging += did.grams;
        for made in family.made.get(&did.deed).into_iter().flatten() {
            if let Some(made) = family.get(*made) {
                let product = &made.lot.product;
                let key = product.cut.as_ref().unwrap_or(&product.code);
                pieces.push((key.as_str(), made.made()));
            }
        }
    }
    (hanging, pieces)
}

fn cut_out(
    family: &Family,
    lot: LotId,
    style: &str,
    usual: &YieldRules,
) -> Result<(Grams, Vec<YieldShown>)> {
    let (cut, pieces) = cut_off(family, lot);
    let of = family.get(lot);
    // What hangs there still belongs to the carcass that each piece is a part of.
    let hanging = cut + of.map_or(Grams::ZERO, |of| of.went.on_hand);
    let species = of.and_then(|of| of.lot.species.first().copied());
    let (Some(species), false) = (species, pieces.is_empty()) else {
        return Err(Refusal::cannot_be("code", NothingToCompare::NothingCut));
    };
    let asked = CutOut {
        species,
        style,
        hanging,
        pieces: &pieces,
    };
    Ok((hanging, yields::cut_out(&asked, usual)?))
}

fn cooked(
    family: &Family,
    lot: LotId,
    process: &str,
    usual: &YieldRules,
) -> Result<(Grams, Vec<YieldShown>)> {
    let of_animal = |lot| family.get(lot).is_some_and(super::Relative::has_species);
    let sum = |animal: bool| -> Grams {
        let uses = family.ancestry.uses_of(lot).iter();
        let of = uses.filter(|used| of_animal(used.lot) == animal);
        of.map(|used| Grams::from_milligrams(used.milligrams)).sum()
    };
    let base = sum(true);
    let asked = Cooked {
        process,
        base,
        output: family.get(lot).map_or(Grams::ZERO, super::Relative::made),
        added: sum(false),
    };
    Ok((base, vec![yields::of_step(&asked, usual)?]))
}
