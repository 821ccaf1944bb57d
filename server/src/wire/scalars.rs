//! The values that fields are made of. Each is checked as it is read, so that an error names its field.

use super::says::{ValueSays, fault};
use chrono::{DateTime, Datelike, FixedOffset, NaiveDate, SubsecRound};
use domain::grams::Grams;
use domain::words;
use rust_decimal::Decimal;
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use utoipa::openapi::schema::{ObjectBuilder, Schema, SchemaType, Type};
use utoipa::openapi::{KnownFormat, RefOr, SchemaFormat};
use utoipa::{PartialSchema, ToSchema};

/// Grams: a number with at most three decimals, read as a decimal and never as a float.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Weight(pub Grams);

/// A measured number, in millionths; read as a decimal and never as a float.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Number(pub i64);

/// Money in hundredths of the currency: a whole number, not negative.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(transparent)]
pub struct Amount(pub i64);

/// The first number of sixteen digits.
const OF_FIFTEEN_DIGITS: i64 = 1_000_000_000_000_000;

fn decimal(number: &serde_json::Number) -> Result<Decimal, ValueSays> {
    let text = number.to_string();
    let parsed = if text.contains(['e', 'E']) {
        Decimal::from_scientific(&text)
    } else {
        Decimal::from_str_exact(&text)
    };
    parsed
        .map(|decimal| decimal.normalize())
        .map_err(|_| ValueSays::TooMuch { number: text })
}

/// Scales a decimal to whole units of `10^-places`.
fn scaled(number: &serde_json::Number, places: u32) -> Result<i64, ValueSays> {
    let decimal = decimal(number)?;
    let text = || number.to_string();
    if decimal.scale() > places {
        let number = text();
        return Err(ValueSays::TooFine { number, places });
    }
    let whole = decimal.checked_mul(Decimal::from(10_i64.pow(places)));
    let too_much = || ValueSays::TooMuch { number: text() };
    let whole = whole.ok_or_else(too_much)?;
    let bounded = i64::try_from(whole.normalize().trunc())
        .ok()
        .filter(|whole| whole.abs() < 1_000_000_000_000_000);
    bounded.ok_or_else(too_much)
}

fn unscaled(units: i64, places: u32) -> serde_json::Number {
    let text = Decimal::new(units, places).normalize().to_string();
    serde_json::from_str(&text).unwrap_or_else(|_| serde_json::Number::from(units))
}

impl<'de> Deserialize<'de> for Weight {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let number = serde_json::Number::deserialize(from)?;
        scaled(&number, 3)
            .map(|mg| Weight(Grams::from_milligrams(mg)))
            .map_err(fault)
    }
}

impl Serialize for Weight {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let mg = self.0.milligrams();
        if mg % 1_000 == 0 {
            to.serialize_i64(mg / 1_000)
        } else if mg.abs() < OF_FIFTEEN_DIGITS {
            // Of so few digits no two are one float, and the shortest text that is read as it is the decimal itself.
            #[allow(
                clippy::cast_precision_loss,
                reason = "a float holds whole numbers of fifteen digits"
            )]
            to.serialize_f64(mg as f64 / 1_000.0)
        } else {
            unscaled(mg, 3).serialize(to)
        }
    }
}

impl<'de> Deserialize<'de> for Number {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let number = serde_json::Number::deserialize(from)?;
        scaled(&number, 6).map(Number).map_err(fault)
    }
}

impl Serialize for Number {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        unscaled(self.0, 6).serialize(to)
    }
}

impl<'de> Deserialize<'de> for Amount {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let number = serde_json::Number::deserialize(from)?;
        match scaled(&number, 0).map_err(fault)? {
            hundredths @ 0..=1_000_000_000 => Ok(Amount(hundredths)),
            _ => Err(fault(ValueSays::NoMoney {
                number: number.to_string(),
            })),
        }
    }
}

/// An instant: RFC 3339 with its offset. Kept and compared as the instant that it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Instant(pub DateTime<FixedOffset>);

impl<'de> Deserialize<'de> for Instant {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let text = String::deserialize(from)?;
        let instant = DateTime::parse_from_rfc3339(&text);
        let instant = instant.map_err(|_| fault(ValueSays::NoTime { text }))?;
        Ok(Instant(instant.trunc_subsecs(6)))
    }
}

impl Serialize for Instant {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(&self.0.to_utc().to_rfc3339())
    }
}

/// A calendar day: `2026-06-08`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Day(pub NaiveDate);

impl<'de> Deserialize<'de> for Day {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let text = String::deserialize(from)?;
        day(&text).map(Day).map_err(fault)
    }
}

/// Reads a calendar day. Years before 1900 are nobody's, and would be read with a sign too.
pub fn day(text: &str) -> Result<NaiveDate, ValueSays> {
    let day = NaiveDate::parse_from_str(text, "%Y-%m-%d")
        .ok()
        .filter(|day| text.len() == 10 && day.year() >= 1900);
    day.ok_or_else(|| ValueSays::NoDay {
        text: text.to_owned(),
    })
}

impl Serialize for Day {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(&self.0)
    }
}

/// One line of text: not empty, at most 200 characters, nothing unprintable; spaces around it go.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(transparent)]
pub struct Line(pub String);

/// A word about it: at most 2 000 characters; may have several lines, or be empty.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(transparent)]
pub struct Note(pub String);

/// The kitchen's own word for an entry of its lists: small letters, digits and hyphens, at most 64.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(transparent)]
pub struct Code(pub String);

impl<'de> Deserialize<'de> for Line {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let text = String::deserialize(from)?;
        let text = text.trim();
        if text.is_empty() {
            return Err(fault(ValueSays::Empty));
        }
        if text.chars().count() > 200 {
            return Err(fault(ValueSays::TooLong { most: 200 }));
        }
        // A scanner's separator is the one control character that means something.
        if text
            .chars()
            .any(|letter| letter.is_control() && letter != '\u{1d}')
        {
            return Err(fault(ValueSays::Unprintable));
        }
        Ok(Line(text.to_owned()))
    }
}

impl<'de> Deserialize<'de> for Note {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let text = String::deserialize(from)?;
        let text = text.trim();
        if text.chars().count() > 2_000 {
            return Err(fault(ValueSays::TooLong { most: 2_000 }));
        }
        if text
            .chars()
            .any(|letter| letter.is_control() && !matches!(letter, '\n' | '\r' | '\t'))
        {
            return Err(fault(ValueSays::Unprintable));
        }
        Ok(Note(text.to_owned()))
    }
}

impl<'de> Deserialize<'de> for Code {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let text = String::deserialize(from)?;
        let fits = (1..=64).contains(&text.len())
            && text
                .bytes()
                .all(|byte| byte.is_ascii_lowercase() || byte.is_ascii_digit() || byte == b'-')
            && !text.starts_with('-')
            && !text.ends_with('-');
        if fits {
            Ok(Code(text))
        } else {
            Err(fault(ValueSays::NoCode { text }))
        }
    }
}

/// A closed vocabulary.
pub trait Vocabulary: Copy + 'static {
    /// Every spelling.
    const SPELT: &'static [&'static str];
    /// The vocabulary's name.
    const NAME: &'static str;
    /// The word so spelt.
    fn parse(text: &str) -> Option<Self>;
    /// As it is spelt.
    fn as_str(self) -> &'static str;
}

macro_rules! vocabularies {
    ($($name:ident),+ $(,)?) => {$(
        impl Vocabulary for words::$name {
            const SPELT: &'static [&'static str] = words::$name::SPELT;
            const NAME: &'static str = stringify!($name);
            fn parse(text: &str) -> Option<Self> { words::$name::parse(text) }
            fn as_str(self) -> &'static str { words::$name::as_str(self) }
        }
    )+};
}
vocabularies!(
    ProductKind,
    Species,
    Allergen,
    State,
    Being,
    PaperKind,
    PlaceKind,
    Natural,
    StepKind,
    DepartureKind,
    Disposal,
    Addition,
    KeepFrom,
    Side,
    Profile,
    Verdict,
    DeedKind,
    Packaging,
    CurePart,
    MassUnits,
    HeatUnits
);

/// A word of a closed vocabulary.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Word<T>(pub T);

impl<'de, T: Vocabulary> Deserialize<'de> for Word<T> {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let text = String::deserialize(from)?;
        let word = T::parse(&text).map(Word);
        word.ok_or_else(|| {
            let words = T::SPELT.join(", ");
            fault(ValueSays::NoneOf { text, words })
        })
    }
}

impl<T: Vocabulary> Serialize for Word<T> {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(self.0.as_str())
    }
}

impl<T: Vocabulary> PartialSchema for Word<T> {
    fn schema() -> RefOr<Schema> {
        ObjectBuilder::new()
            .schema_type(SchemaType::new(Type::String))
            .enum_values(Some(T::SPELT.iter().copied()))
            .into()
    }
}

impl<T: Vocabulary> ToSchema for Word<T> {
    fn name() -> std::borrow::Cow<'static, str> {
        T::NAME.into()
    }
}

// The API's document takes names without parameters.
/// A word of [`words::ProductKind`].
pub type ProductKindWord = Word<words::ProductKind>;
/// A word of [`words::Species`].
pub type SpeciesWord = Word<words::Species>;
/// A word of [`words::Allergen`].
pub type AllergenWord = Word<words::Allergen>;
/// A word of [`words::State`].
pub type StateWord = Word<words::State>;
/// A word of [`words::PlaceKind`].
pub type PlaceKindWord = Word<words::PlaceKind>;
/// What keeps by nature.
pub type NaturalWord = Word<words::Natural>;
/// A word of [`words::DepartureKind`].
pub type DepartureKindWord = Word<words::DepartureKind>;
/// A word of [`words::Disposal`].
pub type DisposalWord = Word<words::Disposal>;
/// A word of [`words::Addition`].
pub type AdditionWord = Word<words::Addition>;
/// A word of [`words::KeepFrom`].
pub type KeepFromWord = Word<words::KeepFrom>;
/// A word of [`words::Side`].
pub type SideWord = Word<words::Side>;
/// A word of [`words::CurePart`].
pub type CurePartWord = Word<words::CurePart>;
/// A word of [`words::Packaging`].
pub type PackagingWord = Word<words::Packaging>;
/// A word of [`words::Profile`].
pub type ProfileWord = Word<words::Profile>;
/// Units of weight for the eye.
pub type MassUnitsWord = Word<words::MassUnits>;
/// Units of temperature for the eye.
pub type HeatUnitsWord = Word<words::HeatUnits>;

macro_rules! schemas {
    ($($name:ident: $build:expr;)+) => {$(
        impl PartialSchema for $name {
            fn schema() -> RefOr<Schema> { $build.into() }
        }
        impl ToSchema for $name {}
    )+};
}

fn typed(of: Type) -> ObjectBuilder {
    ObjectBuilder::new().schema_type(SchemaType::new(of))
}

schemas! {
    Weight: typed(Type::Number).description(Some("Grams, at most three decimals"));
    Number: typed(Type::Number).description(Some("At most six decimals"));
    Amount: typed(Type::Integer).minimum(Some(0)).description(Some("Hundredths of the currency"));
    Instant: typed(Type::String).format(Some(SchemaFormat::KnownFormat(KnownFormat::DateTime)));
    Day: typed(Type::String).format(Some(SchemaFormat::KnownFormat(KnownFormat::Date)));
    Line: typed(Type::String).min_length(Some(1)).max_length(Some(200));
    Note: typed(Type::String).max_length(Some(2_000));
    Code: typed(Type::String).pattern(Some("^[a-z0-9]([a-z0-9-]{0,62}[a-z0-9])?$"));
}

#[cfg(test)]
mod tests;
