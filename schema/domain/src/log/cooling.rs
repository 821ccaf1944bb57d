//! What was cooled: from how warm to how cold, in which time, by which way.

use super::doing::Doing;
use super::entry::Filled;
use super::kind::Column;
use super::lots;
use super::source::Known;
use super::value::Value;
use crate::words::{DeedKind, Topic};

/// Was anything cooled: a chilling, or a step whose cooling was judged.
pub fn is_cooling(doing: &Doing) -> bool {
    let judged = doing
        .reasons
        .iter()
        .any(|(_, of)| of.topic == Topic::Cooling);
    let stopped = doing.stops.iter().any(|(_, of)| of.topic == Topic::Cooling);
    doing.kind == DeedKind::Chill || judged || stopped || doing.told.cooling_plan.is_some()
}

pub fn cells(doing: &Doing, known: &Known<'_>) -> Vec<Filled> {
    let mut cells = lots::done(doing, known);
    cells.extend(lots::lots(&doing.lots(), known));
    // It cools from its hottest point on.
    let points = doing.points.iter().enumerate();
    let hottest = points.max_by_key(|(nth, point)| (point.read, *nth));
    let last = doing.points.last();
    let point = |of: &super::CorePoint| Value::Point {
        at: of.at,
        read: of.read,
    };
    let ended = doing.temperatures().into_iter().next_back();
    let to = last.map(point).or(ended.map(Value::Temperature));
    cells.extend([
        Filled::whole(Column::CooledFrom, hottest.map(|(_, of)| point(of))),
        Filled::whole(Column::CooledTo, to),
        lots::chart(doing),
        Filled::whole(Column::Probe, known.probes(&doing.probes(), doing.at)),
        Filled::whole(
            Column::Standard,
            Value::text(doing.told.cooling_plan.as_ref()),
        ),
        lots::found(doing, &[Topic::Cooling]),
    ]);
    cells
}
