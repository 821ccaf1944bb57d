//! A log for a spreadsheet: one line an entry, numbers and dates as such, text in quotes.
//!
//! Comma, CRLF and quotes by RFC 4180; UTF-8 with its mark, by which spreadsheets know it. Numbers have a point and
//! no unit: weights in grams; a temperature has its scale in a column of its own. A text that a spreadsheet would
//! take for a formula has an apostrophe before it.

use super::Telling;
use super::says::LogWords;
use chrono::{DateTime, Utc};
use chrono_tz::Tz;
use domain::log::{Cell, Column, Value};
use domain::measure::{Scale, Temperature};
use domain::moment::on_clock;
use rust_decimal::Decimal;

/// What stands in front of a text file in UTF-8 for programs that ask for it.
const MARK: &str = "\u{feff}";

/// The file.
pub fn csv(telling: &Telling<'_>) -> Vec<u8> {
    let mut file = File::default();
    let columns = telling.page.log.kind.columns();
    file.out.push_str(MARK);
    file.text(&telling.speech.say(&LogWords::Deed.into()));
    for column in columns {
        let heading = telling.speech.say(&column.says());
        file.text(&with_unit(telling, *column, heading));
        if is_temperature(*column) {
            file.text(&telling.speech.say(&LogWords::Scale.into()));
        }
    }
    file.text(&telling.speech.say(&LogWords::MissingColumn.into()));
    file.text(&telling.speech.say(&LogWords::Remark.into()));
    file.end_line();
    for entry in &telling.page.log.entries {
        file.text(&crate::ids::shown_id(&entry.uid));
        for cell in &entry.cells {
            cell_of(&mut file, telling, cell);
        }
        let holes = entry.cells.iter().flat_map(|cell| &cell.holes);
        let holes: Vec<String> = holes.map(|hole| telling.hole(hole)).collect();
        file.text(&holes.join("; "));
        file.text(&super::paper::remarks(telling, entry).join("; "));
        file.end_line();
    }
    file.out.into_bytes()
}

/// Columns that are one temperature.
fn is_temperature(column: Column) -> bool {
    matches!(column, Column::Temperature | Column::Hottest)
}

/// The columns that are one figure in a unit say which.
fn with_unit(telling: &Telling<'_>, column: Column, heading: String) -> String {
    match column {
        Column::Weight | Column::Loss => telling.speech.say(&LogWords::InGrams { heading }.into()),
        Column::Held | Column::Boiled => {
            telling.speech.say(&LogWords::InMinutes { heading }.into())
        }
        _ => heading,
    }
}

fn cell_of(file: &mut File, telling: &Telling<'_>, cell: &Cell) {
    let zone = telling.page.kitchen().zone;
    if is_temperature(cell.column) {
        // Of several readings the warmest stands for itself; all of them stand in the chart.
        let read = cell.values.iter().filter_map(|value| match value {
            Value::Temperature(read) => Some(*read),
            _ => None,
        });
        return file.temperature(read.max());
    }
    match (cell.column, cell.values.as_slice()) {
        (Column::Weight | Column::Loss, values) => {
            let grams = values.iter().filter_map(|value| match value {
                Value::Weight(grams) => Some(grams.milligrams()),
                _ => None,
            });
            match values.is_empty() {
                true => file.nothing(),
                false => file.number(Decimal::new(grams.sum(), 3)),
            }
        }
        (_, [Value::Moment(at)]) => file.moment(*at, zone),
        (_, [Value::Day(day)]) => file.bare(&day.to_string()),
        (_, [Value::Number(number) | Value::Ppm(number) | Value::Millimetres(number)]) => {
            file.number(*number);
        }
        (_, [Value::Percent(percent)]) => file.number(percent.number().round_dp(4)),
        (_, [Value::Count(count)]) => file.number(Decimal::from(*count)),
        (_, [Value::Length(length)]) => {
            file.number(Decimal::from(length.num_seconds()) / Decimal::from(60));
        }
        (_, []) => file.nothing(),
        (_, values) => {
            let all: Vec<String> = values
                .iter()
                .map(|value| telling.with_rows(value))
                .collect();
            file.text(&super::joined(&all));
        }
    }
}

/// The file as it grows.
#[derive(Default)]
struct File {
    out: String,
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
    fn bare(&mut self, text: &str) {
        self.separate();
        self.out.push_str(text);
    }

    fn number(&mut self, number: Decimal) {
        self.bare(&number.normalize().to_string());
    }

    fn moment(&mut self, at: DateTime<Utc>, zone: Tz) {
        let at = on_clock(at, zone);
        self.bare(&at.format("%Y-%m-%d %H:%M:%S").to_string());
    }

    fn temperature(&mut self, read: Option<Temperature>) {
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

    fn nothing(&mut self) {
        self.separate();
    }

    /// A text, in quotes whatever it is: a supplier's lot is no number.
    fn text(&mut self, text: &str) {
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

    fn end_line(&mut self) {
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
