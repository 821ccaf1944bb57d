//! Meat protein in solid cuts to which water or additives were added.

use super::measured;
use super::standards_say::MinceSays;
use crate::measure::Percent;
use crate::refusal::Result;
use crate::rows::{Bound, Finding, RowId, Rows};

/// The least of a place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LeastMeatProtein {
    /// Cooked, in percent.
    pub cooked: Bound,
    /// Raw, in percent.
    pub raw: Bound,
    /// Products that it does not reach, in lower case.
    pub not_for: Vec<String>,
    /// A solid cut: the whole, or so much of its weight in pieces of the weight below; in percent.
    pub solid_part: Bound,
    /// Grams that a piece weighs at least.
    pub solid_piece: Bound,
    /// Where the solid cut stands.
    pub solid_row: RowId,
}

impl LeastMeatProtein {
    /// Does it reach food of that name?
    pub fn is_for(&self, name: &str) -> bool {
        let words = super::names::words_of(name);
        let free = |name: &String| super::names::says(&words, name);
        !self.not_for.iter().any(free)
    }

    pub(super) fn bounds_mut(&mut self) -> Vec<&mut Bound> {
        vec![
            &mut self.cooked,
            &mut self.raw,
            &mut self.solid_part,
            &mut self.solid_piece,
        ]
    }
}

/// What stands against selling it (`canada-eu-uk-4.13`).
///
/// # Errors
/// A percentage that cannot be.
pub fn check_meat_protein(
    least: &LeastMeatProtein,
    rows: &Rows,
    name: &str,
    cooked: bool,
    protein: Percent,
) -> Result<Option<Finding>> {
    let number = measured("protein", protein)?;
    let bound = if cooked { &least.cooked } else { &least.raw };
    if bound.allows(number) || !least.is_for(name) {
        return Ok(None);
    }
    let least = bound.value;
    let says = MinceSays::MeatProtein { protein, least };
    Ok(Some(Finding::against(rows, &bound.row, says)))
}

/// Is it a solid cut? `in_big_pieces` is the part of the weight in pieces of at least the weight
/// that the rule names (`canada-eu-uk-4.14`).
///
/// # Errors
/// A percentage that cannot be.
pub fn is_solid_cut(least: &LeastMeatProtein, whole: bool, in_big_pieces: Percent) -> Result<bool> {
    let part = super::percent("in_big_pieces", in_big_pieces)?;
    Ok(whole || least.solid_part.allows(part))
}
