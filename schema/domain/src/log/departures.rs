//! What left, and what came back: which lot, how much, to whom, and where what is in it came from.

use super::batches::all_sources;
use super::doing::Doing;
use super::entry::Filled;
use super::kind::Column;
use super::lots;
use super::receiving::responsible;
use super::source::{Known, named, once, party};
use super::value::Value;
use crate::family::Relative;
use crate::lot::LotId;
use crate::words::Topic;

pub fn cells(doing: &Doing, known: &Known<'_>) -> Vec<Filled> {
    let mut cells = lots::done(doing, known);
    let own: Vec<LotId> = doing.lots();
    let packs: Vec<_> = doing
        .drew
        .iter()
        .map(|drawn| (drawn.lot, drawn.pack))
        .collect();
    let code = |(lot, pack): &(LotId, u32)| {
        let of = known.lot(*lot)?;
        let pack = (of.lot.pack_count > 1).then_some(*pack);
        Some(Value::Lot(of.lot.code.clone(), pack))
    };
    let grams = doing.drew.iter().map(|drawn| drawn.grams).sum();
    let of = |lot: &LotId| known.lot(*lot);
    let received = known.received(&own);
    let from = |of: &&Relative| known.supplier(of);
    cells.extend([
        Filled::of_each(Column::Lot, packs.iter().map(code)),
        Filled::whole(
            Column::Product,
            once(own.iter().filter_map(of).map(|of| Value::Named(named(of)))),
        ),
        Filled::whole(Column::Weight, [Value::Weight(grams)]),
        Filled::whole(
            Column::Packs,
            u32::try_from(packs.len()).ok().map(Value::Count),
        ),
        Filled::whole(Column::To, Value::text(doing.told.to.as_ref())),
        // The record knows a customer by what was typed, and no more.
        Filled::whole(Column::ToAddress, None),
        Filled::whole(Column::ToTelephone, None),
        Filled::whole(Column::Carrier, None),
        Filled::of_each(
            Column::From,
            received.iter().map(|of| from(of).as_ref().map(party)),
        ),
        Filled::of_each(
            Column::FromAddress,
            received.iter().map(|of| from(of)?.address.map(Value::Text)),
        ),
        Filled::whole(
            Column::ReceivedOn,
            once(received.iter().map(|of| Value::Day(of.made_by.day))),
        ),
        all_sources(&own, known),
        responsible(known),
        Filled::whole(Column::Why, Value::text(doing.told.why.as_ref())),
        lots::found(doing, &[Topic::Stop, Topic::Correction]),
    ]);
    cells
}
