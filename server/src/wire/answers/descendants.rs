//! Where everything that was made from a lot went, as it is answered.

use super::OnceRead;
use crate::wire::Weight;
use domain::family::{Descendant, Descendants, Went};
use serde::Serialize;
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
    /// Missing of the packs of which something is.
    pub missing_grams: Weight,
    /// Too much in the packs of which there is: never set against what is missing.
    pub surplus_grams: Weight,
}

/// A lot that was made from another.
#[derive(Debug, Serialize, ToSchema)]
pub struct DescendantRead {
    /// Its code.
    pub code: String,
    /// Its product.
    pub product: String,
    /// Where its weight went.
    #[serde(flatten)]
    pub went: Whereabouts,
    /// Where most of what is left is.
    pub place: Option<String>,
    /// The share of what was asked about in it; null where that has no animal.
    pub share: Option<f64>,
    /// A word about it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
}

/// All lots made from something.
#[derive(Debug, Default, Serialize, ToSchema)]
pub struct DescendantsRead {
    /// Each lot, the oldest first.
    pub lots: Vec<DescendantRead>,
    /// Their sums.
    pub totals: Whereabouts,
    /// Of an animal: the lots that were known as received of it until that was corrected. What came of them
    /// came of the animal that they are of now.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub once: Vec<OnceRead>,
}

impl DescendantsRead {
    /// All lots made from something.
    pub fn of(found: &Descendants) -> DescendantsRead {
        DescendantsRead {
            lots: found.lots.iter().map(DescendantRead::of).collect(),
            once: OnceRead::all(&found.once),
            totals: Whereabouts::of(&found.totals),
        }
    }
}

impl DescendantRead {
    fn of(lot: &Descendant) -> DescendantRead {
        DescendantRead {
            code: lot.code.to_string(),
            product: lot.product.clone(),
            went: Whereabouts::of(&lot.went),
            place: lot.place.clone(),
            share: lot.share,
            note: lot.note.clone(),
        }
    }
}

impl Whereabouts {
    /// Where weight went.
    pub fn of(went: &Went) -> Whereabouts {
        Whereabouts {
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
            missing_grams: Weight(went.missing),
            surplus_grams: Weight(went.surplus),
        }
    }
}
