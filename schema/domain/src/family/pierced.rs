//! Was meat ground, pumped or pierced before it is cooked, so that what was on its outside is in its middle?

use super::{Family, Relative};
use crate::cure::Method;
use crate::heat::{Pierced, PiercedBy};
use crate::lot::LotId;
use crate::words::{DeedKind, ProductKind};

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
        let by = by(of, &is_pumped)?;
        let (lot, product) = (of.lot.code.clone(), of.lot.product.named());
        Some(Pierced { by, lot, product })
    });
    // Ground meat needs more than pumped meat does: it is no roast any more.
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
