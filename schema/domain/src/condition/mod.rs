//! What food is by what happened to it: raw, treated or ready to eat, by which proof, and what shows
//! that it keeps without time and temperature control.
//!
//! The product list only claims; nothing here reads the claim but to say that it was a supplier's.

mod born;
mod received;
mod says;
mod stable;
#[cfg(test)]
mod tests;
mod text;

pub use born::{Born, HeatProof, Part};
pub use received::{Declared, received};
pub use says::ConditionSays;
pub use stable::{Stable, by_nature, is_of_that_sort, natural, wets};

use crate::dates::Because;
use crate::product::Product;
use crate::words::{ConditionKind, ProvedBy, StableBy};

/// What food is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Condition {
    /// Raw, treated or ready to eat.
    pub is: ConditionKind,
    /// What proves it, where it is ready or was cooked through.
    pub by: ProvedBy,
    /// What shows that it needs no time and temperature control, if anything does.
    pub stable: Option<StableBy>,
    /// Is meat in it that was warmed, and nothing shows that it was enough? It is no raw meat any more, whatever is made
    /// of it.
    pub partly_cooked: bool,
}

impl Condition {
    /// Raw, as it comes from the animal.
    pub const RAW: Condition = Condition {
        is: ConditionKind::Raw,
        by: ProvedBy::Nothing,
        stable: None,
        partly_cooked: false,
    };

    /// Something was done to it that proves nothing.
    pub const TREATED: Condition = Condition {
        is: ConditionKind::Treated,
        ..Condition::RAW
    };

    /// Cooked through by a proof, as food that its list calls raw.
    pub fn treated(by: ProvedBy) -> Condition {
        Condition {
            by,
            ..Condition::TREATED
        }
    }

    /// Ready to eat by a proof.
    pub fn ready(by: ProvedBy) -> Condition {
        Condition {
            is: ConditionKind::Ready,
            by,
            ..Condition::RAW
        }
    }

    /// The same, with what shows that it is stable.
    pub fn and_stable(self, stable: Option<StableBy>) -> Condition {
        Condition { stable, ..self }
    }

    /// The same, where meat in it may be half cooked; what is proven ready is not.
    pub fn and_partly_cooked(self, partly_cooked: bool) -> Condition {
        let partly_cooked = partly_cooked && !self.is_ready();
        Condition {
            partly_cooked,
            ..self
        }
    }

    /// Is it proven ready to eat?
    pub fn is_ready(self) -> bool {
        self.is == ConditionKind::Ready
    }

    /// Was it cooked through by a proof, under a name that is listed as raw? Heat gives it no day anew.
    pub fn is_cooked_through(self) -> bool {
        let by_heat = matches!(self.by, ProvedBy::Heat | ProvedBy::Boiled);
        self.is == ConditionKind::Treated && by_heat
    }

    /// The same after its readings were looked at: what shows that it is stable, where that is readings,
    /// goes with them.
    pub fn and_read(self, shown: Option<&Stable>) -> Condition {
        match self.stable {
            None | Some(StableBy::Readings) => self.and_stable(shown.map(|stable| stable.by)),
            Some(_) => self,
        }
    }

    /// The same once a person has let it go by name.
    pub fn let_go(self) -> Condition {
        Condition::ready(ProvedBy::Person).and_stable(self.stable)
    }

    /// The same once a person has said by name that it keeps without being kept cold.
    pub fn let_stand(self) -> Condition {
        self.and_stable(self.stable.or(Some(StableBy::Approved)))
    }

    /// Does it fall short of what its product's entry claims: ready, or else raw?
    pub fn lacks_proof(self, product: &Product) -> bool {
        !self.is_ready() && (!product.raw || self.partly_cooked)
    }
}

/// A condition with its reasons.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Proven {
    /// What it is.
    pub condition: Condition,
    /// Why.
    pub because: Vec<Because>,
}
