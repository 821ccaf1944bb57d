//! What is in a curing salt, once its strength has been checked.

use super::{Alkali, Basis};
use crate::measure::Percent;

/// The parts of a curing salt, by weight.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Makeup {
    /// Nitrite.
    pub nitrite: Percent,
    /// Which nitrite.
    pub nitrite_of: Alkali,
    /// Nitrate.
    pub nitrate: Percent,
    /// Which nitrate.
    pub nitrate_of: Alkali,
    /// Common salt.
    pub salt: Percent,
}

impl Makeup {
    /// The share of it that a basis counts, in its own weight: nitrite for a nitrite basis.
    pub const fn share(&self, basis: Basis) -> (Percent, Basis) {
        match (basis.is_nitrite(), self.nitrite_of, self.nitrate_of) {
            (true, Alkali::Sodium, _) => (self.nitrite, Basis::SodiumNitrite),
            (true, Alkali::Potassium, _) => (self.nitrite, Basis::PotassiumNitrite),
            (false, _, Alkali::Sodium) => (self.nitrate, Basis::SodiumNitrate),
            (false, _, Alkali::Potassium) => (self.nitrate, Basis::PotassiumNitrate),
        }
    }
}
