//! Do readings show that what a step cuts or packs needs no time and temperature control?

use super::facts::Facts;
use super::says::StableSays;
use crate::error::Result;
use crate::wire::asked::StepAsked;
use domain::code::LotCode;
use domain::condition::{Stable, natural, wets};
use domain::dates::Because;
use domain::lot::Lot;
use domain::says::Says;
use domain::stability::{StabilityReadings, Treated, needs_control};
use domain::words::{Addition, Quantity, StableBy, StepKind};
use rust_decimal::Decimal;

/// What shows it, where everything ready to eat that goes in was measured and is stable. Only a piece
/// that stays what it was keeps it: a cut, a portion, a pack. Where water goes in too, the readings are those
/// of another food.
///
/// # Errors
/// The database is away, or a reading on record cannot be.
pub fn shown(
    facts: &mut Facts<'_, '_>,
    asked: &StepAsked,
    kind: StepKind,
    lots: &[Lot],
) -> Result<Option<Stable>> {
    if !matches!(kind, StepKind::Cut | StepKind::Portion | StepKind::Pack) {
        return Ok(None);
    }
    let mut added = asked.added.iter().flatten();
    let is_wet = |lot: &Lot| natural(&lot.product).is_some_and(wets);
    if added.any(|of| of.what.0 != Addition::ScaleDifference) || lots.iter().any(is_wet) {
        return Ok(None);
    }
    let mut shown = None;
    // Salt on the outside is nothing that a reading is asked of.
    let asked = |lot: &&Lot| matches!(lot.condition().stable, None | Some(StableBy::Readings));
    for lot in lots.iter().filter(asked) {
        if !lot.condition().is_ready() {
            return Ok(None);
        }
        match by_last_readings(facts, lot)? {
            Some(stable) => shown = Some(stable),
            None => return Ok(None),
        }
    }
    Ok(shown)
}

/// Do the last pH and water activity of a lot show that it needs no time and temperature control?
///
/// # Errors
/// The database is away, or a reading on record cannot be.
pub fn by_last_readings(facts: &mut Facts<'_, '_>, lot: &Lot) -> Result<Option<Stable>> {
    let read = facts.readings(lot.id)?;
    let last = |quantity: Quantity| {
        let found = read.iter().rev().find(|(_, of, _)| *of == quantity);
        found.map(|(_, _, millionths)| Decimal::new(*millionths, 6).normalize())
    };
    let (ph, water_activity) = (last(Quantity::Ph), last(Quantity::WaterActivity));
    of_lot(facts, lot.code.clone(), ph, water_activity)
}

/// Do the last readings of a lot show it?
///
/// # Errors
/// A reading that cannot be.
pub fn of_lot(
    facts: &Facts<'_, '_>,
    lot: LotCode,
    ph: Option<Decimal>,
    water_activity: Option<Decimal>,
) -> Result<Option<Stable>> {
    let of = |says| StableSays::Of { lot, says };
    by_readings(facts, ph, water_activity, of)
}

/// Do a pH and a water activity show that food needs no time and temperature control?
///
/// # Errors
/// A reading that cannot be.
pub fn by_readings(
    facts: &Facts<'_, '_>,
    ph: Option<Decimal>,
    water_activity: Option<Decimal>,
    of: impl FnOnce(Says) -> StableSays,
) -> Result<Option<Stable>> {
    if ph.is_none() && water_activity.is_none() {
        return Ok(None);
    }
    let readings = StabilityReadings {
        ph,
        water_activity,
        ..StabilityReadings::default()
    };
    let law = facts.law();
    let stable = needs_control(&readings, Treated::default(), &law.stability, &law.rows)?;
    let finding = stable.findings.first().filter(|_| stable.is_stable());
    let found = finding.and_then(|finding| Some((finding, finding.rows.first()?)));
    Ok(found.map(|(finding, row)| {
        let says = of(finding.says.clone());
        Stable {
            by: StableBy::Readings,
            because: Because::law(says, row),
        }
    }))
}
