//! A table to be filled in by hand: ruled rows under heads.

use crate::facts::Facts;
use crate::length::{Area, Length};
use crate::placed::Placed;
use crate::refusal::Refusal;
use crate::template::Table;
use crate::text::{STEPS, read_all};

/// Thickness of the lines.
const LINE: Length = Length::from_um(250);
/// White between two columns.
const PAD: Length = Length::from_um(600);

/// Draws the table; the head of a column is as large as fits into it.
pub(crate) fn fill(table: &Table, facts: &Facts) -> Result<Vec<Placed>, Refusal> {
    let area = table.area;
    let pitch = area.h / (table.rows + 1);
    let mut placed = Vec::new();
    for row in 0..=table.rows + 1 {
        let y = area.y + (area.h - LINE) * row / (table.rows + 1);
        let mut x = area.x;
        for column in &table.columns {
            // The lines of one column end before those of the next: so the columns can be told apart.
            let w = column.w - PAD;
            placed.push(Placed::Rule(Area { x, y, w, h: LINE }));
            x += column.w;
        }
    }
    let heads: Vec<_> = table
        .columns
        .iter()
        .map(|column| column.head.clone())
        .collect();
    let texts = read_all(&heads, facts, false)?;
    let mut set = Vec::new();
    for (column, text) in table.columns.iter().zip(&texts) {
        let room = column.w - PAD;
        let fits = |step: &i64| text.width(text.words(), text.size(*step)) <= room;
        let step = (0..=STEPS).rev().find(fits);
        let step = step.ok_or_else(|| Refusal::TooWide {
            field: text.style.field,
            text: text.whole(),
            needed: text.width(text.words(), text.size(0)),
            had: room,
        })?;
        set.push((text, text.size(step)));
    }
    // All heads stand on one line.
    let above = set.iter().map(|(text, size)| text.above(*size)).max();
    let below = set.iter().map(|(text, size)| text.below(*size)).max();
    let (above, below) = (above.unwrap_or_default(), below.unwrap_or_default());
    let needed = above + below + LINE;
    if let Some((text, _)) = set.first().filter(|_| needed > pitch) {
        return Err(Refusal::TooTall {
            field: text.style.field,
            text: text.whole(),
            needed,
            had: pitch,
        });
    }
    let baseline = area.y + LINE + (pitch - LINE - above - below) / 2 + above;
    let mut x = area.x;
    for (column, (text, size)) in table.columns.iter().zip(&set) {
        placed.extend(text.placed(text.words(), x, baseline, *size));
        x += column.w;
    }
    Ok(placed)
}
