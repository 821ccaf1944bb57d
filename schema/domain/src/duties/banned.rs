//! Parts of an animal that may not be in food, or not in mince.

use super::names::{says, words_of};
use super::says::AnimalSays;
use crate::rows::{Finding, RowId, Rows};
use crate::words::words;

words! {
    /// What the parts are banned from.
    BannedFrom {
        Food = "food", Mince = "mince", MeatProduct = "meat-product",
        UncookedProduct = "uncooked-product",
    }
}

/// A part that is banned.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Banned {
    /// Where it stands.
    pub row: RowId,
    /// From what.
    pub from: BannedFrom,
    /// The law's word for it.
    pub part: String,
    /// The words that call it up, in lower case.
    pub words: Vec<String>,
    /// Phrases with which it is allowed after all.
    pub unless: Vec<String>,
}

/// What stands against these parts, each named as the kitchen names it (`canada-eu-uk-4.16`,
/// `additions-F3`).
pub fn check_parts(
    rules: &super::DutyRules,
    rows: &Rows,
    from: BannedFrom,
    parts: &[&str],
) -> Vec<Finding> {
    let mut found = Vec::new();
    for part in parts {
        let name = words_of(part);
        let banned = rules.banned.iter().find(|banned| {
            banned.from == from
                && banned.words.iter().any(|word| says(&name, word))
                && !banned.unless.iter().any(|word| says(&name, word))
        });
        if let Some(banned) = banned {
            let says = AnimalSays::Banned {
                part: (*part).to_owned(),
                named: banned.part.clone(),
                from,
            };
            found.push(Finding::against(rows, &banned.row, says));
        }
    }
    found
}
