//! The two embedded faces: which characters they hold, how wide, how tall.

use std::sync::LazyLock;

use allsorts::binary::read::ReadScope;
use allsorts::font_data::FontData;
use allsorts::tables::FontTableProvider;
use allsorts::tag;
use printpdf::ParsedFont;
use schemars::JsonSchema;
use serde::Deserialize;

use crate::length::Length;

/// Family name of the embedded faces, as the SVG names it.
pub const FAMILY: &str = "Atkinson Hyperlegible Next";

const REGULAR: &[u8] = include_bytes!("../fonts/AtkinsonHyperlegibleNext-Regular.ttf");
const BOLD: &[u8] = include_bytes!("../fonts/AtkinsonHyperlegibleNext-Bold.ttf");

/// Code points looked at: all the face holds lie below.
const LAST: u32 = 0x3000;

/// The weight of a text.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum Weight {
    /// Ordinary.
    #[default]
    Regular,
    /// Heavy.
    Bold,
}

impl Weight {
    /// Both weights.
    pub const ALL: [Weight; 2] = [Weight::Regular, Weight::Bold];

    /// The font file, for the screen: serve it under [`FAMILY`].
    pub fn font_file(self) -> &'static [u8] {
        match self {
            Weight::Regular => REGULAR,
            Weight::Bold => BOLD,
        }
    }

    /// The measurements of this weight.
    pub fn face(self) -> &'static Face {
        static FACES: LazyLock<[Face; 2]> = LazyLock::new(|| {
            Weight::ALL.map(|weight| {
                Face::read(weight.font_file()).expect("the embedded font is whole: a test reads it")
            })
        });
        match self {
            Weight::Regular => &FACES[0],
            Weight::Bold => &FACES[1],
        }
    }

    /// The word, as in JSON.
    pub fn as_str(self) -> &'static str {
        match self {
            Weight::Regular => "regular",
            Weight::Bold => "bold",
        }
    }
}

/// How a text's height is meant.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Measure {
    /// The height of a small x.
    XHeight,
    /// The height of a capital; digits are as tall.
    Capitals,
}

/// One glyph, in font units.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Glyph {
    pub id: u16,
    pub advance: i64,
    pub top: i64,
    pub bottom: i64,
}

/// How far a text reaches above and below its baseline.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct TextReach {
    pub above: i64,
    pub below: i64,
}

/// Measurements of one face.
#[derive(Debug)]
pub struct Face {
    glyphs: Vec<Option<Glyph>>,
    per_em: i64,
    x_height: i64,
    capitals: i64,
}

impl Face {
    fn read(file: &'static [u8]) -> Option<Face> {
        let parsed = ParsedFont::from_bytes(file, 0, &mut Vec::new())?;
        let data = ReadScope::new(file).read::<FontData<'_>>().ok()?;
        let tables = data.table_provider(0).ok()?;
        let table = |name| tables.read_table_data(name).ok();
        let (head, hmtx) = (table(tag::HEAD)?, table(tag::HMTX)?);
        let (hhea, loca, glyf) = (table(tag::HHEA)?, table(tag::LOCA)?, table(tag::GLYF)?);
        let long_offsets = unsigned(&head, 50)? == 1;
        let metrics = usize::try_from(unsigned(&hhea, 34)?).ok()?;
        let glyph = |character: u32| {
            let id = parsed.lookup_glyph_index(character).filter(|id| *id != 0)?;
            let index = usize::from(id);
            let offset = |i: usize| {
                let short = || Some(unsigned(&loca, 2 * i)? * 2);
                let long = || Some(unsigned(&loca, 4 * i)? * 65_536 + unsigned(&loca, 4 * i + 2)?);
                usize::try_from(if long_offsets { long()? } else { short()? }).ok()
            };
            let (start, end) = (offset(index)?, offset(index + 1)?);
            let (bottom, top) = match start < end {
                true => (signed(&glyf, start + 4)?, signed(&glyf, start + 8)?),
                false => (0, 0),
            };
            let advance = unsigned(&hmtx, 4 * index.min(metrics.checked_sub(1)?))?;
            // A mark that sits on its neighbour needs shaping, which we do not do: refused.
            (advance > 0).then_some(Glyph {
                id,
                advance,
                top,
                bottom,
            })
        };
        // Both letters stand flat on the line; what the font claims of itself is not asked.
        let tall = |letter: char| glyph(letter as u32).map(|glyph: Glyph| glyph.top);
        Some(Face {
            x_height: tall('x')?,
            capitals: tall('H')?,
            glyphs: (0..LAST).map(glyph).collect(),
            per_em: unsigned(&head, 18)?,
        })
    }

    pub(crate) fn glyph(&self, character: char) -> Option<Glyph> {
        // The faces give both the same blank; one advance keeps measured and drawn text equal.
        self.glyphs.get(character as usize).copied().flatten()
    }

    /// The first character of a text that this face cannot draw.
    pub fn lacks(&self, text: &str) -> Option<char> {
        text.chars().find(|c| self.glyph(*c).is_none())
    }

    /// The font size at which the measured letters are that tall.
    pub fn size_for(&self, height: Length, measure: Measure) -> Length {
        let letter = match measure {
            Measure::XHeight => self.x_height,
            Measure::Capitals => self.capitals,
        };
        // Rounded up: never smaller than was asked.
        Length::from_um((height.um() * self.per_em + letter - 1) / letter)
    }

    /// How high a small x and a capital are at a size; never more than they come out.
    pub fn letters(&self, size: Length) -> (Length, Length) {
        let high = |units: i64| Length::from_um(units * size.um() / self.per_em);
        (high(self.x_height), high(self.capitals))
    }

    /// Font units to the em: the size is so many.
    pub(crate) fn per_em(&self) -> i64 {
        self.per_em
    }

    /// The width of a text, without kerning: the PDF has none either.
    pub fn width(&self, text: &str, size: Length) -> Length {
        self.scale(self.units(text), size)
    }

    /// The width of a text in font units.
    pub(crate) fn units(&self, text: &str) -> i64 {
        text.chars()
            .filter_map(|c| self.glyph(c))
            .map(|glyph| glyph.advance)
            .sum()
    }

    pub(crate) fn reach(&self, text: &str) -> TextReach {
        let glyphs = text.chars().filter_map(|c| self.glyph(c));
        glyphs.fold(TextReach::default(), |reach, glyph| TextReach {
            above: reach.above.max(glyph.top),
            below: reach.below.max(-glyph.bottom),
        })
    }

    /// Font units at a size, rounded away from zero so that boxes are never too small.
    pub(crate) fn scale(&self, units: i64, size: Length) -> Length {
        Length::from_um((units * size.um() + self.per_em - 1).div_euclid(self.per_em))
    }
}

fn unsigned(table: &[u8], at: usize) -> Option<i64> {
    Some(i64::from(u16::from_be_bytes(
        table.get(at..at + 2)?.try_into().ok()?,
    )))
}

fn signed(table: &[u8], at: usize) -> Option<i64> {
    Some(i64::from(i16::from_be_bytes(
        table.get(at..at + 2)?.try_into().ok()?,
    )))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_faces_hold_what_kitchens_write() {
        for weight in Weight::ALL {
            let wanted = "éèêëçœæàâôîïûùüñößÉÈÊÇŒÀÔÎ°≤≥½¼¾–—’‘“”«»·×%€£®\u{a0}";
            assert_eq!(weight.face().lacks(wanted), None, "{weight:?}");
            assert_eq!(weight.face().lacks("жабо"), Some('ж'));
            assert_eq!(weight.face().lacks("cafe\u{301}"), Some('\u{301}'));
        }
    }

    #[test]
    fn heights_are_never_below_what_was_asked() {
        let face = Weight::Bold.face();
        let size = face.size_for(Length::mm(5.0), Measure::Capitals);
        assert!(face.scale(face.capitals, size) >= Length::mm(5.0));
        assert_eq!(
            face.size_for(Length::mm(1.6), Measure::XHeight),
            Length::from_um(3226)
        );
    }
}
