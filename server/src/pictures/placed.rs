//! A laid-out picture for paper: black on white, cut into sheets between its rows.

use super::items::{Area, Fill, Item, Picture};
use labels::report::text;
use labels::{Area as Box, Length, Placed, Weight};

/// A tenth of a pixel on paper: letters of 22 pixels are 2.9 mm high, and forty rows stand on a sheet.
const UNIT: i64 = 13;
/// The letters of a picture, in its own tenths.
const LETTERS: i64 = 220;
/// Below a baseline.
const BELOW: i64 = 70;
const THIN: Length = Length::from_um(120);
const THICK: Length = Length::from_um(350);
/// Between two bars of what is held.
const APART: i64 = 900;

/// The picture on sheets, each from a left upper corner on and so high.
pub fn placed(picture: &Picture, corner: (Length, Length), high: Length) -> Vec<Vec<Placed>> {
    let room = high.um() / UNIT;
    let mut sheets = Vec::new();
    let mut top = 0;
    while top < picture.height {
        let bottom = match top + room >= picture.height {
            true => picture.height,
            false => cut(picture, top, top + room),
        };
        let sheet = Sheet {
            top,
            bottom,
            corner,
        };
        sheets.push(
            picture
                .items
                .iter()
                .flat_map(|item| sheet.item(item))
                .collect(),
        );
        top = bottom;
    }
    sheets
}

/// Where a sheet ends: between two lines of text.
fn cut(picture: &Picture, top: i64, most: i64) -> i64 {
    let crosses = |at: i64| {
        picture.items.iter().any(|item| match item {
            Item::Text(text) => text.baseline - LETTERS < at && at < text.baseline + BELOW,
            _ => false,
        })
    };
    let least = top + (most - top) / 2;
    (least..=most)
        .rev()
        .step_by(20)
        .find(|at| !crosses(*at))
        .unwrap_or(most)
}

struct Sheet {
    top: i64,
    bottom: i64,
    corner: (Length, Length),
}

impl Sheet {
    fn at(&self, x: i64, y: i64) -> (Length, Length) {
        let (left, upper) = self.corner;
        let y = (y - self.top) * UNIT;
        (left + Length::from_um(x * UNIT), upper + Length::from_um(y))
    }

    fn item(&self, item: &Item) -> Vec<Placed> {
        match item {
            Item::Bar {
                fill: Fill::Row, ..
            } => Vec::new(),
            Item::Bar { area, fill } => self.bar(*area, *fill),
            Item::Line { from, to, heavy } => self.line(*from, *to, *heavy),
            Item::Dot { x, y } => {
                let area = Area {
                    x: x - 45,
                    y: y - 45,
                    w: 90,
                    h: 90,
                };
                self.filled(area).into_iter().collect()
            }
            Item::Text(line) if (self.top..self.bottom).contains(&line.baseline) => {
                let (x, baseline) = self.at(line.x, line.baseline);
                let weight = if line.bold {
                    Weight::Bold
                } else {
                    Weight::Regular
                };
                vec![text(
                    x,
                    baseline,
                    Length::from_um(LETTERS * UNIT),
                    weight,
                    &line.text,
                )]
            }
            Item::Text(_) => Vec::new(),
        }
    }

    /// A box, as far as it lies on this sheet.
    fn filled(&self, area: Area) -> Option<Placed> {
        let (top, bottom) = (area.y.max(self.top), (area.y + area.h).min(self.bottom));
        if top >= bottom {
            return None;
        }
        let (x, y) = self.at(area.x, top);
        let (w, h) = (area.w * UNIT, (bottom - top) * UNIT);
        let (w, h) = (Length::from_um(w), Length::from_um(h));
        Some(Placed::Rule(Box { x, y, w, h }))
    }

    fn bar(&self, area: Area, fill: Fill) -> Vec<Placed> {
        let Some(Placed::Rule(whole)) = self.filled(area) else {
            return Vec::new();
        };
        if fill == Fill::OnHand || whole.w < THICK || whole.h < THICK {
            return vec![Placed::Rule(whole)];
        }
        let Box { x, y, w, h } = whole;
        let mut rules = vec![
            Box { x, y, w, h: THIN },
            Box {
                x,
                y: y + h - THIN,
                w,
                h: THIN,
            },
            Box { x, y, w: THIN, h },
            Box {
                x: x + w - THIN,
                y,
                w: THIN,
                h,
            },
        ];
        if fill == Fill::Held {
            let strokes = w.um() / APART;
            let stroke = |nth: i64| Box {
                x: x + Length::from_um(nth * APART),
                y,
                w: THICK,
                h,
            };
            rules.extend((0..strokes).map(stroke));
        }
        rules.into_iter().map(Placed::Rule).collect()
    }

    /// A line: they stand upright or lie, and the faintest are left out where they would be a wall of ink.
    fn line(&self, from: (i64, i64), to: (i64, i64), heavy: Option<bool>) -> Vec<Placed> {
        let wide = match heavy {
            None => return Vec::new(),
            Some(false) => 8,
            Some(true) => 20,
        };
        let area = Area {
            x: from.0.min(to.0),
            y: from.1.min(to.1),
            w: (from.0 - to.0).abs().max(wide),
            h: (from.1 - to.1).abs().max(wide),
        };
        self.filled(area).into_iter().collect()
    }
}
