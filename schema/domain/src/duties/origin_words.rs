//! How the origin of meat is worded on a label.

use super::says::OriginSays;
use crate::refusal::{Refusal, Result};
use crate::rows::RowId;

/// Mandated words, with `{}` for what is filled in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OriginWording {
    /// Where "reared in" and "slaughtered in" stand.
    pub row: RowId,
    /// `Reared in: {}`.
    pub reared: String,
    /// `Slaughtered in: {}`.
    pub slaughtered: String,
    /// Where the single word stands.
    pub single_row: RowId,
    /// `Origin: {}`.
    pub single: String,
    /// Where the words for several countries stand.
    pub several_row: RowId,
    /// Several countries inside.
    pub several_inside: String,
    /// Several countries outside.
    pub several_outside: String,
    /// Where the beef label stands.
    pub beef_row: RowId,
    /// `Born in: {}`.
    pub beef_born: String,
    /// `Reared in: {}`.
    pub beef_reared: String,
    /// `Slaughtered in: {} {}`, the country and the approval number.
    pub beef_slaughtered: String,
    /// `Cutting in: {} {}`.
    pub beef_cutting: String,
    /// `Reference number: {}`.
    pub beef_reference: String,
}

/// A country.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Country<'a> {
    /// Its name as printed.
    pub name: &'a str,
    /// Is it a member of the European Union?
    pub inside: bool,
}

/// The lines for pork, mutton, goat and poultry (`canada-eu-uk-10.1`, `10.2`, `10.4`), without the
/// batch code. `proven` means that papers show birth, rearing and slaughter in one country.
///
/// # Errors
/// A country that is not known.
pub fn meat_lines(
    wording: &OriginWording,
    born: Option<Country>,
    reared: &[Country],
    slaughtered: Country,
    proven: bool,
) -> Result<Vec<String>> {
    let known = |field: &str, country: &Country| match country.name.trim().is_empty() {
        true => Err(Refusal::cannot_be(field, OriginSays::NoCountry)),
        false => Ok(()),
    };
    known("slaughtered", &slaughtered)?;
    let first = reared
        .first()
        .ok_or_else(|| Refusal::cannot_be("reared", OriginSays::NoRearing))?;
    for country in reared {
        known("reared", country)?;
    }
    let one = reared.iter().all(|country| country.name == first.name);
    if proven && one && born == Some(*first) && *first == slaughtered {
        return Ok(vec![wording.single.replace("{}", first.name)]);
    }
    let where_reared = match one {
        true => first.name.to_owned(),
        false if reared.iter().all(|country| country.inside) => wording.several_inside.clone(),
        false if reared.iter().all(|country| !country.inside) => wording.several_outside.clone(),
        false => {
            let mut names: Vec<&str> = Vec::new();
            for country in reared {
                if !names.contains(&country.name) {
                    names.push(country.name);
                }
            }
            names.join(", ")
        }
    };
    Ok(vec![
        wording.reared.replace("{}", &where_reared),
        wording.slaughtered.replace("{}", slaughtered.name),
    ])
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
