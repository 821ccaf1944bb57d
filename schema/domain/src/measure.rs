//! Quantities that are neither weights nor dates: temperatures, percentages, pH, water activity.
//!
//! Decimals, never floats: a limit that is met exactly is met.

use rust_decimal::Decimal;
use std::fmt;

/// A temperature. It is kept in degrees Fahrenheit, because the strictest tables are written in them
/// and both ways of reading one (45 °C = 113 °F) come out exact.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Temperature {
    fahrenheit: Decimal,
}

impl Temperature {
    /// From degrees Celsius.
    pub fn celsius(degrees: impl Into<Decimal>) -> Temperature {
        let fahrenheit = degrees.into() * Decimal::new(18, 1) + Decimal::from(32);
        Temperature {
            fahrenheit: fahrenheit.normalize(),
        }
    }

    /// From degrees Fahrenheit.
    pub fn fahrenheit(degrees: impl Into<Decimal>) -> Temperature {
        Temperature {
            fahrenheit: degrees.into().normalize(),
        }
    }

    /// In degrees Fahrenheit.
    pub fn in_fahrenheit(self) -> Decimal {
        self.fahrenheit
    }

    /// In degrees Celsius, to a tenth where it does not come out even.
    pub fn in_celsius(self) -> Decimal {
        self.in_exact_celsius().round_dp(1).normalize()
    }

    /// In degrees Celsius, so finely that the degrees Fahrenheit come out again to a tenth.
    pub fn in_exact_celsius(self) -> Decimal {
        ((self.fahrenheit - Decimal::from(32)) / Decimal::new(18, 1))
            .round_dp(4)
            .normalize()
    }
}

impl fmt::Display for Temperature {
    /// `54.4 °C (130 °F)`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{} °C ({} °F)",
            self.in_celsius(),
            self.fahrenheit.round_dp(1).normalize()
        )
    }
}

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
    fn both_scales_come_out_even() {
        assert_eq!(Temperature::celsius(45), Temperature::fahrenheit(113));
        assert_eq!(Temperature::fahrenheit(130).to_string(), "54.4 °C (130 °F)");
        assert!(Temperature::celsius(5) == Temperature::fahrenheit(41));
        let fine = Temperature::fahrenheit(130).in_exact_celsius();
        let again = Temperature::celsius(fine).in_fahrenheit();
        assert_eq!(again.round_dp(1).normalize(), Decimal::from(130));
    }

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
