//! A person disposes of what is stopped.

use super::facts::{Facts, choice, wanted};
use super::says::DeedSays;
use super::{DeedHeader, Done, incident, perform, trichinae};
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::wire::stops::DispositionAsked;
use domain::deed::dispose::{self, Disposing};
use domain::deed::draw::Choice;
use domain::lot::Lot;
use domain::plan::Reason;
use domain::refusal::Refusal;
use domain::right::Right;
use domain::words::{ConditionKind, DeedKind, Disposal, ProductKind, Topic};

/// Records a disposition.
///
/// # Errors
/// Nothing stands on what is to be let go; nothing is left of what is to leave; no witness, no reason, or
/// no deed that put it right.
pub fn take(app: &Caller<'_>, asked: &DispositionAsked) -> Result<Done> {
    if asked.why.0.is_empty() {
        return Err(Error::cannot_be("why", DeedSays::WhyDisposed));
    }
    if asked.what.0 == Disposal::PutRight && asked.document.is_none() {
        return Err(Error::cannot_be("document", DeedSays::WhatPutRight));
    }
    let header = DeedHeader {
        id: asked.id,
        kind: DeedKind::Dispose,
        at: asked.at,
        began_at: None,
        by: &asked.by,
        place: asked.place.as_ref(),
        note: Some(&asked.why),
    };
    if matches!(asked.what.0, Disposal::Released | Disposal::PutRight) {
        app.who.need(Right::Lift)?;
    }
    perform(app, header, asked, |facts| {
        let named = facts.named(&asked.lot.0, "lot")?;
        let chosen = choice(&named, None, asked.packs.as_deref(), asked.grams, "")?;
        let chosen = match chosen {
            Choice::One {
                pack: None,
                grams: None,
            } => Choice::All,
            chosen => chosen,
        };
        let lot = facts.lot(&named.code, wanted(&chosen))?;
        if asked.what.0 == Disposal::PutRight {
            let document = asked.document.as_ref().map_or("", |of| of.0.as_str());
            put_right_by(facts, document, &lot)?;
        }
        let disposing = Disposing {
            what: asked.what.0,
            by: facts.by.clone(),
            why: match &asked.document {
                Some(document) => format!("{} ({})", asked.why.0, document.0),
                None => asked.why.0.clone(),
            },
            witness: asked.witness.as_ref().map(|witness| witness.0.clone()),
        };
        let (moment, zone) = (facts.moment, facts.kitchen.zone);
        let mut plan = dispose::plan(&lot, &chosen, &disposing, &moment, zone)?;
        if matches!(asked.what.0, Disposal::Discarded | Disposal::Returned) {
            incident::may_destroy(facts, &lot, &plan)?;
        }
        if let Some(id) = asked.incident {
            let of = incident::of_id(facts.tx.conn, id, Some("incident"))?;
            incident::disposed(facts, &of, &asked.why.0)?;
            incident::as_counted(facts, &of, &lot, &mut plan)?;
        }
        let lets_go = asked.what.0 == Disposal::Released;
        let by_test = lets_go && trichinae::waits_for_test(facts, &lot);
        if by_test || eaten_uncooked(&lot) && !plan.conditions.is_empty() {
            let row = store::lots::by_code(facts.tx.conn, &lot.code)?;
            let row = row.ok_or_else(|| Refusal::never_issued("lot", &lot.code))?;
            let chain = trichinae::proof(facts, asked.trichinae.as_ref(), &lot, &row)?;
            let links = Reason::all(Topic::Release, chain).into_iter();
            plan.reasons.extend(links.map(|link| (lot.id, link)));
        }
        facts.record(asked.id.0.to_string(), DeedKind::Dispose, &plan)
    })
}

/// Is it let go as ready although nothing was cooked: raw, or cured and no more?
fn eaten_uncooked(lot: &Lot) -> bool {
    let condition = lot.condition();
    let cured = lot.product.kind == ProductKind::Cured && !condition.is_ready();
    !lot.product.raw && (condition.is == ConditionKind::Raw || cured)
}

/// What put it right is a deed on record that did something to this very lot.
fn put_right_by(facts: &mut Facts<'_, '_>, document: &str, lot: &Lot) -> Result<()> {
    let other = || {
        let (document, lot) = (document.to_owned(), lot.code.clone());
        Error::cannot_be("document", DeedSays::PutRightByOther { document, lot })
    };
    let id = uuid::Uuid::parse_str(document).map_err(|_| other())?;
    let deed = store::deeds::by_uid(facts.tx.conn, id.as_bytes())?;
    let deed = deed.ok_or_else(other)?;
    if !dispose::may_put_right(deed.kind()?) {
        let (kind, lot) = (deed.kind()?, lot.code.clone());
        let says = DeedSays::PutsNothingRight { kind, lot };
        return Err(Error::cannot_be("document", says));
    }
    match store::deeds::stands_on(facts.tx.conn, deed.id, lot.id.0)? {
        true => Ok(()),
        false => Err(other()),
    }
}
