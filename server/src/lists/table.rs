//! A table as a spreadsheet writes it: a heading that names the columns, and rows.

use super::says::ImportSays;
use crate::error::{Error, Problem, Result};
use crate::problems::TitleSays;
use actix_web::http::StatusCode;

/// The largest table, in bytes.
pub const LARGEST: usize = 1 << 20;
/// The most entries of one table.
pub const MOST: usize = 2_000;

/// A table as it was read: its columns, and each row with its line.
#[derive(Debug, Clone, Default)]
pub struct Table {
    /// What its columns are called, in small letters.
    pub columns: Vec<String>,
    /// Each row with its line in the file.
    pub rows: Vec<(usize, Vec<String>)>,
}

impl Table {
    /// How many rows it has.
    pub fn len(&self) -> usize {
        self.rows.len()
    }

    /// Has it none? One that was read has some.
    pub fn is_empty(&self) -> bool {
        self.rows.is_empty()
    }
}

/// Reads a table. Comma, semicolon or tab part its columns, whichever the heading has most of.
///
/// # Errors
/// 422 for what is no text, has no heading or too many rows.
pub fn table(bytes: &[u8]) -> Result<Table> {
    let no = |says: ImportSays| {
        let status = StatusCode::UNPROCESSABLE_ENTITY;
        Error::from(Problem::new(status, "table", TitleSays::Table, says))
    };
    let text = std::str::from_utf8(bytes).map_err(|error| {
        let read = &bytes[..error.valid_up_to()];
        let line = 1 + read.iter().filter(|byte| **byte == b'\n').count();
        no(ImportSays::NoText { line })
    })?;
    // A line is a line, however a spreadsheet ends it: what is wrong is told by its number.
    let text = text.trim_start_matches('\u{feff}').replace("\r\n", "\n");
    if let Some(letter) = text
        .chars()
        .find(|letter| crate::door::unseen::is_unseen(*letter))
    {
        let line = 1 + text
            .split(letter)
            .next()
            .map_or(0, |read| read.matches('\n').count());
        return Err(no(ImportSays::Unseen { line }));
    }
    let head = text.lines().next().unwrap_or_default();
    let count = |mark: u8| head.bytes().filter(|byte| *byte == mark).count();
    let mark = [b';', b'\t'].into_iter().fold(b',', |most, mark| {
        if count(mark) > count(most) {
            mark
        } else {
            most
        }
    });
    let mut reader = csv::ReaderBuilder::new()
        .delimiter(mark)
        .flexible(true)
        .has_headers(false)
        .trim(csv::Trim::All)
        .from_reader(text.as_bytes());
    let mut table = Table::default();
    for (nth, row) in reader.records().enumerate() {
        let row = row.map_err(|_| no(ImportSays::NoTable { line: nth + 1 }))?;
        let line = row.position().map_or(nth + 1, |at| at.line() as usize);
        let cells: Vec<String> = row.iter().map(str::to_owned).collect();
        if table.columns.is_empty() {
            table.columns = cells.iter().map(|cell| cell.to_lowercase()).collect();
        } else if cells.iter().any(|cell| !cell.is_empty()) {
            table.rows.push((line, cells));
        }
        if table.rows.len() > MOST {
            return Err(no(ImportSays::TooMany { most: MOST }));
        }
    }
    if table.rows.is_empty() {
        return Err(no(ImportSays::Nothing));
    }
    Ok(table)
}
