//! A list of ways of which any one will do: barriers, controlling factors, stable kinds.

use super::limit::StabilityLimit;
use super::readings::{Fact, Measure, StabilityReadings};
use super::rules::StabilityRules;
use super::says::WaySays;
use crate::refusal::Result;
use crate::rows::{Finding, Gravity, RowId, Rows};
use crate::says::{Arg, Says};

/// One way: all its facts and all its limits.
#[derive(Debug, Clone, PartialEq)]
pub struct Way {
    /// Its name.
    pub name: String,
    /// Where it stands.
    pub row: RowId,
    /// What must be known of the food.
    pub facts: Vec<Fact>,
    /// What must be measured.
    pub limits: Vec<(Measure, StabilityLimit)>,
}

impl Way {
    /// Is it met? A reading that is missing meets nothing.
    pub fn is_met_by(&self, readings: &StabilityReadings) -> bool {
        self.facts.iter().all(|fact| readings.facts.contains(fact))
            && self.limits.iter().all(|(measure, limit)| {
                readings
                    .of(*measure)
                    .is_some_and(|value| limit.allows(value))
            })
    }

    /// As it is said.
    pub fn says(&self) -> Says {
        let facts = self.facts.iter().map(|fact| Arg::from(*fact));
        let limits = self.limits.iter().map(|(measure, limit)| WaySays::Limit {
            measure: *measure,
            limit: limit.says(),
        });
        let all = facts.chain(limits.map(Arg::from)).collect();
        WaySays::Way { all: Arg::All(all) }.into()
    }
}

/// The first way that is met, those that are confirmed before the others.
pub(super) fn met<'a>(
    ways: &'a [Way],
    readings: &StabilityReadings,
    rows: &Rows,
) -> Option<&'a Way> {
    let mut met: Vec<&Way> = ways.iter().filter(|way| way.is_met_by(readings)).collect();
    met.sort_by_key(|way| !rows.is_confirmed(&way.row));
    met.first().copied()
}

/// Why a way is good, as a finding: a word where it is confirmed, a warning where it is not.
pub(super) fn by_way(way: &Way, rows: &Rows) -> Finding {
    let told = way.says();
    let (gravity, says) = match rows.is_confirmed(&way.row) {
        true => (Gravity::Note, WaySays::Has { way: told }),
        false => (Gravity::Warn, WaySays::HasUnread { way: told }),
    };
    Finding::new(gravity, says, [way.row.clone()])
}

pub(super) fn any_of(ways: &[Way]) -> Vec<Says> {
    ways.iter().map(Way::says).collect()
}

/// Has a food one of the barriers that packing without air needs beside the cold (`us-R2`)? Nothing of
/// gravity comes back when it has.
///
/// # Errors
/// A reading that cannot be.
pub fn barriers(
    readings: &StabilityReadings,
    rules: &StabilityRules,
    rows: &Rows,
) -> Result<Finding> {
    readings.plausible()?;
    if let Some(way) = met(&rules.barriers, readings, rows) {
        return Ok(by_way(way, rows));
    }
    Ok(match rules.barriers.first() {
        None => Finding::new(Gravity::Warn, WaySays::NoBarriers, []),
        Some(first) => {
            let ways = Arg::Series(any_of(&rules.barriers));
            let says = WaySays::NoBarrier { ways };
            Finding::against(rows, &first.row, says)
        }
    })
}
