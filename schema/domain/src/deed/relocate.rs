//! A pack goes elsewhere, or is frozen or thawed. The lot stays what it was.

use super::draw::{Choice, settle};
use super::says::MoveSays;
use super::step::moved;
use crate::lot::{Lot, PlaceId};
use crate::moment::Moment;
use crate::plan::Plan;
use crate::refusal::{Refusal, Result};
use crate::words::State;
use chrono_tz::Tz;

/// What moves, or why it cannot.
///
/// # Errors
/// Neither a place nor a state is given, nothing is left to move, or the lot was not made yet.
pub fn plan(
    lot: &Lot,
    choice: &Choice,
    to: Option<PlaceId>,
    state: Option<State>,
    moment: &Moment,
    zone: Tz,
) -> Result<Plan> {
    if to.is_none() && state.is_none() {
        return Err(Refusal::cannot_be("to", MoveSays::Nowhere));
    }
    moment.not_before(lot.made_at, &lot.code, zone)?;
    let draws = settle(lot, choice, "")?;
    let changes = draws
        .iter()
        .map(|draw| moved(draw, to, state, moment.day))
        .collect();
    Ok(Plan {
        changes,
        ..Plan::default()
    })
}
