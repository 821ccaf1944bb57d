//! The words of a recall, and times that may be whole days.

use super::says::{ValueSays, fault};
use super::scalars::day;
use super::{Day, Instant, Vocabulary, Word};
use chrono::{DateTime, SubsecRound};
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use utoipa::openapi::RefOr;
use utoipa::openapi::schema::{ObjectBuilder, Schema, SchemaType, Type};
use utoipa::{PartialSchema, ToSchema};

macro_rules! recall_words {
    ($($(#[$about:meta])* $word:ident: $of:path = $name:literal;)+) => {$(
        impl Vocabulary for $of {
            const SPELT: &'static [&'static str] = <$of>::SPELT;
            const NAME: &'static str = $name;
            fn parse(text: &str) -> Option<Self> { <$of>::parse(text) }
            fn as_str(self) -> &'static str { <$of>::as_str(self) }
        }

        $(#[$about])*
        pub type $word = Word<$of>;
    )+};
}
recall_words! {
    /// How far a scope goes.
    SpreadsWord: domain::scope::Spreads = "Spreads";
    /// What a recall is about.
    HazardWord: domain::incident::Hazard = "Hazard";
    /// What is noted of an incident.
    IncidentNoteWord: domain::incident::IncidentNote = "IncidentNote";
}

/// An instant, or a day: then the kitchen's day from midnight.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum InstantOrDay {
    /// An instant.
    Instant(Instant),
    /// A day.
    Day(Day),
}

impl<'de> Deserialize<'de> for InstantOrDay {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let text = String::deserialize(from)?;
        if let Ok(day) = day(&text) {
            return Ok(InstantOrDay::Day(Day(day)));
        }
        let instant = DateTime::parse_from_rfc3339(&text);
        let instant = instant.map_err(|_| fault(ValueSays::NoTime { text }))?;
        Ok(InstantOrDay::Instant(Instant(instant.trunc_subsecs(6))))
    }
}

impl Serialize for InstantOrDay {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        match self {
            InstantOrDay::Instant(instant) => instant.serialize(to),
            InstantOrDay::Day(day) => day.serialize(to),
        }
    }
}

impl PartialSchema for InstantOrDay {
    fn schema() -> RefOr<Schema> {
        let says = "An instant with its offset, or a day: the kitchen's from midnight";
        let text = ObjectBuilder::new().schema_type(SchemaType::new(Type::String));
        text.description(Some(says)).into()
    }
}

impl ToSchema for InstantOrDay {}
