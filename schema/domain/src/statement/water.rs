//! Water that was added: when the name must say so, and the share of a solution in raw meat.

use super::says::StatementSays;
use super::{Food, StatementRules, UpTo};
use crate::duties::names::{says, words_of};
use crate::grams::Grams;
use crate::ingredients::{Ingredient, Nature};
use crate::measure::Percent;
use crate::refusal::{Refusal, Result};
use crate::rows::{Finding, RowId, Rows};

/// When added water is said.
#[derive(Debug, Clone, PartialEq)]
pub struct WaterRules {
    /// The row.
    pub row: RowId,
    /// Unsaid up to this percentage of the finished food.
    pub unsaid: UpTo,
}

/// Water in a finished food beyond what the place lets go unsaid in its name.
///
/// The water is what is left of the finished weight when all else that went in is taken off; without
/// a finished weight it is what was poured.
pub fn check(rules: &StatementRules, rows: &Rows, food: &Food) -> Option<Finding> {
    let law = rules.water.as_ref().filter(|_| !food.water_goes_unsaid)?;
    let percent = food.water.unwrap_or_else(|| left_of(food));
    (!law.unsaid.passes(percent.number())).then(|| {
        let says = StatementSays::AddedWater {
            percent,
            most: Percent::new(law.unsaid.bound.value),
        };
        Finding::against(rows, &law.row, says)
    })
}

/// Water by the parts.
fn left_of(food: &Food) -> Percent {
    let poured = water_of(&food.parts);
    let dry = food.ingoing() - poured;
    let finished = food.finished.unwrap_or_else(|| food.ingoing());
    let left = (finished - dry).clamp(Grams::ZERO, poured);
    super::list::share(left, finished)
}

/// How a name says that water was added, by language. Common practice, no source.
const WATER: [(&str, &[&str]); 2] = [
    ("en", &["added water", "water added"]),
    ("fr", &["eau ajoutée", "addition d eau", "adjonction d eau"]),
];

/// Does a name in that language say that water was added? Of a language that we have no words of, nobody
/// can say that it does not.
pub fn says_water(name: &str, language: &str) -> bool {
    let known = WATER.iter().any(|(tag, _)| *tag == language);
    let name = words_of(&name.replace(['\'', '’'], " "));
    let mut all = WATER.iter().flat_map(|(_, words)| words.iter());
    !known || all.any(|words| says(&name, words))
}

fn water_of(parts: &[Ingredient]) -> Grams {
    let one = |part: &Ingredient| match part.nature {
        Nature::Water => part.grams,
        _ => water_of(&part.parts),
    };
    parts.iter().map(one).sum()
}

/// The share of a solution in raw meat, of the weight before it went in (`us-F3`).
///
/// # Errors
/// Either weight is missing.
pub fn solution_percent(solution: Grams, raw_meat: Grams) -> Result<Percent> {
    if raw_meat.is_none_left() {
        return Err(Refusal::cannot_be("raw_meat", StatementSays::NoRawMeat));
    }
    if solution.is_none_left() {
        return Err(Refusal::cannot_be("solution", StatementSays::NoSolution));
    }
    Ok(super::list::share(solution, raw_meat))
}
