//! Does a food need time and temperature control?

use super::grid::{Cell, Grid};
use super::readings::{Readings, Treated};
use super::rules::Rules;
use super::way::{any_of, by_way, met};
use crate::refusal::Result;
use crate::rows::{Finding, Gravity, Rows};

/// The answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Stability {
    /// It needs none.
    Stable,
    /// It needs it until an assessment of the product proves otherwise.
    NeedsAssessment,
    /// It needs it.
    NeedsControl,
}

impl Stability {
    /// As it is spelt everywhere.
    pub const fn as_str(self) -> &'static str {
        match self {
            Stability::Stable => "stable",
            Stability::NeedsAssessment => "needs-assessment",
            Stability::NeedsControl => "needs-control",
        }
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
    readings: &Readings,
    treated: Treated,
    rules: &Rules,
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
        findings: vec![Finding::new(
            Gravity::Warn,
            "This place has no table of stability here, so the food is kept under time and \
             temperature control.",
            [],
        )],
    }))
}

fn by_grid(grid: &Grid, readings: &Readings, rules: &Rules, rows: &Rows) -> Stable {
    let (ph, activity) = (readings.ph, readings.water_activity);
    let shown = |value: Option<rust_decimal::Decimal>| {
        value.map_or_else(|| "not measured".to_owned(), |value| value.to_string())
    };
    let measured = format!("pH {}, water activity {}", shown(ph), shown(activity));
    let (stability, says) = match grid.cell(activity, ph, rules.is_strict) {
        Cell::Stable => (
            Stability::Stable,
            format!("{measured}: no time and temperature control is needed."),
        ),
        Cell::Assess if ph.is_none() || activity.is_none() => {
            let lacks: Vec<&str> = [
                (ph.is_none(), "the pH"),
                (activity.is_none(), "the water activity"),
            ]
            .into_iter()
            .filter_map(|(lacks, what)| lacks.then_some(what))
            .collect();
            let says = format!(
                "{measured}: it needs time and temperature control. Measure {}.",
                lacks.join(" and ")
            );
            (Stability::NeedsControl, says)
        }
        Cell::Assess => (
            Stability::NeedsAssessment,
            format!(
                "{measured}: it needs time and temperature control until an assessment of the \
                 product proves otherwise."
            ),
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

fn by_list(readings: &Readings, rules: &Rules, rows: &Rows) -> Stable {
    match met(&rules.stable, readings, rows) {
        Some(way) => Stable {
            stability: Stability::Stable,
            findings: vec![by_way(way, rows)],
        },
        None => {
            let says = format!(
                "It needs control. It would not with any one of: {}.",
                any_of(&rules.stable)
            );
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
