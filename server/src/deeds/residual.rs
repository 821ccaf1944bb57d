//! What a laboratory found of nitrite and nitrate in the finished food, held against what may be left.

use super::facts::Facts;
use super::happened::broken;
use super::says::MeasureSays;
use crate::error::Result;
use crate::read::LoadedFamily;
use crate::wire::Number;
use crate::wire::cures::decimal;
use crate::wire::readings::ReadingAsked;
use domain::cure::{Basis, CureLevel, assess_residual};
use domain::family::cured;
use domain::lot::Lot;
use domain::moment::day_of;
use domain::plan::Plan;
use domain::rows::Finding;
use domain::words::{Quantity, Topic};
use store::family::Extent;

/// More than any cure leaves, in parts per million: plain sense, no law's.
pub const MOST_PPM: i64 = 100_000;

/// What was found, each with its quantity and its name on the wire.
pub fn found(asked: &ReadingAsked) -> [(Quantity, Option<Number>, &'static str); 2] {
    [
        (
            Quantity::ResidualNitritePpm,
            asked.residual_nitrite_ppm,
            "residual_nitrite_ppm",
        ),
        (
            Quantity::ResidualNitratePpm,
            asked.residual_nitrate_ppm,
            "residual_nitrate_ppm",
        ),
    ]
}

/// Holds what was found against the limits of the place on the day it was found. A finding of a laboratory
/// is never refused: too much is a stop. It counts as the ion: a report in sodium salt is then judged too
/// strictly, never too mildly.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn judge(
    facts: &mut Facts<'_, '_>,
    lot: &Lot,
    asked: &ReadingAsked,
    plan: &mut Plan,
) -> Result<()> {
    if found(asked).iter().all(|(_, found, _)| found.is_none()) {
        return Ok(());
    }
    let curing = {
        let reading = LoadedFamily::load(facts.app, facts.tx.conn, &[lot.id.0], Extent::ANCESTORS)?;
        let cured = cured(&reading.family, lot.id);
        let of = cured.and_then(|cured| reading.family.get(cured.lot));
        of.and_then(|of| of.lot.product.cured.cure)
    };
    let Some(curing) = curing else {
        plan.warnings.push(MeasureSays::NotCured.into());
        return Ok(());
    };
    let day = day_of(facts.moment.at, facts.kitchen.zone);
    for (quantity, found, field) in found(asked) {
        let Some(ppm) = found else { continue };
        let basis = match quantity {
            Quantity::ResidualNitritePpm => Basis::NitriteIon,
            _ => Basis::NitrateIon,
        };
        let level = CureLevel::residual(decimal(ppm), basis);
        let law = facts.law();
        let findings = assess_residual(level, curing.method, curing.class, day, law)?;
        let told = findings.iter().map(|of| of.with_sources(&law.rows));
        plan.warnings.extend(told);
        let against: Vec<Finding> = findings.into_iter().filter(Finding::refuses).collect();
        if let Some(first) = against.first() {
            let says = first.says.clone();
            let stop = broken(facts, field, Topic::Cure, says, &against, true)?;
            plan.stops.push((lot.id, None, stop));
        }
    }
    Ok(())
}
