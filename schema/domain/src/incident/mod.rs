//! An incident: a recall or a drill of one. What it holds follows from its scope; when each thing was done, from
//! the call on.

mod reckon;

pub use reckon::{CountSums, LotReckoned, PackEvent, PackReckoned, PackTold, Reckoned, reckon};

use crate::dates::Because;
use crate::grams::Grams;
use crate::lot::{LotId, PackId};
use crate::messages;
use crate::scope::{InScope, Scope};
use crate::stop::{Cause, IncidentId, NewStop, StopSays};
use crate::words::{StopKind, Topic, words};
use chrono::{DateTime, NaiveDateTime, Utc};
use std::collections::BTreeSet;

messages! {
    /// What is said of incidents.
    IncidentSays in "incident" {
        Unknown "unknown" { id: String },
        Why "why",
        ToldLater "told-later" { told: NaiveDateTime },
        Closed "closed" { number: String },
        NoText "no-text",
        NoHazard "no-hazard" { said: String, known: String },
        HoldsNothing "holds-nothing" { number: String },
        Caught "caught" { number: String, lots: String },
        LeftScope "left-scope" { number: String, lots: String },
        NotBegun "not-begun" { number: String },
        NoMoment "no-moment" { text: String },
        StillHeld "still-held" { number: String, packs: usize },
        NotCounted "not-counted" { number: String, packs: usize },
        Missing "missing" { number: String, weight: Grams },
        DisposedUncounted "disposed-uncounted" { lot: String },
        DisposedOther "disposed-other" { lot: String, counted: Grams, disposed: Grams },
    }
}

words! {
    /// What a recall is about.
    Hazard {
        Residue = "residue", Pathogen = "pathogen", Allergen = "allergen", ForeignBody = "foreign-body",
        Temperature = "temperature", Label = "label", Other = "other",
    }
}

words! {
    /// What is noted of an incident: who was told, what somebody answered, anything else; and what was not known yet when
    /// it was begun: who called, why, and what it is about.
    IncidentNote {
        Told = "told", Answered = "answered", Note = "note", Caller = "caller", Reason = "reason", Hazard = "hazard",
    }
}

words! {
    /// What is done in an incident, as its clock tells it.
    Milestone {
        Called = "called", Scoped = "scoped", Held = "held", Located = "located", Counted = "counted",
        Told = "told", Disposed = "disposed", Closed = "closed",
    }
}

words! {
    /// How a pack of an incident stands: nobody looked for it yet, it was seen but not counted, it was found or is
    /// missing, or it has left since.
    CountState {
        Waiting = "waiting", Seen = "seen", Found = "found", Missing = "missing", Gone = "gone",
    }
}

/// What a hold of an incident is on: whole lots, or packs of them.
pub type Onto = (LotId, Option<PackId>);

/// What an incident holds of a lot: all of it, where it is affected since its birth, also what comes back or is
/// found later; else the affected packs on hand.
fn held_of(lot: &InScope) -> Vec<Onto> {
    match lot.whole {
        true => vec![(lot.id, None)],
        false => {
            let packs = lot.packs.iter();
            packs.map(|pack| (lot.id, Some(pack.id))).collect()
        }
    }
}

/// What an incident is to hold that it does not hold yet, and what it holds that is no longer in scope.
pub fn differ(scope: &Scope, held: &BTreeSet<Onto>) -> (Vec<Onto>, Vec<Onto>) {
    let meant: BTreeSet<Onto> = scope.lots.iter().flat_map(held_of).collect();
    let is_whole = |lot: LotId, of: &BTreeSet<Onto>| of.contains(&(lot, None));
    let new = meant.difference(held).copied();
    let new = new.filter(|(lot, _)| !is_whole(*lot, held));
    let left = held.difference(&meant).copied();
    let left = left.filter(|(lot, _)| !is_whole(*lot, &meant));
    (new.collect(), left.collect())
}

/// A hold of an incident, from a moment on.
pub fn hold(incident: IncidentId, number: &str, why: &str, since: DateTime<Utc>) -> NewStop {
    let number = number.to_owned();
    let says = match why {
        "" => StopSays::HeldUnder { number },
        why => StopSays::HeldFor {
            number,
            why: why.to_owned(),
        },
    };
    NewStop {
        cause: Cause {
            kind: StopKind::Held,
            topic: Topic::Stop,
            because: Because::house(says, StopSays::HeldRule),
            since,
        },
        root: None,
        incident: Some(incident),
    }
}

/// How much of a scope is on hand: packs, and their grams.
pub fn on_hand(scope: &Scope) -> (usize, Grams) {
    let packs = scope.lots.iter().map(|lot| lot.packs.len()).sum();
    (packs, scope.totals.on_hand)
}

/// The number of an incident: the kitchen, the year of the call, and which of that year it is.
pub fn number(house: &str, year: i32, nth: u32) -> String {
    format!("{house}-{year}-{nth}")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lot::PlaceId;
    use crate::scope::{ScopePack, When};

    fn lot(id: i32, whole: bool, packs: &[i32]) -> InScope {
        let pack = |key: &i32| ScopePack {
            id: PackId(*key),
            number: 1,
            left: Grams::whole(1),
            place: PlaceId(1),
            since: When::BIRTH,
        };
        InScope {
            id: LotId(id),
            code: crate::code::LotCode::read("BRC-26159-A16-R").unwrap(),
            product: "x".into(),
            note: None,
            whole,
            affected: packs.len(),
            reached: Vec::new(),
            packs: packs.iter().map(pack).collect(),
            sold: Vec::new(),
            went: crate::family::Went::default(),
            because: Vec::new(),
        }
    }

    #[test]
    fn whole_lots_are_held_whole_and_of_others_the_packs_on_hand() {
        let scope = Scope {
            lots: vec![lot(1, true, &[]), lot(2, false, &[21, 22])],
            ..Scope::default()
        };
        let of = |lot, pack: Option<i32>| (LotId(lot), pack.map(PackId));
        let (new, left) = differ(&scope, &BTreeSet::new());
        assert_eq!(new, [of(1, None), of(2, Some(21)), of(2, Some(22))]);
        assert!(left.is_empty());
        // What is held whole holds its packs; what left the scope is listed, and stays held.
        let held = [of(2, None), of(3, None), of(1, Some(11))].into();
        let (new, left) = differ(&scope, &held);
        assert_eq!(
            (new, left),
            (vec![of(1, None)], vec![of(2, None), of(3, None)])
        );
    }

    #[test]
    fn numbers_run_by_year() {
        assert_eq!(number("CHK", 2026, 1), "CHK-2026-1");
    }
}
