//! What was cooked: how hot the core came, for how long, by which row that was enough.

use super::doing::Doing;
use super::entry::Filled;
use super::kind::Column;
use super::lots;
use super::source::Known;
use super::value::Value;
use crate::quantity::Quantity;
use crate::words::Topic;
use chrono::TimeDelta;
use rust_decimal::prelude::ToPrimitive;

/// Was anything heated: does it say so by a reading, by a verdict, or by what it is?
pub fn is_heat(doing: &Doing) -> bool {
    use crate::words::DeedKind::{Cook, Render};
    let judged = doing.reasons.iter().any(|(_, of)| of.topic == Topic::Heat);
    let stopped = doing.stops.iter().any(|(_, of)| of.topic == Topic::Heat);
    matches!(doing.kind, Cook | Render) || judged || stopped || !doing.points.is_empty()
}

pub fn cells(doing: &Doing, known: &Known<'_>) -> Vec<Filled> {
    let mut cells = lots::done(doing, known);
    cells.extend(lots::lots(&doing.lots(), known));
    let points = doing.points.iter().map(|point| point.read);
    let hottest = points.chain(doing.temperatures()).max();
    let minutes = |quantity| {
        let minutes = doing.last(quantity)?;
        let seconds = (minutes * rust_decimal::Decimal::from(60)).to_i64()?;
        Some(Value::Length(TimeDelta::seconds(seconds)))
    };
    cells.extend([
        Filled::whole(Column::Hottest, hottest.map(Value::Temperature)),
        Filled::whole(Column::Held, minutes(Quantity::HoldMinutes)),
        Filled::whole(Column::Boiled, minutes(Quantity::BoiledMinutes)),
        lots::chart(doing),
        Filled::whole(Column::Probe, known.probes(&doing.probes(), doing.at)),
        Filled::whole(
            Column::Standard,
            Value::text(doing.told.heat_standard.as_ref()),
        ),
        lots::found(doing, &[Topic::Heat]),
    ]);
    cells
}
