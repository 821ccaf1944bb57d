//! Cured pork with a standard: protein in the fat-free part, bacon, ham patties; dry-cured pieces
//! have their own file.

use super::dry_cured::Claim;
use super::measured;
use super::standards_say::PorkSays;
use crate::grams::Grams;
use crate::measure::Percent;
use crate::refusal::{Refusal, Result};
use crate::rows::{Bound, Finding, RowId, Rows};
use crate::words::words;
use rust_decimal::Decimal;

words! {
    /// The groups that have their own least protein.
    PffKind {
        CookedHam = "cooked-ham", CookedShoulder = "cooked-shoulder",
        UncookedHam = "uncooked-ham", UncookedShoulder = "uncooked-shoulder",
        ChoppedHam = "chopped-ham",
    }
}

words! {
    /// What has to stand beside the name.
    Qualifier {
        Plain = "plain", NaturalJuices = "natural-juices", WaterAdded = "water-added",
        AndWater = "and-water",
    }
}

/// The standards of a place.
#[derive(Debug, Clone, PartialEq)]
pub struct Standards {
    /// Least protein by group.
    pub pff: Vec<LeastProtein>,
    /// The words that follow from it.
    pub wording: PffWording,
    /// Most fat in ham patties, in percent.
    pub patty_fat: Bound,
    /// Most shank meat over what is normal in chopped ham, in percent.
    pub shank_over_normal: Bound,
    /// Finished weight of a dry-cured piece, in percent of fresh.
    pub dry_yield: Bound,
    /// Its salt with nitrite or nitrate, in percent.
    pub salt: Bound,
    /// Its brine without, in percent.
    pub brine: Bound,
    /// Or its water activity without.
    pub water_activity: Bound,
    /// Times of the standard that are not enforced: shown as advice.
    pub times: Vec<Time>,
    /// Core while a "country" piece dries or smokes, in degrees Fahrenheit: advice too.
    pub country_core: Bound,
    /// Weight of bacon, in percent of the fresh belly.
    pub bacon_yield: Bound,
}

/// Least protein of a group, in percent of the fat-free part.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LeastProtein {
    /// The group.
    pub kind: PffKind,
    /// For the bare name.
    pub plain: Bound,
    /// With natural juices.
    pub natural_juices: Option<Bound>,
    /// With water added.
    pub water_added: Option<Bound>,
}

/// Mandated words beside the name.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PffWording {
    /// Where they stand.
    pub row: RowId,
    /// After the name.
    pub natural_juices: String,
    /// After the name.
    pub water_added: String,
    /// After the name, with `{}` for the percentage.
    pub and_water: String,
}

/// A time of the standard that is not enforced.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Time {
    /// For which name.
    pub claim: Claim,
    /// Of the whole process, or of curing and equalising?
    pub whole: bool,
    /// Days for a ham.
    pub ham: Bound,
    /// Days for a shoulder.
    pub shoulder: Bound,
}

impl Standards {
    pub(super) fn bounds_mut(&mut self) -> Vec<&mut Bound> {
        let mut all = vec![
            &mut self.patty_fat,
            &mut self.shank_over_normal,
            &mut self.dry_yield,
            &mut self.salt,
            &mut self.brine,
            &mut self.water_activity,
            &mut self.country_core,
            &mut self.bacon_yield,
        ];
        for least in &mut self.pff {
            all.push(&mut least.plain);
            all.extend(least.natural_juices.as_mut());
            all.extend(least.water_added.as_mut());
        }
        for time in &mut self.times {
            all.extend([&mut time.ham, &mut time.shoulder]);
        }
        all
    }

    /// What has to stand beside the name of this group at that protein; `None` for a group without
    /// a line.
    pub fn qualifier(&self, kind: PffKind, pff: Percent) -> Option<Qualifier> {
        let least = self.pff.iter().find(|least| least.kind == kind)?;
        let meets = |bound: &Option<Bound>| {
            bound
                .as_ref()
                .is_some_and(|bound| bound.allows(pff.number()))
        };
        Some(if least.plain.allows(pff.number()) {
            Qualifier::Plain
        } else if meets(&least.natural_juices) {
            Qualifier::NaturalJuices
        } else if meets(&least.water_added) {
            Qualifier::WaterAdded
        } else {
            Qualifier::AndWater
        })
    }

    /// Does a name have the words that have to stand beside it?
    pub fn is_said(&self, name: &str, with: Qualifier) -> bool {
        let words = super::names::words_of(name);
        let says = |text: &str| super::names::says(&words, text);
        match with {
            Qualifier::Plain => true,
            Qualifier::NaturalJuices => says(&self.wording.natural_juices),
            Qualifier::WaterAdded => says(&self.wording.water_added),
            Qualifier::AndWater => {
                let parts = self.wording.and_water.split("{}");
                parts.filter(|part| !part.trim().is_empty()).all(says)
            }
        }
    }

    /// The name with its qualifier. `added` is the part of the weight that is added ingredients.
    ///
    /// # Errors
    /// The last qualifier needs that part, and it cannot be below 0 or above 100 %.
    pub fn full_name(&self, name: &str, with: Qualifier, added: Option<Percent>) -> Result<String> {
        Ok(match with {
            Qualifier::Plain => name.to_owned(),
            Qualifier::NaturalJuices => format!("{name} {}", self.wording.natural_juices),
            Qualifier::WaterAdded => format!("{name} {}", self.wording.water_added),
            Qualifier::AndWater => {
                let added =
                    added.ok_or_else(|| Refusal::cannot_be("added", PorkSays::GiveAdded))?;
                let number = super::percent("added", added)?;
                let wording = self.wording.and_water.replace("{}", &number.to_string());
                format!("{name} {wording}")
            }
        })
    }
}

/// Meat protein as a percentage of the fat-free part (`us` 4.6).
///
/// # Errors
/// Percentages that cannot be, or that look like parts of one.
pub fn pff(protein: Percent, fat: Percent) -> Result<Percent> {
    let (protein, fat) = (measured("protein", protein)?, super::percent("fat", fat)?);
    if protein.is_zero() {
        return Err(Refusal::cannot_be("protein", PorkSays::NoProtein));
    }
    if protein + fat > Decimal::ONE_HUNDRED {
        return Err(Refusal::cannot_be(
            "fat",
            PorkSays::MoreThanWhole { protein, fat },
        ));
    }
    Ok(Percent::of(protein, Decimal::ONE_HUNDRED - fat))
}

/// What stands against calling it bacon: no heavier than the fresh belly was (`us` 4.6).
///
/// # Errors
/// Weights that cannot be.
pub fn check_bacon(
    standards: &Standards,
    rows: &Rows,
    fresh: Grams,
    ready: Grams,
) -> Result<Option<Finding>> {
    let part = yield_of(fresh, ready)?;
    let most = &standards.bacon_yield;
    Ok((!most.allows(part.number())).then(|| {
        let Bound { row, value, .. } = most;
        let says = PorkSays::Bacon { part, most: *value };
        Finding::against(rows, row, says)
    }))
}

/// What stands against a ham patty or chopped ham.
///
/// # Errors
/// Percentages that cannot be.
pub fn check_patty(
    standards: &Standards,
    rows: &Rows,
    fat: Percent,
    shank_over_normal: Percent,
) -> Result<Vec<Finding>> {
    let mut found = Vec::new();
    let Bound { row, value, .. } = &standards.patty_fat;
    let percent = super::percent("fat", fat)?;
    if !standards.patty_fat.allows(percent) {
        let says = PorkSays::Fat {
            percent,
            most: *value,
        };
        found.push(Finding::against(rows, row, says));
    }
    let Bound { row, value, .. } = &standards.shank_over_normal;
    let percent = super::percent("shank_over_normal", shank_over_normal)?;
    if !standards.shank_over_normal.allows(percent) {
        let says = PorkSays::Shank {
            percent,
            most: *value,
        };
        found.push(Finding::against(rows, row, says));
    }
    Ok(found)
}

/// One weight as a percentage of another.
pub(super) fn yield_of(fresh: Grams, finished: Grams) -> Result<Percent> {
    for (field, weight) in [("fresh", fresh), ("finished", finished)] {
        if weight.is_none_left() {
            return Err(Refusal::cannot_be(field, PorkSays::NoWeight { weight }));
        }
    }
    Ok(Percent::of(
        finished.milligrams().into(),
        fresh.milligrams().into(),
    ))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn the_derived_check_value_comes_out_exactly() {
        let found = pff(Percent::new(Decimal::new(164, 1)), Percent::new(20)).unwrap();
        assert_eq!(found, Percent::new(Decimal::new(205, 1)));
    }

    #[test]
    fn what_cannot_be_is_refused() {
        let refused =
            |protein: Decimal, fat: Decimal| pff(Percent::new(protein), Percent::new(fat)).is_err();
        assert!(
            refused(Decimal::new(164, 3), Decimal::from(20)),
            "a part of one"
        );
        assert!(
            refused(Decimal::from(60), Decimal::from(60)),
            "more than the whole"
        );
        assert!(refused(Decimal::from(600), Decimal::ZERO), "600 %");
        assert!(refused(Decimal::ZERO, Decimal::from(20)), "no protein");
        assert!(
            refused(Decimal::from(-1), Decimal::from(20)),
            "less than none"
        );
        assert!(yield_of(Grams::ZERO, Grams::whole(1)).is_err());
    }

    proptest! {
        #[test]
        fn more_fat_never_lowers_the_figure(protein in 10u32..30, fat in 1u32..60, more in 0u32..10) {
            let of = |fat: u32| pff(Percent::new(protein), Percent::new(fat)).unwrap();
            prop_assert!(of(fat) <= of(fat + more));
        }
    }
}
