//! A condition as the record writes it: `ready heat nature`.

use super::Condition;
use crate::words::{ConditionKind, ProvedBy, StableBy};
use std::fmt;

impl Condition {
    /// Reads what [`fmt::Display`] wrote.
    pub fn parse(text: &str) -> Option<Condition> {
        let mut words = text.split_whitespace();
        let is = ConditionKind::parse(words.next()?)?;
        let by = ProvedBy::parse(words.next()?)?;
        let stable = match words.next() {
            Some(word) => Some(StableBy::parse(word)?),
            None => None,
        };
        words
            .next()
            .is_none()
            .then_some(Condition { is, by, stable })
    }
}

impl fmt::Display for Condition {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.is, self.by)?;
        match self.stable {
            Some(stable) => write!(f, " {stable}"),
            None => Ok(()),
        }
    }
}
