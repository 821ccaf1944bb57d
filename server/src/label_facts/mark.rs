//! A date as a place words it for a customer.

use super::phrases::{LabelWords, Phrases};
use super::writer::Writer;
use chrono::NaiveDate;
use domain::rows::RowId;
use domain::statement::{self, DateAsk, DateKind, DateMark, DatePacking, Reader, dates_due};
use domain::words::State;

/// The last day in the words and the form of the place; nothing where our own words will do.
pub fn of(writer: &Writer<'_>, day: NaiveDate, languages: &[&str]) -> Option<DateMark> {
    in_words(writer, last_day(writer, day)?, day, languages)
}

/// As what the last day stands there: food that is soon a danger has another word than food that keeps.
fn last_day(writer: &Writer<'_>, day: NaiveDate) -> Option<DateKind> {
    let rules = &writer.law().statements;
    let needed = dates_due(rules, &packing(writer, Some(day)));
    let mut kinds = needed.kinds.iter().chain(&needed.instead).copied();
    let due = kinds.find(|kind| kind.is_last_day());
    due.or_else(|| rules.dates.last_day())
}

/// How it is packed, as far as its dates go: where it is sold.
fn packing(writer: &Writer<'_>, day: Option<NaiveDate>) -> DatePacking {
    let product = writer.product;
    let days = day.map_or(0, |day| (day - writer.made()).num_days());
    DatePacking {
        packed_here: true,
        days: u32::try_from(days).unwrap_or(0),
        perishable: product.is_controlled() && product.keeping.stable_as.is_none(),
        at_room_temperature: product.storage == State::Ambient,
    }
}

/// Does a pack without a last day lack one here, and by which rows?
pub fn lacks(writer: &Writer<'_>) -> Option<Vec<RowId>> {
    let rules = &writer.law().statements;
    let needed = dates_due(rules, &packing(writer, None));
    let due = !rules.short_label_here() && needed.kinds.iter().any(|kind| kind.is_last_day());
    due.then_some(needed.rows)
}

/// The day it was packed, in the words and the form of the place.
pub fn packed(writer: &Writer<'_>, day: NaiveDate, language: &str) -> Option<String> {
    in_words(writer, DateKind::PackedOn, day, &[language]).map(|mark| mark.text)
}

/// The day it was frozen, in the words and the form of the place; in our own where it has none.
pub fn frozen(writer: &Writer<'_>, day: NaiveDate, phrases: &Phrases) -> String {
    in_words(writer, DateKind::FrozenOn, day, &[phrases.language]).map_or_else(
        || {
            let day = phrases.short_date(day);
            phrases.say(LabelWords::FrozenOn { day })
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
