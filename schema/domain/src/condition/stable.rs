//! What keeps without time and temperature control.

use super::ConditionSays;
use crate::dates::{Because, Rule};
use crate::ingredients::Nature;
use crate::product::{InCure, Product};
use crate::words::{CurePart, Natural, ProductKind, StableBy, State};

/// What shows that food needs no time and temperature control.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stable {
    /// Which sort of proof.
    pub by: StableBy,
    /// What it says, and the row or practice that it rests on.
    pub because: Because,
}

/// Can food of that kind be what it is said to be? A fat is rendered; everything else on the closed list is
/// an ingredient, or something without an animal in it that is made of such.
pub fn is_of_that_sort(natural: Natural, kind: ProductKind, of_animal: bool) -> bool {
    match natural {
        Natural::RenderedFat => matches!(kind, ProductKind::Rendered | ProductKind::Ingredient),
        Natural::SaltedCasing => kind == ProductKind::Ingredient,
        _ => kind == ProductKind::Ingredient || kind == ProductKind::Mixed && !of_animal,
    }
}

/// What is stable by what it is: a closed list, common practice without a source. A dry spice, a salt,
/// a sugar and a curing salt are known by what they do; the rest says so in the product list.
pub fn by_nature(product: &Product) -> Option<Stable> {
    let natural = natural(product)?;
    Some(Stable {
        by: StableBy::Nature,
        because: Because {
            says: ConditionSays::Nature {
                says: natural.says(),
            }
            .into(),
            rule: Rule::Practice(ConditionSays::ProofRule.into()),
        },
    })
}

/// Is there too little water in it for anything to grow, also where it is mixed? A fat or a honey counts as dry;
/// what is wet or fresh and keeps as it is (wine, produce, bread) does not. Common practice, no source.
pub(super) fn holds_no_water(natural: Natural) -> bool {
    use Natural::*;
    match natural {
        Salt | Sugar | Honey | Spice | CuringSalt | Oil | RenderedFat | DryGoods | Nuts => true,
        Vinegar | Wine | Spirits | Beer | Bread | Produce | SaltedCasing | Water => false,
    }
}

/// Does it bring water into what it is packed with? A casing lies around it. Common practice, no source.
pub fn wets(natural: Natural) -> bool {
    !holds_no_water(natural) && natural != Natural::SaltedCasing
}

/// What it is of the closed list.
pub fn natural(product: &Product) -> Option<Natural> {
    let known = || match (product.part.in_cure, product.part.nature) {
        (Some(InCure::CuringSalt(_)), _) => Some(Natural::CuringSalt),
        (Some(InCure::Other(CurePart::Salt)), _) => Some(Natural::Salt),
        (Some(InCure::Other(CurePart::Sugar)), _) => Some(Natural::Sugar),
        (_, Some(Nature::Spice)) if product.storage == State::Ambient => Some(Natural::Spice),
        (_, Some(Nature::Water)) => Some(Natural::Water),
        _ => None,
    };
    let listed = product.keeping.stable_as;
    let listed = listed.filter(|of| is_of_that_sort(*of, product.kind, product.species.is_some()));
    listed.or_else(known)
}
