//! What may be done with held goods: they are thrown away or sent back by right, and get no label but the tag.

use crate::deeds::facts::Facts;
use crate::error::Result;
use crate::label_facts::Prepared;
use crate::read::LoadedFamily;
use domain::grams::Grams;
use domain::incident::IncidentSays;
use domain::lot::{Lot, LotId, PackId};
use domain::plan::Plan;
use domain::right::Right;
use domain::stop::held_at_all;
use domain::words::{Account, StopKind};
use labels::Purpose;
use store::incidents::IncidentRow;

/// What throws away or sends back what is held needs the right to.
///
/// # Errors
/// 403.
pub fn may_destroy(facts: &Facts<'_, '_>, lot: &Lot, plan: &Plan) -> Result<()> {
    let is_held = |pack| {
        let mut stops = lot.stops.iter();
        stops.any(|placed| {
            placed.cause.kind == StopKind::Held
                && placed.stands(facts.moment.at)
                && placed.is_on(Some(pack))
        })
    };
    match plan.changes.iter().any(|change| is_held(change.pack)) {
        true => facts.who.need(Right::Destroy),
        false => Ok(()),
    }
}

/// What leaves in an incident is what was counted, or that it is not is told: a pack that nobody counted since the
/// call, or another weight than was counted.
///
/// # Errors
/// The database is away.
pub fn as_counted(
    facts: &mut Facts<'_, '_>,
    of: &IncidentRow,
    lot: &Lot,
    plan: &mut Plan,
) -> Result<()> {
    let leaves = |account| matches!(account, Account::Discarded | Account::Returned);
    let out = plan.changes.iter().filter(|change| leaves(change.account));
    let out: Vec<(PackId, Grams)> = out.map(|change| (change.pack, change.grams)).collect();
    if out.is_empty() {
        return Ok(());
    }
    let packs: Vec<i32> = out.iter().map(|(pack, _)| pack.0).collect();
    let counted = store::incident_life::counted_since(facts.tx.conn, of.id, &packs)?;
    for (pack, disposed) in out {
        let Some(pack) = lot.packs.iter().find(|of| of.id == pack) else {
            continue;
        };
        let shown = lot.shown(pack.number);
        if !counted.contains(&pack.id.0) {
            plan.warnings
                .push(IncidentSays::DisposedUncounted { lot: shown }.into());
        } else if disposed != pack.now.left {
            let counted = pack.now.left;
            let says = IncidentSays::DisposedOther {
                lot: shown,
                counted,
                disposed,
            };
            plan.warnings.push(says.into());
        }
    }
    Ok(())
}

/// Of what is held nothing is printed but the tag that says so.
///
/// # Errors
/// 409.
pub fn not_printed(
    facts: &Facts<'_, '_>,
    reading: &LoadedFamily<'_>,
    id: LotId,
    labels: &[Prepared],
) -> Result<()> {
    let others = labels.iter().filter(|label| label.purpose != Purpose::Hold);
    let numbers = others.map(|label| label.pack);
    match reading.family.get(id) {
        Some(of) => Ok(held_at_all(&of.lot, numbers, &facts.moment)?),
        None => Ok(()),
    }
}
