//! Was a cook enough?

use super::judgement::Judgement;
use super::log::Log;
use super::rules::{HeatRules, hours, minutes};
use super::sane::{plausible_core, plausible_time};
use super::says::CookSays;
use super::table::{HeatTable, HoldStep};
use super::words::Food;
use crate::measure::{Printed, Temperature};
use crate::refusal::Result;
use crate::rows::{Finding, Gravity, RowId, Rows};
use chrono::TimeDelta;
use rust_decimal::Decimal;

/// One core temperature and how long the core was at or above it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Cook {
    /// The core's temperature.
    pub core: Temperature,
    /// How long it was held there.
    pub held: TimeDelta,
}

/// What a cook is measured by.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Standard {
    /// The kitchen's code, by class of food and the code's year. Where the texts of that year
    /// disagree, every one must be met.
    Kitchen {
        /// The class of food.
        food: Food,
        /// The year of the code that the place has adopted.
        code_year: u16,
    },
    /// So many tenfold cuts of Salmonella.
    Lethality {
        /// The class of food; poultry needs a table of its own.
        food: Food,
        /// How many: 6.5.
        log: Decimal,
    },
    /// The table of one row, and no other.
    Row(RowId),
}

/// Was one temperature, held for one time, enough? Below a table's first row it never is, and between
/// two rows the cooler and longer one holds.
///
/// # Errors
/// A temperature or time that cannot be.
pub fn enough(
    cook: &Cook,
    standard: &Standard,
    rules: &HeatRules,
    rows: &Rows,
) -> Result<Judgement> {
    plausible_core("core", cook.core)?;
    plausible_time("held", cook.held)?;
    Ok(by_all(standard, rules, |table| one(cook, table, rows)))
}

/// What a log tells, with what a person has to look at: a long silence, a fire that went out; and with the
/// advice on how fast it came up.
pub(super) fn looked_over(
    mut judged: Judgement,
    log: &Log,
    tables: &[&HeatTable],
    rules: &HeatRules,
) -> Judgement {
    if let Some(rule) = &rules.log {
        for silence in log.silences(minutes(rule.silence_minutes.value)) {
            let says = CookSays::Silence {
                from: log.on_clock(silence.from),
                until: log.on_clock(silence.until),
                length: silence.length(),
            };
            judged = judged.but(Finding::new(
                Gravity::Warn,
                says,
                [rule.silence_minutes.row.clone()],
            ));
        }
        let coolest = tables
            .iter()
            .map(|table| table.first().at_least)
            .min_by_key(Printed::temperature);
        if let Some(fell) = coolest.and_then(|level| log.fell_and_rose(&level)) {
            let says = CookSays::WentOut {
                core: fell.core,
                at: log.on_clock(fell.at),
            };
            judged = judged.but(Finding::new(
                Gravity::Warn,
                says,
                [rule.silence_minutes.row.clone()],
            ));
        }
    }
    judged.with(came_up(log, rules))
}

fn tables<'a>(standard: &Standard, rules: &'a HeatRules) -> Vec<&'a HeatTable> {
    let cooking = rules.cooking.iter();
    match standard {
        Standard::Kitchen { food, code_year } => cooking
            .filter(|cooking| cooking.holds(*food, *code_year))
            .map(|cooking| &cooking.table)
            .collect(),
        Standard::Lethality { food, log } => rules
            .lethality
            .iter()
            .filter(|lethality| lethality.log == Some(*log) && lethality.bird.is_none())
            .filter(|lethality| lethality.place.is_none() && !lethality.not_for.contains(food))
            .map(|lethality| &lethality.table)
            .collect(),
        Standard::Row(row) => cooking
            .map(|cooking| &cooking.table)
            .chain(rules.lethality.iter().map(|lethality| &lethality.table))
            .filter(|table| table.row() == row)
            .collect(),
    }
}

fn by_all(
    standard: &Standard,
    rules: &HeatRules,
    by: impl Fn(&HeatTable) -> Judgement,
) -> Judgement {
    let all = tables(standard, rules).into_iter().map(by);
    all.reduce(Judgement::and).unwrap_or_else(|| {
        let says = match standard {
            Standard::Kitchen { food, .. } => CookSays::NoTable { food: *food },
            Standard::Lethality { food, log } => CookSays::NoLethality {
                log: *log,
                food: *food,
            },
            Standard::Row(row) => CookSays::NoRow { row: row.clone() },
        };
        Judgement::decide(Finding::new(Gravity::Warn, says, []))
    })
}

pub(super) fn one(cook: &Cook, table: &HeatTable, rows: &Rows) -> Judgement {
    let Some(step) = table.step_at(cook.core) else {
        return too_cool(cook.core, table, rows);
    };
    match step.hold.checked_sub(&cook.held) {
        Some(missing) if missing > TimeDelta::zero() && cook.held.is_zero() => {
            let (at_least, hold) = (step.at_least, step.hold);
            let says = CookSays::NotHeld { at_least, hold };
            Judgement::short(Some(missing), Finding::against(rows, table.row(), says))
        }
        Some(missing) if missing > TimeDelta::zero() => {
            let says = CookSays::HeldShort {
                core: cook.core,
                held: cook.held,
                at_least: step.at_least,
                hold: step.hold,
                missing: whole_seconds(missing),
            };
            Judgement::short(Some(missing), Finding::against(rows, table.row(), says))
        }
        _ => met(step, cook.held, table, rows),
    }
}

/// As long or longer, in whole seconds: what is missing is never told as nothing.
fn whole_seconds(missing: TimeDelta) -> TimeDelta {
    match missing.subsec_nanos() {
        0 => missing,
        _ => TimeDelta::seconds(missing.num_seconds() + 1),
    }
}

pub(super) fn logged(log: &Log, table: &HeatTable, rules: &HeatRules, rows: &Rows) -> Judgement {
    let join = rules
        .log
        .as_ref()
        .map(|rule| minutes(rule.join_minutes.value));
    let best = |join: Option<TimeDelta>| {
        let held = |step: &HoldStep| Some((*step, log.longest_hold(&step.at_least, join)?));
        let missing = |(step, held): &(HoldStep, TimeDelta)| step.hold - *held;
        table.steps().iter().filter_map(held).min_by_key(missing)
    };
    let Some((step, held)) = best(join) else {
        let warmest = log.readings().iter().map(|reading| reading.core).max();
        return too_cool(warmest.expect("a log has a reading"), table, rows);
    };
    if held >= step.hold {
        return met(step, held, table, rows);
    }
    if let Some((step, held)) = best(None).filter(|(step, held)| held >= &step.hold) {
        let says = CookSays::Gaps {
            held,
            at_least: step.at_least,
        };
        return Judgement::decide(Finding::new(Gravity::Warn, says, [table.row().clone()]));
    }
    let missing = step.hold - held;
    let (at_least, hold) = (step.at_least, step.hold);
    let says = match held.is_zero() {
        true => CookSays::NotHeld { at_least, hold },
        false => CookSays::HoldShort {
            at_least,
            held,
            hold,
            missing: whole_seconds(missing),
        },
    };
    Judgement::short(Some(missing), Finding::against(rows, table.row(), says))
}

fn met(step: HoldStep, held: TimeDelta, table: &HeatTable, rows: &Rows) -> Judgement {
    let HoldStep { at_least, hold } = step;
    let says = match hold.is_zero() {
        true => CookSays::Reached { at_least },
        false => CookSays::Enough {
            at_least,
            hold,
            held,
        },
    };
    let gravity = match rows.is_confirmed(table.row()) {
        true => Gravity::Note,
        false => Gravity::Warn,
    };
    Judgement::enough(Finding::new(gravity, says, [table.row().clone()]))
}

fn too_cool(core: Temperature, table: &HeatTable, rows: &Rows) -> Judgement {
    let HoldStep { at_least, hold } = table.first();
    let says = match hold.is_zero() {
        true => CookSays::TooCoolAtOnce { core, at_least },
        false => CookSays::TooCool {
            core,
            at_least,
            hold,
        },
    };
    Judgement::short(None, Finding::against(rows, table.row(), says))
}

/// Advice only: did the core take longer to come up than it should?
fn came_up(log: &Log, rules: &HeatRules) -> Option<Finding> {
    let rule = rules.come_up.as_ref()?;
    let within = hours(rule.within_hours.value);
    let hot = log
        .readings()
        .iter()
        .position(|reading| reading.core.reaches(&rule.to))?;
    let cold = log.readings()[..hot]
        .iter()
        .rposition(|reading| reading.core.against(&rule.from).is_le())
        .unwrap_or(0);
    let took = log.readings()[hot].at - log.readings()[cold].at;
    (took > within).then(|| {
        let says = CookSays::CameUpSlowly {
            from: rule.from,
            to: rule.to,
            took,
            within,
        };
        Finding::new(Gravity::Warn, says, [rule.within_hours.row.clone()])
    })
}
