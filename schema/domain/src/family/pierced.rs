//! Was meat ground, pumped, pierced or stuffed before it is cooked, so that what was on its outside is in its
//! middle?

use super::{Family, Relative};
use crate::cure::Method;
use crate::grams::Grams;
use crate::heat::{Pierced, PiercedBy};
use crate::lot::{Lot, LotId};
use crate::words::{DeedKind, Natural, ProductKind};

/// What of a lot's meat was ground, pumped, bladed or stuffed, and where that stands; `is_pumped` says of a cure
/// whether its deed was asked so, whatever its product says; `says_stuffed` what a deed said of a filling.
pub fn pierced(
    family: &Family,
    lot: LotId,
    is_pumped: impl Fn(&Relative) -> bool,
    says_stuffed: impl Fn(&Relative) -> Option<bool>,
) -> Option<Pierced> {
    let line = family.youngest_first(lot);
    let meat = line.into_iter().filter(|of| of.has_species());
    let found = meat.filter_map(|of| {
        let is_stuffed = says_stuffed(of).unwrap_or_else(|| is_stuffed(family, of));
        let by = match is_stuffed {
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

/// Something that goes in together with other things.
#[derive(Debug, Clone, Copy)]
pub struct Together<'a> {
    /// The lot.
    pub lot: &'a Lot,
    /// Was it made by grinding?
    pub is_ground: bool,
    /// How much of it.
    pub grams: Grams,
}

impl Together<'_> {
    fn is_raw_meat(&self) -> bool {
        !self.lot.species.is_empty() && !self.lot.condition().is_ready()
    }

    fn is_raw_cut(&self) -> bool {
        self.is_raw_meat() && self.lot.product.kind == ProductKind::Cut
    }

    /// Does it fill a cut? A forcemeat does, and meat that is ready; another cut does not.
    fn fills_a_cut(&self) -> bool {
        let kind = self.lot.product.kind;
        let is_forcemeat = self.is_ground || kind == ProductKind::Mixed;
        let is_ready = matches!(kind, ProductKind::Cooked | ProductKind::Cured);
        !self.is_raw_cut() && (is_forcemeat || is_ready && self.lot.condition().is_ready())
    }
}

/// What fills the raw meat that it goes in with, if it is more than a seasoning: bread, rice, fruit, or a forcemeat
/// into a cut. Of several the one that weighs most.
pub fn filling<'a>(parts: &[Together<'a>]) -> Option<&'a Lot> {
    let has_cut = parts.iter().any(Together::is_raw_cut);
    let fills = |part: &&Together<'a>| match part.lot.species.is_empty() {
        true => !seasons(part.lot.product.keeping.stable_as),
        false => has_cut && part.fills_a_cut(),
    };
    let meat = parts.iter().filter(|part| part.is_raw_meat());
    let meat: Grams = meat.filter(|of| !fills(of)).map(|of| of.grams).sum();
    let filling = parts.iter().filter(fills);
    let weight: Grams = filling.clone().map(|part| part.grams).sum();
    let is_filled = meat > Grams::ZERO && weight > meat.thousandths(SEASONED_THOUSANDTHS);
    let most = filling.max_by_key(|part| part.grams).map(|part| part.lot);
    most.filter(|_| is_filled)
}

/// Is it raw meat that something was put into which fills it?
fn is_stuffed(family: &Family, of: &Relative) -> bool {
    let puts_together = matches!(
        of.made_by.kind,
        DeedKind::Mix | DeedKind::Cook | DeedKind::Smoke
    );
    if !puts_together {
        return false;
    }
    let uses = family.ancestry.uses_of(of.lot.id).iter();
    let parts = uses.filter_map(|part| {
        let of = family.get(part.lot)?;
        Some(Together {
            lot: &of.lot,
            is_ground: of.made_by.kind == DeedKind::Grind,
            grams: Grams::from_milligrams(part.milligrams),
        })
    });
    let parts: Vec<Together<'_>> = parts.collect();
    filling(&parts).is_some()
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
