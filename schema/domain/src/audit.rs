//! The checker, separate from the maker: what must be true of every deed, lot and pack on record.
//!
//! Each function takes one thing as the record holds it and says what is wrong with it; the caller
//! walks the whole record. Nothing here trusts what a plan computed.

use crate::code::LotCode;
use crate::condition::Condition;
use crate::dates::Later;
use crate::grams::Grams;
use crate::lot::{Event, LotId, PackNow, What, refold};
use crate::words::{Account, ProvedBy};
use std::collections::{BTreeMap, HashMap};

/// One thing that is not as it must be.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AuditFinding {
    /// What it is about: a lot's code, a deed's id.
    pub about: String,
    /// What is wrong.
    pub says: String,
}

impl AuditFinding {
    /// A finding about something.
    pub fn new(about: impl Into<String>, says: impl Into<String>) -> AuditFinding {
        AuditFinding {
            about: about.into(),
            says: says.into(),
        }
    }
}

/// In + added = out + loss, exactly, and no loss below zero.
pub fn step_balances(
    about: &str,
    inputs: Grams,
    added: Grams,
    outputs: Grams,
    loss: Grams,
) -> Option<AuditFinding> {
    if inputs + added != outputs + loss {
        let says = format!("in {inputs} + added {added} is not out {outputs} + loss {loss}");
        return Some(AuditFinding::new(about, says));
    }
    (loss < Grams::ZERO).then(|| AuditFinding::new(about, format!("the loss is {loss}")))
}

/// A code reads back as itself.
pub fn code_is_well_formed(code: &str) -> Option<AuditFinding> {
    match LotCode::read(code) {
        Ok(read) if read.as_str() == code => None,
        _ => Some(AuditFinding::new(code, "the code is not well formed")),
    }
}

/// A pack as the record keeps it.
#[derive(Debug)]
pub struct StoredPack {
    /// How it is written.
    pub shown: String,
    /// How it was made.
    pub born: PackNow,
    /// The grams in it when it was made.
    pub made: Grams,
    /// What can change its date after its birth.
    pub later: Later,
    /// What happened to it, voided deeds left out, in order.
    pub events: Vec<Event>,
    /// How the record says it is now.
    pub now: PackNow,
}

/// Folding a pack's events again gives what is kept, and never less than nothing on the way.
pub fn pack_agrees(pack: &StoredPack) -> Option<AuditFinding> {
    match refold(pack.born, pack.made, pack.later, &pack.events) {
        Err(nth) => Some(AuditFinding::new(
            &pack.shown,
            format!("event {nth} takes more than was left"),
        )),
        Ok(now) if now != pack.now => Some(AuditFinding::new(
            &pack.shown,
            format!("is kept as {:?}, its events make {now:?}", pack.now),
        )),
        Ok(_) => None,
    }
}

/// A lot's totals by account.
pub type Totals = BTreeMap<Account, Grams>;

/// Sums events by account.
pub fn totals(events: impl Iterator<Item = Event>) -> Totals {
    let mut totals = Totals::new();
    for event in events {
        let (account, grams) = match event.what {
            What::Took(account, grams) => (account, grams),
            What::TakenBack(grams) => (Account::TakenBack, grams),
            What::Moved { .. } | What::Noted => continue,
        };
        *totals.entry(account).or_default() += grams;
    }
    totals
}

/// Made + taken back = everything else, by account and on hand.
pub fn lot_reconciles(
    code: &str,
    made: Grams,
    on_hand: Grams,
    stored: &Totals,
    events: &Totals,
) -> Option<AuditFinding> {
    let told = |totals: &Totals| -> Totals {
        totals
            .iter()
            .filter(|(_, grams)| **grams != Grams::ZERO)
            .map(|(a, g)| (*a, *g))
            .collect()
    };
    if told(stored) != told(events) {
        return Some(AuditFinding::new(
            code,
            format!(
                "keeps {:?}, its events sum to {:?}",
                told(stored),
                told(events)
            ),
        ));
    }
    let back = stored.get(&Account::TakenBack).copied().unwrap_or_default();
    let out: Grams = stored
        .iter()
        .filter(|(account, _)| **account != Account::TakenBack)
        .map(|(_, grams)| *grams)
        .sum();
    (made + back != out + on_hand).then(|| {
        AuditFinding::new(
            code,
            format!("made {made} + taken back {back} is not {out} gone + {on_hand} on hand"),
        )
    })
}

/// The lots that stand on a cycle, if any: every lot must come after all that went into it.
pub fn cycle(made_of: &HashMap<LotId, Vec<LotId>>) -> Vec<LotId> {
    let mut waiting: HashMap<LotId, usize> = made_of
        .iter()
        .map(|(lot, parts)| (*lot, parts.len()))
        .collect();
    let mut children: HashMap<LotId, Vec<LotId>> = HashMap::new();
    for (lot, parts) in made_of {
        for part in parts {
            waiting.entry(*part).or_insert(0);
            children.entry(*part).or_default().push(*lot);
        }
    }
    let mut ready: Vec<LotId> = waiting
        .iter()
        .filter(|(_, left)| **left == 0)
        .map(|(lot, _)| *lot)
        .collect();
    while let Some(lot) = ready.pop() {
        waiting.remove(&lot);
        for child in children.get(&lot).map_or(&[][..], Vec::as_slice) {
            let left = waiting
                .get_mut(child)
                .expect("each child waits for this one");
            *left -= 1;
            if *left == 0 {
                ready.push(*child);
            }
        }
    }
    let mut on_cycle: Vec<LotId> = waiting.into_keys().collect();
    on_cycle.sort();
    on_cycle
}

/// A lot that is called ready has its proof: one of its own, with the reason kept beside it, or parts
/// that were all ready. `parts` says of each part whether it was.
pub fn condition_follows(
    lot: &str,
    born: Condition,
    parts: &[bool],
    has_reason: bool,
) -> Option<AuditFinding> {
    let says = match born.by {
        _ if !born.is_ready() => return None,
        ProvedBy::Parts if parts.is_empty() => "is ready by its parts and has none",
        ProvedBy::Parts if parts.contains(&false) => {
            "is ready by its parts, and one of them never was"
        }
        ProvedBy::Nothing => "is ready without a proof",
        _ if !has_reason => "is ready, and no reason was kept",
        _ => return None,
    };
    Some(AuditFinding::new(lot, says))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::ConditionKind;

    #[test]
    fn a_milligram_missing_is_found() {
        let grams = Grams::from_milligrams;
        assert_eq!(
            step_balances("s", grams(45_000), grams(5), grams(44_000), grams(1_005)),
            None
        );
        assert!(step_balances("s", grams(45_000), grams(5), grams(44_000), grams(1_004)).is_some());
        assert!(step_balances("s", grams(1), grams(0), grams(2), grams(-1)).is_some());
    }

    #[test]
    fn a_lot_that_does_not_sum_is_found() {
        let totals = Totals::from([
            (Account::Sold, Grams::whole(2)),
            (Account::TakenBack, Grams::whole(1)),
        ]);
        let check = |on_hand| {
            lot_reconciles(
                "L",
                Grams::whole(5),
                Grams::whole(on_hand),
                &totals,
                &totals,
            )
        };
        assert_eq!(check(4), None);
        assert!(check(3).is_some());
    }

    #[test]
    fn cycles_are_found() {
        let family = |pairs: &[(i32, &[i32])]| -> HashMap<LotId, Vec<LotId>> {
            pairs
                .iter()
                .map(|(lot, parts)| (LotId(*lot), parts.iter().map(|part| LotId(*part)).collect()))
                .collect()
        };
        assert!(cycle(&family(&[(3, &[1, 2]), (4, &[3, 3, 1])])).is_empty());
        assert_eq!(
            cycle(&family(&[(3, &[1, 4]), (4, &[3])])),
            vec![LotId(3), LotId(4)]
        );
    }

    #[test]
    fn a_lot_that_is_ready_without_a_proof_is_found() {
        let wrong = |by, parts: &[bool], has_reason| {
            condition_follows("L", Condition::ready(by), parts, has_reason).is_some()
        };
        assert!(!wrong(ProvedBy::Parts, &[true, true], true));
        assert!(wrong(ProvedBy::Parts, &[true, false], true));
        assert!(wrong(ProvedBy::Parts, &[], true));
        assert!(!wrong(ProvedBy::Heat, &[false], true));
        assert!(wrong(ProvedBy::Heat, &[false], false));
        assert!(wrong(ProvedBy::Nothing, &[], true));
        let raw = condition_follows("L", Condition::RAW, &[], false);
        assert_eq!((raw, Condition::RAW.is), (None, ConditionKind::Raw));
    }
}
