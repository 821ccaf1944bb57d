//! How the cost of a lot is parted: what leaves takes its share of what is there then, and what dries off leaves
//! its cost to what stays.

use super::{Did, Relative};
use crate::grams::Grams;
use crate::lot::DeedId;
use crate::words::Account;
use rust_decimal::Decimal;
use std::collections::{BTreeMap, HashMap};

/// How much of the cost of a lot went with each deed, and what is left of it.
#[derive(Debug, Default, PartialEq, Eq)]
pub struct Parted {
    /// The share that each step took, of one.
    taken: HashMap<DeedId, Took>,
    /// The share that is left in the packs on hand.
    pub rest: Decimal,
}

#[derive(Debug, Default, PartialEq, Eq)]
struct Took {
    share: Decimal,
    milligrams: i64,
}

/// A pack on the way through its deeds.
struct Pack {
    cost: Decimal,
    milligrams: i64,
    /// What a milligram of it cost when anything was last in it.
    each: Decimal,
}

impl Pack {
    fn takes(&mut self, milligrams: i64) -> Decimal {
        let share = match self.milligrams {
            ..=0 => Decimal::ZERO,
            all if all <= milligrams => self.cost,
            all => self.cost * Decimal::from(milligrams) / Decimal::from(all),
        };
        self.cost -= share;
        self.changes(-milligrams);
        share
    }

    fn comes_back(&mut self, milligrams: i64) {
        self.cost += self.each * Decimal::from(milligrams);
        self.changes(milligrams);
    }

    fn changes(&mut self, milligrams: i64) {
        self.milligrams += milligrams;
        if self.milligrams > 0 {
            self.each = self.cost / Decimal::from(self.milligrams);
        }
    }
}

impl Parted {
    /// By what was done with a lot, pack by pack. Of a lot whose history is not loaded it says nothing.
    pub fn of(relative: &Relative) -> Parted {
        let whole = relative.made().milligrams().max(1);
        let mut history: Vec<&Did> = relative.history.iter().collect();
        history.retain(|did| !did.voided);
        history.sort_by_key(|did| did.at);
        let mut packs: BTreeMap<u32, Pack> = BTreeMap::new();
        let mut parted = Parted::default();
        for did in history {
            let pack = packs.entry(did.pack).or_insert_with(|| {
                let made = did.pack_made.milligrams();
                let each = Decimal::ONE / Decimal::from(whole);
                Pack {
                    cost: each * Decimal::from(made),
                    milligrams: made,
                    each,
                }
            });
            let milligrams = did.grams.milligrams();
            match did.account {
                Account::Moved | Account::Noted => {}
                Account::TakenBack => pack.comes_back(milligrams),
                // More was found than the book has.
                Account::Unexplained if milligrams < 0 => pack.comes_back(-milligrams),
                Account::Lost => pack.changes(-milligrams),
                Account::Used => {
                    let share = pack.takes(milligrams);
                    let took = parted.taken.entry(did.deed).or_default();
                    took.share += share;
                    took.milligrams += milligrams;
                }
                _ => {
                    pack.takes(milligrams);
                }
            }
        }
        let touched = relative.history.iter().filter(|did| !did.voided);
        let touched: BTreeMap<u32, Grams> = touched.map(|did| (did.pack, did.pack_made)).collect();
        let touched: i64 = touched.values().map(|made| made.milligrams()).sum();
        let untouched = Decimal::from(whole - touched) / Decimal::from(whole);
        let left = packs.values().filter(|pack| pack.milligrams > 0);
        parted.rest = untouched + left.map(|pack| pack.cost).sum::<Decimal>();
        parted
    }

    /// The share that went with so much of what a step took; by weight where nothing tells of it.
    pub fn taken_by(&self, step: DeedId, milligrams: i64, of: Grams) -> Decimal {
        let milligrams = Decimal::from(milligrams);
        match self.taken.get(&step) {
            Some(took) if took.milligrams > 0 => {
                took.share * milligrams / Decimal::from(took.milligrams)
            }
            _ => milligrams / Decimal::from(of.milligrams().max(1)),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::family::came_from_tests::Record;
    use crate::words::{DeedKind, State};
    use chrono::{DateTime, TimeDelta, Utc};

    const KILO: i64 = 1_000_000;

    fn hour(hour: i64) -> DateTime<Utc> {
        DateTime::from_timestamp(1_772_000_000, 0).unwrap() + TimeDelta::hours(hour)
    }

    /// Two packs of 6 and 4 kg; what was done with each at an hour, in kilograms; then the shares, in thousandths,
    /// that the steps took, and what is left.
    #[track_caller]
    fn check(did: &[(i64, u32, Account, i64)], taken: &[i64], rest: i64) {
        let mut record = Record::default();
        let lot = record.made(DeedKind::Receive, 0, State::Chilled, &[]);
        let of = record.of(lot);
        of.went.made = Grams::from_milligrams(10 * KILO);
        let one = |nth: usize, (at, pack, account, kilos): (i64, u32, Account, i64)| Did {
            deed: DeedId(nth as i32),
            uid: Vec::new(),
            kind: DeedKind::Measure,
            at: hour(at),
            day: hour(at).date_naive(),
            by: String::new(),
            voided: false,
            pack,
            pack_made: Grams::from_milligrams([6, 4][pack as usize - 1] * KILO),
            account,
            grams: Grams::from_milligrams(kilos * KILO),
            state: None,
        };
        of.history = { did.iter().enumerate() }
            .map(|(nth, did)| one(nth, *did))
            .collect();
        let parted = Parted::of(of);
        let thousandths = |share: Decimal| (share * Decimal::ONE_THOUSAND).round_dp(6);
        let steps = did.iter().enumerate();
        let steps = steps.filter(|(_, (.., account, _))| *account == Account::Used);
        let shares: Vec<Decimal> = steps
            .map(|(nth, (.., kilos))| {
                thousandths(parted.taken_by(DeedId(nth as i32), kilos * KILO, of.made()))
            })
            .collect();
        let want: Vec<Decimal> = taken.iter().map(|share| Decimal::from(*share)).collect();
        assert_eq!(shares, want, "{did:?}");
        assert_eq!(thousandths(parted.rest), Decimal::from(rest), "{did:?}");
    }

    #[test]
    fn what_dries_off_leaves_its_cost_to_what_stays_in_its_pack() {
        use Account::{Lost, Sold, TakenBack, Unexplained, Used};
        check(&[], &[], 1000);
        check(&[(1, 1, Used, 3)], &[300], 700);
        // All that dried off had dried when the half was cut.
        check(&[(1, 1, Lost, 2), (2, 1, Used, 2)], &[300], 700);
        // It was cut before: its share stays what it was.
        check(
            &[(1, 1, Used, 3), (2, 1, Lost, 1), (3, 1, Used, 2)],
            &[300, 300],
            400,
        );
        // As it happened, not as it was told.
        check(&[(2, 1, Lost, 1), (1, 1, Used, 3)], &[300], 700);
        // The other pack did not dry.
        check(&[(1, 1, Lost, 3), (2, 2, Used, 4)], &[400], 600);
        check(&[(1, 1, Sold, 3), (2, 1, Lost, 1)], &[], 700);
        // What was missing and is found again brings its own back, and so does what a customer brings.
        check(
            &[
                (1, 2, Unexplained, 4),
                (2, 2, Unexplained, -4),
                (3, 2, Used, 4),
            ],
            &[400],
            600,
        );
        check(
            &[(1, 2, Lost, 2), (2, 2, Sold, 2), (3, 2, TakenBack, 2)],
            &[],
            1000,
        );
    }
}
