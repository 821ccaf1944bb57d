//! What is said of a label that cannot be made as its template wants it.

use crate::length::Length;
use crate::refusal::{CodeKind, Refusal};
use domain::messages;
use domain::says::{Arg, Says};

messages! {
    /// Why facts cannot be printed legibly and whole on a label. Lengths are in millimetres.
    LayoutSays in "layout" {
        Printer "printer" { template: String, dpi: u16 },
        Missing "missing" { field: String },
        NoPlace "no-place" { field: String },
        Character "character" { field: String, character: String, number: String },
        TooWide "too-wide" { field: String, text: String, needed: Arg, had: Arg },
        TooManyLines "too-many-lines" { field: String, text: String, needed: usize, had: usize },
        TooTall "too-tall" { field: String, text: String, needed: Arg, had: Arg },
        EmptyCode "empty-code" { code: CodeSays },
        CodeCharacter "code-character" { code: CodeSays, character: String, payload: String },
        CodeTooLong "code-too-long" { code: CodeSays, payload: String },
        NoCodePlace "no-code-place" { code: CodeSays },
        NotGs1 "not-gs1" { text: String, why: Says },
        NotTillDigits "not-till-digits" { digits: String },
        CodeTooLarge "code-too-large" { code: CodeSays, payload: String, needed: Arg, had: Arg },
    }
}

messages! {
    /// The codes of a label.
    CodeSays in "label-code" {
        Qr "qr",
        Code128 "code-128",
        Gs1128 "gs1-128",
        Ean13 "ean-13",
    }
}

impl From<CodeKind> for CodeSays {
    fn from(kind: CodeKind) -> CodeSays {
        match kind {
            CodeKind::Qr => CodeSays::Qr,
            CodeKind::Code128 => CodeSays::Code128,
            CodeKind::Gs1128 => CodeSays::Gs1128,
            CodeKind::Ean13 => CodeSays::Ean13,
        }
    }
}

impl From<&Refusal> for LayoutSays {
    fn from(refusal: &Refusal) -> LayoutSays {
        let name = |field: &crate::Field| field.as_str().to_owned();
        match refusal.clone() {
            Refusal::Printer { template, dpi } => LayoutSays::Printer { template, dpi },
            Refusal::Missing { field } => LayoutSays::Missing {
                field: name(&field),
            },
            Refusal::NoPlace { field } => LayoutSays::NoPlace {
                field: name(&field),
            },
            Refusal::Character { field, character } => LayoutSays::Character {
                field: name(&field),
                character: format!("{character:?}"),
                number: format!("U+{:04X}", character as u32),
            },
            Refusal::TooWide {
                field,
                text,
                needed,
                had,
            } => LayoutSays::TooWide {
                field: name(&field),
                text,
                needed: mm(needed),
                had: mm(had),
            },
            Refusal::TooManyLines {
                field,
                text,
                needed,
                had,
            } => LayoutSays::TooManyLines {
                field: name(&field),
                text,
                needed,
                had,
            },
            Refusal::TooTall {
                field,
                text,
                needed,
                had,
            } => LayoutSays::TooTall {
                field: name(&field),
                text,
                needed: mm(needed),
                had: mm(had),
            },
            Refusal::EmptyCode { code } => LayoutSays::EmptyCode { code: code.into() },
            Refusal::CodeCharacter {
                code,
                character,
                payload,
            } => LayoutSays::CodeCharacter {
                code: code.into(),
                character: format!("{character:?}"),
                payload,
            },
            Refusal::CodeTooLong { code, payload } => LayoutSays::CodeTooLong {
                code: code.into(),
                payload,
            },
            Refusal::NoCodePlace { code } => LayoutSays::NoCodePlace { code: code.into() },
            Refusal::NotGs1 { text, why } => LayoutSays::NotGs1 {
                text,
                why: why.into(),
            },
            Refusal::NotTillDigits { digits } => LayoutSays::NotTillDigits { digits },
            Refusal::CodeTooLarge {
                code,
                payload,
                needed,
                had,
            } => LayoutSays::CodeTooLarge {
                code: code.into(),
                payload,
                needed: mm(needed),
                had: mm(had),
            },
        }
    }
}

impl From<&Refusal> for Says {
    fn from(refusal: &Refusal) -> Says {
        LayoutSays::from(refusal).into()
    }
}

/// Millimetres, to a hundredth.
fn mm(length: Length) -> Arg {
    Arg::thousandths((length.um() + 5) / 10 * 10)
}
