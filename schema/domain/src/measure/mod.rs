//! Quantities that are neither weights nor dates: temperatures, percentages, pH, water activity.
//!
//! Decimals, never floats: a limit that is met exactly is met.

mod temperature;

pub use temperature::{Printed, Scale, Temperature};

use rust_decimal::Decimal;
use std::fmt;

/// So many in a hundred. What is typed as 6.25 % is 0.0625 of the whole (`us-H7`).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Percent(Decimal);

impl Percent {
    /// So many in a hundred.
    pub fn new(percent: impl Into<Decimal>) -> Percent {
        Percent(percent.into().normalize())
    }

    /// `part` of `whole`; nothing of nothing is nothing.
    pub fn of(part: Decimal, whole: Decimal) -> Percent {
        match whole.is_zero() {
            true => Percent::default(),
            false => Percent::new(part * Decimal::ONE_HUNDRED / whole),
        }
    }

    /// The number before the sign.
    pub fn number(self) -> Decimal {
        self.0
    }

    /// As a part of one.
    pub fn fraction(self) -> Decimal {
        self.0 / Decimal::ONE_HUNDRED
    }
}

impl Percent {
    /// The number as it is shown: to two decimals.
    pub fn to_hundredths(self) -> Decimal {
        self.0.round_dp(2)
    }
}

impl fmt::Display for Percent {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} %", self.to_hundredths().normalize())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_percent_is_a_hundredth() {
        assert_eq!(
            Percent::new(Decimal::new(625, 2)).fraction(),
            Decimal::new(625, 4)
        );
        assert_eq!(
            Percent::of(Decimal::ONE, Decimal::from(8)).to_string(),
            "12.5 %"
        );
    }
}
