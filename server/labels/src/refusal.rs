//! Why a label was not made, in plain words. Nothing is cut off instead.

use domain::gs1::NotWritten;
use thiserror::Error;

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

impl std::fmt::Display for CodeKind {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            CodeKind::Qr => "square code",
            CodeKind::Code128 => "bar code",
            CodeKind::Gs1128 => "GS1 bar code",
            CodeKind::Ean13 => "till code",
        })
    }
}

/// Why these facts cannot be printed legibly and whole on this label.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum Refusal {
    /// The template is not for that printer.
    #[error("the label \"{template}\" is not made for a {dpi} dpi printer")]
    Printer {
        /// The template.
        template: String,
        /// The printer's dots per inch.
        dpi: u16,
    },
    /// A text that must be on the label is not in the facts.
    #[error("the label needs a text for \"{field}\" and there is none")]
    Missing {
        /// Which text.
        field: Field,
    },
    /// The facts hold a text that the template neither prints nor says it leaves out.
    #[error("this label has no place for \"{field}\": use a larger one")]
    NoPlace {
        /// Which text.
        field: Field,
    },
    /// The font cannot draw a character.
    #[error("\"{field}\" holds the character {character:?} (U+{:04X}), which the label font cannot print", *character as u32)]
    Character {
        /// Which text.
        field: Field,
        /// The character.
        character: char,
    },
    /// One word is wider than its line, even at the smallest legible size.
    #[error(
        "\"{field}\" does not fit: \"{text}\" is {needed} wide at the smallest legible size, there are {had}"
    )]
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
    #[error(
        "\"{field}\" does not fit: \"{text}\" needs {needed} lines at the smallest legible size, there are {had}"
    )]
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
    #[error(
        "the texts do not fit: they need {needed} of height at the smallest legible size, there are {had}; the tallest is \"{field}\": \"{text}\""
    )]
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
    #[error("there is nothing to put in the {code}")]
    EmptyCode {
        /// Which code.
        code: CodeKind,
    },
    /// A code cannot hold a character.
    #[error("the {code} cannot hold the character {character:?} in \"{payload}\"")]
    CodeCharacter {
        /// Which code.
        code: CodeKind,
        /// The character.
        character: char,
        /// All it was to hold.
        payload: String,
    },
    /// More text than the code can ever hold.
    #[error("\"{payload}\" is too long for a {code}")]
    CodeTooLong {
        /// Which code.
        code: CodeKind,
        /// All it was to hold.
        payload: String,
    },
    /// The facts hold a code that the template has no place for.
    #[error("this label has no place for the {code}: use a larger one")]
    NoCodePlace {
        /// Which code.
        code: CodeKind,
    },
    /// A text that is no GS1 message which may be printed.
    #[error("\"{text}\" cannot be printed as a GS1 code: {why}")]
    NotGs1 {
        /// The text.
        text: String,
        /// What is wrong with it.
        why: NotWritten,
    },
    /// Not what a till reads.
    #[error("\"{digits}\" is no till code: it must be 13 digits, the last of them right")]
    NotTillDigits {
        /// What there was.
        digits: String,
    },
    /// The code does not fit its place with bars thick enough to scan.
    #[error(
        "the {code} for \"{payload}\" does not fit: it needs {needed} to stay scannable, there are {had}"
    )]
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
