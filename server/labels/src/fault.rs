//! What is wrong with a template, in words and by line.

use thiserror::Error;

use crate::facts::Field;
use crate::refusal::CodeKind;

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
    #[error("template \"{name}\", line {line}: {fault}")]
    Form {
        /// The template.
        name: String,
        /// Where in the file.
        line: usize,
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
    /// A text that the law wants beside the name is less than half as high.
    #[error("\"{0}\" must be at least half as high as \"name\" can get")]
    BelowHalfTheName(Field),
    /// The columns of a table are wider than the table.
    #[error("the columns of a table are wider than the table")]
    ColumnsTooWide,
    /// A table without rows or columns.
    #[error("a table needs at least one row and one column")]
    EmptyTable,
    /// A cut-out that does not lie in the place it is cut from.
    #[error("a notch does not lie within its stack, or leaves no room beside it")]
    Notch,
    /// A label for a roll that is never as long as its shortest, or has no texts that give way.
    #[error(
        "shortest_mm must be at most height_mm, and the label needs a stack of texts to be cut by"
    )]
    Roll,
    /// Two lots of the same kind of code.
    #[error("it has two codes of the same sort: {0}")]
    TwoCodes(CodeKind),
    /// The clear code must stand beside the codes (trade 5).
    #[error("it must have a required text \"lot\": a code needs its clear form beside it")]
    NoLot,
}

impl Fault {
    /// A word of the file where the fault is, if it names one.
    pub(crate) fn word(&self) -> Option<String> {
        match self {
            Fault::Length { what } => Some(format!("\"{}\"", what.rsplit(' ').next()?)),
            Fault::Printer(_) | Fault::NoPrinter => Some("\"dpi\"".to_owned()),
            Fault::Twice(field) | Fault::MinAboveMax(field) | Fault::BelowHalfTheName(field) => {
                Some(format!("\"{field}\""))
            }
            Fault::Notch => Some("\"notch\"".to_owned()),
            Fault::NoLot => Some("\"items\"".to_owned()),
            Fault::Roll => Some("\"shortest_mm\"".to_owned()),
            Fault::Outside(_)
            | Fault::Overlap(..)
            | Fault::ColumnsTooWide
            | Fault::EmptyTable
            | Fault::TwoCodes(_) => None,
        }
    }
}
