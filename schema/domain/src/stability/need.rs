//! Does a food need time and temperature control?

use super::grid::{StabilityCell, StabilityGrid};
use super::readings::{StabilityReadings, Treated};
use super::rules::StabilityRules;
use super::says::{StabilitySays, measured};
use super::way::{any_of, by_way, met};
use crate::refusal::Result;
use crate::rows::{Finding, Gravity, Rows};
use crate::says::{Arg, Says};
use crate::words::words;

words! {
    /// The answer, the better first.
    Stability {
        /// It needs none.
        Stable = "stable",
        /// It needs it until an assessment of the product proves otherwise.
        NeedsAssessment = "needs-assessment",
        /// It needs it.
        NeedsControl = "needs-control",
    }
}

/// The answer with its reasons.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stable {
    /// Stable, or not.
    pub stability: Stability,
    /// The reasons, with their rows.
    pub findings: Vec<Finding>,
}

impl Stable {
    /// May it be kept without time and temperature control?
    pub fn is_stable(&self) -> bool {
        self.stability == Stability::Stable
    }
}

/// Does it need control? What was not measured is taken at its worst; where that leaves it open, it
/// needs control, and what to measure is said.
///
/// # Errors
/// A reading that cannot be.
pub fn needs_control(
    readings: &StabilityReadings,
    treated: Treated,
    rules: &StabilityRules,
    rows: &Rows,
) -> Result<Stable> {
    readings.plausible()?;
    let grid = match treated.is_heated && treated.is_packed {
        true => &rules.heated_and_packed,
        false => &rules.otherwise,
    };
    let answers = [
        grid.as_ref()
            .map(|grid| by_grid(grid, readings, rules, rows)),
        (!rules.stable.is_empty()).then(|| by_list(readings, rules, rows)),
    ];
    let best = answers
        .into_iter()
        .flatten()
        .min_by_key(|answer| answer.stability);
    Ok(best.unwrap_or_else(|| Stable {
        stability: Stability::NeedsControl,
        findings: vec![Finding::new(Gravity::Warn, StabilitySays::NoTable, [])],
    }))
}

fn by_grid(
    grid: &StabilityGrid,
    readings: &StabilityReadings,
    rules: &StabilityRules,
    rows: &Rows,
) -> Stable {
    let (ph, activity) = (readings.ph, readings.water_activity);
    let measured = Says::from(StabilitySays::Measured {
        ph: measured(ph),
        activity: measured(activity),
    });
    let (stability, says) = match grid.cell(activity, ph, rules.is_strict) {
        StabilityCell::Stable => (Stability::Stable, StabilitySays::Stable { measured }),
        StabilityCell::Assess if ph.is_none() || activity.is_none() => {
            let lacks = [
                (ph.is_none(), StabilitySays::Ph),
                (activity.is_none(), StabilitySays::WaterActivity),
            ];
            let lacks = lacks.into_iter().filter(|(lacks, _)| *lacks);
            let lacks = Arg::All(lacks.map(|(_, what)| Arg::from(what)).collect());
            let says = StabilitySays::Measure { measured, lacks };
            (Stability::NeedsControl, says)
        }
        StabilityCell::Assess => (
            Stability::NeedsAssessment,
            StabilitySays::Assess { measured },
        ),
    };
    let finding = match (stability, rows.is_confirmed(grid.row())) {
        (Stability::Stable, true) => Finding::note(says, [grid.row().clone()]),
        _ => Finding::new(Gravity::Warn, says, [grid.row().clone()]),
    };
    Stable {
        stability,
        findings: vec![finding],
    }
}

fn by_list(readings: &StabilityReadings, rules: &StabilityRules, rows: &Rows) -> Stable {
    match met(&rules.stable, readings, rows) {
        Some(way) => Stable {
            stability: Stability::Stable,
            findings: vec![by_way(way, rows)],
        },
        None => {
            let ways = Arg::Series(any_of(&rules.stable));
            let says = StabilitySays::NoneOf { ways };
            let list = rules.stable.iter().map(|way| way.row.clone());
            let mut list: Vec<_> = list.collect();
            list.dedup();
            Stable {
                stability: Stability::NeedsControl,
                findings: vec![Finding::new(Gravity::Warn, says, list)],
            }
        }
    }
}
