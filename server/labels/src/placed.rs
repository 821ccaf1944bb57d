//! A finished label: items at fixed places. Exporters only translate, they decide nothing.

use std::borrow::Cow;
use std::fmt::Write;

use crate::face::Weight;
use crate::facts::Field;
use crate::length::{Area, Dpi, Length};
use crate::picture::PictureName;
use crate::refusal::CodeKind;

/// A label laid out for one printer, ready to be drawn.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PlacedLabel {
    /// Page width.
    pub width: Length,
    /// Page height.
    pub height: Length,
    /// The printer whose dots the codes sit on.
    pub dpi: Dpi,
    /// What is drawn, black on white.
    pub items: Vec<Placed>,
    /// Where the tag is punched: nothing is drawn there.
    pub holes: Vec<Area>,
    /// A second label of the same pack, printed right after it.
    pub second: Option<Box<PlacedLabel>>,
}

/// White between two labels of a pack that are shown as one picture, and the line in its middle.
const BETWEEN: (Length, Length) = (Length::from_um(3_000), Length::from_um(200));

/// One thing drawn on a label.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Placed {
    /// One line of text.
    Text(PlacedLine),
    /// A code.
    Code(Code),
    /// A filled bar: a rule, or one side of a box.
    Rule(Area),
    /// A small picture beside words.
    Picture(Picture),
}

/// One line of text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PlacedLine {
    /// Which text it belongs to.
    pub field: Field,
    /// Left end.
    pub x: Length,
    /// The baseline, from the top of the label.
    pub baseline: Length,
    /// Font size.
    pub size: Length,
    /// Width as measured.
    pub width: Length,
    /// Weight.
    pub weight: Weight,
    /// The words.
    pub text: String,
}

impl PlacedLine {
    /// The box its ink lies in.
    pub fn bounds(&self) -> Area {
        let face = self.weight.face();
        let reach = face.reach(&self.text);
        let above = face.scale(reach.above, self.size);
        let below = face.scale(reach.below, self.size);
        Area {
            x: self.x,
            y: self.baseline - above,
            w: self.width,
            h: above + below,
        }
    }
}

/// A small picture as dark boxes on white.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Picture {
    /// Which.
    pub name: PictureName,
    /// The box it takes.
    pub bounds: Area,
    /// The dark boxes.
    pub dark: Vec<Area>,
}

/// A code as dark boxes on white.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Code {
    /// Which sort.
    pub kind: CodeKind,
    /// What it holds.
    pub payload: String,
    /// The box it takes, white border included.
    pub bounds: Area,
    /// Printer dots per module.
    pub dots: i64,
    /// Modules across, white border not included.
    pub modules: i64,
    /// The dark boxes, every edge on a printer dot.
    pub dark: Vec<Area>,
}

impl Placed {
    /// The box the item takes.
    pub fn bounds(&self) -> Area {
        match self {
            Placed::Text(line) => line.bounds(),
            Placed::Code(code) => code.bounds,
            Placed::Rule(area) => *area,
            Placed::Picture(picture) => picture.bounds,
        }
    }

    /// An item at another place, so many dots to the right and down. Codes stay on whole dots.
    pub(crate) fn moved(&self, dpi: Dpi, x: i64, y: i64) -> Placed {
        let (right, down) = (dpi.dots(x), dpi.dots(y));
        let shifted = |area: &Area| Area {
            x: area.x + right,
            y: area.y + down,
            ..*area
        };
        let snapped = |area: &Area| {
            let edge = |place: Length, by: i64| dpi.dots(dpi.first_dot(place) + by);
            let (left, top) = (edge(area.x, x), edge(area.y, y));
            Area {
                x: left,
                y: top,
                w: edge(area.right(), x) - left,
                h: edge(area.bottom(), y) - top,
            }
        };
        match self {
            Placed::Text(line) => {
                let mut line = line.clone();
                line.x += right;
                line.baseline += down;
                Placed::Text(line)
            }
            Placed::Rule(area) => Placed::Rule(shifted(area)),
            Placed::Code(code) => Placed::Code(Code {
                bounds: snapped(&code.bounds),
                dark: code.dark.iter().map(snapped).collect(),
                ..code.clone()
            }),
            Placed::Picture(picture) => Placed::Picture(Picture {
                name: picture.name,
                bounds: shifted(&picture.bounds),
                dark: picture.dark.iter().map(shifted).collect(),
            }),
        }
    }
}

impl PlacedLabel {
    /// The whole page as a box.
    pub fn page(&self) -> Area {
        Area {
            x: Length::ZERO,
            y: Length::ZERO,
            w: self.width,
            h: self.height,
        }
    }

    /// The labels of the pack, each a page of its own.
    pub fn pages(&self) -> impl Iterator<Item = &PlacedLabel> {
        std::iter::once(self).chain(self.second.as_deref())
    }

    /// The height of its tallest page.
    pub fn tallest(&self) -> Length {
        let heights = self.pages().map(|page| page.height);
        heights.max().unwrap_or(self.height)
    }

    /// Its pages, all as tall as the tallest: a printer is told one size for a job.
    pub fn alike(&self) -> Vec<PlacedLabel> {
        let tallest = self.tallest();
        let page = |page: &PlacedLabel| PlacedLabel {
            height: tallest,
            second: None,
            ..page.clone()
        };
        self.pages().map(page).collect()
    }

    /// The label with its second one below it, as one picture.
    pub fn joined(&self) -> Cow<'_, PlacedLabel> {
        let Some(second) = &self.second else {
            return Cow::Borrowed(self);
        };
        let (between, line) = BETWEEN;
        let down = self.dpi.first_dot(self.height + between);
        let mut joined = PlacedLabel {
            height: self.dpi.dots(down) + second.height,
            second: None,
            ..self.clone()
        };
        joined.items.push(Placed::Rule(Area {
            x: Length::ZERO,
            y: self.height + (between - line) / 2,
            w: self.width,
            h: line,
        }));
        let moved = |item: &Placed| item.moved(self.dpi, 0, down);
        joined.items.extend(second.items.iter().map(moved));
        Cow::Owned(joined)
    }

    /// The lines of text, in drawing order.
    pub fn lines(&self) -> impl Iterator<Item = &PlacedLine> {
        self.items.iter().filter_map(|item| match item {
            Placed::Text(line) => Some(line),
            Placed::Code(_) | Placed::Rule(_) | Placed::Picture(_) => None,
        })
    }

    /// The codes.
    pub fn codes(&self) -> impl Iterator<Item = &Code> {
        self.items.iter().filter_map(|item| match item {
            Placed::Code(code) => Some(code),
            Placed::Text(_) | Placed::Rule(_) | Placed::Picture(_) => None,
        })
    }

    /// A field's text as it stands on the label, its lines joined by spaces.
    pub fn text_of(&self, field: Field) -> String {
        let lines = self.lines().filter(|line| line.field == field);
        lines
            .map(|line| line.text.as_str())
            .collect::<Vec<_>>()
            .join(" ")
    }

    /// The label as text, one item a line; tests compare it.
    pub fn to_text(&self) -> String {
        let (w, h, dpi) = (self.width.to_mm(), self.height.to_mm(), self.dpi.number());
        let mut out = format!("label {w:.2}x{h:.2} at {dpi} dpi\n");
        for item in &self.items {
            // Writing to a string cannot fail.
            let _ = match item {
                Placed::Text(line) => {
                    let PlacedLine {
                        field,
                        x,
                        baseline,
                        size,
                        weight,
                        text,
                        ..
                    } = line;
                    let [x, baseline, size] = [*x, *baseline, *size].map(Length::to_mm);
                    let weight = weight.as_str();
                    writeln!(
                        out,
                        "{field} {x:.2},{baseline:.2} {weight} {size:.2}: {text}"
                    )
                }
                Placed::Code(code) => {
                    let Code {
                        kind,
                        payload,
                        bounds,
                        dots,
                        modules,
                        ..
                    } = code;
                    writeln!(
                        out,
                        "{kind} {bounds} {modules} modules of {dots} dots: {payload}"
                    )
                }
                Placed::Rule(area) => writeln!(out, "rule {area}"),
                Placed::Picture(picture) => {
                    writeln!(out, "picture {:?} {}", picture.name, picture.bounds)
                }
            };
        }
        for hole in &self.holes {
            let _ = writeln!(out, "hole {hole}");
        }
        out
    }
}
