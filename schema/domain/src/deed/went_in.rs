//! What went into a step: what the date and the condition of its lots follow from.

use super::draw::Draw;
use super::says::PartSays;
use crate::condition::{Part, natural};
use crate::dates::PartDate;
use crate::lot::Lot;
use crate::moment::Moment;
use crate::says::Says;
use crate::words::State;

/// What went in.
pub(super) struct WentIn {
    /// Its dates.
    pub dates: Vec<PartDate>,
    /// What it was.
    pub parts: Vec<Part>,
    /// Raw fish in it, by whether all of that is frozen; nothing where there is none.
    pub fish_is_frozen: Option<bool>,
}

impl WentIn {
    /// Of what is drawn at a moment.
    pub fn of(draws: &[Draw<'_>], moment: &Moment) -> WentIn {
        WentIn {
            dates: draws.iter().map(|draw| dated(draw, moment)).collect(),
            parts: draws.iter().map(part).collect(),
            fish_is_frozen: { draws.iter() }
                .filter(|draw| is_raw_fish(draw.lot))
                .map(|draw| draw.pack.at(moment, draw.lot.later).state == State::Frozen)
                .reduce(|one, other| one && other),
        }
    }

    /// Is raw fish in it that was not frozen, or is not when it is kept so?
    pub fn thaws_fish(&self, after: State) -> bool {
        self.fish_is_frozen
            .is_some_and(|before| !before || after != State::Frozen)
    }
}

/// Is it fish, a crustacean or a mollusc that nothing proves ready, and no meat seasoned with one?
fn is_raw_fish(lot: &Lot) -> bool {
    let mut allergens = lot.allergens.iter();
    lot.species.is_empty()
        && !lot.condition().is_ready()
        && allergens.any(|of| of.is_of_the_water())
}

fn dated(draw: &Draw<'_>, moment: &Moment) -> PartDate {
    // What was opened, frozen or thawed later than this changes nothing of it, also where it was told before.
    let later = draw.lot.later;
    let (now, day) = (draw.pack.at(moment, later), moment.day);
    // Of what is frozen, the date that it would have thawed today.
    let is_frozen = now.state == State::Frozen;
    let thawed = || is_frozen.then(|| later.date_thawed(now.days_frozen(), day));
    let date = now.use_by.or_else(|| thawed().flatten());
    // What is taken out of a whole pack comes out of one that is open from now on.
    let date = match now.left == draw.pack.made {
        true => later.date_opened(day, date),
        false => date,
    };
    PartDate {
        shown: shown(draw),
        date,
        cap: later.cap,
        is_undated: (date.is_none() || is_dated_by_its_opening(draw.lot)) && has_days(draw.lot),
        is_raw_animal: !draw.lot.species.is_empty() && !is_cooked(draw.lot),
        was_frozen: now.was_frozen(),
    }
}

/// Was it cooked through already, or is it ready by another proof? No heat gives that a day anew.
fn is_cooked(lot: &Lot) -> bool {
    let is = lot.condition();
    is.is_ready() || is.is_cooked_through()
}

/// Is it ready food that has to be kept cold, and so has a last day? A piece from the cure room has its own when
/// it is cut up.
fn has_days(lot: &Lot) -> bool {
    let is_ready = lot.condition.is_some() && lot.condition().is_ready();
    is_ready && lot.needs_cold() && !lot.product.is_hung()
}

/// Are the days from its opening all that is known? They run out no later than its maker's day, which nobody told.
fn is_dated_by_its_opening(lot: &Lot) -> bool {
    let has_day = lot.later.cap.is_some() || lot.product.keeping.usual.is_some();
    lot.later.opened.is_some() && !has_day
}

fn part(draw: &Draw<'_>) -> Part {
    Part {
        lot: draw.lot.id,
        natural: natural(&draw.lot.product),
        shown: shown(draw),
        condition: draw.lot.condition(),
        of_animal: !draw.lot.species.is_empty(),
        may_carry: { draw.lot.species.iter() }.any(|of| of.may_carry_trichinae()),
        sort: draw.lot.product.kind,
    }
}

fn shown(draw: &Draw<'_>) -> Says {
    PartSays::Of {
        product: draw.lot.product.named(),
        pack: draw.lot.shown(draw.pack.number),
    }
    .into()
}
