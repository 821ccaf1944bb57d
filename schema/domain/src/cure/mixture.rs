//! A curing salt, a cure mix, a brine: how strong a lot of it is, whether that stands on its bag or was
//! weighed together here.

use super::assess::milligrams;
use super::weighing::grams;
use super::{Alkali, Basis, Cure, CureRules, Strength};
use crate::grams::Grams;
use crate::measure::Percent;
use crate::refusal::Result;
use rust_decimal::Decimal;

/// What a lot of it holds, by weight.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Mixture {
    /// Nitrite, nitrate and salt.
    pub strength: Strength,
    /// Sugar.
    pub sugar: Percent,
    /// Water.
    pub water: Percent,
}

impl Mixture {
    /// A curing salt as its bag says it.
    pub fn bag(strength: Strength) -> Mixture {
        Mixture {
            strength,
            sugar: Percent::default(),
            water: Percent::default(),
        }
    }

    /// What was weighed together, without any meat: `whole` is what it all weighs.
    ///
    /// # Errors
    /// As [`Strength::makeup`].
    pub fn weighed(cure: &Cure, whole: Grams, rules: &CureRules) -> Result<Mixture> {
        let (mut nitrite, mut nitrate) = (Decimal::ZERO, Decimal::ZERO);
        let (mut potassium_nitrite, mut potassium_nitrate) = (true, true);
        let mut salt = grams(cure.salt);
        for (nth, (strength, weight)) in cure.salts.iter().enumerate() {
            let makeup = strength.makeup(rules, &format!("salts[{nth}]"))?;
            let of = |percent: Percent| grams(*weight) * percent.fraction();
            nitrite += of(makeup.share(Basis::SodiumNitrite).0);
            nitrate += of(makeup.share(Basis::SodiumNitrate).0);
            salt += of(makeup.salt);
            let holds = |percent: Percent| percent > Percent::default();
            // Of both metals together all counts as sodium's, which has more nitrite in the gram.
            potassium_nitrite &= !holds(makeup.nitrite) || makeup.nitrite_of == Alkali::Potassium;
            potassium_nitrate &= !holds(makeup.nitrate) || makeup.nitrate_of == Alkali::Potassium;
        }
        let whole = grams(whole);
        let percent = |part: Decimal| match whole.is_zero() {
            true => Percent::default(),
            false => Percent::new((part * Decimal::ONE_HUNDRED / whole).round_dp(6)),
        };
        let alkali = |potassium| match potassium {
            true => Alkali::Potassium,
            false => Alkali::Sodium,
        };
        let holds = |part: Decimal| part > Decimal::ZERO;
        Ok(Mixture {
            strength: Strength {
                nitrite: Some(percent(nitrite)),
                nitrite_of: alkali(potassium_nitrite && holds(nitrite)),
                nitrate: Some(percent(nitrate)),
                nitrate_of: alkali(potassium_nitrate && holds(nitrate)),
                salt: Some(percent(salt)),
                weighed: true,
            },
            sugar: percent(grams(cure.sugar)),
            water: percent(grams(cure.water)),
        })
    }

    /// Is it known how much nitrite or nitrate is in it?
    pub fn is_known(&self) -> bool {
        self.strength.nitrite.is_some() || self.strength.nitrate.is_some()
    }

    /// Puts so much of it to a cure: what it holds of sugar and water counts as that.
    pub fn put_to(&self, cure: &mut Cure, weight: Grams) {
        let of = |percent: Percent| milligrams(grams(weight) * percent.fraction());
        let (sugar, water) = (of(self.sugar), of(self.water));
        let dry = weight - sugar - water;
        let share = match dry.is_none_left() {
            true => Decimal::ZERO,
            false => grams(weight) / grams(dry),
        };
        let scaled = |percent: Option<Percent>| {
            percent.map(|percent| Percent::new((percent.number() * share).round_dp(12)))
        };
        let strength = match share == Decimal::ONE {
            true => self.strength,
            false => Strength {
                nitrite: scaled(self.strength.nitrite),
                nitrate: scaled(self.strength.nitrate),
                salt: scaled(self.strength.salt),
                ..self.strength
            },
        };
        cure.salts.push((strength, dry));
        cure.sugar += sugar;
        cure.water += water;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cure::{Class, Method};

    fn day() -> chrono::NaiveDate {
        "2026-06-10".parse().unwrap()
    }

    fn empty() -> Cure {
        Cure::new(Method::Dry, Class::Bacon, Grams::ZERO, day())
    }

    fn no_1() -> Mixture {
        Mixture::bag(Strength::nitrite(Decimal::new(625, 2)))
    }

    #[test]
    fn what_is_mixed_here_brings_what_its_parts_would_have() {
        let rules = CureRules::default();
        let mut parts = empty();
        no_1().put_to(&mut parts, Grams::whole(40));
        parts.salt = Grams::whole(400);
        parts.sugar = Grams::whole(160);
        parts.water = Grams::whole(1_400);
        let brine = Mixture::weighed(&parts, Grams::whole(2_000), &rules).unwrap();
        let percent = |hundredths, places| Percent::new(Decimal::new(hundredths, places));
        assert_eq!(brine.strength.nitrite, Some(percent(125, 3)));
        assert_eq!(brine.strength.salt, Some(percent(21_875, 3)));
        assert_eq!((brine.sugar, brine.water), (percent(8, 0), percent(70, 0)));
        // Half of it is half of all that.
        let mut half = empty();
        brine.put_to(&mut half, Grams::whole(1_000));
        assert_eq!(half.sugar, Grams::whole(80));
        assert_eq!(half.water, Grams::whole(700));
        let (strength, dry) = half.salts[0];
        assert_eq!(dry, Grams::whole(220));
        let nitrite = grams(dry) * strength.nitrite.unwrap().fraction();
        assert_eq!(nitrite.round_dp(6), Decimal::new(125, 2));
        let makeup = strength.makeup(&rules, "salts").unwrap();
        let salt = grams(dry) * makeup.salt.fraction();
        assert_eq!(salt.round_dp(6), Decimal::new(21_875, 2));
    }

    #[test]
    fn of_two_metals_the_stronger_counts() {
        let rules = CureRules::default();
        let potassium = Strength {
            nitrite_of: Alkali::Potassium,
            ..Strength::nitrite(5)
        };
        let check = |strengths: &[Strength], expected: Alkali| {
            let mut parts = empty();
            for strength in strengths {
                Mixture::bag(*strength).put_to(&mut parts, Grams::whole(100));
            }
            let mixed = Mixture::weighed(&parts, Grams::whole(1_000), &rules).unwrap();
            assert_eq!(mixed.strength.nitrite_of, expected, "{strengths:?}");
        };
        check(&[potassium], Alkali::Potassium);
        check(&[potassium, Strength::nitrite(5)], Alkali::Sodium);
        check(&[Strength::nitrite(5)], Alkali::Sodium);
    }
}
