//! How the origin of beef is worded on a label.

use crate::rows::RowId;
use crate::says::Texts;
use std::collections::BTreeSet;

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
    /// Where minced beef stands.
    pub mince_row: RowId,
    /// `Prepared {}`, the country.
    pub mince_prepared: Texts,
    /// `Origin: {}`, countries that it was not prepared in.
    pub mince_origin: Texts,
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

/// The lines of a beef label (`canada-eu-uk-10.7`; of several slaughterhouses `confirmed-10.9`), each by its field;
/// nothing for one of which something is not known.
pub fn beef_lines(
    wording: &OriginWording,
    label: &BeefLabel,
    language: &str,
) -> Vec<(&'static str, Option<String>)> {
    let filled = |text: &Texts, parts: &[&str]| {
        let known = parts.iter().all(|part| !part.trim().is_empty());
        let text = text.in_language(language).to_owned();
        known.then(|| {
            parts
                .iter()
                .fold(text, |text, part| text.replacen("{}", part, 1))
        })
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
        (
            "reference",
            filled(&wording.beef_reference, &[label.reference]),
        ),
        ("born", filled(&wording.beef_born, &[label.born])),
        ("reared", filled(&wording.beef_reared, &[label.reared])),
        ("slaughtered", filled(slaughtered, &[country, &numbers])),
    ];
    for (country, number) in label.cut {
        lines.push(("cut", filled(&wording.beef_cutting, &[country, number])));
    }
    lines
}

/// What the label of minced beef says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MinceLabel<'a> {
    /// The reference number or code of the batch.
    pub reference: &'a str,
    /// The countries of slaughter; none where not known of every animal.
    pub slaughtered: Vec<&'a str>,
    /// The country that it was prepared in, where the kitchen has said where it is.
    pub prepared: Option<&'a str>,
    /// Every country that an animal of it was born, reared or slaughtered in, as far as it is known.
    pub involved: BTreeSet<&'a str>,
}

/// The lines of minced beef (`confirmed-10.13`): where it was slaughtered and prepared, and its origin where another
/// country had a part in it.
pub fn mince_lines(wording: &OriginWording, label: &MinceLabel, language: &str) -> Vec<String> {
    let filled = |text: &Texts, with: &str| {
        // No approval number is asked for.
        let text = text.in_language(language).replacen("{}", with, 1);
        text.replace("{}", "").trim_end().to_owned()
    };
    let mut lines = vec![filled(&wording.beef_reference, label.reference)];
    if !label.slaughtered.is_empty() {
        let all = label.slaughtered.join(", ");
        lines.push(filled(&wording.beef_slaughtered, &all));
    }
    let Some(prepared) = label.prepared else {
        return lines;
    };
    lines.push(filled(&wording.mince_prepared, prepared));
    let others = label.involved.iter().filter(|of| **of != prepared);
    let others: Vec<&str> = others.copied().collect();
    if !others.is_empty() {
        lines.push(filled(&wording.mince_origin, &others.join(", ")));
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    fn wording() -> OriginWording {
        let text = |text: &str| Texts::new([("en".to_owned(), text.to_owned())].into());
        OriginWording {
            beef_row: RowId::new("x-1"),
            beef_born: text(""),
            beef_reared: text(""),
            beef_slaughtered: text("Slaughtered in {} {}"),
            beef_cutting: text(""),
            beef_group: text(""),
            beef_reference: text("Reference number: {}"),
            mince_row: RowId::new("x-2"),
            mince_prepared: text("Prepared {}"),
            mince_origin: text("Origin: {}"),
        }
    }

    fn check(slaughtered: &[&str], prepared: Option<&str>, involved: &[&str], expected: &str) {
        let label = MinceLabel {
            reference: "A1",
            slaughtered: slaughtered.to_vec(),
            prepared,
            involved: involved.iter().copied().collect(),
        };
        let lines = mince_lines(&wording(), &label, "en");
        assert_eq!(lines.join(" | "), expected);
    }

    #[test]
    fn minced_beef_tells_its_origin_where_another_country_had_a_part() {
        check(&[], None, &[], "Reference number: A1");
        let all_here = "Reference number: A1 | Slaughtered in France | Prepared France";
        check(&["France"], Some("France"), &["France"], all_here);
        check(
            &["Ireland"],
            Some("France"),
            &["France", "Ireland"],
            "Reference number: A1 | Slaughtered in Ireland | Prepared France | Origin: Ireland",
        );
    }
}
