//! Was meat ground, pumped, pierced or stuffed before it is cooked, so that what was on its outside is in its
//! middle?

use super::{Family, Relative};
use crate::cure::Method;
use crate::grams::Grams;
use crate::heat::{Pierced, PiercedBy};
use crate::lot::LotId;
use crate::words::{DeedKind, Natural, ProductKind};

/// What of a lot's meat was ground, pumped or bladed, and where that stands; `is_pumped` says of a cure whether its
/// deed was asked so, whatever its product says.
pub fn pierced(
    family: &Family,
    lot: LotId,
    is_pumped: impl Fn(&Relative) -> bool,
) -> Option<Pierced> {
    let line = family.youngest_first(lot);
    let meat = line.into_iter().filter(|of| of.has_species());
    let found = meat.filter_map(|of| {
        let by = match is_stuffed(family, of) {
            true => PiercedBy::Stuffed,
            false => by(of, &is_pumped)?,
        };
        let (lot, product) = (of.lot.code.clone(), of.lot.product.named());
        Some(Pierced { by, lot, product })
    });
    // Stuffed meat needs the most; ground meat needs more than pumped meat does: it is no roast any more.
    found.min_by_key(|found| found.by)
}

/// Did blades or needles go through the meat of a lot: as its product is listed, or anything that it was cut
/// from, or because it was pumped? What was ground since is no piece any more.
pub fn tenderised(family: &Family, of: &Relative) -> bool {
    let pierced = |of: &Relative| {
        matches!(
            by(of, &|_| false),
            Some(PiercedBy::Pumped | PiercedBy::Bladed)
        )
    };
    let mut line = family.youngest_first(of.lot.id).into_iter();
    let ground = |of: &Relative| of.made_by.kind == DeedKind::Grind;
    !ground(of) && line.any(|of| of.has_species() && pierced(of))
}

fn by(of: &Relative, is_pumped: &impl Fn(&Relative) -> bool) -> Option<PiercedBy> {
    let product = &of.lot.product;
    let pumped = |of: &Relative| {
        let method = product.cured.cure.map(|cure| cure.method);
        method == Some(Method::Pumped) || is_pumped(of)
    };
    match of.made_by.kind {
        DeedKind::Grind => Some(PiercedBy::Ground),
        // What comes in as raw and mixed is mince, or made with it.
        DeedKind::Receive if product.raw && product.kind == ProductKind::Mixed => {
            Some(PiercedBy::Ground)
        }
        DeedKind::Cure if pumped(of) => Some(PiercedBy::Pumped),
        _ if product.standard.tenderised == Some(true) => Some(PiercedBy::Bladed),
        _ => None,
    }
}

/// How much of something else raw meat takes before it is a stuffing, in thousandths of the meat: herbs and
/// garlic for a joint stay below that. Common practice, no source.
const SEASONED_THOUSANDTHS: i64 = 20;

/// Is it raw meat that something went into which is no seasoning: bread, rice, fruit, or a forcemeat into a cut?
fn is_stuffed(family: &Family, of: &Relative) -> bool {
    if of.made_by.kind != DeedKind::Mix {
        return false;
    }
    let uses = family.ancestry.uses_of(of.lot.id).iter();
    let parts = uses.filter_map(|part| {
        let grams = Grams::from_milligrams(part.milligrams);
        Some((family.get(part.lot)?, grams))
    });
    let parts: Vec<(&Relative, Grams)> = parts.collect();
    let raw = |of: &Relative| of.has_species() && !of.lot.condition().is_ready();
    let is_cut = |of: &Relative| raw(of) && of.lot.product.kind == ProductKind::Cut;
    let has_cut = parts.iter().any(|(of, _)| is_cut(of));
    let is_forcemeat = |of: &Relative| {
        of.made_by.kind == DeedKind::Grind || of.lot.product.kind == ProductKind::Mixed
    };
    let is_filling = |of: &Relative| match of.has_species() {
        true => has_cut && !is_cut(of) && is_forcemeat(of),
        false => !seasons(of.lot.product.keeping.stable_as),
    };
    let meat = parts.iter().filter(|(of, _)| raw(of) && !is_filling(of));
    let meat: Grams = meat.map(|(_, grams)| *grams).sum();
    let filling = parts.iter().filter(|(of, _)| is_filling(of));
    let filling: Grams = filling.map(|(_, grams)| *grams).sum();
    meat > Grams::ZERO && filling > meat.thousandths(SEASONED_THOUSANDTHS)
}

/// Does it season or dress meat, and is no filling?
fn seasons(nature: Option<Natural>) -> bool {
    use Natural::*;
    match nature {
        None | Some(DryGoods | Bread | Nuts | Produce) => false,
        Some(
            Salt | Sugar | Honey | Spice | CuringSalt | Vinegar | Wine | Spirits | Beer | Oil
            | RenderedFat | SaltedCasing | Water,
        ) => true,
    }
}
