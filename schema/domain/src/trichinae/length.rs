//! A thickness: of a piece, a casing, a block.

use super::says::LengthSays;
use crate::says::Arg;
use rust_decimal::Decimal;

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

impl From<Length> for Arg {
    /// `88.9 mm (3.5 in)`.
    fn from(length: Length) -> Arg {
        Arg::from(LengthSays::Of {
            mm: length.millimetres.round_dp(1),
            inches: (length.millimetres / Decimal::new(254, 1)).round_dp(2),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn inches_come_out_even() {
        let casing = Length::inches(Decimal::new(35, 1));
        assert_eq!(casing, Length::millimetres(Decimal::new(889, 1)));
        assert_eq!(
            Arg::from(casing).to_string(),
            "(thickness-of mm=88.9 inches=3.5)"
        );
    }
}
