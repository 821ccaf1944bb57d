//! Recall classes, and how many of those who were told are checked.

use crate::rows::{Bound, RowId};
use crate::says::Texts;
use crate::words::words;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

words! {
    /// How grave a recall is.
    Class { One = "I", Two = "II", Three = "III", }
}

words! {
    /// How many of those who were told are checked.
    Level { A = "A", B = "B", C = "C", D = "D", E = "E", }
}

words! {
    /// How far down the chain a recall goes.
    Depth { Consumer = "consumer", Retail = "retail", Wholesale = "wholesale", }
}

/// The classes and levels of a place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Levels {
    /// What each class means.
    pub classes: Vec<(Class, Texts, RowId)>,
    /// How many are checked at each level, in percent; a level with two numbers lies between them.
    pub checks: Vec<Check>,
    /// The level of a single kitchen.
    pub default: (Level, RowId),
}

/// How many are checked at a level.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Check {
    /// The level.
    pub level: Level,
    /// In percent.
    pub percent: Bound,
    /// More than that, where the level is not one number.
    pub over: Option<Bound>,
}

impl Levels {
    pub(super) fn bounds_mut(&mut self) -> Vec<&mut Bound> {
        let checks = self.checks.iter_mut();
        checks
            .flat_map(|check| [Some(&mut check.percent), check.over.as_mut()])
            .flatten()
            .collect()
    }

    /// The least number of those told that are checked; `None` for a level without a line. A part
    /// of one counts as one. Where a level is "more than so many", it is one more than that.
    pub fn least_checks(&self, level: Level, told: u32) -> Option<u32> {
        let check = self.checks.iter().find(|check| check.level == level)?;
        let of = |percent: Decimal| Decimal::from(told) * percent / Decimal::ONE_HUNDRED;
        let least = match &check.over {
            Some(over) => of(over.value).floor() + Decimal::ONE,
            None => of(check.percent.value).ceil(),
        };
        Some(least.to_u32().unwrap_or(u32::MAX).min(told))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_part_of_one_is_one() {
        let levels = Levels {
            classes: Vec::new(),
            checks: vec![Check {
                level: Level::D,
                percent: Bound::exactly("x-1", 2),
                over: None,
            }],
            default: (Level::A, RowId::new("x-2")),
        };
        assert_eq!(levels.least_checks(Level::D, 51), Some(2));
        assert_eq!(levels.least_checks(Level::D, 1), Some(1));
        assert_eq!(levels.least_checks(Level::D, 0), Some(0));
        assert_eq!(levels.least_checks(Level::A, 10), None);
    }
}
