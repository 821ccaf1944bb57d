//! A log for a spreadsheet: one line an entry, numbers and dates as such, text in quotes.
//!
//! Comma, CRLF and quotes by RFC 4180; UTF-8 with its mark, by which spreadsheets know it. Numbers have a point and
//! no unit: weights in grams; a temperature has its scale in a column of its own. A text that a spreadsheet would
//! take for a formula has an apostrophe before it.

use super::Telling;
use super::cells::{File, MARK};
use super::says::LogWords;
use domain::log::{Cell, Column, Value};
use rust_decimal::Decimal;

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
