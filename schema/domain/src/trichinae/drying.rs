//! Drying days for sausage by the tables: by casing, less for a warm hold, more for little salt.

use super::length::Length;
use super::process::{Process, StageKind};
use super::rules::TrichinaeRules;
use super::says::DryingSays;
use crate::heat::Judgement;
use crate::measure::{Percent, Temperature};
use crate::refusal::{Refusal, Result};
use crate::rows::{Finding, Gravity, RowId, Rows};
use crate::says::Says;
use chrono::TimeDelta;

/// The tables.
#[derive(Debug, Clone, PartialEq)]
pub struct SausageDrying {
    /// Days by casing, the thinnest first: up to this diameter, so many days.
    pub days: Vec<(Length, u32)>,
    /// Where that stands.
    pub days_row: RowId,
    /// Days off for a hold before drying.
    pub cuts: Vec<Cut>,
    /// Where that stands.
    pub cuts_row: RowId,
    /// Salt that needs no more days.
    pub full_salt: Percent,
    /// Days more for less salt: at this strength (in tenths), so many per cent more.
    pub more: Vec<(Percent, u32)>,
    /// Where that stands.
    pub more_row: RowId,
    /// The drying room is at or above this.
    pub room: Temperature,
}

/// A cell: held at or above a temperature for so long.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Cut {
    /// At or above this.
    pub at_least: Temperature,
    /// For so long.
    pub hold: TimeDelta,
    /// So many per cent of the table's days off.
    pub percent: u32,
}

/// Days of drying, and how they came about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DryingDays {
    /// By the casing alone.
    pub base: u32,
    /// Per cent off for the hold.
    pub cut_percent: u32,
    /// Days off, rounded down.
    pub cut: u32,
    /// Per cent more for little salt.
    pub more_percent: u32,
    /// Days more, rounded up.
    pub more: u32,
}

impl DryingDays {
    /// The days in all.
    pub fn days(&self) -> u32 {
        self.base - self.cut + self.more
    }
}

impl SausageDrying {
    /// The days for a casing, a salt content, and the holds before drying. Nothing is read between two
    /// cells; days off are rounded down and days more rounded up, as in the law's own examples; both
    /// go by the table's days.
    ///
    /// # Errors
    /// The name of the table that ends before the casing or the salt does.
    pub fn days(
        &self,
        casing: Length,
        salt: Percent,
        holds: &[(Temperature, TimeDelta)],
    ) -> std::result::Result<DryingDays, &RowId> {
        let base = self.days.iter().find(|(up_to, _)| casing <= *up_to);
        let base = base.ok_or(&self.days_row)?.1;
        let held = |at_least: Temperature| -> TimeDelta {
            let warm = holds.iter().filter(|(at, _)| *at >= at_least);
            warm.map(|(_, time)| *time).sum()
        };
        let cells = self.cuts.iter();
        let cut_percent = cells
            .filter(|cell| held(cell.at_least) >= cell.hold)
            .map(|cell| cell.percent)
            .max()
            .unwrap_or(0);
        let more_percent = match salt >= self.full_salt {
            true => 0,
            false => {
                let tenth = Percent::new(salt.number().trunc_with_scale(1));
                let more = self.more.iter().find(|(at, _)| *at <= tenth);
                more.ok_or(&self.more_row)?.1
            }
        };
        Ok(DryingDays {
            base,
            cut_percent,
            cut: base * cut_percent / 100,
            more_percent,
            more: (base * more_percent).div_ceil(100),
        })
    }
}

/// Did it dry for the days of the tables?
pub(super) fn judge(process: &Process, rules: &TrichinaeRules, rows: &Rows) -> Result<Judgement> {
    let Some(tables) = &rules.sausage_drying else {
        let says = DryingSays::NoSausageTables;
        return Ok(Judgement::decide(Finding::new(Gravity::Warn, says, [])));
    };
    let casing = process
        .casing
        .ok_or_else(|| Refusal::cannot_be("casing", DryingSays::GiveCasing))?;
    let salt = process
        .salting
        .dry
        .ok_or_else(|| Refusal::cannot_be("salt", DryingSays::GiveSalt))?;
    let holds: Vec<(Temperature, TimeDelta)> = process
        .runs
        .iter()
        .filter(|run| matches!(run.stage, StageKind::Hold | StageKind::Smoke))
        .map(|run| (run.lowest, run.held))
        .collect();
    let days = match tables.days(casing, salt, &holds) {
        Ok(days) => days,
        Err(row) => {
            let says = DryingSays::TableEnds { casing, salt };
            return Ok(Judgement::short(None, Finding::against(rows, row, says)));
        }
    };
    let wanted = TimeDelta::days(i64::from(days.days()));
    let has = process.time_at(StageKind::Dry, Some(tables.room), None);
    let days = Says::from(DryingSays::Days {
        base: days.base,
        cut: days.cut,
        cut_percent: days.cut_percent,
        more: days.more,
        more_percent: days.more_percent,
        days: days.days(),
        room: tables.room,
    });
    if has >= wanted {
        return Ok(Judgement::enough(Finding::note(
            DryingSays::Enough { days },
            [
                tables.days_row.clone(),
                tables.cuts_row.clone(),
                tables.more_row.clone(),
            ],
        )));
    }
    let missing = wanted - has;
    let says = DryingSays::Short { days, missing };
    Ok(Judgement::short(
        Some(missing),
        Finding::against(rows, &tables.days_row, says),
    ))
}
