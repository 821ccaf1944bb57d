//! A lot is a quantity of one product with one history; its packs are the physical containers.

pub mod brief;
pub mod numbers;
mod pack;

pub use brief::Brief;
pub use pack::{
    BirthDate, Event, Pack, PackNow, Past, What, as_it_happened, refold, told_in_order,
};

use crate::claims::WrongLabel;
use crate::code::LotCode;
use crate::condition::Condition;
use crate::dates::Later;
use crate::origin::Origin;
use crate::product::Product;
use crate::stop::Placed;
use crate::supplied::Supplied;
use crate::words::{Allergen, Packaging, ProvedBy, Species, StableBy, State, Topic};
use chrono::{DateTime, Utc};
use std::collections::BTreeSet;
use std::sync::Arc;

/// A lot's key in the record.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct LotId(pub i32);

/// A pack's key in the record.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PackId(pub i32);

/// A place's key in the record: the version of its entry in the kitchen's list.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PlaceId(pub i32);

/// A deed's key in the record.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct DeedId(pub i32);

/// A lot as the record holds it, with the packs that a deed may want.
#[derive(Debug, Clone)]
pub struct Lot {
    /// Its key.
    pub id: LotId,
    /// Its code.
    pub code: LotCode,
    /// What it is, as the list stood when it was made.
    pub product: Arc<Product>,
    /// When it was made: the end of its step.
    pub made_at: DateTime<Utc>,
    /// The deed that made it.
    pub made_by: DeedId,
    /// Where everything with a species in it comes from.
    pub origin: Origin,
    /// Allergens by union over everything that went in.
    pub allergens: BTreeSet<Allergen>,
    /// What may be in it unasked, by union over everything that went in: never instead of `allergens`.
    pub may_contain: BTreeSet<Allergen>,
    /// Of what it is made, where it was bought: as it was told when it came in. None for what was made here,
    /// and for lots of the time before that was kept.
    pub supplied: Option<Supplied>,
    /// Species by union over everything that went in.
    pub species: BTreeSet<Species>,
    /// What can still change its packs' dates.
    pub later: Later,
    /// How it is packed, where air was taken out.
    pub packaging: Option<Packaging>,
    /// What it is by what happened to it; none for a lot that was made before this was asked.
    pub condition: Option<Condition>,
    /// The stops that deeds placed on it, voided ones left out.
    pub stops: Vec<Placed>,
    /// The packs whose last label is no longer true.
    pub wrong_labels: Vec<WrongLabel>,
    /// Was it released, if its product must be?
    pub released: bool,
    /// Was its making voided?
    pub voided: bool,
    /// How many packs were made of it.
    pub pack_count: u32,
    /// The packs loaded: those on hand, and those asked for by number.
    pub packs: Vec<Pack>,
}

impl Lot {
    /// A pack by its number, if it was loaded.
    pub fn pack(&self, number: u32) -> Option<&Pack> {
        self.packs.iter().find(|pack| pack.number == number)
    }

    /// The packs that hold something and are where they should be.
    pub fn on_hand(&self) -> impl Iterator<Item = &Pack> {
        self.packs.iter().filter(|pack| pack.now.is_on_hand())
    }

    /// What it is, now: a release proves what its cure and drying were for. What was made before this
    /// was asked counts by its release, else by what is in it: nothing shows more.
    pub fn condition(&self) -> Condition {
        if self.released && !self.product.raw {
            return Condition::ready(ProvedBy::Released)
                .and_stable(self.condition.and_then(|of| of.stable));
        }
        self.condition.unwrap_or_else(|| self.judged_before())
    }

    fn judged_before(&self) -> Condition {
        match (self.product.raw, self.species.is_empty()) {
            (true, _) => Condition::RAW,
            (false, true) => Condition::ready(ProvedBy::Listed),
            (false, false) => Condition::TREATED,
        }
        .and_stable((!self.product.is_controlled()).then_some(StableBy::Nature))
    }

    /// May it be called ready to eat: does its entry claim it, and is it proven? What was made before
    /// proof was asked stays as it was judged; a piece that waits for its release is not called ready.
    pub fn is_called_ready(&self) -> bool {
        let proven = self.condition.is_none() || self.condition().is_ready();
        !self.product.raw && (proven || self.waits_for_release())
    }

    /// Does it need time and temperature control?
    pub fn is_controlled(&self) -> bool {
        self.condition().stable.is_none()
    }

    /// Has it to be kept cold, whatever its entry claims? A bought ingredient unless it keeps by what it is.
    pub fn needs_cold(&self) -> bool {
        self.is_controlled() && (self.product.is_controlled() || self.is_perishable())
    }

    /// Is it of a sort that has to be kept cold, unless something shows otherwise?
    pub fn is_perishable(&self) -> bool {
        self.product.is_perishable() || !self.species.is_empty()
    }

    /// Does it claim to keep without being kept cold, by its entry or by how this pack is kept, and nothing shows
    /// that it does? What is raw, or waits for its release, claims nothing yet.
    pub fn lacks_proof_of_room(&self, pack: Option<&Pack>) -> bool {
        let off_list = self.product.keeping.controlled == Some(false) && !self.species.is_empty();
        let stands = pack.is_some_and(|pack| pack.now.state == State::Ambient);
        let claims = self.product.claims_room() || off_list || stands && self.is_perishable();
        let is_ready = !self.product.raw && !self.waits_for_release();
        self.condition.is_some() && is_ready && claims && self.is_controlled()
    }

    /// Is it known which allergens are in it? Not of what nobody knows the history of, nor of what was made
    /// of that, until a person has said what is in it: the union of its parts is then the least. One pack that was away
    /// says nothing of the others.
    pub fn knows_allergens(&self) -> bool {
        let known = |pack: &Pack| self.knows_allergens_of(Some(pack.number));
        let is_here = self.on_hand().next().is_some();
        let mut packs = self.packs.iter();
        let asked = |pack: &Pack| !is_here || pack.now.is_on_hand();
        self.knows_allergens_of(None)
            && (self.packs.is_empty() || packs.any(|pack| asked(pack) && known(pack)))
    }

    /// The same of one of its packs; without one, of what holds for all of them.
    pub fn knows_allergens_of(&self, number: Option<u32>) -> bool {
        let pack = { number }
            .and_then(|number| self.pack(number))
            .map(|pack| pack.id);
        let unknown = |placed: &&Placed| {
            matches!(placed.cause.topic, Topic::History | Topic::Contents) && placed.ended.is_none()
        };
        let mut unknown = self.stops.iter().filter(unknown);
        !unknown.any(|placed| placed.pack.is_none() || placed.pack == pack)
    }

    /// The allergens that may be in it beyond those that are.
    pub fn perhaps(&self) -> BTreeSet<Allergen> {
        &self.may_contain - &self.allergens
    }

    /// Is it a cured piece that nobody has released yet?
    pub fn waits_for_release(&self) -> bool {
        self.product.is_hung() && !self.released
    }

    /// How a pack of this lot is written: `BRC-26159-A03-0/2`, or the code alone where it has one pack.
    pub fn shown(&self, number: u32) -> String {
        match self.pack_count {
            1 => self.code.shown(),
            _ => format!("{}/{number}", self.code.shown()),
        }
    }
}
