//! What was done with a lot, in words.

use super::says::PageSays;
use super::spoken::Words;
use crate::wire::Number;
use crate::wire::answers::{ReadingRead, StepBrief};
use crate::wire::cures::decimal;
use domain::grams::Grams;
use domain::says::Arg;

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
pub fn lines(words: &Words, steps: &[StepBrief]) -> Vec<Line> {
    let line = |step: &StepBrief| Line {
        at: words.minute(&step.at),
        what: what(words, &step.kind, &step.account),
        grams: words.or_dash(&step.grams),
        by: step.by.clone(),
        voided: step.voided,
    };
    steps.iter().map(line).collect()
}

/// `Used: grind`, `Sold`, `Received`.
fn what(words: &Words, kind: &str, account: &str) -> String {
    let deed = || words.word("DeedKind", kind);
    let done = || words.headed("Account", account);
    match (kind, account) {
        ("receive", "made") => words.t("page-lot-received"),
        ("sell" | "serve" | "discard" | "ship" | "return" | "take-back" | "move", _) => done(),
        (_, "made") => words.say(PageSays::MadeBy { deed: deed() }),
        (_, "used") => words.say(PageSays::UsedFor { deed: deed() }),
        (_, "noted") => words.headed("DeedKind", kind),
        _ => words.say(PageSays::Otherwise {
            account: done(),
            deed: deed(),
        }),
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

/// A lot's readings, the oldest first; amounts of money in a currency.
pub fn readings(words: &Words, readings: &[ReadingRead], currency: &str) -> Vec<Reading> {
    let told = |reading: &ReadingRead| {
        let (key, value) = quantity(words, &reading.quantity, reading.value, currency);
        Reading {
            at: words.minute(&reading.at),
            what: words.t(key),
            value,
        }
    };
    readings.iter().map(told).collect()
}

/// What a quantity is called, and how much it is.
fn quantity(
    words: &Words,
    quantity: &str,
    value: Number,
    currency: &str,
) -> (&'static str, String) {
    let plain = || words.0.number(decimal(value));
    let celsius = || words.0.arg(&Arg::Celsius(decimal(value)));
    let percent = || words.say(PageSays::Percent { percent: plain() });
    let ppm = || format!("{}\u{a0}ppm", plain());
    match quantity {
        "grams" => {
            let grams = Grams::from_milligrams(value.0 / 1_000);
            ("page-reading-weight", words.grams(grams))
        }
        "celsius" => ("page-reading-temperature", celsius()),
        "brine-celsius" => ("page-reading-brine-temperature", celsius()),
        "ph" => ("page-reading-ph", plain()),
        "water-activity" => ("page-reading-water-activity", plain()),
        "salometer-60F" => ("page-reading-salometer-60f", plain()),
        "salometer-38F" => ("page-reading-salometer-38f", plain()),
        "nitrite-percent" => ("page-reading-nitrite", percent()),
        "nitrate-percent" => ("page-reading-nitrate", percent()),
        "nitrite-ppm" => ("page-reading-nitrite", ppm()),
        "nitrate-ppm" => ("page-reading-nitrate", ppm()),
        "salt-percent" => ("page-reading-salt", percent()),
        "price-minor" => {
            let paid = words.money(value.0 / 1_000_000, currency);
            ("page-reading-price", paid)
        }
        _ => ("page-reading-other", plain()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use words::{Language, Speech};

    #[test]
    fn a_deed_is_told_once() {
        let words = Words(Speech::in_language(Language::English));
        let what = |kind, account| what(&words, kind, account);
        assert_eq!(what("sell", "sold"), "Sold");
        assert_eq!(what("grind", "used"), "Used: grind");
        assert_eq!(what("turn", "noted"), "Turn");
    }

    #[test]
    fn a_reading_has_its_unit() {
        let words = Words(Speech::in_language(Language::French));
        let told = |of, value| quantity(&words, of, Number(value), "CAD").1;
        assert_eq!(told("celsius", 3_400_000), "3,4\u{a0}°C");
        assert_eq!(told("ph", 5_300_000), "5,3");
        assert_eq!(told("price-minor", 1_250_000_000), "12,50\u{a0}CAD");
    }
}
