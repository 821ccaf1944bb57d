//! Packs go elsewhere, or are frozen or thawed.

use super::facts::{choice, place, wanted};
use super::{Done, Header, perform};
use crate::caller::Caller;
use crate::error::Result;
use crate::wire::asked::MoveAsked;
use domain::deed::draw::Choice;
use domain::deed::relocate;
use domain::words::DeedKind;

/// Records a move.
///
/// # Errors
/// Whatever the contract refuses of a move.
pub fn take(app: &Caller<'_>, asked: &MoveAsked) -> Result<Done> {
    let header = Header {
        id: asked.id,
        kind: DeedKind::Move,
        at: asked.at,
        began_at: None,
        by: &asked.by,
        place: None,
        note: asked.note.as_ref(),
    };
    perform(app, header, asked, |facts| {
        let named = facts.named(&asked.lot.0, "lot")?;
        let choice = match (
            choice(&named, None, asked.packs.as_deref(), None, "")?,
            named.pack,
        ) {
            (Choice::One { pack: None, .. }, None) => Choice::All,
            (chosen, _) => chosen,
        };
        let to = asked
            .to
            .as_ref()
            .map(|to| place(&facts.standing.lists, &to.0, "to"))
            .transpose()?;
        let lot = facts.lot(&named.code, wanted(&choice))?;
        let state = asked.state.map(|state| state.0);
        let plan = relocate::plan(&lot, &choice, to, state, &facts.moment, facts.kitchen.zone)?;
        facts.record(asked.id.0.to_string(), DeedKind::Move, &plan)
    })
}
