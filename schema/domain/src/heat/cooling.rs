//! Was it cooled in time?

use super::judgement::Judgement;
use super::log::{Log, Reading, clock};
use super::rules::{Rules, minutes};
use super::words::shown;
use crate::measure::Temperature;
use crate::refusal::{Refusal, Result};
use crate::rows::{Bound, Finding, Gravity, RowId, Rows};
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
    /// The stages. Each runs from the time that the meat was last at its upper temperature.
    pub stages: Vec<Stage>,
}

/// From one temperature to another within a time.
#[derive(Debug, Clone, PartialEq)]
pub struct Stage {
    /// From here; from the first reading where there is none.
    pub from: Option<Temperature>,
    /// Down to here.
    pub to: Temperature,
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
    /// Is an approval for the plan on file?
    pub is_approved: bool,
}

/// Was it cooled by that plan? What the readings prove is said; where the truth lies between two
/// readings, a person decides.
///
/// # Errors
/// No such plan in this place; nitrite that cannot be.
pub fn cooled(cooled: &Cooled<'_>, plan: &str, rules: &Rules, rows: &Rows) -> Result<Judgement> {
    let Some(plan) = rules.cooling.iter().find(|each| each.name == plan) else {
        let known: Vec<&str> = rules.cooling.iter().map(|plan| &*plan.name).collect();
        let detail = format!(
            "This place has no cooling plan {plan:?}. Known here: {}.",
            known.join(", ")
        );
        return Err(Refusal::cannot_be("plan", detail));
    };
    if let Some(ppm) = cooled.nitrite_ppm.filter(|ppm| ppm.is_sign_negative()) {
        let detail = format!("{ppm} ppm of nitrite cannot be. Leave it out if none was used.");
        return Err(Refusal::cannot_be("nitrite_ppm", detail));
    }
    let judged = plan
        .stages
        .iter()
        .map(|each| stage(cooled.log, each, rows))
        .reduce(Judgement::and)
        .unwrap_or_else(|| Judgement::decide(Finding::note("It has no stages.", [])));
    let judged = match &plan.needs_approval {
        Some(row) if !cooled.is_approved => {
            let says = "This way to cool needs an approval on file first. Without one the ordinary \
                        cooling times hold.";
            judged.and(Judgement::short(None, Finding::against(rows, row, says)))
        }
        _ => judged,
    };
    Ok(match &plan.nitrite_ppm {
        Some(least) if !cooled.nitrite_ppm.is_some_and(|ppm| least.allows(ppm)) => {
            let has = cooled.nitrite_ppm.map_or_else(
                || "none is on record".to_owned(),
                |ppm| format!("{ppm} ppm went in"),
            );
            let says = format!(
                "This slower way is for meat cured with {} ppm of nitrite or more; {has}.",
                least.value
            );
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

fn stage(log: &Log, stage: &Stage, rows: &Rows) -> Judgement {
    let within = minutes(stage.within_minutes.value);
    let row = &stage.within_minutes.row;
    let readings = log.readings();
    // The last reading that was still above, and the first from which on all were at or below.
    let above = readings.iter().rposition(|reading| reading.core > stage.to);
    let Some(start) = started(log, stage) else {
        return unknown_start(log, stage, within, rows);
    };
    let Some(warm) = above else {
        let says = format!("It never was above {}.", stage.to);
        return Judgement::enough(Finding::note(says, [row.clone()]));
    };
    let Some(arrived) = readings.get(warm + 1) else {
        return not_there(readings[warm], stage, &start, within, rows);
    };
    let took = Took {
        least: readings[warm].at - start.latest,
        most: arrived.at - start.earliest,
    };
    weigh(&took, stage, within, rows)
}

/// When the meat left the upper temperature: not before `earliest`, not after `latest`.
struct Start {
    earliest: DateTime<Utc>,
    latest: DateTime<Utc>,
}

fn started(log: &Log, stage: &Stage) -> Option<Start> {
    let readings = log.readings();
    let at = |reading: &Reading| Start {
        earliest: reading.at,
        latest: reading.at,
    };
    let Some(from) = stage.from else {
        return Some(at(&log.first()));
    };
    let last = readings.iter().rposition(|reading| reading.core >= from)?;
    // A reading just at the temperature is the start itself; else it was passed before the next one.
    Some(match readings.get(last + 1) {
        Some(next) if readings[last].core > from => Start {
            earliest: readings[last].at,
            latest: next.at,
        },
        _ => at(&readings[last]),
    })
}

fn weigh(took: &Took, stage: &Stage, within: TimeDelta, rows: &Rows) -> Judgement {
    let row = &stage.within_minutes.row;
    let what = said(stage);
    if took.most <= within {
        let says = format!(
            "Enough: {what} took {} at most; {} are allowed.",
            shown(took.most),
            shown(within)
        );
        return Judgement::enough(Finding::note(says, [row.clone()]));
    }
    if took.least >= within {
        let says = format!(
            "{what} took more than {}; {} are allowed.",
            shown(took.least),
            shown(within)
        );
        return Judgement::short(None, Finding::against(rows, row, says));
    }
    let says = format!(
        "{what} took between {} and {}; {} are allowed. The readings are too far apart to tell; a \
         person decides.",
        shown(took.least.max(TimeDelta::zero())),
        shown(took.most),
        shown(within)
    );
    Judgement::decide(Finding::new(Gravity::Warn, says, [row.clone()]))
}

fn not_there(
    last: Reading,
    stage: &Stage,
    start: &Start,
    within: TimeDelta,
    rows: &Rows,
) -> Judgement {
    let row = &stage.within_minutes.row;
    let gone = last.at - start.latest;
    if gone >= within {
        let says = format!(
            "{} after {} it was still at {}; {} are allowed for {}.",
            shown(gone),
            upper(stage),
            last.core,
            shown(within),
            said(stage)
        );
        return Judgement::short(None, Finding::against(rows, row, says));
    }
    let says = format!(
        "It is still cooling ({} at {}). It must be at {} by {}.",
        last.core,
        clock(last.at),
        stage.to,
        clock(start.earliest + within)
    );
    Judgement::decide(Finding::new(Gravity::Warn, says, [row.clone()]))
}

fn unknown_start(log: &Log, stage: &Stage, within: TimeDelta, rows: &Rows) -> Judgement {
    let row = &stage.within_minutes.row;
    let first = log.first();
    let warm = log
        .readings()
        .iter()
        .rev()
        .find(|reading| reading.core > stage.to);
    if let Some(warm) = warm.filter(|warm| warm.at - first.at >= within) {
        let says = format!(
            "It was still at {} {} after the first reading; {} are allowed for {}.",
            warm.core,
            shown(warm.at - first.at),
            shown(within),
            said(stage)
        );
        return Judgement::short(None, Finding::against(rows, row, says));
    }
    let says = format!(
        "The readings begin at {}, so nobody can tell how long {} took. A reading at or above that \
         is missing; a person decides.",
        first.core,
        said(stage)
    );
    Judgement::decide(Finding::new(Gravity::Warn, says, [row.clone()]))
}

fn upper(stage: &Stage) -> String {
    stage
        .from
        .map_or_else(|| "the start".to_owned(), |from| from.to_string())
}

fn said(stage: &Stage) -> String {
    format!("cooling from {} to {}", upper(stage), stage.to)
}
