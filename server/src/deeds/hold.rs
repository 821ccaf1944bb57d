//! Lots are held, and let go again.

use super::facts::Facts;
use super::says::DeedSays;
use super::{DeedHeader, Done, perform};
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::wire::stops::{HeldAsked, HoldAsked};
use domain::deed::hold;
use domain::lot::Lot;
use domain::plan::Plan;
use domain::words::DeedKind;
use store::packs::PackChoice;

/// Holds lots.
///
/// # Errors
/// No lot or no reason; a lot that was never given out or was voided; a pack that never was.
pub fn place(app: &Caller<'_>, asked: &HoldAsked) -> Result<Done> {
    take(app, asked, DeedKind::Hold, |facts, plan, lot, of, field| {
        let (moment, zone) = (facts.moment, facts.kitchen.zone);
        let packs = of.packs.as_deref();
        hold::place(plan, lot, packs, &asked.why.0, &moment, zone, field)?;
        Ok(())
    })
}

/// Lets held lots go.
///
/// # Errors
/// No lot or no reason; no hold stands on a lot or its packs.
pub fn release(app: &Caller<'_>, asked: &HoldAsked) -> Result<Done> {
    take(
        app,
        asked,
        DeedKind::HoldRelease,
        |facts, plan, lot, of, field| {
            hold::release(plan, lot, of.packs.as_deref(), &facts.moment, field)?;
            Ok(())
        },
    )
}

fn take(
    app: &Caller<'_>,
    asked: &HoldAsked,
    kind: DeedKind,
    each: impl Fn(&Facts<'_, '_>, &mut Plan, &Lot, &HeldAsked, &str) -> Result<()>,
) -> Result<Done> {
    if asked.why.0.is_empty() {
        return Err(Error::cannot_be("why", DeedSays::WhyHeld));
    }
    if asked.lots.is_empty() {
        return Err(Error::cannot_be("lots", DeedSays::NothingHeld));
    }
    let header = DeedHeader {
        id: asked.id,
        kind,
        at: asked.at,
        began_at: None,
        by: &asked.by,
        place: None,
        note: Some(&asked.why),
    };
    perform(app, header, asked, |facts| {
        let mut sought = Vec::with_capacity(asked.lots.len());
        for (nth, of) in asked.lots.iter().enumerate() {
            let field = format!("lots[{nth}].lot");
            let named = facts.named(&of.lot.0, &field)?;
            let wanted = match &of.packs {
                None => PackChoice::OnHand,
                Some(packs) => {
                    let number = |pack: &u32| i32::try_from(*pack).unwrap_or(-1);
                    PackChoice::Numbers(packs.iter().map(number).collect())
                }
            };
            sought.push((named.code, wanted, field));
        }
        let lots = facts.lots(&sought)?;
        let mut plan = Plan::default();
        for (nth, (lot, of)) in lots.iter().zip(&asked.lots).enumerate() {
            each(facts, &mut plan, lot, of, &format!("lots[{nth}]."))?;
        }
        facts.record(asked.id.0.to_string(), kind, &plan)
    })
}
