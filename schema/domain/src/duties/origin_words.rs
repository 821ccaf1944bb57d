//! How the origin of beef is worded on a label.

use super::says::OriginSays;
use crate::refusal::{Refusal, Result};
use crate::rows::RowId;

/// Mandated words, with `{}` for what is filled in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OriginWording {
    /// Where the beef label stands.
    pub beef_row: RowId,
    /// `Born in: {}`.
    pub beef_born: String,
    /// `Reared in: {}`.
    pub beef_reared: String,
    /// `Slaughtered in {} {}`, the country and the approval number.
    pub beef_slaughtered: String,
    /// `Cutting in: {} {}`.
    pub beef_cutting: String,
    /// `Reference number: {}`.
    pub beef_reference: String,
}

/// What a beef label says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct BeefLabel<'a> {
    /// The reference number or code of the batch.
    pub reference: &'a str,
    /// Country of birth.
    pub born: &'a str,
    /// Country of rearing.
    pub reared: &'a str,
    /// Country of slaughter, and the slaughterhouse's approval number.
    pub slaughtered: (&'a str, &'a str),
    /// Country of each cutting, and the plant's approval number.
    pub cut: &'a [(&'a str, &'a str)],
}

/// The lines of a beef label (`canada-eu-uk-10.7`).
///
/// # Errors
/// Anything of it that is not known.
pub fn beef_lines(wording: &OriginWording, label: &BeefLabel) -> Result<Vec<String>> {
    let filled = |field: &str, text: &str, parts: &[&str]| {
        if parts.iter().any(|part| part.trim().is_empty()) {
            return Err(Refusal::cannot_be(field, OriginSays::BeefLacks));
        }
        Ok(parts
            .iter()
            .fold(text.to_owned(), |text, part| text.replacen("{}", part, 1)))
    };
    let mut lines = vec![
        filled("reference", &wording.beef_reference, &[label.reference])?,
        filled("born", &wording.beef_born, &[label.born])?,
        filled("reared", &wording.beef_reared, &[label.reared])?,
        filled(
            "slaughtered",
            &wording.beef_slaughtered,
            &[label.slaughtered.0, label.slaughtered.1],
        )?,
    ];
    for (country, number) in label.cut {
        lines.push(filled("cut", &wording.beef_cutting, &[country, number])?);
    }
    Ok(lines)
}
