//! Trichinae by heat.

use super::length::Length;
use super::rules::TrichinaeRules;
use super::says::HeatedSays;
use crate::heat::{HeatTable, HoldStep, Judgement, plausible_core, plausible_time};
use crate::measure::Temperature;
use crate::refusal::Result;
use crate::rows::{Bound, Finding, Gravity, RowId, Rows};
use chrono::TimeDelta;

/// A heating: every part of the meat was at or above `core`.
#[derive(Debug, Clone, PartialEq)]
pub struct Heating {
    /// The coolest part.
    pub core: Temperature,
    /// For how long, where it was logged.
    pub held: Option<TimeDelta>,
    /// How long the meat was between cold and hot on its way up, where it was logged.
    pub come_up: Option<TimeDelta>,
    /// Is the meat cured or fermented?
    pub is_cured: bool,
    /// How thick it is.
    pub thickness: Option<Length>,
    /// How long after the hold's temperature was reached the chilling began.
    pub chilled_after: Option<TimeDelta>,
}

/// The place's rules for it.
#[derive(Debug, Clone, PartialEq)]
pub struct HeatingRules {
    /// Temperatures and times.
    pub table: HeatTable,
    /// Coming up, in hours, for meat that is neither cured nor fermented.
    pub come_up_hours: Bound,
    /// When the time need not be logged.
    pub unlogged: Option<Unlogged>,
}

/// A thick piece that is chilled late holds its heat anyway.
#[derive(Debug, Clone, PartialEq)]
pub struct Unlogged {
    /// From this temperature.
    pub at_least: Temperature,
    /// Thicker than this.
    pub thicker_than: Length,
    /// Chilled later than this.
    pub later_than: TimeDelta,
    /// Where it stands.
    pub row: RowId,
}

impl Heating {
    pub(super) fn judge(&self, rules: &TrichinaeRules, rows: &Rows) -> Result<Judgement> {
        plausible_core("core", self.core)?;
        for (field, time) in [
            ("held", self.held),
            ("come_up", self.come_up),
            ("chilled_after", self.chilled_after),
        ] {
            time.map_or(Ok(()), |time| plausible_time(field, time))?;
        }
        let Some(rule) = &rules.heating else {
            return Ok(Judgement::decide(Finding::new(
                Gravity::Warn,
                HeatedSays::NoTable,
                [],
            )));
        };
        let judged = self.hold(rule, rows);
        Ok(match self.came_up(rule, rows) {
            Some(slow) => judged.and(Judgement::short(None, slow)),
            None => judged,
        })
    }

    fn hold(&self, rule: &HeatingRules, rows: &Rows) -> Judgement {
        let row = rule.table.row();
        let Some(HoldStep { at_least, hold }) = rule.table.step_at(self.core) else {
            let says = HeatedSays::TooCool {
                core: self.core,
                first: rule.table.first().at_least,
            };
            return Judgement::short(None, Finding::against(rows, row, says));
        };
        let held = self.held.unwrap_or_default();
        let missing = hold - held;
        if missing <= TimeDelta::zero() {
            let says = HeatedSays::Enough { at_least, hold };
            return Judgement::enough(Finding::note(says, [row.clone()]));
        }
        if let Some(unlogged) = rule
            .unlogged
            .as_ref()
            .filter(|rule| self.holds_itself(rule))
        {
            let says = HeatedSays::HoldsItself {
                thicker_than: unlogged.thicker_than,
                later: unlogged.later_than,
            };
            return Judgement::enough(Finding::note(says, [unlogged.row.clone()]));
        }
        let says = match self.held {
            Some(held) => HeatedSays::Short {
                at_least,
                hold,
                held,
                missing,
            },
            None => HeatedSays::NoTime { at_least, hold },
        };
        Judgement::short(Some(missing), Finding::against(rows, row, says))
    }

    fn holds_itself(&self, rule: &Unlogged) -> bool {
        self.core >= rule.at_least
            && self
                .thickness
                .is_some_and(|thickness| thickness > rule.thicker_than)
            && self
                .chilled_after
                .is_some_and(|after| after > rule.later_than)
    }

    fn came_up(&self, rule: &HeatingRules, rows: &Rows) -> Option<Finding> {
        let within = crate::heat::hours(rule.come_up_hours.value);
        let took = self
            .come_up
            .filter(|took| !self.is_cured && *took > within)?;
        let says = HeatedSays::CameUpSlowly { took, within };
        Some(Finding::against(rows, &rule.come_up_hours.row, says))
    }
}
