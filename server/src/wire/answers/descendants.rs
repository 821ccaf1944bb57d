//! Where everything that was made from a lot went, as it is answered.

use crate::wire::Weight;
use domain::family::{Descended, Family, Lists, descendants};
use domain::grams::Grams;
use serde::Serialize;
use std::cmp::Reverse;
use store::trace::Descendant;
use utoipa::ToSchema;

/// Where a lot's weight went.
#[derive(Debug, Clone, Copy, Default, Serialize, ToSchema)]
pub struct Whereabouts {
    /// At birth.
    pub made_grams: Weight,
    /// Brought back by customers.
    pub taken_back_grams: Weight,
    /// Used in later steps.
    pub used_grams: Weight,
    /// Sold at the counter.
    pub sold_grams: Weight,
    /// How many whole packs were sold.
    pub sold_packs: i64,
    /// Served.
    pub served_grams: Weight,
    /// Discarded.
    pub discarded_grams: Weight,
    /// Shipped.
    pub shipped_grams: Weight,
    /// Returned to the supplier.
    pub returned_grams: Weight,
    /// Lost in drying.
    pub lost_grams: Weight,
    /// On hand.
    pub on_hand_grams: Weight,
    /// Unexplained: missing positive, surplus negative.
    pub unexplained_grams: Weight,
}

/// A lot that came of another.
#[derive(Debug, Serialize, ToSchema)]
pub struct DescendantRead {
    /// Its code.
    pub code: String,
    /// Its product.
    pub product: String,
    /// At birth.
    pub made_grams: Weight,
    /// Brought back by customers.
    pub taken_back_grams: Weight,
    /// Used in later steps.
    pub used_grams: Weight,
    /// Sold at the counter.
    pub sold_grams: Weight,
    /// How many whole packs were sold.
    pub sold_packs: i64,
    /// Served.
    pub served_grams: Weight,
    /// Discarded.
    pub discarded_grams: Weight,
    /// Shipped.
    pub shipped_grams: Weight,
    /// Returned to the supplier.
    pub returned_grams: Weight,
    /// Lost in drying.
    pub lost_grams: Weight,
    /// On hand.
    pub on_hand_grams: Weight,
    /// Unexplained: missing positive, surplus negative.
    pub unexplained_grams: Weight,
    /// Where most of what is left is.
    pub place: Option<String>,
    /// The share of what was asked about in it; null where that has no animal.
    pub share: Option<f64>,
    /// A word about it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
}

/// All that came of something.
#[derive(Debug, Default, Serialize, ToSchema)]
pub struct DescendantsRead {
    /// Each lot, the oldest first.
    pub lots: Vec<DescendantRead>,
    /// Their sums.
    pub totals: Whereabouts,
}

/// What was made from the lots of a family that was loaded with its descendants.
pub fn of_family(family: &Family, lists: &Lists) -> DescendantsRead {
    let mut totals = Whereabouts::default();
    let mut lots = Vec::with_capacity(family.descendants.len());
    for Descended { of, share } in descendants(family) {
        let went = &of.went;
        let left = of
            .lot
            .packs
            .iter()
            .filter(|pack| !pack.now.left.is_none_left());
        let fullest = left.max_by_key(|pack| (pack.now.left, Reverse(pack.number)));
        let read = DescendantRead {
            code: of.lot.code.to_string(),
            product: of.lot.product.code.clone(),
            made_grams: Weight(went.made),
            taken_back_grams: Weight(went.taken_back),
            used_grams: Weight(went.used),
            sold_grams: Weight(went.sold),
            sold_packs: went.sold_packs,
            served_grams: Weight(went.served),
            discarded_grams: Weight(went.discarded),
            shipped_grams: Weight(went.shipped),
            returned_grams: Weight(went.returned),
            lost_grams: Weight(went.lost),
            on_hand_grams: Weight(went.on_hand),
            unexplained_grams: Weight(went.unexplained),
            place: fullest.map(|pack| lists.place_code(pack.now.place).to_owned()),
            share,
            note: of.note.clone(),
        };
        totals.add(&read);
        lots.push(read);
    }
    DescendantsRead { lots, totals }
}

/// The lots that are wanted, each with its share, and their totals.
pub fn read(
    lots: &[Descendant],
    wanted: impl Fn(&Descendant) -> bool,
    share: impl Fn(&Descendant) -> Option<f64>,
) -> DescendantsRead {
    let grams = |mg| Weight(Grams::from_milligrams(mg));
    let mut totals = Whereabouts::default();
    let mut found = Vec::with_capacity(lots.len());
    for lot in lots.iter().filter(|lot| wanted(lot)) {
        let read = DescendantRead {
            code: lot.code.clone(),
            product: lot.product.clone(),
            made_grams: grams(lot.made_mg),
            taken_back_grams: grams(lot.taken_back_mg),
            used_grams: grams(lot.used_mg),
            sold_grams: grams(lot.sold_mg),
            sold_packs: i64::from(lot.sold_packs),
            served_grams: grams(lot.served_mg),
            discarded_grams: grams(lot.discarded_mg),
            shipped_grams: grams(lot.shipped_mg),
            returned_grams: grams(lot.returned_mg),
            lost_grams: grams(lot.lost_mg),
            on_hand_grams: grams(lot.on_hand_mg),
            unexplained_grams: grams(lot.unexplained_mg),
            place: lot.place.clone(),
            share: share(lot),
            note: lot.note.clone(),
        };
        totals.add(&read);
        found.push(read);
    }
    DescendantsRead {
        lots: found,
        totals,
    }
}

impl Whereabouts {
    fn add(&mut self, lot: &DescendantRead) {
        self.made_grams.0 += lot.made_grams.0;
        self.taken_back_grams.0 += lot.taken_back_grams.0;
        self.used_grams.0 += lot.used_grams.0;
        self.sold_grams.0 += lot.sold_grams.0;
        self.sold_packs += lot.sold_packs;
        self.served_grams.0 += lot.served_grams.0;
        self.discarded_grams.0 += lot.discarded_grams.0;
        self.shipped_grams.0 += lot.shipped_grams.0;
        self.returned_grams.0 += lot.returned_grams.0;
        self.lost_grams.0 += lot.lost_grams.0;
        self.on_hand_grams.0 += lot.on_hand_grams.0;
        self.unexplained_grams.0 += lot.unexplained_grams.0;
    }
}
