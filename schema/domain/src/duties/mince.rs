//! What mince may be: fat and connective tissue by the day's average, salt, and meat as an ingredient.

use super::percent;
use super::standards_say::MinceSays;
use crate::measure::Percent;
use crate::refusal::{Refusal, Result};
use crate::rows::{Bound, Finding, RowId, Rows};
use crate::words::words;
use rust_decimal::Decimal;

words! {
    /// The sorts of mince.
    MinceKind { Lean = "lean", Beef = "beef", WithPork = "with-pork", Other = "other", }
}

words! {
    /// Meat as an ingredient.
    MeatKind { Mammal = "mammal", Pig = "pig", BirdOrRabbit = "bird-or-rabbit", }
}

/// The limits of a place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Limits {
    /// By sort.
    pub kinds: Vec<MinceLimit<MinceKind>>,
    /// Why a figure met exactly passes.
    pub edge: RowId,
    /// Salt in percent: this much is out already.
    pub salt_under: Bound,
    /// Was it frozen and thawed, it is not frozen again.
    pub not_refrozen: RowId,
    /// Meat as an ingredient: what is over it is not meat but fat or connective tissue.
    pub meat: Vec<MinceLimit<MeatKind>>,
    /// Collagen is so many times hydroxyproline.
    pub collagen_factor: Decimal,
}

/// The most fat, and the most connective tissue as a part of meat protein, in percent.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MinceLimit<Kind> {
    /// Of what.
    pub kind: Kind,
    /// Fat.
    pub fat: Bound,
    /// Collagen in meat protein.
    pub collagen: Bound,
}

impl Limits {
    pub(super) fn bounds_mut(&mut self) -> Vec<&mut Bound> {
        let mut all = vec![&mut self.salt_under];
        for limit in &mut self.kinds {
            all.extend([&mut limit.fat, &mut limit.collagen]);
        }
        for limit in &mut self.meat {
            all.extend([&mut limit.fat, &mut limit.collagen]);
        }
        all
    }
}

/// One sample of the day: fat, and collagen in meat protein.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Sample {
    /// Fat.
    pub fat: Percent,
    /// Collagen in meat protein.
    pub collagen: Percent,
}

/// The average of the day's samples.
///
/// # Errors
/// No sample, or percentages that cannot be.
pub fn daily_average(samples: &[Sample]) -> Result<Sample> {
    if samples.is_empty() {
        return Err(Refusal::cannot_be("samples", MinceSays::NoSample));
    }
    let (mut fat, mut collagen) = (Decimal::ZERO, Decimal::ZERO);
    for sample in samples {
        fat += percent("fat", sample.fat)?;
        collagen += percent("collagen", sample.collagen)?;
    }
    let count = Decimal::from(samples.len());
    Ok(Sample {
        fat: Percent::new(fat / count),
        collagen: Percent::new(collagen / count),
    })
}

/// What stands against selling the day's mince as that sort (`additions-F1`). A figure met exactly
/// passes with a word (`additions-F2`): the sources print it both ways.
///
/// # Errors
/// No sample, or percentages that cannot be.
pub fn check_mince(
    limits: &Limits,
    rows: &Rows,
    kind: MinceKind,
    samples: &[Sample],
) -> Result<Vec<Finding>> {
    let average = daily_average(samples)?;
    let mut found = Vec::new();
    for limit in limits.kinds.iter().filter(|limit| limit.kind == kind) {
        for (is_fat, bound, percent) in [
            (true, &limit.fat, average.fat),
            (false, &limit.collagen, average.collagen),
        ] {
            let most = bound.value;
            if !bound.allows(percent.number()) {
                let says = match is_fat {
                    true => MinceSays::Fat {
                        percent,
                        kind,
                        most,
                    },
                    false => MinceSays::Collagen {
                        percent,
                        kind,
                        most,
                    },
                };
                found.push(Finding::against(rows, &bound.row, says));
            } else if percent.number() == most {
                let says = match is_fat {
                    true => MinceSays::FatEdge { percent },
                    false => MinceSays::CollagenEdge { percent },
                };
                let rows = [limits.edge.clone(), bound.row.clone()];
                found.push(Finding::note(says, rows));
            }
        }
    }
    Ok(found)
}

/// What stands against calling it minced meat: salt, or a second freezing (`additions-F3`).
///
/// # Errors
/// A percentage that cannot be.
pub fn check_mince_making(
    limits: &Limits,
    rows: &Rows,
    salt: Percent,
    thawed: bool,
    frozen_again: bool,
) -> Result<Vec<Finding>> {
    let mut found = Vec::new();
    let under = &limits.salt_under;
    if percent("salt", salt)? >= under.value {
        let Bound { row, value, .. } = under;
        let says = MinceSays::Salt {
            salt,
            under: *value,
        };
        found.push(Finding::against(rows, row, says));
    }
    if thawed && frozen_again {
        let row = &limits.not_refrozen;
        found.push(Finding::against(rows, row, MinceSays::Refrozen));
    }
    Ok(found)
}

/// A word where meat as an ingredient is over its limits: the excess is not meat but is listed as
/// fat or connective tissue (`additions-F5`).
///
/// # Errors
/// Percentages that cannot be.
pub fn check_meat(limits: &Limits, kind: MeatKind, sample: Sample) -> Result<Vec<Finding>> {
    let average = daily_average(&[sample])?;
    let mut found = Vec::new();
    for limit in limits.meat.iter().filter(|limit| limit.kind == kind) {
        let (percent, most) = (average.fat, limit.fat.value);
        if !limit.fat.allows(percent.number()) {
            let says = MinceSays::MeatFat { percent, most };
            found.push(Finding::note(says, [limit.fat.row.clone()]));
        }
        let (percent, most) = (average.collagen, limit.collagen.value);
        if !limit.collagen.allows(percent.number()) {
            let says = MinceSays::MeatTissue { percent, most };
            found.push(Finding::note(says, [limit.collagen.row.clone()]));
        }
    }
    Ok(found)
}

/// Collagen from hydroxyproline, both in percent.
///
/// # Errors
/// More than can be.
pub fn collagen(limits: &Limits, hydroxyproline: Percent) -> Result<Percent> {
    let number = percent("hydroxyproline", hydroxyproline)?;
    let collagen = Percent::new(number * limits.collagen_factor);
    percent("hydroxyproline", collagen)?;
    Ok(collagen)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_day_without_samples_is_refused() {
        assert!(daily_average(&[]).is_err());
    }

    proptest! {
        #[test]
        fn the_average_lies_between_the_samples(fats in proptest::collection::vec(1u32..100, 1..8)) {
            let samples: Vec<Sample> = fats
                .iter()
                .map(|&fat| Sample { fat: Percent::new(fat), collagen: Percent::new(10) })
                .collect();
            let average = daily_average(&samples).unwrap().fat;
            let (least, most) = (fats.iter().min().unwrap(), fats.iter().max().unwrap());
            prop_assert!(Percent::new(*least) <= average && average <= Percent::new(*most));
        }
    }
}
