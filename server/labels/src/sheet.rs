//! Many labels on a sheet of paper, with lines to cut along.

use schemars::JsonSchema;
use serde::Deserialize;
use thiserror::Error;

use crate::fault::{Fault, TemplateError};
use crate::length::{Area, Dpi, Length};
use crate::placed::{Placed, PlacedLabel};
use crate::wire::Mm;

/// Thickness of the lines to cut along.
const CUT: Length = Length::from_um(120);

/// A sheet of paper.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sheet {
    name: String,
    width: Length,
    height: Length,
    margin: Length,
    between: Length,
}

/// Why labels do not go on a sheet.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum SheetRefusal {
    /// A label is larger than the sheet's free part.
    #[error(
        "a label of {label_w} by {label_h} does not go on the sheet \"{sheet}\": between its margins there are {had_w} by {had_h}"
    )]
    TooLarge {
        /// The sheet.
        sheet: String,
        /// The label's width.
        label_w: Length,
        /// The label's height.
        label_h: Length,
        /// The width there is.
        had_w: Length,
        /// The height there is.
        had_h: Length,
    },
    /// More places are used up than a sheet has.
    #[error("the sheet \"{sheet}\" has {places} places for these labels; {skip} cannot be used up")]
    Skip {
        /// The sheet.
        sheet: String,
        /// Places on it.
        places: usize,
        /// Places said to be used up.
        skip: usize,
    },
}

/// A sheet as it is written.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Written {
    /// Where the schema of this file is, for editors.
    #[serde(rename = "$schema", default)]
    _schema: Option<String>,
    width_mm: Mm,
    height_mm: Mm,
    /// White that the printer needs at every edge.
    margin_mm: Mm,
    /// White between two labels; the line to cut along runs in its middle.
    between_mm: Mm,
    /// For people; not printed.
    #[serde(default, rename = "notes")]
    _notes: Vec<String>,
}

impl Sheet {
    /// Reads a sheet. The name is the caller's.
    ///
    /// # Errors
    /// With line and reason.
    pub fn parse(name: &str, json: &str) -> Result<Sheet, TemplateError> {
        let written: Written = serde_json::from_str(json).map_err(|cause| TemplateError::Json {
            name: name.into(),
            cause,
        })?;
        let build = || {
            Ok(Sheet {
                name: name.to_owned(),
                width: written.width_mm.length("width_mm")?,
                height: written.height_mm.length("height_mm")?,
                margin: written.margin_mm.length("margin_mm")?,
                between: written.between_mm.length("between_mm")?,
            })
        };
        build().map_err(|fault: Fault| TemplateError::Form {
            name: name.into(),
            line: crate::wire::line_of(json, None, &fault),
            fault,
        })
    }

    /// The JSON Schema of a sheet's file.
    pub fn schema() -> schemars::Schema {
        schemars::schema_for!(Written)
    }

    /// The sheet's name.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Puts labels on sheets, row by row; so many places of the first sheet are left empty.
    ///
    /// # Errors
    /// A label that is larger than the sheet, or more places used up than there are.
    pub fn fill(
        &self,
        labels: &[PlacedLabel],
        skip: usize,
    ) -> Result<Vec<PlacedLabel>, SheetRefusal> {
        let pages = |label: &PlacedLabel| label.pages().cloned().collect::<Vec<_>>();
        let labels: Vec<PlacedLabel> = labels.iter().flat_map(pages).collect();
        let widest = labels.iter().map(|label| label.width).max();
        let tallest = labels.iter().map(|label| label.height).max();
        let (Some(w), Some(h)) = (widest, tallest) else {
            return Ok(Vec::new());
        };
        let (had_w, had_h) = (self.width - self.margin * 2, self.height - self.margin * 2);
        if w > had_w || h > had_h {
            return Err(SheetRefusal::TooLarge {
                sheet: self.name.clone(),
                label_w: w,
                label_h: h,
                had_w,
                had_h,
            });
        }
        let fit = |had: Length, one: Length| (had + self.between).um() / (one + self.between).um();
        let (columns, rows) = (fit(had_w, w), fit(had_h, h));
        let places = usize::try_from(columns * rows).unwrap_or(1);
        if skip >= places {
            return Err(SheetRefusal::Skip {
                sheet: self.name.clone(),
                places,
                skip,
            });
        }
        let grid = SheetGrid {
            // In the middle of the paper, so that both sides can be cut.
            left: (self.width - (w + self.between) * columns + self.between) / 2,
            top: self.margin,
            pitch: (w + self.between, h + self.between),
            counts: (columns, rows),
        };
        let mut sheets = Vec::new();
        let mut place = skip;
        let mut rest = labels.as_slice();
        while !rest.is_empty() {
            let (now, later) = rest.split_at(rest.len().min(places - place));
            sheets.push(self.page(&grid, now, place));
            (rest, place) = (later, 0);
        }
        Ok(sheets)
    }

    fn page(&self, grid: &SheetGrid, labels: &[PlacedLabel], first: usize) -> PlacedLabel {
        let dpi = labels.first().map_or(Dpi::D300, |label| label.dpi);
        let mut items = Vec::new();
        for (nth, label) in (first..).zip(labels) {
            let nth = i64::try_from(nth).unwrap_or(0);
            let (column, row) = (nth % grid.counts.0, nth / grid.counts.0);
            let x = dpi.first_dot(grid.left + grid.pitch.0 * column);
            let y = dpi.first_dot(grid.top + grid.pitch.1 * row);
            items.extend(label.items.iter().map(|item| item.moved(dpi, x, y)));
        }
        items.extend(grid.cuts(self).into_iter().map(Placed::Rule));
        PlacedLabel {
            width: self.width,
            height: self.height,
            dpi,
            items,
            holes: Vec::new(),
            second: None,
        }
    }
}

/// Where the labels of a sheet stand.
struct SheetGrid {
    left: Length,
    top: Length,
    pitch: (Length, Length),
    counts: (i64, i64),
}

impl SheetGrid {
    /// The lines to cut along, in the middle between two labels and at the outer edges.
    fn cuts(&self, sheet: &Sheet) -> Vec<Area> {
        let half = sheet.between / 2;
        let across = |row: i64| Area {
            x: Length::ZERO,
            y: (self.top + self.pitch.1 * row - half).max(Length::ZERO),
            w: sheet.width,
            h: CUT,
        };
        let down = |column: i64| Area {
            x: (self.left + self.pitch.0 * column - half).max(Length::ZERO),
            y: Length::ZERO,
            w: CUT,
            h: sheet.height,
        };
        let rows = (0..=self.counts.1).map(across);
        rows.chain((0..=self.counts.0).map(down)).collect()
    }
}
