//! A message as a test or a log writes it: the key, then each argument with its name.

use super::{Arg, Says};
use std::fmt::{Display, Formatter, Result};

impl Display for Says {
    fn fmt(&self, f: &mut Formatter<'_>) -> Result {
        f.write_str(self.key())?;
        for (name, arg) in self.args() {
            write!(f, " {name}={arg}")?;
        }
        Ok(())
    }
}

impl Display for Arg {
    fn fmt(&self, f: &mut Formatter<'_>) -> Result {
        match self {
            Arg::Text(text) => write!(f, "{text:?}"),
            Arg::Texts(texts) => write!(f, "{:?}", texts.in_language("en")),
            Arg::Count(count) => write!(f, "{count}"),
            Arg::Number(number) => write!(f, "{}", number.normalize()),
            Arg::Tenths(number) => write!(f, "{number:.1}"),
            Arg::Money(amount) => write!(f, "{amount:.2}"),
            Arg::Grams(grams) => write!(f, "{} mg", grams.milligrams()),
            Arg::Temperature(printed) => write!(f, "{printed}"),
            Arg::Celsius(degrees) | Arg::CelsiusApart(degrees) => {
                write!(f, "{} °C", degrees.normalize())
            }
            Arg::Day(day) => write!(f, "{day}"),
            Arg::Moment(moment) => write!(f, "{}", moment.format("%Y-%m-%dT%H:%M:%S")),
            Arg::Length(length) => write!(f, "{} s", length.num_seconds()),
            Arg::Said(says) => write!(f, "({says})"),
            Arg::Sentences(messages) | Arg::Series(messages) => {
                let all: Vec<String> = messages.iter().map(|says| format!("({says})")).collect();
                f.write_str(&all.join(" "))
            }
            Arg::All(args) | Arg::Any(args) => {
                f.write_str("[")?;
                for (nth, arg) in args.iter().enumerate() {
                    let comma = if nth == 0 { "" } else { ", " };
                    write!(f, "{comma}{arg}")?;
                }
                f.write_str("]")
            }
        }
    }
}
