//! The pink salts look the same: the wrong one is named before it is rubbed in.

use super::{Cure, Ingoing, Makeup, Rules};
use crate::rows::{Finding, Gravity};

/// Weak or unusual salts, and nitrite alone on a ham that ages for months.
pub(super) fn check(
    cure: &Cure,
    makeups: &[Makeup],
    ingoing: &Ingoing,
    rules: &Rules,
) -> Vec<Finding> {
    let mut findings = Vec::new();
    for makeup in makeups {
        match rules.known_strength(makeup) {
            Some(known) if known.weak => {
                let says = format!(
                    "This is the weak curing salt ({}, {} nitrite): it is as pink as no. 1 and has a small part of its strength. Look at the bag, and at the recipe.",
                    known.name, makeup.nitrite
                );
                findings.push(Finding::new(Gravity::Warn, says, [known.row.clone()]));
            }
            Some(_) => {}
            None => {
                let says = format!(
                    "A curing salt of {} nitrite and {} nitrate is not one of the usual ones. See that the bag says so.",
                    makeup.nitrite, makeup.nitrate
                );
                findings.push(Finding::note(says, []));
            }
        }
    }
    if let Some(row) = &rules.long_aged
        && (cure.long_aged || cure.class.ages_long())
        && ingoing.has_nitrite()
        && !ingoing.has_nitrate()
    {
        let says = "This ham ages for months and its curing salt has no nitrate: the nitrite is gone long before it is done. Did you take no. 1 for no. 2?";
        findings.push(Finding::new(Gravity::Warn, says, [row.clone()]));
    }
    findings
}
