//! What is told of a product for its name and standard, on the wire.

use super::cures::decimal;
use super::{Line, Number, Vocabulary, Word};
use chrono::TimeDelta;
use domain::duties::mince::MinceKind;
use domain::duties::tenderised::CookingTold;
use domain::measure::{Percent, Temperature};
use domain::naming::StandardTold;
use domain::says::Texts;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use utoipa::ToSchema;

impl Vocabulary for MinceKind {
    const SPELT: &'static [&'static str] = MinceKind::SPELT;
    const NAME: &'static str = "MinceKind";
    fn parse(text: &str) -> Option<Self> {
        MinceKind::parse(text)
    }
    fn as_str(self) -> &'static str {
        MinceKind::as_str(self)
    }
}

/// A word of [`MinceKind`].
pub type MinceWord = Word<MinceKind>;

/// What the name and the standard of a product hang on and no record shows. What is left out is not
/// known, and is only warned of.
#[derive(Debug, Clone, Default, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct StandardEntry {
    /// A place that the name speaks of: `Parma`.
    pub place: Option<Line>,
    /// Is it made where the name says: in that place, on a farm, in the country?
    pub made_there: Option<bool>,
    /// Is it a loaf rather than a cut?
    pub loaf: Option<bool>,
    /// Are both bones of the shank out?
    pub shank_bones_out: Option<bool>,
    /// Do bones remain in it?
    pub bones_remain: Option<bool>,
    /// The liquid that it is packed in: `brine`.
    pub packed_in: Option<Line>,
    /// Meat protein in the finished food, in per cent, as a laboratory found it.
    pub protein_percent: Option<Number>,
    /// Fat in it.
    pub fat_percent: Option<Number>,
    /// Collagen in its meat protein.
    pub collagen_percent: Option<Number>,
    /// Shank meat over what is normal, in chopped ham.
    pub shank_over_percent: Option<Number>,
    /// The part of the weight that is added ingredients.
    pub added_percent: Option<Number>,
    /// Salt inside, as measured.
    pub salt_percent: Option<Number>,
    /// Water inside, as measured.
    pub water_percent: Option<Number>,
    /// As what sort of mince it is sold.
    pub mince: Option<MinceWord>,
    /// Did blades or needles go through it?
    pub tenderised: Option<bool>,
    /// Is it sold as a steak?
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub steak: bool,
    /// How its label tells to cook it, as the kitchen has shown that it is cooked; where blades or needles went
    /// through it. Left out, the place's own figures are printed.
    pub cooking: Option<CookingEntry>,
}

/// How a label tells to cook what was tenderised.
#[derive(Debug, Clone, Default, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct CookingEntry {
    /// The method, by language: `Grill, turning it twice`.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub method: BTreeMap<Line, Line>,
    /// The core, in degrees Celsius; this or the next.
    pub celsius: Option<Number>,
    /// The core, in degrees Fahrenheit.
    pub fahrenheit: Option<Number>,
    /// For how many minutes it is held there.
    pub hold_minutes: Option<Number>,
}

impl CookingEntry {
    /// As the core has it; nothing where no temperature is told.
    fn told(&self) -> Option<CookingTold> {
        let core = match (self.celsius, self.fahrenheit) {
            (_, Some(degrees)) => Temperature::fahrenheit(decimal(degrees)),
            (Some(degrees), None) => Temperature::celsius(decimal(degrees)),
            (None, None) => return None,
        };
        let method = self.method.iter();
        let method = method.map(|(language, words)| (language.0.clone(), words.0.clone()));
        let minutes = self.hold_minutes.map_or(0, |Number(minutes)| minutes);
        Some(CookingTold {
            method: Texts::new(method.collect()),
            core,
            held: TimeDelta::milliseconds(minutes.saturating_mul(60) / 1_000),
        })
    }
}

impl StandardEntry {
    /// As the core has it.
    pub fn told(&self) -> StandardTold {
        let percent = |number: Option<Number>| number.map(|number| Percent::new(decimal(number)));
        let text = |line: &Option<Line>| line.as_ref().map(|line| line.0.clone());
        StandardTold {
            place: text(&self.place),
            made_there: self.made_there,
            loaf: self.loaf,
            shank_bones_out: self.shank_bones_out,
            bones_remain: self.bones_remain,
            packed_in: text(&self.packed_in),
            protein: percent(self.protein_percent),
            fat: percent(self.fat_percent),
            collagen: percent(self.collagen_percent),
            shank_over: percent(self.shank_over_percent),
            added: percent(self.added_percent),
            salt: percent(self.salt_percent),
            water: percent(self.water_percent),
            mince: self.mince.map(|word| word.0),
            tenderised: self.tenderised,
            steak: self.steak,
            cooking: self.cooking.as_ref().and_then(CookingEntry::told),
        }
    }
}
