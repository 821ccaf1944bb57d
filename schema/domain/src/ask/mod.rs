//! A guest asks: is this in it? Worked out of what truly went in, to the last source. There are three answers,
//! and what is not known is never said to be without.
//!
//! Reading order: here (the question, and how the answers of parts become that of a whole), `bought` (what is
//! known of something that came in), `topic` (what a guest can ask about), `rules` (the words that tell it).

mod bought;
mod rules;
mod says;
#[cfg(test)]
mod tests;
mod topic;

pub use rules::{AskRules, NamedBy};
pub use says::{AskSays, TopicSays};
pub use topic::Topic;

use crate::family::{Family, Relative};
use crate::lot::{Lot, LotId};
use crate::says::{Arg, Says};
use crate::statement::SpeciesRules;
use crate::words::Species;
use std::collections::{BTreeSet, HashMap};

/// Is it in there?
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Told {
    /// No, by the record.
    No,
    /// The record does not tell.
    NotKnown,
    /// Yes.
    Yes,
}

impl Told {
    /// As a program reads it.
    pub fn as_str(self) -> &'static str {
        match self {
            Told::No => "no",
            Told::NotKnown => "not-known",
            Told::Yes => "yes",
        }
    }
}

/// Why the answer is what it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Why {
    /// All that is said of it says no.
    Nothing,
    /// It is in there.
    In,
    /// The maker says that it may be, unasked.
    MayBe,
    /// Nobody has entered what is in it.
    NotEntered,
    /// Its list names something that may be of anything.
    Vague,
    /// Nobody knows what it is.
    Unknown,
    /// Nothing on record shows that it is ready.
    NotProven,
}

/// What is known of one lot, and by which lot.
#[derive(Debug, Clone, Copy)]
struct Found {
    told: Told,
    why: Why,
    at: LotId,
}

/// The answer for one lot.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answered {
    /// Is any of it in there?
    pub told: Told,
    /// By what that is known, or not known; nothing where it is without.
    pub because: Vec<Says>,
}

impl Answered {
    /// Nothing was asked, and so nothing is known.
    pub fn nobody_asked() -> Answered {
        Answered {
            told: Told::NotKnown,
            because: Vec::new(),
        }
    }
}

/// Somebody who looks into the lots of one family, and does not look twice.
pub struct Asker<'a> {
    family: &'a Family,
    rules: &'a AskRules,
    species: &'a SpeciesRules,
    known: HashMap<(Topic, LotId), Found>,
}

impl<'a> Asker<'a> {
    /// Of a family that is loaded with all its ancestors.
    pub fn new(family: &'a Family, rules: &'a AskRules, species: &'a SpeciesRules) -> Asker<'a> {
        Asker {
            family,
            rules,
            species,
            known: HashMap::new(),
        }
    }

    /// Is any of these in the lot? It is without only where each of them is known not to be in it.
    pub fn answer(&mut self, lot: LotId, topics: &BTreeSet<Topic>) -> Answered {
        let found: Vec<(Topic, Found)> = topics
            .iter()
            .map(|topic| (*topic, self.look(lot, *topic)))
            .collect();
        let told = found.iter().map(|(_, found)| found.told).max();
        let told = told.unwrap_or(Told::NotKnown);
        let because = found
            .iter()
            .filter(|(_, found)| found.told == told && told != Told::No);
        Answered {
            told,
            because: because
                .map(|(topic, found)| self.says(lot, *topic, *found))
                .collect(),
        }
    }

    /// The animals in a lot, and whether those are all.
    pub fn animals(&mut self, lot: LotId) -> (BTreeSet<Species>, bool) {
        let (mut has, mut are_all) = (BTreeSet::new(), true);
        for species in Species::ALL {
            match self.look(lot, Topic::Species(*species)).told {
                Told::Yes => drop(has.insert(*species)),
                Told::NotKnown => are_all = false,
                Told::No => {}
            }
        }
        (has, are_all)
    }

    /// Looks into a lot: first into everything that it was made of.
    fn look(&mut self, lot: LotId, topic: Topic) -> Found {
        if let Some(found) = self.known.get(&(topic, lot)) {
            return *found;
        }
        let order = self.family.ancestry.descendants_first(lot);
        for of in order.into_iter().rev() {
            if !self.known.contains_key(&(topic, of)) {
                let found = self.of_lot(of, topic);
                self.known.insert((topic, of), found);
            }
        }
        self.known[&(topic, lot)]
    }

    fn of_lot(&self, id: LotId, topic: Topic) -> Found {
        let found = |told, why| Found { told, why, at: id };
        let Some(of) = self.family.get(id) else {
            return found(Told::NotKnown, Why::Unknown);
        };
        if topic == Topic::Raw {
            return match (of.lot.product.raw, is_ready(&of.lot)) {
                (true, _) => found(Told::Yes, Why::In),
                (false, true) => found(Told::No, Why::Nothing),
                (false, false) => found(Told::NotKnown, Why::NotProven),
            };
        }
        let parts = self.of_parts(of, topic);
        if let Some(part) = parts.filter(|part| part.told == Told::Yes) {
            return part;
        }
        if topic.is_of_lot(&of.lot) {
            return found(Told::Yes, Why::In);
        }
        if topic.may_be_in(&of.lot) {
            return found(Told::NotKnown, Why::MayBe);
        }
        if !of.lot.knows_allergens() {
            return found(Told::NotKnown, Why::Unknown);
        }
        parts.unwrap_or_else(|| {
            let (told, why) = self.came_in(of, topic);
            found(told, why)
        })
    }

    /// The worst of what it was made of; nothing for what was not made here.
    fn of_parts(&self, of: &Relative, topic: Topic) -> Option<Found> {
        let used = self.family.ancestry.uses_of(of.lot.id).iter();
        let parts = used.map(|used| {
            let known = self.known.get(&(topic, used.lot)).copied();
            known.unwrap_or(Found {
                told: Told::NotKnown,
                why: Why::Unknown,
                at: of.lot.id,
            })
        });
        // Of several that say the same the first stands for them all.
        parts.reduce(|one, other| if other.told > one.told { other } else { one })
    }

    /// An answer's reason, as a person behind the counter says it.
    fn says(&self, lot: LotId, topic: Topic, found: Found) -> Says {
        let what = topic.says(self.species);
        let named = |lot: LotId| self.family.get(lot).map(|of| of.lot.product.named());
        let by = named(found.at).unwrap_or_default();
        let through = self.through(lot, topic, found.at).and_then(named);
        // Of an animal nobody asks for the carcass: its own meat is its own, and in others by the part that has it.
        let (is_own, by, through) = match topic {
            Topic::Species(species) => {
                let of = self.family.get(lot).and_then(|of| of.lot.product.species);
                (of == Some(species), through.unwrap_or(by), None)
            }
            _ => (false, by, through),
        };
        match (found.why, through) {
            (Why::In, _) if found.at == lot || is_own => AskSays::Is { what: what.into() }.into(),
            (Why::In, Some(through)) => AskSays::HasIn {
                what: Arg::from(what),
                by,
                through,
            }
            .into(),
            (Why::In | Why::Nothing, _) => AskSays::Has {
                what: what.into(),
                by,
            }
            .into(),
            (Why::MayBe, _) => AskSays::MayContain {
                what: what.into(),
                by,
            }
            .into(),
            (Why::NotEntered, _) => AskSays::NotEntered {
                what: what.into(),
                by,
            }
            .into(),
            (Why::Vague, _) => AskSays::Vague {
                what: what.into(),
                by,
            }
            .into(),
            (Why::Unknown, _) => AskSays::Unknown {
                what: what.into(),
                by,
            }
            .into(),
            (Why::NotProven, _) => AskSays::NotProven { what: what.into() }.into(),
        }
    }

    /// The part through which the lot has it, where that is not the source itself.
    fn through(&self, lot: LotId, topic: Topic, at: LotId) -> Option<LotId> {
        let mut used = self.family.ancestry.uses_of(lot).iter();
        let part = used.find(|used| {
            let known = self.known.get(&(topic, used.lot));
            known.is_some_and(|known| known.at == at)
        })?;
        (part.lot != at).then_some(part.lot)
    }
}

fn is_ready(lot: &Lot) -> bool {
    lot.is_called_ready() && !lot.waits_for_release()
}
