//! A family: some lots, everything that went into them, and what the record holds about each, loaded at
//! once. What is shown of a lot (its composition, its cure, its piece, its cost, its origins) is a pure
//! function of it.

#[cfg(test)]
mod came_from_tests;
mod came_in;
mod claims;
mod composition;
mod cost;
mod curing;
mod curing_record;
mod descendants;
mod facts;
mod history;
mod lists;
mod lying;
mod origins;
mod parted;
mod piece;
mod pierced;
mod room;
mod stated;
mod stood_frozen;
mod thawing;
mod view;
mod water;
mod went;
mod why;
mod yields;

pub use came_in::{came_in, unknown_animal};
pub use claims::claims;
pub use composition::{changes, food};
pub use cost::{Cost, CostSays, cost};
pub use curing::{Cured, brought, cured, green_share, mixture_kept, mixture_read, strength};
pub use curing_record::{CuringRecord, curing_record};
pub use descendants::{Descendant, Descendants, children, descendants};
pub use facts::{AnimalView, Did, KnownOnce, KnownSource, LotReading, MadeBy, SourceAnimal};
pub use history::{Line, lines};
pub use lists::{Listed, Lists};
pub use lying::{LyingView, lying};
pub use origins::{AnimalShare, BoughtSource, Origins, origins};
pub use parted::Parted;
pub use piece::piece;
pub use pierced::{Together, filling, pierced, tenderised};
pub use room::{PieceView, room};
pub use stated::{Stated, stated};
pub use stood_frozen::{HeatOnRecord, carrying, heat_on_record, stood_frozen};
pub use thawing::{Frozen, frozen};
pub use view::{LotView, view};
pub use water::added_water;
pub(crate) use water::made_up;
pub use went::Went;
pub use why::{
    WhySays, all_contents_links, condition_links, contents_links, correction_links, date_links,
    nearest_links,
};
pub use yields::{NothingToCompare, cut_off, yields};

use crate::genealogy::{Ancestry, Onward};
use crate::grams::Grams;
use crate::lot::{DeedId, Lot, LotId};
use crate::measure::Temperature;
use crate::plan::Reason;
use crate::product::Product;
use crate::words::{Quantity, Species, State};
use chrono::NaiveDate;
use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::sync::Arc;

/// A lot with what the record holds about it.
#[derive(Debug, Clone)]
pub struct Relative {
    /// The lot; its packs are loaded for the lots that the family was loaded for.
    pub lot: Lot,
    /// A word about it: what is written on the tag of a hanging piece.
    pub note: Option<String>,
    /// How much was in it at first, and where that went.
    pub went: Went,
    /// The deed that made it.
    pub made_by: MadeBy,
    /// How its packs were kept when they were made.
    pub born_state: State,
    /// The date that its packs got when they were made.
    pub born_use_by: Option<NaiveDate>,
    /// Where it was received from, for what was received.
    pub source: Option<KnownSource>,
    /// Its readings, the oldest first.
    pub readings: Vec<LotReading>,
    /// Why it is as it is, in order.
    pub reasons: Vec<Reason>,
    /// What was done with it after it was made, the oldest first: loaded as its packs are, and where it is asked for
    /// also of what dried.
    pub history: Vec<Did>,
}

impl Relative {
    /// Its weight at birth.
    pub fn made(&self) -> Grams {
        self.went.made
    }

    /// The last reading of a quantity, in millionths of its unit.
    pub fn last_reading(&self, quantity: Quantity) -> Option<i64> {
        let found = self.readings.iter().rev();
        let mut found = found.filter(|reading| reading.quantity == quantity);
        found.next().map(|reading| reading.millionths)
    }

    /// What was done with it, deed by deed: packs that one deed drew on are listed together.
    pub fn steps(&self) -> Vec<Did> {
        let mut steps: Vec<Did> = Vec::new();
        for did in &self.history {
            let same = |last: &&mut Did| last.deed == did.deed && last.account == did.account;
            match steps.last_mut().filter(same) {
                Some(last) => last.grams += did.grams,
                None => steps.push(did.clone()),
            }
        }
        steps
    }

    /// Is any of it of an animal?
    pub fn has_species(&self) -> bool {
        !self.lot.species.is_empty()
    }
}

/// Some lots and everything that went into them.
#[derive(Debug, Default)]
pub struct Family {
    /// Every lot, by its key.
    pub lots: BTreeMap<LotId, Relative>,
    /// What went into what.
    pub ancestry: Ancestry,
    /// The water, ice and steam of each step.
    pub water: HashMap<DeedId, Grams>,
    /// What each step lost, of those that lost anything.
    pub lost: HashMap<DeedId, Grams>,
    /// The hottest core in the log of each step that has one; none where what its deed said was corrected.
    pub cores: HashMap<DeedId, Temperature>,
    /// The products of recipes as they stood when something was bought, by their version in the list.
    pub listed: HashMap<i32, Arc<Product>>,
    /// The lots that the family was loaded for.
    pub starts: Vec<LotId>,
    /// Everything that was made from them, where that was loaded too; the oldest first.
    pub descendants: Vec<LotId>,
    /// Which steps that was made in.
    pub onward: Vec<Onward>,
    /// What each step made, in the order in which it was asked: of the steps that somebody asked for.
    pub made: HashMap<DeedId, Vec<LotId>>,
}

impl Family {
    /// A lot of the family.
    pub fn get(&self, lot: LotId) -> Option<&Relative> {
        self.lots.get(&lot)
    }

    /// Is it a curing salt whose parts its bag tells? What was mixed here has those that went in.
    pub fn is_bought_cure(&self, of: &Relative) -> bool {
        of.lot.product.curing_salt().is_some() && self.ancestry.uses_of(of.lot.id).is_empty()
    }

    /// The lot and everything that went into it, each after all that it went into.
    pub fn youngest_first(&self, lot: LotId) -> Vec<&Relative> {
        let order = self.ancestry.descendants_first(lot);
        order.into_iter().filter_map(|lot| self.get(lot)).collect()
    }

    /// The animals in a lot: those of what came in. What the list says that it is of counts only where nothing tells.
    pub fn species_in(&self, lot: &Lot) -> BTreeSet<Species> {
        let line = self.youngest_first(lot.id).into_iter();
        let came_in = line.filter(|of| self.ancestry.uses_of(of.lot.id).is_empty());
        let known: BTreeSet<Species> = came_in
            .flat_map(|of| of.lot.species.iter().copied())
            .collect();
        match known.is_empty() {
            true => lot.species.clone(),
            false => known,
        }
    }
}
