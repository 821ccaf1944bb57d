//! Meat that was cured before is cooked: some places allow no nitrate in what was heated.

use super::before::Before;
use super::cure::CureCheck;
use super::facts::Facts;
use super::happened::broken;
use super::says::CureDeedSays;
use crate::error::Result;
use domain::cure;
use domain::dates::Because;
use domain::grams::Grams;
use domain::lot::Lot;
use domain::rows::Finding;
use domain::words::Topic;

/// Looks at it; nothing where nothing speaks against it.
///
/// # Errors
/// A confirmed limit is broken, and the step is not taken as it happened; the record is damaged.
pub(super) fn look(
    facts: &mut Facts<'_, '_>,
    lots: &[Lot],
    grams: impl Fn(usize) -> Result<Grams>,
    as_it_happened: bool,
) -> Result<Option<CureCheck>> {
    let minds = |limit: &cure::CureLimit| limit.when == cure::When::Heated;
    if !facts.law().cures.limits.iter().any(minds) {
        return Ok(None);
    }
    let before = Before::of(facts, lots)?;
    let Some(cured) = before.cured else {
        return Ok(None);
    };
    let brought = before.brings(lots, &grams)?;
    let place = facts.kitchen.entry.profile.0;
    let law = facts.app.laws(&facts.standing.confirmed).of(place);
    let how = (cured.method, cured.class);
    let found = cure::check_cooked(&brought, how, facts.moment.day, law);
    if found.is_empty() {
        return Ok(None);
    }
    let mut check = CureCheck {
        because: found.iter().map(Because::finding).collect(),
        ..CureCheck::default()
    };
    match found.iter().any(Finding::refuses) {
        true => {
            let findings = found.iter().map(|of| of.with_sources(&law.rows)).collect();
            let says = CureDeedSays::Refused { findings };
            let of = Topic::Cure;
            let stop = broken(facts, "inputs", of, says, &found, as_it_happened)?;
            check.stops.push(stop);
        }
        false => check.warnings = found.into_iter().map(|of| of.says).collect(),
    }
    Ok(Some(check))
}
