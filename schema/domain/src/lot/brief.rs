//! A lot in short: a line of a list, and what a deed answers.

use super::{Pack, PlaceId};
use crate::code::LotCode;
use crate::grams::Grams;
use chrono::{DateTime, NaiveDate, Utc};
use std::cmp::Reverse;
use std::collections::BTreeMap;

/// A lot in short.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Brief {
    /// Its code.
    pub code: LotCode,
    /// Its product's code.
    pub product: String,
    /// Its weight at birth.
    pub made: Grams,
    /// What is left of it.
    pub on_hand: Grams,
    /// The earliest date on hand.
    pub use_by: Option<NaiveDate>,
    /// How many packs were made of it.
    pub pack_count: u32,
    /// The codes of the places where it is, where most of what is left is first.
    pub places: Vec<String>,
    /// When it was made.
    pub made_at: DateTime<Utc>,
    /// A word about it.
    pub note: Option<String>,
}

impl Brief {
    /// The code of the place where most of what is left is.
    pub fn place(&self) -> Option<&String> {
        self.places.first()
    }
}

/// The packs that something is left in.
pub fn left(packs: &[Pack]) -> impl Iterator<Item = &Pack> {
    packs.iter().filter(|pack| !pack.now.left.is_none_left())
}

/// The pack with most left in it, the first of several; it shows where a lot is.
pub fn fullest(packs: &[Pack]) -> Option<&Pack> {
    left(packs).max_by_key(|pack| (pack.now.left, Reverse(pack.number)))
}

/// Every place where some of it is left, the one of most first.
pub fn places(packs: &[Pack]) -> Vec<PlaceId> {
    let mut there: BTreeMap<PlaceId, Grams> = BTreeMap::new();
    for pack in left(packs) {
        let of = there.entry(pack.now.place).or_insert(Grams::ZERO);
        *of += pack.now.left;
    }
    let mut places: Vec<(PlaceId, Grams)> = there.into_iter().collect();
    places.sort_by_key(|(_, grams)| Reverse(*grams));
    places.into_iter().map(|(place, _)| place).collect()
}

/// The earliest date of what is left.
pub fn earliest(packs: &[Pack]) -> Option<NaiveDate> {
    left(packs).filter_map(|pack| pack.now.use_by).min()
}

#[cfg(test)]
pub(crate) mod tests {
    use super::*;
    use crate::dates::Later;
    use crate::lot::{BirthDate, DeedId, Lot, LotId, PackId, PackNow, PlaceId};
    use crate::origin::Origin;
    use crate::product::{Product, Sale};
    use crate::words::State;
    use std::collections::BTreeSet;
    use std::sync::Arc;

    /// A lot for sale at 20 a kilogram, with packs of so many grams and such last days.
    pub(crate) fn lot(packs: &[(i64, Option<&str>)]) -> Lot {
        let made_at: DateTime<Utc> = "2026-06-20T12:00:00Z".parse().unwrap();
        let pack = |(nth, (grams, day)): (usize, &(i64, Option<&str>))| Pack {
            id: PackId(1 + nth as i32),
            number: 1 + nth as u32,
            made: Grams::whole(500),
            now: PackNow::new(
                Grams::whole(*grams),
                PlaceId(1 + nth as i32),
                State::Chilled,
                BirthDate {
                    use_by: day.map(|day| day.parse().unwrap()),
                    ..BirthDate::default()
                },
                made_at.date_naive(),
            ),
            past: None,
        };
        let product = Product {
            sale: Sale {
                offered: true,
                price_minor_per_kg: Some(2_000),
                ..Sale::default()
            },
            ..Product::unnamed()
        };
        Lot {
            id: LotId(1),
            code: LotCode::assign("BRC26159A", 29).unwrap(),
            product: Arc::new(product),
            made_at,
            made_by: DeedId(1),
            origin: Origin::BOUGHT_MEAT,
            allergens: BTreeSet::new(),
            may_contain: BTreeSet::new(),
            supplied: None,
            species: BTreeSet::new(),
            later: Later::default(),
            packaging: None,
            condition: None,
            stops: Vec::new(),
            wrong_labels: Vec::new(),
            released: false,
            voided: false,
            pack_count: packs.len() as u32,
            packs: packs.iter().enumerate().map(pack).collect(),
        }
    }

    #[test]
    fn the_first_of_the_fullest_packs_tells_where_a_lot_is() {
        let of = lot(&[
            (0, Some("2026-06-20")),
            (200, Some("2026-06-22")),
            (200, Some("2026-06-21")),
        ]);
        assert_eq!(fullest(&of.packs).map(|pack| pack.number), Some(2));
        assert_eq!(earliest(&of.packs), "2026-06-21".parse().ok());
        assert_eq!(fullest(&lot(&[(0, None)]).packs), None);
    }

    #[test]
    fn packs_are_alike_by_what_is_told_of_them() {
        let mut packs = lot(&[(200, None), (200, None)]).packs;
        packs[1].now.place = packs[0].now.place;
        assert!(packs[0].is_like(&packs[1]));
        packs[1].now.state = State::Frozen;
        assert!(!packs[0].is_like(&packs[1]));
    }
}
