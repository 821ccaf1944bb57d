//! How long a chilled vacuum pack may keep: ten days, unless something else holds back the spores.

use super::readings::StabilityReadings;
use super::rules::StabilityRules;
use super::says::VacuumSays;
use super::way::{Way, any_of, by_way, met};
use crate::heat::{Degrees, HeatTable, HoldStep, plausible_core, plausible_store, plausible_time};
use crate::measure::Temperature;
use crate::refusal::{Refusal, Result};
use crate::rows::{Bound, Finding, Gravity, RowId, Rows};
use crate::says::{Arg, Says};
use chrono::TimeDelta;

/// The place's rules for it.
#[derive(Debug, Clone, PartialEq)]
pub struct VacuumRules {
    /// Days without any other factor, at most.
    pub days: Bound,
    /// Days of fresh beef, lamb and pork, at most.
    pub fresh_days: Bound,
    /// The row that keeps minced, cooked, seasoned and cured meat to the shorter time.
    pub not_fresh: RowId,
    /// Heat that is a factor: temperatures and times.
    pub heat: Option<HeatTable>,
    /// The other factors, any one of them.
    pub factors: Vec<Way>,
    /// The warmest that a chilled pack is stored.
    pub chill: Degrees,
    /// Cold at which nothing grows; the row says how far that is trusted alone.
    pub cold_alone: Option<RowId>,
    /// Bulk packs kept strictly at this or colder.
    pub bulk: Option<Degrees>,
    /// The row of the caution that packing again starts no new time.
    pub no_reset: Option<RowId>,
}

/// What is in the pack.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum VacuumFood {
    /// Fresh beef, lamb or pork: cut, packed, chilled or frozen, nothing added.
    Fresh,
    /// Anything else: minced, cooked, seasoned, herbed, cured.
    Other,
    /// A bulk pack of either.
    Bulk,
}

/// A pack's life as somebody wants it.
#[derive(Debug, Clone)]
pub struct Life<'a> {
    /// What is in it.
    pub food: VacuumFood,
    /// Days from the first packing.
    pub days: u32,
    /// What was measured.
    pub readings: &'a StabilityReadings,
    /// The heat that every part of the food has had, and for how long.
    pub heat: Option<(Temperature, TimeDelta)>,
    /// The warmest that it is stored.
    pub stored_at: Temperature,
}

/// Is that life allowed? A warning or refusal comes back where it is not, and notes on why it is.
///
/// # Errors
/// A reading that cannot be; no days; no such rule in this place.
pub fn vacuum_days(life: &Life<'_>, rules: &StabilityRules, rows: &Rows) -> Result<Vec<Finding>> {
    life.readings.plausible()?;
    plausible_store("stored_at", life.stored_at)?;
    if let Some((core, held)) = life.heat {
        plausible_core("heat", core)?;
        plausible_time("heat", held)?;
    }
    if life.days == 0 {
        return Err(Refusal::cannot_be("days", VacuumSays::NoDays));
    }
    let Some(rule) = &rules.vacuum else {
        return Ok(vec![Finding::note(VacuumSays::NoCount, [])]);
    };
    let mut findings = Vec::new();
    if !rule.chill.allows(life.stored_at) {
        let says = VacuumSays::StoredWarm {
            at: life.stored_at,
            limit: rule.chill.says(),
        };
        findings.push(Finding::against(rows, rule.chill.row(), says));
    }
    if let Some(row) = &rule.no_reset {
        findings.push(Finding::note(VacuumSays::NoReset, [row.clone()]));
    }
    findings.extend(days(life, rule, rows));
    Ok(findings)
}

fn days(life: &Life<'_>, rule: &VacuumRules, rows: &Rows) -> Option<Finding> {
    let wanted = life.days.into();
    if rule.days.allows(wanted) {
        return None;
    }
    if let Some(found) = factor(life, rule, rows) {
        return Some(found);
    }
    if let Some(bulk) = rule
        .bulk
        .as_ref()
        .filter(|bulk| life.food == VacuumFood::Bulk && bulk.allows(life.stored_at))
    {
        let says = VacuumSays::Bulk { limit: bulk.says() };
        return Some(Finding::note(says, [bulk.row().clone()]));
    }
    if life.food == VacuumFood::Fresh && rule.fresh_days.allows(wanted) {
        let says = VacuumSays::Fresh {
            days: life.days,
            most: rule.fresh_days.whole(),
        };
        return Some(Finding::new(
            match rows.is_confirmed(&rule.fresh_days.row) {
                true => Gravity::Note,
                false => Gravity::Warn,
            },
            says,
            [rule.fresh_days.row.clone()],
        ));
    }
    // Beyond every reading the confirmed rule stands.
    let most = match life.food {
        VacuumFood::Fresh => &rule.fresh_days,
        _ => &rule.days,
    };
    let heat = rule.heat.as_ref().map(|table| {
        let HoldStep { at_least, hold } = table.first();
        Says::from(VacuumSays::Heat { at_least, hold })
    });
    let ways = heat.into_iter().chain(any_of(&rule.factors));
    let says = VacuumSays::TooLong {
        days: life.days,
        most: most.whole(),
        ways: Arg::Series(ways.collect()),
    };
    let mut finding = Finding::against(rows, &rule.days.row, says);
    finding.rows.extend(match life.food {
        VacuumFood::Fresh => Some(rule.fresh_days.row.clone()),
        VacuumFood::Other => Some(rule.not_fresh.clone()),
        VacuumFood::Bulk => None,
    });
    finding.rows.extend(rule.cold_alone.clone());
    Some(finding)
}

fn factor(life: &Life<'_>, rule: &VacuumRules, rows: &Rows) -> Option<Finding> {
    if let (Some(table), Some((core, held))) = (&rule.heat, life.heat)
        && table.is_met_by(core, held)
    {
        let says = VacuumSays::HeatHolds { core, held };
        return Some(Finding::note(says, [table.row().clone()]));
    }
    met(&rule.factors, life.readings, rows).map(|way| by_way(way, rows))
}
