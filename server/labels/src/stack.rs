//! Sets texts one under the other: wraps at spaces, shrinks all alike, refuses rather than cuts.

use crate::facts::Facts;
use crate::grow::{SMALLEST_GAP, Try, largest, too_tall};
use crate::length::{Area, Length};
use crate::picture;
use crate::placed::Placed;
use crate::refusal::Refusal;
use crate::template::{Align, Stack};
use crate::text::{Frame, Text, framed, read_all};
use std::cell::OnceCell;

/// White between the frame of a panel and its words, and the thickness of the frame.
const PANEL: (Length, Length) = (Length::from_um(600), Length::from_um(350));

/// The paper that lines may take.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Column {
    pub x: Length,
    pub w: Length,
    pub notch: Option<Area>,
    pub align: Align,
    /// Are lines put down, or only measured?
    pub draws: bool,
}

impl Column {
    fn of(stack: &Stack) -> Column {
        Column {
            x: stack.area.x,
            w: stack.area.w,
            notch: stack.notch,
            align: stack.align,
            draws: false,
        }
    }

    /// The same, to be drawn on.
    fn drawn(self, draws: bool) -> Column {
        Column { draws, ..self }
    }

    /// The width there is for a line between two heights.
    fn wide(&self, top: Length, bottom: Length) -> Length {
        match self.notch {
            Some(notch) if top < notch.bottom() && notch.y < bottom => self.w - notch.w,
            _ => self.w,
        }
    }

    /// The inside of a panel from one height to another: as narrow as the notch makes it, throughout.
    fn panel(&self, top: Length, bottom: Length) -> Column {
        let wide = self.wide(top, bottom);
        let inset = PANEL.0 + PANEL.1;
        Column {
            x: self.x + inset,
            w: wide - inset * 2,
            notch: None,
            align: Align::Left,
            draws: self.draws,
        }
    }
}

/// Sets every text of the facts that the stack names. A day keeps its month on the same line if
/// that can be had; a text that may be dropped goes before the label is refused.
pub(crate) fn fill(stack: &Stack, facts: &Facts) -> Result<Vec<Placed>, Refusal> {
    let column = Column::of(stack);
    let grown = |texts: &[Text<'_>]| {
        largest(
            stack.area.bottom(),
            |step, gap, draws| set(&column.drawn(draws), texts, step, gap, stack.area.y),
            |smallest| too_tall(texts, smallest, stack.area.y, stack.area.h),
        )
    };
    let refused = match grown(&read_all(&stack.texts, facts, true)?) {
        Ok(placed) => return Ok(placed),
        Err(refused) => refused,
    };
    let mut texts = read_all(&stack.texts, facts, false)?;
    loop {
        if let Ok(placed) = grown(&texts) {
            return Ok(placed);
        }
        match texts.iter().rposition(|text| text.style.may_drop) {
            Some(last) => drop(texts.remove(last)),
            None => return Err(refused),
        }
    }
}

/// The texts of a stack, read once to be set again and again.
pub(crate) struct Reading<'a> {
    /// A day with its month on one line.
    glued: Vec<Text<'a>>,
    /// The same with the two apart, where that is needed.
    loose: OnceCell<Vec<Text<'a>>>,
    stack: &'a Stack,
    facts: &'a Facts,
}

impl<'a> Reading<'a> {
    /// Nothing where the texts cannot be read.
    pub fn of(stack: &'a Stack, facts: &'a Facts) -> Option<Reading<'a>> {
        Some(Reading {
            glued: read_all(&stack.texts, facts, true).ok()?,
            loose: OnceCell::new(),
            stack,
            facts,
        })
    }

    /// How far down they reach in their smallest letters round a notch; nothing where they cannot be set.
    pub fn least(&self, notch: Option<Area>) -> Option<Length> {
        let column = Column {
            notch,
            ..Column::of(self.stack)
        };
        let bottom = |texts: &[Text<'_>]| {
            let done = set(&column, texts, 0, SMALLEST_GAP, self.stack.area.y);
            done.ok().map(|done| done.bottom)
        };
        bottom(&self.glued).or_else(|| {
            let read = || read_all(&self.stack.texts, self.facts, false).unwrap_or_default();
            bottom(self.loose.get_or_init(read))
        })
    }
}

/// Sets texts at one step, however far down they reach.
pub(crate) fn set(
    column: &Column,
    texts: &[Text<'_>],
    step: i64,
    gap: i64,
    top: Length,
) -> Result<Try, Refusal> {
    let mut out = Try {
        placed: Vec::new(),
        heights: Vec::new(),
        bottom: top,
    };
    let mut i = 0;
    while let Some(text) = texts.get(i) {
        let top = match i {
            0 => out.bottom,
            _ => out.bottom + text.style.gap * gap / 4,
        };
        let next = texts.get(i + 1).filter(|next| next.style.beside);
        let (bottom, used) = if text.style.panel {
            let count = texts[i..]
                .iter()
                .take_while(|text| text.style.panel)
                .count();
            let panel = set_panel(column, &texts[i..i + count], step, gap, top)?;
            out.heights.extend(panel.heights);
            out.placed.extend(panel.placed);
            (panel.bottom, count)
        } else if let Some((bottom, placed)) =
            next.and_then(|next| set_row(column, text, next, step, top))
        {
            out.heights.extend([bottom - top; 2]);
            out.placed.extend(placed);
            (bottom, 2)
        } else {
            let (bottom, placed) = set_text(column, text, step, top)?;
            out.heights.push(bottom - top);
            out.placed.extend(placed);
            (bottom, 1)
        };
        out.bottom = bottom;
        i += used;
    }
    Ok(out)
}

/// Texts that belong together, within one frame: the whole width wide where it ends above the notch.
fn set_panel(
    column: &Column,
    texts: &[Text<'_>],
    step: i64,
    gap: i64,
    top: Length,
) -> Result<Try, Refusal> {
    let above = column.notch.filter(|notch| top < notch.y);
    if let Some(notch) = above {
        let wide = set_within(column.panel(top, notch.y), texts, step, gap, top)?;
        if wide.bottom <= notch.y {
            return Ok(wide);
        }
    }
    // However far down it reaches: it begins beside the notch, above it, or below.
    let reach = column.notch.map_or(top, |notch| top.max(notch.y)) + Length::from_um(1);
    set_within(column.panel(top, reach), texts, step, gap, top)
}

/// A panel with a given inside.
fn set_within(
    inner: Column,
    texts: &[Text<'_>],
    step: i64,
    gap: i64,
    top: Length,
) -> Result<Try, Refusal> {
    let (pad, rule) = PANEL;
    let mut out = Try {
        placed: Vec::new(),
        heights: Vec::new(),
        bottom: top + pad + rule,
    };
    for (i, text) in texts.iter().enumerate() {
        let top = match i {
            0 => out.bottom,
            _ => out.bottom + text.style.gap * gap / 4,
        };
        let (bottom, placed) = set_text(&inner, text, step, top)?;
        out.heights.push(bottom - top);
        out.placed.extend(placed);
        out.bottom = bottom;
    }
    let inside = Area {
        x: inner.x - pad,
        y: top + rule,
        w: inner.w + pad * 2,
        h: out.bottom + pad - top - rule,
    };
    if inner.draws {
        out.placed.extend(framed(inside, rule, Frame::Closed));
    }
    out.bottom = inside.bottom() + rule;
    Ok(out)
}

/// Two short texts on one line, left and right; nothing if they do not fit so.
fn set_row(
    column: &Column,
    left: &Text<'_>,
    right: &Text<'_>,
    step: i64,
    top: Length,
) -> Option<(Length, Vec<Placed>)> {
    let part = |text: &Text<'_>| {
        let size = text.size(step);
        let (pad, rule) = text.padding(size);
        let frame = pad + rule;
        let (above, below) = (text.above(size) + frame, text.below(size) + frame);
        (size, frame, above, below, text.width(text.words(), size))
    };
    let (size_l, frame_l, above_l, below_l, width_l) = part(left);
    let (size_r, frame_r, above_r, below_r, width_r) = part(right);
    let baseline = top + above_l.max(above_r);
    let bottom = baseline + below_l.max(below_r);
    let wide = column.wide(top, bottom);
    let (taken_l, taken_r) = (width_l + frame_l * 2, width_r + frame_r * 2);
    if taken_l + taken_r + size_l / 2 > wide {
        return None;
    }
    if !column.draws {
        return Some((bottom, Vec::new()));
    }
    let x_l = column.x + frame_l;
    let x_r = column.x + wide - taken_r + frame_r;
    let mut placed = left.placed(left.words(), x_l, baseline, size_l);
    placed.extend(right.placed(right.words(), x_r, baseline, size_r));
    Some((bottom, placed))
}

/// One text, wrapped, with its picture at the left if it has one.
fn set_text(
    column: &Column,
    text: &Text<'_>,
    step: i64,
    top: Length,
) -> Result<(Length, Vec<Placed>), Refusal> {
    let Some((picture, side)) = text.style.picture else {
        return set_words(column, text, step, top);
    };
    let taken = side + side / 5;
    let beside = Column {
        x: column.x + taken,
        w: column.w - taken,
        ..*column
    };
    let (bottom, mut placed) = set_words(&beside, text, step, top)?;
    if column.draws {
        let drawn = picture::place(picture, column.x, top, side);
        placed.push(Placed::Picture(drawn));
    }
    Ok((bottom.max(top + side), placed))
}

fn set_words(
    column: &Column,
    text: &Text<'_>,
    step: i64,
    top: Length,
) -> Result<(Length, Vec<Placed>), Refusal> {
    let size = text.size(step);
    let (pad, rule) = text.padding(size);
    let frame = pad + rule;
    let (above, below) = (text.above(size), text.below(size));
    let pitch = text.pitch(size);
    let mut baseline = top + frame + above;
    let mut placed = Vec::new();
    let mut rest = text.words();
    let mut lines = 0;
    while let Some(first) = rest.first() {
        let wide = column.wide(baseline - above - frame, baseline + below + frame) - frame * 2;
        let count = text.fitting(rest, size, wide);
        if count == 0 {
            let (word, needed) = first.with_width(size);
            return Err(Refusal::TooWide {
                field: text.style.field,
                text: word,
                needed,
                had: wide,
            });
        }
        if column.draws {
            let spare = wide - text.width(&rest[..count], size);
            let indent = match column.align {
                Align::Left => Length::ZERO,
                Align::Centre => spare / 2,
                Align::Right => spare,
            };
            let x = column.x + frame + indent;
            placed.extend(text.placed(&rest[..count], x, baseline, size));
        }
        rest = &rest[count..];
        lines += 1;
        baseline += pitch;
    }
    let allowed = match text.frame {
        Frame::None => text.style.max_lines,
        Frame::Closed | Frame::Rails => Some(1),
    };
    if let Some(had) = allowed.filter(|had| lines > *had) {
        return Err(Refusal::TooManyLines {
            field: text.style.field,
            text: text.whole(),
            needed: lines,
            had,
        });
    }
    Ok((baseline - pitch + below + frame, placed))
}
