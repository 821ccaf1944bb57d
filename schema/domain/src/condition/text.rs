//! A condition as the record writes it: `ready heat nature`, `treated nothing partly-cooked`.

use super::Condition;
use crate::words::{ConditionKind, ProvedBy, StableBy};
use std::fmt;

const PARTLY_COOKED: &str = "partly-cooked";

impl Condition {
    /// Reads what [`fmt::Display`] wrote.
    pub fn parse(text: &str) -> Option<Condition> {
        let mut words = text.split_whitespace();
        let is = ConditionKind::parse(words.next()?)?;
        let by = ProvedBy::parse(words.next()?)?;
        let (stable, partly_cooked) = match (words.next(), words.next()) {
            (None, _) => (None, false),
            (Some(PARTLY_COOKED), None) => (None, true),
            (Some(word), None) => (Some(StableBy::parse(word)?), false),
            (Some(word), Some(PARTLY_COOKED)) => (Some(StableBy::parse(word)?), true),
            _ => return None,
        };
        words.next().is_none().then_some(Condition {
            is,
            by,
            stable,
            partly_cooked,
        })
    }
}

impl fmt::Display for Condition {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.is, self.by)?;
        if let Some(stable) = self.stable {
            write!(f, " {stable}")?;
        }
        match self.partly_cooked {
            true => write!(f, " {PARTLY_COOKED}"),
            false => Ok(()),
        }
    }
}
