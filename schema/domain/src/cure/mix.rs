//! The arithmetic of the inspectors' handbook, in any one unit of weight (`us-H1` to `us-H7`).

use super::Method;
use super::says::CureSays;
use crate::measure::Percent;
use crate::refusal::{Refusal, Result};
use rust_decimal::Decimal;

/// Parts in a million parts.
const MILLION: Decimal = Decimal::from_parts(1_000_000, 0, 0, false, 0);

/// What a dose is spread over. All weights are in one unit, whichever; grams or pounds give the
/// same parts per million.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Mix {
    /// The green meat, never the finished weight, as it counts: without the skin's share.
    pub meat: Decimal,
    /// Water that is bagged with the meat (equilibrium brine).
    pub water: Decimal,
    /// The whole pickle: water, salt, sugar, cure.
    pub pickle: Decimal,
    /// How much pickle the meat takes, of its own weight: the pump, or the pick-up.
    pub taken: Percent,
}

impl Mix {
    /// The parts of the dose that meet a million parts of meat.
    ///
    /// # Errors
    /// The weight that the method divides by is missing.
    pub fn ppm(&self, method: Method, dose: Decimal) -> Result<Decimal> {
        let (times, over) = self.ratio(method)?;
        Ok(dose * times * MILLION / over)
    }

    /// The dose that gives so many parts per million.
    ///
    /// # Errors
    /// As [`Mix::ppm`].
    pub fn dose(&self, method: Method, ppm: Decimal) -> Result<Decimal> {
        let (times, over) = self.ratio(method)?;
        Ok(ppm * over / (MILLION * times))
    }

    /// What the dose is multiplied with, and divided by.
    fn ratio(&self, method: Method) -> Result<(Decimal, Decimal)> {
        let missing = |field: &str, says: CureSays| Err(Refusal::cannot_be(field, says));
        if self.meat <= Decimal::ZERO && !method.takes_part_of_a_pickle() {
            return missing("meat", CureSays::MethodNoMeat { method });
        }
        if method.has_pickle() && self.pickle <= Decimal::ZERO {
            return missing("pickle", CureSays::MethodNoPickle { method });
        }
        if method.takes_part_of_a_pickle() && self.taken.number() <= Decimal::ZERO {
            let (field, says) = match method {
                Method::Pumped => ("pump", CureSays::MethodNoPump { method }),
                _ => ("pickup", CureSays::MethodNoPickUp { method }),
            };
            return missing(field, says);
        }
        Ok(match method {
            Method::Dry | Method::EquilibriumDry | Method::Comminuted => (Decimal::ONE, self.meat),
            Method::EquilibriumBrine if self.water <= Decimal::ZERO => {
                return missing("water", CureSays::MethodNoWater { method });
            }
            Method::EquilibriumBrine => (Decimal::ONE, self.meat + self.water),
            Method::ImmersionEquilibrium => (Decimal::ONE, self.meat + self.pickle),
            Method::Pumped | Method::ImmersionPickUp => (self.taken.fraction(), self.pickle),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(method: Method, expected: Option<i64>) {
        let mix = Mix {
            meat: 1_000.into(),
            water: 500.into(),
            pickle: 2_000.into(),
            taken: Percent::new(10),
        };
        let ppm = mix.ppm(method, Decimal::new(3, 1));
        assert_eq!(ppm.ok(), expected.map(Decimal::from), "{method}");
    }

    #[test]
    fn each_method_divides_by_its_own_weight() {
        check(Method::Dry, Some(300));
        check(Method::EquilibriumDry, Some(300));
        check(Method::Comminuted, Some(300));
        check(Method::EquilibriumBrine, Some(200));
        check(Method::ImmersionEquilibrium, Some(100));
        check(Method::ImmersionPickUp, Some(15));
        check(Method::Pumped, Some(15));
    }

    #[test]
    fn a_missing_weight_is_named() {
        let field = |method| Mix::default().ppm(method, Decimal::ONE).unwrap_err().field;
        assert_eq!(field(Method::Dry).as_deref(), Some("meat"));
        assert_eq!(field(Method::Pumped).as_deref(), Some("pickle"));
    }
}
