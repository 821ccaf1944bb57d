//! What becomes of a table of entries, as it is answered.

use crate::lists::import::{Fate, Line, Report};
use serde::Serialize;
use utoipa::ToSchema;
use words::Speech;

/// What became of a table, or would.
#[derive(Debug, Serialize, ToSchema)]
pub struct ImportRead {
    /// It was only tried: nothing is changed.
    pub tried: bool,
    /// How many lines are new entries.
    pub new: usize,
    /// How many change an entry.
    pub changed: usize,
    /// How many are in the list just so.
    pub same: usize,
    /// How many cannot be. A table with one of these is not taken over.
    pub wrong: usize,
    /// Line by line.
    pub lines: Vec<ImportLine>,
}

/// A line of a table.
#[derive(Debug, Serialize, ToSchema)]
pub struct ImportLine {
    /// Its number in the file; the heading is the first.
    pub line: usize,
    /// The code of its entry.
    pub code: String,
    /// `new`, `changed`, `same` or `wrong`.
    pub what: String,
    /// The same in the caller's language.
    pub says: String,
    /// The column at fault, or those that change.
    pub columns: Vec<String>,
    /// What is wrong, and what would do.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub detail: Option<String>,
    /// The key of `detail`: it is the same in every language.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub key: Option<String>,
}

/// A report for a caller.
pub fn import_read(report: &Report, tried: bool, speech: &Speech) -> ImportRead {
    let line = |line: &Line| ImportLine {
        line: line.number,
        code: line.code.clone(),
        what: line.fate.as_str().to_owned(),
        says: speech.say(&line.fate.says()),
        columns: line.columns.clone(),
        detail: line.says.as_ref().map(|says| speech.say(says)),
        key: line.says.as_ref().map(|says| says.key().to_owned()),
    };
    ImportRead {
        tried,
        new: report.count(Fate::New),
        changed: report.count(Fate::Changed),
        same: report.count(Fate::Same),
        wrong: report.count(Fate::Wrong),
        lines: report.lines.iter().map(line).collect(),
    }
}
