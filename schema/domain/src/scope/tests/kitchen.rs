//! Small kitchens at random.

use crate::code::{HouseCode, LotCode};
use crate::grams::Grams;
use crate::lot::{DeedId, LotId, PackId, PlaceId};
use crate::scope::{Doing, Happened, PackLife, Window, World, WorldLot, windows_of};
use crate::series::Series;
use crate::words::{Account, DeedKind};
use chrono::{DateTime, NaiveDate, TimeDelta, Utc};
use std::collections::HashMap;

pub(super) const BENCH: PlaceId = PlaceId(1);
pub(super) const GRINDER: PlaceId = PlaceId(2);
pub(super) const COOLER: PlaceId = PlaceId(3);
pub(super) const STOVE: PlaceId = PlaceId(4);
pub(super) const PLACES: [PlaceId; 4] = [BENCH, GRINDER, COOLER, STOVE];

/// Even minutes, so that the odd ones stand for everything in between.
pub(super) fn minute(of: i64) -> DateTime<Utc> {
    DateTime::UNIX_EPOCH + TimeDelta::minutes(of)
}

/// A small kitchen, told as it was recorded: late entries come in any order of `at`.
#[derive(Debug, Default)]
pub(super) struct Kitchen {
    pub(super) doings: Vec<Doing>,
    pub(super) lots: Vec<WorldLot>,
    pub(super) cleaned: HashMap<PlaceId, Vec<DateTime<Utc>>>,
}

/// Numbers out of one seed.
pub(super) struct Dice(pub(super) u64);

impl Dice {
    pub(super) fn below(&mut self, most: usize) -> usize {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        ((self.0 >> 33) as usize) % most.max(1)
    }

    pub(super) fn one_in(&mut self, so_many: usize) -> bool {
        self.below(so_many) == 0
    }
}

impl Kitchen {
    pub(super) fn at_random(seed: u64, deeds: usize) -> Kitchen {
        let mut dice = Dice(seed);
        let mut kitchen = Kitchen::default();
        for place in [BENCH, GRINDER] {
            let mut downs: Vec<_> = (0..dice.below(5))
                .map(|_| minute(2 * dice.below(30) as i64))
                .collect();
            downs.sort_unstable();
            kitchen.cleaned.insert(place, downs);
        }
        let house = HouseCode::parse("CHK").unwrap();
        let day = NaiveDate::from_ymd_opt(2026, 6, 26).unwrap();
        let mut codes = Series::Kitchen { house, day }
            .take(0, 4 * deeds)
            .0
            .into_iter();
        for _ in 0..deeds {
            match dice.below(10) {
                0 | 1 => kitchen.receive(&mut dice, &mut codes),
                2..=6 => kitchen.step(&mut dice, &mut codes),
                7 | 8 => kitchen.relocate(&mut dice),
                _ => kitchen.part(&mut dice),
            }
        }
        kitchen
    }

    pub(super) fn doing(
        &mut self,
        dice: &mut Dice,
        kind: DeedKind,
        place: Option<PlaceId>,
        least: i64,
    ) -> DeedId {
        let at = least + 2 * dice.below(8) as i64;
        let began = dice
            .one_in(4)
            .then(|| minute((at - 2 * dice.below(5) as i64).max(0)));
        let id = DeedId(self.doings.len() as i32 + 1);
        self.doings.push(Doing {
            id,
            kind,
            at: minute(at),
            began: began.filter(|_| kind != DeedKind::Move),
            place,
            person: ["Oda", "Pim"][dice.below(2)].to_owned(),
        });
        id
    }

    pub(super) fn birth(
        &mut self,
        dice: &mut Dice,
        code: LotCode,
        by: DeedId,
        born: PlaceId,
        species: bool,
    ) {
        let id = LotId(self.lots.len() as i32 + 1);
        let packs = (0..1 + dice.below(2)).map(|nth| {
            let made = Grams::whole(10 + dice.below(3) as i64);
            PackLife {
                id: PackId(10 * id.0 + nth as i32),
                number: nth as u32 + 1,
                made,
                left: made,
                place: born,
                happened: Vec::new(),
            }
        });
        let packs = packs.collect();
        self.lots.push(WorldLot {
            id,
            code,
            product: "x".into(),
            note: None,
            has_species: species,
            made_by: by,
            born,
            packs,
        });
    }

    pub(super) fn receive(&mut self, dice: &mut Dice, codes: &mut impl Iterator<Item = LotCode>) {
        let place = PLACES[dice.below(4)];
        let least = 2 * dice.below(20) as i64;
        let by = self.doing(dice, DeedKind::Receive, Some(place), least);
        let species = !dice.one_in(4);
        self.birth(dice, codes.next().unwrap(), by, place, species);
    }

    /// A pack of which something is left, if the dice find one: its lot's and its own place in the lists.
    pub(super) fn some_pack(&self, dice: &mut Dice) -> Option<(usize, usize)> {
        let lot = dice.below(self.lots.len());
        let pack = dice.below(self.lots.get(lot)?.packs.len());
        (self.lots[lot].packs[pack].left > Grams::ZERO).then_some((lot, pack))
    }

    pub(super) fn made_at(&self, lot: usize) -> i64 {
        let by = self.lots[lot].made_by.0 as usize - 1;
        (self.doings[by].at - DateTime::UNIX_EPOCH).num_minutes()
    }

    pub(super) fn happens(
        &mut self,
        (lot, pack): (usize, usize),
        deed: DeedId,
        account: Account,
        grams: Grams,
        to: Option<PlaceId>,
    ) {
        let pack = &mut self.lots[lot].packs[pack];
        pack.happened.push(Happened {
            deed,
            account,
            grams,
            whole_pack: account == Account::Sold && grams == pack.made,
            to,
        });
        pack.left -= grams;
        pack.place = to.unwrap_or(pack.place);
    }

    pub(super) fn step(&mut self, dice: &mut Dice, codes: &mut impl Iterator<Item = LotCode>) {
        let mut inputs: Vec<_> = (0..1 + dice.below(3))
            .filter_map(|_| self.some_pack(dice))
            .collect();
        inputs.sort_unstable();
        inputs.dedup();
        let Some(least) = inputs.iter().map(|(lot, _)| self.made_at(*lot)).max() else {
            return;
        };
        let makes = !dice.one_in(5);
        let kind = if makes { DeedKind::Mix } else { DeedKind::Turn };
        let place = (!dice.one_in(6)).then(|| PLACES[dice.below(4)]);
        let by = self.doing(dice, kind, place, least);
        for input in &inputs {
            let left = self.lots[input.0].packs[input.1].left;
            let (account, grams) = match makes {
                true if dice.one_in(2) => (Account::Used, left),
                true => (
                    Account::Used,
                    Grams::from_milligrams(left.milligrams() / 2 + 1),
                ),
                false => (Account::Noted, Grams::ZERO),
            };
            self.happens(*input, by, account, grams, None);
        }
        let species = inputs.iter().any(|(lot, _)| self.lots[*lot].has_species);
        for _ in 0..if makes { 1 + dice.below(2) } else { 0 } {
            let born = PLACES[dice.below(4)];
            self.birth(dice, codes.next().unwrap(), by, born, species);
        }
    }

    pub(super) fn relocate(&mut self, dice: &mut Dice) {
        let Some(pack) = self.some_pack(dice) else {
            return;
        };
        let (least, to) = (self.made_at(pack.0), PLACES[dice.below(4)]);
        let by = self.doing(dice, DeedKind::Move, None, least);
        self.happens(pack, by, Account::Moved, Grams::ZERO, Some(to));
    }

    /// It is sold, thrown away, counted, or brought back.
    pub(super) fn part(&mut self, dice: &mut Dice) {
        let Some(pack) = self.some_pack(dice) else {
            return;
        };
        let (kind, account) = [
            (DeedKind::Sell, Account::Sold),
            (DeedKind::Discard, Account::Discarded),
            (DeedKind::Count, Account::Unexplained),
        ][dice.below(3)];
        let least = self.made_at(pack.0);
        let by = self.doing(dice, kind, None, least);
        let left = self.lots[pack.0].packs[pack.1].left;
        self.happens(pack, by, account, left, None);
        if account == Account::Sold && dice.one_in(2) {
            let by = self.doing(dice, DeedKind::TakeBack, None, least);
            let pack = &mut self.lots[pack.0].packs[pack.1];
            pack.happened.push(Happened {
                deed: by,
                account: Account::TakenBack,
                grams: left,
                whole_pack: false,
                to: None,
            });
            pack.left += left;
        }
    }

    /// All of it loaded, or only the lots of some deeds and no window.
    pub(super) fn world(&self) -> World {
        let mut world = World::default();
        world.cleaned = self.cleaned.clone();
        for doing in &self.doings {
            world.deeds.insert(doing.id, doing.clone());
            let made = self.lots.iter().filter(|lot| lot.made_by == doing.id);
            world
                .made_by
                .insert(doing.id, made.map(|lot| lot.id).collect());
        }
        for lot in &self.lots {
            world.add(lot.clone());
        }
        for place in [BENCH, GRINDER] {
            for nth in 0..=self.cleaned[&place].len() {
                let window = Window { place, nth };
                let stands = |doing: &&Doing| {
                    let moved_there = self.lots.iter().flat_map(|lot| &lot.packs).any(|pack| {
                        pack.happened
                            .iter()
                            .any(|of| of.deed == doing.id && of.to == Some(place))
                    });
                    (doing.place == Some(place) && doing.makes_there() || moved_there)
                        && windows_of(doing, place, &self.cleaned)
                            .is_some_and(|of| of.contains(&nth))
                };
                let doings = self.doings.iter().filter(stands).map(|doing| doing.id);
                world.windows.insert(window, doings.collect());
            }
        }
        world
    }
}
