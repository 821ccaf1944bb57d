//! Logs as files: a spreadsheet and paper, from the same typed cells that a program is answered.

pub mod cells;
mod csv;
mod kept;
mod paper;
pub mod says;

pub use csv::csv;
pub use kept::told_due;
pub use paper::{lines, paper, remarks, under};

use crate::read::logs::LogPage;
use domain::log::{Cell, Hole, LogKind, Value};
use domain::rows::RowId;
use words::{Speech, capital};

/// A log's cells in a reader's words.
#[derive(Clone, Copy)]
pub struct Telling<'a> {
    /// The log.
    pub page: &'a LogPage,
    /// How the reader is spoken to.
    pub speech: Speech,
}

impl<'a> Telling<'a> {
    /// For a file: every date has its year, so that the file reads the same next year.
    pub fn of_file(page: &'a LogPage, speech: Speech) -> Telling<'a> {
        let speech = Speech {
            today: None,
            ..speech
        };
        Telling { page, speech }
    }

    /// For a screen.
    pub fn of_screen(page: &'a LogPage, speech: Speech) -> Telling<'a> {
        Telling { page, speech }
    }

    /// A value.
    pub fn value(&self, value: &Value) -> String {
        self.speech.arg(&value.arg(self.page.kitchen().zone))
    }

    /// The rows behind a value, where they stand with it.
    pub fn rows(value: &Value) -> Option<String> {
        let Value::Said { rows, .. } = value else {
            return None;
        };
        let rows: Vec<&str> = rows.iter().map(RowId::as_str).collect();
        (!rows.is_empty()).then(|| rows.join(", "))
    }

    /// A value, with the rows behind it in brackets.
    pub fn with_rows(&self, value: &Value) -> String {
        match Telling::rows(value) {
            Some(rows) => format!("{} ({rows})", self.value(value)),
            None => self.value(value),
        }
    }

    /// A hole: what is missing, and the row that wants it.
    pub fn hole(&self, hole: &Hole) -> String {
        self.speech.say(
            &says::LogWords::Missing {
                field: hole.says.clone().into(),
                row: hole.row.to_string(),
            }
            .into(),
        )
    }

    /// The heading of a column, with a capital.
    pub fn heading(&self, cell: &Cell) -> String {
        capital(&self.speech.say(&cell.column.says()))
    }

    /// The name of a log.
    pub fn name(&self, kind: LogKind) -> String {
        capital(&self.speech.say(&kind.says()))
    }
}

/// Several values after one another: told apart by a semicolon, where the one before is no sentence.
fn joined(values: &[String]) -> String {
    let mut all = String::new();
    for value in values {
        match all.chars().next_back() {
            None => {}
            Some('.' | ')') if all.contains(". (") || all.ends_with('.') => all.push(' '),
            Some(_) => all.push_str("; "),
        }
        all.push_str(value);
    }
    all
}
