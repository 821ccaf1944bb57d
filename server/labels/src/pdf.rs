//! Placed labels to PDF: one page a label, each face once and cut to the characters used.

use std::collections::BTreeMap;
use std::collections::BTreeSet;
use std::fmt::Write as _;

use allsorts::binary::read::ReadScope;
use allsorts::font_data::FontData;
use allsorts::subset::{CmapTarget, SubsetProfile, subset};
use flate2::{Compress, CompressError, Compression, FlushCompress, Status};
use printpdf::{
    CurTransMat, FontId, Mm, Op, PaintMode, ParsedFont, PdfDocument, PdfFont, PdfFontHandle,
    PdfPage, PdfSaveOptions, Point, Pt, Rect, TextItem,
};
use thiserror::Error;

use crate::face::Weight;
use crate::length::{Area, Length};
use crate::placed::{Code, Placed, PlacedLabel, PlacedLine};
use crate::refusal::CodeKind;

/// Why no PDF was made.
#[derive(Debug, Error)]
pub enum PdfError {
    /// Nothing to print.
    #[error("there are no labels to print")]
    Empty,
    /// A face could not be cut to the characters used.
    #[error("the {weight} label font could not be cut down: {cause}")]
    Font {
        /// Which face.
        weight: &'static str,
        /// What the font library said.
        cause: String,
    },
    /// A character that layout should have refused.
    #[error("the label font cannot print {0:?}")]
    Character(char),
    /// The PDF library was not content.
    #[error("the PDF library complains: {0}")]
    Complaint(String),
}

/// Draws labels, one page each. The same labels give the same bytes.
pub fn pdf(labels: &[PlacedLabel]) -> Result<Vec<u8>, PdfError> {
    pdf_titled("Labels", labels)
}

/// The same under another name.
pub(crate) fn pdf_titled(title: &str, labels: &[PlacedLabel]) -> Result<Vec<u8>, PdfError> {
    let labels: Vec<&PlacedLabel> = labels.iter().flat_map(PlacedLabel::pages).collect();
    if labels.is_empty() {
        return Err(PdfError::Empty);
    }
    let mut document = PdfDocument::new(title);
    let mut names = BTreeMap::new();
    for (weight, characters) in characters(&labels) {
        let font = PdfFont::new(cut(weight, &characters)?);
        let name = FontId(font_name(weight, &characters));
        document.resources.fonts.map.insert(name.clone(), font);
        names.insert(weight, name);
    }
    document.with_pages(labels.iter().map(|label| page(label, &names)).collect());
    identify(write(&document)?)
}

/// How tightly pages are packed, of 0 to 9: on a roll of 1,000 labels 4 took a fifth less time than
/// the usual 6 for a twentieth more bytes. It stays so: what was printed is shown again byte for byte.
const PACKING: Compression = Compression::new(4);

/// The file. The PDF library alone would pack each page as tightly as can be, and slowly.
fn write(document: &PdfDocument) -> Result<Vec<u8>, PdfError> {
    let complain = |words: String| PdfError::Complaint(words);
    let mut complaints = Vec::new();
    // "Secure" would drop our own words of the page language.
    let options = PdfSaveOptions {
        secure: false,
        ..PdfSaveOptions::default()
    };
    let mut file = document.to_lopdf_document(&options, &mut complaints);
    if let Some(complaint) = complaints.first() {
        return Err(complain(complaint.msg.clone()));
    }
    let streams = file
        .objects
        .values_mut()
        .map(|object| object.as_stream_mut());
    // One for all: its tables are a quarter of a megabyte.
    let mut packer = Compress::new(PACKING, true);
    for stream in streams.flatten().filter(|stream| stream.allows_compression) {
        let packed = packed(&mut packer, &stream.content);
        let packed = packed.map_err(|cause| complain(cause.to_string()))?;
        stream.dict.set("Filter", "FlateDecode");
        stream.set_content(packed);
    }
    let mut bytes = Vec::new();
    file.save_to(&mut bytes)
        .map_err(|cause| complain(cause.to_string()))?;
    Ok(bytes)
}

fn packed(packer: &mut Compress, content: &[u8]) -> Result<Vec<u8>, CompressError> {
    packer.reset();
    let mut packed = Vec::with_capacity(content.len() / 2 + 64);
    loop {
        let read = usize::try_from(packer.total_in()).unwrap_or(content.len());
        let end = packer.compress_vec(&content[read..], &mut packed, FlushCompress::Finish)?;
        if end == Status::StreamEnd {
            return Ok(packed);
        }
        packed.reserve(packed.capacity());
    }
}

/// Replaces the two marks in the file's trailer, which the PDF library draws from a counter, by
/// marks that come from the content: the same labels give the same bytes in any process.
fn identify(mut bytes: Vec<u8>) -> Result<Vec<u8>, PdfError> {
    const OPEN: &[u8] = b"/ID[(";
    const MARK: usize = 32;
    let found = bytes.windows(OPEN.len()).rposition(|window| window == OPEN);
    let first = found.map_or(bytes.len(), |at| at + OPEN.len());
    let second = first + MARK + b")(".len();
    if bytes.get(first + MARK..second) != Some(b")(") || bytes.len() < second + MARK {
        return Err(PdfError::Complaint(
            "the file carries no identifier".to_owned(),
        ));
    }
    let sum = checksum(bytes[..first].iter().map(|byte| u64::from(*byte)));
    let mark = letters::<MARK>(sum);
    bytes[first..first + MARK].copy_from_slice(&mark);
    bytes[second..second + MARK].copy_from_slice(&mark);
    Ok(bytes)
}

/// FNV-1a: a public-domain checksum; it guards nothing, it only distinguishes contents.
fn checksum(values: impl Iterator<Item = u64>) -> u64 {
    values.fold(0xcbf2_9ce4_8422_2325, |sum, value| {
        (sum ^ value).wrapping_mul(0x100_0000_01b3)
    })
}

/// A checksum as capital letters.
fn letters<const N: usize>(mut sum: u64) -> [u8; N] {
    std::array::from_fn(|i| {
        let letter = b'A' + (sum % 26) as u8;
        sum = (sum / 26)
            ^ sum
                .wrapping_mul(0x9e37_79b9_7f4a_7c15)
                .rotate_left(i as u32);
        letter
    })
}

/// The name of a cut face: six letters that stand for its characters, a plus, the face's own name,
/// as PDF readers expect of a part of a font.
fn font_name(weight: Weight, characters: &BTreeSet<char>) -> String {
    let sum = checksum(
        characters
            .iter()
            .map(|character| u64::from(u32::from(*character))),
    );
    let tag: String = letters::<6>(sum).map(char::from).iter().collect();
    let style = match weight {
        Weight::Regular => "Regular",
        Weight::Bold => "Bold",
    };
    format!("{tag}+AtkinsonHyperlegibleNext-{style}")
}

fn characters(labels: &[&PlacedLabel]) -> BTreeMap<Weight, BTreeSet<char>> {
    let mut used = BTreeMap::<Weight, BTreeSet<char>>::new();
    for line in labels.iter().flat_map(|label| label.lines()) {
        used.entry(line.weight)
            .or_default()
            .extend(line.text.chars());
    }
    used
}

/// The face with only the glyphs in use.
fn cut(weight: Weight, characters: &BTreeSet<char>) -> Result<ParsedFont, PdfError> {
    // Glyph 0 stands for what is missing; a font file must begin with it.
    let mut glyphs = BTreeSet::from([0]);
    for character in characters {
        let glyph = weight
            .face()
            .glyph(*character)
            .ok_or(PdfError::Character(*character))?;
        glyphs.insert(glyph.id);
    }
    let glyphs: Vec<u16> = glyphs.into_iter().collect();
    let failed = |cause: String| PdfError::Font {
        weight: weight.as_str(),
        cause,
    };
    let data = ReadScope::new(weight.font_file()).read::<FontData<'_>>();
    let data = data.map_err(|cause| failed(cause.to_string()))?;
    let tables = data
        .table_provider(0)
        .map_err(|cause| failed(cause.to_string()))?;
    let small = subset(&tables, &glyphs, &SubsetProfile::Pdf, CmapTarget::Unicode)
        .map_err(|cause| failed(cause.to_string()))?;
    let parsed = ParsedFont::from_bytes(&small, 0, &mut Vec::new());
    let parsed = parsed.ok_or_else(|| failed("unreadable after the cut".into()))?;
    let lost = characters
        .iter()
        .find(|c| parsed.lookup_glyph_index(**c as u32).is_none());
    match lost {
        Some(character) => Err(PdfError::Character(*character)),
        None => Ok(parsed),
    }
}

fn page(label: &PlacedLabel, names: &BTreeMap<Weight, FontId>) -> PdfPage {
    let mut ops = Vec::new();
    for item in &label.items {
        match item {
            Placed::Text(line) => text(&mut ops, label.height, line, names[&line.weight].clone()),
            Placed::Code(code) => self::code(&mut ops, label, code),
            Placed::Rule(area) => ops.push(filled(label.height, area)),
            Placed::Picture(picture) => {
                ops.extend(picture.dark.iter().map(|area| filled(label.height, area)));
            }
        }
    }
    PdfPage::new(
        Mm(label.width.to_mm() as f32),
        Mm(label.height.to_mm() as f32),
        ops,
    )
}

fn text(ops: &mut Vec<Op>, height: Length, line: &PlacedLine, font: FontId) {
    let pos = Point {
        x: Pt(line.x.to_pt()),
        y: Pt((height - line.baseline).to_pt()),
    };
    let font = PdfFontHandle::External(font);
    ops.extend([
        Op::StartTextSection,
        Op::SetFont {
            font,
            size: Pt(line.size.to_pt()),
        },
        Op::SetTextCursor { pos },
        Op::ShowText {
            items: vec![TextItem::Text(line.text.clone())],
        },
        Op::EndTextSection,
    ]);
}

/// Letters that the words of one box take, at the most in common codes.
const BOX: usize = 18;

/// A code counts in its own modules from its own corner, downwards: small whole numbers, which are
/// short to write, and every edge on a printer dot. The bars of a bar code are one unit high.
///
/// Each box is filled by itself. Printing programs snap a lone box to whole dots; of many boxes in
/// one shape some make every bar a dot too thick.
fn code(ops: &mut Vec<Op>, label: &PlacedLabel, code: &Code) {
    let dot = |place: Length| label.dpi.first_dot(place);
    let (left, top) = (dot(code.bounds.x), dot(code.bounds.y));
    let wide = code.dots;
    let high = match code.kind {
        CodeKind::Qr => code.dots,
        CodeKind::Code128 | CodeKind::Gs1128 | CodeKind::Ean13 => dot(code.bounds.bottom()) - top,
    };
    let points = |dots: i64| dots as f32 * 72.0 / f32::from(label.dpi.number());
    let matrix = CurTransMat::Raw([
        points(wide),
        0.0,
        0.0,
        -points(high),
        points(left),
        label.height.to_pt() - points(top),
    ]);
    ops.extend([
        Op::SaveGraphicsState,
        Op::SetTransformationMatrix { matrix },
    ]);
    // All boxes as one word of the page language itself: the library would keep hundreds of them one by one.
    let mut boxes = String::with_capacity(BOX * code.dark.len());
    for area in &code.dark {
        let column = |place: Length| (dot(place) - left) / wide;
        let row = |place: Length| (dot(place) - top) / high;
        let (x, y) = (column(area.x), row(area.y));
        let (w, h) = (column(area.right()) - x, row(area.bottom()) - y);
        let apart = if boxes.is_empty() { "" } else { "\n" };
        write!(boxes, "{apart}{x} {y} {w} {h} re f").expect("a text takes what is written to it");
    }
    ops.push(Op::Unknown {
        key: boxes,
        value: Vec::new(),
    });
    ops.push(Op::RestoreGraphicsState);
}

fn filled(height: Length, area: &Area) -> Op {
    let rectangle = Rect {
        x: Pt(area.x.to_pt()),
        y: Pt((height - area.bottom()).to_pt()),
        width: Pt(area.w.to_pt()),
        height: Pt(area.h.to_pt()),
        mode: Some(PaintMode::Fill),
        winding_order: None,
    };
    Op::DrawRectangle { rectangle }
}

#[cfg(test)]
mod tests {
    use super::*;
    use flate2::write::ZlibEncoder;
    use std::io::Write as _;

    /// What was printed was packed one stream after the other, each by a packer of its own.
    #[test]
    fn one_packer_for_all_packs_as_one_for_each() {
        let line = |nth: u32| format!("{} {} Td ({nth}) Tj\n", nth % 97, nth * 31 % 1009);
        let mut packer = Compress::new(PACKING, true);
        for lines in [0, 1, 40, 900, 20_000] {
            let content: String = (0..lines).map(line).collect();
            let mut own = ZlibEncoder::new(Vec::new(), PACKING);
            own.write_all(content.as_bytes()).unwrap();
            let expected = own.finish().unwrap();
            assert_eq!(packed(&mut packer, content.as_bytes()).unwrap(), expected);
        }
    }
}
