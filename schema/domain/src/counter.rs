//! What the counter gets to see about anything scanned: the verdict, and what is known of lot and pack.

use crate::code::NotACode;
use crate::lot::{Lot, Pack};
use crate::moment::day_of;
use crate::stop;
use crate::verdict::{self, ScanVerdict, VerdictSays};
use chrono::{DateTime, NaiveDate, Utc};
use chrono_tz::Tz;

/// What the counter gets to see.
#[derive(Debug, Clone)]
pub struct ScanView {
    /// The verdict.
    pub answer: ScanVerdict,
    /// What was scanned, where it is ours.
    pub known: Option<Known>,
}

/// A lot or a pack of this kitchen.
#[derive(Debug, Clone)]
pub struct Known {
    /// The lot, with the packs that were asked about.
    pub lot: Lot,
    /// The number of the pack, where it is one.
    pub pack: Option<u32>,
}

impl Known {
    /// The pack, where it is one.
    pub fn pack(&self) -> Option<&Pack> {
        self.lot.pack(self.pack?)
    }

    /// The last day of the pack; of a lot, the earliest on hand.
    pub fn use_by(&self) -> Option<NaiveDate> {
        match self.pack() {
            Some(pack) => pack.now.use_by,
            None => {
                let days = self.lot.on_hand().filter_map(|pack| pack.now.use_by);
                days.min()
            }
        }
    }

    /// The pack's price, in hundredths of the currency.
    pub fn price_minor(&self) -> Option<i64> {
        self.lot.product.sale.price_minor(self.pack()?.now.left)
    }
}

impl ScanView {
    /// Nothing that this kitchen printed.
    pub fn unknown(says: VerdictSays) -> ScanView {
        ScanView {
            answer: ScanVerdict::unknown(says),
            known: None,
        }
    }

    /// What cannot be read as a code.
    pub fn unreadable(why: &NotACode) -> ScanView {
        ScanView::unknown(match why {
            NotACode::CheckCharacter => VerdictSays::Misread,
            NotACode::Pattern => VerdictSays::NotOurs,
        })
    }

    /// A lot, or the pack of that number. It has to be loaded with that pack, or with its packs on
    /// hand; a lot of one pack with that pack in any case.
    pub fn of(lot: Lot, number: Option<u32>, now: DateTime<Utc>, zone: Tz) -> ScanView {
        let answer = |pack: &Pack| of_pack(&lot, pack, now, day_of(now, zone));
        let pack = match number {
            Some(number) => match lot.pack(number) {
                Some(pack) => Some(pack),
                None => {
                    return ScanView::unknown(VerdictSays::NoSuchPack {
                        lot: lot.code,
                        packs: lot.pack_count,
                        pack: number,
                    });
                }
            },
            None => lot.packs.first().filter(|_| lot.pack_count == 1),
        };
        let answer = match pack {
            _ if lot.voided => ScanVerdict::voided(),
            Some(pack) => answer(pack),
            None => ScanVerdict::most_cautious(lot.on_hand().map(answer)),
        };
        let pack = pack.map(|pack| pack.number);
        ScanView {
            answer,
            known: Some(Known { lot, pack }),
        }
    }
}

/// The answer for a pack of a lot, at a moment of one of the kitchen's days.
pub fn of_pack(lot: &Lot, pack: &Pack, now: DateTime<Utc>, today: NaiveDate) -> ScanVerdict {
    let stops = match pack.now.is_on_hand() {
        true => stop::on(lot, Some(pack), now, today),
        false => Vec::new(),
    };
    if let Some(answer) = ScanVerdict::stopped(&stops) {
        return answer;
    }
    let product = &lot.product;
    verdict::of_pack(
        &pack.now,
        product.sale.offered,
        product.keeping.usual.is_some(),
        today,
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lot::brief::tests::lot;
    use crate::words::Verdict;

    fn day(text: &str) -> NaiveDate {
        text.parse().unwrap()
    }

    fn noon() -> DateTime<Utc> {
        "2026-06-26T12:00:00Z".parse().unwrap()
    }

    #[test]
    fn a_pack_is_told_of_by_itself_and_a_lot_by_its_worst() {
        let packs = [(250, Some("2026-06-27")), (100, Some("2026-06-25"))];
        let told = |number| ScanView::of(lot(&packs), number, noon(), Tz::UTC);
        let first = told(Some(1));
        assert_eq!(first.answer.verdict, Verdict::Sell);
        let known = first.known.unwrap();
        assert_eq!(known.use_by(), Some(day("2026-06-27")));
        assert_eq!(known.price_minor(), Some(500));
        let all = told(None);
        assert_eq!(all.answer.verdict, Verdict::Pull);
        let known = all.known.unwrap();
        assert_eq!(known.use_by(), Some(day("2026-06-25")));
        assert_eq!((known.pack, known.price_minor()), (None, None));
        let none = told(Some(3));
        assert_eq!(none.answer.verdict, Verdict::Unknown);
        assert!(none.known.is_none());
    }

    #[test]
    fn the_code_of_a_lot_of_one_pack_is_that_pack_s() {
        let told = ScanView::of(lot(&[(0, None)]), None, noon(), Tz::UTC);
        assert_eq!(told.known.unwrap().pack, Some(1));
    }

    #[test]
    fn nothing_of_a_voided_lot_is_sold() {
        let mut voided = lot(&[(250, Some("2026-06-27"))]);
        voided.voided = true;
        let told = ScanView::of(voided, Some(1), noon(), Tz::UTC);
        assert_eq!(told.answer.verdict, Verdict::Pull);
    }
}
