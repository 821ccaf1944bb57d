//! The calendar of a piece: salt, overhaul, turn, rinse, equalise, hang, weigh, ready.

use super::says::RoomSays;
use super::{CureRoomRules, SaltTime, salt_span};
use crate::grams::Grams;
use crate::refusal::{Refusal, Result};
use crate::rows::RowId;
use crate::says::Texts;
use chrono::{Days, Months, NaiveDate};
use rust_decimal::Decimal;

/// A length of time, as people give it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Span {
    /// So many days.
    Days(u32),
    /// So many months of the calendar; the 31st becomes the last day of a shorter month.
    Months(u32),
}

impl Span {
    /// So long after a day.
    ///
    /// # Errors
    /// The calendar ends.
    pub fn after(self, day: NaiveDate) -> Result<NaiveDate> {
        match self {
            Span::Days(days) => day.checked_add_days(Days::new(days.into())),
            Span::Months(months) => day.checked_add_months(Months::new(months)),
        }
        .ok_or_else(|| Refusal::cannot_be("day", RoomSays::CalendarEnds))
    }
}

/// A way of salting and hanging.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SaltingMethod {
    /// Its name in the data: `covered-in-salt`.
    pub key: String,
    /// As a cook calls it.
    pub name: Texts,
    /// How long it lies in salt.
    pub salt: SaltTime,
    /// Days from the first salt on which more is rubbed in.
    pub overhaul: Vec<u32>,
    /// It is turned every so many days.
    pub turn_every: Option<u32>,
    /// It is rinsed or soaked when it comes out of the salt.
    pub rinse: bool,
    /// How long it equalises; none where it is hung at once.
    pub equalise: Option<Span>,
    /// How long it hangs, where the product's own rule does not say; from the day it is hung.
    pub hang: Option<Hung>,
    /// Where it comes from.
    pub rows: Vec<RowId>,
}

/// How long a piece hangs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Hung {
    /// At least.
    pub least: Span,
    /// At most.
    pub most: Span,
}

/// How often a hanging piece is weighed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Weighings {
    /// At first every so many days,
    pub at_first: u32,
    /// for so many days from the day it came out of the salt,
    pub for_days: u32,
    /// and then every so many.
    pub later: u32,
    /// Where it comes from.
    pub row: RowId,
}

/// What is to be done to a piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Task {
    /// Into the salt.
    Salt,
    /// Rub in more, and turn.
    Overhaul,
    /// Turn it in its salt.
    Turn,
    /// Out of the salt; rinse and dry.
    Rinse,
    /// To the cold place where the salt spreads.
    Equalise,
    /// To the drying room.
    Hang,
    /// On the scale.
    Weigh,
    /// The first day on which it may be ready.
    ReadyFrom,
    /// By then it should be ready.
    ReadyBy,
}

/// One line of the calendar.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Planned {
    /// The day.
    pub day: NaiveDate,
    /// What is to be done.
    pub task: Task,
}

/// The calendar of a piece that goes in salt on a day, by day. Days in salt and hanging are asked
/// for by `method`; `days` is the product's own number of days from the first salt, if it has one.
///
/// # Errors
/// The time in salt cannot be (see [`salt_span`]), or the method turns a piece every 0 days.
pub fn plan(
    in_salt: NaiveDate,
    green: Grams,
    thickness_mm: Option<Decimal>,
    method: &SaltingMethod,
    days: Option<u32>,
    rules: &CureRoomRules,
) -> Result<Vec<Planned>> {
    let out = salt_span(method.salt, green, thickness_mm, rules)?.after(in_salt)?;
    let hung = match method.equalise {
        Some(span) => span.after(out)?,
        None => out,
    };
    let mut planned = vec![Planned {
        day: in_salt,
        task: Task::Salt,
    }];
    let mut add = |day, task| planned.push(Planned { day, task });
    let mut overhauls = Vec::new();
    for nth in &method.overhaul {
        let day = Span::Days(*nth).after(in_salt)?;
        if day < out {
            overhauls.push(day);
            add(day, Task::Overhaul);
        }
    }
    if let Some(every) = method.turn_every {
        if every == 0 {
            return Err(Refusal::cannot_be("turn_every", RoomSays::TurnedDaily));
        }
        let mut day = Span::Days(every).after(in_salt)?;
        while day < out {
            if !overhauls.contains(&day) {
                add(day, Task::Turn);
            }
            day = Span::Days(every).after(day)?;
        }
    }
    if method.rinse {
        add(out, Task::Rinse);
    }
    if method.equalise.is_some() {
        add(out, Task::Equalise);
    }
    add(hung, Task::Hang);
    if let Some(days) = days.filter(|days| *days > LONGEST) {
        return Err(Refusal::cannot_be("days", RoomSays::DaysCannotBe { days }));
    }
    let from = match (days, method.hang) {
        (Some(days), _) => Some(Span::Days(days).after(in_salt)?.max(hung)),
        (None, Some(hang)) => Some(hang.least.after(hung)?),
        (None, None) => None,
    };
    let by = match method.hang {
        Some(hang) => Some(hang.most.after(hung)?),
        None => None,
    };
    if let Some(from) = from {
        add(from, Task::ReadyFrom);
    }
    if let Some(by) = by.filter(|by| from.is_none_or(|from| from <= *by)) {
        add(by, Task::ReadyBy);
    }
    if let (Some(weighings), Some(end)) = (&rules.weighings, by.max(from)) {
        let mut day = out;
        while day < end {
            add(day, Task::Weigh);
            day = weighings.next(out, day)?;
        }
        add(end, Task::Weigh);
    }
    planned.sort();
    Ok(planned)
}

/// Ten years: no piece hangs longer, and a calendar of more is a typing error.
const LONGEST: u32 = 3_653;

impl Weighings {
    /// The next weighing after one of `day`, of a piece that came out of the salt on `out`.
    ///
    /// # Errors
    /// The calendar ends.
    pub fn next(&self, out: NaiveDate, day: NaiveDate) -> Result<NaiveDate> {
        let every = match (day - out).num_days() < i64::from(self.for_days) {
            true => self.at_first,
            false => self.later,
        };
        Span::Days(every.max(1)).after(day)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(text: &str) -> NaiveDate {
        text.parse().unwrap()
    }

    #[test]
    fn months_end_when_the_calendar_says() {
        let check = |span: Span, from, to| assert_eq!(span.after(day(from)).unwrap(), day(to));
        check(Span::Months(1), "2027-01-31", "2027-02-28");
        check(Span::Months(6), "2026-08-31", "2027-02-28");
        check(Span::Months(24), "2026-02-28", "2028-02-28");
        check(Span::Days(366), "2027-03-01", "2028-03-01");
    }

    #[test]
    fn each_day_has_what_is_to_be_done() {
        let method = SaltingMethod {
            key: "dry".into(),
            name: "dry cure".into(),
            salt: SaltTime::For(Span::Days(4)),
            overhaul: vec![2, 9],
            turn_every: Some(1),
            rinse: true,
            equalise: Some(Span::Days(2)),
            hang: None,
            rows: vec![],
        };
        let planned = plan(
            day("2026-01-01"),
            Grams::whole(1),
            None,
            &method,
            None,
            &CureRoomRules::default(),
        );
        let planned: Vec<(u32, Task)> = planned
            .unwrap()
            .iter()
            .map(|planned| (chrono::Datelike::day(&planned.day), planned.task))
            .collect();
        use Task::*;
        let expected = [
            (1, Salt),
            (2, Turn),
            (3, Overhaul), // turned with it
            (4, Turn),
            (5, Rinse),
            (5, Equalise),
            (7, Hang),
        ];
        assert_eq!(planned, expected);
    }
}
