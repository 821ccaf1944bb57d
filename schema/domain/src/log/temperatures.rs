//! How warm it was: places and lots as they were read, places that failed, probes as they were checked.

use super::doing::Doing;
use super::entry::Filled;
use super::kind::Column;
use super::lots;
use super::says::LogsSays;
use super::source::Known;
use super::value::Value;
use crate::says::Arg;
use crate::words::Topic;

/// Was a temperature read?
pub fn is_reading(doing: &Doing) -> bool {
    !doing.temperatures().is_empty() || !doing.points.is_empty() || doing.probe.is_some()
}

pub fn cells(doing: &Doing, known: &Known<'_>) -> Vec<Filled> {
    let mut cells = lots::done(doing, known);
    let of_lots: Vec<_> = doing.read.iter().filter_map(|read| read.lot).collect();
    cells.extend(lots::lots(&of_lots, known));
    cells.extend(lots::temperature(doing, known));
    if let Some(shown) = &doing.probe {
        cells.retain(|of| !matches!(of.column, Column::Temperature | Column::Probe));
        let bath = LogsSays::Checked {
            bath: Arg::from(shown.bath),
        };
        cells.extend([
            Filled::whole(Column::Temperature, [Value::Temperature(shown.read)]),
            Filled::whole(
                Column::Probe,
                [Value::Text(shown.probe.clone()), Value::says(bath)],
            ),
        ]);
    }
    let place = doing.place.map(|place| known.lists.place_code(place));
    let place = place.and_then(|place| known.lists.places.get(place));
    let limits = place.map_or(&[][..], |place| &place.limits);
    cells.extend([
        Filled::whole(
            Column::Limit,
            limits.iter().map(|limit| {
                Value::says(LogsSays::LimitOfPlace {
                    limit: Arg::from(limit.clone()),
                })
            }),
        ),
        lots::chart(doing),
        lots::found(doing, &[Topic::Cold, Topic::Stop]),
    ]);
    cells
}
