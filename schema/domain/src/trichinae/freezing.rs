//! Trichinae by cold.

use super::length::Length;
use super::rules::TrichinaeRules;
use super::says::ColdSays;
use crate::heat::{Judgement, plausible_store, plausible_time};
use crate::measure::{Printed, Temperature};
use crate::refusal::{Refusal, Result};
use crate::rows::{Finding, Gravity, RowId, Rows};
use chrono::TimeDelta;

/// Where a cold temperature was read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum MeasuredAt {
    /// In the room or the container.
    Room,
    /// In the middle of the meat.
    Centre,
}

/// A freezing.
#[derive(Debug, Clone, PartialEq)]
pub struct Freezing {
    /// Where it was read.
    pub measured: MeasuredAt,
    /// The warmest that it was.
    pub at: Temperature,
    /// For how long.
    pub held: TimeDelta,
    /// How thick the piece, or the packed box, is; needed when the room was read.
    pub thickness: Option<Length>,
    /// How warm the meat was when the time began, where that was read.
    pub meat_at_start: Option<Temperature>,
}

/// A table of cold: the colder, the shorter.
#[derive(Debug, Clone, PartialEq)]
pub struct FreezingTable {
    row: RowId,
    measured: MeasuredAt,
    up_to: Option<Length>,
    steps: Vec<ColdStep>,
}

/// One row of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ColdStep {
    /// This temperature or colder, as the row prints it on either scale.
    pub at_most: Printed,
    /// For this long or longer.
    pub hold: TimeDelta,
}

impl FreezingTable {
    /// A table for pieces up to a thickness; its steps must become colder and never longer.
    ///
    /// # Errors
    /// In words, for whoever keeps the file.
    pub fn new(
        row: RowId,
        measured: MeasuredAt,
        up_to: Option<Length>,
        steps: Vec<ColdStep>,
    ) -> std::result::Result<FreezingTable, String> {
        let falls = |pair: &[ColdStep]| {
            let [warmer, colder] = [pair[0].at_most, pair[1].at_most].map(|of| of.temperature());
            warmer > colder && pair[0].hold >= pair[1].hold
        };
        match !steps.is_empty() && steps.windows(2).all(falls) {
            true => Ok(FreezingTable {
                row,
                measured,
                up_to,
                steps,
            }),
            false => Err(format!(
                "the steps of the table {row} must become colder and never longer"
            )),
        }
    }

    fn is_for(&self, freezing: &Freezing) -> bool {
        self.measured == freezing.measured
            && self.up_to.is_none_or(|up_to| {
                freezing
                    .thickness
                    .is_some_and(|thickness| thickness <= up_to)
            })
    }

    fn judge(&self, freezing: &Freezing, rows: &Rows) -> Judgement {
        let reached = |step: &&ColdStep| freezing.at.against(&step.at_most).is_le();
        let Some(step) = self.steps.iter().rev().find(reached) else {
            let says = ColdSays::TooWarm {
                at: freezing.at,
                first: self.steps[0].at_most,
            };
            return Judgement::short(None, Finding::against(rows, &self.row, says));
        };
        let ColdStep { at_most, hold } = *step;
        let missing = hold - freezing.held;
        if missing > TimeDelta::zero() {
            let says = ColdSays::Short {
                at_most,
                hold,
                held: freezing.held,
                missing,
            };
            return Judgement::short(Some(missing), Finding::against(rows, &self.row, says));
        }
        let says = ColdSays::Enough { at_most, hold };
        let gravity = match rows.is_confirmed(&self.row) {
            true => Gravity::Note,
            false => Gravity::Warn,
        };
        Judgement::enough(Finding::new(gravity, says, [self.row.clone()]))
    }
}

impl Freezing {
    pub(super) fn judge(&self, rules: &TrichinaeRules, rows: &Rows) -> Result<Judgement> {
        plausible_store("temperature", self.at)?;
        plausible_time("held", self.held)?;
        if self.measured == MeasuredAt::Room && self.thickness.is_none() {
            return Err(Refusal::cannot_be("thickness", ColdSays::GiveThickness));
        }
        let of_kind = rules
            .freezing
            .iter()
            .filter(|table| table.measured == self.measured);
        if of_kind.clone().next().is_none() {
            return Ok(Judgement::decide(Finding::new(
                Gravity::Warn,
                ColdSays::NoTable,
                [],
            )));
        }
        // Any one table is enough; of several that are not, the nearest one is said.
        let nearest = of_kind
            .clone()
            .filter(|table| table.is_for(self))
            .map(|table| table.judge(self, rows))
            .min_by_key(|judged| {
                (
                    judged.answer,
                    judged.missing.is_none() && !judged.is_enough(),
                    judged.missing,
                )
            });
        let Some(judged) = nearest else {
            // A table without an edge would have taken it.
            let edges = of_kind.filter_map(|table| Some((table.up_to?, &table.row)));
            let (thickest, row) = edges
                .max_by_key(|(up_to, _)| *up_to)
                .expect("there is a table with an edge");
            let says = ColdSays::TooThick { thickest };
            return Ok(Judgement::short(None, Finding::against(rows, row, says)));
        };
        Ok(match (&rules.chill_first, self.meat_at_start) {
            (Some(chill), Some(start)) if !chill.allows(start) => {
                let limit = chill.says();
                let says = ColdSays::WarmAtStart { start, limit };
                judged.and(Judgement::short(
                    None,
                    Finding::against(rows, chill.row(), says),
                ))
            }
            _ => judged,
        })
    }
}
