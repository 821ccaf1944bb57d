//! A number of the law with its row, and which way is stricter.

use super::RowId;
use rust_decimal::Decimal;

/// Which side of the number is allowed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sense {
    /// The number or less.
    AtMost,
    /// The number or more.
    AtLeast,
    /// The number and no other.
    Exactly,
}

/// A number with its row. The unit is that of the field that holds it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Bound {
    /// Where it comes from.
    pub row: RowId,
    /// Which side of it is allowed.
    pub sense: Sense,
    /// The number.
    pub value: Decimal,
}

impl Bound {
    /// This much or less.
    pub fn at_most(row: &str, value: impl Into<Decimal>) -> Bound {
        Bound {
            row: RowId::new(row),
            sense: Sense::AtMost,
            value: value.into(),
        }
    }

    /// This much or more.
    pub fn at_least(row: &str, value: impl Into<Decimal>) -> Bound {
        Bound {
            sense: Sense::AtLeast,
            ..Bound::at_most(row, value)
        }
    }

    /// Just this.
    pub fn exactly(row: &str, value: impl Into<Decimal>) -> Bound {
        Bound {
            sense: Sense::Exactly,
            ..Bound::at_most(row, value)
        }
    }

    /// Is that much allowed?
    pub fn allows(&self, value: Decimal) -> bool {
        match self.sense {
            Sense::AtMost => value <= self.value,
            Sense::AtLeast => value >= self.value,
            Sense::Exactly => value == self.value,
        }
    }

    /// Would another number allow no more than this one does?
    pub fn is_kept_by(&self, other: Decimal) -> bool {
        self.allows(other)
    }

    /// The number as whole days, hours or pieces; what is below nothing is nothing.
    pub fn whole(&self) -> u32 {
        use rust_decimal::prelude::ToPrimitive;
        self.value.trunc().to_u32().unwrap_or(0)
    }
}
