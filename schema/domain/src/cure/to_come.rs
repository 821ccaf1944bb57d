//! Limits that begin after the salt went on. A place may ask what it allows by the day on which food is sold, and
//! a ham of many months is cured under one limit and sold under the next (`confirmed X-EU-17`).

use super::{Cure, assess};
use crate::law::Laws;
use crate::refusal::Result;
use crate::rows::Finding;
use crate::words::Profile;
use chrono::NaiveDate;

/// The first day from which a limit that begins later stands against a cure that is allowed today, and what it
/// says. Nothing where none does, or where the cure is refused as it is.
///
/// # Errors
/// As [`assess`].
pub fn to_come(
    cure: &Cure,
    place: Profile,
    laws: &Laws,
) -> Result<Option<(NaiveDate, Vec<Finding>)>> {
    let law = laws.of(place);
    let limits = law.cures.limits.iter();
    let begins = limits.filter_map(|limit| law.rows.get(&limit.bound.row)?.from);
    let mut days: Vec<NaiveDate> = begins.filter(|day| *day > cure.day).collect();
    days.sort_unstable();
    days.dedup();
    if days.is_empty() || assess(cure, place, laws)?.is_refused() {
        return Ok(None);
    }
    for day in days {
        let then = Cure {
            day,
            ..cure.clone()
        };
        let mut findings = assess(&then, place, laws)?.findings;
        findings.retain(Finding::refuses);
        if !findings.is_empty() {
            return Ok(Some((day, findings)));
        }
    }
    Ok(None)
}
