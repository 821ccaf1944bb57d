//! A cure that is allowed on its day, and that a limit which begins later stands against.

use super::cure::CureCheck;
use super::facts::Facts;
use super::says::CureDeedSays;
use crate::error::Result;
use domain::cure::{self, Cure};
use domain::dates::{Because, Rule};
use domain::moment::midnight;
use domain::rows::RowId;
use domain::stop::Cause;
use domain::words::Topic;

/// From the day on which it begins, what was cured so is not sold.
pub(super) fn look(facts: &Facts<'_, '_>, cure: &Cure, check: &mut CureCheck) -> Result<()> {
    let place = facts.kitchen.entry.profile.0;
    let laws = facts.app.laws(&facts.standing.confirmed);
    let found = cure::to_come(cure, place, laws).map_err(|refusal| refusal.within("cure."))?;
    let Some((day, found)) = found else {
        return Ok(());
    };
    let law = &laws.of(place).rows;
    let mut rows: Vec<RowId> = found.iter().flat_map(|of| of.rows.clone()).collect();
    rows.sort();
    rows.dedup();
    let findings = found.iter().map(|of| of.with_sources(law)).collect();
    let says = CureDeedSays::SoldLater { day, findings };
    let because = Because {
        says: says.into(),
        rule: Rule::Rows(rows),
    };
    check.warnings.push(because.says.clone());
    let since = midnight(day, facts.kitchen.zone);
    check
        .stops
        .push(Cause::failed(Topic::Cure, because, since.max(facts.moment.at)).into());
    Ok(())
}
