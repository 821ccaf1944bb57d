//! Drying against trichinae: the tables of days for dry sausage and for hams, and the weather of the year.

use super::all;
use crate::Bad;
use crate::entry::{Number, TemperatureEntry, known};
use crate::sections::measures::{LengthEntry, TimeEntry};
use domain::rows::Rows;
use domain::trichinae::{Climate, Cut, Drying, HamDrying, HamStep, SausageDrying};
use schemars::JsonSchema;
use serde::Deserialize;

/// What else a method's drying follows.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub(super) enum DryingEntry {
    /// Its own times are all.
    #[default]
    AsListed,
    /// The tables for dry sausage.
    SausageTables,
    /// The table for hams.
    HamTable,
    /// The weather of the year.
    Climate(ClimateEntry),
}

/// Hams that hang through a summer.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct ClimateEntry {
    /// The row that it stands in.
    row: String,
    /// The cure starts on or after this month and day.
    from: (u32, u32),
    /// And on or before this one of the year after.
    until: (u32, u32),
    /// Days of drying, at least.
    days: i64,
    /// The first and the last whole month that the drying takes in.
    months: (u32, u32),
}

/// Tables of days for dry sausage.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct SausageDryingEntry {
    /// Where the days by casing stand.
    days_row: String,
    /// Days by casing, the thinnest first.
    days: Vec<CasingDaysEntry>,
    /// Where the days off stand.
    cuts_row: String,
    /// The temperatures at the head of the table of days off.
    cuts_at: Vec<TemperatureEntry>,
    /// Its lines: a hold, and the per cent off under each temperature.
    cuts: Vec<CutsEntry>,
    /// Where the days more stand.
    more_row: String,
    /// Salt that needs no more days (%).
    full_salt: Number,
    /// Days more for less salt, the saltiest first.
    more: Vec<MoreEntry>,
    /// The drying room is at or above this.
    room: TemperatureEntry,
}

/// Days for a casing.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct CasingDaysEntry {
    /// Up to this diameter.
    casing: LengthEntry,
    /// So many days.
    days: u32,
}

/// Days off for a hold.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct CutsEntry {
    /// Held so long.
    hold: TimeEntry,
    /// Per cent off, one for each temperature.
    percent: Vec<u32>,
}

/// Days more for less salt.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct MoreEntry {
    /// Salt (%), in tenths.
    salt: Number,
    /// So many per cent more.
    percent: u32,
}

/// The table of days for hams.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct HamDryingEntry {
    /// The row that it stands in.
    row: String,
    /// Mixed runs must come to more than this.
    more_than: Number,
    /// Its steps, the coolest first.
    steps: Vec<HamStepEntry>,
}

/// One row of the table for hams.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct HamStepEntry {
    /// At or above this.
    at_least: TemperatureEntry,
    /// For so long.
    time: TimeEntry,
    /// What a day there counts where runs are mixed.
    per_day: Number,
}

impl DryingEntry {
    pub(super) fn drying(&self, rows: &Rows) -> Result<Drying, Bad> {
        Ok(match self {
            DryingEntry::AsListed => Drying::AsListed,
            DryingEntry::SausageTables => Drying::SausageTables,
            DryingEntry::HamTable => Drying::HamTable,
            DryingEntry::Climate(entry) => Drying::Climate(Climate {
                from: entry.from,
                until: entry.until,
                days: entry.days,
                months: entry.months,
                row: known(rows, &entry.row)?,
            }),
        })
    }
}

impl SausageDryingEntry {
    pub(super) fn tables(self, rows: &Rows) -> Result<SausageDrying, Bad> {
        let mut cuts = Vec::new();
        for line in &self.cuts {
            if line.percent.len() != self.cuts_at.len() {
                return Err(Bad::new("cuts: one per cent for each temperature"));
            }
            for (at_least, percent) in self.cuts_at.iter().zip(&line.percent) {
                cuts.push(Cut {
                    at_least: at_least.temperature(),
                    hold: line.hold.time()?,
                    percent: *percent,
                });
            }
        }
        if cuts.iter().any(|cut| cut.percent > 100) {
            return Err(Bad::new("cuts: no more than 100 per cent come off"));
        }
        let days: Vec<_> = self
            .days
            .iter()
            .map(|entry| (entry.casing.length(), entry.days))
            .collect();
        let more: Vec<_> = self
            .more
            .iter()
            .map(|entry| (entry.salt.percent(), entry.percent))
            .collect();
        if !days.is_sorted() || !more.is_sorted_by(|one, next| one.0 > next.0 && one.1 < next.1) {
            return Err(Bad::new(
                "days go from thin to thick, more from salty to less salty",
            ));
        }
        Ok(SausageDrying {
            days,
            days_row: known(rows, &self.days_row)?,
            cuts,
            cuts_row: known(rows, &self.cuts_row)?,
            full_salt: self.full_salt.percent(),
            more,
            more_row: known(rows, &self.more_row)?,
            room: self.room.temperature(),
        })
    }
}

impl HamDryingEntry {
    pub(super) fn table(self, rows: &Rows) -> Result<HamDrying, Bad> {
        let steps = all(&self.steps, |step| {
            Ok(HamStep {
                at_least: step.at_least.temperature(),
                time: step.time.time()?,
                per_day: step.per_day.0,
            })
        })?;
        HamDrying::new(known(rows, &self.row)?, steps, self.more_than.0).map_err(Bad::new)
    }
}
