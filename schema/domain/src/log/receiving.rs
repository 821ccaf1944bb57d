//! What was received: from whom, what, how cold.

use super::doing::Doing;
use super::entry::Filled;
use super::kind::Column;
use super::lots;
use super::source::{Known, animal, party, reference};
use super::value::Value;
use crate::words::Topic;

pub fn cells(doing: &Doing, known: &Known<'_>) -> Vec<Filled> {
    let mut cells = lots::done(doing, known);
    cells.extend(lots::lots(&doing.made, known));
    cells.extend(lots::temperature(doing, known));
    let all: Vec<_> = doing
        .made
        .iter()
        .filter_map(|lot| known.lot(*lot))
        .collect();
    let bought = |of: &&&crate::family::Relative| {
        let source = of.source.as_ref();
        source.is_some_and(|source| source.animal.is_none())
    };
    let parties = || all.iter().map(|of| known.supplier(of));
    let packed = all.iter().filter(bought).map(|of| {
        let told = known.bought.get(&of.lot.id)?;
        told.packed_on.map(Value::Day)
    });
    let supplier_lot = |of: &&crate::family::Relative| {
        Value::text(
            of.source
                .as_ref()
                .and_then(|source| source.supplier_lot.as_ref()),
        )
    };
    cells.extend([
        Filled::of_each(
            Column::From,
            parties().map(|party_of| party_of.as_ref().map(party)),
        ),
        Filled::of_each(
            Column::FromAddress,
            parties().map(|party| party?.address.map(Value::Text)),
        ),
        Filled::of_each(
            Column::Establishments,
            parties().map(|party| party?.number.map(Value::Text)),
        ),
        Filled::of_each(
            Column::SupplierLots,
            all.iter().filter(bought).map(supplier_lot),
        )
        .if_any(),
        Filled::of_each(Column::ProducedOn, packed).if_any(),
        Filled::whole(Column::Animals, all.iter().filter_map(|of| animal(of))),
        Filled::of_each(Column::Reference, all.iter().map(|of| reference(of))),
        Filled::whole(Column::Document, Value::text(doing.told.document.as_ref())),
        responsible(known),
        lots::found(doing, &[Topic::Cold]),
    ]);
    cells
}

/// The kitchen itself, with its address.
pub fn responsible(known: &Known<'_>) -> Filled {
    let own = known.kitchen;
    Filled::of_each(
        Column::Responsible,
        [
            Value::text(Some(&own.name)),
            own.address.clone().map(Value::Text),
        ],
    )
}
