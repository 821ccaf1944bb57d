//! Why? The links behind a lot's date, as they were kept when each deed was done, and what its packs
//! have lived through since.

use super::{Family, Relative};
use crate::condition::ConditionSays;
use crate::dates::{Because, Rule};
use crate::lot::{LotId, Pack};
use crate::messages;
use crate::rows::RowId;
use crate::words::{ProvedBy, Topic};
use chrono::NaiveDate;

messages! {
    /// What is said of a date after its lot was made.
    WhySays in "why" {
        Frozen "frozen" { days: i32 },
        FreezingStops "freezing-stops",
        Since "since" { day: NaiveDate },
        OpenedOrThawed "opened-or-thawed",
    }
}

/// The links about one topic that a lot got when it was made, or later. Where it was judged again since,
/// those of the last judgement.
pub(super) fn links(of: &Relative, topic: Topic) -> Vec<Because> {
    let judgements = of.reasons.split(|reason| reason.topic == Topic::Correction);
    let told = judgements.map(|links| {
        let links = links.iter().filter(|reason| reason.topic == topic);
        links
            .map(|reason| reason.because.clone())
            .collect::<Vec<_>>()
    });
    let mut told = told.filter(|links| !links.is_empty());
    told.next_back().unwrap_or_default()
}

/// What was corrected of a lot, or of what went into it, and by whom; the oldest first.
pub fn correction_links(of: &Relative) -> Vec<Because> {
    let links = of
        .reasons
        .iter()
        .filter(|reason| reason.topic == Topic::Correction);
    links.map(|reason| reason.because.clone()).collect()
}

/// The reasons for a lot's date: those kept at its making, and what has happened to its packs since.
/// `freezing` is the row of the place on freezing; without one it is common practice.
pub fn date_links(of: &Relative, freezing: Option<&RowId>) -> Vec<Because> {
    let mut chain = links(of, Topic::Date);
    let left = || {
        of.lot
            .packs
            .iter()
            .filter(|pack: &&Pack| !pack.now.left.is_none_left())
    };
    if let Some(days) = left().find_map(|pack| pack.now.days_frozen()) {
        // The day of the thaw is one of its days, also where it was frozen on its last.
        let says = WhySays::Frozen { days: days.max(1) }.into();
        let rule = match freezing {
            Some(row) => Rule::Rows(vec![row.clone()]),
            None => Rule::Practice(WhySays::FreezingStops.into()),
        };
        chain.push(Because { says, rule });
    }
    let earliest = left().filter_map(|pack| pack.now.use_by).min();
    if let Some(day) = earliest.filter(|day| of.born_use_by != Some(*day)) {
        let says = WhySays::Since { day };
        chain.push(Because::house(says, WhySays::OpenedOrThawed));
    }
    chain
}

/// The reasons for what a lot is: those kept at its making, and what proved more since.
pub fn condition_links(of: &Relative) -> Vec<Because> {
    let mut chain = links(of, Topic::Condition);
    let practice = |says: ConditionSays| Because {
        says: says.into(),
        rule: Rule::Practice(ConditionSays::ProofRule.into()),
    };
    if of.lot.condition.is_none() {
        chain.push(practice(ConditionSays::JudgedBefore));
    }
    if of.lot.condition().by == ProvedBy::Released {
        chain.push(practice(ConditionSays::Released));
    }
    chain
}

/// By what it is known what is in a bought lot.
pub fn contents_links(of: &Relative) -> Vec<Because> {
    links(of, Topic::Contents)
}

/// The same of everything bought that went into a lot, and of itself.
pub fn all_contents_links(family: &Family, lot: LotId) -> Vec<Because> {
    let line = family.youngest_first(lot).into_iter();
    line.flat_map(contents_links).collect()
}

/// The links about a topic of the nearest lot that has any: what was cured, cooked and released
/// before it was cut up is shown by the lots it came from.
pub fn nearest_links(family: &Family, lot: LotId, topic: Topic) -> Vec<Because> {
    let line = family.youngest_first(lot).into_iter();
    let mut all = line.map(|of| links(of, topic));
    all.find(|links| !links.is_empty()).unwrap_or_default()
}
