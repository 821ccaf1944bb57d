//! A table of temperatures and the time that each must be held.

use crate::measure::{Printed, Temperature};
use crate::rows::RowId;
use chrono::TimeDelta;

/// One row of a table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct HoldStep {
    /// This temperature or hotter.
    pub at_least: Printed,
    /// Held this long or longer; nothing means that reaching it is enough.
    pub hold: TimeDelta,
}

/// A table of heat: the hotter, the shorter.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HeatTable {
    row: RowId,
    steps: Vec<HoldStep>,
}

impl HeatTable {
    /// A table of these steps, which must become hotter, and no step longer than a cooler one.
    ///
    /// # Errors
    /// In words, for whoever keeps the file.
    pub fn new(row: RowId, steps: Vec<HoldStep>) -> Result<HeatTable, String> {
        if steps.is_empty() {
            return Err(format!("the table {row} has no steps"));
        }
        let rises = |pair: &[HoldStep]| {
            pair[0].at_least.temperature() < pair[1].at_least.temperature()
                && pair[0].hold >= pair[1].hold
                && pair[1].hold >= TimeDelta::zero()
        };
        match steps.windows(2).all(rises) {
            true => Ok(HeatTable { row, steps }),
            false => Err(format!(
                "the steps of the table {row} must become hotter and never longer"
            )),
        }
    }

    /// Where it stands.
    pub fn row(&self) -> &RowId {
        &self.row
    }

    /// Its steps, the coolest first.
    pub fn steps(&self) -> &[HoldStep] {
        &self.steps
    }

    /// The coolest step.
    pub fn first(&self) -> HoldStep {
        self.steps[0]
    }

    /// The step that holds at a temperature. Between two steps it is the cooler and longer one; below
    /// the first there is none.
    pub fn step_at(&self, temperature: Temperature) -> Option<HoldStep> {
        let reached = |step: &&HoldStep| temperature.reaches(&step.at_least);
        self.steps.iter().rev().find(reached).copied()
    }

    /// Is that temperature, held that long, enough?
    pub fn is_met_by(&self, temperature: Temperature, held: TimeDelta) -> bool {
        self.step_at(temperature)
            .is_some_and(|step| held >= step.hold)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn table(steps: &[(i32, i64)]) -> Result<HeatTable, String> {
        let step = |(degrees, seconds): &(i32, i64)| HoldStep {
            at_least: Temperature::fahrenheit(*degrees).into(),
            hold: TimeDelta::seconds(*seconds),
        };
        HeatTable::new(RowId::new("us-0"), steps.iter().map(step).collect())
    }

    #[test]
    fn nothing_is_read_between_two_rows() {
        let table = table(&[(130, 100), (140, 10), (150, 0)]).unwrap();
        let check = |degrees: i32, seconds: Option<i64>| {
            let step = table.step_at(Temperature::fahrenheit(degrees));
            assert_eq!(
                step.map(|step| step.hold.num_seconds()),
                seconds,
                "{degrees}"
            );
        };
        check(129, None);
        check(130, Some(100));
        check(139, Some(100));
        check(140, Some(10));
        check(200, Some(0));
    }

    #[test]
    fn a_table_that_asks_for_more_of_the_hotter_is_refused() {
        assert!(table(&[]).is_err());
        assert!(table(&[(130, 100), (140, 101)]).is_err());
        assert!(table(&[(140, 10), (130, 100)]).is_err());
        assert!(table(&[(140, 10), (142, 10)]).is_ok());
    }
}
