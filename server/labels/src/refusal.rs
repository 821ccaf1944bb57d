//! Why a label was not made. Nothing is cut off instead.

use domain::gs1::NotWritten;
use domain::says::Says;
use std::fmt;

use crate::facts::Field;
use crate::length::Length;

/// One of the codes on a label.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CodeKind {
    /// The square code.
    Qr,
    /// The bar code.
    Code128,
    /// The bar code in GS1's form. It stands in the place of a [`CodeKind::Code128`].
    Gs1128,
    /// The bar code for a shop's till.
    Ean13,
}

/// As the faults of templates call it, for whoever writes them.
impl fmt::Display for CodeKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            CodeKind::Qr => "square code",
            CodeKind::Code128 => "bar code",
            CodeKind::Gs1128 => "GS1 bar code",
            CodeKind::Ean13 => "till code",
        })
    }
}

/// Why these facts cannot be printed legibly and whole on this label.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Refusal {
    /// The template is not for that printer.
    Printer {
        /// The template.
        template: String,
        /// The printer's dots per inch.
        dpi: u16,
    },
    /// A text that must be on the label is not in the facts.
    Missing {
        /// Which text.
        field: Field,
    },
    /// The facts hold a text that the template neither prints nor says it leaves out.
    NoPlace {
        /// Which text.
        field: Field,
    },
    /// The font cannot draw a character.
    Character {
        /// Which text.
        field: Field,
        /// The character.
        character: char,
    },
    /// One word is wider than its line, even at the smallest legible size.
    TooWide {
        /// Which text.
        field: Field,
        /// The words that are too wide.
        text: String,
        /// Width needed.
        needed: Length,
        /// Width of the line.
        had: Length,
    },
    /// A text needs more lines than it may have, even at the smallest legible size.
    TooManyLines {
        /// Which text.
        field: Field,
        /// The text.
        text: String,
        /// Lines needed.
        needed: usize,
        /// Lines there are.
        had: usize,
    },
    /// The texts together are taller than their place, even at the smallest legible size.
    TooTall {
        /// The text that takes most of the height.
        field: Field,
        /// That text.
        text: String,
        /// Height needed by all texts of that place.
        needed: Length,
        /// Height there is.
        had: Length,
    },
    /// A code has nothing to hold.
    EmptyCode {
        /// Which code.
        code: CodeKind,
    },
    /// A code cannot hold a character.
    CodeCharacter {
        /// Which code.
        code: CodeKind,
        /// The character.
        character: char,
        /// All it was to hold.
        payload: String,
    },
    /// More text than the code can ever hold.
    CodeTooLong {
        /// Which code.
        code: CodeKind,
        /// All it was to hold.
        payload: String,
    },
    /// The facts hold a code that the template has no place for.
    NoCodePlace {
        /// Which code.
        code: CodeKind,
    },
    /// A text that is no GS1 message which may be printed.
    NotGs1 {
        /// The text.
        text: String,
        /// What is wrong with it.
        why: NotWritten,
    },
    /// Not what a till reads.
    NotTillDigits {
        /// What there was.
        digits: String,
    },
    /// The code does not fit its place with bars thick enough to scan.
    CodeTooLarge {
        /// Which code.
        code: CodeKind,
        /// What it was to hold.
        payload: String,
        /// Width needed with the smallest scannable dots and its white border.
        needed: Length,
        /// Width there is.
        had: Length,
    },
}

/// As a message is written; whoever shows it to a person has it said in their language.
impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Says::from(self).fmt(f)
    }
}

impl std::error::Error for Refusal {}
