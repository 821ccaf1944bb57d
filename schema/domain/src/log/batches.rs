//! What was made: of what, by whom, with what was lost, and where each commodity in it came from.

use super::doing::Doing;
use super::entry::{Filled, Holds};
use super::kind::Column;
use super::lots;
use super::receiving::responsible;
use super::says::LogsSays;
use super::source::{Known, sources};
use super::value::Value;
use crate::lot::LotId;
use crate::says::Arg;
use crate::words::Topic;

pub fn cells(doing: &Doing, known: &Known<'_>) -> Vec<Filled> {
    let mut cells = lots::done(doing, known);
    cells.extend(lots::lots(&doing.made, known));
    let added = doing.added.iter().map(|(what, grams)| {
        Value::says(LogsSays::Added {
            what: Arg::from(*what),
            grams: *grams,
        })
    });
    cells.extend([
        lots::materials(doing, known),
        Filled::whole(Column::Added, added),
        Filled::whole(Column::Loss, doing.loss.map(Value::Weight)),
        all_sources(&doing.made, known),
        responsible(known),
        lots::found(
            doing,
            &[Topic::Yield, Topic::Cure, Topic::Heat, Topic::Stop],
        ),
    ]);
    cells
}

/// Each commodity in some lots: supplier, address, day.
pub fn all_sources(lots: &[LotId], known: &Known<'_>) -> Filled {
    let (values, whole) = sources(known, lots);
    Filled {
        column: Column::Sources,
        values,
        holds: match whole {
            true => Holds::Whole,
            false => Holds::Partly,
        },
    }
}
