//! A person disposes of what is stopped: it is discarded or returned, let go by right, or was put right.

use super::adopt::contents_unknown;
use super::change::{change, taken};
use super::draw::{Choice, Draw, not_voided, settle};
use super::says::DisposeSays;
use crate::condition::ConditionSays;
use crate::dates::Because;
use crate::grams::Grams;
use crate::lot::Lot;
use crate::moment::Moment;
use crate::plan::{Plan, Reason};
use crate::refusal::{Refusal, RefusalKind, Result};
use crate::stop::{Cause, Placed};
use crate::words::{Account, DeedKind, Disposal, StopKind, Topic};
use chrono_tz::Tz;

/// What a person says of it.
#[derive(Debug, Clone)]
pub struct Disposing {
    /// How.
    pub what: Disposal,
    /// Who.
    pub by: String,
    /// Why.
    pub why: String,
    /// Who saw it, where it left.
    pub witness: Option<String>,
}

/// May a deed of that sort have put something right: more heat, a reading, a correction, a paper? What only moved,
/// counted or sold it has made nothing good.
pub fn may_put_right(kind: DeedKind) -> bool {
    use DeedKind::*;
    !matches!(
        kind,
        Move | Sell
            | Serve
            | Ship
            | Discard
            | Return
            | TakeBack
            | Count
            | PlaceFailed
            | Print
            | Receive
    )
}

/// What a disposition adds to the record.
///
/// # Errors
/// Nothing stands on what is to be let go, nothing is left of what is to leave, nobody saw it leave,
/// a voided lot, a time before it was made.
pub fn plan(
    lot: &Lot,
    choice: &Choice,
    disposing: &Disposing,
    moment: &Moment,
    zone: Tz,
) -> Result<Plan> {
    not_voided(lot, "lot")?;
    moment.not_before(lot.made_at, &lot.code, zone)?;
    match disposing.what {
        Disposal::Discarded => leave(lot, choice, Account::Discarded, disposing, moment),
        Disposal::Returned => leave(lot, choice, Account::Returned, disposing, moment),
        Disposal::Released | Disposal::PutRight => let_go(lot, choice, disposing, moment),
    }
}

fn leave(
    lot: &Lot,
    choice: &Choice,
    account: Account,
    disposing: &Disposing,
    moment: &Moment,
) -> Result<Plan> {
    let Some(witness) = disposing.witness.as_ref().filter(|name| !name.is_empty()) else {
        return Err(Refusal::cannot_be("witness", DisposeSays::NoWitness));
    };
    let draws = settle(lot, choice, "")?;
    let take = |draw: &Draw<'_>| taken(draw, account, moment);
    let says = DisposeSays::Left {
        what: disposing.what,
        by: disposing.by.clone(),
        witness: witness.clone(),
        why: disposing.why.clone(),
    };
    Ok(Plan {
        changes: draws.iter().map(take).collect::<Result<_>>()?,
        reasons: vec![(lot.id, reason(says))],
        ..Plan::default()
    })
}

fn let_go(lot: &Lot, choice: &Choice, disposing: &Disposing, moment: &Moment) -> Result<Plan> {
    let draws = match choice {
        Choice::All => settle(lot, choice, "").unwrap_or_default(),
        chosen => settle(lot, chosen, "")?,
    };
    let ends = |placed: &&Placed| {
        let chosen = matches!(choice, Choice::All)
            || draws.iter().any(|draw| placed.pack == Some(draw.pack.id));
        // A limit is confirmed for the kitchen, not passed over for one lot; and who lets a pot go has not said
        // what is in it.
        let disposed = !matches!(placed.cause.topic, Topic::Confirmation | Topic::Contents);
        disposed && placed.cause.kind == StopKind::Failed && placed.stands(moment.at) && chosen
    };
    let ended: Vec<&Placed> = lot.stops.iter().filter(ends).collect();
    let unproven = matches!(choice, Choice::All)
        && lot.condition.is_some()
        && !lot.waits_for_release()
        && lot.condition().lacks_proof(&lot.product);
    let stands = matches!(choice, Choice::All) && !unproven;
    let stands = stands && lot.lacks_proof_of_room(None);
    if ended.is_empty() && !unproven && !stands {
        let untold =
            |placed: &Placed| placed.cause.topic == Topic::Contents && placed.stands(moment.at);
        let (untold, lot) = (lot.stops.iter().any(untold), lot.code.clone());
        let detail = match untold {
            true => DisposeSays::ContentsNotTold { lot },
            false => DisposeSays::NothingStands { lot },
        };
        return Err(Refusal::new(RefusalKind::Clash, "lot", detail));
    }
    let told = |placed: &&Placed| {
        let says = DisposeSays::LetGo {
            what: disposing.what,
            by: disposing.by.clone(),
            why: disposing.why.clone(),
            stop: placed.cause.because.says.clone(),
        };
        (lot.id, reason(says))
    };
    let proven = match stands {
        true => lot.condition().let_stand(),
        false => lot.condition().let_go(),
    };
    let without_stop = || {
        let (by, why) = (disposing.by.clone(), disposing.why.clone());
        Reason {
            topic: Topic::Condition,
            because: Because::house(ConditionSays::LetGo { by, why }, DisposeSays::Rule),
        }
    };
    let changes = unproven || stands;
    let let_go = changes.then(|| (lot.id, without_stop()));
    let note = |draw: &Draw<'_>| change(draw, Account::Noted, Grams::ZERO, draw.pack.now);
    Ok(Plan {
        changes: draws.iter().map(note).collect(),
        reasons: ended.iter().map(told).chain(let_go).collect(),
        conditions: changes.then_some((lot.id, proven)).into_iter().collect(),
        ends: ended
            .iter()
            .map(|placed| (placed.id, disposing.what))
            .collect(),
        stops: untold_before(lot, &ended, moment)
            .into_iter()
            .map(|cause| (lot.id, None, cause.into()))
            .collect(),
        ..Plan::default()
    })
}

/// A pot of the time before its contents were asked: nobody has told them either, and letting it go does not.
fn untold_before(lot: &Lot, ended: &[&Placed], moment: &Moment) -> Option<Cause> {
    let is_told = lot.supplied.as_ref().is_some_and(|of| of.allergens_by_pack);
    let asked = |placed: &Placed| placed.cause.topic == Topic::Contents;
    let history = |placed: &&Placed| placed.cause.topic == Topic::History && placed.pack.is_none();
    let unknown = ended.iter().any(history) && !is_told && !lot.stops.iter().any(asked);
    unknown.then(|| contents_unknown(moment.at))
}

fn reason(says: DisposeSays) -> Reason {
    Reason {
        topic: Topic::Stop,
        because: Because::house(says, DisposeSays::Rule),
    }
}
