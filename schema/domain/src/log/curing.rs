//! What was cured: what went in, how strong it was, what was read since, and its release.

use super::doing::{Doing, Read};
use super::entry::Filled;
use super::kind::Column;
use super::lots;
use super::source::Known;
use super::value::Value;
use crate::grams::Grams;
use crate::measure::Percent;
use crate::quantity::Quantity;
use crate::words::Topic;

/// The quantities that a cure is followed by.
const OF_A_CURE: [Quantity; 14] = [
    Quantity::Grams,
    Quantity::Celsius,
    Quantity::Fahrenheit,
    Quantity::Ph,
    Quantity::WaterActivity,
    Quantity::Salometer60F,
    Quantity::Salometer38F,
    Quantity::BrineCelsius,
    Quantity::BrineFahrenheit,
    Quantity::NitritePpm,
    Quantity::NitratePpm,
    Quantity::SaltPercent,
    Quantity::ResidualNitritePpm,
    Quantity::ResidualNitratePpm,
];

pub fn cells(doing: &Doing, known: &Known<'_>) -> Vec<Filled> {
    let mut cells = lots::done(doing, known);
    let own = doing.lots();
    cells.extend(lots::lots(&own, known));
    cells.extend(lots::temperature(doing, known));
    let weighed = doing.read.iter().rev();
    let weighed = weighed.filter(|read| read.lot.is_some() && read.quantity == Quantity::Grams);
    if let Some(weighed) = weighed.map(weight).next() {
        cells.retain(|filled| filled.column != Column::Weight);
        cells.push(Filled::whole(Column::Weight, [Value::Weight(weighed)]));
    }
    let figure = |quantity| doing.last(quantity);
    let brine = figure(Quantity::Salometer60F).or_else(|| figure(Quantity::Salometer38F));
    let residual = [Quantity::ResidualNitritePpm, Quantity::ResidualNitratePpm];
    cells.extend([
        lots::materials(doing, known),
        Filled::whole(
            Column::Salt,
            figure(Quantity::SaltPercent).map(|salt| Value::Percent(Percent::new(salt))),
        ),
        Filled::whole(
            Column::Nitrite,
            figure(Quantity::NitritePpm).map(Value::Ppm),
        ),
        Filled::whole(
            Column::Nitrate,
            figure(Quantity::NitratePpm).map(Value::Ppm),
        ),
        Filled::whole(Column::Brine, brine.map(Value::Number)),
        Filled::whole(Column::Ph, figure(Quantity::Ph).map(Value::Number)),
        Filled::whole(
            Column::WaterActivity,
            figure(Quantity::WaterActivity).map(Value::Number),
        ),
        Filled::whole(
            Column::Residual,
            residual.into_iter().filter_map(figure).map(Value::Ppm),
        ),
        lots::found(
            doing,
            &[
                Topic::Cure,
                Topic::Release,
                Topic::Proof,
                Topic::Confirmation,
            ],
        ),
    ]);
    cells
}

fn weight(read: &Read) -> Grams {
    Grams::from_milligrams(read.millionths / 1_000)
}

/// Is it of the cure room: a step of a cure, a release, or a reading of a cured lot?
pub fn is_of_a_cure(doing: &Doing, known: &Known<'_>) -> bool {
    use crate::words::DeedKind::{Cure, Measure};
    let of = |lot: &crate::lot::LotId| {
        let of = known.lot(*lot);
        of.is_some_and(|of| {
            of.lot.product.is_hung() || of.lot.product.kind == crate::words::ProductKind::Cured
        })
    };
    match doing.kind {
        Cure => true,
        Measure => {
            let told = doing
                .read
                .iter()
                .any(|read| OF_A_CURE.contains(&read.quantity));
            told && doing.lots().iter().any(of)
        }
        _ => doing.lots().iter().any(of),
    }
}
