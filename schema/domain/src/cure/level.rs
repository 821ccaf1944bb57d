//! Parts per million that know what they are counted as, and when.

use super::says::{CureSays, LevelSays};
use super::{Basis, Stage};
use crate::refusal::{Refusal, Result};
use crate::rows::RowId;
use rust_decimal::Decimal;

/// Parts per million by weight (mg/kg), with basis and stage. Two of them are compared only where
/// both are the same; [`CureLevel::on`] changes the basis, nothing changes the stage.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CureLevel {
    /// How many.
    pub ppm: Decimal,
    /// Counted as what.
    pub basis: Basis,
    /// What went in, or what is left.
    pub stage: Stage,
}

impl CureLevel {
    /// What goes in.
    pub fn ingoing(ppm: impl Into<Decimal>, basis: Basis) -> CureLevel {
        CureLevel {
            ppm: ppm.into(),
            basis,
            stage: Stage::Ingoing,
        }
    }

    /// What a laboratory finds.
    pub fn residual(ppm: impl Into<Decimal>, basis: Basis) -> CureLevel {
        CureLevel {
            stage: Stage::Residual,
            ..CureLevel::ingoing(ppm, basis)
        }
    }

    /// The same, counted as something else.
    ///
    /// # Errors
    /// Nitrite does not turn into nitrate by counting it otherwise.
    pub fn on(self, basis: Basis, masses: &AtomicMasses) -> Result<CureLevel> {
        if self.basis.is_nitrite() != basis.is_nitrite() {
            let says = CureSays::OtherThings {
                from: self.basis,
                to: basis,
            };
            return Err(Refusal::cannot_be("basis", says));
        }
        Ok(CureLevel {
            ppm: self.ppm * masses.factor(self.basis, basis),
            basis,
            ..self
        })
    }
}

impl CureLevel {
    /// The same, once it is known to be a number that can be.
    ///
    /// # Errors
    /// Less than nothing, or more parts than there are in a million.
    pub(super) fn checked(self) -> Result<CureLevel> {
        let million = Decimal::from(1_000_000);
        if self.ppm < Decimal::ZERO || self.ppm > million {
            let says = CureSays::PpmCannotBe { ppm: self.ppm };
            return Err(Refusal::cannot_be("ppm", says));
        }
        Ok(self)
    }

    /// As it stands in a sentence: `156.25 ppm as sodium nitrite, ingoing`.
    pub(super) fn says(self) -> LevelSays {
        let (ppm, basis) = (self.ppm.round_dp(2), self.basis);
        match self.stage {
            Stage::Ingoing => LevelSays::Ingoing { ppm, basis },
            Stage::Residual => LevelSays::Residual { ppm, basis },
        }
    }
}

/// The atomic masses that the conversions are worked out from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AtomicMasses {
    /// Where they stand.
    pub row: RowId,
    /// Na.
    pub sodium: Decimal,
    /// K.
    pub potassium: Decimal,
    /// N.
    pub nitrogen: Decimal,
    /// O.
    pub oxygen: Decimal,
}

impl Default for AtomicMasses {
    fn default() -> AtomicMasses {
        AtomicMasses {
            row: RowId::new(""),
            sodium: Decimal::ZERO,
            potassium: Decimal::ZERO,
            nitrogen: Decimal::ZERO,
            oxygen: Decimal::ZERO,
        }
    }
}

impl AtomicMasses {
    fn of(&self, basis: Basis) -> Decimal {
        let nitrite = self.nitrogen + self.oxygen * Decimal::TWO;
        let nitrate = nitrite + self.oxygen;
        match basis {
            Basis::SodiumNitrite => self.sodium + nitrite,
            Basis::PotassiumNitrite => self.potassium + nitrite,
            Basis::NitriteIon => nitrite,
            Basis::SodiumNitrate => self.sodium + nitrate,
            Basis::PotassiumNitrate => self.potassium + nitrate,
            Basis::NitrateIon => nitrate,
        }
    }

    /// How much of `to` one part of `from` is; nothing between nitrite and nitrate.
    pub fn factor(&self, from: Basis, to: Basis) -> Decimal {
        if from == to {
            return Decimal::ONE;
        }
        match from.is_nitrite() == to.is_nitrite() {
            true => self
                .of(to)
                .checked_div(self.of(from))
                .unwrap_or(Decimal::ZERO),
            false => Decimal::ZERO,
        }
    }
}
