//! What beef may share a batch: one day's cutting, and what its stage must share.

use super::says::BatchSays;
use crate::rows::{Bound, Finding, RowId, Rows};
use crate::words::words;
use chrono::NaiveDate;
use std::collections::BTreeSet;

words! {
    /// What is done to the beef.
    Stage {
        Cutting = "cutting", FurtherCutting = "further-cutting", Mince = "mince",
        CutMeat = "cut-meat", Trimmings = "trimmings",
    }
}

words! {
    /// What pieces of one batch have to share.
    Shared {
        Born = "born", Reared = "reared", Slaughtered = "slaughtered",
        Slaughterhouse = "slaughterhouse", CuttingPlant = "cutting-plant",
    }
}

/// The rules of a place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Groups {
    /// A batch is never over one day's production.
    pub one_day: RowId,
    /// Kill days may differ within one slaughterhouse; said as a note.
    pub kill_days: RowId,
    /// What each stage must share.
    pub share: Vec<SharedFact>,
}

/// What a stage must share.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SharedFact {
    /// Where it stands.
    pub row: RowId,
    /// The stage.
    pub stage: Stage,
    /// What is the same for all.
    pub same: Vec<Shared>,
    /// What there may be several of, and how many.
    pub several: Vec<(Shared, Bound)>,
}

/// One piece, or one box, that goes into the batch.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct BeefPiece<'a> {
    /// Country of birth.
    pub born: &'a str,
    /// Country of rearing.
    pub reared: &'a str,
    /// Country of slaughter.
    pub slaughtered: &'a str,
    /// Number of the slaughterhouse.
    pub slaughterhouse: &'a str,
    /// Number of the plant that cut it before.
    pub cutting_plant: &'a str,
    /// The day of the kill.
    pub killed: NaiveDate,
    /// The day on which this batch cuts or minces it.
    pub made_on: NaiveDate,
}

impl BeefPiece<'_> {
    fn get(&self, shared: Shared) -> &str {
        match shared {
            Shared::Born => self.born,
            Shared::Reared => self.reared,
            Shared::Slaughtered => self.slaughtered,
            Shared::Slaughterhouse => self.slaughterhouse,
            Shared::CuttingPlant => self.cutting_plant,
        }
    }
}

/// What stands against these pieces as one batch (`canada-eu-uk-10.8` to `10.10`). A place without
/// the rule finds nothing. What is not known is not the same.
pub fn check_beef(
    rules: &super::DutyRules,
    rows: &Rows,
    stage: Stage,
    pieces: &[BeefPiece],
) -> Vec<Finding> {
    let (Some(groups), Some((first, rest))) = (&rules.beef, pieces.split_first()) else {
        return Vec::new();
    };
    let mut found = Vec::new();
    if rest.iter().any(|piece| piece.made_on != first.made_on) {
        let says = BatchSays::BeefOneDay;
        found.push(Finding::against(rows, &groups.one_day, says));
    }
    for share in groups.share.iter().filter(|share| share.stage == stage) {
        for &same in &share.same {
            let says = if pieces.iter().any(|piece| piece.get(same).trim().is_empty()) {
                BatchSays::BeefUnknown { what: same }
            } else if let Some(other) = rest.iter().find(|other| other.get(same) != first.get(same))
            {
                BatchSays::BeefDiffers {
                    what: same,
                    one: first.get(same).to_owned(),
                    other: other.get(same).to_owned(),
                }
            } else {
                continue;
            };
            found.push(Finding::against(rows, &share.row, says));
        }
        for (what, most) in &share.several {
            let all = pieces.iter().map(|piece| piece.get(*what).trim());
            let all: BTreeSet<&str> = all.filter(|one| !one.is_empty()).collect();
            if !most.allows(all.len().into()) {
                let says = BatchSays::BeefSeveral {
                    what: *what,
                    count: all.len(),
                    most: most.whole(),
                };
                found.push(Finding::against(rows, &most.row, says));
            }
        }
    }
    if found.is_empty() && rest.iter().any(|piece| piece.killed != first.killed) {
        let row = groups.kill_days.clone();
        found.push(Finding::note(BatchSays::BeefKillDays, [row]));
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn rules() -> super::super::DutyRules {
        super::super::DutyRules {
            beef: Some(Groups {
                one_day: RowId::new("x-1"),
                kill_days: RowId::new("x-2"),
                share: vec![SharedFact {
                    row: RowId::new("x-3"),
                    stage: Stage::Cutting,
                    same: vec![Shared::Slaughterhouse],
                    several: Vec::new(),
                }],
            }),
            ..Default::default()
        }
    }

    proptest! {
        #[test]
        fn the_order_of_the_pieces_does_not_matter(houses in proptest::collection::vec(0u8..2, 1..5)) {
            let names: Vec<String> = houses.iter().map(u8::to_string).collect();
            let piece = |house| BeefPiece {
                born: "", reared: "", slaughtered: "", slaughterhouse: house, cutting_plant: "",
                killed: NaiveDate::MIN, made_on: NaiveDate::MIN,
            };
            let mut pieces: Vec<BeefPiece> = names.iter().map(|name| piece(name)).collect();
            let count = |pieces: &[BeefPiece]| check_beef(&rules(), &Rows::default(), Stage::Cutting, pieces).len();
            let before = count(&pieces);
            pieces.reverse();
            prop_assert_eq!(before, count(&pieces));
            let one = houses.iter().all(|house| *house == houses[0]);
            prop_assert_eq!(before == 0, one);
        }
    }
}
