//! An invented family of lots: animals cut to packs, their trim mixed with spices and salt.
//!
//! Animal → 8 primals → 5 cuts of 7 packs and a trim each; ten trims, three spices and salt → a batch
//! of 60 packs. Every tenth batch takes back a pack of the one before. Weights balance, so the
//! checker finds nothing.

use domain::code::{HouseCode, LotCode};
use domain::series::Series;

const PRIMALS: usize = 8;
const CUTS: usize = 5;
const CUT_PACKS: usize = 7;
const TRIMS_A_BATCH: usize = 10;
const BATCH_PACKS: usize = 60;
const BATCHES_A_SPICE: usize = 45;
const BATCHES_A_SALT: usize = 500;

/// What everything with a species in a lot is of.
#[derive(Clone, Copy, PartialEq)]
pub enum Of {
    Nothing,
    Animal(usize),
    Animals,
}

pub struct Lot {
    pub code: LotCode,
    pub deed: usize,
    pub product: &'static str,
    pub of: Of,
    pub made: i64,
    pub used: i64,
    pub sold: i64,
    pub events: i32,
}

/// A deed; for a step, its loss and the weight in it that has an animal.
pub struct Deed {
    pub kind: &'static str,
    pub step: Option<(i64, i64)>,
}

pub struct Event {
    pub deed: usize,
    pub lot: usize,
    pub seq: i32,
    pub account: &'static str,
    pub mg: i64,
}

/// All of it; indexes of one list stand in the others.
pub struct Family {
    pub lots: Vec<Lot>,
    pub deeds: Vec<Deed>,
    pub events: Vec<Event>,
    /// The received lot and the deed of each animal.
    pub animals: Vec<usize>,
    pub salts: Vec<usize>,
    pub spices: Vec<usize>,
    pub packs: Vec<usize>,
    /// The series that were drawn on, and where each stands.
    pub series: Vec<(String, u32)>,
    codes: Vec<LotCode>,
    next_day: Option<Series>,
}

impl Family {
    /// A family of at least so many lots.
    pub fn of(lots: usize) -> Family {
        let house = HouseCode::parse("CHK").expect("three letters");
        let day = chrono::NaiveDate::from_ymd_opt(2000, 1, 1).expect("a day");
        let mut family = Family {
            lots: Vec::with_capacity(lots + 1_000),
            deeds: Vec::new(),
            events: Vec::new(),
            animals: Vec::new(),
            salts: Vec::new(),
            spices: Vec::new(),
            packs: Vec::new(),
            series: Vec::new(),
            codes: Vec::new(),
            next_day: Some(Series::Kitchen { house, day }),
        };
        let (mut trims, mut batches, mut last) = (Vec::new(), 0, Vec::new());
        while family.lots.len() < lots {
            trims.extend(family.animal());
            while trims.len() >= TRIMS_A_BATCH {
                let ten: Vec<usize> = trims.drain(..TRIMS_A_BATCH).collect();
                last = family.batch(batches, &ten, &last);
                batches += 1;
            }
        }
        family
    }

    /// Of each three spices one that no batch with the first salt had.
    pub fn later_spices(&self) -> impl Iterator<Item = usize> + '_ {
        let first = 3 * BATCHES_A_SALT.div_ceil(BATCHES_A_SPICE);
        self.spices.iter().skip(first).step_by(3).copied()
    }

    /// An animal down to its packs; its trims come back.
    fn animal(&mut self) -> Vec<usize> {
        let of = Of::Animal(self.animals.len());
        let half = self.receive("pig-half", of, 40_000_000);
        self.animals.push(half);
        let primals = self.step(
            "break-down",
            &[(half, 40_000_000)],
            "pork-chop",
            of,
            5_000_000,
            PRIMALS,
        );
        let mut trims = Vec::with_capacity(PRIMALS);
        for primal in primals {
            let mut cuts = self.step(
                "cut",
                &[(primal, 5_000_000)],
                "pork-chop",
                of,
                800_000,
                CUTS + 1,
            );
            trims.extend(cuts.pop());
            for cut in cuts {
                let packs = self.step(
                    "pack",
                    &[(cut, 800_000)],
                    "pork-chop",
                    of,
                    114_000,
                    CUT_PACKS,
                );
                self.sell_half(packs);
            }
        }
        trims
    }

    /// A batch down to its packs, which come back.
    fn batch(&mut self, nth: usize, trims: &[usize], before: &[usize]) -> Vec<usize> {
        if nth.is_multiple_of(BATCHES_A_SPICE) {
            for _ in 0..3 {
                let spice = self.receive("salt", Of::Nothing, 1_000_000);
                self.spices.push(spice);
            }
        }
        if nth.is_multiple_of(BATCHES_A_SALT) {
            let salt = self.receive("salt", Of::Nothing, 40_000_000);
            self.salts.push(salt);
        }
        let mut inputs: Vec<(usize, i64)> = trims.iter().map(|trim| (*trim, 500_000)).collect();
        let spices = self.spices.iter().rev().take(3);
        inputs.extend(spices.map(|spice| (*spice, 20_000)));
        inputs.extend(self.salts.last().map(|salt| (*salt, 60_000)));
        if nth % 10 == 9 {
            inputs.extend(before.first().map(|pack| (*pack, 80_000)));
        }
        let all = inputs.iter().map(|(_, mg)| mg).sum();
        let batch = self.step("mix", &inputs, "sausage", Of::Animals, all, 1)[0];
        let pack = all / BATCH_PACKS as i64;
        let packs = self.step(
            "pack",
            &[(batch, all)],
            "sausage",
            Of::Animals,
            pack,
            BATCH_PACKS,
        );
        self.sell_half(packs.clone());
        packs
    }

    fn receive(&mut self, product: &'static str, of: Of, mg: i64) -> usize {
        let deed = self.deed("receive", None);
        self.lot(deed, product, of, mg)
    }

    fn step(
        &mut self,
        kind: &'static str,
        inputs: &[(usize, i64)],
        product: &'static str,
        of: Of,
        mg: i64,
        count: usize,
    ) -> Vec<usize> {
        let sum = |inputs: &mut dyn Iterator<Item = &(usize, i64)>| inputs.map(|(_, mg)| mg).sum();
        let all: i64 = sum(&mut inputs.iter());
        let of_animals = sum(&mut inputs
            .iter()
            .filter(|(lot, _)| self.lots[*lot].of != Of::Nothing));
        let deed = self.deed(kind, Some((all - mg * count as i64, of_animals)));
        for (lot, mg) in inputs {
            self.lots[*lot].used += mg;
            self.event(deed, *lot, "used", *mg);
        }
        (0..count)
            .map(|_| self.lot(deed, product, of, mg))
            .collect()
    }

    /// Sells every second pack.
    fn sell_half(&mut self, packs: Vec<usize>) {
        for pack in packs.iter().skip(1).step_by(2) {
            let deed = self.deed("sell", None);
            let mg = self.lots[*pack].made;
            self.lots[*pack].sold = mg;
            self.event(deed, *pack, "sold", mg);
        }
        self.packs.extend(packs);
    }

    fn deed(&mut self, kind: &'static str, step: Option<(i64, i64)>) -> usize {
        self.deeds.push(Deed { kind, step });
        self.deeds.len() - 1
    }

    fn lot(&mut self, deed: usize, product: &'static str, of: Of, made: i64) -> usize {
        let code = self.code();
        let lot = Lot {
            code,
            deed,
            product,
            of,
            made,
            used: 0,
            sold: 0,
            events: 0,
        };
        self.lots.push(lot);
        self.lots.len() - 1
    }

    fn event(&mut self, deed: usize, lot: usize, account: &'static str, mg: i64) {
        self.lots[lot].events += 1;
        let seq = self.lots[lot].events;
        self.events.push(Event {
            deed,
            lot,
            seq,
            account,
            mg,
        });
    }

    fn code(&mut self) -> LotCode {
        if self.codes.is_empty() {
            let day = self.next_day.take().expect("a day of the calendar");
            let (codes, next) = day.take(0, 32 * 1_024);
            self.series.push((day.key(), next));
            self.next_day = day.after();
            self.codes = codes;
            self.codes.reverse();
        }
        self.codes.pop().expect("a day has codes")
    }
}
