//! Packs that a count did not find: they stay unexplained, and somebody looks for them.

use super::{About, DoSays, Hand, Sort, TodaySays, When};
use crate::code::LotCode;
use crate::grams::Grams;
use crate::says::Texts;
use chrono::NaiveDate;

/// Packs of one lot that a count of these days did not find.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MissingPacks {
    /// The lot.
    pub lot: LotCode,
    /// What it is.
    pub name: Texts,
    /// The packs, by number.
    pub packs: Vec<u32>,
    /// How they are written: `BRC-26159-A03-0/2`.
    pub shown: String,
    /// What they held before.
    pub weight: Grams,
    /// The day of the last count that did not find one of them.
    pub day: NaiveDate,
}

pub(super) fn hand(of: &MissingPacks) -> Hand {
    Hand {
        when: When::Today,
        sort: Sort::Missing,
        about: About::Lot(of.lot.clone(), of.packs.clone()),
        says: TodaySays::Missing {
            name: of.name.clone(),
            packs: of.packs.len(),
        }
        .into(),
        more: vec![
            TodaySays::MissingSince {
                shown: of.shown.clone(),
                weight: of.weight,
                day: of.day,
            }
            .into(),
            TodaySays::MissingDo.into(),
        ],
        act: DoSays::CountAgain.into(),
    }
}
