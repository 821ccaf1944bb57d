//! Everything that was made from the lots of a family, with the share of them in each.

use super::{Family, KnownOnce, Lists, Relative, Went};
use crate::code::LotCode;
use crate::genealogy::shares_forward;
use crate::lot::{DeedId, LotId, brief};
use crate::words::Account;
use std::collections::HashSet;

/// A lot that came of others.
#[derive(Debug, Clone, PartialEq)]
pub struct Descendant {
    /// Its code.
    pub code: LotCode,
    /// Its product's code.
    pub product: String,
    /// How much was in it at first, and where that went.
    pub went: Went,
    /// The code of the place where most of what is left is.
    pub place: Option<String>,
    /// The share of what was asked about in it; none where there is no animal in that.
    pub share: Option<f64>,
    /// A word about it.
    pub note: Option<String>,
}

/// All lots made from something, as they are shown.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Descendants {
    /// Each lot, the oldest first.
    pub lots: Vec<Descendant>,
    /// Their sums.
    pub totals: Went,
    /// Of an animal: the lots that were known as received of it until that was corrected.
    pub once: Vec<KnownOnce>,
}

impl FromIterator<Descendant> for Descendants {
    fn from_iter<I: IntoIterator<Item = Descendant>>(lots: I) -> Descendants {
        let lots: Vec<Descendant> = lots.into_iter().collect();
        let mut totals = Went::default();
        for lot in &lots {
            totals += lot.went;
        }
        Descendants {
            lots,
            totals,
            once: Vec::new(),
        }
    }
}

/// Everything that was made from the lots that the family was loaded for, without these lots, the
/// oldest first. The family has to be loaded with its descendants.
pub fn descendants(family: &Family, lists: &Lists) -> Descendants {
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
        .map(|of| Descendant {
            code: of.lot.code.clone(),
            product: of.lot.product.code.clone(),
            went: of.went,
            place: brief::fullest(&of.lot.packs)
                .map(|pack| lists.place_code(pack.now.place).to_owned()),
            share: has_animal.then(|| shares.get(&of.lot.made_by).copied().unwrap_or(0.0)),
            note: of.note.clone(),
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::grams::Grams;

    #[test]
    fn what_came_of_something_is_summed() {
        let lot = |number, sold| Descendant {
            code: LotCode::assign("BRC26159A", number).unwrap(),
            product: "chop".into(),
            went: Went {
                made: Grams::whole(500),
                sold: Grams::whole(sold),
                sold_packs: 1,
                ..Went::default()
            },
            place: None,
            share: Some(0.5),
            note: None,
        };
        let all: Descendants = [lot(29, 200), lot(30, 100)].into_iter().collect();
        assert_eq!(all.totals.made, Grams::whole(1_000));
        assert_eq!(all.totals.sold, Grams::whole(300));
        assert_eq!(all.totals.sold_packs, 2);
    }
}
