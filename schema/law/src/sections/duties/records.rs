//! Records and deadlines, as the file has them.

use super::each;
use crate::Bad;
use crate::entry::{BoundEntry, TextEntry, known};
use chrono::NaiveDate;
use domain::duties::{deadline, fields, fsma, keeping, step_records};
use domain::rows::Rows;
use schemars::JsonSchema;
use serde::Deserialize;

/// A day, `2028-07-20`.
pub fn day(text: &str) -> Result<NaiveDate, Bad> {
    text.parse()
        .map_err(|_| Bad::new(format!("{text:?} is not a day")))
}

/// A number of hours, days, months or years.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct SpanEntry {
    /// How many.
    number: BoundEntry,
    /// `hours`, `days`, `months`, `years`.
    unit: String,
}

impl SpanEntry {
    fn span(self, rows: &Rows) -> Result<keeping::KeepingSpan, Bad> {
        Ok(keeping::KeepingSpan {
            number: self.number.bound(rows)?,
            unit: word!(keeping::Unit, &self.unit)?,
        })
    }
}

/// How long a record is kept.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct KeepingEntry {
    /// Where it stands.
    row: String,
    /// The record: `ground-beef-log` …
    record: String,
    /// How long; left out where it is kept as long as the food may be eaten.
    span: Option<SpanEntry>,
    /// Counted from what: `the day it was made`.
    from: String,
    /// Is the span counted from the last day of that year?
    #[serde(default)]
    from_year_end: bool,
    /// Also kept as long as the food itself keeps.
    #[serde(default)]
    or_shelf_life: bool,
}

impl KeepingEntry {
    pub fn keeping(self, rows: &Rows) -> Result<keeping::Keeping, Bad> {
        Ok(keeping::Keeping {
            row: known(rows, &self.row)?,
            record: word!(keeping::Record, &self.record)?,
            span: self.span.map(|it| it.span(rows)).transpose()?,
            from: self.from,
            from_year_end: self.from_year_end,
            or_shelf_life: self.or_shelf_life,
        })
    }
}

/// Something that records must hold.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct FieldEntry {
    /// Where it stands.
    row: String,
    /// Of which records.
    records: Vec<String>,
    /// Its name.
    field: String,
    /// What it is, to follow "lacks".
    says: TextEntry,
}

impl FieldEntry {
    pub fn field(self, rows: &Rows) -> Result<fields::Field, Bad> {
        Ok(fields::Field {
            row: known(rows, &self.row)?,
            records: each(self.records, |it| word!(keeping::Record, &it))?,
            field: self.field,
            says: self.says.into(),
        })
    }
}

/// An occasion that asks for a record.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AsksEntry {
    /// Where it stands.
    row: String,
    /// The occasion: `grind-beef` …
    on: String,
    /// The record.
    record: String,
}

impl AsksEntry {
    pub fn asks(self, rows: &Rows) -> Result<step_records::Asks, Bad> {
        Ok(step_records::Asks {
            row: known(rows, &self.row)?,
            on: word!(step_records::Occasion, &self.on)?,
            record: word!(keeping::Record, &self.record)?,
        })
    }
}

/// The traceability rule for listed foods: two numbers, and the row of each of its parts.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct FsmaEntry {
    /// Yearly food sales up to which a restaurant is out, in dollars of the base year.
    exempt_sales: BoundEntry,
    /// Not a listed food.
    listed: String,
    /// Meat and poultry under inspection.
    inspected: String,
    /// Received after a kill step or such a change.
    after_kill_step: String,
    /// Bought from the farm itself.
    farm_direct: String,
    /// Packed on the farm, intact, with its address and telephone.
    farm_pack: String,
    /// Bought once from another shop.
    other_shop: String,
    /// What receiving records hold.
    receiving: String,
    /// What they hold from a supplier who is out of the rule.
    receiving_exempt: String,
    /// A kill step done here.
    kill_step: String,
    /// Changed so that it leaves the list.
    leaves_list: String,
    /// What goes into and comes out of a change.
    change: String,
    /// None of that for what is not shipped.
    not_shipped: String,
    /// Nobody enforces it before this day.
    enforced_from: String,
    /// Where that day stands.
    enforced_row: String,
}

impl FsmaEntry {
    pub fn reach(self, rows: &Rows) -> Result<fsma::FsmaReach, Bad> {
        let row = |id: &String| known(rows, id);
        Ok(fsma::FsmaReach {
            exempt_sales: self.exempt_sales.bound(rows)?,
            listed: row(&self.listed)?,
            inspected: row(&self.inspected)?,
            after_kill_step: row(&self.after_kill_step)?,
            farm_direct: row(&self.farm_direct)?,
            farm_pack: row(&self.farm_pack)?,
            other_shop: row(&self.other_shop)?,
            receiving: row(&self.receiving)?,
            receiving_exempt: row(&self.receiving_exempt)?,
            kill_step: row(&self.kill_step)?,
            leaves_list: row(&self.leaves_list)?,
            change: row(&self.change)?,
            not_shipped: row(&self.not_shipped)?,
            enforced_from: (day(&self.enforced_from)?, row(&self.enforced_row)?),
        })
    }
}

/// How long one may take.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct DeadlineEntry {
    /// What is due: `trace-answer` …
    due: String,
    /// How long one may take.
    span: SpanEntry,
    /// In what form, or what else is to know.
    says: TextEntry,
}

impl DeadlineEntry {
    pub fn deadline(self, rows: &Rows) -> Result<deadline::Deadline, Bad> {
        Ok(deadline::Deadline {
            due: word!(deadline::Due, &self.due)?,
            span: self.span.span(rows)?,
            says: self.says.into(),
        })
    }
}
