//! What went wrong and what was done about it: limits that were broken, places that failed, what was held,
//! disposed of, taken back and corrected.

use super::doing::Doing;
use super::entry::Filled;
use super::kind::Column;
use super::lots;
use super::says::LogsSays;
use super::source::{Known, named, once};
use super::value::Value;
use crate::moment::on_clock;
use crate::words::{DeedKind, Topic};

pub fn cells(doing: &Doing, known: &Known<'_>) -> Vec<Filled> {
    let mut cells = lots::done(doing, known);
    let own = doing.lots();
    cells.push(lots::codes(&own, known));
    let products = own.iter().filter_map(|lot| known.lot(*lot));
    cells.push(Filled::whole(
        Column::Product,
        once(products.map(|of| Value::Named(named(of)))),
    ));
    let upon = doing.upon.as_ref().map(|upon| {
        Value::says(LogsSays::Deed {
            kind: upon.kind,
            at: on_clock(upon.at, known.zone),
            by: upon.by.clone(),
        })
    });
    cells.extend([
        Filled::whole(Column::About, upon),
        wrong(doing),
        Filled::whole(Column::Done, done(doing)),
        Filled::whole(
            Column::Why,
            Value::text(doing.told.why.as_ref().or(doing.note.as_ref())),
        ),
        Filled::whole(Column::Witness, Value::text(doing.told.witness.as_ref())),
        Filled::whole(Column::Document, Value::text(doing.told.document.as_ref())),
    ]);
    cells
}

/// What had been wrong: the stops that it placed, and those that it ended.
fn wrong(doing: &Doing) -> Filled {
    let placed = doing.stops.iter().map(|(_, cause)| &cause.because);
    let ended = doing.ended.iter().map(|ended| &ended.cause.because);
    let corrected = doing.reasons.iter().map(|(_, reason)| reason);
    let corrected = corrected.filter(|reason| reason.topic == Topic::Correction);
    let corrected = corrected.map(|reason| &reason.because);
    let all = placed.chain(ended).chain(corrected).map(lots::because);
    Filled::whole(Column::Wrong, once(all))
}

/// What was done.
fn done(doing: &Doing) -> Vec<Value> {
    let mut told: Vec<Value> = Vec::new();
    let mut ways: Vec<_> = doing.ended.iter().map(|ended| ended.how).collect();
    ways.extend(doing.told.disposal);
    ways.sort_unstable();
    ways.dedup();
    told.extend(
        ways.into_iter()
            .map(|how| Value::says(LogsSays::Disposed { how })),
    );
    match doing.kind {
        DeedKind::HoldRelease => told.push(Value::says(LogsSays::LetGo)),
        DeedKind::Void | DeedKind::Correct => told.push(Value::says(doing.kind.says())),
        _ if !doing.stops.is_empty() => told.push(Value::says(LogsSays::StoppedBy)),
        _ => {}
    }
    once(told)
}
