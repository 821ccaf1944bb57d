//! The pink salts look the same: the wrong one is named before it is rubbed in.

use super::says::CureSays;
use super::{Cure, CureRules, Ingoing, Makeup};
use crate::rows::{Finding, Gravity};

/// Weak or unusual salts, and nitrite alone on a ham that ages for months.
pub(super) fn check(
    cure: &Cure,
    makeups: &[Makeup],
    ingoing: &Ingoing,
    rules: &CureRules,
) -> Vec<Finding> {
    let mut findings = Vec::new();
    for makeup in makeups {
        match rules.known_strength(makeup) {
            Some(known) if known.weak => {
                let says = CureSays::Weak {
                    name: known.name.clone(),
                    nitrite: makeup.nitrite,
                };
                findings.push(Finding::new(Gravity::Warn, says, [known.row.clone()]));
            }
            Some(_) => {}
            None => {
                let says = CureSays::Unusual {
                    nitrite: makeup.nitrite,
                    nitrate: makeup.nitrate,
                };
                findings.push(Finding::note(says, []));
            }
        }
    }
    if let Some(row) = &rules.long_aged
        && (cure.long_aged || cure.class.ages_long())
        && ingoing.has_nitrite()
        && !ingoing.has_nitrate()
    {
        findings.push(Finding::new(
            Gravity::Warn,
            CureSays::NoNitrate,
            [row.clone()],
        ));
    }
    findings
}
