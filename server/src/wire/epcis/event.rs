//! One event: what it says, and how it is written.

use super::hash;
use chrono::{DateTime, FixedOffset, SecondsFormat};
use domain::grams::Grams;
use rust_decimal::Decimal;
use serde_json::{Map, Value, json};
use std::collections::BTreeMap;

/// What kind of event, with what only such events have (standards 3.3).
#[derive(Debug, Clone)]
pub enum EventKind {
    /// Something happened to lots.
    Object {
        /// Which.
        items: Vec<Item>,
        /// `ADD`, `OBSERVE` or `DELETE`.
        action: &'static str,
    },
    /// Lots became others.
    Transformation {
        /// What went in.
        inputs: Vec<Item>,
        /// What came out.
        outputs: Vec<Item>,
    },
    /// Something was put into a container.
    Aggregation {
        /// The container.
        parent: String,
        /// What.
        items: Vec<Item>,
    },
}

/// So much of a lot.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Item {
    /// Which, as an address.
    pub class: String,
    /// How much; none where that is not told.
    pub grams: Option<Grams>,
}

/// An event.
#[derive(Debug, Clone)]
pub struct Event {
    /// What kind.
    pub kind: EventKind,
    /// When, by the kitchen's clock.
    pub at: DateTime<FixedOffset>,
    /// What step of business it was, in the standard's word (standards 3.4).
    pub biz_step: &'static str,
    /// How the lots are since, in the standard's word.
    pub disposition: Option<&'static str>,
    /// Is it so until somebody says otherwise?
    pub persists: bool,
    /// Where the lots are since.
    pub biz_location: Option<String>,
    /// Where it happened.
    pub read_point: Option<String>,
    /// Fields of our own, by their names.
    pub own: BTreeMap<&'static str, String>,
}

impl Item {
    /// Kilograms, without zeros at the end.
    pub(super) fn kilograms(&self) -> Option<Decimal> {
        let grams = self.grams?;
        Some(Decimal::new(grams.milligrams(), 6).normalize())
    }

    fn json(&self) -> Value {
        let number = |kilograms: Decimal| serde_json::from_str::<Value>(&kilograms.to_string());
        match self.kilograms().map(number) {
            Some(Ok(kilograms)) => {
                json!({ "epcClass": self.class, "quantity": kilograms, "uom": "KGM" })
            }
            _ => json!({ "epcClass": self.class }),
        }
    }
}

impl Event {
    /// As it is written, with its id.
    pub(super) fn json(&self, prefix: &str, vocabulary: &str) -> Value {
        let mut out = Map::new();
        let mut put = |key: &str, value: Value| drop(out.insert(key.to_owned(), value));
        put("type", self.type_name().into());
        put("eventID", hash::id(self, vocabulary).into());
        put(
            "eventTime",
            self.at.to_rfc3339_opts(SecondsFormat::Millis, false).into(),
        );
        put("eventTimeZoneOffset", self.offset().into());
        let all = |items: &[Item]| Value::Array(items.iter().map(Item::json).collect());
        match &self.kind {
            EventKind::Object { items, action } => {
                put("quantityList", all(items));
                put("action", (*action).into());
            }
            EventKind::Transformation { inputs, outputs } => {
                put("inputQuantityList", all(inputs));
                put("outputQuantityList", all(outputs));
            }
            EventKind::Aggregation { parent, items } => {
                put("parentID", parent.as_str().into());
                put("childQuantityList", all(items));
                put("action", "ADD".into());
            }
        }
        put("bizStep", self.biz_step.into());
        if let Some(disposition) = self.disposition {
            put("disposition", disposition.into());
            if self.persists {
                put("persistentDisposition", json!({ "set": [disposition] }));
            }
        }
        for (key, place) in [
            ("readPoint", &self.read_point),
            ("bizLocation", &self.biz_location),
        ] {
            if let Some(place) = place {
                put(key, json!({ "id": place }));
            }
        }
        for (key, value) in &self.own {
            put(&format!("{prefix}:{key}"), value.as_str().into());
        }
        Value::Object(out)
    }

    pub(super) fn type_name(&self) -> &'static str {
        match self.kind {
            EventKind::Object { .. } => "ObjectEvent",
            EventKind::Transformation { .. } => "TransformationEvent",
            EventKind::Aggregation { .. } => "AggregationEvent",
        }
    }

    /// The kitchen's own, never `Z`.
    pub(super) fn offset(&self) -> String {
        self.at.format("%:z").to_string()
    }
}
