//! Weight, kept as whole milligrams: a cure is weighed to 0.1 g and nothing may be lost to rounding.

use std::fmt;
use std::iter::Sum;
use std::ops::{Add, AddAssign, Neg, Sub, SubAssign};

/// A weight or a difference of weights, in whole milligrams.
///
/// On the outside it is grams with at most three decimals; it never passes through a float.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Grams(i64);

impl Grams {
    /// No weight.
    pub const ZERO: Grams = Grams(0);

    /// From whole milligrams.
    pub const fn from_milligrams(milligrams: i64) -> Self {
        Grams(milligrams)
    }

    /// From whole grams.
    pub const fn whole(grams: i64) -> Self {
        Grams(grams * 1_000)
    }

    /// As whole milligrams.
    pub const fn milligrams(self) -> i64 {
        self.0
    }

    /// Is there nothing left, or less than nothing?
    pub const fn is_none_left(self) -> bool {
        self.0 <= 0
    }

    /// Splits evenly into `count` parts; the first parts take the odd milligrams.
    ///
    /// The parts sum to `self` exactly. `count` must be at least 1.
    pub fn split(self, count: u32) -> Vec<Grams> {
        let count = i64::from(count);
        let (each, odd) = (self.0.div_euclid(count), self.0.rem_euclid(count));
        (0..count)
            .map(|nth| Grams(each + i64::from(nth < odd)))
            .collect()
    }

    /// The given number of thousandths of this weight, rounded down.
    pub const fn thousandths(self, parts: i64) -> Grams {
        Grams(self.0 * parts / 1_000)
    }
}

impl Add for Grams {
    type Output = Grams;
    fn add(self, other: Grams) -> Grams {
        Grams(self.0 + other.0)
    }
}

impl Sub for Grams {
    type Output = Grams;
    fn sub(self, other: Grams) -> Grams {
        Grams(self.0 - other.0)
    }
}

impl Neg for Grams {
    type Output = Grams;
    fn neg(self) -> Grams {
        Grams(-self.0)
    }
}

impl AddAssign for Grams {
    fn add_assign(&mut self, other: Grams) {
        self.0 += other.0;
    }
}

impl SubAssign for Grams {
    fn sub_assign(&mut self, other: Grams) {
        self.0 -= other.0;
    }
}

impl Sum for Grams {
    fn sum<I: Iterator<Item = Grams>>(weights: I) -> Grams {
        weights.fold(Grams::ZERO, Add::add)
    }
}

/// As a cook reads it: thousands apart, decimals only where there are any: `1 125 g`, `0.5 g`.
impl fmt::Display for Grams {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let whole = (self.0 / 1_000).unsigned_abs().to_string();
        let thousandths = (self.0 % 1_000).unsigned_abs();
        if self.0 < 0 {
            f.write_str("-")?;
        }
        for (place, digit) in whole.chars().enumerate() {
            if place > 0 && (whole.len() - place).is_multiple_of(3) {
                f.write_str(" ")?;
            }
            write!(f, "{digit}")?;
        }
        if thousandths > 0 {
            let decimals = format!("{thousandths:03}");
            write!(f, ".{}", decimals.trim_end_matches('0'))?;
        }
        f.write_str(" g")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn reads_like_a_scale() {
        let shown = |milligrams| Grams::from_milligrams(milligrams).to_string();
        assert_eq!(shown(1_125_000), "1 125 g");
        assert_eq!(shown(20_200), "20.2 g");
        assert_eq!(shown(-500), "-0.5 g");
        assert_eq!(shown(1_234_567_001), "1 234 567.001 g");
        assert_eq!(shown(0), "0 g");
    }

    proptest! {
        #[test]
        fn split_loses_nothing(milligrams in 1i64..2_000_000_000, count in 1u32..10_000) {
            let parts = Grams::from_milligrams(milligrams).split(count);
            prop_assert_eq!(parts.len(), count as usize);
            prop_assert_eq!(parts.iter().copied().sum::<Grams>().milligrams(), milligrams);
            let (most, least) = (parts.iter().max().unwrap(), parts.iter().min().unwrap());
            prop_assert!((*most - *least).milligrams() <= 1);
            prop_assert!(parts.windows(2).all(|pair| pair[0] >= pair[1]), "the first take the odd ones");
        }
    }
}
