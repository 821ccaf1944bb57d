//! How a lot is divided into packs when it is made or received.

use super::draw::weight;
use super::says::StepSays;
use crate::grams::Grams;
use crate::limits::MOST_PACKS;
use crate::refusal::{Refusal, Result};

/// How a lot is divided into packs at its birth.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Packing {
    /// One pack.
    One,
    /// So many packs of even weight.
    Count(u32),
    /// Packs of these weights.
    Weighed(Vec<Grams>),
}

impl Packing {
    /// The packs' weights, which sum to `grams`.
    ///
    /// # Errors
    /// Too many packs, none, an empty one, or weights that do not sum to the lot's.
    pub fn packs(&self, grams: Grams, field: &str) -> Result<Vec<Grams>> {
        match self {
            Packing::One => Ok(vec![grams]),
            Packing::Count(count) => {
                let at = format!("{field}pack_count");
                pack_count(i64::from(*count), &at)?;
                if i64::from(*count) > grams.milligrams() {
                    let packs = *count;
                    return Err(Refusal::cannot_be(
                        at,
                        StepSays::CannotFill { grams, packs },
                    ));
                }
                Ok(grams.split(*count))
            }
            Packing::Weighed(packs) => {
                let at = format!("{field}pack_grams");
                pack_count(packs.len() as i64, &at)?;
                for (nth, pack) in packs.iter().enumerate() {
                    weight(*pack, &format!("{at}[{nth}]"))?;
                }
                let sum: Grams = packs.iter().copied().sum();
                if sum != grams {
                    let lot = grams;
                    return Err(Refusal::cannot_be(at, StepSays::PacksSum { sum, lot }));
                }
                Ok(packs.clone())
            }
        }
    }
}

fn pack_count(count: i64, field: &str) -> Result<()> {
    if (1..=i64::from(MOST_PACKS)).contains(&count) {
        return Ok(());
    }
    let (most, packs) = (MOST_PACKS, count);
    Err(Refusal::cannot_be(
        field,
        StepSays::PackCount { most, packs },
    ))
}
