//! The words of a label in one of its languages: plain words of our own. What a law fixes comes with
//! its profile.

use chrono::{NaiveDate, NaiveDateTime};
use domain::cure::Basis;
use domain::grams::Grams;
use domain::messages;
use domain::says::{Arg, Says};
use domain::words::{Profile, State};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use words::{Heat, Language, Speech};

messages! {
    /// The lines of a label that hold a figure, a day or a name. Those that hold none are named where
    /// they are used.
    LabelWords in "label" {
        UseByDay "use-by-day" { day: String },
        Made "made" { day: String },
        FrozenOn "frozen-on" { day: String },
        HeldSince "held-since" { day: String },
        OnceThawed "once-thawed" { days: i32 },
        Contains "contains" { names: String },
        ReceivedAt "received-at" { at: NaiveDateTime },
        ReceivedCold "received-cold" { at: NaiveDateTime, degrees: Arg },
        Left "left" { weight: String },
        Killed "killed" { day: NaiveDate },
        FarmKilled "farm-killed" { farm: String, day: String },
        Carcass "carcass" { number: String },
        Tag "tag" { tag: String },
        TheirLot "their-lot" { lot: String },
        Green "green" { weight: String },
        GreenOf "green-of" { weight: String, nth: u32, of: u32 },
        GreenTogether "green-together" { weight: String, pieces: u32 },
        Salted "salted" { day: String },
        Turns "turns" { days: String },
        TurnsEvery "turns-every" { apart: i64, from: String, until: String },
        TurnsAndMore "turns-and-more" { days: String },
        OutOfCureOn "out-of-cure-on" { day: String },
        Release "release" { target: String },
        ReleaseFrom "release-from" { day: String },
        ReleaseBoth "release-both" { target: String, day: String },
        ReleaseTarget "release-target" { weight: String, loss: Decimal },
        Reprint "reprint" { nth: u32 },
        Specimen "specimen",
        CookAndHold "cook-and-hold" {
            method: String, fahrenheit: Decimal, celsius: Decimal, hold: Arg,
        },
        CookAtOnce "cook-at-once" { method: String, fahrenheit: Decimal, celsius: Decimal },
        UnitPrice "unit-price" { price: String, unit: String },
    }
}

/// One language's words.
#[derive(Debug, Clone, Copy)]
pub struct Phrases {
    /// The language's tag.
    pub language: &'static str,
    speech: Speech,
}

impl Phrases {
    /// The words of a language; English where there are none yet. A label is in metric units, and
    /// tells the year of its dates.
    pub fn of(language: &str) -> Phrases {
        let language = Language::of_tag(language).unwrap_or_default();
        Phrases {
            language: language.tag(),
            speech: Speech::in_language(language),
        }
    }

    /// The same as a place writes it: in the United States the month stands before its day, and a clock has twelve
    /// hours. Labels of all other places are as they were.
    pub fn in_place(self, place: Profile) -> Phrases {
        let speech = Speech {
            place: Some(place).filter(|place| *place == Profile::Us),
            on_label: true,
            ..self.speech
        };
        Phrases { speech, ..self }
    }

    /// A text of the catalogue: `label-raw`.
    pub fn text(&self, key: &str) -> String {
        self.speech.text(key)
    }

    /// A line that holds something.
    pub fn say(&self, says: impl Into<Says>) -> String {
        self.speech.say(&says.into())
    }

    /// A date with its weekday, the month in letters: `Fri 26 Jun 2026`.
    pub fn date(&self, date: NaiveDate) -> String {
        self.speech.day(date)
    }

    /// A date for the small label of the same season, where the year goes without saying: `Fri 26 Jun`.
    pub fn day_label(&self, date: NaiveDate) -> String {
        self.of_the_year(date).day(date)
    }

    /// A date without its weekday, where the first language has told it: `26 juin 2026`.
    pub fn short_date(&self, date: NaiveDate) -> String {
        self.speech.date(date)
    }

    /// A day of a month that is near: `26 Jun`.
    pub fn day_of_month(&self, date: NaiveDate) -> String {
        self.of_the_year(date).date(date)
    }

    fn of_the_year(&self, date: NaiveDate) -> Speech {
        Speech {
            today: Some(date),
            ..self.speech
        }
    }

    /// A weight: grams, from a kilogram on kilograms to the gram.
    pub fn weight(&self, grams: Grams) -> String {
        const KILOGRAM_MG: i64 = 1_000_000;
        let whole = Decimal::new(grams.milligrams(), 3).round().to_i64();
        let whole = whole.filter(|_| grams.milligrams() >= KILOGRAM_MG);
        self.speech.grams(whole.map_or(grams, Grams::whole))
    }

    /// A weight in pounds and ounces, for a kitchen that reads them.
    pub fn pounds(&self, grams: Grams) -> String {
        self.speech.pounds_and_ounces(grams)
    }

    /// A line of a tag that stays in the kitchen: a temperature stands on it as the kitchen reads them.
    pub fn say_in_house(&self, says: impl Into<Says>, heat: Heat) -> String {
        let speech = Speech {
            heat,
            ..self.speech
        };
        speech.say(&says.into())
    }

    /// A figure with so many decimals.
    pub fn decimals(&self, number: Decimal, places: u32) -> String {
        self.speech.decimals(number, places)
    }

    /// Kilograms with three decimals, as a butcher's scale shows them.
    pub fn scale_weight(&self, grams: Grams) -> String {
        let kilograms = Decimal::new(grams.milligrams(), 6);
        format!("{}\u{a0}kg", self.speech.decimals(kilograms, 3))
    }

    /// What is in it, by names; nothing where there are none.
    pub fn contains(&self, names: &[String]) -> String {
        match names.is_empty() {
            true => String::new(),
            false => self.say(LabelWords::Contains {
                names: names.join(", "),
            }),
        }
    }

    /// How it was cured: with salt, and what else by name.
    pub fn cured(&self, with: &[Basis]) -> String {
        let names = with.iter().map(|of| self.text(&format!("Basis-{of}")));
        std::iter::once(self.text("label-cured"))
            .chain(names)
            .collect::<Vec<_>>()
            .join(", ")
    }

    /// How a pack is kept.
    pub fn storage(&self, state: State) -> String {
        self.text(match state {
            State::Chilled => "label-keep-chilled",
            State::Frozen => "label-keep-frozen",
            State::Ambient => "label-keep-ambient",
            State::Hot => "label-keep-hot",
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn dates_are_read_at_a_glance() {
        let date = "2026-06-26".parse().unwrap();
        assert_eq!(Phrases::of("en").date(date), "Fri 26 Jun 2026");
        assert_eq!(Phrases::of("fr").date(date), "ven. 26 juin 2026");
        assert_eq!(Phrases::of("en").day_label(date), "Fri 26 Jun");
        assert_eq!(Phrases::of("fr").short_date(date), "26 juin 2026");
        assert_eq!(Phrases::of("fr").day_of_month(date), "26 juin");
    }

    #[test]
    fn weights_are_in_the_languages_figures() {
        let told = |language, milligrams| {
            let weight = Phrases::of(language).weight(Grams::from_milligrams(milligrams));
            weight.replace('\u{a0}', " ")
        };
        assert_eq!(told("en", 250_500), "250.5 g");
        assert_eq!(told("en", 1_125_000), "1.125 kg");
        assert_eq!(told("en", 1_125_400), "1.125 kg");
        assert_eq!(told("fr", 12_400_000), "12,4 kg");
        let scale = Phrases::of("fr").scale_weight(Grams::whole(11_320));
        assert_eq!(scale, "11,320\u{a0}kg");
    }
}
