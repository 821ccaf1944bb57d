//! The words and the form of a date on a label: `Best before 26 MA 09`.

use super::matching::find;
use super::says::StatementSays;
use super::{StatementRules, Wording};
use crate::refusal::{Refusal, Result};
use crate::rows::{Bound, Finding, RowId, Rows};
use crate::says::said;
use chrono::{Datelike, Days, Months, NaiveDate};
use std::collections::BTreeMap;

/// What a date on a label says.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum DateKind {
    /// Not eaten after it: it would not be safe.
    UseBy,
    /// At its best until then.
    BestBefore,
    /// Thrown away after it: the kitchen's own mark.
    DiscardBy,
    /// Packed on that day.
    PackedOn,
    /// First frozen on that day.
    FrozenOn,
    /// Made on that day.
    PreparedOn,
}

impl DateKind {
    /// Every one, with its spelling.
    pub const ALL: [(DateKind, &'static str); 6] = [
        (DateKind::UseBy, "use-by"),
        (DateKind::BestBefore, "best-before"),
        (DateKind::DiscardBy, "discard-by"),
        (DateKind::PackedOn, "packed-on"),
        (DateKind::FrozenOn, "frozen-on"),
        (DateKind::PreparedOn, "prepared-on"),
    ];

    /// As it is spelt everywhere.
    pub fn as_str(self) -> &'static str {
        let spelt = DateKind::ALL.iter().find(|(kind, _)| *kind == self);
        spelt.map_or("", |(_, text)| text)
    }

    /// The one so spelt.
    pub fn parse(text: &str) -> Option<DateKind> {
        let found = DateKind::ALL.iter().find(|(_, spelt)| *spelt == text);
        found.map(|(kind, _)| *kind)
    }

    /// Is it the last day of something, so that a later day may never be shown?
    pub fn is_last_day(self) -> bool {
        matches!(
            self,
            DateKind::UseBy | DateKind::BestBefore | DateKind::DiscardBy
        )
    }
}

/// Who reads the label.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reader {
    /// A customer: the law's words.
    Customer,
    /// The kitchen: its own day labels.
    Kitchen,
}

/// How much of a date is shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Precision {
    /// Day, month and year.
    Day,
    /// Day and month.
    DayAndMonth,
    /// Month and year.
    Month,
    /// The year.
    Year,
}

/// The date words and forms of a place.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct DateRules {
    /// The words of each kind.
    pub words: Vec<DateWords>,
    /// The form by language and precision: `{y2} {month} {d2}`.
    pub forms: Vec<DateForm>,
    /// The row of the form.
    pub form_row: Option<RowId>,
    /// The twelve months by language.
    pub months: BTreeMap<String, Vec<String>>,
    /// The least that must be shown, by how long the food keeps; the shortest first.
    pub least: Vec<LeastDate>,
    /// The kind of mark for food that is soon a danger, and for other food.
    pub marks: Option<Marks>,
    /// Which dates are due, by how it is packed.
    pub due: Vec<DatesDue>,
    /// From this many days on no date is due.
    pub undated_from: Option<Bound>,
    /// Words that a customer's label of meat may not have.
    pub forbidden: Vec<Forbidden>,
}

/// The words of one kind of date.
#[derive(Debug, Clone, PartialEq)]
pub struct DateWords {
    /// The kind.
    pub kind: DateKind,
    /// The words.
    pub words: Wording,
    /// The words where no day is shown: `Best before end`.
    pub end: Option<Wording>,
    /// May a customer's label have them?
    pub for_customers: bool,
}

/// The form of a date in one language.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DateForm {
    /// How much of the date.
    pub precision: Precision,
    /// The form by language: `{d}`, `{d2}`, `{month}`, `{y2}`, `{y4}`.
    pub form: BTreeMap<String, String>,
}

/// The least that must be shown of a date.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LeastDate {
    /// Where the food keeps up to so many months; none for anything longer.
    pub up_to_months: Option<u32>,
    /// How much is enough.
    pub precision: Precision,
    /// Where it comes from.
    pub row: RowId,
}

/// The kind of mark.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Marks {
    /// Of food that is soon a danger: raw and ready meat from the refrigerator.
    pub perishable: DateKind,
    /// The row of that.
    pub perishable_row: RowId,
    /// Of other food.
    pub keeping: DateKind,
    /// The row of that.
    pub keeping_row: RowId,
}

/// Which dates a pack needs.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DatesDue {
    /// Packed where it is sold?
    pub packed_here: bool,
    /// The dates that it needs.
    pub kinds: Vec<DateKind>,
    /// Dates that will do instead, with the row of that.
    pub instead: Option<(Vec<DateKind>, RowId)>,
    /// Does it need words on storage, unless it keeps at room temperature?
    pub storage: bool,
    /// Where it comes from.
    pub row: RowId,
}

/// Words that a label may not have.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Forbidden {
    /// The words, small, in any of the languages.
    pub words: Vec<String>,
    /// What to write instead.
    pub instead: String,
    /// Where it comes from.
    pub row: RowId,
}

/// A date to be put in words.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DateAsk {
    /// What it says.
    pub kind: DateKind,
    /// The day.
    pub day: NaiveDate,
    /// The day from which it keeps: of packing, or of making.
    pub from: NaiveDate,
    /// Who reads it.
    pub reader: Reader,
    /// Only as much of the date as the place asks for? Else day, month and year.
    pub short: bool,
}

/// A date in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DateMark {
    /// The words: `Best before`.
    pub words: String,
    /// The date: `26 MA 09`.
    pub date: String,
    /// Both.
    pub text: String,
    /// The last day that what is printed can be read as; never later than the day that was asked.
    pub reads_as: NaiveDate,
    /// The rows behind it.
    pub rows: Vec<RowId>,
    /// What is to be known or mended.
    pub findings: Vec<Finding>,
}

/// Puts a date in words, in one language or several at once.
///
/// # Errors
/// The place has no such words, or the day lies before the day that it keeps from.
pub fn date_mark(
    rules: &StatementRules,
    rows: &Rows,
    ask: &DateAsk,
    languages: &[&str],
) -> Result<DateMark> {
    let law = &rules.dates;
    let words = law.words.iter().find(|words| words.kind == ask.kind);
    let Some(words) = words else {
        let kind = ask.kind.into();
        let detail = StatementSays::NoDateWords { kind };
        return Err(Refusal::cannot_be("kind", detail));
    };
    if ask.kind.is_last_day() && ask.day < ask.from {
        let detail = StatementSays::DateBefore {
            day: ask.day,
            from: ask.from,
        };
        return Err(Refusal::cannot_be("day", detail));
    }
    let mut findings = Vec::new();
    if ask.reader == Reader::Customer && !words.for_customers {
        let kind = ask.kind.into();
        let says = StatementSays::KitchenDate { kind };
        findings.push(Finding::against(rows, &words.words.row, says));
    }
    let (precision, least_row) = law.precision(ask);
    let (shown, reads_as) = match (&words.end, precision) {
        (Some(end), Precision::Month | Precision::Year) => (end, end_of(precision, ask.day)),
        _ => (&words.words, ask.day),
    };
    let mut told: Vec<(String, String)> = Vec::new();
    for language in languages {
        let date = law.date(precision, reads_as, language);
        let Some(date) = date else {
            let language = (*language).to_owned();
            let detail = StatementSays::NoDateForm { language };
            return Err(Refusal::cannot_be("language", detail));
        };
        told.push((shown.in_language(language).to_owned(), date));
    }
    let one_date = told.windows(2).all(|pair| pair[0].1 == pair[1].1);
    let joined = |texts: Vec<String>| texts.join(" / ");
    let all_words = joined(told.iter().map(|(words, _)| words.clone()).collect());
    let (date, text) = match (one_date, told.first()) {
        (true, Some((_, date))) => (date.clone(), format!("{all_words} {date}")),
        _ => (
            joined(told.iter().map(|(_, date)| date.clone()).collect()),
            joined(
                told.iter()
                    .map(|(words, date)| format!("{words} {date}"))
                    .collect(),
            ),
        ),
    };
    let form = law.form_row.clone().into_iter();
    Ok(DateMark {
        words: all_words,
        date,
        text,
        reads_as,
        rows: std::iter::once(shown.row.clone())
            .chain(form)
            .chain(least_row)
            .collect(),
        findings,
    })
}

impl DateRules {
    /// As what the last day of food that is soon a danger stands on a customer's pack; nothing where
    /// the place leaves the words to the house.
    pub fn last_day(&self) -> Option<DateKind> {
        let marked = self.marks.as_ref().map(|marks| marks.perishable);
        marked.or_else(|| {
            let mut due = self.due.iter().flat_map(|due| &due.kinds).copied();
            due.find(|kind| kind.is_last_day())
        })
    }

    fn precision(&self, ask: &DateAsk) -> (Precision, Option<RowId>) {
        if !ask.short || ask.kind != DateKind::BestBefore {
            return (Precision::Day, None);
        }
        let fits = |least: &&LeastDate| {
            least.up_to_months.is_none_or(|months| {
                let end = ask.from.checked_add_months(Months::new(months));
                end.is_none_or(|end| ask.day <= end)
            })
        };
        match self.least.iter().find(fits) {
            // A month or a year that is not over yet would be read too late: then the whole date.
            Some(least) if end_of(least.precision, ask.day) >= ask.from => {
                (least.precision, Some(least.row.clone()))
            }
            _ => (Precision::Day, None),
        }
    }

    fn date(&self, precision: Precision, day: NaiveDate, language: &str) -> Option<String> {
        let form = self.forms.iter().find(|form| form.precision == precision)?;
        let form = said(&form.form, language);
        let months = self
            .months
            .get(language)
            .or_else(|| self.months.get("en"))?;
        let month = months.get(day.month0() as usize)?;
        let text = form
            .replace("{d2}", &format!("{:02}", day.day()))
            .replace("{d}", &day.day().to_string())
            .replace("{month}", month)
            .replace("{y2}", &format!("{:02}", day.year().rem_euclid(100)))
            .replace("{y4}", &format!("{:04}", day.year()));
        Some(text)
    }
}

/// The last day of the last month or year that is over by a day: what `best before end` may say.
fn end_of(precision: Precision, day: NaiveDate) -> NaiveDate {
    let first = match precision {
        Precision::Month => day.with_day(1),
        Precision::Year => NaiveDate::from_ymd_opt(day.year(), 1, 1),
        _ => return day,
    };
    let Some(first) = first else { return day };
    let next = match precision {
        Precision::Month => first.checked_add_months(Months::new(1)),
        _ => first.checked_add_months(Months::new(12)),
    };
    let end = next.and_then(|next| next.checked_sub_days(Days::new(1)));
    match end {
        Some(end) if end == day => end,
        _ => first.checked_sub_days(Days::new(1)).unwrap_or(day),
    }
}

/// How a food is packed, as far as its dates go.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DatePacking {
    /// Packed where it is sold?
    pub packed_here: bool,
    /// For how many days does it keep, from the day it is packed?
    pub days: u32,
    /// Is it soon a danger?
    pub perishable: bool,
    /// Does it keep at room temperature?
    pub at_room_temperature: bool,
}

/// Which dates a pack needs.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Needed {
    /// The dates.
    pub kinds: Vec<DateKind>,
    /// Dates that will do instead.
    pub instead: Vec<DateKind>,
    /// Words on storage?
    pub storage: bool,
    /// The rows behind it.
    pub rows: Vec<RowId>,
}

/// Which dates a pack needs under the law of a place.
pub fn dates_due(rules: &StatementRules, packing: &DatePacking) -> Needed {
    let law = &rules.dates;
    if let Some(bound) = &law.undated_from
        && bound.allows(packing.days.into())
    {
        return Needed {
            rows: vec![bound.row.clone()],
            ..Needed::default()
        };
    }
    let due = law
        .due
        .iter()
        .find(|due| due.packed_here == packing.packed_here);
    let mark = law.marks.as_ref().map(|marks| match packing.perishable {
        true => (marks.perishable, &marks.perishable_row),
        false => (marks.keeping, &marks.keeping_row),
    });
    let mut needed = Needed::default();
    if let Some(due) = due {
        needed.kinds.clone_from(&due.kinds);
        needed.storage = due.storage && !packing.at_room_temperature;
        needed.rows.push(due.row.clone());
        if let Some((instead, row)) = &due.instead {
            needed.instead.clone_from(instead);
            needed.rows.push(row.clone());
        }
    }
    if let Some((kind, row)) = mark {
        needed.kinds.push(kind);
        needed.storage |= packing.perishable;
        needed.rows.push(row.clone());
    }
    needed
}

/// Words on a customer's label of meat that the place does not let stand there.
pub fn check_words(rules: &StatementRules, rows: &Rows, text: &str) -> Vec<Finding> {
    let found = rules.dates.forbidden.iter().filter_map(|forbidden| {
        let at = find(text, &forbidden.words, &[]).into_iter().next()?;
        let says = StatementSays::MayNotSay {
            words: text[at].to_owned(),
            instead: forbidden.instead.clone(),
        };
        Some(Finding::against(rows, &forbidden.row, says))
    });
    found.collect()
}
