//! The cautious rule for batches of any kind: one producer, one abattoir, one kill day.

use super::says::{BatchSays, Mixed};
use crate::rows::{Finding, Gravity, RowId};
use crate::says::Arg;
use chrono::NaiveDate;

/// The rule of a place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Default {
    /// Where it stands.
    pub row: RowId,
}

/// Where one part of a batch comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct BatchSource<'a> {
    /// The farm.
    pub producer: &'a str,
    /// The abattoir.
    pub abattoir: &'a str,
    /// The day of the kill.
    pub killed: NaiveDate,
}

/// A word on a batch: one lot is of one producer, one abattoir and one kill day, and of one day's
/// production; what mixes them is a new lot that lists every parent. It never refuses: the law on
/// beef has its own check.
pub fn check_batch(
    rules: &super::DutyRules,
    sources: &[BatchSource],
    made_on: &[NaiveDate],
) -> Vec<Finding> {
    let Some(Default { row }) = &rules.batch else {
        return Vec::new();
    };
    let mut found = Vec::new();
    if let Some((first, rest)) = sources.split_first() {
        let differs = |mixed: &&Mixed| {
            rest.iter().any(|other| match mixed {
                Mixed::Producers => other.producer != first.producer,
                Mixed::Abattoirs => other.abattoir != first.abattoir,
                Mixed::KillDays => other.killed != first.killed,
            })
        };
        let what: Vec<Arg> = Mixed::ALL
            .iter()
            .filter(differs)
            .map(|mixed| Arg::from(*mixed))
            .collect();
        if !what.is_empty() {
            let says = BatchSays::Mixes {
                what: Arg::All(what),
            };
            found.push(Finding::note(says, [row.clone()]));
        }
    }
    if made_on.iter().any(|day| Some(day) != made_on.first()) {
        let says = BatchSays::SeveralDays;
        found.push(Finding::new(Gravity::Warn, says, [row.clone()]));
    }
    found
}
