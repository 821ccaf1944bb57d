//! What went into a step: what the date and the condition of its lots follow from.

use super::draw::Draw;
use super::says::PartSays;
use crate::condition::Part;
use crate::dates::{PartDate, date_when_thawed};
use crate::says::Says;
use chrono::NaiveDate;

/// What went in.
pub(super) struct WentIn {
    /// Its dates.
    pub dates: Vec<PartDate>,
    /// What it was.
    pub parts: Vec<Part>,
}

impl WentIn {
    /// Of what is drawn on a day.
    pub fn of(draws: &[Draw<'_>], day: NaiveDate) -> WentIn {
        WentIn {
            dates: draws.iter().map(|draw| dated(draw, day)).collect(),
            parts: draws.iter().map(part).collect(),
        }
    }
}

fn dated(draw: &Draw<'_>, day: NaiveDate) -> PartDate {
    let now = &draw.pack.now;
    // Of what is frozen, the date that it would have thawed today.
    let thawed = |days| date_when_thawed(days, day);
    let date = now.use_by.or(now.days_frozen().map(thawed));
    PartDate {
        shown: shown(draw),
        // What is taken out of a whole pack comes out of one that is open from now on.
        date: match now.left == draw.pack.made {
            true => draw.lot.later.date_opened(day, date),
            false => date,
        },
        cap: draw.lot.later.cap,
        is_raw_animal: !draw.lot.species.is_empty() && !draw.lot.condition().is_ready(),
        was_frozen: now.was_frozen(),
    }
}

fn part(draw: &Draw<'_>) -> Part {
    Part {
        shown: shown(draw),
        condition: draw.lot.condition(),
        of_animal: !draw.lot.species.is_empty(),
    }
}

fn shown(draw: &Draw<'_>) -> Says {
    PartSays::Of {
        product: draw.lot.product.named(),
        pack: draw.lot.shown(draw.pack.number),
    }
    .into()
}
