//! What may be done with held goods: they are thrown away or sent back by right, and get no label but the tag.

use crate::deeds::facts::Facts;
use crate::error::Result;
use crate::label_facts::Prepared;
use crate::read::LoadedFamily;
use domain::lot::{Lot, LotId};
use domain::plan::Plan;
use domain::right::Right;
use domain::stop::held_at_all;
use domain::words::StopKind;
use labels::Purpose;

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
