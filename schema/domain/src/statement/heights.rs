//! How high letters must be: the small letters' own height, by what they say and by the panel.

use super::says::StatementSays;
use super::{StatementRules, UpTo};
use crate::rows::{Bound, Finding, RowId, Rows};
use rust_decimal::Decimal;

/// What the letters say.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
#[expect(missing_docs, reason = "the word says it")]
pub enum Lettering {
    /// Anything that the law asks for.
    Label,
    IngredientList,
    /// The list beside a large nutrition table.
    IngredientListByTable,
    NetQuantity,
    /// `Previously frozen` away from the name.
    Thawed,
    SafeHandling,
}

impl Lettering {
    /// Every one, with its spelling.
    pub const ALL: [(Lettering, &'static str); 6] = [
        (Lettering::Label, "label"),
        (Lettering::IngredientList, "ingredient-list"),
        (Lettering::IngredientListByTable, "ingredient-list-by-table"),
        (Lettering::NetQuantity, "net-quantity"),
        (Lettering::Thawed, "thawed"),
        (Lettering::SafeHandling, "safe-handling"),
    ];

    /// As it is spelt everywhere.
    pub fn as_str(self) -> &'static str {
        let spelt = Lettering::ALL.iter().find(|(what, _)| *what == self);
        spelt.map_or("", |(_, text)| text)
    }

    /// The one so spelt.
    pub fn parse(text: &str) -> Option<Lettering> {
        let found = Lettering::ALL.iter().find(|(_, spelt)| *spelt == text);
        found.map(|(what, _)| *what)
    }
}

/// The unit that a place measures in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HeightUnit {
    /// Millimetres and square centimetres.
    Metric,
    /// Inches and square inches.
    Inches,
}

impl HeightUnit {
    /// One inch is 25.4 mm, exactly.
    fn millimetres(self, length: Decimal) -> Decimal {
        match self {
            HeightUnit::Metric => length,
            HeightUnit::Inches => length * Decimal::new(254, 1),
        }
    }

    fn area(self, square_centimetres: Decimal) -> Decimal {
        match self {
            HeightUnit::Metric => square_centimetres,
            HeightUnit::Inches => square_centimetres / Decimal::new(64516, 4),
        }
    }
}

/// One step of a table of heights.
#[derive(Debug, Clone, PartialEq)]
pub struct HeightStep {
    /// What the letters say.
    pub what: Lettering,
    /// The unit of both numbers.
    pub unit: HeightUnit,
    /// Up to this panel area; none for any larger one. Steps stand from the smallest up.
    pub panel: Option<UpTo>,
    /// The height.
    pub height: Bound,
    /// From line to line, where the place says so.
    pub leading: Option<Bound>,
}

/// A height with its row.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Height {
    /// The least height of a small letter such as `x` or `o`, in millimetres.
    pub millimetres: Decimal,
    /// The least distance from line to line, in millimetres.
    pub leading: Option<Decimal>,
    /// Where it comes from.
    pub row: RowId,
}

/// How high letters must be on a panel of so many square centimetres; `None` where the place has no rule.
pub fn letter_height(
    rules: &StatementRules,
    what: Lettering,
    panel_cm2: Decimal,
) -> Option<Height> {
    let step = rules.heights.iter().find(|step| {
        let area = step.unit.area(panel_cm2);
        step.what == what && step.panel.as_ref().is_none_or(|panel| panel.passes(area))
    })?;
    let leading = step.leading.as_ref();
    Some(Height {
        millimetres: step.unit.millimetres(step.height.value).normalize(),
        leading: leading.map(|leading| step.unit.millimetres(leading.value).normalize()),
        row: step.height.row.clone(),
    })
}

/// Letters that are too small.
pub fn check_height(
    rules: &StatementRules,
    rows: &Rows,
    what: Lettering,
    panel_cm2: Decimal,
    printed_mm: Decimal,
) -> Option<Finding> {
    let least = letter_height(rules, what, panel_cm2)?;
    (printed_mm < least.millimetres).then(|| {
        let says = StatementSays::LettersLow {
            what: what.into(),
            printed: printed_mm,
            least: least.millimetres,
        };
        Finding::against(rows, &least.row, says)
    })
}
