//! What of a record a scope is asked of: voided deeds never were, so they are left out.

use super::When;
use super::window::Window;
use crate::code::LotCode;
use crate::grams::Grams;
use crate::lot::{DeedId, LotId, PackId, PlaceId};
use crate::words::{Account, DeedKind, StepKind};
use chrono::{DateTime, Utc};
use std::collections::{BTreeMap, HashMap};

/// A deed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Doing {
    /// Its key.
    pub id: DeedId,
    /// What it was.
    pub kind: DeedKind,
    /// When it ended.
    pub at: DateTime<Utc>,
    /// When it began, if that was said.
    pub began: Option<DateTime<Utc>>,
    /// Where. Of a move, where to stands with the pack.
    pub place: Option<PlaceId>,
    /// Who.
    pub person: String,
}

impl Doing {
    /// Its place in the order.
    pub fn when(&self) -> When {
        When {
            at: self.at,
            deed: self.id,
        }
    }

    /// When it began.
    pub fn began(&self) -> DateTime<Utc> {
        self.began.unwrap_or(self.at)
    }

    /// Is it a step, with or without outputs?
    pub fn is_step(&self) -> bool {
        StepKind::parse(self.kind.as_str()).is_some()
    }

    /// Does what it makes come to be at its place? A pot that is taken in where it is found, like a receipt.
    pub fn makes_there(&self) -> bool {
        self.is_step() || matches!(self.kind, DeedKind::Receive | DeedKind::Adopt)
    }

    /// Is any moment of it in a time, whose end is out?
    pub fn is_within(&self, from: DateTime<Utc>, until: DateTime<Utc>) -> bool {
        self.at >= from && self.began() < until
    }
}

/// Something that happened to a pack.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Happened {
    /// By which deed.
    pub deed: DeedId,
    /// Which account the grams went to or came from.
    pub account: Account,
    /// How many.
    pub grams: Grams,
    /// Was a whole pack sold?
    pub whole_pack: bool,
    /// Where it went, if it moved.
    pub to: Option<PlaceId>,
}

impl Happened {
    /// What it took out of the pack; less than nothing where it brought something.
    pub fn took(&self) -> Grams {
        match self.account {
            Account::Moved | Account::Noted => Grams::ZERO,
            Account::TakenBack => -self.grams,
            _ => self.grams,
        }
    }
}

/// A pack, and everything that happened to it, in the order of [`When`].
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PackLife {
    /// Its key.
    pub id: PackId,
    /// Its number.
    pub number: u32,
    /// What was in it at birth.
    pub made: Grams,
    /// What is left.
    pub left: Grams,
    /// Where it is.
    pub place: PlaceId,
    /// What happened to it.
    pub happened: Vec<Happened>,
}

/// A lot with its packs.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WorldLot {
    /// Its key.
    pub id: LotId,
    /// Its code.
    pub code: LotCode,
    /// The code of its product.
    pub product: String,
    /// A word about it.
    pub note: Option<String>,
    /// Is there anything of an animal in it?
    pub has_species: bool,
    /// The deed that made it.
    pub made_by: DeedId,
    /// Where its packs were put at birth.
    pub born: PlaceId,
    /// Its packs.
    pub packs: Vec<PackLife>,
}

/// What was loaded.
#[derive(Debug, Default)]
pub struct World {
    /// Deeds.
    pub deeds: HashMap<DeedId, Doing>,
    /// Lots that were not voided, each with all its packs and all that happened to them.
    pub lots: BTreeMap<LotId, WorldLot>,
    /// Every lot that a deed made: of each of these deeds, all are loaded.
    pub made_by: HashMap<DeedId, Vec<LotId>>,
    /// Every doing of a window: of each, what it made and the packs with a species that it touched are loaded.
    pub windows: HashMap<Window, Vec<DeedId>>,
    /// The places that spread, each with the moments of its clean-downs in their order.
    pub cleaned: HashMap<PlaceId, Vec<DateTime<Utc>>>,
    touched: HashMap<DeedId, Vec<(LotId, PackId)>>,
    pack_at: HashMap<PackId, (LotId, usize)>,
}

impl World {
    /// Adds a lot, unless it is known. Its deeds have to be there.
    pub fn add(&mut self, mut lot: WorldLot) {
        if self.lots.contains_key(&lot.id) {
            return;
        }
        for (nth, pack) in lot.packs.iter_mut().enumerate() {
            pack.happened.retain(|of| self.deeds.contains_key(&of.deed));
            let when = |of: &Happened| self.deeds[&of.deed].when();
            pack.happened.sort_by_key(when);
            self.pack_at.insert(pack.id, (lot.id, nth));
            for of in &pack.happened {
                self.touched
                    .entry(of.deed)
                    .or_default()
                    .push((lot.id, pack.id));
            }
        }
        self.lots.insert(lot.id, lot);
    }

    /// When something happened.
    pub fn when(&self, of: &Happened) -> When {
        self.deeds[&of.deed].when()
    }

    /// A pack with its lot.
    pub fn pack(&self, pack: PackId) -> Option<(&WorldLot, &PackLife)> {
        let (lot, nth) = self.pack_at.get(&pack)?;
        let lot = self.lots.get(lot)?;
        Some((lot, lot.packs.get(*nth)?))
    }

    /// The packs that a deed did something to, in the order of their keys.
    pub fn touched(&self, deed: DeedId) -> Vec<PackId> {
        let of = self.touched.get(&deed).into_iter().flatten();
        let mut of: Vec<PackId> = of.map(|(_, pack)| *pack).collect();
        of.sort_unstable();
        of.dedup();
        of
    }

    /// What was left in a pack after a moment.
    pub fn left_after(&self, pack: &PackLife, when: When) -> Grams {
        let before = pack.happened.iter();
        let before = before.take_while(|of| self.when(of) <= when);
        pack.made - before.map(Happened::took).sum()
    }

    /// Where a doing draws on a pack, works on it or sets it down, if that is a place at which it counts.
    pub fn where_done(&self, of: &Happened) -> Option<PlaceId> {
        let doing = &self.deeds[&of.deed];
        match of.account {
            Account::Used | Account::Noted if doing.is_step() => doing.place,
            Account::Moved if doing.kind == DeedKind::Move => of.to,
            _ => None,
        }
    }
}
