//! A label's form: sizes and places, read from JSON and checked before any label is made with it.

use std::collections::BTreeSet;

use serde::Deserialize;
use thiserror::Error;

use crate::face::{Measure, Weight};
use crate::facts::Field;
use crate::length::{Area, Dpi, Length};
use crate::refusal::CodeKind;
use crate::wire;

/// Why a template cannot be used.
#[derive(Debug, Error)]
pub enum TemplateError {
    /// Not the JSON of a template.
    #[error("template \"{name}\" cannot be read: {cause}")]
    Json {
        /// The template.
        name: String,
        /// Where and what.
        cause: serde_json::Error,
    },
    /// Readable, but it would not make a good label.
    #[error("template \"{name}\": {fault}")]
    Form {
        /// The template.
        name: String,
        /// What is wrong.
        fault: Fault,
    },
}

/// What is wrong with a template.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum Fault {
    /// A length is not a sensible number of millimetres.
    #[error("{what} must be more than 0 and at most 300 mm")]
    Length {
        /// Which length.
        what: &'static str,
    },
    /// A printer that we do not know.
    #[error("{0} dpi is not known: 203 or 300")]
    Printer(u16),
    /// No printer at all.
    #[error("it names no printer: \"dpi\": [203, 300]")]
    NoPrinter,
    /// A place reaches over the edge.
    #[error("{0} reaches over the edge of the label")]
    Outside(String),
    /// Two places share paper.
    #[error("{0} and {1} lie over each other")]
    Overlap(String, String),
    /// A field stands twice, or is both printed and left out.
    #[error("\"{0}\" stands in it twice")]
    Twice(Field),
    /// The smallest height is above the largest.
    #[error("\"{0}\" has a min_mm above its max_mm")]
    MinAboveMax(Field),
    /// A cut-out that does not lie in the place it is cut from.
    #[error("a notch does not lie within its stack, or leaves no room beside it")]
    Notch,
    /// Two lots of the same kind of code.
    #[error("it has two codes of the same sort: {0}")]
    TwoCodes(CodeKind),
    /// The clear code must stand beside the codes (trade 5).
    #[error("it must have a required text \"lot\": a code needs its clear form beside it")]
    NoLot,
}

/// A label's form.
#[derive(Debug, Clone)]
pub struct Template {
    name: String,
    json: String,
    width: Length,
    height: Length,
    printers: Vec<Dpi>,
    omits: BTreeSet<Field>,
    pub(crate) items: Vec<Item>,
}

/// One place on a label.
#[derive(Debug, Clone)]
pub(crate) enum Item {
    Stack(Stack),
    Code(CodePlace),
    Rule(Area),
}

/// Texts one under the other, with a piece cut out at the right edge for a code.
#[derive(Debug, Clone)]
pub(crate) struct Stack {
    pub area: Area,
    pub notch: Option<Area>,
    pub align: Align,
    pub texts: Vec<TextStyle>,
}

/// Where a line stands in its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub(crate) enum Align {
    #[default]
    Left,
    Centre,
    Right,
}

/// How a text is set.
#[derive(Debug, Clone)]
pub(crate) struct TextStyle {
    pub field: Field,
    pub weight: Weight,
    pub measure: Measure,
    pub min: Length,
    pub max: Length,
    pub max_lines: Option<usize>,
    pub gap: Length,
    pub required: bool,
    pub upper: bool,
    pub boxed: Boxed,
    pub beside: bool,
}

/// Whether a text has a ruled box round it.
#[derive(Debug, Clone, PartialEq, Eq, Default, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub(crate) enum Boxed {
    #[default]
    Never,
    Always,
    /// Only when the text begins with one of these words, in any case: RAW has a box, COOKED none.
    When(Vec<String>),
}

impl Boxed {
    pub fn holds(&self, text: &str) -> bool {
        let first = || {
            text.split(|c: char| !c.is_alphanumeric())
                .find(|word| !word.is_empty())
        };
        match self {
            Boxed::Never => false,
            Boxed::Always => true,
            Boxed::When(words) => first().is_some_and(|first| {
                words
                    .iter()
                    .any(|word| word.to_lowercase() == first.to_lowercase())
            }),
        }
    }
}

/// Where a code stands.
#[derive(Debug, Clone, Copy)]
pub(crate) struct CodePlace {
    pub kind: CodeKind,
    pub area: Area,
    pub level: Level,
}

/// How much of a QR code may be lost and still be read (standards 7: 7, 15, 25, 30 %).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub(crate) enum Level {
    L,
    #[default]
    M,
    Q,
    H,
}

impl Template {
    /// Reads and checks a template. The name is the caller's, such as the file's.
    pub fn parse(name: &str, json: &str) -> Result<Template, TemplateError> {
        let read = serde_json::from_str::<wire::Template>(json);
        let wire = read.map_err(|cause| TemplateError::Json {
            name: name.into(),
            cause,
        })?;
        Template::build(name, json, wire).map_err(|fault| TemplateError::Form {
            name: name.into(),
            fault,
        })
    }

    /// The template's name.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The file it was read from, word for word: kept with what was printed on it.
    pub fn json(&self) -> &str {
        &self.json
    }

    /// Label width.
    pub fn width(&self) -> Length {
        self.width
    }

    /// Label height.
    pub fn height(&self) -> Length {
        self.height
    }

    /// Whether it is made for that printer.
    pub fn suits(&self, dpi: Dpi) -> bool {
        self.printers.contains(&dpi)
    }

    /// The texts it prints when the facts hold them.
    pub fn fields(&self) -> impl Iterator<Item = Field> {
        self.styles().map(|style| style.field)
    }

    /// The texts it cannot do without.
    pub fn required(&self) -> impl Iterator<Item = Field> {
        self.styles()
            .filter(|style| style.required)
            .map(|style| style.field)
    }

    /// Whether it leaves a text out knowingly.
    pub fn omits(&self, field: Field) -> bool {
        self.omits.contains(&field)
    }

    fn styles(&self) -> impl Iterator<Item = &TextStyle> {
        self.items.iter().flat_map(|item| match item {
            Item::Stack(stack) => stack.texts.as_slice(),
            Item::Code(_) | Item::Rule(_) => &[],
        })
    }

    fn build(name: &str, json: &str, wire: wire::Template) -> Result<Template, Fault> {
        let printers = wire
            .dpi
            .iter()
            .map(|n| Dpi::from_number(*n).ok_or(Fault::Printer(*n)));
        let template = Template {
            name: name.to_owned(),
            json: json.to_owned(),
            width: wire.width_mm.length("width_mm")?,
            height: wire.height_mm.length("height_mm")?,
            printers: printers.collect::<Result<_, _>>()?,
            omits: wire.omits.iter().copied().collect(),
            items: wire
                .items
                .into_iter()
                .map(wire::Item::build)
                .collect::<Result<_, _>>()?,
        };
        template.check()?;
        Ok(template)
    }

    fn check(&self) -> Result<(), Fault> {
        if self.printers.is_empty() {
            return Err(Fault::NoPrinter);
        }
        let mut seen = self.omits.clone();
        for style in self.styles() {
            if !seen.insert(style.field) {
                return Err(Fault::Twice(style.field));
            }
            if style.min > style.max {
                return Err(Fault::MinAboveMax(style.field));
            }
        }
        if !self.required().any(|field| field == Field::Lot) {
            return Err(Fault::NoLot);
        }
        self.check_codes()?;
        self.check_places()
    }

    fn check_codes(&self) -> Result<(), Fault> {
        for kind in [CodeKind::Qr, CodeKind::Code128, CodeKind::Ean13] {
            let same = |item: &&Item| matches!(item, Item::Code(place) if place.kind == kind);
            if self.items.iter().filter(same).count() > 1 {
                return Err(Fault::TwoCodes(kind));
            }
        }
        Ok(())
    }

    fn check_places(&self) -> Result<(), Fault> {
        let page = Area {
            x: Length::ZERO,
            y: Length::ZERO,
            w: self.width,
            h: self.height,
        };
        for (i, item) in self.items.iter().enumerate() {
            let places = item.places()?;
            if !places.iter().all(|place| page.holds(place)) {
                return Err(Fault::Outside(item.title()));
            }
            for other in &self.items[..i] {
                let others = other.places()?;
                if places.iter().any(|a| others.iter().any(|b| a.overlaps(b))) {
                    return Err(Fault::Overlap(other.title(), item.title()));
                }
            }
        }
        Ok(())
    }
}

impl Item {
    /// The paper it takes: a stack with a notch is three boxes.
    fn places(&self) -> Result<Vec<Area>, Fault> {
        match self {
            Item::Code(place) => Ok(vec![place.area]),
            Item::Rule(area) => Ok(vec![*area]),
            Item::Stack(Stack {
                area, notch: None, ..
            }) => Ok(vec![*area]),
            Item::Stack(Stack {
                area,
                notch: Some(notch),
                ..
            }) => {
                if !area.holds(notch) || notch.w == area.w {
                    return Err(Fault::Notch);
                }
                let above = Area {
                    h: notch.y - area.y,
                    ..*area
                };
                let left = Area {
                    y: notch.y,
                    w: area.w - notch.w,
                    h: notch.h,
                    ..*area
                };
                let below = Area {
                    y: notch.bottom(),
                    h: area.bottom() - notch.bottom(),
                    ..*area
                };
                let taken = [above, left, below].into_iter();
                Ok(taken.filter(|place| place.h > Length::ZERO).collect())
            }
        }
    }

    fn title(&self) -> String {
        match self {
            Item::Code(place) => format!("the {}", place.kind),
            Item::Rule(_) => "a rule".to_owned(),
            Item::Stack(stack) => {
                let fields = stack.texts.iter().map(|style| style.field.as_str());
                format!("the stack of {}", fields.collect::<Vec<_>>().join(", "))
            }
        }
    }
}
