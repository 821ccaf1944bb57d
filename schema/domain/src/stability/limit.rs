//! A limit whose own number may or may not be allowed.

use crate::messages;
use crate::rows::{Bound, Sense};
use crate::says::Arg;
use rust_decimal::Decimal;

messages! {
    /// A limit within a sentence.
    LimitSays in "limit" {
        AtMost "at-most" { value: Arg },
        Below "below" { value: Arg },
        AtLeast "at-least" { value: Arg },
        Above "above" { value: Arg },
        Exactly "exactly" { value: Arg },
    }
}

/// A number of the law, and whether the number itself is on the good side.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StabilityLimit {
    /// The number with its row.
    pub bound: Bound,
    /// Is the number itself out: below it, not at it?
    pub open: bool,
}

impl StabilityLimit {
    /// Is that much allowed?
    pub fn allows(&self, value: Decimal) -> bool {
        self.bound.allows(value) && !(self.open && value == self.bound.value)
    }

    /// The same limit at another number.
    pub fn at(&self, value: Decimal) -> StabilityLimit {
        StabilityLimit {
            bound: Bound {
                value,
                ..self.bound.clone()
            },
            open: self.open,
        }
    }

    /// As it is said of its number in whatever unit: `at most 5 °C`.
    pub fn says_of(&self, value: impl Into<Arg>) -> LimitSays {
        let value = value.into();
        match (self.bound.sense, self.open) {
            (Sense::AtMost, false) => LimitSays::AtMost { value },
            (Sense::AtMost, true) => LimitSays::Below { value },
            (Sense::AtLeast, false) => LimitSays::AtLeast { value },
            (Sense::AtLeast, true) => LimitSays::Above { value },
            (Sense::Exactly, _) => LimitSays::Exactly { value },
        }
    }

    /// As it is said: `at most 0.91`.
    pub fn says(&self) -> LimitSays {
        self.says_of(self.bound.value)
    }
}
