//! What still counts as meat in an ingredient list, and what is minced meat (`additions-F3`, `F5`).

use super::says::StatementSays;
use super::{StatementRules, UpTo};
use crate::measure::Percent;
use crate::refusal::{Refusal, Result};
use crate::rows::{Bound, Finding, RowId, Rows};
use crate::words::Species;

/// The most fat and connective tissue that the word meat covers.
#[derive(Debug, Clone, PartialEq)]
pub struct MeatLimit {
    /// The animals; none for all others.
    pub species: Vec<Species>,
    /// Fat, in percent.
    pub fat: Bound,
    /// Collagen to meat protein, in percent.
    pub connective: Bound,
}

/// Salt up to this percentage, the number itself not, is still minced meat.
#[derive(Debug, Clone, PartialEq)]
pub struct MinceRules {
    /// Where it comes from.
    pub row: RowId,
    /// The salt.
    pub salt: UpTo,
}

/// How much of the fat and of the connective tissue is more than the word meat covers.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Excess {
    /// Listed as fat.
    pub fat: Percent,
    /// Listed as connective tissue: the points above the limit of collagen to meat protein.
    pub connective: Percent,
    /// Where it comes from.
    pub row: RowId,
}

/// The excess of fat and connective tissue in meat of an animal; `None` where the place has no rule.
///
/// # Errors
/// A percentage that cannot be.
pub fn meat_excess(
    rules: &StatementRules,
    species: Species,
    fat: Percent,
    connective: Percent,
) -> Result<Option<Excess>> {
    for (field, percent) in [("fat", fat), ("connective", connective)] {
        let number = percent.number();
        if number.is_sign_negative() || number > rust_decimal::Decimal::ONE_HUNDRED {
            let detail = StatementSays::PercentCannotBe { percent };
            return Err(Refusal::cannot_be(field, detail));
        }
    }
    let of = |limit: &&MeatLimit| limit.species.contains(&species);
    let others = || rules.meat.iter().find(|limit| limit.species.is_empty());
    let Some(limit) = rules.meat.iter().find(of).or_else(others) else {
        return Ok(None);
    };
    let above = |percent: Percent, bound: &Bound| {
        Percent::new((percent.number() - bound.value).max(rust_decimal::Decimal::ZERO))
    };
    Ok(Some(Excess {
        fat: above(fat, &limit.fat),
        connective: above(connective, &limit.connective),
        row: limit.fat.row.clone(),
    }))
}

/// Is meat with so much salt no longer minced meat?
pub fn check_mince(rules: &StatementRules, rows: &Rows, salt: Percent) -> Option<Finding> {
    let law = rules.mince.as_ref()?;
    (!law.salt.passes(salt.number())).then(|| {
        let says = StatementSays::NotMinced {
            salt,
            most: Percent::new(law.salt.bound.value),
        };
        Finding::against(rows, &law.row, says)
    })
}
