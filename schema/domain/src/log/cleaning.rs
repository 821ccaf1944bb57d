//! What was cleaned: which bench or machine, when, and what was worked on it since the time before.

use super::doing::Doing;
use super::entry::Filled;
use super::kind::Column;
use super::lots;
use super::source::Known;
use super::value::Value;

pub fn cells(doing: &Doing, known: &Known<'_>) -> Vec<Filled> {
    let mut cells = lots::done(doing, known);
    let before = known.cleaned_before(doing.place, doing.at);
    let worked = known.ground.iter().filter(|of| {
        Some(of.place) == doing.place
            && of.at <= doing.at
            && before.is_none_or(|before| of.at > before)
    });
    let worked: Vec<Value> = worked
        .filter_map(|of| Some(Value::Lot(known.lot(of.lot)?.lot.code.clone(), None)))
        .collect();
    cells.extend([
        Filled::whole(Column::CleanedBefore, before.map(Value::Moment)),
        Filled::whole(Column::Worked, worked),
    ]);
    cells
}
