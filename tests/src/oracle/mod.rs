//! A second opinion: a book-keeper by brute force that shares no code with the service.
//!
//! It gets what was asked and which codes were answered, and predicts everything else.

mod family;
mod proof;

use std::collections::{BTreeMap, BTreeSet, HashMap};

/// What happened to a pack.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Entry {
    /// Which deed did it.
    pub deed: usize,
    /// The lot.
    pub lot: String,
    /// The pack's number.
    pub pack: usize,
    /// `used`, `sold` …, `taken-back`, or `noted` where a count found what the book said.
    pub account: &'static str,
    /// Milligrams.
    pub mg: i64,
}

/// Where a received lot is from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Root {
    /// An animal, by its carcass number.
    Animal(String),
    /// Bought in.
    Bought,
}

/// A lot.
#[derive(Debug, Clone)]
pub struct Lot {
    /// The deed that made it.
    pub deed: usize,
    /// Each pack's milligrams at birth.
    pub packs: Vec<i64>,
    /// Set for received lots.
    pub root: Option<Root>,
    /// Is it of an animal, or made of one?
    pub has_species: bool,
    /// Was it heated through when it was made?
    pub heated: bool,
}

/// A deed.
#[derive(Debug, Clone, Default)]
pub struct Deed {
    /// Its id.
    pub id: String,
    /// Was it voided?
    pub voided: bool,
    /// Is it a void itself?
    pub is_void: bool,
    /// For a correction: the lot, and the root that it had before.
    pub corrected: Option<(String, Root)>,
}

/// The book.
#[derive(Debug, Default)]
pub struct Book {
    /// Lots by code.
    pub lots: BTreeMap<String, Lot>,
    /// Deeds in order.
    pub deeds: Vec<Deed>,
    /// Everything that happened, in order.
    pub entries: Vec<Entry>,
    /// Lots of which a pack was ever moved, frozen or thawed.
    pub moved: BTreeSet<String>,
    /// Where a lot's entries are, so that brute force stays bearable.
    of_lot: HashMap<String, Vec<usize>>,
    /// Where a deed's entries are.
    of_deed: HashMap<usize, Vec<usize>>,
}

impl Book {
    /// Adds a deed; its place comes back.
    pub fn deed(&mut self, id: &str) -> usize {
        self.deeds.push(Deed {
            id: id.to_owned(),
            ..Deed::default()
        });
        self.deeds.len() - 1
    }

    /// Adds what happened to a pack.
    pub fn enter(&mut self, deed: usize, lot: &str, pack: usize, account: &'static str, mg: i64) {
        self.of_lot
            .entry(lot.to_owned())
            .or_default()
            .push(self.entries.len());
        self.of_deed
            .entry(deed)
            .or_default()
            .push(self.entries.len());
        self.entries.push(Entry {
            deed,
            lot: lot.to_owned(),
            pack,
            account,
            mg,
        });
    }

    /// Is the lot's making voided?
    pub fn is_void(&self, lot: &str) -> bool {
        self.deeds[self.lots[lot].deed].voided
    }

    /// What happened to a lot, voided deeds included, in order.
    pub fn of_lot(&self, lot: &str) -> impl Iterator<Item = &Entry> {
        self.of_lot
            .get(lot)
            .into_iter()
            .flatten()
            .map(|nth| &self.entries[*nth])
    }

    /// What a deed did.
    pub fn of_deed(&self, deed: usize) -> impl Iterator<Item = &Entry> {
        self.of_deed
            .get(&deed)
            .into_iter()
            .flatten()
            .map(|nth| &self.entries[*nth])
    }

    fn live(&self, lot: &str) -> impl Iterator<Item = &Entry> {
        self.of_lot(lot)
            .filter(|entry| !self.deeds[entry.deed].voided)
    }

    /// What is left of a pack.
    pub fn left(&self, lot: &str, pack: usize) -> i64 {
        if self.is_void(lot) {
            return 0;
        }
        let of_pack = self.live(lot).filter(|entry| entry.pack == pack);
        of_pack.fold(self.lots[lot].packs[pack - 1], |left, entry| {
            match entry.account {
                "taken-back" => left + entry.mg,
                _ => left - entry.mg,
            }
        })
    }

    /// What a lot has at an account.
    pub fn sum(&self, lot: &str, account: &str) -> i64 {
        self.live(lot)
            .filter(|entry| entry.account == account)
            .map(|entry| entry.mg)
            .sum()
    }

    /// What was found too much of a lot, count by count.
    pub fn surplus(&self, lot: &str) -> i64 {
        let counted = self.live(lot).filter(|of| of.account == "unexplained");
        counted.map(|entry| (-entry.mg).max(0)).sum()
    }

    /// What customers still have of a pack.
    pub fn away(&self, lot: &str, pack: usize) -> i64 {
        let of = |account: &str| -> i64 {
            self.live(lot)
                .filter(|entry| entry.pack == pack && entry.account == account)
                .map(|entry| entry.mg)
                .sum()
        };
        of("sold") + of("shipped") - of("taken-back")
    }

    /// Did the last thing that emptied a pack leave it missing?
    pub fn is_missing(&self, lot: &str, pack: usize) -> bool {
        self.emptied_by(lot, pack) == Some("unexplained")
    }

    /// The account that emptied a pack, if it is empty.
    pub fn emptied_by(&self, lot: &str, pack: usize) -> Option<&'static str> {
        if self.left(lot, pack) > 0 {
            return None;
        }
        let last = self
            .live(lot)
            .filter(|entry| entry.pack == pack && entry.account != "noted")
            .last();
        last.map(|entry| entry.account)
    }

    /// May a deed be voided? Brute force: leave it out and see whether the rest still stands.
    pub fn may_void(&self, deed: usize) -> bool {
        let it = &self.deeds[deed];
        if it.voided || it.is_void {
            return false;
        }
        let made: Vec<&String> = self
            .lots
            .iter()
            .filter(|(_, lot)| lot.deed == deed)
            .map(|(code, _)| code)
            .collect();
        let used_since = |lot: &&String| {
            self.live(lot)
                .any(|entry| entry.deed != deed && entry.account != "noted")
        };
        if made.iter().any(used_since) {
            return false;
        }
        let corrected_since = |lot: &String| {
            let later = self.deeds.iter().enumerate().skip(deed + 1);
            later
                .filter(|(_, other)| !other.voided)
                .any(|(_, other)| other.corrected.as_ref().is_some_and(|(of, _)| of == lot))
        };
        let source_of = it
            .corrected
            .as_ref()
            .map(|(lot, _)| lot)
            .or(made.first().copied());
        if source_of.is_some_and(corrected_since) {
            return false;
        }
        let mut touched: Vec<(&String, usize)> = self
            .of_deed(deed)
            .map(|entry| (&entry.lot, entry.pack))
            .collect();
        touched.dedup();
        touched
            .iter()
            .all(|(lot, pack)| self.stands_without(deed, lot, *pack))
    }

    fn stands_without(&self, deed: usize, lot: &str, pack: usize) -> bool {
        let mut left = self.lots[lot].packs[pack - 1];
        let mut after = false;
        let own = self
            .of_deed(deed)
            .filter(|entry| entry.lot == lot && entry.pack == pack);
        let own_grams = own.into_iter().any(|entry| entry.account != "noted");
        for entry in self.live(lot).filter(|entry| entry.pack == pack) {
            if entry.deed == deed {
                after = true;
                continue;
            }
            if after && own_grams && matches!(entry.account, "lost" | "unexplained" | "noted") {
                return false;
            }
            left += if entry.account == "taken-back" {
                entry.mg
            } else {
                -entry.mg
            };
            if left < 0 {
                return false;
            }
        }
        true
    }

    /// Voids a deed.
    pub fn void(&mut self, deed: usize) {
        self.deeds[deed].voided = true;
        if let Some((lot, before)) = self.deeds[deed].corrected.clone() {
            self.lots.get_mut(&lot).expect("it is known").root = Some(before);
        }
    }
}
