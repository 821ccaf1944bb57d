//! A lot's history: how it was made, and what was done with it since.

use super::{Did, Relative};
use crate::grams::Grams;
use crate::words::{Account, DeedKind};
use chrono::{DateTime, Utc};

/// A line of the history.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Line<'a> {
    /// The deed's id.
    pub uid: &'a [u8],
    /// What it was.
    pub kind: DeedKind,
    /// When it ended.
    pub at: DateTime<Utc>,
    /// Who.
    pub by: &'a str,
    /// Was it voided?
    pub voided: bool,
    /// Where the grams went or came from; none where the lot was made by it.
    pub account: Option<Account>,
    /// How much.
    pub grams: Grams,
}

/// The lines of a lot's history, the oldest first; voided deeds stay visible.
pub fn lines<'a>(of: &'a Relative, steps: &'a [Did]) -> Vec<Line<'a>> {
    let birth = Line {
        uid: &of.made_by.uid,
        kind: of.made_by.kind,
        at: of.made_by.at,
        by: &of.made_by.by,
        voided: of.lot.voided,
        account: None,
        grams: of.made(),
    };
    let step = |did: &'a Did| Line {
        uid: &did.uid,
        kind: did.kind,
        at: did.at,
        by: &did.by,
        voided: did.voided,
        account: Some(did.account),
        grams: did.grams,
    };
    let later = steps.iter().map(step);
    std::iter::once(birth).chain(later).collect()
}
