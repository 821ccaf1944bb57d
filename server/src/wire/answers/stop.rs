//! Stops, as they are answered.

use super::instant;
use chrono_tz::Tz;
use domain::rows::RowId;
use domain::stop::Stop;
use serde::Serialize;
use utoipa::ToSchema;
use words::Speech;

/// A stop that stands.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct StopRead {
    /// Which: `failed`, `held`, `not-released`, `past-its-day`, `voided`, `not-proven`, `wrong-label`.
    pub stop: String,
    /// Why, and what to do.
    pub says: String,
    /// The key of `says`.
    pub key: String,
    /// The rows behind it.
    pub rows: Vec<String>,
    /// From when on, where a deed placed it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub since: Option<String>,
}

/// A stop, for a reader.
pub fn stop_read(stop: &Stop, zone: Tz, speech: &Speech) -> StopRead {
    StopRead {
        stop: stop.kind.as_str().to_owned(),
        says: speech.say(&stop.says),
        key: stop.says.key().to_owned(),
        rows: stop.rows.iter().map(RowId::to_string).collect(),
        since: stop.since.map(|since| instant(since.naive_utc(), zone)),
    }
}

/// Every stop that stands on something on hand.
#[derive(Debug, Serialize, ToSchema)]
pub struct StopsRead {
    /// By place, then by lot.
    pub stops: Vec<StoppedRead>,
    /// The codes of lots on hand that were made before proof was asked: they stay as they were judged,
    /// and what is made from them needs proof.
    pub judged_before: Vec<String>,
    /// The codes of bought lots on hand that came in before it was kept of what they are made: what is in
    /// them, and in what is made of them, is read from the list of today. Look at their packs.
    pub read_from_list: Vec<String>,
}

/// A stop, and what it stands on.
#[derive(Debug, Serialize, ToSchema)]
pub struct StoppedRead {
    /// The place's code.
    pub place: String,
    /// The lot's code.
    pub lot: String,
    /// The packs there that it stands on.
    pub packs: Vec<u32>,
    /// The product's code.
    pub product: String,
    /// The stop.
    #[serde(flatten)]
    pub stop: StopRead,
}
