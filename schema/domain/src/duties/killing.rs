//! How an animal must have died for its meat to be sold.

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
pub fn check_death(rules: &super::Rules, rows: &Rows, death: Death) -> Option<Finding> {
    let rule = rules.killing.as_ref()?;
    let why = match death {
        Death {
            for_food: false, ..
        } => "it was not killed for food in an accepted way",
        Death {
            bled_out: false, ..
        } => "it was not bled out",
        Death { diseased: true, .. } => "it was diseased when it was killed",
        _ => return None,
    };
    let says = format!(
        "This counts as a dead animal: {why}. It may not be sold. Set it apart and call the inspector."
    );
    Some(Finding::against(rows, &rule.row, says))
}
