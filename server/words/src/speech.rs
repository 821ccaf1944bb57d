//! How one reader is spoken to: their language and units.

use crate::{Language, catalogue, figures, inches, weights};
use chrono::{NaiveDate, NaiveDateTime};
use domain::grams::Grams;
use domain::says::{AS_WRITTEN, Arg, Says};
use domain::words::Profile;
use fluent_bundle::{FluentArgs, FluentValue};
use rust_decimal::Decimal;

/// Units of weight.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Mass {
    /// Grams, from 1,000 g on kilograms.
    #[default]
    Metric,
    /// Ounces, from a pound on decimal pounds, as a scale in pounds shows them.
    Pounds,
}

/// Units of temperature.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Heat {
    /// Degrees Celsius.
    #[default]
    Celsius,
    /// Degrees Fahrenheit.
    Fahrenheit,
}

/// A reader's language and units.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Speech {
    /// The language.
    pub language: Language,
    /// How weights are written.
    pub mass: Mass,
    /// How temperatures are written.
    pub heat: Heat,
    /// The reader's day: a date of another year is written with its year. `None` writes every year.
    pub today: Option<NaiveDate>,
    /// Where they work: what a cut is called there, and how a clock is read. `None`, as on a label, is nowhere.
    pub place: Option<Profile>,
    /// Is it read on a label, where there is no room for the commas of an American date?
    pub on_label: bool,
}

impl Speech {
    /// Metric, and every date with its year.
    pub const fn in_language(language: Language) -> Speech {
        Speech {
            language,
            mass: Mass::Metric,
            heat: Heat::Celsius,
            today: None,
            place: None,
            on_label: false,
        }
    }

    /// The language as a text of the data may have it for these readers alone: a cut as it is called in Canada, a length
    /// in inches. A text that has none of its own for them is that of the language.
    pub fn tag(&self) -> &'static str {
        match (self.language, self.mass, self.place) {
            (Language::English, Mass::Pounds, _) => "en-US",
            (Language::French, _, Some(Profile::Ca)) => "fr-CA",
            _ => self.language.tag(),
        }
    }

    /// Who reads the English of the United States has the month before its day, and no clock with thirteen hours on the
    /// wall; who reads French there reads it as the French do.
    pub fn is_american(&self) -> bool {
        self.language == Language::English && self.place == Some(Profile::Us)
    }

    /// A message for this reader. A key that the catalogue does not have comes out as it is written:
    /// a test holds that there is none.
    pub fn say(&self, says: &Says) -> String {
        if says.key() == AS_WRITTEN
            && let Some(text @ (Arg::Text(_) | Arg::Texts(_))) = says.arg("text")
        {
            return self.arg(text);
        }
        if self.mass == Mass::Pounds
            && let Some(text) = inches::said(self, says)
        {
            return text;
        }
        let key = self.own_key(says.key());
        match catalogue::message(self.language, key, &self.args(says)) {
            Some(text) => figures::one_full_stop(self.language, text),
            None => says.to_string(),
        }
    }

    /// The message as it is spelt in the United States, where that is another.
    fn own_key<'a>(&self, key: &'a str) -> &'a str {
        match key {
            _ if !self.is_american() => key,
            "Allergen-sulphites" => "us-sulfites",
            "statement-sulphites-unknown" => "us-sulfites-unknown",
            _ => key,
        }
    }

    /// The arguments of a message, each as it is written for this reader.
    pub(crate) fn args(&self, says: &Says) -> FluentArgs<'static> {
        let mut args = FluentArgs::with_capacity(says.args().count());
        for (name, arg) in says.args() {
            args.set(name.to_owned(), self.value(arg));
        }
        args
    }

    /// The text of a key without arguments: a heading, a button.
    pub fn text(&self, key: &str) -> String {
        catalogue::message(self.language, key, &FluentArgs::new()).unwrap_or_else(|| key.to_owned())
    }

    fn value(&self, arg: &Arg) -> FluentValue<'static> {
        match arg {
            Arg::Count(count) => FluentValue::from(*count),
            other => FluentValue::from(self.arg(other)),
        }
    }

    /// An argument as it stands in a sentence.
    pub fn arg(&self, arg: &Arg) -> String {
        match arg {
            Arg::Text(text) => text.clone(),
            Arg::Texts(texts) => texts.in_language(self.tag()).to_owned(),
            Arg::Count(count) => count.to_string(),
            Arg::Number(number) => self.number(*number),
            Arg::Tenths(number) => figures::tenths(self.language, *number),
            Arg::Money(amount) => figures::money(self.language, *amount),
            Arg::Grams(grams) => self.grams(*grams),
            Arg::Temperature(printed) => figures::temperature(self, printed),
            Arg::Celsius(degrees) => figures::celsius(self, *degrees),
            Arg::CelsiusApart(degrees) => figures::celsius_apart(self, *degrees),
            Arg::Day(day) => self.day(*day),
            Arg::Moment(moment) => self.moment(*moment),
            Arg::Length(length) => figures::length(self.language, *length),
            Arg::Said(says) => self.say(says),
            Arg::Sentences(sentences) => {
                let all: Vec<String> = sentences.iter().map(|says| self.say(says)).collect();
                all.join(" ")
            }
            Arg::Series(parts) => {
                let all: Vec<String> = parts.iter().map(|says| self.say(says)).collect();
                // French parts it off with a no-break space.
                all.join(match self.language {
                    Language::English => "; ",
                    Language::French => "\u{a0}; ",
                })
            }
            Arg::All(args) => self.listed(args, "list-and"),
            Arg::Any(args) => self.listed(args, "list-or"),
        }
    }

    /// `a, b and c`.
    fn listed(&self, args: &[Arg], with: &str) -> String {
        let texts: Vec<String> = args.iter().map(|arg| self.arg(arg)).collect();
        match texts.as_slice() {
            [] => String::new(),
            [one] => one.clone(),
            [front @ .., last] => format!("{} {} {last}", front.join(", "), self.text(with)),
        }
    }

    /// A figure with the language's decimal sign.
    pub fn number(&self, number: Decimal) -> String {
        figures::number(self.language, number)
    }

    /// A figure with so many decimals, zeros at its end and all: `12.50`.
    pub fn decimals(&self, number: Decimal, places: u32) -> String {
        figures::decimals(self.language, number, places)
    }

    /// A weight: `250 g`, `1.125 kg`; `8.8 oz`, `2.48 lb`.
    pub fn grams(&self, grams: Grams) -> String {
        weights::grams(self, grams)
    }

    /// A weight in pounds and ounces, as a printed tag has it: `2 lb 7.7 oz`.
    pub fn pounds_and_ounces(&self, grams: Grams) -> String {
        weights::pounds_and_ounces(self, grams)
    }

    /// A day: `Fri 26 Jun`, in the United States `Fri, Jun 26`, with its year where that is another than the reader's.
    pub fn day(&self, day: NaiveDate) -> String {
        figures::day(self, day)
    }

    /// The same without its weekday: `26 Jun`, `Jun 26`.
    pub fn date(&self, day: NaiveDate) -> String {
        figures::date(self, day)
    }

    /// A moment by the kitchen's clock: `Fri 26 Jun 10:40`, `Fri, Jun 26, 10:40 am`, `ven. 26 juin à 10 h 40`.
    pub fn moment(&self, moment: NaiveDateTime) -> String {
        figures::moment(self, moment)
    }
}
