//! The dates on a pack, as the file has them.

use super::*;

/// Dates.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct DatesEntry {
    /// The words of each kind of date.
    pub(super) words: Vec<DateWordsEntry>,
    /// The row of the form.
    pub(super) form_row: String,
    /// The form by precision (`day`, `day-and-month`, `month`, `year`) and language:
    /// `{d}`, `{d2}`, `{month}`, `{y2}`, `{y4}`.
    pub(super) forms: BTreeMap<PrecisionEntry, Texts>,
    /// The twelve months by language.
    pub(super) months: BTreeMap<String, Vec<String>>,
    /// The least that must be shown, the shortest life first.
    #[serde(default)]
    pub(super) least: Vec<LeastEntry>,
    /// The kind of mark.
    pub(super) marks: Option<MarksEntry>,
    /// Which dates are due.
    #[serde(default)]
    pub(super) due: Vec<DatesDueEntry>,
    /// From this many days on no date is due.
    pub(super) undated_from: Option<BoundEntry>,
    /// Words that a customer's label of meat may not have.
    #[serde(default)]
    pub(super) forbidden: Vec<ForbiddenEntry>,
}

/// How much of a date is shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub(super) enum PrecisionEntry {
    /// Day, month, year.
    Day,
    /// Day and month.
    DayAndMonth,
    /// Month and year.
    Month,
    /// Year.
    Year,
}

/// The words of one kind of date.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct DateWordsEntry {
    /// The kind: `use-by`, `best-before`, `discard-by`, `packed-on`, `frozen-on`, `prepared-on`.
    pub(super) kind: String,
    /// The words.
    pub(super) words: WordingEntry,
    /// The words where no day is shown.
    pub(super) end: Option<WordingEntry>,
    /// May a customer's label have them?
    pub(super) for_customers: bool,
}

/// The least of a date.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct LeastEntry {
    /// For food that keeps up to so many months; left out for all longer.
    pub(super) up_to_months: Option<u32>,
    /// How much is enough.
    pub(super) precision: PrecisionEntry,
    /// The row.
    pub(super) row: String,
}

/// The kind of mark.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct MarksEntry {
    /// Of food that is soon a danger.
    pub(super) perishable: String,
    /// The row of that.
    pub(super) perishable_row: String,
    /// Of other food.
    pub(super) keeping: String,
    /// The row of that.
    pub(super) keeping_row: String,
}

/// Which dates a pack needs.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct DatesDueEntry {
    /// Packed where it is sold?
    pub(super) packed_here: bool,
    /// The kinds.
    pub(super) kinds: Vec<String>,
    /// Kinds that will do instead.
    #[serde(default)]
    pub(super) instead: Vec<String>,
    /// The row of that.
    pub(super) instead_row: Option<String>,
    /// Words on storage?
    #[serde(default)]
    pub(super) storage: bool,
    /// The row.
    pub(super) row: String,
}

/// Words that a label may not have.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct ForbiddenEntry {
    /// The words.
    pub(super) words: Vec<String>,
    /// What to write instead.
    pub(super) instead: String,
    /// The row.
    pub(super) row: String,
}

impl PrecisionEntry {
    pub(super) fn precision(self) -> law::Precision {
        match self {
            PrecisionEntry::Day => law::Precision::Day,
            PrecisionEntry::DayAndMonth => law::Precision::DayAndMonth,
            PrecisionEntry::Month => law::Precision::Month,
            PrecisionEntry::Year => law::Precision::Year,
        }
    }
}

impl DatesEntry {
    pub(super) fn rules(self, rows: &Rows) -> Result<law::DateRules, Bad> {
        if let Some((language, _)) = self.months.iter().find(|(_, months)| months.len() != 12) {
            return Err(Bad::new(format!("{language}: a year has twelve months")));
        }
        let kind = |text: String| word(&text, law::DateKind::parse);
        let due = each(self.due, |entry| {
            let row = maybe_known(rows, entry.instead_row)?;
            let instead = each(entry.instead, kind)?;
            Ok(law::DatesDue {
                packed_here: entry.packed_here,
                kinds: each(entry.kinds, kind)?,
                instead: row.map(|row| (instead, row)),
                storage: entry.storage,
                row: known(rows, &entry.row)?,
            })
        })?;
        Ok(law::DateRules {
            words: each(self.words, |entry| {
                Ok(law::DateWords {
                    kind: kind(entry.kind)?,
                    words: entry.words.wording(rows)?,
                    end: maybe(entry.end, |end| end.wording(rows))?,
                    for_customers: entry.for_customers,
                })
            })?,
            forms: self
                .forms
                .into_iter()
                .map(|(precision, form)| law::DateForm {
                    precision: precision.precision(),
                    form,
                })
                .collect(),
            form_row: Some(known(rows, &self.form_row)?),
            months: self.months,
            least: each(self.least, |entry| {
                Ok(law::LeastDate {
                    up_to_months: entry.up_to_months,
                    precision: entry.precision.precision(),
                    row: known(rows, &entry.row)?,
                })
            })?,
            marks: maybe(self.marks, |entry| {
                Ok(law::Marks {
                    perishable: kind(entry.perishable)?,
                    perishable_row: known(rows, &entry.perishable_row)?,
                    keeping: kind(entry.keeping)?,
                    keeping_row: known(rows, &entry.keeping_row)?,
                })
            })?,
            due,
            undated_from: maybe(self.undated_from, |bound| bound.bound(rows))?,
            forbidden: each(self.forbidden, |entry| {
                Ok(law::Forbidden {
                    words: entry.words,
                    instead: entry.instead,
                    row: known(rows, &entry.row)?,
                })
            })?,
        })
    }
}
