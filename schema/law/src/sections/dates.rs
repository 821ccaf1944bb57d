//! How long food keeps.

use crate::Bad;
use crate::entry::{BoundEntry, TemperatureEntry, known};
use crate::file::Subject;
use domain::dates::{Cold, Marked, Resets, ShelfLifeRules, Supplier, Vacuum};
use domain::rows::{RowId, Rows};
use domain::words::StepKind;
use schemars::JsonSchema;
use serde::Deserialize;

/// How long food keeps. What a place has no rule for is left out.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct DatesEntry {
    /// Ready-to-eat food that needs time and temperature control, held cold.
    ready_to_eat: Option<MarkedEntry>,
    /// The same, bought in: counted from the day it is opened.
    opened: Option<MarkedEntry>,
    /// When the supplier's own date caps ours.
    supplier: Option<SupplierEntry>,
    /// The row by which a mix keeps the earliest date of its parts.
    mix: Option<String>,
    /// Steps that start the date anew.
    resets: Option<ResetsEntry>,
    /// The row by which freezing stops the clock and never resets it.
    freezing: Option<String>,
    /// Packs without air.
    vacuum: Option<VacuumEntry>,
    /// The row by which raw meat is dated by the house.
    raw: Option<String>,
    /// The row by which a house-made cured piece has no exemption of a plant.
    house_cured: Option<String>,
    /// The row by which readings show that a cured piece needs no control.
    stable: Option<String>,
}

#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct MarkedEntry {
    /// At most so many days.
    days: BoundEntry,
    /// Is the day of the event day 1?
    day_one_counts: bool,
    /// The row that says how to count.
    counting: String,
}

#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct SupplierEntry {
    /// Always, or only where the supplier set it for safety.
    always: bool,
    /// The row that says so.
    row: String,
}

#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ResetsEntry {
    /// Kinds of step.
    steps: Vec<String>,
    /// The row that says so.
    row: String,
}

#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct VacuumEntry {
    /// At most so many days from packing, the day of packing not counted.
    days: Option<BoundEntry>,
    /// The same for fresh whole-muscle meat.
    fresh: Option<BoundEntry>,
    /// The same for what was cooked in the kitchen.
    cooked: Option<BoundEntry>,
    /// How cold they are kept, where no approval says otherwise.
    cold: Option<ColdEntry>,
    /// The row by which house-cured and cooked food needs an approval on file.
    approval: Option<String>,
    /// The row by which a written plan is needed.
    plan: Option<String>,
}

/// How cold something is kept.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ColdEntry {
    /// At most so warm.
    degrees: TemperatureEntry,
    /// The row that says so.
    row: String,
}

impl MarkedEntry {
    fn marked(&self, rows: &Rows) -> Result<Marked, Bad> {
        Ok(Marked {
            days: self.days.bound(rows)?,
            day_one_counts: self.day_one_counts,
            counting: known(rows, &self.counting)?,
        })
    }
}

impl VacuumEntry {
    fn vacuum(&self, rows: &Rows) -> Result<Vacuum, Bad> {
        let bound =
            |entry: &Option<BoundEntry>| entry.as_ref().map(|entry| entry.bound(rows)).transpose();
        Ok(Vacuum {
            days: bound(&self.days)?,
            fresh: bound(&self.fresh)?,
            cooked: bound(&self.cooked)?,
            cold: self
                .cold
                .as_ref()
                .map(|cold| {
                    Ok::<_, Bad>(Cold {
                        degrees: cold.degrees.temperature(),
                        row: known(rows, &cold.row)?,
                    })
                })
                .transpose()?,
            approval: row(rows, &self.approval)?,
            plan: row(rows, &self.plan)?,
        })
    }
}

impl ResetsEntry {
    fn resets(&self, rows: &Rows) -> Result<Resets, Bad> {
        let step = |word: &String| {
            StepKind::parse(word)
                .ok_or_else(|| Bad::new(format!("resets: {word:?} is not a kind of step")))
        };
        Ok(Resets {
            steps: self.steps.iter().map(step).collect::<Result<_, _>>()?,
            row: known(rows, &self.row)?,
        })
    }
}

fn row(rows: &Rows, id: &Option<String>) -> Result<Option<RowId>, Bad> {
    id.as_ref().map(|id| known(rows, id)).transpose()
}

impl Subject for DatesEntry {
    type Rules = ShelfLifeRules;

    fn rules(self, rows: &Rows) -> Result<ShelfLifeRules, Bad> {
        let marked = |entry: &Option<MarkedEntry>| {
            entry.as_ref().map(|entry| entry.marked(rows)).transpose()
        };
        let supplier = |entry: &SupplierEntry| -> Result<Supplier, Bad> {
            Ok(Supplier {
                always: entry.always,
                row: known(rows, &entry.row)?,
            })
        };
        Ok(ShelfLifeRules {
            ready_to_eat: marked(&self.ready_to_eat)?,
            opened: marked(&self.opened)?,
            supplier: self.supplier.as_ref().map(supplier).transpose()?,
            mix: row(rows, &self.mix)?,
            resets: self
                .resets
                .as_ref()
                .map(|entry| entry.resets(rows))
                .transpose()?,
            freezing: row(rows, &self.freezing)?,
            vacuum: self
                .vacuum
                .as_ref()
                .map(|entry| entry.vacuum(rows))
                .transpose()?,
            raw: row(rows, &self.raw)?,
            house_cured: row(rows, &self.house_cured)?,
            stable: row(rows, &self.stable)?,
        })
    }
}
