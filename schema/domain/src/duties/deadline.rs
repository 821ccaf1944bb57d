//! Until when something has to be answered, reported or done again.

use super::keeping::KeepingSpan;
use crate::rows::RowId;
use crate::says::Texts;
use crate::words::words;
use chrono::NaiveDateTime;

words! {
    /// What is due.
    Due {
        TraceAnswer = "trace-answer", RecallNotice = "recall-notice", PigReport = "pig-report",
        RecallDrill = "recall-drill", TraceTarget = "trace-target",
    }
}

/// How long one may take.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Deadline {
    /// What is due.
    pub due: Due,
    /// How long one may take.
    pub span: KeepingSpan,
    /// In what form, or what else is to know.
    pub says: Texts,
}

/// The last moment for something, counted from `since`, and the row behind it. `None`: this place
/// sets no time.
pub fn due(
    rules: &super::DutyRules,
    what: Due,
    since: NaiveDateTime,
) -> Option<(NaiveDateTime, RowId)> {
    let deadline = rules
        .deadlines
        .iter()
        .find(|deadline| deadline.due == what)?;
    Some((
        deadline.span.after_moment(since),
        deadline.span.number.row.clone(),
    ))
}
