//! Reading GS1 element strings, as printed on cartons and sent by scanners (`standards` 1.1).

use chrono::{Datelike, NaiveDate};

use super::GS;
use super::form::form_of;
use super::says::NotAnElement;

/// The elements of one string, in order: application identifier and value.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Elements(pub(super) Vec<(String, String)>);

/// Reads a bracketed `(01)…(10)…` or raw string, with or without a symbology identifier.
///
/// Each value is looked at by itself, and an element that is said twice must say the same: what is
/// read is true to the carton. Which elements GS1 wants side by side is the carton's own affair.
///
/// # Errors
/// What is wrong with the string.
pub fn read(text: &str) -> Result<Elements, NotAnElement> {
    let text = text.trim_matches([' ', '\r', '\n', '\t']);
    let text = strip_symbology(text);
    let elements = if text.starts_with('(') {
        bracketed(text)?
    } else {
        raw(text)?
    };
    if elements.is_empty() {
        return Err(NotAnElement::Nothing);
    }
    Elements::checked(elements)
}

/// Drops a scanner's symbology identifier: `]C1`, `]Q3`, `]d2`.
pub fn strip_symbology(text: &str) -> &str {
    match text.strip_prefix(']') {
        Some(rest) => rest.get(2..).unwrap_or(""),
        None => text,
    }
}

impl Elements {
    /// Elements of which each value has its form and none contradicts another.
    ///
    /// # Errors
    /// What is wrong with them.
    pub(super) fn checked(elements: Vec<(String, String)>) -> Result<Elements, NotAnElement> {
        for (nth, (ai, value)) in elements.iter().enumerate() {
            let form = form_of(ai).filter(|form| form.identifier == ai.len());
            let form = form.ok_or_else(|| NotAnElement::Unknown { ai: ai.clone() })?;
            form.check(ai, value)?;
            if let Some((other, _)) = elements[..nth]
                .iter()
                .find(|(other, said)| same_matter(ai, other) && (other, said) != (ai, value))
            {
                let (ai, other) = (ai.clone(), other.clone());
                return Err(match ai == other {
                    true => NotAnElement::TwoThings { ai },
                    false => NotAnElement::Twice { other, ai },
                });
            }
        }
        Ok(Elements(elements))
    }

    /// Every element in order.
    pub fn iter(&self) -> impl Iterator<Item = (&str, &str)> {
        self.0
            .iter()
            .map(|(ai, value)| (ai.as_str(), value.as_str()))
    }

    /// With the identifiers in brackets, as people read it.
    pub fn bracketed(&self) -> String {
        self.iter()
            .map(|(ai, value)| format!("({ai}){value}"))
            .collect()
    }

    /// As a scanner sends it: a separator after each element that needs one, none at the end.
    pub fn raw(&self) -> String {
        let mut raw = String::new();
        for (nth, (ai, value)) in self.iter().enumerate() {
            raw.push_str(ai);
            raw.push_str(value);
            let open = form_of(ai).is_none_or(|form| !form.predefined);
            if open && nth + 1 < self.0.len() {
                raw.push(GS);
            }
        }
        raw
    }

    /// The value of an application identifier.
    pub fn value(&self, ai: &str) -> Option<&str> {
        self.0
            .iter()
            .find(|(known, _)| known == ai)
            .map(|(_, value)| value.as_str())
    }

    /// The GTIN, 14 digits.
    pub fn gtin(&self) -> Option<&str> {
        self.value("01").or_else(|| self.value("02"))
    }

    /// The batch or lot.
    pub fn lot(&self) -> Option<&str> {
        self.value("10")
    }

    /// The day it was packed, else made.
    pub fn packed_on(&self, today: NaiveDate) -> Option<NaiveDate> {
        date(self.value("13").or_else(|| self.value("11"))?, today)
    }

    /// The last day: use by, else best before.
    pub fn use_by(&self, today: NaiveDate) -> Option<NaiveDate> {
        date(self.value("17").or_else(|| self.value("15"))?, today)
    }

    /// The net weight in milligrams: kilograms (310n), or pounds (320n) of 453.59237 g exactly.
    pub fn net_milligrams(&self) -> Option<i64> {
        let (ai, value) = self
            .0
            .iter()
            .find(|(ai, _)| ai.starts_with("310") || ai.starts_with("320"))?;
        let decimals = ai.chars().last()?.to_digit(10)?;
        let units = value.parse::<i128>().ok()?;
        let micrograms_per_unit: i128 = if ai.starts_with("310") {
            1_000_000_000
        } else {
            453_592_370
        };
        i64::try_from(units * micrograms_per_unit / 10_i128.pow(decimals) / 1_000).ok()
    }
}

/// Measures differ in the last digit of their identifier: the number of decimals.
fn same_matter(one: &str, other: &str) -> bool {
    let is_measure = one.len() == 4 && one.starts_with('3');
    one == other || (is_measure && other.get(..3) == one.get(..3))
}

fn bracketed(text: &str) -> Result<Vec<(String, String)>, NotAnElement> {
    let mut elements = Vec::new();
    let mut rest = text;
    while let Some(open) = rest.strip_prefix('(') {
        let (ai, after) = open.split_once(')').ok_or(NotAnElement::OpenBracket)?;
        let end = next_bracket(after).unwrap_or(after.len());
        let (value, next) = after.split_at(end);
        elements.push((ai.to_owned(), value.trim_end_matches(GS).to_owned()));
        rest = next;
    }
    Ok(elements)
}

/// Where the next element begins: a bracket may also be part of a value.
fn next_bracket(text: &str) -> Option<usize> {
    text.match_indices('(').map(|(at, _)| at).find(|at| {
        let inside = text[at + 1..].split_once(')').map(|(inside, _)| inside);
        inside.is_none_or(|ai| matches!(ai.len(), 2..=4) && ai.bytes().all(|b| b.is_ascii_digit()))
    })
}

fn raw(text: &str) -> Result<Vec<(String, String)>, NotAnElement> {
    let mut elements = Vec::new();
    let mut rest = text.trim_start_matches(GS);
    while !rest.is_empty() {
        let form = form_of(rest).ok_or_else(|| NotAnElement::UnknownAt {
            text: rest.escape_debug().to_string(),
        })?;
        let (ai, after) = rest
            .split_at_checked(form.identifier)
            .ok_or(NotAnElement::EndsEarly)?;
        let end = if form.predefined {
            form.longest
        } else {
            after.find(GS).unwrap_or(after.len())
        };
        let (value, after) = after
            .split_at_checked(end)
            .ok_or_else(|| NotAnElement::CutOff { ai: ai.to_owned() })?;
        elements.push((ai.to_owned(), value.to_owned()));
        rest = after.trim_start_matches(GS);
    }
    Ok(elements)
}

/// YYMMDD; day 00 is the month's last day; the century by the 50-year rule (`standards` 1.1).
fn date(text: &str, today: NaiveDate) -> Option<NaiveDate> {
    let part = |from: usize| text.get(from..from + 2)?.parse::<u32>().ok();
    let (yy, month, day) = (part(0)? as i32, part(2)?, part(4)?);
    let century = today.year() - today.year().rem_euclid(100);
    let year = match yy - today.year().rem_euclid(100) {
        51..=99 => century - 100 + yy,
        -99..=-50 => century + 100 + yy,
        _ => century + yy,
    };
    match day {
        0 => {
            let (year, month) = if month == 12 {
                (year + 1, 1)
            } else {
                (year, month + 1)
            };
            NaiveDate::from_ymd_opt(year, month, 1)?.pred_opt()
        }
        day => NaiveDate::from_ymd_opt(year, month, day),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn today() -> NaiveDate {
        "2026-06-16".parse().unwrap()
    }

    #[test]
    fn bracketed_and_raw_say_the_same() {
        // standards 1.1 and 8: the separator after a lot in the middle.
        let bracketed = read("(01)99521234543216(3103)001250(10)26P0718-BEL7(17)260727").unwrap();
        let raw = read("]C1019952123454321631030012501026P0718-BEL7\u{1d}17260727").unwrap();
        assert_eq!(bracketed, raw);
        assert_eq!(raw.lot(), Some("26P0718-BEL7"));
        assert_eq!(raw.net_milligrams(), Some(1_250_000));
        assert_eq!(raw.use_by(today()), NaiveDate::from_ymd_opt(2026, 7, 27));
    }

    #[test]
    fn separators() {
        // standards 2, the two raw vectors: without its separator a lot swallows what follows it,
        // and nobody can tell. Hence the predefined lengths first in what we write.
        let elements = read("01095060001343521726123110ABC123").unwrap();
        assert_eq!(
            elements.bracketed(),
            "(01)09506000134352(17)261231(10)ABC123"
        );
        let swallowed = read("010950600013435210ABC12317261231").unwrap();
        assert_eq!(swallowed.lot(), Some("ABC12317261231"));
        let apart = read("010950600013435210ABC123\u{1d}17261231").unwrap();
        assert_eq!(apart.lot(), Some("ABC123"));
        assert_eq!(apart.raw(), "010950600013435210ABC123\u{1d}17261231");
    }

    #[test]
    fn brackets_within_a_value() {
        let elements = read("(01)09506000134352(10)A(B)(1)C(17)261231").unwrap();
        assert_eq!(elements.lot(), Some("A(B)(1)C"));
        assert_eq!(elements.value("17"), Some("261231"));
    }

    #[test]
    fn the_same_thing_twice() {
        assert!(read("(10)A(10)A").is_ok());
        for text in ["(10)A(10)B", "(3103)001250(3102)000125"] {
            let says = read(text).unwrap_err();
            assert!(
                matches!(
                    says,
                    NotAnElement::Twice { .. } | NotAnElement::TwoThings { .. }
                ),
                "{says:?}"
            );
        }
    }

    #[test]
    fn a_date_that_is_none_is_not_dropped() {
        // A carton's date decides what is thrown away: better typed than lost.
        for text in [
            "(17)261331",
            "(17)260230",
            "(15)26",
            "(7003)2607182430",
            "(7006)260700",
            "(7007)260718260732",
        ] {
            assert!(read(text).is_err(), "{text}");
        }
        for text in ["(17)240229", "(7003)2607182359", "(7007)260718260731"] {
            assert!(read(text).is_ok(), "{text}");
        }
    }

    #[test]
    fn dates() {
        // standards 1.1: DD=00, leap years, century.
        assert_eq!(
            date("130200", today()),
            NaiveDate::from_ymd_opt(2013, 2, 28)
        );
        assert_eq!(
            date("160200", today()),
            NaiveDate::from_ymd_opt(2016, 2, 29)
        );
        assert_eq!(date("260229", today()), None);
        let century = |year: i32, text: &str| {
            date(text, NaiveDate::from_ymd_opt(year, 6, 1).unwrap())
                .unwrap()
                .year()
        };
        assert_eq!(
            [
                century(2026, "760101"),
                century(2026, "770101"),
                century(2026, "000101")
            ],
            [2076, 1977, 2000]
        );
        assert_eq!(
            [
                century(2051, "000101"),
                century(2051, "250101"),
                century(2076, "260101")
            ],
            [2100, 2025, 2126]
        );
    }

    #[test]
    fn says_what_is_wrong() {
        for bad in [
            "(01)09506000134353(10)ABC123",
            "(10)",
            "(29)X",
            "(3103)01250",
            "5",
            "",
            "0109",
            "(10",
        ] {
            assert!(read(bad).is_err(), "{bad}");
        }
    }
}
