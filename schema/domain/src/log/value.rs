//! What stands in a cell: values with their types, rendered for a reader elsewhere.

use super::says::LogsSays;
use crate::code::LotCode;
use crate::grams::Grams;
use crate::measure::{Percent, Temperature};
use crate::moment::on_clock;
use crate::rows::RowId;
use crate::says::{Arg, Says, Texts};
use chrono::{DateTime, NaiveDate, TimeDelta, Utc};
use chrono_tz::Tz;
use rust_decimal::Decimal;

/// One value of a cell.
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    /// Somebody's own words, a name, a number of somebody else's: the same in every language.
    Text(String),
    /// A name in the languages of the list.
    Named(Texts),
    /// A lot, or one of its packs.
    Lot(LotCode, Option<u32>),
    /// An instant.
    Moment(DateTime<Utc>),
    /// A day.
    Day(NaiveDate),
    /// A weight.
    Weight(Grams),
    /// A temperature, on the scale on which it was read.
    Temperature(Temperature),
    /// A percentage.
    Percent(Percent),
    /// A figure without a unit.
    Number(Decimal),
    /// Parts per million.
    Ppm(Decimal),
    /// Millimetres.
    Millimetres(Decimal),
    /// So many.
    Count(u32),
    /// A length of time.
    Length(TimeDelta),
    /// So much of a lot that went in.
    Material {
        /// The lot.
        lot: LotCode,
        /// What it is called.
        product: Texts,
        /// How much.
        grams: Grams,
    },
    /// A reading at a moment.
    Point {
        /// When.
        at: DateTime<Utc>,
        /// How warm.
        read: Temperature,
    },
    /// What is said of it, with the rows behind it.
    Said {
        /// The message.
        says: Says,
        /// The rows behind it.
        rows: Vec<RowId>,
    },
}

impl Value {
    /// Words of the catalogue, without rows of their own.
    pub fn says(says: impl Into<Says>) -> Value {
        Value::Said {
            says: says.into(),
            rows: Vec::new(),
        }
    }

    /// A text, where there is one.
    pub fn text(text: Option<&String>) -> Option<Value> {
        text.filter(|text| !text.trim().is_empty())
            .map(|text| Value::Text(text.clone()))
    }

    /// As an argument of a message, by the kitchen's clock.
    pub fn arg(&self, zone: Tz) -> Arg {
        match self {
            Value::Text(text) => Arg::Text(text.clone()),
            Value::Named(names) => Arg::Texts(names.clone()),
            Value::Lot(code, None) => Arg::Text(code.shown()),
            Value::Lot(code, Some(pack)) => Arg::Text(format!("{} / {pack}", code.shown())),
            Value::Moment(at) => Arg::Moment(on_clock(*at, zone)),
            Value::Day(day) => Arg::Day(*day),
            Value::Weight(grams) => Arg::Grams(*grams),
            Value::Temperature(read) => Arg::from(*read),
            Value::Percent(percent) => LogsSays::Percent { percent: *percent }.into(),
            Value::Number(number) => Arg::Number(*number),
            Value::Ppm(ppm) => LogsSays::Ppm { ppm: *ppm }.into(),
            Value::Millimetres(mm) => LogsSays::Millimetres { mm: *mm }.into(),
            Value::Count(count) => Arg::Count(i64::from(*count)),
            Value::Length(length) => Arg::Length(*length),
            Value::Material {
                lot,
                product,
                grams,
            } => LogsSays::Material {
                lot: lot.clone(),
                product: product.clone(),
                grams: *grams,
            }
            .into(),
            Value::Point { at, read } => LogsSays::Point {
                at: on_clock(*at, zone),
                read: *read,
            }
            .into(),
            Value::Said { says, .. } => Arg::from(says.clone()),
        }
    }
}
