//! What was done with a lot, in words.

use super::format::{self, or_dash};
use crate::wire::answers::{ReadingRead, StepBrief};
use domain::words::Quantity;

/// A line of the history.
pub struct Line {
    /// When.
    pub at: String,
    /// What.
    pub what: String,
    /// How much.
    pub grams: String,
    /// Who.
    pub by: String,
    /// Was it voided?
    pub voided: bool,
}

/// The lines of a lot's history, the oldest first.
pub fn lines(steps: &[StepBrief]) -> Vec<Line> {
    let line = |step: &StepBrief| Line {
        at: format::minute(&step.at),
        what: what(&step.kind, &step.account),
        grams: or_dash(&step.grams),
        by: step.by.clone(),
        voided: step.voided,
    };
    steps.iter().map(line).collect()
}

/// `Used to grind`, `Sold`, `Received`.
fn what(kind: &str, account: &str) -> String {
    let done = format::headed(account);
    match (kind, account) {
        ("receive", "made") => "Received".into(),
        ("sell" | "serve" | "discard" | "ship" | "return" | "take-back" | "move", _) => done,
        (_, "made") => format!("Made: {}", format::plain(kind)),
        (_, "used") => format!("Used: {}", format::plain(kind)),
        (_, "noted") => format::headed(kind),
        _ => format!("{done}: {}", format::plain(kind)),
    }
}

/// A reading, in words.
pub struct Reading {
    /// When.
    pub at: String,
    /// What was measured.
    pub what: String,
    /// How much.
    pub value: String,
}

/// A lot's readings, the oldest first.
pub fn readings(readings: &[ReadingRead]) -> Vec<Reading> {
    let told = |reading: &ReadingRead| {
        let value = format::number(reading.value);
        let (what, value) = match Quantity::parse(&reading.quantity) {
            Some(Quantity::Grams) => ("Weight".to_owned(), format!("{value} g")),
            Some(Quantity::Celsius) => ("Temperature".to_owned(), format!("{value} °C")),
            Some(Quantity::BrineCelsius) => ("Brine".to_owned(), format!("{value} °C")),
            _ => (format::headed(&reading.quantity), value),
        };
        Reading {
            at: format::minute(&reading.at),
            what,
            value,
        }
    };
    readings.iter().map(told).collect()
}

#[cfg(test)]
mod tests {
    use super::what;

    #[test]
    fn a_deed_is_told_once() {
        assert_eq!(what("sell", "sold"), "Sold");
        assert_eq!(what("break-down", "used"), "Used: break down");
        assert_eq!(what("turn", "noted"), "Turn");
    }
}
