//! What is told of a product for its name and standard, on the wire.

use super::cures::decimal;
use super::{Line, Number, Vocabulary, Word};
use domain::duties::mince::MinceKind;
use domain::measure::Percent;
use domain::naming::StandardTold;
use serde::{Deserialize, Serialize};
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
        }
    }
}
