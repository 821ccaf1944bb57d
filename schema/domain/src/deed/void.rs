//! A mistake is voided by a new deed that says why; the voided one stays visible.

use super::says::VoidSays;
use crate::dates::Later;
use crate::grams::Grams;
use crate::lot::{DeedId, Event, PackId, PackNow, What, refold};
use crate::refusal::{Refusal, RefusalKind, Result};
use crate::says::Says;
use crate::words::{Account, DeedKind};

/// A deed that is to be voided, with all that hangs on it.
#[derive(Debug)]
pub struct Target {
    /// Its key.
    pub deed: DeedId,
    /// What it was.
    pub kind: DeedKind,
    /// Was it voided before?
    pub voided: bool,
    /// Deeds that changed the grams of the lots it made, newest first, voided ones left out.
    pub uses_of_outputs: Vec<DeedId>,
    /// The packs it drew on or moved.
    pub packs: Vec<Touched>,
    /// A later correction of the same receipt, if the deed is a correction or a receipt.
    pub later_corrections: Vec<DeedId>,
}

/// A pack that the deed touched, with its whole history: voided deeds left out, in order.
#[derive(Debug)]
pub struct Touched {
    /// The pack.
    pub pack: PackId,
    /// How it is written.
    pub shown: String,
    /// How it was made.
    pub born: PackNow,
    /// The grams in it when it was made.
    pub made: Grams,
    /// What can change its date after its birth.
    pub later: Later,
    /// What happened to it, and by which deed.
    pub history: Vec<(DeedId, Event)>,
}

/// The packs as they are once the deed is voided.
///
/// # Errors
/// A void, a deed voided before, or one that later deeds depend on: they are listed, newest first.
pub fn plan(target: &Target) -> Result<Vec<(PackId, PackNow)>> {
    if target.kind == DeedKind::Void {
        return Err(refused(RefusalKind::Clash, VoidSays::OfVoid));
    }
    if let Some(detail) = stays(target.kind) {
        return Err(refused(RefusalKind::Clash, detail));
    }
    if target.voided {
        return Err(refused(RefusalKind::Voided, VoidSays::VoidedBefore));
    }
    if !target.uses_of_outputs.is_empty() {
        return Err(in_the_way(
            VoidSays::UsedSince,
            target.uses_of_outputs.clone(),
        ));
    }
    if !target.later_corrections.is_empty() {
        return Err(in_the_way(
            VoidSays::CorrectedSince,
            target.later_corrections.clone(),
        ));
    }
    target
        .packs
        .iter()
        .map(|pack| Ok((pack.pack, without(pack, target.deed)?)))
        .collect()
}

/// What comes out of a printer is out, and what somebody saw there was seen. A hold is let go by a deed of
/// its own.
pub fn stays(kind: DeedKind) -> Option<VoidSays> {
    match kind {
        DeedKind::Print => Some(VoidSays::OfPrint),
        DeedKind::SettlePrint => Some(VoidSays::OfSettlement),
        DeedKind::CancelPrint => Some(VoidSays::OfCancellation),
        DeedKind::Thin => Some(VoidSays::OfThinning),
        DeedKind::Hold | DeedKind::HoldRelease => Some(VoidSays::OfHold),
        DeedKind::Incident
        | DeedKind::IncidentScope
        | DeedKind::IncidentNote
        | DeedKind::IncidentGuests
        | DeedKind::IncidentClose => Some(VoidSays::OfIncident),
        _ => None,
    }
}

fn without(pack: &Touched, deed: DeedId) -> Result<PackNow> {
    let first = pack
        .history
        .iter()
        .position(|(by, _)| *by == deed)
        .unwrap_or(pack.history.len());
    let grams_change = |what: What| !matches!(what, What::Moved { .. } | What::Noted);
    let undoes_grams = pack
        .history
        .iter()
        .any(|(by, event)| *by == deed && grams_change(event.what));
    // A weighing or a count found what it found: undoing what came before would falsify it.
    let settled = |event: &Event| {
        matches!(
            event.what,
            What::Took(Account::Lost | Account::Unexplained, _) | What::Noted
        ) && undoes_grams
    };
    let mut later: Vec<DeedId> = pack.history[first..]
        .iter()
        .filter(|(by, event)| *by != deed && settled(event))
        .map(|(by, _)| *by)
        .collect();
    if later.is_empty() {
        let kept: Vec<_> = pack
            .history
            .iter()
            .filter(|(by, _)| *by != deed)
            .copied()
            .collect();
        let events: Vec<Event> = kept.iter().map(|(_, event)| *event).collect();
        match refold(pack.born, pack.made, pack.later, &events) {
            Ok(now) => return Ok(now),
            Err(nth) => later = kept[nth..].iter().map(|(by, _)| *by).collect(),
        }
    }
    later.reverse();
    later.dedup();
    let pack = pack.shown.clone();
    Err(in_the_way(VoidSays::PackUsedSince { pack }, later))
}

fn in_the_way(detail: VoidSays, deeds: Vec<DeedId>) -> Refusal {
    let refusal = refused(RefusalKind::InTheWay, detail);
    refusal.because_of(deeds.into_iter().map(|deed| deed.0).collect())
}

/// A refusal of the whole: no field of the request is at fault.
fn refused(kind: RefusalKind, detail: impl Into<Says>) -> Refusal {
    Refusal {
        field: None,
        ..Refusal::new(kind, "", detail)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lot::{BirthDate, PlaceId};
    use crate::words::State;

    fn target(history: &[(i32, What)]) -> Target {
        let day: chrono::NaiveDate = "2026-06-14".parse().unwrap();
        let at = day.and_time(chrono::NaiveTime::MIN).and_utc();
        let born = PackNow::new(
            Grams::whole(500),
            PlaceId(1),
            State::Chilled,
            BirthDate::default(),
            day,
        );
        Target {
            deed: DeedId(1),
            kind: DeedKind::Sell,
            voided: false,
            uses_of_outputs: vec![],
            later_corrections: vec![],
            packs: vec![Touched {
                pack: PackId(1),
                shown: "P".into(),
                born,
                made: Grams::whole(500),
                later: Later::default(),
                history: history
                    .iter()
                    .map(|(deed, what)| {
                        (
                            DeedId(*deed),
                            Event {
                                what: *what,
                                day,
                                at,
                            },
                        )
                    })
                    .collect(),
            }],
        }
    }

    fn took(account: Account, grams: i64) -> What {
        What::Took(account, Grams::whole(grams))
    }

    #[test]
    fn gives_the_grams_back() {
        let now = plan(&target(&[
            (1, took(Account::Sold, 200)),
            (2, took(Account::Used, 100)),
        ]))
        .unwrap();
        assert_eq!(now[0].1.left, Grams::whole(400));
    }

    #[test]
    fn what_depends_on_it_stands_in_the_way_newest_first() {
        let refusal = plan(&target(&[
            (1, took(Account::Used, 100)),
            (2, took(Account::Lost, 40)),
            (3, took(Account::Unexplained, 10)),
        ]))
        .unwrap_err();
        assert_eq!(
            (refusal.kind, refusal.in_the_way),
            (RefusalKind::InTheWay, vec![3, 2])
        );
        let refusal = plan(&target(&[
            (9, took(Account::Sold, 500)),
            (1, What::TakenBack(Grams::whole(500))),
            (3, took(Account::Discarded, 500)),
        ]))
        .unwrap_err();
        assert_eq!(refusal.in_the_way, vec![3]);
    }
}
