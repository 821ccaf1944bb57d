//! Since when a pack is frozen, or that it was.

use super::Relative;
use crate::words::State;
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
        (None, _) => Frozen::Never,
    }
}
