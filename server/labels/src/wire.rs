//! The JSON of a template. Unknown words are errors, so that a slip of the pen is found at start.

use serde::Deserialize;

use crate::face::{Measure, Weight};
use crate::facts::Field;
use crate::length::{Area, Length};
use crate::refusal::CodeKind;
use crate::template::{self, Align, Boxed, CodePlace, Fault, Level, TextStyle};

/// Longest length in a template; common practice, no source.
const LONGEST_MM: f64 = 300.0;

/// Millimetres as written.
#[derive(Debug, Clone, Copy, Deserialize)]
#[serde(transparent)]
pub(crate) struct Mm(f64);

impl Mm {
    pub fn length(self, what: &'static str) -> Result<Length, Fault> {
        let sound = self.0 > 0.0 && self.0 <= LONGEST_MM;
        if sound {
            Ok(Length::mm(self.0))
        } else {
            Err(Fault::Length { what })
        }
    }

    /// A place or gap, which may be nought.
    fn place(self, what: &'static str) -> Result<Length, Fault> {
        if self.0 == 0.0 {
            Ok(Length::ZERO)
        } else {
            self.length(what)
        }
    }
}

/// A whole template.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Template {
    pub width_mm: Mm,
    pub height_mm: Mm,
    pub dpi: Vec<u16>,
    #[serde(default)]
    pub omits: Vec<Field>,
    /// For people; not printed.
    #[serde(default, rename = "notes")]
    _notes: Vec<String>,
    pub items: Vec<Item>,
}

/// One place.
#[derive(Debug, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub(crate) enum Item {
    Stack(Stack),
    Qr(Qr),
    Code128(Rect),
    Ean13(Rect),
    Rule(Rect),
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Stack {
    x: Mm,
    y: Mm,
    w: Mm,
    h: Mm,
    #[serde(default)]
    align: Align,
    notch: Option<Notch>,
    texts: Vec<Text>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Notch {
    y: Mm,
    w: Mm,
    h: Mm,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Text {
    field: Field,
    #[serde(default)]
    weight: Weight,
    measure: Measure,
    min_mm: Mm,
    max_mm: Mm,
    gap_mm: Option<Mm>,
    max_lines: Option<usize>,
    #[serde(default)]
    required: bool,
    #[serde(default)]
    upper: bool,
    #[serde(default)]
    boxed: Boxed,
    #[serde(default)]
    beside: bool,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Qr {
    x: Mm,
    y: Mm,
    size: Mm,
    #[serde(default)]
    level: Level,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Rect {
    x: Mm,
    y: Mm,
    w: Mm,
    h: Mm,
}

impl Item {
    pub fn build(self) -> Result<template::Item, Fault> {
        let code = |kind, area, level| template::Item::Code(CodePlace { kind, area, level });
        Ok(match self {
            Item::Stack(stack) => template::Item::Stack(stack.build()?),
            Item::Qr(Qr { x, y, size, level }) => {
                code(CodeKind::Qr, area(x, y, size, size)?, level)
            }
            Item::Code128(rect) => code(CodeKind::Code128, rect.build()?, Level::default()),
            Item::Ean13(rect) => code(CodeKind::Ean13, rect.build()?, Level::default()),
            Item::Rule(rect) => template::Item::Rule(rect.build()?),
        })
    }
}

impl Stack {
    fn build(self) -> Result<template::Stack, Fault> {
        let area = area(self.x, self.y, self.w, self.h)?;
        let notch = self.notch.map(|notch| {
            let (w, h) = (notch.w.length("notch w")?, notch.h.length("notch h")?);
            let (x, y) = (area.right() - w, notch.y.place("notch y")?);
            Ok(Area { x, y, w, h })
        });
        Ok(template::Stack {
            area,
            notch: notch.transpose()?,
            align: self.align,
            texts: self
                .texts
                .into_iter()
                .map(Text::build)
                .collect::<Result<_, _>>()?,
        })
    }
}

impl Text {
    fn build(self) -> Result<TextStyle, Fault> {
        Ok(TextStyle {
            field: self.field,
            weight: self.weight,
            measure: self.measure,
            min: self.min_mm.length("min_mm")?,
            max: self.max_mm.length("max_mm")?,
            gap: self
                .gap_mm
                .map_or(Ok(Length::ZERO), |gap| gap.place("gap_mm"))?,
            max_lines: self.max_lines,
            required: self.required,
            upper: self.upper,
            boxed: self.boxed,
            beside: self.beside,
        })
    }
}

impl Rect {
    fn build(self) -> Result<Area, Fault> {
        area(self.x, self.y, self.w, self.h)
    }
}

fn area(x: Mm, y: Mm, w: Mm, h: Mm) -> Result<Area, Fault> {
    Ok(Area {
        x: x.place("x")?,
        y: y.place("y")?,
        w: w.length("w")?,
        h: h.length("h")?,
    })
}
