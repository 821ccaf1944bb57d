//! A label's form: sizes and places, read from JSON and checked before any label is made with it.

use std::collections::BTreeSet;
use std::sync::Arc;

use schemars::JsonSchema;
use serde::Deserialize;

use crate::check;
use crate::face::{Measure, Weight};
use crate::facts::Field;
use crate::fault::{Fault, TemplateError};
use crate::length::{Area, Dpi, Length};
use crate::picture::PictureName;
use crate::purpose::Purpose;
use crate::refusal::CodeKind;
use crate::wire;

/// A label's form.
#[derive(Debug, Clone)]
pub struct Template {
    name: Arc<str>,
    json: Arc<str>,
    purpose: Purpose,
    places: Vec<String>,
    width: Length,
    height: Length,
    /// For paper on a roll, how short it may be cut.
    shortest: Option<Length>,
    /// Is it taken by itself only where a printer says that it holds that paper?
    on_its_paper: bool,
    printers: Vec<Dpi>,
    omits: BTreeSet<Field>,
    pub(crate) items: Vec<Item>,
}

/// One place on a label.
#[derive(Debug, Clone)]
pub(crate) enum Item {
    Stack(Stack),
    Columns(Columns),
    Table(Table),
    Code(CodePlace),
    Rule(Area),
    Hole(Area),
}

/// Texts one under the other, with a piece cut out at the right edge for a code.
#[derive(Debug, Clone)]
pub(crate) struct Stack {
    pub area: Area,
    pub notch: Option<Area>,
    pub align: Align,
    pub texts: Vec<TextStyle>,
}

/// Two languages side by side.
#[derive(Debug, Clone)]
pub(crate) struct Columns {
    pub area: Area,
    pub gap: Length,
    pub left: Vec<TextStyle>,
    pub right: Vec<TextStyle>,
}

/// Rows to be filled in by hand.
#[derive(Debug, Clone)]
pub(crate) struct Table {
    pub area: Area,
    pub rows: i64,
    pub columns: Vec<TableColumn>,
}

/// One column of a table.
#[derive(Debug, Clone)]
pub(crate) struct TableColumn {
    pub w: Length,
    pub head: TextStyle,
}

/// Where a line stands in its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize, JsonSchema)]
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
    pub leading: Option<Length>,
    pub max_lines: Option<usize>,
    pub gap: Length,
    pub required: bool,
    pub may_drop: bool,
    pub upper: bool,
    pub bold_capitals: bool,
    pub boxed: Boxed,
    pub panel: bool,
    pub picture: Option<(PictureName, Length)>,
    pub beside: bool,
    /// Lines close together, as on a label that holds nothing else.
    pub close: bool,
}

/// How a template sets one text, for whoever checks heights.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Style {
    /// Which text.
    pub field: Field,
    /// Its weight.
    pub weight: Weight,
    /// Which letters the heights are of.
    pub measure: Measure,
    /// Its smallest height.
    pub min: Length,
    /// Its largest height.
    pub max: Length,
    /// The least distance from line to line, where the template says so.
    pub leading: Option<Length>,
}

impl Style {
    /// The lowest small letters and the lowest capitals that it may be set in.
    pub fn lowest(&self) -> (Length, Length) {
        let face = self.weight.face();
        face.letters(face.size_for(self.min, self.measure))
    }
}

/// Whether a text has a ruled frame round it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub(crate) enum Boxed {
    #[default]
    Never,
    Always,
    /// A closed box where it is raw, a line above and below where it is ready to eat.
    ByReadiness,
}

/// Where a code stands.
#[derive(Debug, Clone, Copy)]
pub(crate) struct CodePlace {
    pub kind: CodeKind,
    pub area: Area,
    pub level: Level,
}

/// How much of a QR code may be lost and still be read (standards 7: 7, 15, 25, 30 %).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize, JsonSchema)]
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
    ///
    /// # Errors
    /// With the line and the reason: not JSON, an unknown word, or a form that makes no good label.
    pub fn parse(name: &str, json: &str) -> Result<Template, TemplateError> {
        let read = serde_json::from_str::<wire::Template>(json);
        let wire = read.map_err(|cause| TemplateError::Json {
            name: name.into(),
            cause,
        })?;
        Template::build(name, json, wire).map_err(|At(item, fault)| TemplateError::Form {
            name: name.into(),
            line: wire::line_of(json, item, &fault),
            fault,
        })
    }

    /// The JSON Schema of a template's file.
    pub fn schema() -> schemars::Schema {
        schemars::schema_for!(wire::Template)
    }

    /// The template's name.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The file it was read from, word for word: kept with what was printed on it.
    pub fn json(&self) -> &str {
        &self.json
    }

    /// What it is for.
    pub fn purpose(&self) -> Purpose {
        self.purpose
    }

    /// Is it made for that place's law (`us`, `ca` …)? One that names no place serves all.
    pub fn serves(&self, place: &str) -> bool {
        self.places.is_empty() || self.places.iter().any(|known| known == place)
    }

    /// Its area in whole square millimetres, at its longest.
    pub fn area_mm2(&self) -> i64 {
        self.width.um() * self.height.um() / 1_000_000
    }

    /// Its size in words: `62 × 100 mm`, on a roll `62 × 40 to 240 mm`.
    pub fn size(&self) -> String {
        let mm = |length: Length| {
            let text = format!("{:.1}", length.to_mm());
            text.trim_end_matches(".0").to_owned()
        };
        let shortest = self
            .shortest
            .map(|shortest| format!("{} to ", mm(shortest)));
        let shortest = shortest.unwrap_or_default();
        format!("{} × {shortest}{} mm", mm(self.width), mm(self.height))
    }

    /// Label width.
    pub fn width(&self) -> Length {
        self.width
    }

    /// Label height; of one for a roll, its longest.
    pub fn height(&self) -> Length {
        self.height
    }

    /// Is it for paper on a roll, cut as short as its words need: the shortest that it may be.
    pub fn shortest(&self) -> Option<Length> {
        self.shortest
    }

    /// Is it taken by itself only where a printer says that it holds that paper?
    pub fn on_its_paper(&self) -> bool {
        self.on_its_paper
    }

    /// The same with other items, as tall as that, and perhaps cut shorter.
    pub(crate) fn with(
        &self,
        items: Vec<Item>,
        height: Length,
        shortest: Option<Length>,
    ) -> Template {
        Template {
            name: Arc::clone(&self.name),
            json: Arc::clone(&self.json),
            places: self.places.clone(),
            printers: self.printers.clone(),
            omits: self.omits.clone(),
            items,
            height,
            shortest,
            ..*self
        }
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

    /// Has it a place for one of these texts, which it never drops?
    pub fn holds(&self, any: &[Field]) -> bool {
        self.styles()
            .any(|style| any.contains(&style.field) && !style.may_drop)
    }

    /// Whether it leaves a text out knowingly.
    pub fn omits(&self, field: Field) -> bool {
        self.omits.contains(&field)
    }

    pub(crate) fn has_printer(&self) -> bool {
        !self.printers.is_empty()
    }

    pub(crate) fn omitted(&self) -> &BTreeSet<Field> {
        &self.omits
    }

    /// Whether a text may go before the label is refused.
    pub fn may_drop(&self, field: Field) -> bool {
        self.styles()
            .any(|style| style.field == field && style.may_drop)
    }

    /// How each text is set.
    pub fn text_styles(&self) -> impl Iterator<Item = Style> {
        self.styles().map(|style| Style {
            field: style.field,
            weight: style.weight,
            measure: style.measure,
            min: style.min,
            max: style.max,
            leading: style.leading,
        })
    }

    /// The places for codes that it has.
    pub fn codes(&self) -> impl Iterator<Item = CodeKind> {
        self.items.iter().filter_map(|item| match item {
            Item::Code(place) => Some(place.kind),
            _ => None,
        })
    }

    pub(crate) fn code_place(&self, kind: CodeKind) -> Option<&CodePlace> {
        self.items.iter().find_map(|item| match item {
            Item::Code(place) if place.kind == kind => Some(place),
            _ => None,
        })
    }

    pub(crate) fn styles(&self) -> impl Iterator<Item = &TextStyle> {
        self.items.iter().flat_map(Item::styles)
    }

    fn build(name: &str, json: &str, wire: wire::Template) -> Result<Template, At> {
        let printers = wire
            .dpi
            .iter()
            .map(|n| Dpi::from_number(*n).ok_or(Fault::Printer(*n)));
        let items = wire.items.into_iter().enumerate();
        let template = Template {
            name: name.into(),
            json: json.into(),
            purpose: wire.purpose,
            places: wire.places,
            width: wire.width_mm.length("width_mm")?,
            height: wire.height_mm.length("height_mm")?,
            shortest: wire
                .shortest_mm
                .map(|mm| mm.length("shortest_mm"))
                .transpose()?,
            on_its_paper: wire.on_its_paper,
            printers: printers.collect::<Result<_, _>>()?,
            omits: wire.omits.iter().copied().collect(),
            items: items
                .map(|(nth, item)| item.build().map_err(|fault| At(Some(nth), fault)))
                .collect::<Result<_, _>>()?,
        };
        check::form(&template)?;
        Ok(template)
    }
}

/// A fault, and the item where it is.
#[derive(Debug)]
pub(crate) struct At(pub Option<usize>, pub Fault);

impl From<Fault> for At {
    fn from(fault: Fault) -> At {
        At(None, fault)
    }
}

impl Item {
    /// The texts that stand there.
    pub fn styles(&self) -> Box<dyn Iterator<Item = &TextStyle> + '_> {
        match self {
            Item::Stack(stack) => Box::new(stack.texts.iter()),
            Item::Columns(columns) => Box::new(columns.left.iter().chain(&columns.right)),
            Item::Table(table) => Box::new(table.columns.iter().map(|column| &column.head)),
            Item::Code(_) | Item::Rule(_) | Item::Hole(_) => Box::new(std::iter::empty()),
        }
    }
}
