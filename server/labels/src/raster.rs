//! Placed label to pixels: one pixel a printer dot, or a whole multiple of it for a larger picture.

use zeno::{Mask, Placement, Transform};

use crate::length::{Area, Length};
use crate::outline::outline;
use crate::placed::{Placed, PlacedLabel, PlacedLine};

/// How the edges of letters are drawn. Codes and rules are black and white in either.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Edges {
    /// Black and white only, as a label printer can. For printing.
    Sharp,
    /// Greys at the edges. For a picture on a screen.
    Smooth,
}

/// Coverage from which a dot is black: half of it.
const HALF: u8 = 128;

/// A label in pixels, row by row from the top left.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Bitmap {
    width: usize,
    height: usize,
    per_inch: u32,
    edges: Edges,
    ink: Vec<u8>,
}

/// Draws a label at its printer's dots, each drawn as `scale` by `scale` pixels (zero counts as
/// one). A dot that the page's edge cuts through is left out.
pub fn raster(label: &PlacedLabel, scale: u8, edges: Edges) -> Bitmap {
    let scale = u32::from(scale.max(1));
    let pixels =
        |length| usize::try_from(label.dpi.whole_dots(length)).unwrap_or(0) * scale as usize;
    let (width, height) = (pixels(label.width), pixels(label.height));
    let mut bitmap = Bitmap {
        width,
        height,
        per_inch: u32::from(label.dpi.number()) * scale,
        edges,
        ink: vec![0; width * height],
    };
    for item in &label.items {
        match item {
            Placed::Text(line) => bitmap.write(line),
            Placed::Code(code) => code.dark.iter().for_each(|area| bitmap.fill(area)),
            Placed::Rule(area) => bitmap.fill(area),
            Placed::Picture(picture) => picture.dark.iter().for_each(|area| bitmap.fill(area)),
        }
    }
    bitmap
}

impl Bitmap {
    /// Pixels across.
    pub fn width(&self) -> usize {
        self.width
    }

    /// Pixels down.
    pub fn height(&self) -> usize {
        self.height
    }

    /// Pixels per inch, the same both ways.
    pub fn per_inch(&self) -> u32 {
        self.per_inch
    }

    /// How the edges of letters were drawn.
    pub fn edges(&self) -> Edges {
        self.edges
    }

    /// The rows from the top; each pixel is its ink, from 0, white, to 255, black.
    pub fn rows(&self) -> impl Iterator<Item = &[u8]> {
        // A page without width has no pixels, so it has no rows.
        self.ink.chunks(self.width.max(1))
    }

    /// The rows from the top at one bit a pixel, the leftmost highest; black is set. Each row begins
    /// a byte, and what is left of its last is white.
    pub(crate) fn bits(&self) -> Vec<u8> {
        let pack = |eight: &[u8]| {
            let bits = eight.iter().zip(0..).map(|(ink, nth)| match *ink >= HALF {
                true => 0x80 >> nth,
                false => 0_u8,
            });
            bits.fold(0, |byte, bit| byte | bit)
        };
        self.rows()
            .flat_map(|row| row.chunks(8).map(pack))
            .collect()
    }

    /// Which pixel edge is nearest to a place. Edges of codes lie on dots: for them it is exact.
    fn edge(&self, place: Length) -> i64 {
        (2 * place.um() * i64::from(self.per_inch) + 25_400).div_euclid(2 * 25_400)
    }

    /// The part of a run from one pixel edge to another that lies on the page.
    fn on_page(from: i64, to: i64, page: usize) -> std::ops::Range<usize> {
        let clip = |edge| usize::try_from(edge).unwrap_or(0).min(page);
        clip(from)..clip(to)
    }

    /// Blackens a box. Edges are rounded each by itself, so that boxes that touch still touch;
    /// the thinnest line is one pixel.
    fn fill(&mut self, area: &Area) {
        let (left, top) = (self.edge(area.x), self.edge(area.y));
        let right = self.edge(area.right()).max(left + 1);
        let bottom = self.edge(area.bottom()).max(top + 1);
        let columns = Self::on_page(left, right, self.width);
        for y in Self::on_page(top, bottom, self.height) {
            self.ink[y * self.width..][columns.clone()].fill(u8::MAX);
        }
    }

    /// Draws a line of text by the advances it was measured with. The baseline goes to the nearest
    /// pixel edge: letters stand on whole dots, and one height always gives as many dots.
    fn write(&mut self, line: &PlacedLine) {
        let face = line.weight.face();
        let to_pixels = self.per_inch as f32 / 25_400.0;
        let per_unit = line.size.um() as f32 / face.per_em() as f32 * to_pixels;
        let (left, base) = (
            line.x.um() as f32 * to_pixels,
            self.edge(line.baseline) as f32,
        );
        let mut pen = 0;
        for glyph in line
            .text
            .chars()
            .filter_map(|character| face.glyph(character))
        {
            let place = Transform::scale(per_unit, -per_unit)
                .then_translate(left + pen as f32 * per_unit, base);
            let mut mask = Mask::new(outline(line.weight, glyph));
            let (mask, at) = mask.transform(Some(place)).render();
            self.stamp(&mask, at);
            pen += glyph.advance;
        }
    }

    /// Lays the ink of a mask over the page.
    fn stamp(&mut self, mask: &[u8], at: Placement) {
        let (left, right) = (i64::from(at.left), i64::from(at.left) + i64::from(at.width));
        let columns = Self::on_page(left, right, self.width);
        for (row, y) in mask
            .chunks(at.width.max(1) as usize)
            .zip(i64::from(at.top)..)
        {
            let Some(y) = usize::try_from(y).ok().filter(|y| *y < self.height) else {
                continue;
            };
            let page = &mut self.ink[y * self.width..][columns.clone()];
            // What hangs over the left edge is passed over.
            let over = usize::try_from(-left).unwrap_or(0);
            for (ink, covered) in page.iter_mut().zip(row.iter().skip(over)) {
                let covered = match self.edges {
                    Edges::Smooth => *covered,
                    Edges::Sharp => {
                        if *covered >= HALF {
                            u8::MAX
                        } else {
                            0
                        }
                    }
                };
                *ink = covered.max(*ink);
            }
        }
    }
}

#[cfg(test)]
pub(crate) mod tests {
    use super::*;
    use crate::face::{Measure, Weight};
    use crate::facts::Field;
    use crate::length::Dpi;

    /// A page of so many millimetres with nothing on it.
    pub(crate) fn blank(width: f64, height: f64, dpi: Dpi) -> PlacedLabel {
        let (width, height) = (Length::mm(width), Length::mm(height));
        let items = Vec::new();
        PlacedLabel {
            width,
            height,
            dpi,
            holes: Vec::new(),
            second: None,
            items,
        }
    }

    fn page(items: Vec<Placed>) -> PlacedLabel {
        let page = blank(10.0, 5.0, Dpi::D203);
        PlacedLabel { items, ..page }
    }

    fn line(x: f64, baseline: f64, height: f64, text: &str) -> Placed {
        let weight = Weight::Regular;
        let size = weight.face().size_for(Length::mm(height), Measure::XHeight);
        Placed::Text(PlacedLine {
            field: Field::Name,
            x: Length::mm(x),
            baseline: Length::mm(baseline),
            size,
            width: weight.face().width(text, size),
            weight,
            text: text.to_owned(),
        })
    }

    /// One letter a pixel: white, grey, black.
    fn drawn(items: Vec<Placed>, edges: Edges) -> Vec<String> {
        let shade = |ink: &u8| match ink {
            0 => '.',
            255 => '#',
            _ => '+',
        };
        let bitmap = raster(&page(items), 1, edges);
        bitmap
            .rows()
            .map(|row| row.iter().map(shade).collect())
            .collect()
    }

    fn rows_with_ink(items: Vec<Placed>) -> usize {
        let rows = drawn(items, Edges::Sharp);
        rows.iter().filter(|row| row.contains('#')).count()
    }

    #[test]
    fn a_rule_is_never_grey_and_never_gone() {
        let area = |w, h| Area {
            x: Length::mm(0.3),
            y: Length::mm(0.2),
            w: Length::mm(w),
            h: Length::mm(h),
        };
        for edges in [Edges::Sharp, Edges::Smooth] {
            // 2.40 to 10.39 dots across, 1.60 to 2.40 down.
            let rows = drawn(vec![Placed::Rule(area(1.0, 0.1))], edges);
            assert_eq!(rows[1], ".".repeat(79));
            assert_eq!(rows[2], format!("..########{}", ".".repeat(69)));
            assert_eq!(rows[3], rows[1]);
        }
        let rows = drawn(vec![Placed::Rule(area(0.01, 0.01))], Edges::Sharp);
        assert_eq!(rows.concat().matches('#').count(), 1);
    }

    #[test]
    fn one_height_is_as_many_dots_wherever_it_stands() {
        // 1.6 mm is 12.8 dots: thirteen.
        for nth in 0..20 {
            let baseline = 3.0 + f64::from(nth) * 0.025;
            assert_eq!(rows_with_ink(vec![line(1.0, baseline, 1.6, "x")]), 13);
        }
    }

    #[test]
    fn only_smooth_letters_have_grey() {
        let text = || vec![line(1.0, 4.0, 1.6, "Sage")];
        assert!(drawn(text(), Edges::Smooth).concat().contains('+'));
        assert!(!drawn(text(), Edges::Sharp).concat().contains('+'));
    }

    #[test]
    fn what_hangs_over_the_edge_is_cut_there() {
        let whole = drawn(vec![line(2.0, 3.0, 1.6, "MM")], Edges::Sharp);
        // Sixteen dots further left is 2.002 mm.
        let items = vec![line(-0.002, 3.0, 1.6, "MM"), line(8.0, 6.0, 1.6, "MM")];
        let cut = drawn(items, Edges::Sharp);
        for (whole, cut) in whole.iter().zip(&cut).take(20) {
            assert_eq!(whole[16..56], cut[..40]);
        }
        assert!(
            drawn(vec![line(20.0, 9.0, 1.6, "M")], Edges::Sharp)
                .concat()
                .find('#')
                .is_none()
        );
    }

    #[test]
    fn a_blank_text_draws_nothing() {
        assert_eq!(rows_with_ink(vec![line(1.0, 3.0, 1.6, " ")]), 0);
    }

    #[test]
    fn bits_begin_each_row_anew() {
        let area = Area {
            x: Length::ZERO,
            y: Length::ZERO,
            w: Length::mm(10.0),
            h: Length::mm(0.125),
        };
        let bits = raster(&page(vec![Placed::Rule(area)]), 1, Edges::Sharp).bits();
        // 79 dots and one bit over.
        assert_eq!(
            bits[..11],
            [255, 255, 255, 255, 255, 255, 255, 255, 255, 254, 0]
        );
        assert_eq!(bits.len(), 10 * 39);
    }
}
