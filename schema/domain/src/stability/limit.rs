//! A limit whose own number may or may not be allowed.

use crate::rows::{Bound, Sense};
use rust_decimal::Decimal;

/// A number of the law, and whether the number itself is on the good side.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Limit {
    /// The number with its row.
    pub bound: Bound,
    /// Is the number itself out: below it, not at it?
    pub open: bool,
}

impl Limit {
    /// Is that much allowed?
    pub fn allows(&self, value: Decimal) -> bool {
        self.bound.allows(value) && !(self.open && value == self.bound.value)
    }

    /// The same limit at another number.
    pub fn at(&self, value: Decimal) -> Limit {
        Limit {
            bound: Bound {
                value,
                ..self.bound.clone()
            },
            open: self.open,
        }
    }

    /// Which side is good: `at most`, `below`.
    pub fn side(&self) -> &'static str {
        match (self.bound.sense, self.open) {
            (Sense::AtMost, false) => "at most",
            (Sense::AtMost, true) => "below",
            (Sense::AtLeast, false) => "at least",
            (Sense::AtLeast, true) => "above",
            (Sense::Exactly, _) => "exactly",
        }
    }

    /// As it is said: `at most 0.91`.
    pub fn said(&self) -> String {
        format!("{} {}", self.side(), self.bound.value.normalize())
    }
}
