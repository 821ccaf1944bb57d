//! Packs go elsewhere, or are frozen or thawed.

use super::facts::{choice, place, wanted};
use super::lifts::Standing;
use super::says::DeedSays;
use super::{DeedHeader, Done, happened, mince, perform};
use crate::caller::Caller;
use crate::error::Result;
use crate::wire::asked::MoveAsked;
use domain::deed::draw::Choice;
use domain::deed::relocate::{Move, Whither};
use domain::family::Lists;
use domain::words::{DeedKind, State};

/// Records a move.
///
/// # Errors
/// Whatever the contract refuses of a move.
pub fn take(app: &Caller<'_>, asked: &MoveAsked) -> Result<Done> {
    let header = DeedHeader {
        id: asked.id,
        kind: DeedKind::Move,
        at: asked.at,
        began_at: None,
        by: &asked.by,
        place: None,
        note: asked.note.as_ref(),
    };
    let happened = happened::as_it_happened(asked.as_it_happened, asked.note.as_ref())?;
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
            .map(|to| whither(&facts.standing.lists, &to.0))
            .transpose()?;
        let lot = facts.lot(&named.code, wanted(&choice))?;
        let state = asked.state.map(|state| state.0);
        let mut plan = Move {
            lot: &lot,
            choice: &choice,
            to,
            state,
            moment: facts.moment,
            zone: facts.kitchen.zone,
            law: facts.law(),
            as_it_happened: happened,
        }
        .plan()?;
        let touched: Vec<_> = plan.changes.iter().map(|of| of.pack).collect();
        let packs = || lot.packs.iter().filter(|pack| touched.contains(&pack.id));
        // Food that is only put into a freezer keeps its day, and whoever put it there may think otherwise.
        if let (None, Some(to)) = (state, to)
            && packs().any(|pack| pack.now.state != State::Frozen)
            && store::places::holds_only_frozen(facts.tx.conn, to.place.0, lot.id.0)?
        {
            let place = facts.standing.lists.place_name(to.place).to_owned();
            plan.warnings.push(DeedSays::NotFrozen { place }.into());
        }
        if state == Some(State::Frozen) {
            let packs = packs();
            mince::frozen_again(facts, &lot, packs, happened)?.add_to(&mut plan);
        }
        // What is entered late and frozen before its last day has days again.
        let moved = [lot.id.0];
        let standing = match state.is_some() && facts.moment.late {
            true => Some(Standing::of(facts, &moved)?),
            false => None,
        };
        let mut done = facts.record(asked.id.0.to_string(), DeedKind::Move, &plan)?;
        if let Some(standing) = standing {
            standing.lifted(facts, &moved)?;
        }
        // What is kept otherwise has other days, and words of its own: its old label is no longer true.
        let turned = packs().filter(|pack| state.is_some_and(|state| state != pack.now.state));
        let turned: Vec<String> = turned.map(|pack| pack.number.to_string()).collect();
        if !turned.is_empty() {
            let (code, packs) = (&lot.code, turned.join(","));
            done.labels = Some(format!("/api/lots/{code}/labels.pdf?packs={packs}"));
        }
        Ok(done)
    })
}

fn whither(lists: &Lists, code: &str) -> Result<Whither> {
    Ok(Whither {
        place: place(lists, code, "to")?,
        is_counter: lists.places.get(code).is_some_and(|place| place.is_counter),
    })
}
