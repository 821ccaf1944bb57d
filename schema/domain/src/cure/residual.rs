//! What a laboratory found in the finished product, against what a place allows.

use super::says::{CureSays, LimitSays};
use super::{Class, Counts, CureLevel, Here, Ingoing, Method, Stage};
use crate::law::Law;
use crate::refusal::{Refusal, Result};
use crate::rows::{Finding, Gravity};
use chrono::NaiveDate;

/// Every limit on what is left, for a measured level. One that is doubtful forbids nothing: above it the reason is
/// looked for.
///
/// # Errors
/// The level cannot be, or is not a residual one: what goes in is never compared with a limit on what is left.
pub fn assess_residual(
    found: CureLevel,
    method: Method,
    class: Class,
    day: NaiveDate,
    law: &Law,
) -> Result<Vec<Finding>> {
    let found = found.checked()?;
    if found.stage != Stage::Residual {
        let says = CureSays::WentIn {
            level: found.says(),
        };
        return Err(Refusal::cannot_be("ppm", says));
    }
    let rules = &law.cures;
    let here = Here::of(rules, method, class, day, &law.rows);
    let mut findings = Vec::new();
    for limit in rules.limits.iter().filter(|limit| {
        limit.stage == Stage::Residual && limit.is_for(method, &here, day, &law.rows)
    }) {
        if !matches!(limit.counts, Counts::Salt(basis) if basis.is_nitrite() == found.basis.is_nitrite())
        {
            continue;
        }
        let measured = limit.measure(&Ingoing::of(found, &rules.masses), &rules.masses);
        if !limit.allows(measured) && limit.doubt {
            let says = LimitSays::LeftAsks {
                ppm: measured.round_dp(2),
                what: limit.said(),
                level: limit.bound.value,
            };
            findings.push(Finding::new(Gravity::Warn, says, [limit.bound.row.clone()]));
        } else if !limit.allows(measured) {
            let says = LimitSays::Left {
                ppm: measured.round_dp(2),
                what: limit.said(),
                most: limit.bound.value,
                class,
            };
            findings.push(Finding::against(&law.rows, &limit.bound.row, says));
        }
    }
    Ok(findings)
}
