//! What keeps without time and temperature control.

use super::ConditionSays;
use crate::dates::{Because, Rule};
use crate::ingredients::Nature;
use crate::product::{InCure, Product};
use crate::words::{CurePart, Natural, StableBy, State};

/// What shows that food needs no time and temperature control.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stable {
    /// Which sort of proof.
    pub by: StableBy,
    /// What it says, and the row or practice that it rests on.
    pub because: Because,
}

/// What is stable by what it is: a closed list, common practice without a source. A dry spice, a salt,
/// a sugar and a curing salt are known by what they do; the rest says so in the product list.
pub fn by_nature(product: &Product) -> Option<Stable> {
    let known = || match (product.part.in_cure, product.part.nature) {
        (Some(InCure::CuringSalt(_)), _) => Some(Natural::CuringSalt),
        (Some(InCure::Other(CurePart::Salt)), _) => Some(Natural::Salt),
        (Some(InCure::Other(CurePart::Sugar)), _) => Some(Natural::Sugar),
        (_, Some(Nature::Spice)) if product.storage == State::Ambient => Some(Natural::Spice),
        (_, Some(Nature::Water)) => Some(Natural::Water),
        _ => None,
    };
    let natural = product.keeping.stable_as.or_else(known)?;
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
