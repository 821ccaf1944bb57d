//! The JSON of a template. Unknown words are errors, so that a slip of the pen is found at start.

use schemars::JsonSchema;
use serde::Deserialize;
use serde_json::value::RawValue;

use crate::face::{Measure, Weight};
use crate::facts::Field;
use crate::fault::Fault;
use crate::length::{Area, Length};
use crate::picture::PictureName;
use crate::purpose::Purpose;
use crate::refusal::CodeKind;
use crate::template::{self, Align, Boxed, CodePlace, Level, TableColumn, TextStyle};

/// Longest length in a template; common practice, no source.
const LONGEST_MM: f64 = 300.0;

/// Millimetres as written.
#[derive(Debug, Clone, Copy, Deserialize, JsonSchema)]
#[serde(transparent)]
pub(crate) struct Mm(#[schemars(range(min = 0.0, max = 300.0))] f64);

impl Mm {
    pub fn length(self, what: &'static str) -> Result<Length, Fault> {
        let sound = self.0 > 0.0 && self.0 <= LONGEST_MM;
        if sound {
            Ok(Length::mm(self.0))
        } else {
            Err(Fault::Length { what })
        }
    }

    /// A place or gap, which may be zero.
    fn place(self, what: &'static str) -> Result<Length, Fault> {
        if self.0 == 0.0 {
            Ok(Length::ZERO)
        } else {
            self.length(what)
        }
    }
}

/// A label's form: what it is for, its size, and what stands where. Lengths are millimetres from the
/// top left corner.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(crate) struct Template {
    /// Where the schema of this file is, for editors.
    #[serde(rename = "$schema", default)]
    _schema: Option<String>,
    /// What it is for.
    pub purpose: Purpose,
    /// The places whose law it is made for (us, ca, eu, uk); none for all.
    #[serde(default)]
    pub places: Vec<String>,
    pub width_mm: Mm,
    pub height_mm: Mm,
    /// For paper on a roll: the shortest that the label may be cut; `height_mm` is then the longest.
    pub shortest_mm: Option<Mm>,
    /// Is it taken only where a printer says that it holds that paper, or by name? Not by itself for a document.
    #[serde(default)]
    pub on_its_paper: bool,
    /// The printers that it is made for: 203, 300 or both.
    pub dpi: Vec<u16>,
    /// Texts that it knowingly leaves out.
    #[serde(default)]
    pub omits: Vec<Field>,
    /// For people; not printed.
    #[serde(default, rename = "notes")]
    _notes: Vec<String>,
    pub items: Vec<Item>,
}

/// One place.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub(crate) enum Item {
    /// Texts one under the other.
    Stack(Stack),
    /// Two languages side by side, in one size.
    Columns(Columns),
    /// Rows to be filled in by hand.
    Table(Table),
    /// The square code.
    Qr(Qr),
    /// The bar code.
    Code128(Rect),
    /// The code for the till.
    Ean13(Rect),
    /// A filled bar.
    Rule(Rect),
    /// Where the tag is punched.
    Hole(Hole),
}

#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(crate) struct Stack {
    x: Mm,
    y: Mm,
    w: Mm,
    h: Mm,
    #[serde(default)]
    align: Align,
    /// A piece cut out at the right edge, for a code.
    notch: Option<Notch>,
    texts: Vec<Text>,
}

#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Notch {
    y: Mm,
    w: Mm,
    h: Mm,
}

#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(crate) struct Columns {
    x: Mm,
    y: Mm,
    w: Mm,
    h: Mm,
    /// White between the two.
    between: Mm,
    left: Vec<Text>,
    right: Vec<Text>,
}

#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(crate) struct Table {
    x: Mm,
    y: Mm,
    w: Mm,
    h: Mm,
    /// Rows under the head.
    rows: u8,
    columns: Vec<TableHead>,
}

#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct TableHead {
    w: Mm,
    head: Text,
}

/// How one text is set.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Text {
    field: Field,
    #[serde(default)]
    weight: Weight,
    /// Which letters the heights are of.
    measure: Measure,
    min_mm: Mm,
    max_mm: Mm,
    /// The least distance from line to line.
    leading_mm: Option<Mm>,
    /// White above it.
    gap_mm: Option<Mm>,
    max_lines: Option<usize>,
    /// No label without it.
    #[serde(default)]
    required: bool,
    /// It may go before the label is refused: nothing that must be on the label.
    #[serde(default)]
    may_drop: bool,
    #[serde(default)]
    upper: bool,
    /// Words in capitals are heavy too: allergens in a list.
    #[serde(default)]
    bold_capitals: bool,
    #[serde(default)]
    boxed: Boxed,
    /// Stands in one frame with the panel texts next to it.
    #[serde(default)]
    panel: bool,
    /// A small picture at its left.
    picture: Option<BesideText>,
    /// On the line of the text before it, at the right, where both fit.
    #[serde(default)]
    beside: bool,
}

#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct BesideText {
    name: PictureName,
    size: Mm,
}

#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(crate) struct Qr {
    x: Mm,
    y: Mm,
    size: Mm,
    /// How much of it may be lost and still be read.
    #[serde(default)]
    level: Level,
}

#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(crate) struct Rect {
    x: Mm,
    y: Mm,
    w: Mm,
    h: Mm,
}

#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(crate) struct Hole {
    x: Mm,
    y: Mm,
    size: Mm,
}

impl Item {
    pub fn build(self) -> Result<template::Item, Fault> {
        let code = |kind, area, level| template::Item::Code(CodePlace { kind, area, level });
        Ok(match self {
            Item::Stack(stack) => template::Item::Stack(stack.build()?),
            Item::Columns(columns) => template::Item::Columns(columns.build()?),
            Item::Table(table) => template::Item::Table(table.build()?),
            Item::Qr(Qr { x, y, size, level }) => {
                code(CodeKind::Qr, area(x, y, size, size)?, level)
            }
            Item::Code128(rect) => code(CodeKind::Code128, rect.build()?, Level::default()),
            Item::Ean13(rect) => code(CodeKind::Ean13, rect.build()?, Level::default()),
            Item::Rule(rect) => template::Item::Rule(rect.build()?),
            Item::Hole(Hole { x, y, size }) => template::Item::Hole(area(x, y, size, size)?),
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
            texts: texts(self.texts)?,
        })
    }
}

impl Columns {
    fn build(self) -> Result<template::Columns, Fault> {
        Ok(template::Columns {
            area: area(self.x, self.y, self.w, self.h)?,
            gap: self.between.length("between")?,
            left: texts(self.left)?,
            right: texts(self.right)?,
        })
    }
}

impl Table {
    fn build(self) -> Result<template::Table, Fault> {
        let column = |column: TableHead| {
            Ok(TableColumn {
                w: column.w.length("a column's w")?,
                head: TextStyle {
                    required: true,
                    max_lines: Some(1),
                    ..column.head.build()?
                },
            })
        };
        Ok(template::Table {
            area: area(self.x, self.y, self.w, self.h)?,
            rows: i64::from(self.rows),
            columns: self
                .columns
                .into_iter()
                .map(column)
                .collect::<Result<_, _>>()?,
        })
    }
}

fn texts(texts: Vec<Text>) -> Result<Vec<TextStyle>, Fault> {
    texts.into_iter().map(Text::build).collect()
}

impl Text {
    fn build(self) -> Result<TextStyle, Fault> {
        let picture = self
            .picture
            .map(|picture| Ok((picture.name, picture.size.length("picture size")?)));
        let leading = self.leading_mm.map(|mm| mm.length("leading_mm"));
        Ok(TextStyle {
            field: self.field,
            weight: self.weight,
            measure: self.measure,
            min: self.min_mm.length("min_mm")?,
            max: self.max_mm.length("max_mm")?,
            leading: leading.transpose()?,
            gap: self
                .gap_mm
                .map_or(Ok(Length::ZERO), |gap| gap.place("gap_mm"))?,
            max_lines: self.max_lines,
            required: self.required,
            may_drop: self.may_drop,
            upper: self.upper,
            bold_capitals: self.bold_capitals,
            boxed: self.boxed,
            panel: self.panel,
            picture: picture.transpose()?,
            beside: self.beside,
            close: false,
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

/// The items of a file, each where it stands in the text.
#[derive(Deserialize)]
struct Standing<'a> {
    #[serde(borrow)]
    items: Vec<&'a RawValue>,
}

/// The line of a fault: of the word that it names within its item, else of the item, else the first.
pub(crate) fn line_of(json: &str, item: Option<usize>, fault: &Fault) -> usize {
    let standing = serde_json::from_str::<Standing<'_>>(json).ok();
    let found = item.and_then(|nth| standing.as_ref()?.items.get(nth).map(|raw| raw.get()));
    let word = fault.word();
    let offset = match (found, word) {
        (Some(item), word) => {
            let start = item.as_ptr() as usize - json.as_ptr() as usize;
            start + word.and_then(|word| item.rfind(&word)).unwrap_or(0)
        }
        (None, Some(word)) => json.find(&word).unwrap_or(0),
        (None, None) => 0,
    };
    json[..offset].matches('\n').count() + 1
}
