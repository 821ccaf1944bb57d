//! Drying days for hams by the table, in one run or in several.

use super::process::{Process, StageKind};
use super::rules::TrichinaeRules;
use super::says::DryingSays;
use crate::heat::Judgement;
use crate::measure::Temperature;
use crate::rows::{Finding, Gravity, RowId, Rows};
use chrono::TimeDelta;
use rust_decimal::Decimal;

/// The table.
#[derive(Debug, Clone, PartialEq)]
pub struct HamDrying {
    row: RowId,
    steps: Vec<HamStep>,
    more_than: Decimal,
}

/// One row of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct HamStep {
    /// At or above this.
    pub at_least: Temperature,
    /// For so long.
    pub time: TimeDelta,
    /// What a day there counts where runs are mixed.
    pub per_day: Decimal,
}

impl HamDrying {
    /// A table whose steps become hotter and shorter; mixed runs must come to more than `more_than`.
    ///
    /// # Errors
    /// In words, for whoever keeps the file.
    pub fn new(row: RowId, steps: Vec<HamStep>, more_than: Decimal) -> Result<HamDrying, String> {
        let rises = |pair: &[HamStep]| {
            pair[0].at_least < pair[1].at_least
                && pair[0].time >= pair[1].time
                && pair[0].per_day <= pair[1].per_day
        };
        match !steps.is_empty() && steps.windows(2).all(rises) {
            true => Ok(HamDrying {
                row,
                steps,
                more_than,
            }),
            false => Err(format!(
                "the steps of the table {row} must become hotter and shorter"
            )),
        }
    }

    /// What runs of several temperatures come to: days times what a day counts, nothing read between
    /// two rows, nothing counted below the first.
    pub fn sum(&self, runs: &[(Temperature, TimeDelta)]) -> Decimal {
        let day = Decimal::from(86_400);
        runs.iter()
            .filter_map(|(at, time)| {
                let step = self.steps.iter().rev().find(|step| step.at_least <= *at)?;
                Some(Decimal::from(time.num_seconds()) * step.per_day / day)
            })
            .sum()
    }

    /// Where it stands.
    pub fn row(&self) -> &RowId {
        &self.row
    }
}

/// Did the hams dry long enough?
pub(super) fn judge(process: &Process, rules: &TrichinaeRules, rows: &Rows) -> Judgement {
    let Some(table) = &rules.ham_drying else {
        let says = DryingSays::NoHamTable;
        return Judgement::decide(Finding::new(Gravity::Warn, says, []));
    };
    let missing =
        |step: &HamStep| step.time - process.time_at(StageKind::Dry, Some(step.at_least), None);
    let nearest = table.steps.iter().min_by_key(|step| missing(step));
    let nearest = nearest.expect("a table has steps");
    let HamStep { at_least, time, .. } = *nearest;
    let missing = missing(nearest);
    if missing <= TimeDelta::zero() {
        let says = DryingSays::OneRun { at_least, time };
        return Judgement::enough(Finding::note(says, [table.row.clone()]));
    }
    let runs: Vec<(Temperature, TimeDelta)> = process
        .runs
        .iter()
        .filter(|run| run.stage == StageKind::Dry)
        .map(|run| (run.lowest, run.held))
        .collect();
    let (sum, more_than) = (table.sum(&runs), table.more_than);
    let is_enough = sum > more_than;
    let sum = sum.round_dp(3);
    if is_enough {
        let says = DryingSays::RunsEnough { sum, more_than };
        return Judgement::enough(Finding::note(says, [table.row.clone()]));
    }
    let says = DryingSays::RunsShort {
        sum,
        more_than,
        at_least,
        missing,
    };
    Judgement::short(Some(missing), Finding::against(rows, &table.row, says))
}
