//! A date as a place words it for a customer.

use super::phrases::LabelWords;
use super::writer::Writer;
use chrono::NaiveDate;
use domain::statement::{self, DateAsk, DateKind, DateMark, Reader};

/// The last day in the words and the form of the place; nothing where our own words will do.
pub fn of(writer: &Writer<'_>, day: NaiveDate, languages: &[&str]) -> Option<DateMark> {
    let kind = writer.law().statements.dates.last_day()?;
    in_words(writer, kind, day, languages)
}

/// The day it was packed, in the words and the form of the place.
pub fn packed(writer: &Writer<'_>, day: NaiveDate, language: &str) -> Option<String> {
    in_words(writer, DateKind::PackedOn, day, &[language]).map(|mark| mark.text)
}

/// The day it was frozen, in the words and the form of the place; in our own where it has none.
pub fn frozen(writer: &Writer<'_>, day: NaiveDate, language: &str) -> String {
    let first = &writer.first;
    in_words(writer, DateKind::FrozenOn, day, &[language]).map_or_else(
        || {
            let day = first.short_date(day);
            first.say(LabelWords::FrozenOn { day })
        },
        |mark| mark.text,
    )
}

fn in_words(
    writer: &Writer<'_>,
    kind: DateKind,
    day: NaiveDate,
    languages: &[&str],
) -> Option<DateMark> {
    let law = writer.law();
    let ask = DateAsk {
        kind,
        day,
        from: day,
        reader: Reader::Customer,
        short: false,
    };
    statement::date_mark(&law.statements, &law.rows, &ask, languages).ok()
}
