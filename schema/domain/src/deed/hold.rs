//! Lots are held, and let go again.

use super::change::change;
use super::draw::{Choice, Draw, not_voided, settle};
use super::says::HoldSays;
use crate::dates::Because;
use crate::grams::Grams;
use crate::lot::{Lot, PackId};
use crate::moment::Moment;
use crate::plan::Plan;
use crate::refusal::{Refusal, RefusalKind, Result};
use crate::stop::{Cause, IncidentId, Placed, StopSays};
use crate::words::{Account, Disposal, StopKind, Topic};
use chrono_tz::Tz;

/// The incident that a hold is for, with its number.
pub type ForIncident<'a> = Option<(IncidentId, &'a str)>;

/// What a hold says of itself.
#[derive(Debug, Clone, Copy)]
pub struct Holding<'a> {
    /// Why.
    pub why: &'a str,
    /// The incident that it is for.
    pub incident: ForIncident<'a>,
    /// When.
    pub moment: &'a Moment,
    /// The kitchen's time zone.
    pub zone: Tz,
}

/// What a hold adds to the record. Without packs it is on all of the lot, also on what comes back.
///
/// # Errors
/// A voided lot, a pack that never was, a time before it was made. `field` is the path of the lot in
/// the request.
pub fn place(
    plan: &mut Plan,
    lot: &Lot,
    packs: Option<&[u32]>,
    holding: &Holding<'_>,
    field: &str,
) -> Result<()> {
    not_voided(lot, &format!("{field}lot"))?;
    let Holding {
        why,
        incident,
        moment,
        zone,
    } = *holding;
    moment.not_before(lot.made_at, &lot.code, zone)?;
    let stop = match incident {
        Some((incident, number)) => {
            crate::incident::hold(incident, number, why, moment.stops_from())
        }
        None => Cause {
            kind: StopKind::Held,
            topic: Topic::Stop,
            because: Because::house(StopSays::Held { why: why.into() }, StopSays::HeldRule),
            since: moment.stops_from(),
        }
        .into(),
    };
    match packs {
        None => plan.stops.push((lot.id, None, stop)),
        Some(numbers) => {
            for (nth, number) in numbers.iter().enumerate() {
                let at = format!("{field}packs[{nth}]");
                let pack = super::draw::numbered(lot, *number, &at)?;
                plan.stops.push((lot.id, Some(pack.id), stop.clone()));
            }
        }
    }
    note(plan, lot, packs);
    Ok(())
}

/// What letting go adds to the record: it ends the holds that stand on these packs, those of one incident, or else
/// those that were placed on their own. Each hold stands by itself.
///
/// # Errors
/// No hold stands on them.
pub fn release(
    plan: &mut Plan,
    lot: &Lot,
    packs: Option<&[u32]>,
    incident: Option<IncidentId>,
    moment: &Moment,
    field: &str,
) -> Result<()> {
    let chosen: Option<Vec<PackId>> = packs.map(|numbers| {
        let of = numbers.iter().filter_map(|number| lot.pack(*number));
        of.map(|pack| pack.id).collect()
    });
    let ends = |placed: &&Placed| {
        let of = match (&chosen, placed.pack) {
            (None, _) => true,
            (Some(chosen), Some(pack)) => chosen.contains(&pack),
            (Some(_), None) => false,
        };
        let is_held = placed.cause.kind == StopKind::Held && placed.stands(moment.at);
        is_held && placed.incident == incident && of
    };
    let before = plan.ends.len();
    let ended = lot.stops.iter().filter(ends);
    plan.ends
        .extend(ended.map(|placed| (placed.id, Disposal::Released)));
    if plan.ends.len() == before {
        let lot = lot.code.clone();
        let detail = HoldSays::NoHold { lot };
        return Err(Refusal::new(
            RefusalKind::Clash,
            format!("{field}lot"),
            detail,
        ));
    }
    note(plan, lot, packs);
    Ok(())
}

/// The deed stands in the history of what it is about.
pub(super) fn note(plan: &mut Plan, lot: &Lot, packs: Option<&[u32]>) {
    let choice = packs.map_or(Choice::All, |packs| Choice::Whole(packs.to_vec()));
    let draws = settle(lot, &choice, "").unwrap_or_default();
    let noted = |draw: &Draw<'_>| change(draw, Account::Noted, Grams::ZERO, draw.pack.now);
    plan.changes.extend(draws.iter().map(noted));
}
