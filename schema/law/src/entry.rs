//! The small parts that every file is made of: rows, numbers with a row, temperatures.

use crate::Bad;
use chrono::NaiveDate;
use domain::measure::{Percent, Printed, Temperature};
use domain::rows::{Bound, Row, RowId, Rows, Sense};
use domain::says::Texts;
use domain::words::Mark;
use rust_decimal::Decimal;
use schemars::JsonSchema;
use serde::Deserialize;
use std::collections::BTreeMap;

/// One row of the facts.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RowEntry<Text = TextEntry> {
    /// Its name: the file of the fact tables and the row in it, as `us-N14`.
    pub id: String,
    /// What it says, in our own words.
    pub says: Text,
    /// Other rows of the facts that say the same, confirm it or complete it.
    #[serde(default)]
    pub also: Vec<String>,
    /// The law's own number, where it has one.
    pub cite: Option<String>,
    /// Keys of `sources.json`.
    #[serde(default)]
    pub sources: Vec<String>,
    /// How far it is confirmed.
    pub mark: MarkEntry,
    /// The part of the country whose rule it is, where it is not that of all of it: `Ontario`.
    pub only_in: Option<Text>,
    /// The first day on which it holds, `2025-10-09`.
    pub from: Option<String>,
    /// The last day on which it holds.
    pub until: Option<String>,
}

/// A text of the data, in both languages of the program: one alone is not read. Where the law itself
/// is in one language, the other text is our translation and no wording of the law.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TextEntry {
    /// In English.
    en: String,
    /// In French.
    fr: String,
}

impl From<TextEntry> for Texts {
    fn from(TextEntry { en, fr }: TextEntry) -> Texts {
        Texts::new([("en".to_owned(), en), ("fr".to_owned(), fr)].into())
    }
}

/// A text of the bench, with what some readers of a language have there for their own: common practice, no source.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct BenchTextEntry {
    /// In English.
    en: String,
    /// In English for who weighs in pounds, where a length stands in it: in inches.
    #[serde(rename = "en-US")]
    in_inches: Option<String>,
    /// In French.
    fr: String,
    /// In French as a butcher of Canada calls it, where that is otherwise.
    #[serde(rename = "fr-CA")]
    in_canada: Option<String>,
}

impl From<BenchTextEntry> for Texts {
    fn from(entry: BenchTextEntry) -> Texts {
        let some = [("en-US", entry.in_inches), ("fr-CA", entry.in_canada)];
        let some = some
            .into_iter()
            .filter_map(|(tag, text)| Some((tag, text?)));
        let all = [("en", entry.en), ("fr", entry.fr)].into_iter().chain(some);
        Texts::new(all.map(|(tag, text)| (tag.to_owned(), text)).collect())
    }
}

/// A text of a house: in English alone, or by language tag.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(untagged)]
pub enum HouseTextEntry {
    /// In English.
    English(String),
    /// By language tag; English is one of them.
    ByLanguage {
        /// In English.
        en: String,
        /// In other languages.
        #[serde(flatten)]
        others: BTreeMap<String, String>,
    },
}

impl From<HouseTextEntry> for Texts {
    fn from(entry: HouseTextEntry) -> Texts {
        match entry {
            HouseTextEntry::English(text) => Texts::from(text.as_str()),
            HouseTextEntry::ByLanguage { en, mut others } => {
                others.insert("en".to_owned(), en);
                Texts::new(others)
            }
        }
    }
}

/// How far a row is confirmed.
#[derive(Debug, Clone, Copy, Deserialize, JsonSchema)]
pub enum MarkEntry {
    /// The text itself was read.
    #[serde(rename = "READ")]
    Read,
    /// Read only as somebody else gives it.
    #[serde(rename = "READ-2")]
    SecondHand,
    /// From memory.
    #[serde(rename = "MEMORY")]
    Memory,
    /// Worked out from a number that was read.
    #[serde(rename = "DERIVED")]
    Derived,
    /// Common practice, no source.
    #[serde(rename = "CP")]
    CommonPractice,
    /// Our own proposal.
    #[serde(rename = "OURS")]
    Ours,
}

impl<Text: Into<Texts>> RowEntry<Text> {
    /// The domain's row.
    pub fn row(self) -> Result<Row, Bad> {
        let day = |text: Option<String>| -> Result<Option<NaiveDate>, Bad> {
            text.map(|text| {
                text.parse()
                    .map_err(|_| Bad::new(format!("{}: {text:?} is not a day", self.id)))
            })
            .transpose()
        };
        Ok(Row {
            from: day(self.from.clone())?,
            until: day(self.until.clone())?,
            id: RowId::new(&self.id),
            says: self.says.into(),
            only_in: self.only_in.map(Into::into),
            also: self.also.iter().map(RowId::new).collect(),
            cite: self.cite,
            sources: self.sources,
            mark: match self.mark {
                MarkEntry::Read => Mark::Read,
                MarkEntry::SecondHand => Mark::SecondHand,
                MarkEntry::Memory => Mark::Memory,
                MarkEntry::Derived => Mark::Derived,
                MarkEntry::CommonPractice => Mark::CommonPractice,
                MarkEntry::Ours => Mark::House,
            },
        })
    }
}

/// A decimal, read as it is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(try_from = "serde_json::Number")]
pub struct Number(pub Decimal);

impl JsonSchema for Number {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Number".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({ "type": "number" })
    }

    fn inline_schema() -> bool {
        true
    }
}

impl TryFrom<serde_json::Number> for Number {
    type Error = String;

    fn try_from(number: serde_json::Number) -> Result<Number, String> {
        let text = number.to_string();
        text.parse()
            .map(Number)
            .map_err(|_| format!("{text} is not a plain decimal"))
    }
}

impl Number {
    /// As so many in a hundred.
    pub fn percent(self) -> Percent {
        Percent::new(self.0)
    }
}

/// A number of the law with its row, and which side of it is allowed: exactly one of the three.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct BoundEntry {
    /// The row that it stands in.
    pub row: String,
    /// The number or less.
    pub at_most: Option<Number>,
    /// The number or more.
    pub at_least: Option<Number>,
    /// The number and no other.
    pub exactly: Option<Number>,
}

impl BoundEntry {
    /// The domain's bound, its row looked up.
    pub fn bound(&self, rows: &Rows) -> Result<Bound, Bad> {
        let row = known(rows, &self.row)?;
        let (sense, Number(value)) = match (self.at_most, self.at_least, self.exactly) {
            (Some(value), None, None) => (Sense::AtMost, value),
            (None, Some(value), None) => (Sense::AtLeast, value),
            (None, None, Some(value)) => (Sense::Exactly, value),
            _ => {
                return Err(Bad::new(format!(
                    "{}: give one of at_most, at_least, exactly",
                    self.row
                )));
            }
        };
        Ok(Bound { row, sense, value })
    }
}

/// A temperature on one of the two scales.
#[derive(Debug, Clone, Copy, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub enum TemperatureEntry {
    /// Degrees Fahrenheit.
    #[serde(rename = "fahrenheit")]
    Fahrenheit(Number),
    /// Degrees Celsius.
    #[serde(rename = "celsius")]
    Celsius(Number),
}

impl TemperatureEntry {
    /// The domain's temperature.
    pub fn temperature(self) -> Temperature {
        match self {
            TemperatureEntry::Fahrenheit(Number(degrees)) => Temperature::fahrenheit(degrees),
            TemperatureEntry::Celsius(Number(degrees)) => Temperature::celsius(degrees),
        }
    }
}

/// A temperature as its row prints it: on one scale, or with its own figure on each. A reading is held
/// against the figure of its own scale.
#[derive(Debug, Clone, Copy, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PrintedEntry {
    /// Degrees Fahrenheit.
    fahrenheit: Option<Number>,
    /// Degrees Celsius.
    celsius: Option<Number>,
}

impl PrintedEntry {
    /// The domain's temperature.
    pub fn printed(self) -> Result<Printed, Bad> {
        match (self.celsius, self.fahrenheit) {
            (Some(celsius), Some(fahrenheit)) => Ok(Printed::both(celsius.0, fahrenheit.0)),
            (Some(celsius), None) => Ok(Temperature::celsius(celsius.0).into()),
            (None, Some(fahrenheit)) => Ok(Temperature::fahrenheit(fahrenheit.0).into()),
            (None, None) => Err(Bad::new("a temperature needs a figure".to_owned())),
        }
    }
}

/// The name of a row that is there.
pub fn known(rows: &Rows, id: &str) -> Result<RowId, Bad> {
    let row = RowId::new(id);
    match rows.get(&row) {
        Some(_) => Ok(row),
        None => Err(Bad::new(format!("there is no row {id:?} in this file"))),
    }
}

/// The names of rows that are there.
pub fn all_known(rows: &Rows, ids: &[String]) -> Result<Vec<RowId>, Bad> {
    ids.iter().map(|id| known(rows, id)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A row without its French stops the start: nobody has to remember it.
    #[test]
    fn a_row_in_english_alone_is_read_of_a_house_only() {
        let row = |says: &str| format!(r#"{{"id": "x-1", "says": {says}, "mark": "OURS"}}"#);
        let both = row(r#"{ "en": "A rule.", "fr": "Une règle." }"#);
        assert!(serde_json::from_str::<RowEntry>(&both).is_ok());
        for alone in [r#""A rule.""#, r#"{ "en": "A rule." }"#] {
            let row = row(alone);
            assert!(serde_json::from_str::<RowEntry>(&row).is_err(), "{row}");
            let house: RowEntry<HouseTextEntry> = serde_json::from_str(&row).unwrap();
            assert_eq!(house.row().unwrap().says.in_language("fr"), "A rule.");
        }
    }
}
