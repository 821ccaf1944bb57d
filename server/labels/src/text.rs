//! A text ready to be set: its words, measured, and the frame that it stands in.

use crate::face::{Face, Weight};
use crate::facts::{Facts, Field, Readiness};
use crate::length::{Area, Length};
use crate::placed::{Placed, PlacedLine};
use crate::refusal::Refusal;
use crate::template::{Boxed, TextStyle};

/// Steps from the smallest to the largest height of every text in a place.
pub(crate) const STEPS: i64 = 16;

/// Distance of baselines in hundredths of the size: as in a book, unless the ink reaches farther,
/// and closer when nothing hangs below the line. Common practice, no source.
const PITCH: i64 = 112;
/// The same where lines stand close together. Common practice, no source.
const CLOSE: i64 = 102;
/// White between the ink of two lines, least and most.
const LEADING: (i64, i64) = (4, 18);

/// One word and its width in font units.
#[derive(Debug, Clone)]
pub(crate) struct Word {
    text: String,
    units: i64,
    weight: Weight,
}

/// What stands round a text.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Frame {
    None,
    /// A closed box.
    Closed,
    /// A line above and a line below.
    Rails,
}

/// A text ready to be set.
pub(crate) struct Text<'a> {
    pub style: &'a TextStyle,
    pub frame: Frame,
    words: Vec<Word>,
    above: i64,
    below: i64,
}

/// Every text of the facts that the styles name. `glue` keeps a day and its month together.
pub(crate) fn read_all<'a>(
    styles: &'a [TextStyle],
    facts: &Facts,
    glue: bool,
) -> Result<Vec<Text<'a>>, Refusal> {
    let mut texts = Vec::new();
    for style in styles {
        match facts.text(style.field) {
            Some(text) => texts.push(Text::read(style, text, facts.readiness, glue)?),
            None if style.required => return Err(Refusal::Missing { field: style.field }),
            None => {}
        }
    }
    Ok(texts)
}

/// Whether two words of a date belong on one line: 26 JUN.
fn day_and_month(day: &str, month: &str) -> bool {
    day.bytes().all(|b| b.is_ascii_digit()) && month.chars().all(|c| !c.is_ascii_digit())
}

/// In capitals, but for what stands in brackets: `NET WT. 8.8 OZ (250 g)` keeps its gram as the open
/// standard of units writes it.
fn in_upper(text: &str) -> String {
    match text.split_once('(') {
        Some((before, rest)) => format!("{}({rest}", before.to_uppercase()),
        None => text.to_uppercase(),
    }
}

/// A word of capitals only: how an allergen stands out in a list.
fn in_capitals(word: &str) -> bool {
    // French leaves the article before it small: `d’ŒUF` is one heavy word.
    let word = match word.split_once(['\'', '’']) {
        Some((article, word)) if article.chars().count() <= 3 => word,
        _ => word,
    };
    let letters = word.chars().filter(|c| c.is_alphabetic());
    letters.clone().count() > 1 && letters.clone().all(|c| !c.is_lowercase())
}

impl<'a> Text<'a> {
    fn read(
        style: &'a TextStyle,
        text: &str,
        readiness: Option<Readiness>,
        glue: bool,
    ) -> Result<Text<'a>, Refusal> {
        let upper = style.upper.then(|| in_upper(text));
        let text = upper.as_deref().unwrap_or(text);
        // A no-break space is part of its word; every other space or line end may break.
        let breaks = |c: char| c.is_ascii_whitespace();
        let dated = matches!(
            style.field,
            Field::UseBy | Field::UseByShort | Field::SecondUseBy
        );
        let mut words: Vec<Word> = Vec::new();
        let (mut above, mut below) = (0, 0);
        for word in text.split(breaks).filter(|word| !word.is_empty()) {
            let weight = match style.bold_capitals && in_capitals(word) {
                true => Weight::Bold,
                false => style.weight,
            };
            let face = weight.face();
            if let Some(character) = face.lacks(word) {
                let field = style.field;
                return Err(Refusal::Character { field, character });
            }
            let reach = face.reach(word);
            (above, below) = (reach.above.max(above), reach.below.max(below));
            match words.last_mut() {
                Some(last)
                    if glue && (dated && day_and_month(&last.text, word) || last.text == "/") =>
                {
                    last.text = format!("{} {word}", last.text);
                    last.units = face.units(&last.text);
                }
                _ => words.push(Word {
                    text: word.to_owned(),
                    units: face.units(word),
                    weight,
                }),
            }
        }
        let frame = match (style.boxed, readiness) {
            (Boxed::Always, _) | (Boxed::ByReadiness, Some(Readiness::Raw)) => Frame::Closed,
            (Boxed::ByReadiness, Some(Readiness::ReadyToEat)) => Frame::Rails,
            (Boxed::Never, _) | (Boxed::ByReadiness, None) => Frame::None,
        };
        Ok(Text {
            style,
            frame,
            words,
            above,
            below,
        })
    }

    fn face(&self) -> &'static Face {
        self.style.weight.face()
    }

    pub fn words(&self) -> &[Word] {
        &self.words
    }

    pub fn whole(&self) -> String {
        joined(&self.words)
    }

    pub fn size(&self, step: i64) -> Length {
        let style = self.style;
        let height = style.min + (style.max - style.min) * step / STEPS;
        self.face().size_for(height, style.measure)
    }

    pub fn above(&self, size: Length) -> Length {
        self.face().scale(self.above, size)
    }

    pub fn below(&self, size: Length) -> Length {
        self.face().scale(self.below, size)
    }

    /// From one baseline to the next.
    pub fn pitch(&self, size: Length) -> Length {
        let ink = self.face().scale(self.above + self.below, size);
        let (tight, loose) = (ink + size * LEADING.0 / 100, ink + size * LEADING.1 / 100);
        let usual = if self.style.close { CLOSE } else { PITCH };
        let pitch = tight.max(loose.min(size * usual / 100));
        self.style.leading.map_or(pitch, |least| pitch.max(least))
    }

    /// The width of the first words, in font units, with the blanks between them.
    fn units(&self, words: &[Word]) -> i64 {
        let blank = |pair: &[Word]| match pair[0].weight == pair[1].weight {
            true => pair[1].weight.face().units(" "),
            false => self.face().units(" "),
        };
        words.iter().map(|word| word.units).sum::<i64>() + words.windows(2).map(blank).sum::<i64>()
    }

    pub fn width(&self, words: &[Word], size: Length) -> Length {
        self.face().scale(self.units(words), size)
    }

    /// How many of these words fit into a width.
    pub fn fitting(&self, words: &[Word], size: Length, wide: Length) -> usize {
        let (face, own_blank) = (self.face(), self.face().units(" "));
        let mut units = 0;
        for (i, word) in words.iter().enumerate() {
            let blank = match i.checked_sub(1).map(|before| words[before].weight) {
                None => 0,
                Some(weight) if weight == word.weight => weight.face().units(" "),
                Some(_) => own_blank,
            };
            units += blank + word.units;
            if face.scale(units, size) > wide {
                return i;
            }
        }
        words.len()
    }

    /// The words as lines of one weight each, one after the other.
    fn runs(&self, words: &[Word], x: Length, baseline: Length, size: Length) -> Vec<PlacedLine> {
        let mut lines = Vec::new();
        let mut at = 0;
        for run in words.chunk_by(|a, b| a.weight == b.weight) {
            let face = run[0].weight.face();
            let text = joined(run);
            let units = face.units(&text);
            lines.push(PlacedLine {
                field: self.style.field,
                x: x + face.scale(at, size),
                baseline,
                size,
                width: face.scale(units, size),
                weight: run[0].weight,
                text,
            });
            at += units + self.face().units(" ");
        }
        lines
    }

    /// White between a framed text and its frame, and the thickness of the frame.
    pub fn padding(&self, size: Length) -> (Length, Length) {
        match self.frame {
            Frame::None => (Length::ZERO, Length::ZERO),
            Frame::Closed | Frame::Rails => (size / 5, size / 10),
        }
    }

    /// The words on one line, with their frame if they have one.
    pub fn placed(&self, words: &[Word], x: Length, baseline: Length, size: Length) -> Vec<Placed> {
        let lines = self.runs(words, x, baseline, size);
        let right = lines.last().map_or(x, |line| line.x + line.width);
        let mut placed: Vec<Placed> = lines.into_iter().map(Placed::Text).collect();
        let (pad, rule) = self.padding(size);
        if rule > Length::ZERO {
            let ink = Area {
                x: x - pad,
                y: baseline - self.above(size) - pad,
                w: right - x + pad * 2,
                h: self.above(size) + self.below(size) + pad * 2,
            };
            placed.extend(framed(ink, rule, self.frame));
        }
        placed
    }
}

/// The sides of a frame round a box.
pub(crate) fn framed(inside: Area, rule: Length, frame: Frame) -> Vec<Placed> {
    let side = |x, y, w, h| Placed::Rule(Area { x, y, w, h });
    let (x, y) = (inside.x - rule, inside.y - rule);
    let wide = inside.w + rule * 2;
    let rails = [side(x, y, wide, rule), side(x, inside.bottom(), wide, rule)];
    match frame {
        Frame::None => Vec::new(),
        Frame::Rails => rails.to_vec(),
        Frame::Closed => {
            let mut all = rails.to_vec();
            all.push(side(x, inside.y, rule, inside.h));
            all.push(side(inside.right(), inside.y, rule, inside.h));
            all
        }
    }
}

fn joined(words: &[Word]) -> String {
    let words: Vec<&str> = words.iter().map(|word| word.text.as_str()).collect();
    words.join(" ")
}

impl Word {
    /// The word itself and its width at a size.
    pub fn with_width(&self, size: Length) -> (String, Length) {
        (
            self.text.clone(),
            self.weight.face().scale(self.units, size),
        )
    }
}

#[cfg(test)]
mod tests {
    use super::in_capitals;

    #[test]
    fn an_allergen_is_heavy_with_its_article() {
        for word in ["LAIT", "d’ŒUF", "d'ŒUF", "(l’ŒUF),", "ŒUFS"] {
            assert!(in_capitals(word), "{word}");
        }
        for word in ["lait", "d’œuf", "L’", "Œuf", "B"] {
            assert!(!in_capitals(word), "{word}");
        }
    }
}
