//! Mince: how old its meat may be, and that it is not frozen again.

use super::says::MinceDateSays;
use crate::code::LotCode;
use crate::product::Product;
use crate::rows::{Bound, Finding, RowId, Rows};
use crate::says::Says;
use crate::words::{ProductKind, Species};
use chrono::NaiveDate;
use rust_decimal::Decimal;
use std::collections::BTreeSet;

/// What a place asks of mince.
#[derive(Debug, Clone, PartialEq)]
pub struct MinceRules {
    /// So many days after slaughter at most, for chilled meat.
    pub within_days: Bound,
    /// The same for poultry.
    pub birds_within_days: Bound,
    /// The same for boned beef and veal in packs without air.
    pub beef_without_air_within_days: Bound,
    /// What is thawed is not frozen again.
    pub not_refrozen: RowId,
}

impl MinceRules {
    pub(super) fn bounds_mut(&mut self) -> [&mut Bound; 3] {
        [
            &mut self.within_days,
            &mut self.birds_within_days,
            &mut self.beef_without_air_within_days,
        ]
    }
}

/// Chilled meat that goes into mince.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MincedMeat {
    /// Its lot.
    pub lot: LotCode,
    /// Its product, for a sentence.
    pub shown: Says,
    /// The animals in it.
    pub species: BTreeSet<Species>,
    /// The day that the first of them was killed.
    pub killed_on: NaiveDate,
    /// Is it packed without air?
    pub without_air: bool,
}

/// Is it raw mince, or raw food made with mince or pieces of meat: what is not frozen again?
pub fn is_minced(product: &Product, species: &BTreeSet<Species>) -> bool {
    product.raw && product.kind == ProductKind::Mixed && !species.is_empty()
}

/// Was it minced in time? A finding for each lot that is too old, with its place among them.
pub fn minced_in_time(
    meat: &[MincedMeat],
    day: NaiveDate,
    rules: &MinceRules,
    rows: &Rows,
) -> Vec<(usize, Finding)> {
    let late = meat.iter().enumerate().filter_map(|(nth, of)| {
        let beef = of.species.iter().all(|species| *species == Species::Cattle);
        let bound = match of.species.iter().any(|species| species.is_bird()) {
            true => &rules.birds_within_days,
            false if beef && of.without_air => &rules.beef_without_air_within_days,
            false => &rules.within_days,
        };
        let days = (day - of.killed_on).num_days();
        let says = MinceDateSays::TooOld {
            lot: of.lot.clone(),
            product: of.shown.clone(),
            killed: of.killed_on,
            days,
            most: bound.whole(),
        };
        let kept = bound.allows(Decimal::from(days));
        (!kept).then(|| (nth, Finding::against(rows, &bound.row, says)))
    });
    late.collect()
}

/// Thawed mince that is frozen again.
pub fn refrozen(pack: String, rules: &MinceRules, rows: &Rows) -> Finding {
    let says = MinceDateSays::FrozenAgain { pack };
    Finding::against(rows, &rules.not_refrozen, says)
}
