//! Everything that was made from the lots of a family, with the share of them in each.

use super::{Family, Relative};
use crate::genealogy::shares_forward;
use crate::lot::{DeedId, LotId};
use crate::words::Account;
use std::collections::HashSet;

/// A lot that was made from them.
#[derive(Debug, Clone, Copy)]
pub struct Descended<'a> {
    /// The lot.
    pub of: &'a Relative,
    /// The share of the starting lots in it; none where there is no animal in them.
    pub share: Option<f64>,
}

/// Everything that was made from the lots that the family was loaded for, without these lots, the
/// oldest first. The family has to be loaded with its descendants.
pub fn descendants(family: &Family) -> Vec<Descended<'_>> {
    let reached = || family.starts.iter().chain(&family.descendants);
    let drawn_on: HashSet<LotId> = family.onward.iter().map(|on| on.lot).collect();
    let made: Vec<(LotId, DeedId)> = reached()
        .filter_map(|lot| family.get(*lot))
        .filter(|of| drawn_on.contains(&of.lot.id))
        .map(|of| (of.lot.id, of.lot.made_by))
        .collect();
    let shares = shares_forward(&family.starts, &made, &family.onward);
    let mut starts = family.starts.iter().filter_map(|lot| family.get(*lot));
    let has_animal = starts.any(|of| of.lot.origin.has_animal());
    let mut lots = family.descendants.clone();
    lots.sort_unstable();
    lots.dedup();
    lots.retain(|lot| !family.starts.contains(lot));
    lots.into_iter()
        .filter_map(|lot| family.get(lot))
        .map(|of| Descended {
            of,
            share: has_animal.then(|| shares.get(&of.lot.made_by).copied().unwrap_or(0.0)),
        })
        .collect()
}

/// What was made of a lot in one step, voided lots left out.
pub fn children(family: &Family, lot: LotId) -> Vec<&Relative> {
    let steps = family.get(lot).map(Relative::steps).unwrap_or_default();
    let mut made: Vec<LotId> = steps
        .iter()
        .filter(|did| did.account == Account::Used)
        .flat_map(|did| family.made.get(&did.deed).into_iter().flatten().copied())
        .collect();
    made.sort_unstable();
    made.dedup();
    let made = made.into_iter().filter_map(|lot| family.get(lot));
    made.filter(|of| !of.lot.voided).collect()
}
