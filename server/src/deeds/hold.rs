//! Lots are held, and let go again.

use super::facts::{Facts, choice, wanted};
use super::says::DeedSays;
use super::{DeedHeader, Done, incident, perform};
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::wire::answers::DeedDone;
use crate::wire::stops::HoldAsked;
use domain::deed::draw::Choice;
use domain::deed::hold::{self, Holding};
use domain::deed::says::HoldSays;
use domain::incident::IncidentSays;
use domain::lot::{Lot, LotId};
use domain::plan::Plan;
use domain::stop::{IncidentId, NewStop};
use domain::words::DeedKind;
use store::incidents::IncidentRow;
use store::occupants;

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
        let mut done = facts.record(asked.id.0.to_string(), kind, &plan)?;
        if kind == DeedKind::Hold && incident.is_none() && !plan.stops.is_empty() {
            made_since(facts, &plan, &mut done)?;
        }
        Ok(done)
    })
}

/// What was made of it after the moment of the hold, and stood on record before the hold did, is held with it. What a
/// recall holds it reaches by itself.
fn made_since(facts: &mut Facts<'_, '_>, plan: &Plan, done: &mut DeedDone) -> Result<()> {
    let since = facts.moment.at;
    let (mut more, mut codes) = (Plan::default(), Vec::new());
    for (lot, pack, stop) in &plan.stops {
        let key = pack.map(|pack| pack.0);
        let made = occupants::made_since(facts.tx.conn, lot.0, key, since.naive_utc())?;
        if made.is_empty() {
            continue;
        }
        let placed = store::stops::of_lots(facts.tx.conn, &[lot.0])?;
        let mut placed = placed.get(&lot.0).into_iter().flatten();
        let first = placed.rfind(|placed| placed.pack == *pack && placed.incident.is_none());
        let root = first.map(|placed| placed.root);
        for row in &made {
            let inherited = NewStop {
                root,
                ..stop.clone()
            };
            more.stops.push((LotId(row.id), None, inherited));
            let code = row.code()?.shown();
            if !codes.contains(&code) {
                codes.push(code);
            }
        }
    }
    if !more.stops.is_empty() {
        store::record::plan(facts.tx, facts.deed, &facts.moment, &more)?;
        let lots = codes.join(", ");
        done.said.push(HoldSays::MadeSince { lots }.into());
    }
    Ok(())
}
