//! Sets texts one under the other: wraps at spaces, shrinks all alike, refuses rather than cuts.

use crate::face::Face;
use crate::facts::{Facts, Field};
use crate::length::{Area, Length};
use crate::placed::{Line, Placed};
use crate::refusal::Refusal;
use crate::template::{Align, Stack, TextStyle};

/// Steps from the smallest to the largest height of every text in a stack.
const STEPS: i64 = 16;

/// Widest gap between texts, in quarters of the gap as given; gaps grow with the letters.
const WIDEST: i64 = 10;

/// Distance of baselines in hundredths of the size: as in a book, unless the ink reaches farther,
/// and closer when nothing hangs below the line. Common practice, no source.
const PITCH: i64 = 112;
/// White between the ink of two lines, least and most.
const LEADING: (i64, i64) = (4, 18);

/// A text ready to be set: its words and their widths in font units.
struct Text<'a> {
    style: &'a TextStyle,
    boxed: bool,
    face: &'static Face,
    words: Vec<(String, i64)>,
    space: i64,
    above: i64,
    below: i64,
}

/// One try at setting the whole stack.
struct Try {
    placed: Vec<Placed>,
    heights: Vec<Length>,
    bottom: Length,
}

/// Sets every text of the facts that the stack names. A day keeps its month on the same line if
/// that can be had.
pub(crate) fn fill(stack: &Stack, facts: &Facts) -> Result<Vec<Placed>, Refusal> {
    let read = |glue: bool| {
        let mut texts = Vec::new();
        for style in &stack.texts {
            match facts.text(style.field) {
                Some(text) => texts.push(Text::read(style, text, glue)?),
                None if style.required => return Err(Refusal::Missing { field: style.field }),
                None => {}
            }
        }
        Ok(texts)
    };
    largest(stack, &read(true)?).or_else(|_| largest(stack, &read(false)?))
}

/// The texts as large as fits.
fn largest(stack: &Stack, texts: &[Text<'_>]) -> Result<Vec<Placed>, Refusal> {
    let fits = |step, gap| {
        let done = set(stack, texts, step, gap).ok()?;
        (done.bottom <= stack.area.bottom()).then_some(done)
    };
    let gap = |step| 4 + (WIDEST - 4) * step / STEPS;
    let smallest = set(stack, texts, 0, gap(0))?;
    if smallest.bottom > stack.area.bottom() {
        return Err(too_tall(stack, texts, &smallest));
    }
    // The largest step that fits, by halving; then the widest gaps at that step.
    let (mut good, mut bad, mut best) = (0, STEPS + 1, smallest);
    while bad - good > 1 {
        let middle = (good + bad) / 2;
        match fits(middle, gap(middle)) {
            Some(done) => (good, best) = (middle, done),
            None => bad = middle,
        }
    }
    let roomier = (gap(good) + 1..=WIDEST)
        .rev()
        .find_map(|gap| fits(good, gap));
    Ok(roomier.unwrap_or(best).placed)
}

/// Whether two words of a date belong on one line: 26 JUN.
fn day_and_month(day: &str, month: &str) -> bool {
    day.bytes().all(|b| b.is_ascii_digit()) && month.chars().all(|c| !c.is_ascii_digit())
}

impl<'a> Text<'a> {
    fn read(style: &'a TextStyle, text: &str, glue: bool) -> Result<Text<'a>, Refusal> {
        let upper = style.upper.then(|| text.to_uppercase());
        let text = upper.as_deref().unwrap_or(text);
        let face = style.weight.face();
        // A no-break space is part of its word; every other space or line end may break.
        let breaks = |c: char| c.is_ascii_whitespace();
        let words = text.split(breaks).filter(|word| !word.is_empty());
        let dated = matches!(style.field, Field::UseBy | Field::SecondUseBy);
        let mut measured: Vec<(String, i64)> = Vec::new();
        for word in words {
            if let Some(character) = face.lacks(word) {
                return Err(Refusal::Character {
                    field: style.field,
                    character,
                });
            }
            match measured.last_mut() {
                Some(last) if glue && dated && day_and_month(&last.0, word) => {
                    last.0 = format!("{} {word}", last.0);
                    last.1 = face.units(&last.0);
                }
                _ => measured.push((word.to_owned(), face.units(word))),
            }
        }
        let reach = face.reach(text);
        let space = face.units(" ");
        Ok(Text {
            style,
            boxed: style.boxed.holds(text),
            face,
            words: measured,
            space,
            above: reach.above,
            below: reach.below,
        })
    }

    fn whole(&self) -> String {
        self.words
            .iter()
            .map(|word| word.0.as_str())
            .collect::<Vec<_>>()
            .join(" ")
    }

    fn size(&self, step: i64) -> Length {
        let style = self.style;
        let height = style.min + (style.max - style.min) * step / STEPS;
        self.face.size_for(height, style.measure)
    }

    /// From one baseline to the next.
    fn pitch(&self, size: Length) -> Length {
        let ink = self.face.scale(self.above + self.below, size);
        let (tight, loose) = (ink + size * LEADING.0 / 100, ink + size * LEADING.1 / 100);
        tight.max(loose.min(size * PITCH / 100))
    }

    /// Width of the text on one line.
    fn one_line(&self, size: Length) -> Length {
        let gaps = self.space * (self.words.len() as i64 - 1);
        self.face.scale(
            self.words.iter().map(|word| word.1).sum::<i64>() + gaps,
            size,
        )
    }

    fn line(&self, words: &[(String, i64)], x: Length, baseline: Length, size: Length) -> Line {
        let text = words
            .iter()
            .map(|word| word.0.as_str())
            .collect::<Vec<_>>()
            .join(" ");
        let units = words.iter().map(|word| word.1).sum::<i64>();
        let width = self
            .face
            .scale(units + self.space * (words.len() as i64 - 1), size);
        let (field, weight) = (self.style.field, self.style.weight);
        Line {
            field,
            x,
            baseline,
            size,
            width,
            weight,
            text,
        }
    }

    /// White between a boxed text and its box, and the thickness of the box.
    fn frame(&self, size: Length) -> (Length, Length) {
        if self.boxed {
            (size / 5, size / 12)
        } else {
            (Length::ZERO, Length::ZERO)
        }
    }
}

/// Sets the stack at one step, however far down it reaches.
fn set(stack: &Stack, texts: &[Text<'_>], step: i64, gap: i64) -> Result<Try, Refusal> {
    let mut out = Try {
        placed: Vec::new(),
        heights: Vec::new(),
        bottom: stack.area.y,
    };
    let mut i = 0;
    while let Some(text) = texts.get(i) {
        let before = if i == 0 {
            Length::ZERO
        } else {
            text.style.gap * gap / 4
        };
        let top = out.bottom + before;
        let next = texts.get(i + 1).filter(|next| next.style.beside);
        let row = next.and_then(|next| set_row(stack, text, next, step, top));
        let (bottom, placed, used) = match row {
            Some((bottom, placed)) => (bottom, placed, 2),
            None => {
                let (bottom, placed) = set_text(stack, text, step, top)?;
                (bottom, placed, 1)
            }
        };
        out.heights.extend(std::iter::repeat_n(bottom - top, used));
        out.placed.extend(placed);
        out.bottom = bottom;
        i += used;
    }
    Ok(out)
}

/// The width there is for a line between two heights.
fn room(stack: &Stack, top: Length, bottom: Length) -> Length {
    match stack.notch {
        Some(notch) if top < notch.bottom() && notch.y < bottom => stack.area.w - notch.w,
        _ => stack.area.w,
    }
}

/// Two short texts on one line, left and right; nothing if they do not fit so.
fn set_row(
    stack: &Stack,
    left: &Text<'_>,
    right: &Text<'_>,
    step: i64,
    top: Length,
) -> Option<(Length, Vec<Placed>)> {
    let part = |text: &Text<'_>| {
        let size = text.size(step);
        let (pad, rule) = text.frame(size);
        let (above, below) = (
            text.face.scale(text.above, size),
            text.face.scale(text.below, size),
        );
        (
            size,
            pad + rule,
            above + pad + rule,
            below + pad + rule,
            text.one_line(size),
        )
    };
    let (size_l, frame_l, above_l, below_l, width_l) = part(left);
    let (size_r, frame_r, above_r, below_r, width_r) = part(right);
    let baseline = top + above_l.max(above_r);
    let bottom = baseline + below_l.max(below_r);
    let wide = room(stack, top, bottom);
    let (taken_l, taken_r) = (width_l + frame_l * 2, width_r + frame_r * 2);
    if taken_l + taken_r + size_l / 2 > wide {
        return None;
    }
    let x_l = stack.area.x + frame_l;
    let x_r = stack.area.x + wide - taken_r + frame_r;
    let mut placed = framed(left, left.line(&left.words, x_l, baseline, size_l));
    placed.extend(framed(
        right,
        right.line(&right.words, x_r, baseline, size_r),
    ));
    Some((bottom, placed))
}

/// One text, wrapped.
fn set_text(
    stack: &Stack,
    text: &Text<'_>,
    step: i64,
    top: Length,
) -> Result<(Length, Vec<Placed>), Refusal> {
    let size = text.size(step);
    let (pad, rule) = text.frame(size);
    let frame = pad + rule;
    let (above, below) = (
        text.face.scale(text.above, size),
        text.face.scale(text.below, size),
    );
    let pitch = text.pitch(size);
    let mut baseline = top + frame + above;
    let mut placed = Vec::new();
    let mut rest = text.words.as_slice();
    let mut lines = 0;
    while !rest.is_empty() {
        let wide = room(stack, baseline - above - frame, baseline + below + frame) - frame * 2;
        let count = words_that_fit(text, rest, size, wide);
        if count == 0 {
            let needed = text.face.scale(rest[0].1, size);
            let (field, text) = (text.style.field, rest[0].0.clone());
            return Err(Refusal::TooWide {
                field,
                text,
                needed,
                had: wide,
            });
        }
        let mut line = text.line(&rest[..count], stack.area.x + frame, baseline, size);
        line.x += match stack.align {
            Align::Left => Length::ZERO,
            Align::Centre => (wide - line.width) / 2,
            Align::Right => wide - line.width,
        };
        placed.extend(framed(text, line));
        rest = &rest[count..];
        lines += 1;
        baseline += pitch;
    }
    let allowed = if text.boxed {
        Some(1)
    } else {
        text.style.max_lines
    };
    if let Some(had) = allowed.filter(|had| lines > *had) {
        let (field, text) = (text.style.field, text.whole());
        return Err(Refusal::TooManyLines {
            field,
            text,
            needed: lines,
            had,
        });
    }
    Ok((baseline - pitch + below + frame, placed))
}

fn words_that_fit(text: &Text<'_>, words: &[(String, i64)], size: Length, wide: Length) -> usize {
    let mut units = 0;
    for (i, word) in words.iter().enumerate() {
        units += word.1 + if i == 0 { 0 } else { text.space };
        if text.face.scale(units, size) > wide {
            return i;
        }
    }
    words.len()
}

/// The line, and the four sides of its box if it has one.
fn framed(text: &Text<'_>, line: Line) -> Vec<Placed> {
    let (pad, rule) = text.frame(line.size);
    if rule == Length::ZERO {
        return vec![Placed::Text(line)];
    }
    let ink = line.bounds();
    let (x, y) = (
        ink.x - pad - rule,
        line.baseline - text.face.scale(text.above, line.size) - pad - rule,
    );
    let below = text.face.scale(text.below, line.size);
    let (right, bottom) = (ink.right() + pad + rule, line.baseline + below + pad + rule);
    let side = |x, y, w, h| Placed::Rule(Area { x, y, w, h });
    let tall = bottom - y - rule * 2;
    vec![
        Placed::Text(line),
        side(x, y, right - x, rule),
        side(x, bottom - rule, right - x, rule),
        side(x, y + rule, rule, tall),
        side(right - rule, y + rule, rule, tall),
    ]
}

fn too_tall(stack: &Stack, texts: &[Text<'_>], smallest: &Try) -> Refusal {
    let tallest = texts
        .iter()
        .zip(&smallest.heights)
        .max_by_key(|(_, height)| **height);
    let (field, text) = tallest.map_or((Field::Name, String::new()), |(text, _)| {
        (text.style.field, text.whole())
    });
    Refusal::TooTall {
        field,
        text,
        needed: smallest.bottom - stack.area.y,
        had: stack.area.h,
    }
}
