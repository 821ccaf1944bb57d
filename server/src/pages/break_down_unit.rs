//! In what weights a carcass on the bench is weighed and shown.

use super::spoken::Words;
use domain::grams::Grams;
use rust_decimal::Decimal;
use words::{Language, Mass};

/// In what weights are typed and shown at the bench.
pub(super) struct Unit {
    pub(super) word: &'static str,
    /// How many milligrams one has.
    pub(super) milligrams: &'static str,
    /// How many decimals a scale shows.
    pub(super) places: u32,
    /// The decimal sign.
    pub(super) mark: &'static str,
}

impl Unit {
    /// That of a reader.
    pub(super) fn of(words: &Words) -> Unit {
        let mark = match words.0.language {
            Language::English => ".",
            Language::French => ",",
        };
        match words.0.mass {
            Mass::Metric => Unit {
                word: "kg",
                milligrams: "1000000",
                places: 3,
                mark,
            },
            Mass::Pounds => Unit {
                word: "lb",
                milligrams: "453592.37",
                places: 2,
                mark,
            },
        }
    }

    /// What is on the table, as the bench shows it, for those who read without script.
    pub(super) fn shown(&self, words: &Words, grams: Grams) -> String {
        let one: Decimal = self.milligrams.parse().unwrap_or(Decimal::ONE);
        let figure = Decimal::from(grams.milligrams()) / one;
        format!(
            "{}\u{a0}{}",
            words.0.decimals(figure, self.places),
            self.word
        )
    }
}
