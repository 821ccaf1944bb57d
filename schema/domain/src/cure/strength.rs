//! How strong a curing salt is: what stands on the bag of that lot, never a constant.

use super::{Alkali, Makeup, Rules};
use crate::measure::Percent;
use crate::refusal::{Refusal, Result};
use rust_decimal::Decimal;

/// What the bag says. What it does not say is not known: a curing salt with neither number is
/// refused, and the rest is taken for common salt unless the bag says otherwise.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Strength {
    /// Nitrite, by weight: 6.25 for most no. 1.
    pub nitrite: Option<Percent>,
    /// Which nitrite.
    pub nitrite_of: Alkali,
    /// Nitrate, by weight.
    pub nitrate: Option<Percent>,
    /// Which nitrate.
    pub nitrate_of: Alkali,
    /// Common salt, by weight, where something else is in it too (sugar, dextrose).
    pub salt: Option<Percent>,
}

impl Strength {
    /// A curing salt of sodium nitrite, the rest salt.
    pub fn nitrite(percent: impl Into<Decimal>) -> Strength {
        Strength {
            nitrite: Some(Percent::new(percent)),
            ..Strength::unknown()
        }
    }

    /// The same with that much sodium nitrate too.
    pub fn and_nitrate(self, percent: impl Into<Decimal>) -> Strength {
        Strength {
            nitrate: Some(Percent::new(percent)),
            ..self
        }
    }

    /// A bag without a label.
    pub const fn unknown() -> Strength {
        Strength {
            nitrite: None,
            nitrite_of: Alkali::Sodium,
            nitrate: None,
            nitrate_of: Alkali::Sodium,
            salt: None,
        }
    }

    /// What is in it, checked. `field` names the lot in a refusal.
    ///
    /// # Errors
    /// The strength is not given, cannot be, or looks like a fraction typed for a percent.
    pub fn makeup(&self, rules: &Rules, field: &str) -> Result<Makeup> {
        if self.nitrite.is_none() && self.nitrate.is_none() {
            let says = "The strength of this curing salt is not given. Read the per cent of nitrite and nitrate off the bag and write it on the lot; it differs from bag to bag.";
            return Err(Refusal::cannot_be(field, says));
        }
        let (nitrite, nitrate) = (
            self.nitrite.unwrap_or_default(),
            self.nitrate.unwrap_or_default(),
        );
        for percent in [Some(nitrite), Some(nitrate), self.salt]
            .into_iter()
            .flatten()
        {
            rules.plausible.strength(percent, field)?;
        }
        let rest = Percent::new(Decimal::ONE_HUNDRED - nitrite.number() - nitrate.number());
        if rest.number() < Decimal::ZERO || self.salt.is_some_and(|salt| salt > rest) {
            let says = format!(
                "{nitrite} nitrite, {nitrate} nitrate and the salt come to more than 100 %. Read the bag again."
            );
            return Err(Refusal::cannot_be(field, says));
        }
        Ok(Makeup {
            nitrite,
            nitrite_of: self.nitrite_of,
            nitrate,
            nitrate_of: self.nitrate_of,
            salt: self.salt.unwrap_or(rest),
        })
    }
}
