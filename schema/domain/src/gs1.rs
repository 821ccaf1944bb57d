//! Reading GS1 element strings, as printed on cartons and sent by scanners (`standards` 1.1).

use chrono::{Datelike, NaiveDate};

/// A separator between elements, as scanners send it.
const GS: char = '\u{1d}';

/// The elements of one string, in order: application identifier and value.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Elements(Vec<(String, String)>);

/// Reads a bracketed `(01)…(10)…` or raw string, with or without a symbology identifier.
///
/// # Errors
/// In words: what is wrong with the string.
pub fn read(text: &str) -> Result<Elements, String> {
    let text = text.trim_matches([' ', '\r', '\n', '\t']);
    let text = strip_symbology(text);
    let elements = if text.starts_with('(') {
        bracketed(text)?
    } else {
        raw(text)?
    };
    if elements.is_empty() {
        return Err("The barcode holds nothing.".into());
    }
    for (ai, value) in &elements {
        if matches!(ai.as_str(), "01" | "02") && !check_digit_is_right(value) {
            return Err(format!(
                "The check digit of GTIN {value} is wrong: scan it again."
            ));
        }
    }
    Ok(Elements(elements))
}

/// Drops a scanner's symbology identifier: `]C1`, `]Q3`, `]d2`.
pub fn strip_symbology(text: &str) -> &str {
    match text.strip_prefix(']') {
        Some(rest) => rest.get(2..).unwrap_or(""),
        None => text,
    }
}

impl Elements {
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

fn bracketed(text: &str) -> Result<Vec<(String, String)>, String> {
    let mut elements = Vec::new();
    for part in text.split('(').skip(1) {
        let (ai, value) = part.split_once(')').ok_or("A bracket is not closed.")?;
        let form = form_of(ai).filter(|form| form.ai_length == ai.len());
        let form = form.ok_or_else(|| format!("({ai}) is not an application identifier."))?;
        let value = value.trim_end_matches(GS);
        if value.is_empty()
            || form
                .value_length
                .is_some_and(|length| length != value.len())
        {
            return Err(format!(
                "({ai}) holds {value:?}, which has the wrong length."
            ));
        }
        elements.push((ai.to_owned(), value.to_owned()));
    }
    Ok(elements)
}

fn raw(text: &str) -> Result<Vec<(String, String)>, String> {
    let mut elements = Vec::new();
    let mut rest = text.trim_start_matches(GS);
    while !rest.is_empty() {
        let form = form_of(rest)
            .ok_or_else(|| format!("No application identifier is known at {rest:?}."))?;
        let ai = rest
            .get(..form.ai_length)
            .ok_or("The barcode ends in the middle of an identifier.")?;
        rest = &rest[form.ai_length..];
        let value = match form.value_length {
            Some(length) => rest
                .get(..length)
                .ok_or_else(|| format!("({ai}) is cut off."))?,
            None => rest.split(GS).next().unwrap_or(""),
        };
        rest = rest[value.len()..].trim_start_matches(GS);
        if value.is_empty() {
            return Err(format!("({ai}) is empty."));
        }
        elements.push((ai.to_owned(), value.to_owned()));
    }
    Ok(elements)
}

struct Form {
    ai_length: usize,
    /// Set for the families of predefined length, which need no separator.
    value_length: Option<usize>,
}

/// By the first two digits (`standards` 1.1; 04, 14, 18 and 19 from memory there).
fn form_of(text: &str) -> Option<Form> {
    let family: u32 = text.get(..2)?.parse().ok()?;
    let (ai_length, value_length) = match family {
        0 => (2, Some(18)),
        1..=3 => (2, Some(14)),
        4 => (2, Some(16)),
        11..=19 => (2, Some(6)),
        20 => (2, Some(2)),
        31..=36 => (4, Some(6)),
        41 => (3, Some(13)),
        10 | 21 | 22 | 30 | 37 | 90..=99 => (2, None),
        23..=25 | 40 | 42 | 71 => (3, None),
        39 | 43 | 70 | 72 | 80..=82 => (4, None),
        _ => return None,
    };
    Some(Form {
        ai_length,
        value_length,
    })
}

/// GS1's standard check digit: weights 3 and 1 from the right (`standards` 1.2).
pub fn check_digit_is_right(digits: &str) -> bool {
    let values: Option<Vec<u32>> = digits.chars().map(|digit| digit.to_digit(10)).collect();
    let weighed = |values: Vec<u32>| -> u32 {
        values
            .iter()
            .rev()
            .enumerate()
            .map(|(nth, value)| if nth % 2 == 0 { *value } else { value * 3 })
            .sum()
    };
    values.is_some_and(|values| values.len() > 1 && weighed(values) % 10 == 0)
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
    fn check_digits() {
        // standards 1.2.
        for good in [
            "6291041500213",
            "9501101531000",
            "95012346",
            "1234567890128",
            "12345678901231",
            "9521234500001",
            "095212345000000018",
        ] {
            assert!(check_digit_is_right(good), "{good}");
        }
        for bad in [
            "12345673",
            "416000336109",
            "1234567890129",
            "12345678901232",
            "",
            "x",
        ] {
            assert!(!check_digit_is_right(bad), "{bad}");
        }
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
