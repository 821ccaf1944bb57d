//! Events of lots as others read them: an EPCIS 2.0 document in JSON-LD (standards 3.2), each event with the id that
//! follows from what it says (standards 3.6).

mod event;
mod hash;

pub use event::{Event, EventKind, Item};

use chrono::{DateTime, Utc};
use serde_json::{Value, json};

/// The context that every document names (standards 3.2).
const CONTEXT: &str = "https://ref.gs1.org/standards/epcis/2.0.0/epcis-context.jsonld";

/// The prefix of our own fields.
const OWN: &str = "kitchen";

/// The document of some events. `vocabulary` is the address that our own fields are of.
pub fn document(events: &[Event], vocabulary: &str, created: DateTime<Utc>) -> Value {
    let events: Vec<Value> = events
        .iter()
        .map(|event| event.json(OWN, vocabulary))
        .collect();
    json!({
        "@context": [CONTEXT, { OWN: vocabulary }],
        "type": "EPCISDocument",
        "schemaVersion": "2.0",
        "creationDate": created.to_rfc3339_opts(chrono::SecondsFormat::Millis, true),
        "epcisBody": { "eventList": events },
    })
}
