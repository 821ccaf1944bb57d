//! Several tables, and sheets that were drawn otherwise, as one document whose pages run through.

use super::{MARGIN, Paper, Report, Sheets, TITLE, numbered};
use crate::length::Length;
use crate::pdf::{PdfError, pdf_titled};
use crate::placed::Placed;

/// A document.
#[derive(Debug)]
pub struct Document {
    /// Its name, in plain letters.
    pub title: String,
    /// What stands at the foot of each page.
    pub heading: String,
    /// On which paper.
    pub paper: Paper,
    /// What it holds.
    pub parts: Vec<Part>,
}

/// A part of it.
#[derive(Debug)]
pub enum Part {
    /// A table: it goes on where the one before ended, if there is room for its head and a few rows.
    Table(Report),
    /// Sheets of their own.
    Drawn(Vec<Vec<Placed>>),
}

/// What a table needs of a sheet that is not empty.
const LEAST: Length = Length::from_um(55_000);
/// Between two tables.
const BETWEEN: Length = Length::from_um(7_000);

impl Document {
    /// The box in which a sheet may be drawn: its left upper corner, and how high it is.
    pub fn room(paper: Paper) -> ((Length, Length), Length) {
        let (_, height) = paper.size();
        ((MARGIN, MARGIN + TITLE), height - MARGIN * 2 - TITLE * 2)
    }
}

/// The file. `foot` says how far one has come: the page, of how many.
///
/// # Errors
/// The PDF library was not content.
pub fn document(
    document: &Document,
    foot: impl Fn(usize, usize) -> String,
) -> Result<Vec<u8>, PdfError> {
    let mut done: Vec<Vec<Placed>> = Vec::new();
    let mut open: Option<(Vec<Placed>, Length)> = None;
    let (_, height) = document.paper.size();
    for part in &document.parts {
        match part {
            Part::Table(report) => {
                let (items, y) = match open.take() {
                    Some((items, y)) if y + LEAST < height - MARGIN => (items, y + BETWEEN),
                    Some((items, _)) => {
                        done.push(items);
                        (Vec::new(), MARGIN)
                    }
                    None => (Vec::new(), MARGIN),
                };
                let sheets = Sheets::new(report, items, y).filled();
                done.extend(sheets.done);
                open = Some((sheets.items, sheets.y));
            }
            Part::Drawn(sheets) => {
                done.extend(open.take().map(|(items, _)| items));
                done.extend(sheets.iter().cloned());
            }
        }
    }
    done.extend(open.map(|(items, _)| items));
    let pages = numbered(document.paper, &document.heading, done, foot);
    pdf_titled(&document.title, &pages)
}
