//! The dumb book.

use super::kitchen::{Kitchen, STOVE, minute};
use crate::grams::Grams;
use crate::lot::{DeedId, LotId, PackId, PlaceId};
use crate::scope::{Doing, Happened, PackLife, WorldLot};
use crate::words::{Account, DeedKind};
use chrono::{DateTime, TimeDelta, Utc};
use std::collections::{BTreeMap, BTreeSet};

/// What the dumb book says of each pack.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Since {
    Birth,
    Moment(DateTime<Utc>, i32),
}

pub(super) struct Book<'a> {
    pub(super) kitchen: &'a Kitchen,
    pub(super) contact: bool,
    pub(super) cut: (Option<DateTime<Utc>>, Option<DateTime<Utc>>),
    pub(super) without: BTreeSet<LotId>,
    pub(super) packs: BTreeMap<PackId, Since>,
}

impl Book<'_> {
    pub(super) fn deed(&self, id: DeedId) -> &Doing {
        &self.kitchen.doings[id.0 as usize - 1]
    }

    /// The moments of a doing at a place, each with the number of clean-downs strictly before it. A clean-down of
    /// the same moment comes after what is done.
    pub(super) fn moments(&self, doing: &Doing, place: PlaceId) -> Vec<(DateTime<Utc>, usize)> {
        let Some(downs) = self.kitchen.cleaned.get(&place) else {
            return Vec::new();
        };
        let mut at = doing.began.unwrap_or(doing.at);
        let mut all = Vec::new();
        while at <= doing.at {
            all.push((at, downs.iter().filter(|down| **down < at).count()));
            at += TimeDelta::minutes(1);
        }
        all
    }

    pub(super) fn births_whole(&mut self, lot: &WorldLot) -> bool {
        let mut changed = false;
        if self.without.contains(&lot.id) {
            return false;
        }
        for pack in &lot.packs {
            changed |= self.packs.insert(pack.id, Since::Birth) != Some(Since::Birth);
        }
        changed
    }

    pub(super) fn from(
        &mut self,
        lot: &WorldLot,
        pack: PackId,
        at: DateTime<Utc>,
        deed: i32,
    ) -> bool {
        let earlier = match self.packs.get(&pack) {
            None => true,
            Some(Since::Birth) => false,
            Some(Since::Moment(known, by)) => (at, deed) < (*known, *by),
        };
        if earlier && !self.without.contains(&lot.id) {
            self.packs.insert(pack, Since::Moment(at, deed));
            return true;
        }
        false
    }

    pub(super) fn is_since(&self, pack: PackId, doing: &Doing) -> bool {
        match self.packs.get(&pack) {
            None => false,
            Some(Since::Birth) => true,
            Some(Since::Moment(at, deed)) => (doing.at, doing.id.0) >= (*at, *deed),
        }
    }

    /// Where a doing is with a pack, if it draws on it, works on it or sets it down there.
    pub(super) fn place_of(&self, of: &Happened) -> Option<PlaceId> {
        match (self.deed(of.deed).kind, of.account) {
            (DeedKind::Mix | DeedKind::Turn, _) => self.deed(of.deed).place,
            (DeedKind::Move, _) => of.to,
            _ => None,
        }
    }

    pub(super) fn left_after(&self, pack: &PackLife, doing: &Doing) -> Grams {
        let mut left = pack.made;
        for of in &pack.happened {
            let deed = self.deed(of.deed);
            if (deed.at, deed.id) <= (doing.at, doing.id) {
                match of.account {
                    Account::TakenBack => left += of.grams,
                    Account::Moved | Account::Noted => {}
                    _ => left -= of.grams,
                }
            }
        }
        left
    }

    /// The windows that affected packs opened.
    pub(super) fn opened(&self) -> BTreeSet<(PlaceId, usize)> {
        let mut opened = BTreeSet::new();
        for lot in &self.kitchen.lots {
            for pack in &lot.packs {
                if self.packs.get(&pack.id) == Some(&Since::Birth) {
                    let made = self.deed(lot.made_by);
                    let place = made.place.unwrap_or(STOVE);
                    opened.extend(
                        self.moments(made, place)
                            .iter()
                            .map(|(_, nth)| (place, *nth)),
                    );
                }
                for of in &pack.happened {
                    let doing = self.deed(of.deed);
                    if let Some(place) = self.place_of(of).filter(|_| self.is_since(pack.id, doing))
                    {
                        opened.extend(
                            self.moments(doing, place)
                                .iter()
                                .map(|(_, nth)| (place, *nth)),
                        );
                    }
                }
            }
        }
        opened
    }

    pub(super) fn is_in(
        &self,
        doing: &Doing,
        place: PlaceId,
        opened: &BTreeSet<(PlaceId, usize)>,
    ) -> bool {
        self.moments(doing, place).iter().any(|(at, nth)| {
            opened.contains(&(place, *nth))
                && self.cut.0.is_none_or(|from| *at >= from)
                && self.cut.1.is_none_or(|until| *at < until)
        })
    }

    pub(super) fn once_more(&mut self) -> bool {
        let mut changed = false;
        let kitchen = self.kitchen;
        for lot in &kitchen.lots {
            for pack in &lot.packs {
                for of in pack
                    .happened
                    .iter()
                    .filter(|of| of.account == Account::Used)
                {
                    if self.is_since(pack.id, &kitchen.doings[of.deed.0 as usize - 1]) {
                        let made = kitchen.lots.iter().filter(|made| made.made_by == of.deed);
                        for made in made {
                            changed |= self.births_whole(made);
                        }
                    }
                }
            }
        }
        if !self.contact {
            return changed;
        }
        let opened = self.opened();
        for lot in &kitchen.lots {
            let made = self.deed(lot.made_by);
            if self.is_in(made, made.place.unwrap_or(STOVE), &opened) {
                changed |= self.births_whole(lot);
            }
            for pack in &lot.packs {
                for of in &pack.happened {
                    let doing = &kitchen.doings[of.deed.0 as usize - 1];
                    let there = self
                        .place_of(of)
                        .is_some_and(|place| self.is_in(doing, place, &opened));
                    if there && lot.has_species && self.left_after(pack, doing) > Grams::ZERO {
                        changed |= self.from(lot, pack.id, doing.at, doing.id.0);
                    }
                }
            }
        }
        changed
    }

    /// Was a pack in a place at some minute of a time, and since which?
    pub(super) fn lay(
        &self,
        lot: &WorldLot,
        pack: &PackLife,
        place: PlaceId,
        from: i64,
        until: i64,
    ) -> Option<(DateTime<Utc>, i32)> {
        let made = self.deed(lot.made_by);
        let mut events: Vec<&Happened> = pack.happened.iter().collect();
        events.sort_by_key(|of| (self.deed(of.deed).at, of.deed));
        // Every stay: where, with how much, from which deed to which.
        let mut stays = vec![(lot.born, pack.made, (made.at, made.id.0), None)];
        for of in events {
            let deed = self.deed(of.deed);
            let (at, left, _, _) = stays[stays.len() - 1];
            stays.last_mut().unwrap().3 = Some(deed.at);
            let left = match of.account {
                Account::TakenBack => left + of.grams,
                _ => left - of.grams,
            };
            stays.push((of.to.unwrap_or(at), left, (deed.at, deed.id.0), None));
        }
        stays.iter().find_map(|(at, left, since, end)| {
            let there = (from..until).map(minute).find(|now| {
                since.0 <= *now && end.is_none_or(|end| *now < end || end == since.0 && *now == end)
            });
            (*at == place && *left > Grams::ZERO).then_some(())?;
            let there = there?;
            Some(if there == since.0 {
                *since
            } else {
                (minute(from), i32::MIN)
            })
        })
    }
}
