//! Words that a law fixes or asks for, by language, and limits where it matters whether the number itself passes.

use crate::rows::{Bound, RowId};
use crate::says::said;
use rust_decimal::Decimal;
use std::collections::BTreeMap;

/// Words by language, with their row.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Wording {
    /// Where they come from.
    pub row: RowId,
    /// The languages in which the law fixes the very words, as far as they were read; else they are ours.
    pub mandated: Vec<String>,
    /// The words by language tag.
    pub text: BTreeMap<String, String>,
}

impl Wording {
    /// The words in a language, else in English, else any.
    pub fn in_language(&self, language: &str) -> &str {
        said(&self.text, language)
    }
}

/// A highest number of which it matters whether the number itself still passes.
///
/// A house may set the number lower.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct UpTo {
    /// The number, as the most.
    pub bound: Bound,
    /// Does the number itself still pass?
    pub inclusive: bool,
}

impl UpTo {
    /// Does that much pass?
    pub fn passes(&self, value: Decimal) -> bool {
        self.bound.allows(value) && (self.inclusive || value != self.bound.value)
    }
}
