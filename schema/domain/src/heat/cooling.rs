//! Was it cooled in time?

use super::judgement::{Answer, Judgement};
use super::log::{CoreReading, Log};
use super::rules::{HeatRules, minutes};
use super::says::{CoolSays, StageSays};
use crate::measure::Printed;
use crate::refusal::{Refusal, Result};
use crate::rows::{Bound, Finding, Gravity, RowId, Rows};
use crate::says::Arg;
use crate::words::Profile;
use chrono::{DateTime, TimeDelta, Utc};
use rust_decimal::Decimal;

/// A way to cool: every stage must be met.
#[derive(Debug, Clone, PartialEq)]
pub struct CoolingPlan {
    /// Its name.
    pub name: String,
    /// Where it stands.
    pub row: RowId,
    /// The row that lets a kitchen use it only with an approval on file, if one does.
    pub needs_approval: Option<RowId>,
    /// For cured meat only, with so much nitrite taken in (ppm).
    pub nitrite_ppm: Option<Bound>,
    /// For what was not cooked: it is never found for a cook.
    pub not_after_cooking: bool,
    /// The place whose rule it is, where that is another one: it may show that food was cooled in time,
    /// and stops nobody here.
    pub place: Option<Profile>,
    /// The stages. Each runs from the time that the meat was last at its upper temperature.
    pub stages: Vec<CoolingStage>,
}

/// From one temperature to another within a time.
#[derive(Debug, Clone, PartialEq)]
pub struct CoolingStage {
    /// From here; `None` counts from the first reading.
    pub from: Option<Printed>,
    /// Down to here.
    pub to: Printed,
    /// In minutes, at most.
    pub within_minutes: Bound,
}

/// What is known of a cooling.
#[derive(Debug, Clone)]
pub struct Cooled<'a> {
    /// Its readings.
    pub log: &'a Log,
    /// Nitrite taken in (ppm), for cured meat.
    pub nitrite_ppm: Option<Decimal>,
    /// Was it cooked, and is it that heat that it has to lose?
    pub is_cooked: bool,
    /// Is an approval for the plan on file?
    pub is_approved: bool,
}

/// Was it cooled by that plan? What the readings prove is said; where the truth lies between two
/// readings, a person decides.
///
/// # Errors
/// No such plan in this place; nitrite that cannot be.
pub fn cooled(
    cooled: &Cooled<'_>,
    plan: &str,
    rules: &HeatRules,
    rows: &Rows,
) -> Result<Judgement> {
    by_plan(cooled, named(plan, rules)?, rows)
}

/// The plan of that name or row.
fn named<'r>(plan: &str, rules: &'r HeatRules) -> Result<&'r CoolingPlan> {
    let is_it = |each: &&CoolingPlan| each.name == plan || each.row.as_str() == plan;
    rules.cooling.iter().find(is_it).ok_or_else(|| {
        let known = rules.cooling.iter().map(|plan| Arg::from(&*plan.name));
        let detail = CoolSays::NoPlan {
            plan: plan.to_owned(),
            known: Arg::All(known.collect()),
        };
        Refusal::cannot_be("plan", detail)
    })
}

/// Was it cooled in time: by the plan that was chosen, by its name or its row; else by the one that
/// fits among all that were made for what was cooked, the place's usual one first. Where none is met,
/// the first speaks. Nothing where there is no plan at all.
///
/// Whoever names another place's plan, or one that nobody has read, is still bound by what the place has:
/// such a plan may show that food was cooled in time, and never opens what a row that was read shuts.
///
/// # Errors
/// No such plan; one that is not for what was cooked; nitrite that cannot be.
pub fn cooled_by(
    cooled: &Cooled<'_>,
    chosen: Option<&str>,
    rules: &HeatRules,
    rows: &Rows,
) -> Result<Option<Judgement>> {
    let Some(plan) = chosen else {
        return found(cooled, rules, rows);
    };
    let plan = named(plan, rules)?;
    if plan.not_after_cooking && cooled.is_cooked {
        let plan = plan.name.clone();
        let says = CoolSays::NotAfterCooking { plan };
        return Err(Refusal::cannot_be("plan", says));
    }
    let judged = warned(plan, by_plan(cooled, plan, rows)?);
    let binds = match judged.is_enough() {
        true => rows.is_confirmed(&plan.row),
        false => plan.place.is_none(),
    };
    if binds || plan.not_after_cooking {
        return Ok(Some(judged));
    }
    let of_place = found(cooled, rules, rows)?.filter(Judgement::shuts);
    Ok(Some(of_place.unwrap_or(judged)))
}

/// What another place's plan says stops nobody.
fn warned(plan: &CoolingPlan, judged: Judgement) -> Judgement {
    match plan.place {
        Some(_) => judged.warned(),
        None => judged,
    }
}

/// The plan that fits, the place's usual one first.
fn found(cooled: &Cooled<'_>, rules: &HeatRules, rows: &Rows) -> Result<Option<Judgement>> {
    let usual = |plan: &&CoolingPlan| rules.after_cooking.as_ref() == Some(&plan.name);
    let mut plans: Vec<&CoolingPlan> = rules.cooling.iter().collect();
    plans.retain(|plan| !plan.not_after_cooking);
    plans.sort_by_key(|plan| (!usual(plan), plan.place.is_some()));
    let mut first: Option<Judgement> = None;
    for plan in &plans {
        let judged = warned(plan, by_plan(cooled, plan, rows)?);
        let is_shut = first.as_ref().is_some_and(Judgement::shuts);
        if judged.is_enough() && (rows.is_confirmed(&plan.row) || !is_shut) {
            return Ok(Some(judged));
        }
        // What another way leaves open does not open what the usual one shuts.
        first.get_or_insert(judged);
    }
    Ok(first.map(|judged| none_met(judged, cooled, &plans, rows)))
}

/// Of a place without a figure of its own: what is slower in the warm than every plan of any place lets it be is no
/// question of which figure holds here. Only the first stage of those in stages is asked, where bacteria grow
/// fastest: how cold it has to be in the end is the place's own matter.
fn none_met(
    judged: Judgement,
    cooled: &Cooled<'_>,
    plans: &[&CoolingPlan],
    rows: &Rows,
) -> Judgement {
    let in_stages = plans.iter().filter(|plan| plan.stages.len() > 1);
    let warm: Vec<(&RowId, Judgement)> = in_stages
        .filter_map(|plan| Some((&plan.row, stage(cooled.log, plan.stages.first()?, rows))))
        .collect();
    let is_kept = warm.iter().any(|(_, of)| of.is_enough());
    let short =
        |(row, of): &(&RowId, Judgement)| of.answer == Answer::Short && rows.is_confirmed(row);
    let read = warm.iter().filter(|(row, _)| rows.is_confirmed(row));
    let read: Vec<RowId> = read.map(|(row, _)| (*row).clone()).collect();
    if judged.shuts() || is_kept {
        return judged;
    }
    // Where the readings leave open what another place's plan says, one that was broken is enough to ask; and readings so
    // far apart that they show no plan kept prove no cooling.
    if !warm.iter().any(short) {
        let untold = warm.iter().any(|(_, of)| of.untold);
        return Judgement { untold, ..judged };
    }
    let says = CoolSays::NoneMet;
    Judgement {
        answer: Answer::Short,
        ..judged.with([Finding::new(Gravity::Refuse, says, read)])
    }
}

fn by_plan(cooled: &Cooled<'_>, plan: &CoolingPlan, rows: &Rows) -> Result<Judgement> {
    if let Some(ppm) = cooled.nitrite_ppm.filter(|ppm| ppm.is_sign_negative()) {
        let detail = CoolSays::NitriteCannotBe { ppm };
        return Err(Refusal::cannot_be("nitrite_ppm", detail));
    }
    let judged = plan
        .stages
        .iter()
        .map(|each| stage(cooled.log, each, rows))
        .reduce(Judgement::and)
        .unwrap_or_else(|| Judgement::decide(Finding::note(CoolSays::NoStages, [])));
    let judged = match &plan.needs_approval {
        Some(row) if !cooled.is_approved => {
            let says = CoolSays::NotApproved;
            judged.and(Judgement::short(None, Finding::against(rows, row, says)))
        }
        _ => judged,
    };
    Ok(match &plan.nitrite_ppm {
        Some(least) if !cooled.nitrite_ppm.is_some_and(|ppm| least.allows(ppm)) => {
            let needed = least.value;
            let says = match cooled.nitrite_ppm {
                None => CoolSays::NoNitrite { least: needed },
                Some(ppm) => CoolSays::LittleNitrite { least: needed, ppm },
            };
            judged.and(Judgement::short(
                None,
                Finding::against(rows, &least.row, says),
            ))
        }
        _ => judged,
    })
}

/// What the readings say of a stage: the time that it took lies between `least` and `most`.
struct Took {
    least: TimeDelta,
    most: TimeDelta,
}

fn stage(log: &Log, stage: &CoolingStage, rows: &Rows) -> Judgement {
    let within = minutes(stage.within_minutes.value);
    let row = &stage.within_minutes.row;
    let readings = log.readings();
    // The last reading that was still above, and the first from which on all were at or below.
    let above = readings
        .iter()
        .rposition(|reading| reading.core.against(&stage.to).is_gt());
    let Some(start) = started(log, stage) else {
        return unknown_start(log, stage, within, rows);
    };
    let Some(warm) = above else {
        let says = CoolSays::NeverAbove { to: stage.to };
        return Judgement::enough(Finding::note(says, [row.clone()]));
    };
    let Some(arrived) = readings.get(warm + 1) else {
        return not_there(log, readings[warm], stage, &start, rows);
    };
    let took = Took {
        least: readings[warm].at - start.latest,
        most: arrived.at - start.earliest,
    };
    weigh(&took, stage, within, rows)
}

/// When the meat left the upper temperature: not before `earliest`, not after `latest`.
struct CoolingStart {
    earliest: DateTime<Utc>,
    latest: DateTime<Utc>,
}

fn started(log: &Log, stage: &CoolingStage) -> Option<CoolingStart> {
    let readings = log.readings();
    let at = |reading: &CoreReading| CoolingStart {
        earliest: reading.at,
        latest: reading.at,
    };
    let Some(from) = stage.from else {
        return Some(at(&log.first()));
    };
    let last = readings
        .iter()
        .rposition(|reading| reading.core.reaches(&from))?;
    // A reading just at the temperature is the start itself; else it was passed before the next one.
    Some(match readings.get(last + 1) {
        Some(next) if readings[last].core.against(&from).is_gt() => CoolingStart {
            earliest: readings[last].at,
            latest: next.at,
        },
        _ => at(&readings[last]),
    })
}

fn weigh(took: &Took, stage: &CoolingStage, within: TimeDelta, rows: &Rows) -> Judgement {
    let row = &stage.within_minutes.row;
    let (most, least) = (took.most, took.least);
    let stage = stage.says();
    if most <= within {
        let says = CoolSays::Enough {
            stage,
            most,
            within,
        };
        return Judgement::enough(Finding::note(says, [row.clone()]));
    }
    if least >= within {
        let says = CoolSays::TooLong {
            stage,
            least,
            within,
        };
        return Judgement::short(None, Finding::against(rows, row, says));
    }
    let says = match least > TimeDelta::zero() {
        true => CoolSays::Unsure {
            stage,
            least,
            most,
            within,
        },
        false => CoolSays::UnsureAtMost {
            stage,
            most,
            within,
        },
    };
    Judgement::untold(rows, row, says)
}

fn not_there(
    log: &Log,
    last: CoreReading,
    stage: &CoolingStage,
    start: &CoolingStart,
    rows: &Rows,
) -> Judgement {
    let Bound { row, value, .. } = &stage.within_minutes;
    let within = minutes(*value);
    let gone = last.at - start.latest;
    if gone >= within {
        let (core, says) = (last.core, stage.says());
        let says = match stage.from {
            Some(from) => CoolSays::StillWarm {
                gone,
                from,
                core,
                within,
                stage: says,
            },
            None => CoolSays::WarmSinceStart {
                gone,
                core,
                within,
                stage: says,
            },
        };
        return Judgement::short(None, Finding::against(rows, row, says));
    }
    let says = CoolSays::StillCooling {
        core: last.core,
        at: log.on_clock(last.at),
        to: stage.to,
        by: log.on_clock(start.earliest + within),
    };
    // Past the time that it had if it left its upper temperature at the earliest: perhaps it is broken already.
    if last.at - start.earliest > within {
        return Judgement::untold(rows, row, says);
    }
    Judgement::decide(Finding::new(Gravity::Warn, says, [row.clone()]))
}

fn unknown_start(log: &Log, stage: &CoolingStage, within: TimeDelta, rows: &Rows) -> Judgement {
    let row = &stage.within_minutes.row;
    let first = log.first();
    let warm = log
        .readings()
        .iter()
        .rev()
        .find(|reading| reading.core.against(&stage.to).is_gt());
    if let Some(warm) = warm.filter(|warm| warm.at - first.at >= within) {
        let says = CoolSays::WarmAfterFirst {
            core: warm.core,
            after: warm.at - first.at,
            within,
            stage: stage.says(),
        };
        return Judgement::short(None, Finding::against(rows, row, says));
    }
    let says = CoolSays::BeginsLate {
        core: first.core,
        stage: stage.says(),
    };
    Judgement::decide(Finding::new(Gravity::Warn, says, [row.clone()]))
}

impl CoolingStage {
    fn says(&self) -> StageSays {
        let to = self.to;
        match self.from {
            Some(from) => StageSays::Between { from, to },
            None => StageSays::FromStart { to },
        }
    }
}
