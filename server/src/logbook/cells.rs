//! The cells of a file for a spreadsheet as it is written: numbers and dates as such, text in quotes.

use chrono::{DateTime, Utc};
use chrono_tz::Tz;
use domain::measure::{Scale, Temperature};
use domain::moment::on_clock;
use rust_decimal::Decimal;

/// What stands in front of a text file in UTF-8 for programs that ask for it.
pub const MARK: &str = "\u{feff}";

/// The file as it grows.
#[derive(Default)]
pub struct File {
    /// What is written already.
    pub out: String,
    /// Does the line hold something already?
    begun: bool,
}

impl File {
    fn separate(&mut self) {
        if self.begun {
            self.out.push(',');
        }
        self.begun = true;
    }

    /// A figure, a day or a moment: without quotes, so that it is read as such.
    pub fn bare(&mut self, text: &str) {
        self.separate();
        self.out.push_str(text);
    }

    /// A figure.
    pub fn number(&mut self, number: Decimal) {
        self.bare(&number.normalize().to_string());
    }

    /// A moment by the kitchen's clock.
    pub fn moment(&mut self, at: DateTime<Utc>, zone: Tz) {
        let at = on_clock(at, zone);
        self.bare(&at.format("%Y-%m-%d %H:%M:%S").to_string());
    }

    /// A temperature, and its scale in a column of its own.
    pub fn temperature(&mut self, read: Option<Temperature>) {
        let Some(read) = read else {
            self.nothing();
            return self.nothing();
        };
        self.number(read.degrees());
        self.text(match read.scale() {
            Scale::Celsius => "°C",
            Scale::Fahrenheit => "°F",
        });
    }

    /// An empty cell.
    pub fn nothing(&mut self) {
        self.separate();
    }

    /// A text, in quotes whatever it is: a supplier's lot is no number.
    pub fn text(&mut self, text: &str) {
        if text.is_empty() {
            return self.nothing();
        }
        self.separate();
        let text = harmless(text);
        let mut quoted = vec![0; 2 * text.len()];
        let (_, _, written) = csv_core::quote(text.as_bytes(), &mut quoted, b'"', b'"', true);
        self.out.push('"');
        self.out
            .push_str(std::str::from_utf8(&quoted[..written]).unwrap_or_default());
        self.out.push('"');
    }

    /// Ends the line.
    pub fn end_line(&mut self) {
        self.out.push_str("\r\n");
        self.begun = false;
    }
}

/// A text that no spreadsheet takes for a formula: what begins with a sign of one gets an apostrophe.
fn harmless(text: &str) -> String {
    let text: String = text
        .chars()
        .map(|letter| if letter.is_control() { ' ' } else { letter })
        .collect();
    // A spreadsheet passes over white space, and takes the wide forms of these signs as well.
    let first = text.trim_start().chars().next();
    let is_sign = |sign| {
        matches!(
            sign,
            '=' | '+' | '-' | '@' | '|' | '%' | '＝' | '＋' | '－' | '＠'
        )
    };
    match first.is_some_and(is_sign) {
        true => format!("'{text}"),
        false => text,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn written(put: impl FnOnce(&mut File)) -> String {
        let mut file = File::default();
        put(&mut file);
        file.out
    }

    #[test]
    fn text_is_quoted_and_no_formula_and_figures_are_bare() {
        let text = |text: &str| written(|file| file.text(text));
        assert_eq!(text("00123"), "\"00123\"");
        assert_eq!(text("pork \"extra\", lean"), "\"pork \"\"extra\"\", lean\"");
        for formula in ["=1+1", "+1", "-1", "@SUM(A1)", " =1", "\t=1", "＝1"] {
            assert!(text(formula).starts_with("\"'"), "{formula}");
        }
        assert_eq!(text("a=1\nb"), "\"a=1 b\"");
        let figures = written(|file| {
            file.number(Decimal::new(-18500, 3));
            file.temperature(Some(Temperature::fahrenheit(165)));
            file.nothing();
            file.bare("2026-06-26");
        });
        assert_eq!(figures, "-18.5,165,\"°F\",,2026-06-26");
    }
}
