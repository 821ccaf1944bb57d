//! How long food keeps.

use crate::Bad;
use crate::entry::{BoundEntry, TemperatureEntry, known};
use crate::file::Subject;
use domain::dates::{
    Cold, DayLimit, LimitedFood, Marked, MinceRules, Resets, ShelfLifeRules, Supplier, Vacuum,
};
use domain::rows::{RowId, Rows};
use domain::words::{ProductKind, StepKind};
use schemars::JsonSchema;
use serde::Deserialize;

/// How long food keeps. What a place has no rule for is left out.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct DatesEntry {
    /// The most days of some food from its making: all that fit hold.
    #[serde(default)]
    limits: Vec<DayLimitEntry>,
    /// Ready-to-eat food that needs time and temperature control, bought in: from the day it is opened.
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
    /// What mince is made of, and that it is not frozen again.
    mince: Option<MinceEntry>,
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

/// So many days at most for some food.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct DayLimitEntry {
    /// Which food; left out takes any.
    #[serde(default)]
    of: LimitedFoodEntry,
    /// The days.
    keeps: MarkedEntry,
}

/// Which food a limit is for. What is left out takes any.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct LimitedFoodEntry {
    /// Is it listed as ready to eat?
    ready: Option<bool>,
    /// Does it need time and temperature control?
    controlled: Option<bool>,
    /// Was it bought in?
    bought: Option<bool>,
    /// Did nothing but raw meat go in?
    plain: Option<bool>,
    /// Kinds of product.
    #[serde(default)]
    kinds: Vec<String>,
    /// Steps that make it.
    #[serde(default)]
    steps: Vec<String>,
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

/// How many days after slaughter meat may be minced, and the row by which mince is not frozen again.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct MinceEntry {
    /// Chilled meat: at most so many days.
    within_days: BoundEntry,
    /// Poultry: at most so many.
    birds_within_days: BoundEntry,
    /// Boned beef and veal in packs without air: at most so many.
    beef_without_air_within_days: BoundEntry,
    /// The row by which thawed mince is not frozen again.
    not_refrozen: String,
}

#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct VacuumEntry {
    /// The most days from packing: the first that fits holds.
    #[serde(default)]
    limits: Vec<DayLimitEntry>,
    /// How cold they are kept, where no approval says otherwise.
    cold: Option<ColdEntry>,
    /// The row by which house-cured and cooked food needs an approval on file.
    approval: Option<String>,
    /// The row by which a written plan is needed.
    plan: Option<String>,
    /// The row by which raw fish is packed so only where it is frozen before, during and after.
    fish: Option<String>,
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

impl DayLimitEntry {
    fn limit(&self, rows: &Rows) -> Result<DayLimit, Bad> {
        Ok(DayLimit {
            of: self.of.food()?,
            keeps: self.keeps.marked(rows)?,
        })
    }

    fn all(entries: &[DayLimitEntry], rows: &Rows) -> Result<Vec<DayLimit>, Bad> {
        entries.iter().map(|entry| entry.limit(rows)).collect()
    }
}

impl LimitedFoodEntry {
    fn food(&self) -> Result<LimitedFood, Bad> {
        let kind = |word: &String| {
            ProductKind::parse(word)
                .ok_or_else(|| Bad::new(format!("limits: {word:?} is not a kind of product")))
        };
        Ok(LimitedFood {
            ready: self.ready,
            controlled: self.controlled,
            bought: self.bought,
            plain: self.plain,
            kinds: self.kinds.iter().map(kind).collect::<Result<_, _>>()?,
            steps: steps("limits", &self.steps)?,
        })
    }
}

impl VacuumEntry {
    fn vacuum(&self, rows: &Rows) -> Result<Vacuum, Bad> {
        Ok(Vacuum {
            limits: DayLimitEntry::all(&self.limits, rows)?,
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
            fish: row(rows, &self.fish)?,
        })
    }
}

impl MinceEntry {
    fn mince(&self, rows: &Rows) -> Result<MinceRules, Bad> {
        Ok(MinceRules {
            within_days: self.within_days.bound(rows)?,
            birds_within_days: self.birds_within_days.bound(rows)?,
            beef_without_air_within_days: self.beef_without_air_within_days.bound(rows)?,
            not_refrozen: known(rows, &self.not_refrozen)?,
        })
    }
}

impl ResetsEntry {
    fn resets(&self, rows: &Rows) -> Result<Resets, Bad> {
        Ok(Resets {
            steps: steps("resets", &self.steps)?,
            row: known(rows, &self.row)?,
        })
    }
}

fn steps(of: &str, words: &[String]) -> Result<Vec<StepKind>, Bad> {
    let step = |word: &String| {
        StepKind::parse(word)
            .ok_or_else(|| Bad::new(format!("{of}: {word:?} is not a kind of step")))
    };
    words.iter().map(step).collect()
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
            limits: DayLimitEntry::all(&self.limits, rows)?,
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
            mince: self
                .mince
                .as_ref()
                .map(|entry| entry.mince(rows))
                .transpose()?,
            raw: row(rows, &self.raw)?,
            house_cured: row(rows, &self.house_cured)?,
            stable: row(rows, &self.stable)?,
        })
    }
}
