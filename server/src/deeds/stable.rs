//! Do readings show that what a step cuts or packs needs no time and temperature control?

use super::facts::Facts;
use super::says::StableSays;
use crate::error::Result;
use domain::dates::ReadyBecause;
use domain::lot::Lot;
use domain::stability::{StabilityReadings, Treated, needs_control};
use domain::words::{Quantity, StepKind};
use rust_decimal::Decimal;
use store::measurements;

/// What shows it, where everything ready to eat that goes in was measured and is stable. Only a piece
/// that stays what it was keeps it: a cut, a portion, a pack.
///
/// # Errors
/// The database is away, or a reading on record cannot be.
pub fn ready(
    facts: &mut Facts<'_, '_>,
    kind: StepKind,
    lots: &[Lot],
) -> Result<Option<ReadyBecause>> {
    if !matches!(kind, StepKind::Cut | StepKind::Portion | StepKind::Pack) {
        return Ok(None);
    }
    let law = facts.law();
    let mut shown = None;
    for lot in lots.iter().filter(|lot| lot.product.is_controlled()) {
        if lot.product.raw {
            return Ok(None);
        }
        let read = measurements::of_lot(facts.tx.conn, lot.id.0)?;
        let last = |quantity: Quantity| {
            let found = read.iter().rev().find(|(_, of, _)| *of == quantity);
            found.map(|(_, _, millionths)| Decimal::new(*millionths, 6).normalize())
        };
        let readings = StabilityReadings {
            ph: last(Quantity::Ph),
            water_activity: last(Quantity::WaterActivity),
            ..StabilityReadings::default()
        };
        if readings.ph.is_none() && readings.water_activity.is_none() {
            return Ok(None);
        }
        let stable = needs_control(&readings, Treated::default(), &law.stability, &law.rows)?;
        if !stable.is_stable() {
            return Ok(None);
        }
        let finding = stable.findings.first();
        let row = finding.and_then(|finding| finding.rows.first());
        if let (Some(finding), Some(row)) = (finding, row) {
            shown = Some(ReadyBecause {
                says: StableSays::Of {
                    lot: lot.code.clone(),
                    says: finding.says.clone(),
                }
                .into(),
                row: row.clone(),
            });
        }
    }
    Ok(shown)
}
