//! A finished label: items at fixed places. Exporters only translate, they decide nothing.

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
}

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
