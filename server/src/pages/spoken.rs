//! How a page speaks to its reader: the catalogue, figures and days in their language and units.

use super::says::PageSays;
use super::unbroken::Unbroken;
use crate::read::names::Names;
use crate::who::people::FIRST;
use chrono::{DateTime, NaiveDate, Utc};
use chrono_tz::Tz;
use domain::grams::Grams;
use domain::lot::Lot;
use domain::says::{Says, Texts};
use domain::words::{Allergen, ProductKind, Profile, Species};
use rust_decimal::prelude::ToPrimitive;
use rust_decimal::{Decimal, RoundingStrategy};
use std::collections::BTreeSet;
use std::fmt::Display;
use words::{Mass, Speech, capital};

/// What stands where there is nothing to say.
pub const NONE: &str = "–";

/// What a slaughterhouse is called, and in the United States.
pub const ABATTOIR: [&str; 2] = ["page-receive-abattoir", "page-receive-abattoir-us"];

/// A page's words for one reader.
#[derive(Clone, Copy)]
pub struct Words(pub Speech);

impl Words {
    /// Those of the reader for whom names were read.
    pub fn of(names: &Names) -> Words {
        Words(names.speech)
    }

    /// A text of the catalogue: `page-lot-family`.
    pub fn t(&self, key: &str) -> String {
        self.0.text(key)
    }

    /// Several things that have commas of their own.
    pub fn apart(&self, of: &[String]) -> String {
        of.join(&self.t("page-apart"))
    }

    /// A text of which the United States have another: nobody there says abattoir.
    pub fn in_place(&self, [key, in_us]: [&str; 2], profile: Profile) -> String {
        match profile {
            Profile::Us => self.t(in_us),
            Profile::Ca | Profile::Eu | Profile::Uk => self.t(key),
        }
    }

    /// A message.
    pub fn say(&self, says: impl Into<Says>) -> String {
        self.0.say(&says.into())
    }

    /// What somebody is: `cook, counter`.
    pub fn roles(&self, roles: &[domain::right::Role]) -> String {
        let said = roles.iter().map(|role| self.say(role.says()));
        said.collect::<Vec<_>>().join(", ")
    }

    /// Somebody's name. The first manager has none until they give one: what they are stands for it.
    pub fn person(&self, name: &str) -> String {
        match name == FIRST {
            true => self.t("page-first-manager"),
            false => name.to_owned(),
        }
    }

    /// The language, as a page names it.
    pub fn lang(&self) -> &'static str {
        self.0.language.tag()
    }

    /// How the reader weighs, as a script asks it.
    pub fn mass(&self) -> &'static str {
        match self.0.mass {
            Mass::Metric => "metric",
            Mass::Pounds => "pounds",
        }
    }

    /// Twelve or twenty-four hours, as a script writes them.
    pub fn clock(&self) -> &'static str {
        match self.0.is_american() {
            true => "h12",
            false => "h23",
        }
    }

    /// The language as a script writes days in it: English in the United States has the month first.
    pub fn days_in(&self) -> &'static str {
        match (self.lang(), self.0.is_american()) {
            ("en", true) => "en-US",
            ("en", false) => "en-GB",
            (other, _) => other,
        }
    }

    /// A text of the data, as it is said where the reader works.
    pub fn of_data<'a>(&self, texts: &'a Texts) -> &'a str {
        texts.in_language(self.0.tag())
    }

    /// A message with a capital, at the head of a line.
    pub fn headed(&self, says: impl Into<Says>) -> String {
        capital(&self.say(says))
    }

    /// What something is about, a colon, and what is said of it: each language sets its own before it.
    pub fn colon(&self, of: impl Display, says: impl Display) -> String {
        let (of, says) = (of.to_string(), says.to_string());
        self.say(PageSays::Colon { of, says })
    }

    /// A text whose numbers do not break at the end of a line.
    pub fn unbroken<'a>(&self, text: &'a str) -> Unbroken<'a> {
        Unbroken(text)
    }

    /// A weight.
    pub fn grams(&self, grams: Grams) -> String {
        self.0.grams(grams)
    }

    /// A weight, or a dash for none.
    pub fn or_dash(&self, weight: Grams) -> String {
        match weight == Grams::ZERO {
            true => NONE.into(),
            false => self.grams(weight),
        }
    }

    /// A day with its weekday, the month in letters.
    pub fn day(&self, date: NaiveDate) -> String {
        self.0.day(date)
    }

    /// A time to the minute, as the kitchen's clock shows it.
    pub fn minute(&self, at: DateTime<Utc>, zone: Tz) -> String {
        self.0.moment(at.with_timezone(&zone).naive_local())
    }

    /// A share in per cent, to a tenth.
    pub fn share(&self, share: f64) -> String {
        if share > 0.0 && share < 0.001 {
            return self.say(PageSays::ShareUnder {
                percent: Decimal::new(1, 1),
            });
        }
        let percent = Decimal::from_f64_retain(share * 100.0).unwrap_or_default();
        let percent = self.0.decimals(percent, 1);
        self.say(PageSays::Percent { percent })
    }

    /// An amount of money in a currency.
    pub fn money(&self, minor: i64, currency: &str) -> String {
        let amount = self.0.decimals(Decimal::new(minor, 2), 2);
        format!("{amount}\u{a0}{currency}")
    }

    /// A price by weight, of a kilogram or of a pound as the reader weighs.
    pub fn price(&self, minor_per_kg: i64, currency: &str) -> String {
        match self.0.mass {
            Mass::Metric => format!("{}/kg", self.money(minor_per_kg, currency)),
            Mass::Pounds => {
                // A pound is 0.45359237 kg.
                let minor = Decimal::from(minor_per_kg) * Decimal::new(45_359_237, 8);
                let minor = minor.round_dp_with_strategy(0, RoundingStrategy::MidpointAwayFromZero);
                let minor = minor.to_i64().unwrap_or(i64::MAX);
                format!("{}/lb", self.money(minor, currency))
            }
        }
    }

    /// So many packs.
    pub fn packs(&self, packs: usize) -> String {
        self.say(PageSays::Packs { packs })
    }

    /// What a frozen pack has instead of a date. The day of the thaw is one of its days, also of what had none left.
    pub fn once_thawed(&self, days: i32) -> String {
        self.say(PageSays::OnceThawed { days: days.max(1) })
    }

    /// Where a last day stands to today; nothing where there is time yet.
    pub fn standing(&self, last_day: NaiveDate, today: NaiveDate) -> Option<String> {
        match last_day.cmp(&today) {
            std::cmp::Ordering::Less => Some(self.t("page-past")),
            std::cmp::Ordering::Equal => Some(self.t("page-last-day-today")),
            std::cmp::Ordering::Greater => None,
        }
    }

    /// Allergens in full: `Contains: milk, egg`. Where not all are known, that is said.
    pub fn allergens(&self, lot: &Lot) -> String {
        let perhaps = lot.perhaps();
        let mut allergens = self.allergens_of(&lot.allergens);
        if !perhaps.is_empty() {
            let perhaps = self.listed(perhaps.iter().map(|word| word.says()));
            let perhaps = self.say(PageSays::MayContain { allergens: perhaps });
            allergens = format!("{allergens}. {perhaps}");
        }
        match (
            lot.knows_allergens(),
            lot.allergens.is_empty() && perhaps.is_empty(),
        ) {
            (true, _) => allergens,
            (false, true) => self.t("page-allergens-unknown"),
            (false, false) => format!("{} {allergens}", self.t("page-allergens-unknown")),
        }
    }

    fn allergens_of(&self, allergens: &BTreeSet<Allergen>) -> String {
        if allergens.is_empty() {
            return self.t("page-no-allergens");
        }
        let allergens = self.listed(allergens.iter().map(|word| word.says()));
        self.say(PageSays::Contains { allergens })
    }

    /// The same as it is called across a counter: each name in capitals.
    pub fn allergens_called(&self, lot: &Lot) -> String {
        let called = self.called(&lot.allergens, lot.knows_allergens());
        let perhaps = lot.perhaps();
        if perhaps.is_empty() {
            return called;
        }
        let allergens = self.in_capitals(&perhaps);
        let perhaps = self.say(PageSays::MayContain { allergens });
        format!("{called}. {perhaps}")
    }

    /// Allergens as they are called; where not all are known, that comes first.
    pub fn called(&self, allergens: &BTreeSet<Allergen>, are_known: bool) -> String {
        let names = || {
            let allergens = self.in_capitals(allergens);
            self.say(PageSays::CounterContains { allergens })
        };
        match (are_known, allergens.is_empty()) {
            (true, true) => self.t("page-no-allergens"),
            (true, false) => names(),
            (false, true) => self.t("page-allergens-unknown"),
            (false, false) => format!("{} {}", self.t("page-allergens-unknown"), names()),
        }
    }

    fn in_capitals(&self, allergens: &BTreeSet<Allergen>) -> String {
        let names = allergens.iter().map(|word| word.says());
        self.listed(names).to_uppercase()
    }

    /// The animals in something.
    pub fn species(&self, species: &BTreeSet<Species>) -> String {
        self.listed(species.iter().map(|word| word.says()))
    }

    /// Words, one after the other.
    fn listed(&self, words: impl Iterator<Item = Says>) -> String {
        let words: Vec<String> = words.map(|word| self.say(word)).collect();
        words.join(", ")
    }

    /// Raw or ready, in the same cases as on the label.
    pub fn raw_or_ready(&self, lot: &Lot) -> String {
        use ProductKind::*;
        self.t(match (lot.product.raw, lot.product.kind) {
            (true, _) => "page-raw",
            (false, _) if !lot.is_called_ready() => "page-not-proven",
            (false, Cooked | Rendered | Stock | Cured | Mixed) => "page-ready",
            (false, _) => "page-not-raw",
        })
    }
}

/// A text, or a dash for none.
pub fn told(text: Option<&str>) -> String {
    text.unwrap_or(NONE).to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;
    use domain::words::Account;
    use words::Language;

    #[test]
    fn a_price_is_that_of_the_weight_that_one_reads() {
        let metric = words(Language::English);
        let mut pounds = metric;
        pounds.0.mass = Mass::Pounds;
        // 22.00 a kilogram times 0.45359237 is 9.979 a pound.
        assert_eq!(metric.price(2_200, "USD"), "22.00\u{a0}USD/kg");
        assert_eq!(pounds.price(2_200, "USD"), "9.98\u{a0}USD/lb");
    }

    fn words(language: Language) -> Words {
        let today = NaiveDate::from_ymd_opt(2026, 6, 26);
        Words(Speech {
            today,
            ..Speech::in_language(language)
        })
    }

    #[test]
    fn figures_read_at_a_glance() {
        let (english, french) = (words(Language::English), words(Language::French));
        let (time, zone) = (
            "2026-06-26T14:40:03.8Z".parse().unwrap(),
            Tz::America__New_York,
        );
        assert_eq!(english.minute(time, zone), "Fri 26 Jun 10:40");
        let in_french = "ven. 26 juin à 10\u{a0}h\u{a0}40";
        assert_eq!(french.minute(time, zone), in_french);
        assert_eq!(french.share(0.125), "12,5\u{a0}%");
        assert_eq!(english.share(0.5), "50.0\u{a0}%");
        assert_eq!(english.share(0.0004), "under 0.1\u{a0}%");
        assert_eq!(french.money(1250, "CAD"), "12,50\u{a0}CAD");
        assert_eq!(english.headed(Account::TakenBack.says()), "Taken back");
    }
}
