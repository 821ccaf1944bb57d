//! Papers, and how long everything is kept, as the API answers it.

use super::{instant, shown_id};
use chrono_tz::Tz;
use domain::paper::Kept;
use serde::Serialize;
use store::papers::PaperFound;
use utoipa::ToSchema;
use words::Speech;

/// A paper that belongs to a deed.
#[derive(Debug, Serialize, ToSchema)]
pub struct PaperRead {
    /// Its id: that of the deed that brought it.
    pub id: String,
    /// The deed that it belongs to.
    pub of: String,
    /// What that was.
    pub of_kind: String,
    /// When that was.
    pub of_at: String,
    /// What it is: delivery-note, certificate, photo, print-out, other.
    pub kind: String,
    /// What it is called.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// The form of what it holds, told by its content.
    pub form: String,
    /// How many bytes it holds.
    pub bytes: i64,
    /// The SHA-256 of what it holds, which is in the chain.
    pub sha256: String,
    /// Who brought it.
    pub by: String,
    /// When.
    pub at: String,
    /// A word about it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
    /// Was it taken back?
    pub voided: bool,
    /// Was what it held thrown away? Then `content` answers 410.
    pub thinned: bool,
    /// Where what it holds is.
    pub content: String,
    /// The last day on which a rule of the place asks for it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub kept_until: Option<String>,
    /// The row behind that.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub row: Option<String>,
    /// Why it is kept, or that it may be thinned.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub says: Option<String>,
    /// The key of that.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub key: Option<String>,
}

/// A paper as it is answered.
pub fn paper_read(found: &PaperFound, zone: Tz) -> PaperRead {
    let (row, id) = (&found.row, shown_id(&found.uid));
    PaperRead {
        of: shown_id(&found.of),
        of_kind: found.of_kind.as_str().to_owned(),
        of_at: instant(found.of_at, zone),
        kind: row.kind.clone(),
        name: row.name.clone(),
        form: row.form.clone(),
        bytes: row.bytes,
        sha256: row.hash.clone(),
        by: found.person.clone(),
        at: instant(found.at, zone),
        note: found.note.clone(),
        voided: found.voided,
        thinned: found.thinned,
        content: format!("/api/papers/{id}"),
        id,
        kept_until: None,
        row: None,
        says: None,
        key: None,
    }
}

impl PaperRead {
    /// The same with how long it is kept.
    pub fn with(mut self, kept: &Kept, today: chrono::NaiveDate, speech: &Speech) -> PaperRead {
        let says = kept.says(today);
        self.kept_until = kept.until.map(|until| until.to_string());
        self.row = kept.row.as_ref().map(ToString::to_string);
        self.says = Some(speech.say(&says));
        self.key = Some(says.key().to_owned());
        self
    }
}

/// Some papers.
#[derive(Debug, Serialize, ToSchema)]
pub struct PapersRead {
    /// The papers.
    pub papers: Vec<PaperRead>,
    /// The mark before which the next page goes on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub next: Option<i32>,
}

/// How long everything is kept.
#[derive(Debug, Serialize, ToSchema)]
pub struct KeepingRead {
    /// The kitchen's day.
    pub today: String,
    /// The place whose rules these are.
    pub place: String,
    /// What is kept for ever, and what may be thinned.
    pub says: String,
    /// The rules of the place, each with the record that it is about.
    pub rules: Vec<KeepingRuleRead>,
    /// How many papers there are.
    pub papers: i64,
    /// How many bytes those hold that were not thinned.
    pub bytes: i64,
    /// How many were thinned.
    pub thinned: i64,
    /// An incident that is open: as long as one is, nothing is thinned.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub open_incident: Option<String>,
    /// Papers of which the content may be thinned, the oldest first; some at a time.
    pub may_be_thinned: Vec<PaperRead>,
    /// How many of the oldest papers were looked at for that.
    pub looked_at: usize,
}

/// How long a record is kept.
#[derive(Debug, Serialize, ToSchema)]
pub struct KeepingRuleRead {
    /// The record's word.
    pub record: String,
    /// The record, in words.
    pub name: String,
    /// How long; nothing: as long as the food may be eaten.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub number: Option<u32>,
    /// Of what: hours, days, months, years.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit: Option<String>,
    /// The row.
    pub row: String,
    /// What it says.
    pub says: String,
    /// What is older than this day need not be kept for this rule any more.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub over_before: Option<String>,
}
