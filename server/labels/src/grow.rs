//! The largest letters that fit, by halving; then the widest gaps at that size.

use crate::length::Length;
use crate::placed::Placed;
use crate::refusal::Refusal;
use crate::text::{STEPS, Text};

/// Widest gap between texts, in quarters of the gap as given; gaps grow with the letters.
const WIDEST: i64 = 10;

/// The gap that goes with the smallest letters: as given.
pub(crate) const SMALLEST_GAP: i64 = 4;

/// So many times the room that is left must be less than what the texts take, for paper to be tight.
const TIGHT: i64 = 32;

/// One try at setting texts one under the other.
pub(crate) struct Try {
    /// What stands there; nothing where it was only measured.
    pub placed: Vec<Placed>,
    /// How much height each text took.
    pub heights: Vec<Length>,
    pub bottom: Length,
}

/// Sets by `attempt(step, gap, draws)` as large as stays above `limit`: measured until that is found, and drawn once.
///
/// # Errors
/// What the smallest letters are refused for; the caller says it where they are too tall.
pub(crate) fn largest(
    limit: Length,
    attempt: impl Fn(i64, i64, bool) -> Result<Try, Refusal>,
    too_tall: impl FnOnce(&Try) -> Refusal,
) -> Result<Vec<Placed>, Refusal> {
    let fits = |step, gap| attempt(step, gap, false).is_ok_and(|done| done.bottom <= limit);
    let gap = |step| SMALLEST_GAP + (WIDEST - SMALLEST_GAP) * step / STEPS;
    let smallest = attempt(0, gap(0), false)?;
    if smallest.bottom > limit {
        return Err(too_tall(&smallest));
    }
    // On paper that is cut to the words hardly anything is left to grow into: then the first step is tried first.
    let taken: Length = smallest.heights.iter().copied().sum();
    let tight = (limit - smallest.bottom) * TIGHT < taken;
    let next = |good: i64, bad: i64| match tight {
        true => good + 1,
        false => (good + bad) / 2,
    };
    let (mut good, mut bad) = (0, STEPS + 1);
    while bad - good > 1 {
        let middle = next(good, bad);
        match fits(middle, gap(middle)) {
            true => good = middle,
            false => bad = middle,
        }
    }
    let (mut close, mut wide) = (gap(good), WIDEST + 1);
    while wide - close > 1 {
        let middle = next(close, wide);
        match fits(good, middle) {
            true => close = middle,
            false => wide = middle,
        }
    }
    attempt(good, close, true).map(|done| done.placed)
}

/// The refusal of texts that together are taller than their place.
pub(crate) fn too_tall(texts: &[Text<'_>], smallest: &Try, top: Length, had: Length) -> Refusal {
    let tallest = texts
        .iter()
        .zip(&smallest.heights)
        .max_by_key(|(_, height)| **height);
    let (field, text) = tallest.map_or((crate::Field::Name, String::new()), |(text, _)| {
        (text.style.field, text.whole())
    });
    Refusal::TooTall {
        field,
        text,
        needed: smallest.bottom - top,
        had,
    }
}
