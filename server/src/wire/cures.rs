//! Curing on the wire: how strong a curing salt is, how a product is cured and released, what a step
//! says of its cure.

use super::{By, Code, Line, Number, Vocabulary, Weight, Word};
use domain::cure::{Alkali, Class, Method, Strength};
use domain::cure_room::ReleaseRule;
use domain::heat::Food;
use domain::ingredients::Nature;
use domain::measure::Percent;
use domain::product::{CuredAs, Hung, Lies};
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

macro_rules! cure_vocabularies {
    ($($name:ident),+ $(,)?) => {$(
        impl Vocabulary for $name {
            const SPELT: &'static [&'static str] = $name::SPELT;
            const NAME: &'static str = stringify!($name);
            fn parse(text: &str) -> Option<Self> { $name::parse(text) }
            fn as_str(self) -> &'static str { $name::as_str(self) }
        }
    )+};
}
cure_vocabularies!(Alkali, Class, Method);

impl Vocabulary for Food {
    const SPELT: &'static [&'static str] = &["intact", "ground", "poultry", "roast", "microwaved"];
    const NAME: &'static str = "Food";
    fn parse(text: &str) -> Option<Self> {
        Food::parse(text)
    }
    fn as_str(self) -> &'static str {
        Food::as_str(self)
    }
}

impl Vocabulary for Nature {
    const SPELT: &'static [&'static str] = Nature::SPELT;
    const NAME: &'static str = "Nature";
    fn parse(text: &str) -> Option<Self> {
        Nature::parse(text)
    }
    fn as_str(self) -> &'static str {
        Nature::as_str(self)
    }
}

/// A word of [`Nature`].
pub type NatureWord = Word<Nature>;
/// A word of [`Food`].
pub type FoodWord = Word<Food>;
/// A word of [`Alkali`].
pub type AlkaliWord = Word<Alkali>;
/// A word of [`Class`].
pub type ClassWord = Word<Class>;
/// A word of [`Method`].
pub type MethodWord = Word<Method>;

/// How strong a curing salt is, as the bag says it: in per cent, 6.25 for six and a quarter.
#[derive(Debug, Clone, Copy, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct CuringSalt {
    /// Nitrite by weight, in per cent.
    pub nitrite_percent: Option<Number>,
    /// Which nitrite: sodium if left out.
    pub nitrite_of: Option<AlkaliWord>,
    /// Nitrate by weight, in per cent.
    pub nitrate_percent: Option<Number>,
    /// Which nitrate: sodium if left out.
    pub nitrate_of: Option<AlkaliWord>,
    /// Common salt by weight, in per cent, where something else is in it too; the rest if left out.
    pub salt_percent: Option<Number>,
}

impl CuringSalt {
    /// Does another telling of the same bag say something else? What one of them leaves out it does not deny.
    pub fn contradicts(&self, other: &CuringSalt) -> bool {
        let apart = |one: Option<Number>, two: Option<Number>| {
            one.zip(two)
                .is_some_and(|(one, two)| decimal(one) != decimal(two))
        };
        let metals = |one: Option<AlkaliWord>, two: Option<AlkaliWord>| {
            one.zip(two).is_some_and(|(one, two)| one.0 != two.0)
        };
        apart(self.nitrite_percent, other.nitrite_percent)
            || apart(self.nitrate_percent, other.nitrate_percent)
            || apart(self.salt_percent, other.salt_percent)
            || metals(self.nitrite_of, other.nitrite_of)
            || metals(self.nitrate_of, other.nitrate_of)
    }

    /// The domain's strength.
    pub fn strength(&self) -> Strength {
        let percent = |number: Option<Number>| number.map(|number| Percent::new(decimal(number)));
        Strength {
            nitrite: percent(self.nitrite_percent),
            nitrite_of: self.nitrite_of.map_or(Alkali::Sodium, |word| word.0),
            nitrate: percent(self.nitrate_percent),
            nitrate_of: self.nitrate_of.map_or(Alkali::Sodium, |word| word.0),
            salt: percent(self.salt_percent),
            weighed: false,
        }
    }
}

/// How a product is cured: what the limits divide by.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct CuredAsEntry {
    /// What is cured.
    pub class: ClassWord,
    /// How, where the step does not say otherwise.
    pub method: MethodWord,
    /// Will it be cooked in this kitchen?
    pub heated: Option<bool>,
    /// Is it cured with nitrite or nitrate? If so, a cure without a curing salt of known strength is not
    /// proven. If left out: with salt alone, or with what goes in.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub nitrite: Option<bool>,
    /// The way it lies in its cure, for what does not hang afterwards: how long, and how often it is turned.
    /// `dry-bacon`, `sweet-pickle`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub salting: Option<Code>,
    /// The house's own days in the cure. If left out: those of the way.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub days: Option<u32>,
}

impl CuredAsEntry {
    /// The domain's.
    pub fn cured_as(&self) -> CuredAs {
        CuredAs {
            class: self.class.0,
            method: self.method.0,
            heated: self.heated,
            nitrite: self.nitrite,
        }
    }

    /// How it lies in its cure, where somebody said so.
    pub fn lies(&self) -> Option<Lies> {
        (self.salting.is_some() || self.days.is_some()).then(|| Lies {
            salting: self.salting.as_ref().map(|key| key.0.clone()),
            days: self.days,
        })
    }
}

/// What must be met before a cured piece is released. What is left out is not asked for.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ReleaseEntry {
    /// At least so much of the green weight lost, in per cent.
    pub loss_percent: Option<Number>,
    /// So many points under that may it be.
    pub tolerance_points: Option<Number>,
    /// At least so many days from the first salt.
    pub days: Option<u32>,
    /// At most this water activity.
    pub water_activity: Option<Number>,
    /// Does somebody sign? If left out: yes.
    pub signature: Option<bool>,
    /// The curve that it dries along, for its alarms and its forecast: `ham`.
    pub curve: Option<Code>,
    /// The way it is salted, for the calendar of what is due: `forty-days`, `covered-in-salt`.
    pub salting: Option<Code>,
}

impl ReleaseEntry {
    /// How the domain's product hangs.
    pub fn hung(&self) -> Hung {
        let percent = |number: Number| Percent::new(decimal(number));
        Hung {
            release: ReleaseRule {
                loss: self.loss_percent.map(percent),
                tolerance: self.tolerance_points.map(percent).unwrap_or_default(),
                days: self.days,
                water_activity: self.water_activity.map(decimal),
                signature: self.signature.unwrap_or(true),
                rows: Vec::new(),
            },
            curve: self.curve.as_ref().map(|key| key.0.clone()),
            salting: self.salting.as_ref().map(|key| key.0.clone()),
        }
    }
}

/// What a step says of its cure, beyond what its product says.
#[derive(Debug, Clone, Copy, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct CureAsked {
    /// How it was done.
    pub method: Option<MethodWord>,
    /// Is the rind on?
    pub skin_on: Option<bool>,
    /// How much pickle was pumped, in per cent of the meat.
    pub pump_percent: Option<Number>,
    /// How much pickle the meat took up, in per cent of the meat.
    pub pickup_percent: Option<Number>,
    /// The whole pickle, where it was weighed apart.
    pub pickle_grams: Option<Weight>,
    /// The step of the scale that the curing salt was weighed on: 0.1 or 1.
    pub scale_grams: Option<Weight>,
}

/// A cured piece is released.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ReleaseAsked {
    /// Made by the device.
    pub id: super::asked::Id,
    /// When; now if left out.
    pub at: Option<super::Instant>,
    /// Who signs.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// The lot.
    pub lot: Line,
    /// Why an alarm (drying too fast, too slow) may be passed over: who looked, what was found.
    pub alarm_looked_at: Option<super::Note>,
    /// What speaks for pork that is eaten without cooking, where its farms have no certificate.
    pub trichinae: Option<TrichinaeAsked>,
    /// A word about it.
    pub note: Option<super::Note>,
}

/// A number of the wire as a decimal.
pub fn decimal(number: Number) -> Decimal {
    Decimal::new(number.0, 6).normalize()
}

/// A decimal as a number of the wire, to six places.
pub fn number(decimal: Decimal) -> Number {
    use rust_decimal::prelude::ToPrimitive;
    let millionths = (decimal * Decimal::from(1_000_000)).round();
    Number(millionths.to_i64().unwrap_or(i64::MAX))
}

/// What speaks for pork that is eaten without cooking. At least one.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct TrichinaeAsked {
    /// It was frozen.
    pub frozen: Option<FrozenAsked>,
    /// It was heated.
    pub heated: Option<HeatedAsked>,
    /// A paper says that it needs no treatment.
    pub certificate: Option<CertificateAsked>,
    /// It was cured and dried by a method: salt, days and rooms are those on record.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub dried: Option<DriedAsked>,
}

/// A freezing against trichinae.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct FrozenAsked {
    /// The warmest that it was, in degrees Celsius; this or the next.
    pub celsius: Option<Number>,
    /// The warmest that it was, in degrees Fahrenheit.
    pub fahrenheit: Option<Number>,
    /// For how many hours.
    pub hours: u32,
    /// Was that read in the middle of the meat? If left out: in the room.
    pub in_the_meat: Option<bool>,
    /// How thick the piece is, in millimetres; needed where the room was read.
    pub thickness_mm: Option<Number>,
}

/// A heating against trichinae.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct HeatedAsked {
    /// The core, in degrees Celsius; this or the next.
    pub celsius: Option<Number>,
    /// The core, in degrees Fahrenheit.
    pub fahrenheit: Option<Number>,
    /// For how many whole minutes.
    pub minutes: Number,
}

/// A curing and drying against trichinae, by a method of the place.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct DriedAsked {
    /// The method: `sausage-1` to `sausage-7`, `coppa` …
    pub method: Code,
    /// The casing's diameter when it was stuffed, in millimetres.
    pub casing_mm: Option<Number>,
    /// The largest pieces of meat in it, in millimetres.
    pub piece_mm: Option<Number>,
    /// The depth of the mass in which it cured, in millimetres.
    pub mass_mm: Option<Number>,
    /// The heaviest piece of the lot before the cure.
    pub heaviest_grams: Option<Weight>,
    /// Is it pepperoni?
    pub pepperoni: Option<bool>,
}

/// A certificate.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct CertificateAsked {
    /// `carcass-tested`, `negligible-risk-herd` or `unweaned`.
    pub way: Code,
    /// Its number.
    pub paper: Line,
}

/// A cure to be worked out.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct CurePlanAsked {
    /// What is cured.
    pub class: ClassWord,
    /// How.
    pub method: MethodWord,
    /// The green meat.
    pub meat_grams: Weight,
    /// Water: in the bag with the meat, or in the brine.
    pub water_grams: Option<Weight>,
    /// All salt, in per cent of the meat (and water).
    pub salt_percent: Option<Number>,
    /// Sugar, in per cent.
    pub sugar_percent: Option<Number>,
    /// How strong the curing salt is: read off the bag.
    pub curing_salt: CuringSalt,
    /// Curing salt, in per cent of the meat (and water).
    pub dose_percent: Option<Number>,
    /// Or the nitrite wanted, as sodium nitrite, in parts per million.
    pub target_ppm: Option<Number>,
    /// The step of the scale.
    pub scale_grams: Option<Weight>,
    /// Is the rind on?
    pub skin_on: Option<bool>,
    /// Will it be cooked?
    pub heated: Option<bool>,
    /// How much pickle is pumped, in per cent of the meat.
    pub pump_percent: Option<Number>,
    /// How much pickle the meat takes up, in per cent of the meat.
    pub pickup_percent: Option<Number>,
    /// The whole pickle.
    pub pickle_grams: Option<Weight>,
}
