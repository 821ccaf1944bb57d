//! What was ground: of which materials, from whose lots, between which clean-downs. Carry-over is what the
//! machine ground before, since it was last cleaned.

use super::doing::Doing;
use super::entry::Filled;
use super::kind::Column;
use super::lots;
use super::says::LogsSays;
use super::source::{Known, animal, named, once};
use super::value::Value;
use crate::family::Relative;
use crate::lot::LotId;
use crate::words::{Species, Topic};

pub fn cells(doing: &Doing, known: &Known<'_>) -> Vec<Filled> {
    let mut cells = lots::done(doing, known);
    cells.extend(lots::lots(&doing.made, known));
    cells.extend(lots::temperature(doing, known));
    let used: Vec<LotId> = doing.used().into_iter().map(|(lot, _)| lot).collect();
    // Salt and spice have no establishment: the log is about meat.
    let received = known.received(&used);
    let meat: Vec<&Relative> = received.into_iter().filter(|of| of.has_species()).collect();
    let bought = |of: &&&Relative| {
        of.source
            .as_ref()
            .is_some_and(|source| source.animal.is_none())
    };
    cells.extend([
        lots::materials(doing, known),
        carried_over(doing, known),
        Filled::of_each(
            Column::Establishments,
            meat.iter()
                .map(|of| known.supplier(of)?.number.map(Value::Text)),
        ),
        Filled::of_each(
            Column::SupplierLots,
            meat.iter().map(|of| super::source::reference(of)),
        ),
        Filled::of_each(
            Column::ProducedOn,
            meat.iter().map(|of| produced(of, known)),
        ),
        Filled::whole(
            Column::Animals,
            once(
                meat.iter()
                    .filter(|of| !bought(of))
                    .filter_map(|of| animal(of)),
            ),
        ),
        Filled::whole(
            Column::CleanedBefore,
            known
                .cleaned_before(doing.place, began(doing))
                .map(Value::Moment),
        ),
        Filled::whole(
            Column::CleanedAfter,
            known
                .cleaned_after(doing.place, doing.at)
                .map(Value::Moment),
        ),
        lots::found(doing, &[Topic::Cold, Topic::Stop]),
    ]);
    cells
}

fn began(doing: &Doing) -> chrono::DateTime<chrono::Utc> {
    doing.began_at.unwrap_or(doing.at)
}

/// The day on which a supplier packed its lot, or that of the kill.
fn produced(of: &Relative, known: &Known<'_>) -> Option<Value> {
    let animal = of.source.as_ref().and_then(|source| source.animal.as_ref());
    let told = known.bought.get(&of.lot.id);
    let packed = told.and_then(|told| told.packed_on);
    animal
        .map(|animal| animal.killed_on)
        .or(packed)
        .map(Value::Day)
}

fn carried_over(doing: &Doing, known: &Known<'_>) -> Filled {
    let since = known.cleaned_before(doing.place, began(doing));
    let before = known.ground.iter().filter(|of| {
        Some(of.place) == doing.place
            && of.at < doing.at
            && since.is_none_or(|since| of.at > since)
            && !doing.made.contains(&of.lot)
    });
    let lots = before.filter_map(|of| {
        let of = known.lot(of.lot)?;
        Some(Value::says(LogsSays::CarriedLot {
            lot: of.lot.code.clone(),
            product: named(of),
        }))
    });
    let lots = once(lots);
    Filled::whole(
        Column::CarriedOver,
        match lots.is_empty() {
            true => vec![Value::says(LogsSays::CarriedNothing)],
            false => lots,
        },
    )
}

/// Was beef ground: is any of what went in, or came out, of cattle?
pub fn is_beef(doing: &Doing, known: &Known<'_>) -> bool {
    let mut lots: Vec<LotId> = doing.used().into_iter().map(|(lot, _)| lot).collect();
    lots.extend(&doing.made);
    super::source::has_species(known, &lots, Species::Cattle)
}
