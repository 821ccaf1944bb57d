//! Since when a pack is frozen, or that it was.

use super::Relative;
use crate::words::{State, StepKind};
use chrono::NaiveDate;
use chrono_tz::Tz;

/// Whether a pack is or was frozen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Frozen {
    /// Never, as far as the record shows.
    Never,
    /// Since that day.
    Since(NaiveDate),
    /// Once: it is thawed now.
    Once,
}

/// Whether a pack of a lot is or was frozen.
pub fn frozen(of: &Relative, number: u32, zone: Tz) -> Frozen {
    let is_frozen = of
        .lot
        .pack(number)
        .is_some_and(|pack| pack.now.state == State::Frozen);
    let changes = of
        .history
        .iter()
        .filter(|did| !did.voided && did.pack == number);
    let last = changes
        .rev()
        .find(|did| did.state == Some(State::Frozen))
        .map(|did| did.day);
    let born = of.lot.made_at.with_timezone(&zone).date_naive();
    let since = last.or((of.born_state == State::Frozen).then_some(born));
    match (since, is_frozen) {
        (Some(since), true) => Frozen::Since(since),
        (Some(_), false) => Frozen::Once,
        // What was parted from something thawed was frozen as well: it was one piece then.
        (None, false) if is_parted(of) && was_frozen(of, number) => Frozen::Once,
        (None, _) => Frozen::Never,
    }
}

/// Was nothing done to it but to part it?
fn is_parted(of: &Relative) -> bool {
    let step = StepKind::parse(of.made_by.kind.as_str());
    step.is_some_and(StepKind::parts_only)
}

fn was_frozen(of: &Relative, number: u32) -> bool {
    let pack = of.lot.pack(number);
    pack.is_some_and(|pack| pack.now.was_frozen())
}
