//! What the service answers; how each noun is translated has a file of its own.

pub mod animal;
pub mod ask;
pub mod because;
pub mod copies;
pub mod deed;
pub mod descendants;
pub mod done;
pub mod found;
pub mod health;
pub mod import;
pub mod incident;
pub mod law;
pub mod lists;
pub mod log;
pub mod lot;
pub mod origins;
pub mod paper;
pub mod photo;
pub mod piece;
pub mod scan;
pub mod scope;
pub mod stop;
pub mod today;
pub mod wrong_label;

pub use animal::{AnimalRead, OnceRead};
pub use ask::{AskRead, ask_read};
pub use because::{BecauseRead, FindingRead, WhyRead, finding_read};
pub use copies::{CopiesRead, copies_read};
pub use deed::{DeedRead, VoidedRead};
pub use descendants::{DescendantRead, DescendantsRead, Whereabouts};
pub use done::{ChangeRead, DeedDone, LotBrief, Turned};
pub use found::{SoughtRead, sought_read};
pub use health::HealthRead;
pub use import::{ImportRead, import_read};
pub use incident::{IncidentDone, IncidentRead, IncidentsRead};
pub use law::{LawRead, RowRead};
pub use lists::{AnimalsPage, LotsPage};
pub use log::{LogRead, LogsRead, log_read, logs_read};
pub use lot::{LotRead, PackRead, ReadingRead, StepBrief};
pub use origins::{AnimalShare, BoughtRead, OriginsRead};
pub use paper::{KeepingRead, KeepingRuleRead, PaperRead, PapersRead, paper_read};
pub use photo::PhotoRead;
pub use scan::{ScanRead, scan_read};
pub use scope::{ScopeLotRead, ScopeRead};
pub use stop::{StopRead, StoppedRead, StopsRead, stop_read};
pub use today::{TodayRead, today_read};
pub use wrong_label::{WrongLabelsRead, wrong_labels_read};

pub use crate::ids::shown_id;

use super::Instant;
use chrono::{DateTime, NaiveDateTime};
use chrono_tz::Tz;

/// An instant as the kitchen writes it: with its own offset.
pub fn instant(utc: NaiveDateTime, zone: Tz) -> String {
    utc.and_utc()
        .with_timezone(&zone)
        .to_rfc3339_opts(chrono::SecondsFormat::AutoSi, false)
}

/// The instant itself, for the wire.
pub fn as_instant(utc: NaiveDateTime) -> Instant {
    Instant(DateTime::from(utc.and_utc()))
}
