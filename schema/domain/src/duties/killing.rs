//! How an animal must have died for its meat to be sold.

use super::says::AnimalSays;
use crate::rows::{Finding, RowId, Rows};

/// The rule of a place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Killing {
    /// Where it stands.
    pub row: RowId,
}

/// How it died.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Death {
    /// Killed for food, in an accepted way.
    pub for_food: bool,
    /// Bled out.
    pub bled_out: bool,
    /// Diseased when it was killed.
    pub diseased: bool,
}

/// What stands against selling it: a "dead animal" (`canada-eu-uk-4.17`).
pub fn check_death(rules: &super::DutyRules, rows: &Rows, death: Death) -> Option<Finding> {
    let rule = rules.killing.as_ref()?;
    let says = match death {
        Death {
            for_food: false, ..
        } => AnimalSays::NotForFood,
        Death {
            bled_out: false, ..
        } => AnimalSays::NotBled,
        Death { diseased: true, .. } => AnimalSays::Diseased,
        _ => return None,
    };
    Some(Finding::against(rows, &rule.row, says))
}
