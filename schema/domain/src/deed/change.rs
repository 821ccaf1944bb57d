//! What a deed changes of a pack: taken out of it, moved, or no more than noted.

use super::draw::Draw;
use super::says::StepSays;
use crate::grams::Grams;
use crate::lot::{Event, PackNow, PlaceId, What};
use crate::moment::Moment;
use crate::plan::PackChange;
use crate::refusal::{Refusal, Result};
use crate::words::{Account, State};

/// The change that a draw makes to its pack.
pub(super) fn taken(draw: &Draw<'_>, account: Account, moment: &Moment) -> Result<PackChange> {
    let event = Event::new(What::Took(account, draw.grams), moment);
    let now = draw.pack.after(&event, draw.lot.later);
    let now = now.ok_or_else(|| Refusal::cannot_be("grams", StepSays::LessThanNothing))?;
    let whole_pack = account == Account::Sold && now.left == Grams::ZERO;
    Ok(PackChange {
        whole_pack,
        ..change(draw, account, draw.grams, now)
    })
}

/// The change that a move makes to a pack; one that changes nothing is noted all the same.
pub(super) fn moved(
    draw: &Draw<'_>,
    place: Option<PlaceId>,
    state: Option<State>,
    moment: &Moment,
) -> PackChange {
    let event = Event::new(What::Moved { place, state }, moment);
    let now = draw
        .pack
        .after(&event, draw.lot.later)
        .unwrap_or(draw.pack.now);
    PackChange {
        place,
        state,
        ..change(draw, Account::Moved, Grams::ZERO, now)
    }
}

/// A bare change of a pack.
pub(super) fn change(draw: &Draw<'_>, account: Account, grams: Grams, now: PackNow) -> PackChange {
    PackChange {
        lot: draw.lot.id,
        pack: draw.pack.id,
        account,
        grams,
        place: None,
        state: None,
        now,
        whole_pack: false,
    }
}
