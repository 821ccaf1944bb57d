//! What a cure brings into the meat, salt by salt.

use super::{AtomicMasses, Basis, CureLevel, Stage};
use crate::measure::Percent;
use rust_decimal::Decimal;

/// Parts per million of each salt, each by its own weight, and of the accelerator.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Ingoing {
    /// NaNO2.
    pub sodium_nitrite: Decimal,
    /// KNO2.
    pub potassium_nitrite: Decimal,
    /// NaNO3.
    pub sodium_nitrate: Decimal,
    /// KNO3.
    pub potassium_nitrate: Decimal,
    /// Sodium ascorbate or erythorbate.
    pub ascorbate: Decimal,
}

/// What meat that was cured before brings: parts per million as the sodium salts, and salt, each of its green
/// weight. Less may be left of it, more is not.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Brought {
    /// Nitrite.
    pub nitrite_ppm: Decimal,
    /// Nitrate.
    pub nitrate_ppm: Decimal,
    /// Salt.
    pub salt: Percent,
    /// How much of its weight today it took up then: what goes in is counted by the green meat alone (`us-H1`).
    pub taken_up: Percent,
}

impl Brought {
    /// Is it anything at all?
    pub fn is_any(&self) -> bool {
        let zero = Decimal::ZERO;
        self.nitrite_ppm > zero || self.nitrate_ppm > zero || self.salt.number() > zero
    }
}

impl Ingoing {
    /// Just that level, as if of the salt that its basis names; an ion as the sodium salt.
    pub fn of(level: CureLevel, masses: &AtomicMasses) -> Ingoing {
        let mut ingoing = Ingoing::default();
        ingoing.add(level.basis, level.ppm, masses);
        ingoing
    }

    /// Adds so many parts per million.
    pub fn add(&mut self, basis: Basis, ppm: Decimal, masses: &AtomicMasses) {
        match basis {
            Basis::SodiumNitrite => self.sodium_nitrite += ppm,
            Basis::PotassiumNitrite => self.potassium_nitrite += ppm,
            Basis::SodiumNitrate => self.sodium_nitrate += ppm,
            Basis::PotassiumNitrate => self.potassium_nitrate += ppm,
            Basis::NitriteIon => {
                self.sodium_nitrite += ppm * masses.factor(basis, Basis::SodiumNitrite);
            }
            Basis::NitrateIon => {
                self.sodium_nitrate += ppm * masses.factor(basis, Basis::SodiumNitrate);
            }
        }
    }

    /// Each salt of the kind that the basis counts, by its own weight.
    pub(super) fn salts(&self, nitrite: bool) -> [(Basis, Decimal); 2] {
        match nitrite {
            true => [
                (Basis::SodiumNitrite, self.sodium_nitrite),
                (Basis::PotassiumNitrite, self.potassium_nitrite),
            ],
            false => [
                (Basis::SodiumNitrate, self.sodium_nitrate),
                (Basis::PotassiumNitrate, self.potassium_nitrate),
            ],
        }
    }

    /// All of the nitrite, or all of the nitrate, counted as the basis says.
    pub fn level(&self, basis: Basis, masses: &AtomicMasses) -> CureLevel {
        let ppm = self
            .salts(basis.is_nitrite())
            .into_iter()
            .map(|(salt, ppm)| ppm * masses.factor(salt, basis))
            .sum();
        CureLevel {
            ppm,
            basis,
            stage: Stage::Ingoing,
        }
    }

    /// Is there any nitrite?
    pub fn has_nitrite(&self) -> bool {
        self.sodium_nitrite + self.potassium_nitrite > Decimal::ZERO
    }

    /// Is there any nitrate?
    pub fn has_nitrate(&self) -> bool {
        self.sodium_nitrate + self.potassium_nitrate > Decimal::ZERO
    }
}
