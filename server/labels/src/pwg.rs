//! Dots to PWG raster (PWG 5102.4), the picture format that IPP label printers take.
//!
//! A stream is a word of four letters, then for each page a header of fixed length and the rows.
//! `packed` squeezes the rows.

mod packed;

use crate::length::Length;
use crate::placed::PlacedLabel;
use crate::raster::{Bitmap, Edges, raster};

/// Opens a stream whose numbers have their highest byte first.
const OPENING: &[u8; 4] = b"RaS2";

/// Bytes in a page's header.
const HEADER: usize = 1796;

/// How a printer takes its dots: its `pwg-raster-document-type-supported` says which.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Colours {
    /// One bit a dot, black is set.
    Black1,
    /// Eight bits of grey a dot, 0 is black. Only black and white are used: what a printer makes of
    /// greys at the edges of letters is blur.
    Sgray8,
}

impl Colours {
    /// Both, the smaller first.
    pub const ALL: [Colours; 2] = [Colours::Black1, Colours::Sgray8];

    /// The standard's keyword for it.
    pub fn as_str(self) -> &'static str {
        match self {
            Colours::Black1 => "black_1",
            Colours::Sgray8 => "sgray_8",
        }
    }

    /// Bits a dot.
    fn bits(self) -> u32 {
        match self {
            Colours::Black1 => 1,
            Colours::Sgray8 => 8,
        }
    }

    /// The number of the colour space.
    fn space(self) -> u32 {
        match self {
            Colours::Black1 => 3,
            Colours::Sgray8 => 18,
        }
    }

    fn row_bytes(self, width: usize) -> usize {
        (width * self.bits() as usize).div_ceil(8)
    }

    fn rows(self, bitmap: &Bitmap) -> Vec<u8> {
        match self {
            Colours::Black1 => bitmap.bits(),
            Colours::Sgray8 => bitmap.rows().flatten().map(|ink| u8::MAX - ink).collect(),
        }
    }
}

/// Writes labels as one stream, a page each, at each label's own dots. The same labels give the
/// same bytes. How many copies is the job's affair: the stream leaves it open.
pub fn pwg(labels: &[PlacedLabel], colours: Colours) -> Vec<u8> {
    let mut stream = OPENING.to_vec();
    let labels: Vec<&PlacedLabel> = labels.iter().flat_map(PlacedLabel::pages).collect();
    for label in &labels {
        let bitmap = raster(label, 1, Edges::Sharp);
        stream.extend(header(label, &bitmap, colours, labels.len()));
        let rows = colours.rows(&bitmap);
        packed::pack(&mut stream, &rows, colours.row_bytes(bitmap.width()));
    }
    stream
}

/// A page's header. What is not set here is zero, which the standard reads as "the default".
fn header(label: &PlacedLabel, bitmap: &Bitmap, colours: Colours, pages: usize) -> [u8; HEADER] {
    let count = |number: usize| u32::try_from(number).unwrap_or(u32::MAX);
    let (width, height) = (count(bitmap.width()), count(bitmap.height()));
    let mut header = PageHeader([0; HEADER]);
    header.text(0, "PwgRaster");
    // HWResolution, both ways.
    header.numbers(276, &[bitmap.per_inch(), bitmap.per_inch()]);
    // PageSize.
    header.numbers(352, &[points(label.width), points(label.height)]);
    // Width, Height.
    header.numbers(372, &[width, height]);
    // BitsPerColor, BitsPerPixel, BytesPerLine, ColorOrder (chunky), ColorSpace.
    let row = count(colours.row_bytes(bitmap.width()));
    header.numbers(
        384,
        &[colours.bits(), colours.bits(), row, 0, colours.space()],
    );
    // NumColors.
    header.numbers(420, &[1]);
    // TotalPageCount; CrossFeedTransform, FeedTransform: not mirrored; the ImageBox, left, top,
    // right, bottom; AlternatePrimary: white.
    header.numbers(452, &[count(pages), 1, 1, 0, 0, width, height, 0xff_ffff]);
    header.text(1732, &size_name(label));
    header.0
}

struct PageHeader([u8; HEADER]);

impl PageHeader {
    fn numbers(&mut self, at: usize, numbers: &[u32]) {
        for (place, number) in self.0[at..].chunks_exact_mut(4).zip(numbers) {
            place.copy_from_slice(&number.to_be_bytes());
        }
    }

    /// At most 63 letters: a zero byte ends them.
    fn text(&mut self, at: usize, text: &str) {
        let place = self.0[at..at + 63].iter_mut();
        place
            .zip(text.bytes())
            .for_each(|(place, byte)| *place = byte);
    }
}

/// Whole points, 1/72 inch, to the nearest.
fn points(length: Length) -> u32 {
    u32::try_from((length.um() * 72 + 12_700) / 25_400).unwrap_or(0)
}

/// The size's name as PWG 5101.1 forms it (standards 9).
fn size_name(label: &PlacedLabel) -> String {
    let (width, height) = (label.width.to_mm(), label.height.to_mm());
    format!("custom_label_{width}x{height}mm")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::length::Dpi;
    use crate::raster::tests::blank;

    fn page(dpi: Dpi) -> PlacedLabel {
        blank(62.0, 100.5, dpi)
    }

    fn numbers<const N: usize>(stream: &[u8], at: usize) -> [u32; N] {
        let number = |nth| {
            let at = OPENING.len() + at + 4 * nth;
            u32::from_be_bytes(stream[at..at + 4].try_into().unwrap())
        };
        std::array::from_fn(number)
    }

    #[test]
    fn the_header_says_what_the_standard_asks() {
        let labels = [page(Dpi::D203), page(Dpi::D203)];
        let one = pwg(&labels, Colours::Black1);
        assert!(one.starts_with(b"RaS2PwgRaster\0"));
        assert_eq!(numbers(&one, 276), [203, 203]);
        assert_eq!(numbers(&one, 340), [0], "copies are the job's affair");
        assert_eq!(numbers(&one, 352), [176, 285]);
        assert_eq!(numbers(&one, 372), [495, 803]);
        assert_eq!(numbers(&one, 384), [1, 1, 62, 0, 3]);
        assert_eq!(numbers(&one, 420), [1]);
        assert_eq!(numbers(&one, 452), [2, 1, 1, 0, 0, 495, 803, 0xff_ffff]);
        assert!(one[4 + 1732..].starts_with(b"custom_label_62x100.5mm\0"));
        let eight = pwg(&[page(Dpi::D300)], Colours::Sgray8);
        assert_eq!(numbers(&eight, 276), [300, 300]);
        assert_eq!(numbers(&eight, 384), [8, 8, 732, 0, 18]);
    }

    #[test]
    fn white_is_white_in_both() {
        // 803 rows in groups of 256; a row of 62 bytes is one part, one of 495 is four.
        let one = pwg(&[page(Dpi::D203)], Colours::Black1);
        assert_eq!(one[4 + HEADER..][..3], [255, 61, 0]);
        assert_eq!(one.len(), 4 + HEADER + 4 * 3);
        let eight = pwg(&[page(Dpi::D203)], Colours::Sgray8);
        assert_eq!(eight[4 + HEADER..][..3], [255, 127, 255]);
        assert_eq!(eight.len(), 4 + HEADER + 4 * 9);
    }
}
