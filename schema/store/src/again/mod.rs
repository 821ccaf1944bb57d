//! Judging again: everything that lots were made by, loaded for all of them at once, and what comes of it.

mod load;
mod told;
mod write;

pub use load::{judged_by, load, roots};
pub use told::{Left, is_overtaken, left, told_by};
pub use write::{JudgedLot, StopOf, place, write};

use crate::conditions::ConditionRow;
use crate::corrections::CorrectionRow;
use crate::deeds::DeedRow;
use crate::error::Result;
use crate::lots::LotRow;
use crate::measurements::LotReadingRow;
use crate::packs::PackRow;
use crate::record::PackEventRow;
use crate::sources::SourceRow;
use crate::stops::StopRow;
use crate::voids::LiveEvent;
use chrono::NaiveDateTime;
use domain::condition::Condition;
use domain::deed::again::BornAs;
use domain::grams::Grams;
use domain::product::Product;
use domain::words::Disposal;
use std::collections::{BTreeMap, BTreeSet, HashMap, HashSet};

/// A place in the order of recording.
pub type Recorded = (NaiveDateTime, i32);

/// A place in the order of what happened: its moment; of one moment, the order of recording.
pub type Happened = (NaiveDateTime, Recorded);

/// Some lots with all that was made of them, and everything that they were made by. Voided deeds are left out.
#[derive(Debug, Default)]
pub struct Everything {
    /// The lots, and all that was made of them.
    pub family: BTreeSet<i32>,
    /// These, and what else went into them.
    pub lots: HashMap<i32, LotRow>,
    /// The deeds that made them, read them, noted something with them or let them go, in the order in which
    /// they happened.
    pub deeds: BTreeMap<Happened, DeedRow>,
    /// When each of these and of the others that said something of a lot happened, and where it stands in the
    /// order of recording.
    pub happened: HashMap<i32, Happened>,
    /// What happened to the packs of each lot, in order.
    pub events: HashMap<i32, Vec<LiveEvent>>,
    /// What each deed drew on, in order.
    pub drawn: HashMap<i32, Vec<PackEventRow>>,
    /// The packs.
    pub packs: HashMap<i32, PackRow>,
    /// What each lot was read, the oldest first.
    pub readings: HashMap<i32, Vec<LotReadingRow>>,
    /// What each lot is since some deed.
    pub conditions: HashMap<i32, Vec<ConditionRow>>,
    /// What each lot was born as, where that was judged again before: the last word.
    pub judged: HashMap<i32, Option<Condition>>,
    /// The stops on each lot.
    pub stops: HashMap<i32, Vec<StopRow>>,
    /// What ended each stop: by which deed, when, how.
    pub ends: HashMap<i32, Vec<(i32, NaiveDateTime, Disposal)>>,
    /// The corrections and voids among those that placed or ended stops, or changed conditions: they judged again.
    pub judging: HashSet<i32>,
    /// Which deed judged which lot again.
    pub judgements: HashSet<(i32, i32)>,
    /// What is known to be wrong of each deed, in order.
    pub corrections: HashMap<i32, Vec<CorrectionRow>>,
    /// Lots that a label was printed of.
    pub printed: HashSet<i32>,
    /// What is known now of the source of each lot that was received.
    pub sources: HashMap<i32, SourceRow>,
    /// The milligrams of water, ice and steam, and of differences of scales, that steps added.
    pub added: HashMap<i32, Vec<(String, i64)>>,
}

impl Everything {
    /// Did a deed say something of a lot by judging it again, and not because it touched the lot itself?
    pub fn is_judgement(&self, deed: i32, lot: i32) -> bool {
        self.judging.contains(&deed) || self.judgements.contains(&(deed, lot))
    }
}

impl LotRow {
    /// What it was born as, as far as the record knows now; `judged` is its condition, where that was
    /// judged again.
    ///
    /// # Errors
    /// The record is damaged.
    pub fn born_as(&self, product: &Product, judged: Option<Condition>) -> Result<BornAs> {
        Ok(BornAs {
            condition: judged.or(self.condition()?),
            born: self.born(Grams::from_milligrams(self.made_mg))?,
            later: self.later(product)?,
            allergens: self.allergens()?,
            may_contain: self.may_contain()?,
            supplied: self.supplied()?,
            species: self.species()?,
            origin: self.origin()?,
        })
    }
}
