//! Lots are held, and let go again.

use super::facts::{Facts, choice, wanted};
use super::says::DeedSays;
use super::{DeedHeader, Done, incident, perform};
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::wire::stops::HoldAsked;
use domain::deed::draw::Choice;
use domain::deed::hold::{self, Holding};
use domain::incident::IncidentSays;
use domain::lot::Lot;
use domain::plan::Plan;
use domain::stop::IncidentId;
use domain::words::DeedKind;
use store::incidents::IncidentRow;

/// Holds lots.
///
/// # Errors
/// No lot or no reason; a lot that was never given out or was voided; a pack that never was.
pub fn place(app: &Caller<'_>, asked: &HoldAsked) -> Result<Done> {
    take(
        app,
        asked,
        DeedKind::Hold,
        |facts, plan, lot, packs, incident, field| {
            let holding = Holding {
                why: &asked.why.0,
                incident: incident.map(|of| (IncidentId(of.id), of.number.as_str())),
                moment: &facts.moment,
                zone: facts.kitchen.zone,
            };
            hold::place(plan, lot, packs, &holding, field)?;
            Ok(())
        },
    )
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
        |facts, plan, lot, packs, incident, field| {
            let incident = incident.map(|of| IncidentId(of.id));
            hold::release(plan, lot, packs, incident, &facts.moment, field)?;
            Ok(())
        },
    )
}

fn take(
    app: &Caller<'_>,
    asked: &HoldAsked,
    kind: DeedKind,
    each: impl Fn(
        &Facts<'_, '_>,
        &mut Plan,
        &Lot,
        Option<&[u32]>,
        Option<&IncidentRow>,
        &str,
    ) -> Result<()>,
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
        let incident = asked
            .incident
            .map(|id| incident::of_id(facts.tx.conn, id, Some("incident")));
        let incident = incident.transpose()?;
        if let Some(drill) = incident
            .as_ref()
            .filter(|row| row.drill && kind == DeedKind::Hold)
        {
            let number = drill.number.clone();
            return Err(Error::clash(
                "incident",
                IncidentSays::HoldsNothing { number },
            ));
        }
        let mut sought = Vec::with_capacity(asked.lots.len());
        let mut chosen = Vec::with_capacity(asked.lots.len());
        for (nth, of) in asked.lots.iter().enumerate() {
            let field = format!("lots[{nth}].");
            let named = facts.named(&of.lot.0, &format!("{field}lot"))?;
            // The code of one pack means that pack.
            let packs = match choice(&named, None, of.packs.as_deref(), None, &field)? {
                Choice::Whole(packs) => Some(packs),
                Choice::One { pack, .. } => pack.map(|pack| vec![pack]),
                Choice::All => None,
            };
            let of = packs.clone().map_or(Choice::All, Choice::Whole);
            sought.push((named.code, wanted(&of), format!("{field}lot")));
            chosen.push(packs);
        }
        let lots = facts.lots(&sought)?;
        let mut plan = Plan::default();
        for (nth, (lot, packs)) in lots.iter().zip(&chosen).enumerate() {
            let field = format!("lots[{nth}].");
            each(
                facts,
                &mut plan,
                lot,
                packs.as_deref(),
                incident.as_ref(),
                &field,
            )?;
        }
        facts.record(asked.id.0.to_string(), kind, &plan)
    })
}
