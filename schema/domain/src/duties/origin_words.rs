//! How the origin of beef is worded on a label.

use super::says::OriginSays;
use crate::refusal::{Refusal, Result};
use crate::rows::RowId;
use crate::says::Texts;

/// Words by language, with `{}` for what is filled in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OriginWording {
    /// Where the beef label stands.
    pub beef_row: RowId,
    /// `Born in: {}`.
    pub beef_born: Texts,
    /// `Reared in: {}`.
    pub beef_reared: Texts,
    /// `Slaughtered in {} {}`, the country and the approval number.
    pub beef_slaughtered: Texts,
    /// `Cutting in: {} {}`.
    pub beef_cutting: Texts,
    /// Where several slaughterhouses share a batch: `Animals in the group slaughtered in {} {}`.
    pub beef_group: Texts,
    /// `Reference number: {}`.
    pub beef_reference: Texts,
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
    /// Country of slaughter, and the approval numbers of the slaughterhouses.
    pub slaughtered: (&'a str, &'a [&'a str]),
    /// Country of each cutting, and the plant's approval number.
    pub cut: &'a [(&'a str, &'a str)],
}

/// The lines of a beef label (`canada-eu-uk-10.7`; of several slaughterhouses `confirmed-10.9`).
///
/// # Errors
/// Anything of it that is not known.
pub fn beef_lines(
    wording: &OriginWording,
    label: &BeefLabel,
    language: &str,
) -> Result<Vec<String>> {
    let filled = |field: &str, text: &Texts, parts: &[&str]| {
        if parts.iter().any(|part| part.trim().is_empty()) {
            return Err(Refusal::cannot_be(field, OriginSays::BeefLacks));
        }
        let text = text.in_language(language).to_owned();
        Ok(parts
            .iter()
            .fold(text, |text, part| text.replacen("{}", part, 1)))
    };
    let (country, numbers) = label.slaughtered;
    let slaughtered = match numbers {
        [_, _, ..] => &wording.beef_group,
        _ => &wording.beef_slaughtered,
    };
    let blank = numbers.iter().any(|number| number.trim().is_empty());
    let numbers = match blank {
        true => String::new(),
        false => numbers.join(", "),
    };
    let mut lines = vec![
        filled("reference", &wording.beef_reference, &[label.reference])?,
        filled("born", &wording.beef_born, &[label.born])?,
        filled("reared", &wording.beef_reared, &[label.reared])?,
        filled("slaughtered", slaughtered, &[country, &numbers])?,
    ];
    for (country, number) in label.cut {
        lines.push(filled("cut", &wording.beef_cutting, &[country, number])?);
    }
    Ok(lines)
}
