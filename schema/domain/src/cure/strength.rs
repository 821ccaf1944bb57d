//! How strong a curing salt is: what stands on the bag of that lot, never a constant.

use super::says::CureSays;
use super::{Alkali, CureRules, Makeup};
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
    /// Was it worked out here from what was weighed together? Then little of it is no fraction typed for a percent.
    pub weighed: bool,
}

impl Strength {
    /// A curing salt of sodium nitrite, the rest salt.
    pub fn nitrite(percent: impl Into<Decimal>) -> Strength {
        Strength {
            nitrite: Some(Percent::new(percent)),
            ..Strength::unknown()
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
            weighed: false,
        }
    }

    /// Does anything say how strong it is?
    pub fn is_told(&self) -> bool {
        self.nitrite.is_some() || self.nitrate.is_some()
    }

    /// Is there anything in it that cures?
    pub fn cures(&self) -> bool {
        let parts = [self.nitrite, self.nitrate];
        parts
            .into_iter()
            .flatten()
            .any(|percent| percent > Percent::default())
    }

    /// What is in a bag that is sold as curing salt, checked: it holds nitrite or nitrate.
    ///
    /// # Errors
    /// As [`Strength::makeup`]; and where neither is in it.
    pub fn of_bag(&self, rules: &CureRules, field: &str) -> Result<Makeup> {
        let makeup = self.makeup(rules, field)?;
        match self.cures() {
            true => Ok(makeup),
            false => Err(Refusal::cannot_be(field, CureSays::NothingCures)),
        }
    }

    /// What is in it, checked. `field` names the lot in a refusal.
    ///
    /// # Errors
    /// The strength is not given, cannot be, or looks like a fraction typed for a percent.
    pub fn makeup(&self, rules: &CureRules, field: &str) -> Result<Makeup> {
        if !self.is_told() {
            return Err(Refusal::cannot_be(field, CureSays::NoStrength));
        }
        let (nitrite, nitrate) = (
            self.nitrite.unwrap_or_default(),
            self.nitrate.unwrap_or_default(),
        );
        for percent in [Some(nitrite), Some(nitrate), self.salt]
            .into_iter()
            .flatten()
            .filter(|_| !self.weighed)
        {
            rules.plausible.strength(percent, field)?;
        }
        let rest = Percent::new(Decimal::ONE_HUNDRED - nitrite.number() - nitrate.number());
        if rest.number() < Decimal::ZERO || self.salt.is_some_and(|salt| salt > rest) {
            let says = CureSays::StrengthTooMuch { nitrite, nitrate };
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

#[cfg(test)]
mod tests {
    use super::super::Plausible;
    use super::{CureRules, Decimal, Percent, Strength};

    impl Strength {
        /// The same with that much sodium nitrate too.
        fn and_nitrate(self, percent: impl Into<Decimal>) -> Strength {
            Strength {
                nitrate: Some(Percent::new(percent)),
                ..self
            }
        }
    }

    #[track_caller]
    fn check(strength: Strength, expected: Result<i64, &str>) {
        let rules = CureRules {
            plausible: Plausible {
                strength: Percent::new(Decimal::new(1, 1)),
                ..Plausible::default()
            },
            ..CureRules::default()
        };
        match (strength.makeup(&rules, "lot"), expected) {
            (Ok(makeup), Ok(salt)) => assert_eq!(makeup.salt.number(), Decimal::new(salt, 2)),
            (Err(refusal), Err(part)) => {
                assert_eq!(refusal.field.as_deref(), Some("lot"));
                assert_eq!(refusal.detail.to_string(), part);
            }
            (made, expected) => panic!("{made:?} is not {expected:?}"),
        }
    }

    #[test]
    fn the_rest_is_salt_and_what_is_not_given_is_not_guessed() {
        let no_1 = Strength::nitrite(Decimal::new(625, 2));
        check(no_1, Ok(9_375));
        check(no_1.and_nitrate(4), Ok(8_975));
        let weighed = |nitrite| Strength {
            weighed: true,
            ..Strength::nitrite(nitrite)
        };
        check(weighed(Decimal::new(6, 2)), Ok(9_994));
        let sweet = Strength {
            salt: Some(Percent::new(80)),
            ..no_1
        };
        check(sweet, Ok(8_000));
        check(Strength::unknown(), Err("cure-no-strength"));
        let none = Strength::nitrite(0).and_nitrate(0);
        assert!(none.of_bag(&CureRules::default(), "lot").is_err());
        assert!(no_1.of_bag(&CureRules::default(), "lot").is_ok());
        check(
            Strength::nitrite(Decimal::new(625, 4)),
            Err("cure-fraction percent=0.0625 meant=6.25"),
        );
        check(
            Strength::nitrite(625),
            Err("cure-percent-cannot-be percent=625"),
        );
        check(
            Strength::nitrite(60).and_nitrate(41),
            Err("cure-strength-too-much nitrite=60 nitrate=41"),
        );
    }
}
