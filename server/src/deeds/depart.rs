//! Packs leave: sold, served, discarded, shipped, returned to the supplier.

use super::facts::{Facts, choice, wanted};
use super::{DeedHeader, Done, happened, incident, perform};
use crate::caller::Caller;
use crate::error::Result;
use crate::wire::asked::DepartureAsked;
use domain::deed::depart;
use domain::deed::says::DepartSays;
use domain::duties::sale::{Head, check_sale};
use domain::grams::Grams;
use domain::lot::Lot;
use domain::plan::Plan;
use domain::right::Right;
use domain::says::Says;
use domain::words::{DeedKind, Topic};

/// Records a departure.
///
/// # Errors
/// Whatever the contract refuses of a departure; 403 where it passed a stop, and whoever records it may not
/// lift stops.
pub fn take(app: &Caller<'_>, asked: &DepartureAsked) -> Result<Done> {
    let kind = DeedKind::parse(asked.kind.0.as_str())
        .expect("every departure is a deed of the same spelling");
    let header = DeedHeader {
        id: asked.id,
        kind,
        at: asked.at,
        began_at: None,
        by: &asked.by,
        place: None,
        note: asked.note.as_ref().or(asked.why.as_ref()),
    };
    let happened = happened::as_it_happened(asked.as_it_happened, header.note)?;
    perform(app, header, asked, |facts| {
        let named = facts.named(&asked.lot.0, "lot")?;
        let choice = choice(&named, asked.pack, asked.packs.as_deref(), asked.grams, "")?;
        let lot = facts.lot(&named.code, wanted(&choice))?;
        let mut plan = depart::plan(
            asked.kind.0,
            &lot,
            &choice,
            &facts.moment,
            facts.kitchen.zone,
            happened,
        )?;
        if matches!(kind, DeedKind::Discard | DeedKind::Return) {
            incident::may_destroy(facts, &lot, &plan)?;
        }
        // What left although it was stopped is recorded by somebody who could have let it go.
        if plan.reasons.iter().any(|(_, why)| why.topic == Topic::Stop) {
            facts.who.need(Right::Lift)?;
        }
        // One step forward: a recall calls whoever has it (`us-O5`, `canada-eu-uk-8.1`).
        if kind == DeedKind::Ship && asked.to.is_none() {
            plan.warnings.push(DepartSays::ToNobody.into());
        }
        if kind == DeedKind::Sell {
            plan.warnings.extend(much(facts, &lot, &plan)?);
        }
        facts.record(asked.id.0.to_string(), kind, &plan)
    })
}

/// More raw meat of one animal in one sale than is a retail sale here.
fn much(facts: &Facts<'_, '_>, lot: &Lot, plan: &Plan) -> Result<Option<Says>> {
    let Some(head) = lot
        .product
        .species
        .and_then(Head::of)
        .filter(|_| lot.product.raw)
    else {
        return Ok(None);
    };
    let sold: Grams = plan.changes.iter().map(|change| change.grams).sum();
    if sold.is_none_left() {
        return Ok(None);
    }
    let law = facts.law();
    let found = check_sale(&law.duties, head, sold)?;
    Ok(found.map(|finding| finding.with_sources(&law.rows)))
}
