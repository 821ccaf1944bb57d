//! A pack goes elsewhere, or is frozen or thawed. The lot stays what it was.

use super::change::moved;
use super::draw::{Choice, settle};
use super::says::MoveSays;
use crate::lot::{Lot, PlaceId};
use crate::moment::Moment;
use crate::plan::Plan;
use crate::refusal::{Refusal, Result};
use crate::stop::{Act, Passed, ask};
use crate::words::State;
use chrono_tz::Tz;

/// Where a pack goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Whither {
    /// The place.
    pub place: PlaceId,
    /// Is it a counter, from which things are sold?
    pub is_counter: bool,
}

/// What moves, or why it cannot.
///
/// # Errors
/// Neither a place nor a state is given, nothing is left to move, the lot was not made yet, or a hold
/// keeps it off the counter.
pub fn plan(
    lot: &Lot,
    choice: &Choice,
    to: Option<Whither>,
    state: Option<State>,
    moment: &Moment,
    zone: Tz,
    as_it_happened: bool,
) -> Result<Plan> {
    if to.is_none() && state.is_none() {
        return Err(Refusal::cannot_be("to", MoveSays::Nowhere));
    }
    moment.not_before(lot.made_at, &lot.code, zone)?;
    let draws = settle(lot, choice, "")?;
    let passed = match to.is_some_and(|to| to.is_counter) {
        true => ask(&draws, Act::Counter, moment, as_it_happened, |_| {
            "to".into()
        })?,
        false => Passed::default(),
    };
    let place = to.map(|to| to.place);
    let changes = draws
        .iter()
        .map(|draw| moved(draw, place, state, moment.day))
        .collect();
    Ok(Plan {
        changes,
        warnings: passed.warnings,
        reasons: passed.reasons,
        ..Plan::default()
    })
}
