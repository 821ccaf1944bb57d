//! Two languages side by side: one size for both, and the border where both come out as tall.

use crate::facts::Facts;
use crate::grow::{Try, largest, too_tall};
use crate::length::Length;
use crate::placed::Placed;
use crate::refusal::Refusal;
use crate::stack::{Column, set};
use crate::template::{Align, Columns, TextStyle};
use crate::text::{Text, read_all};

/// Where the border may stand, in hundredths of the width: neither language is squeezed.
const BORDER: std::ops::RangeInclusive<i64> = 34..=66;

/// Sets both columns. Where one language says nothing the other has the whole width.
pub(crate) fn fill(columns: &Columns, facts: &Facts) -> Result<Vec<Placed>, Refusal> {
    let left = read_all(&columns.left, facts, true)?;
    let right = read_all(&columns.right, facts, true)?;
    let area = columns.area;
    largest(
        area.bottom(),
        |step, gap, draws| both(columns, (&left, &right), step, gap, draws),
        |smallest| match left.len() {
            0 => too_tall(&right, smallest, area.y, area.h),
            _ => too_tall(&left, smallest, area.y, area.h),
        },
    )
}

/// Both columns at one step, with the border where the taller of them is lowest.
fn both(
    columns: &Columns,
    (left, right): (&[Text<'_>], &[Text<'_>]),
    step: i64,
    gap: i64,
    draws: bool,
) -> Result<Try, Refusal> {
    let area = columns.area;
    let column = |x: Length, w: Length, draws: bool| Column {
        x,
        w,
        notch: None,
        align: Align::Left,
        draws,
    };
    let whole = column(area.x, area.w, draws);
    if let (texts, []) | ([], texts) = (left, right) {
        return set(&whole, texts, step, gap, area.y);
    }
    let at = |hundredths: i64, draws: bool| {
        let first = (area.w - columns.gap) * hundredths / 100;
        let left = set(&column(area.x, first, draws), left, step, gap, area.y)?;
        let start = area.x + first + columns.gap;
        let rest = column(start, area.right() - start, draws);
        let right = set(&rest, right, step, gap, area.y)?;
        Ok((left.bottom.max(right.bottom), left, right))
    };
    // The taller column gets more room until it is no longer the taller one; so does the one with a
    // word that is too wide.
    let (mut low, mut high) = (*BORDER.start(), *BORDER.end());
    let mut best: Result<(Length, i64), Option<Refusal>> = Err(None);
    while low <= high {
        let middle = (low + high) / 2;
        let left_wants_more = match at(middle, false) {
            Ok((bottom, left, right)) => {
                let taller = left.bottom > right.bottom;
                if best.as_ref().map_or(true, |(known, _)| bottom < *known) {
                    best = Ok((bottom, middle));
                }
                taller
            }
            Err(refusal) => {
                let of_left = |style: &TextStyle| Some(style.field) == field(&refusal);
                let wants = columns.left.iter().any(of_left);
                if best.is_err() {
                    best = Err(Some(refusal));
                }
                wants
            }
        };
        match left_wants_more {
            true => low = middle + 1,
            false => high = middle - 1,
        }
    }
    match best {
        Ok((_, border)) => {
            let (bottom, mut left, right) = at(border, draws)?;
            left.placed.extend(right.placed);
            left.heights.extend(right.heights);
            left.bottom = bottom;
            Ok(left)
        }
        Err(Some(refusal)) => Err(refusal),
        Err(None) => set(&whole, left, step, gap, area.y),
    }
}

fn field(refusal: &Refusal) -> Option<crate::Field> {
    match refusal {
        Refusal::TooWide { field, .. } | Refusal::TooManyLines { field, .. } => Some(*field),
        _ => None,
    }
}
