//! An argument of a message: a value of a kind that every language knows how to write.

use super::{Says, Texts};
use crate::code::LotCode;
use crate::grams::Grams;
use crate::measure::{Percent, Printed, Temperature};
use crate::rows::RowId;
use chrono::{NaiveDate, NaiveDateTime, TimeDelta};
use rust_decimal::Decimal;

/// A value in a message. Its form (unit, decimal sign, order of a date) is the reader's affair.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Arg {
    /// A name, a code, what somebody typed: the same in every language.
    Text(String),
    /// A name or a text of the data, in the languages that it has.
    Texts(Texts),
    /// A count: it decides between singular and plural.
    Count(i64),
    /// A figure without a unit of ours, to as many decimals as it has.
    Number(Decimal),
    /// A figure to the tenth, shown with its tenth even where that is zero: `8.0`.
    Tenths(Decimal),
    /// An amount of money in the kitchen's currency, shown to the hundredth.
    Money(Decimal),
    /// A weight.
    Grams(Grams),
    /// A temperature as it was read, or as a row prints it.
    Temperature(Printed),
    /// A temperature of which only the degrees Celsius are known.
    Celsius(Decimal),
    /// A difference of temperatures, in degrees Celsius.
    CelsiusApart(Decimal),
    /// A day.
    Day(NaiveDate),
    /// A moment by the kitchen's clock.
    Moment(NaiveDateTime),
    /// A length of time.
    Length(TimeDelta),
    /// A message within the message.
    Said(Box<Says>),
    /// Several of them: `a, b and c`.
    All(Vec<Arg>),
    /// Sentences, one after the other.
    Sentences(Vec<Says>),
    /// Several things told apart: `a; b; c`.
    Series(Vec<Says>),
    /// One of them: `a, b or c`.
    Any(Vec<Arg>),
}

impl Arg {
    /// A figure that is kept in thousandths: micrometres as millimetres.
    pub fn thousandths(count: i64) -> Arg {
        Arg::Number(Decimal::new(count, 3))
    }
}

impl From<Says> for Arg {
    fn from(says: Says) -> Arg {
        Arg::Said(Box::new(says))
    }
}

impl From<Vec<Says>> for Arg {
    fn from(sentences: Vec<Says>) -> Arg {
        Arg::Sentences(sentences)
    }
}

impl From<&str> for Arg {
    fn from(text: &str) -> Arg {
        Arg::Text(text.to_owned())
    }
}

impl From<&LotCode> for Arg {
    fn from(code: &LotCode) -> Arg {
        Arg::Text(code.shown())
    }
}

impl From<LotCode> for Arg {
    fn from(code: LotCode) -> Arg {
        Arg::from(&code)
    }
}

impl From<RowId> for Arg {
    fn from(row: RowId) -> Arg {
        Arg::Text(row.to_string())
    }
}

impl From<Percent> for Arg {
    /// To two decimals.
    fn from(percent: Percent) -> Arg {
        Arg::Number(percent.to_hundredths())
    }
}

impl From<Temperature> for Arg {
    fn from(temperature: Temperature) -> Arg {
        Arg::Temperature(temperature.into())
    }
}

impl From<Printed> for Arg {
    fn from(printed: Printed) -> Arg {
        Arg::Temperature(printed)
    }
}

impl From<usize> for Arg {
    fn from(count: usize) -> Arg {
        Arg::Count(i64::try_from(count).unwrap_or(i64::MAX))
    }
}

/// Kinds of values that are arguments as they are.
macro_rules! from {
    ($($kind:ty => $arg:ident),* $(,)?) => {
        $(impl From<$kind> for Arg {
            fn from(value: $kind) -> Arg {
                Arg::$arg(value.into())
            }
        })*
    };
}

from! {
    String => Text,
    Texts => Texts,
    u8 => Count, u16 => Count, u32 => Count, i32 => Count, i64 => Count,
    Decimal => Number,
    Grams => Grams,
    NaiveDate => Day,
    NaiveDateTime => Moment,
    TimeDelta => Length,
}
