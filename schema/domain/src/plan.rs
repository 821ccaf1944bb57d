//! What a deed adds to the record. A plan leaves no choice to the one who writes it down.

use crate::code::LotCode;
use crate::condition::Condition;
use crate::dates::{Because, Later};
use crate::grams::Grams;
use crate::lot::{LotId, PackId, PackNow, PlaceId};
use crate::origin::Origin;
use crate::says::Says;
use crate::stop::{NewStop, StopId};
use crate::supplied::Supplied;
use crate::words::{Account, Addition, Allergen, Disposal, Packaging, Species, State, Topic};
use std::collections::BTreeSet;

/// Everything that one deed adds.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Plan {
    /// Lots made.
    pub births: Vec<Birth>,
    /// What happened to packs that were there before.
    pub changes: Vec<PackChange>,
    /// How the weights close, if the deed is a step.
    pub balance: Option<Balance>,
    /// Why, about lots that were there before.
    pub reasons: Vec<(LotId, Reason)>,
    /// Stops on lots that were there before, or on one of their packs.
    pub stops: Vec<(LotId, Option<PackId>, NewStop)>,
    /// What lots that were there before are from now on.
    pub conditions: Vec<(LotId, Condition)>,
    /// Stops that end, and how.
    pub ends: Vec<(StopId, Disposal)>,
    /// For the one who did it: nothing is wrong, but look.
    pub warnings: Vec<Says>,
}

/// One link of an answer to "why?", kept with the deed: a rule that changes later does not change it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reason {
    /// What it is about.
    pub topic: Topic,
    /// What was decided, by which rule.
    pub because: Because,
}

impl Reason {
    /// A chain of links about one topic.
    pub fn all(topic: Topic, chain: impl IntoIterator<Item = Because>) -> Vec<Reason> {
        chain
            .into_iter()
            .map(|because| Reason { topic, because })
            .collect()
    }
}

/// How the weights of a step close.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Balance {
    /// What was added without a lot of its own.
    pub added: Vec<(Addition, Grams)>,
    /// In + added - out.
    pub loss: Grams,
    /// The inputs that come from any source animal: what shares are normalised by.
    pub with_animal: Grams,
}

/// A lot to be made.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Birth {
    /// Its code.
    pub code: LotCode,
    /// Its product's place in the lists as they stand now.
    pub product: i32,
    /// Its grams; the packs sum to it.
    pub grams: Grams,
    /// Where everything with a species in it comes from.
    pub origin: Origin,
    /// Allergens by union.
    pub allergens: BTreeSet<Allergen>,
    /// What may be in it unasked, by union.
    pub may_contain: BTreeSet<Allergen>,
    /// Of what it is made, where it was bought: as it was told when it came in.
    pub supplied: Option<Supplied>,
    /// Species by union.
    pub species: BTreeSet<Species>,
    /// Its packs at birth, numbered from 1. All are alike but for their grams.
    pub packs: Vec<Grams>,
    /// How each pack is at birth; `left` is each pack's own grams.
    pub born: PackNow,
    /// What can still change its packs' dates.
    pub later: Later,
    /// What it is by what happened to it.
    pub condition: Condition,
    /// How it is packed, where air was taken out.
    pub packaging: Option<Packaging>,
    /// Why it has the date, the cure and the warnings that it has.
    pub reasons: Vec<Reason>,
    /// What stands in its way from the start.
    pub stops: Vec<NewStop>,
    /// A word about it.
    pub note: Option<String>,
}

/// Something that happened to a pack that was there before.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PackChange {
    /// The pack's lot.
    pub lot: LotId,
    /// The pack.
    pub pack: PackId,
    /// Which account the grams went to or came from.
    pub account: Account,
    /// How many grams.
    pub grams: Grams,
    /// Where it went, if it moved.
    pub place: Option<PlaceId>,
    /// How it is kept now, if that changed.
    pub state: Option<State>,
    /// The pack afterwards.
    pub now: PackNow,
    /// Is this the sale of a whole pack? Then it counts as one sold.
    pub whole_pack: bool,
}
