//! A table on paper: headings that stand again on each page, rows whose cells are lines of a label and a text, and
//! how far one has come at the foot. Black on white: what stands out does so by a frame, so that it does on a
//! copy, too. Nothing is cut off: what is too long for a line goes on in the next, what is too long for a page on
//! the next page.

mod document;
mod paper;
mod text;

pub use document::{Document, Part, document};
pub use paper::Paper;

use crate::face::Weight;
use crate::facts::Field;
use crate::length::{Area, Dpi, Length};
use crate::pdf::{PdfError, pdf_titled};
use crate::placed::{Placed, PlacedLabel, PlacedLine};
use crate::qr;
use crate::template::Level;
use text::{drawable, split, wide};

/// A table.
#[derive(Debug, Clone)]
pub struct Report {
    /// The document's name, in plain letters.
    pub title: String,
    /// What stands over it.
    pub heading: String,
    /// What stands under that, line by line, on the first page.
    pub under: Vec<String>,
    /// What the square code beside that holds.
    pub code: Option<String>,
    /// On which paper.
    pub paper: Paper,
    /// The heading of each column, and its share of the width.
    pub columns: Vec<(String, i64)>,
    /// The rows: for each column its lines.
    pub rows: Vec<Vec<Vec<Line>>>,
    /// What stands there where there are no rows.
    pub empty: String,
}

/// A line of a cell, before it is broken to its width.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Line {
    /// What it is.
    pub label: Option<String>,
    /// What it says.
    pub text: String,
    /// How it stands out.
    pub sort: Sort,
}

/// How a line stands out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sort {
    /// Not at all.
    Plain,
    /// It is to be seen: bold.
    Mark,
    /// Something is missing: bold, in a frame.
    Hole,
}

const MARGIN: Length = Length::from_um(12_000);
/// Between two columns.
const GUTTER: Length = Length::from_um(4_000);
const TITLE: Length = Length::from_um(6_400);
const TEXT: Length = Length::from_um(3_100);
const LABEL: Length = Length::from_um(2_600);
const PITCH: Length = Length::from_um(4_100);
/// White above and below a row, between its ink and the rule.
const PAD: Length = Length::from_um(1_300);
const RULE: Length = Length::from_um(150);
const THICK: Length = Length::from_um(500);
/// The square code at the right of the title: at most 41 modules of five dots are read off a photocopy.
const CODE: Length = Length::from_um(28_000);
/// What goes on in the next line stands in a little.
const INDENT: Length = Length::from_um(2_200);

/// The file. `foot` says how far one has come: the page, of how many.
///
/// # Errors
/// The PDF library was not content.
pub fn pdf(report: &Report, foot: impl Fn(usize, usize) -> String) -> Result<Vec<u8>, PdfError> {
    pdf_titled(&report.title, &pages(report, foot))
}

/// The pages, laid out.
pub fn pages(report: &Report, foot: impl Fn(usize, usize) -> String) -> Vec<PlacedLabel> {
    let sheets = Sheets::new(report, Vec::new(), MARGIN).filled();
    let mut pages = sheets.done;
    pages.push(sheets.items);
    numbered(report.paper, &report.heading, pages, foot)
}

/// Sheets with what stands at the foot of each: what it is of, and how far one has come.
fn numbered(
    paper: Paper,
    heading: &str,
    pages: Vec<Vec<Placed>>,
    foot: impl Fn(usize, usize) -> String,
) -> Vec<PlacedLabel> {
    let of = pages.len();
    let (width, height) = paper.size();
    let numbered = pages.into_iter().enumerate().map(|(nth, mut items)| {
        let baseline = height - MARGIN + Length::from_um(3_000);
        let number = foot(nth + 1, of);
        let right = width - MARGIN - wide(Weight::Regular, &number, TEXT);
        items.push(line(right, baseline, TEXT, Weight::Regular, &number));
        items.push(line(MARGIN, baseline, TEXT, Weight::Regular, heading));
        PlacedLabel {
            width,
            height,
            dpi: Dpi::D300,
            items,
            holes: Vec::new(),
            second: None,
        }
    });
    numbered.collect()
}

/// A line of a cell, broken to its width.
struct Broken {
    label: Option<String>,
    x: Length,
    text: String,
    sort: Sort,
}

/// The sheets as they fill.
struct Sheets<'a> {
    report: &'a Report,
    columns: Vec<(Length, Length)>,
    done: Vec<Vec<Placed>>,
    items: Vec<Placed>,
    /// How far down the sheet is filled.
    y: Length,
    bottom: Length,
    /// Where rows begin on this sheet.
    top: Length,
}

impl<'a> Sheets<'a> {
    /// Begins on a sheet on which something stands already, so far down.
    fn new(report: &'a Report, items: Vec<Placed>, y: Length) -> Sheets<'a> {
        let (width, height) = report.paper.size();
        let shares: i64 = report.columns.iter().map(|(_, share)| share).sum();
        let gutters = GUTTER * (report.columns.len().max(1) as i64 - 1);
        let free = width - MARGIN * 2 - gutters;
        let mut x = MARGIN;
        let columns = report.columns.iter().map(|(_, share)| {
            let own = (x, free * *share / shares.max(1));
            x += own.1 + GUTTER;
            own
        });
        let mut sheets = Sheets {
            report,
            columns: columns.collect(),
            done: Vec::new(),
            items,
            y,
            bottom: height - MARGIN - Length::from_um(2_000),
            top: MARGIN,
        };
        let beside = sheets.code();
        let above = sheets.y;
        sheets.y += TITLE;
        let baseline = sheets.y;
        sheets.put(MARGIN, baseline, TITLE, Weight::Bold, &report.heading);
        sheets.y += Length::from_um(1_600);
        for under in &report.under {
            let free = width - MARGIN * 2 - beside;
            for text in split(under, Weight::Regular, TEXT, free, free) {
                sheets.y += PITCH;
                let baseline = sheets.y;
                sheets.put(MARGIN, baseline, TEXT, Weight::Regular, &text);
            }
        }
        if beside > Length::ZERO {
            sheets.y = sheets.y.max(above + CODE);
        }
        sheets.y += Length::from_um(2_400);
        sheets.head();
        sheets
    }

    /// Sets the square code at the right edge, where there is one: how much of the width it takes.
    fn code(&mut self) -> Length {
        let Some(payload) = &self.report.code else {
            return Length::ZERO;
        };
        let (width, _) = self.report.paper.size();
        let area = Area {
            x: width - MARGIN - CODE,
            y: self.y,
            w: CODE,
            h: CODE,
        };
        // What is too long for a square of this size stands beside it in letters.
        let Ok(code) = qr::place(payload, area, Level::M, Dpi::D300) else {
            return Length::ZERO;
        };
        self.items.push(Placed::Code(code));
        CODE + GUTTER
    }

    /// With all rows, or what stands there instead.
    fn filled(mut self) -> Sheets<'a> {
        for row in &self.report.rows {
            self.row(row);
        }
        if self.report.rows.is_empty() {
            self.y += PITCH;
            let (baseline, empty) = (self.y, &self.report.empty);
            self.put(MARGIN, baseline, TEXT, Weight::Regular, empty);
        }
        self
    }

    fn put(&mut self, x: Length, baseline: Length, size: Length, weight: Weight, text: &str) {
        self.items.push(line(x, baseline, size, weight, text));
    }

    /// The headings of the columns, with a thick rule below.
    fn head(&mut self) {
        self.y += PITCH;
        for ((heading, _), (x, _)) in self.report.columns.iter().zip(self.columns.clone()) {
            let baseline = self.y;
            self.put(x, baseline, TEXT, Weight::Bold, heading);
        }
        self.y += Length::from_um(1_500);
        self.rule(THICK);
        self.top = self.y;
    }

    fn rule(&mut self, thick: Length) {
        let (width, _) = self.report.paper.size();
        self.items.push(Placed::Rule(Area {
            x: MARGIN,
            y: self.y,
            w: width - MARGIN * 2,
            h: thick,
        }));
        self.y += thick;
    }

    fn turn(&mut self) {
        self.done.push(std::mem::take(&mut self.items));
        self.y = MARGIN;
        self.head();
    }

    fn row(&mut self, row: &[Vec<Line>]) {
        let mut cells: Vec<Vec<Broken>> = row
            .iter()
            .zip(&self.columns)
            .map(|(lines, (_, width))| lines.iter().flat_map(|of| set(of, *width)).collect())
            .collect();
        let high = |lines: usize| PITCH * lines as i64 + PAD * 2 + RULE;
        let all = cells.iter().map(Vec::len).max().unwrap_or(0);
        if self.y + high(all) > self.bottom && self.top + high(all) <= self.bottom {
            self.turn();
        }
        loop {
            let room = self.bottom - self.y - PAD * 2 - RULE;
            let fit = usize::try_from(room.um() / PITCH.um()).unwrap_or(0);
            let left = cells.iter().map(Vec::len).max().unwrap_or(0);
            let now = left.min(fit);
            if now == 0 && left > 0 {
                self.turn();
                continue;
            }
            self.y += PAD;
            let columns = self.columns.clone();
            for (cell, (x, width)) in cells.iter_mut().zip(columns) {
                let taken = cell.len().min(now);
                for (nth, of) in cell.drain(..taken).enumerate() {
                    self.line(&of, x, width, nth);
                }
            }
            self.y += PITCH * now as i64 + PAD;
            self.rule(RULE);
            if cells.iter().all(Vec::is_empty) {
                return;
            }
            self.turn();
        }
    }

    fn line(&mut self, of: &Broken, x: Length, width: Length, nth: usize) {
        let foot = self.y + PITCH * (nth as i64 + 1);
        let baseline = foot - Length::from_um(900);
        if let Some(label) = &of.label {
            self.put(x, baseline, LABEL, Weight::Regular, label);
        }
        let weight = weight(of.sort);
        self.put(x + of.x, baseline, TEXT, weight, &of.text);
        if of.sort == Sort::Hole {
            let left = x + of.x - Length::from_um(700);
            let wide = wide(weight, &of.text, TEXT) + Length::from_um(1_400);
            let wide = wide.min(x + width - left);
            let (top, high) = (
                foot - PITCH + Length::from_um(150),
                PITCH - Length::from_um(300),
            );
            let rules = [
                (left, top, wide, RULE),
                (left, top + high - RULE, wide, RULE),
                (left, top, RULE, high),
                (left + wide - RULE, top, RULE, high),
            ];
            let rule = |(x, y, w, h)| Placed::Rule(Area { x, y, w, h });
            self.items.extend(rules.map(rule));
        }
    }
}

fn weight(sort: Sort) -> Weight {
    match sort {
        Sort::Plain => Weight::Regular,
        Sort::Mark | Sort::Hole => Weight::Bold,
    }
}

/// A line of a cell, broken to the width of its column.
fn set(of: &Line, width: Length) -> Vec<Broken> {
    let label = of
        .label
        .as_ref()
        .map(|label| drawable(label, Weight::Regular));
    let after = label.as_ref().map_or(Length::ZERO, |label| {
        wide(Weight::Regular, label, LABEL) + Length::from_um(1_600)
    });
    // A label that takes most of the line has it to itself.
    let alone = after > width * 3 / 5;
    let inset = match (alone, of.sort) {
        (true, _) => INDENT,
        (false, Sort::Hole) => after + Length::from_um(700),
        (false, _) => after,
    };
    let mut lines = Vec::new();
    if alone {
        lines.push(Broken {
            label: label.clone(),
            x: Length::ZERO,
            text: String::new(),
            sort: Sort::Plain,
        });
    }
    let later = if of.label.is_some() {
        INDENT
    } else {
        Length::ZERO
    };
    // A frame needs its room at the right as well.
    let width = match of.sort {
        Sort::Hole => width - Length::from_um(900),
        _ => width,
    };
    let parts = split(
        &of.text,
        weight(of.sort),
        TEXT,
        width - inset,
        width - later,
    );
    for (nth, text) in parts.into_iter().enumerate() {
        lines.push(Broken {
            label: label.clone().filter(|_| nth == 0 && !alone),
            x: if nth == 0 { inset } else { later },
            text,
            sort: of.sort,
        });
    }
    lines
}

/// A text on a sheet: letters that the face lacks stand as a question mark in brackets.
pub fn text(x: Length, baseline: Length, size: Length, weight: Weight, text: &str) -> Placed {
    line(x, baseline, size, weight, text)
}

fn line(x: Length, baseline: Length, size: Length, weight: Weight, text: &str) -> Placed {
    let text = drawable(text, weight);
    Placed::Text(PlacedLine {
        field: Field::Name,
        x,
        baseline,
        size,
        width: wide(weight, &text, size),
        weight,
        text,
    })
}
