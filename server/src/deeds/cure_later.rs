//! A cure that is allowed on its day, and what stands against its sale all the same: a limit that begins later, one
//! on what is left that only a test can tell, one that nobody has confirmed.

use super::cure::CureCheck;
use super::facts::Facts;
use super::says::CureDeedSays;
use crate::error::Result;
use domain::cure::{self, Assessed, Cure};
use domain::dates::{Because, Rule};
use domain::moment::midnight;
use domain::rows::RowId;
use domain::says::Says;
use domain::stop::{Cause, StopSays};
use domain::words::Topic;

/// What waits for a test, or for a person who confirms the limit.
pub(super) fn waits(
    facts: &Facts<'_, '_>,
    cure: &Cure,
    assessed: &Assessed,
    check: &mut CureCheck,
) {
    let place = facts.kitchen.entry.profile.0;
    let law = facts.app.laws(&facts.standing.confirmed).of(place);
    let mut stop = |topic: Topic, because: Because| {
        check.warnings.push(because.says.clone());
        let stop = Cause::failed(topic, because, facts.moment.at);
        check.stops.push(stop.into());
    };
    for finding in cure::untested(cure, &assessed.ingoing, &law.cures, &law.rows) {
        stop(Topic::Proof, Because::finding(&finding));
    }
    for row in cure::unconfirmed(cure, &assessed.ingoing, &law.cures, &law.rows) {
        let Some(known) = law.rows.get(&row) else {
            continue;
        };
        let text = Says::named(&known.says);
        let says = StopSays::NotConfirmed {
            row: row.clone(),
            text,
        };
        stop(Topic::Confirmation, Because::law(says, &row));
    }
}

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
