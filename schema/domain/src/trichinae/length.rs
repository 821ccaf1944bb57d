//! A thickness: of a piece, a casing, a block.

use rust_decimal::Decimal;
use std::fmt;

/// A thickness or diameter, kept in millimetres: inches come out exact.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Length {
    millimetres: Decimal,
}

impl Length {
    /// From millimetres.
    pub fn millimetres(count: impl Into<Decimal>) -> Length {
        Length {
            millimetres: count.into().normalize(),
        }
    }

    /// From inches.
    pub fn inches(count: impl Into<Decimal>) -> Length {
        Length::millimetres(count.into() * Decimal::new(254, 1))
    }

    /// In millimetres.
    pub fn in_millimetres(self) -> Decimal {
        self.millimetres
    }
}

impl fmt::Display for Length {
    /// `88.9 mm (3.5 in)`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let inches = (self.millimetres / Decimal::new(254, 1)).round_dp(2);
        write!(
            f,
            "{} mm ({} in)",
            self.millimetres.round_dp(1).normalize(),
            inches.normalize()
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn inches_come_out_even() {
        let casing = Length::inches(Decimal::new(35, 1));
        assert_eq!(casing, Length::millimetres(Decimal::new(889, 1)));
        assert_eq!(casing.to_string(), "88.9 mm (3.5 in)");
    }
}
