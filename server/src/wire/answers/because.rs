//! One link of "why this date?", as it is answered.

use super::{ReadingRead, RowRead};
use crate::wire::Day;
use domain::dates::Because;
use domain::rows::{Finding, Gravity, Rows};
use serde::Serialize;
use std::collections::BTreeMap;
use utoipa::ToSchema;
use words::Speech;

/// What a check found.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct FindingRead {
    /// `note`, `warn` or `refuse`.
    pub gravity: String,
    /// In words.
    pub says: String,
    /// The key of what it says: it is the same in every language.
    pub key: String,
    /// The rows behind it.
    pub rows: Vec<String>,
    /// Where they come from.
    pub source: String,
}

/// One link of "why this date?".
#[derive(Debug, Serialize, ToSchema)]
pub struct BecauseRead {
    /// In words for a cook.
    pub says: String,
    /// The key of what it says: it is the same in every language.
    pub key: String,
    /// The rule.
    pub rule: String,
    /// Where the rule comes from.
    pub source: String,
}

/// Everything that a lot's label rests on.
#[derive(Debug, Serialize, ToSchema)]
pub struct WhyRead {
    /// The lot.
    pub code: String,
    /// Its date.
    pub use_by: Option<Day>,
    /// What is in it, by language.
    pub ingredients: BTreeMap<String, String>,
    /// Its allergens.
    pub allergens: Vec<String>,
    /// What may be in it unasked.
    pub may_contain: Vec<String>,
    /// The links of each chain, by topic: date, contents, cure, heat, release.
    pub because: BTreeMap<String, Vec<BecauseRead>>,
    /// The rows behind them.
    pub rows: Vec<RowRead>,
    /// Its readings, the oldest first.
    pub readings: Vec<ReadingRead>,
}

/// A link, for a reader.
pub fn because_read(because: &Because, rows: &Rows, speech: &Speech) -> BecauseRead {
    BecauseRead {
        says: speech.say(&because.says),
        key: because.says.key().to_owned(),
        rule: speech.arg(&because.rule()),
        source: speech.arg(&because.source(rows)),
    }
}

/// A finding, for a reader.
pub fn finding_read(finding: &Finding, rows: &Rows, speech: &Speech) -> FindingRead {
    FindingRead {
        gravity: match finding.gravity {
            Gravity::Note => "note",
            Gravity::Warn => "warn",
            Gravity::Refuse => "refuse",
        }
        .to_owned(),
        says: speech.say(&finding.says),
        key: finding.says.key().to_owned(),
        rows: finding.rows.iter().map(ToString::to_string).collect(),
        source: speech.arg(&rows.sources(&finding.rows)),
    }
}
