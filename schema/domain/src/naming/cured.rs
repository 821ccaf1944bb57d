//! A name that says cured, against what went in: where a place says how much of nitrite and nitrate the word stands for.

use super::{NameFacts, NamingSays};
use crate::cure::When;
use crate::duties::names::{says, words_of};
use crate::law::Law;
use crate::rows::{Finding, Gravity};

/// What says that it is cured, not only salted. Common practice, no source.
const CURED: [&str; 9] = [
    "cured",
    "salaisonné",
    "salaisonnée",
    "salaisonnés",
    "salaisonnées",
    "saumuré",
    "saumurée",
    "saumurés",
    "saumurées",
];

/// What stands against the word. The text that was read is a proposal: it is only said.
pub fn check(facts: &NameFacts<'_>, law: &Law) -> Option<Finding> {
    let ppm = facts.cured_with?;
    let mut names = facts.product.label_names().values();
    names.find(|name| {
        let words = words_of(name);
        CURED.iter().any(|word| says(&words, word))
    })?;
    let mut limits = law.cures.limits.iter();
    let least = limits.find(|limit| limit.when == When::CalledCured && ppm < limit.bound.value)?;
    let says = NamingSays::CalledCured {
        ppm: ppm.round_dp(2),
        least: least.bound.value,
    };
    Some(Finding::new(Gravity::Warn, says, [least.bound.row.clone()]))
}
