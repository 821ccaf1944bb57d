//! A person disposes of what is stopped.

use super::facts::{choice, wanted};
use super::says::DeedSays;
use super::{DeedHeader, Done, perform};
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::wire::stops::DispositionAsked;
use domain::deed::dispose::{self, Disposing};
use domain::deed::draw::Choice;
use domain::right::Right;
use domain::words::{DeedKind, Disposal};

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
        place: None,
        note: Some(&asked.why),
    };
    if asked.what.0 == Disposal::Released {
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
        let plan = dispose::plan(&lot, &chosen, &disposing, &moment, zone)?;
        facts.record(asked.id.0.to_string(), DeedKind::Dispose, &plan)
    })
}
