//! The parts that the files on heat, cold and stability share: times, lengths, limits, tables.

use crate::Bad;
use crate::entry::{BoundEntry, Number, PrintedEntry, known};
use chrono::TimeDelta;
use domain::heat::{Degrees, HeatTable, HoldStep};
use domain::measure::Scale;
use domain::rows::Rows;
use domain::stability::StabilityLimit;
use domain::trichinae::Length;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use schemars::JsonSchema;
use serde::Deserialize;

/// A length of time.
#[derive(Debug, Clone, Copy, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub enum TimeEntry {
    /// Seconds.
    #[serde(rename = "seconds")]
    Seconds(Number),
    /// Minutes.
    #[serde(rename = "minutes")]
    Minutes(Number),
    /// Hours.
    #[serde(rename = "hours")]
    Hours(Number),
    /// Days of 24 hours.
    #[serde(rename = "days")]
    Days(Number),
}

impl TimeEntry {
    /// In whole seconds.
    pub fn time(self) -> Result<TimeDelta, Bad> {
        let (Number(count), unit) = match self {
            TimeEntry::Seconds(count) => (count, 1),
            TimeEntry::Minutes(count) => (count, 60),
            TimeEntry::Hours(count) => (count, 3_600),
            TimeEntry::Days(count) => (count, 86_400),
        };
        let seconds = count * Decimal::from(unit);
        match (seconds.is_integer(), seconds.to_i64()) {
            (true, Some(seconds)) if seconds >= 0 => Ok(TimeDelta::seconds(seconds)),
            _ => Err(Bad::new(format!("{self:?} is not a time in whole seconds"))),
        }
    }
}

/// A thickness or diameter.
#[derive(Debug, Clone, Copy, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub enum LengthEntry {
    /// Inches.
    #[serde(rename = "inches")]
    Inches(Number),
    /// Millimetres.
    #[serde(rename = "millimetres")]
    Millimetres(Number),
}

impl LengthEntry {
    /// The domain's length.
    pub fn length(self) -> Length {
        match self {
            LengthEntry::Inches(Number(count)) => Length::inches(count),
            LengthEntry::Millimetres(Number(count)) => Length::millimetres(count),
        }
    }
}

/// A limit, and whether its own number is out.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LimitEntry {
    /// The row that it stands in.
    pub row: String,
    /// The number or less.
    pub at_most: Option<Number>,
    /// The number or more.
    pub at_least: Option<Number>,
    /// Is the number itself out: below it, not at it?
    #[serde(default)]
    pub open: bool,
}

impl LimitEntry {
    /// The domain's limit.
    pub fn limit(&self, rows: &Rows) -> Result<StabilityLimit, Bad> {
        let bound = BoundEntry {
            row: self.row.clone(),
            at_most: self.at_most,
            at_least: self.at_least,
            exactly: None,
        };
        Ok(StabilityLimit {
            bound: bound.bound(rows)?,
            open: self.open,
        })
    }
}

/// The scale that a limit of temperature is written in.
#[derive(Debug, Clone, Copy, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum ScaleEntry {
    /// Degrees Celsius.
    Celsius,
    /// Degrees Fahrenheit.
    Fahrenheit,
}

/// A limit of temperature.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct DegreesEntry {
    /// The scale of its number.
    pub scale: ScaleEntry,
    /// The number.
    pub limit: LimitEntry,
}

impl DegreesEntry {
    /// The domain's limit.
    pub fn degrees(&self, rows: &Rows) -> Result<Degrees, Bad> {
        Ok(Degrees {
            scale: match self.scale {
                ScaleEntry::Celsius => Scale::Celsius,
                ScaleEntry::Fahrenheit => Scale::Fahrenheit,
            },
            limit: self.limit.limit(rows)?,
        })
    }
}

/// One row of a table of heat.
#[derive(Debug, Clone, Copy, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct StepEntry {
    /// This temperature or hotter.
    pub at_least: PrintedEntry,
    /// For this long or longer; 0 seconds where reaching it is enough.
    pub hold: TimeEntry,
}

/// A table of heat: the hotter, the shorter. Nothing is read between its rows.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TableEntry {
    /// The row that it stands in.
    pub row: String,
    /// Its steps, the coolest first.
    pub steps: Vec<StepEntry>,
}

impl TableEntry {
    /// The domain's table.
    pub fn table(&self, rows: &Rows) -> Result<HeatTable, Bad> {
        let steps = self.steps.iter().map(|step| {
            Ok(HoldStep {
                at_least: step.at_least.printed()?,
                hold: step.hold.time()?,
            })
        });
        let steps = steps.collect::<Result<_, Bad>>()?;
        HeatTable::new(known(rows, &self.row)?, steps).map_err(Bad::new)
    }
}

/// A bound that may be missing.
pub fn bound_of(
    entry: Option<&BoundEntry>,
    rows: &Rows,
) -> Result<Option<domain::rows::Bound>, Bad> {
    entry.map(|entry| entry.bound(rows)).transpose()
}
