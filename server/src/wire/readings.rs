//! What instruments showed, as it is asked: temperatures on either scale, pH, water activity, brine.

use super::asked::Id;
use super::{By, Code, Instant, Line, Note, Number, Vocabulary, Weight, Word};
use domain::heat::Bath;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// Readings taken during a deed.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ReadingsAsked {
    /// Degrees Celsius.
    pub celsius: Option<Number>,
    /// Or degrees Fahrenheit.
    pub fahrenheit: Option<Number>,
    /// The probe that it was read with.
    pub probe: Option<Code>,
    /// How many minutes the core was held at that temperature.
    pub hold_minutes: Option<Number>,
    /// How many minutes a pot boiled: instead of a temperature, for what is liquid.
    pub boiled_minutes: Option<Number>,
    /// pH.
    pub ph: Option<Number>,
    /// Water activity, 0 to 1.
    pub water_activity: Option<Number>,
    /// Brine strength.
    pub salometer: Option<Salometer>,
}

/// A salometer reading with its scale.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Salometer {
    /// Degrees, 0 to 100.
    pub degrees: Number,
    /// Which scale the instrument has.
    pub scale: SalometerScale,
    /// The brine's temperature in degrees Celsius.
    pub celsius: Option<Number>,
    /// Or in degrees Fahrenheit.
    pub fahrenheit: Option<Number>,
}

/// The temperature that a salometer is made for.
#[derive(Debug, Clone, Copy, Serialize, Deserialize, ToSchema)]
pub enum SalometerScale {
    /// 60 °F.
    #[serde(rename = "60F")]
    Sixty,
    /// 38 °F.
    #[serde(rename = "38F")]
    ThirtyEight,
}

/// One timed reading of the core.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct LogAsked {
    /// When.
    pub at: Instant,
    /// Degrees Celsius.
    pub celsius: Option<Number>,
    /// Or degrees Fahrenheit.
    pub fahrenheit: Option<Number>,
    /// The probe that it was read with.
    pub probe: Option<Code>,
    /// Instead of a temperature: how many minutes the pot had boiled by then.
    pub boiled_minutes: Option<Number>,
}

/// A reading of a lot or a place.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ReadingAsked {
    /// Made by the device.
    pub id: Id,
    /// When; now if left out.
    pub at: Option<Instant>,
    /// Who.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// The lot.
    pub lot: Option<Line>,
    /// The place.
    pub place: Option<Code>,
    /// What it weighs now: for a lot of one piece.
    pub grams: Option<Weight>,
    /// Degrees Celsius.
    pub celsius: Option<Number>,
    /// Or degrees Fahrenheit.
    pub fahrenheit: Option<Number>,
    /// The probe that it was read with.
    pub probe: Option<Code>,
    /// pH.
    pub ph: Option<Number>,
    /// Water activity, 0 to 1.
    pub water_activity: Option<Number>,
    /// Nitrite that a laboratory found in the finished food, as the ion, in mg/kg: a figure in sodium nitrite is 1.5
    /// times that.
    pub residual_nitrite_ppm: Option<Number>,
    /// Nitrate that it found, as the ion, in mg/kg.
    pub residual_nitrate_ppm: Option<Number>,
    /// Brine strength.
    pub salometer: Option<Salometer>,
    /// A word about it.
    pub note: Option<Note>,
}

/// A word of [`Bath`].
pub type BathWord = Word<Bath>;

impl Vocabulary for Bath {
    const SPELT: &'static [&'static str] = Bath::SPELT;
    const NAME: &'static str = "Bath";
    fn parse(text: &str) -> Option<Self> {
        Bath::parse(text)
    }
    fn as_str(self) -> &'static str {
        Bath::as_str(self)
    }
}

/// A probe is checked.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ProbeCheckAsked {
    /// Made by the device.
    pub id: Id,
    /// When; now if left out.
    pub at: Option<Instant>,
    /// Who.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// Which probe.
    pub probe: Code,
    /// In what.
    pub bath: BathWord,
    /// What it showed, in degrees Celsius.
    pub celsius: Option<Number>,
    /// Or in degrees Fahrenheit.
    pub fahrenheit: Option<Number>,
    /// A word about it.
    pub note: Option<Note>,
}

/// A place did not stay cold.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PlaceFailureAsked {
    /// Made by the device.
    pub id: Id,
    /// When it was noticed; now if left out.
    pub at: Option<Instant>,
    /// Who.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// Which place.
    pub place: Code,
    /// When it was last known to be cold.
    pub from: Instant,
    /// Until when it was not; until it was noticed if left out.
    pub until: Option<Instant>,
    /// What was read in between. Without readings it is taken to have been too warm all the time.
    #[serde(default)]
    pub readings: Vec<PlaceReadingAsked>,
    /// A word about it.
    pub note: Option<Note>,
}

/// One timed reading of a place.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PlaceReadingAsked {
    /// When.
    pub at: Instant,
    /// Degrees Celsius.
    pub celsius: Option<Number>,
    /// Or degrees Fahrenheit.
    pub fahrenheit: Option<Number>,
}
