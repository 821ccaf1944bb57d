//! The floor: the very same placed items and the same QR work, written with nothing but a PDF
//! object writer and a font cutter.

use std::collections::BTreeMap;
use std::io::Write;

use flate2::Compression;
use flate2::write::ZlibEncoder;
use labels::{CodeKind, Length, Placed, PlacedLabel, PlacedLine, Weight};
use pdf_writer::types::{CidFontType, FontFlags, SystemInfo, UnicodeCmap};
use pdf_writer::{Content, Filter, Finish, Name, Pdf, Rect, Ref, Str};
use printpdf::ParsedFont;
use qrcode::EcLevel;
use subsetter::GlyphRemapper;

#[path = "../src/mask.rs"]
mod mask;

/// One face, read once, outside the time taken.
pub struct FloorFace {
    weight: Weight,
    parsed: ParsedFont,
}

/// Reads both faces.
pub fn faces() -> [FloorFace; 2] {
    Weight::ALL.map(|weight| {
        let parsed = ParsedFont::from_bytes(weight.font_file(), 0, &mut Vec::new()).unwrap();
        FloorFace { weight, parsed }
    })
}

/// The glyphs in use of one face, old number to new, with the character each stands for.
#[derive(Default)]
struct Used {
    mapper: GlyphRemapper,
    characters: BTreeMap<u16, (char, u16)>,
}

impl FloorFace {
    fn glyph(&self, used: &mut Used, character: char) -> u16 {
        let old = self.parsed.lookup_glyph_index(character as u32).unwrap();
        let new = used.mapper.remap(old);
        used.characters.entry(new).or_insert((character, old));
        new
    }
}

/// The labels as a PDF.
pub fn pdf(labels: &[PlacedLabel], faces: &[FloorFace; 2]) -> Vec<u8> {
    let mut pdf = Pdf::new();
    let (catalog, tree, mut next) = (Ref::new(1), Ref::new(2), 20);
    pdf.catalog(catalog).pages(tree);
    let mut used = [Used::default(), Used::default()];
    let mut kids = Vec::new();
    for label in labels {
        let (page_id, content_id) = (Ref::new(next), Ref::new(next + 1));
        next += 2;
        kids.push(page_id);
        let mut page = pdf.page(page_id);
        page.parent(tree).contents(content_id);
        page.media_box(Rect::new(
            0.0,
            0.0,
            label.width.to_pt(),
            label.height.to_pt(),
        ));
        let mut resources = page.resources();
        resources
            .fonts()
            .pair(Name(b"F0"), Ref::new(10))
            .pair(Name(b"F1"), Ref::new(15));
        resources.finish();
        page.finish();
        let packed = squeeze(&content(label, faces, &mut used));
        pdf.stream(content_id, &packed).filter(Filter::FlateDecode);
    }
    let count = i32::try_from(kids.len()).unwrap();
    pdf.pages(tree).kids(kids).count(count);
    for (i, face) in faces.iter().enumerate() {
        write_font(&mut pdf, 10 + 5 * i32::try_from(i).unwrap(), face, &used[i]);
    }
    pdf.finish()
}

fn content(label: &PlacedLabel, faces: &[FloorFace; 2], used: &mut [Used; 2]) -> Vec<u8> {
    let mut content = Content::new();
    let fill = |content: &mut Content, area: &labels::Area| {
        let y = (label.height - area.bottom()).to_pt();
        content
            .rect(area.x.to_pt(), y, area.w.to_pt(), area.h.to_pt())
            .fill_nonzero();
    };
    for item in &label.items {
        match item {
            Placed::Rule(area) => fill(&mut content, area),
            Placed::Picture(picture) => {
                picture
                    .dark
                    .iter()
                    .for_each(|area| fill(&mut content, area));
            }
            Placed::Code(code) => {
                if code.kind == CodeKind::Qr {
                    let qr = mask::symbol(code.payload.as_bytes(), EcLevel::M);
                    std::hint::black_box(qr.unwrap());
                }
                code.dark.iter().for_each(|area| fill(&mut content, area));
            }
            Placed::Text(line) => {
                let i = usize::from(line.weight == Weight::Bold);
                text(&mut content, label.height, line, &faces[i], &mut used[i], i);
            }
        }
    }
    content.finish().into_vec()
}

fn text(
    c: &mut Content,
    height: Length,
    line: &PlacedLine,
    face: &FloorFace,
    used: &mut Used,
    i: usize,
) {
    let glyphs = line
        .text
        .chars()
        .flat_map(|ch| face.glyph(used, ch).to_be_bytes());
    let glyphs: Vec<u8> = glyphs.collect();
    let name = if i == 0 { Name(b"F0") } else { Name(b"F1") };
    c.begin_text().set_font(name, line.size.to_pt());
    c.next_line(line.x.to_pt(), (height - line.baseline).to_pt());
    c.show(Str(&glyphs)).end_text();
}

fn write_font(pdf: &mut Pdf, first: i32, face: &FloorFace, used: &Used) {
    let [font, cid, descriptor, cmap, file] = [0, 1, 2, 3, 4].map(|i| Ref::new(first + i));
    let name = Name(b"FLOORS+AtkinsonHyperlegibleNext");
    let system = SystemInfo {
        registry: Str(b"Adobe"),
        ordering: Str(b"Identity"),
        supplement: 0,
    };
    pdf.type0_font(font)
        .base_font(name)
        .encoding_predefined(Name(b"Identity-H"))
        .descendant_font(cid)
        .to_unicode(cmap);
    let mut cid_font = pdf.cid_font(cid);
    cid_font
        .subtype(CidFontType::Type2)
        .base_font(name)
        .system_info(system);
    cid_font
        .font_descriptor(descriptor)
        .cid_to_gid_map_predefined(Name(b"Identity"));
    let mut widths = cid_font.widths();
    for (new, (_, old)) in &used.characters {
        let width = face.parsed.get_glyph_width(*old).unwrap_or(0);
        widths.consecutive(*new, [f32::from(width)]);
    }
    widths.finish();
    cid_font.finish();
    pdf.font_descriptor(descriptor)
        .name(name)
        .flags(FontFlags::SYMBOLIC)
        .bbox(Rect::new(-200.0, -320.0, 1200.0, 990.0))
        .italic_angle(0.0)
        .ascent(984.0)
        .descent(-316.0)
        .cap_height(668.0)
        .stem_v(80.0)
        .font_file2(file);
    let mut unicode = UnicodeCmap::new(Name(b"Custom"), system);
    for (new, (character, _)) in &used.characters {
        unicode.pair(*new, *character);
    }
    pdf.cmap(cmap, &unicode.finish());
    let cut = subsetter::subset(face.weight.font_file(), 0, &used.mapper).unwrap();
    pdf.stream(file, &squeeze(&cut)).filter(Filter::FlateDecode);
}

fn squeeze(bytes: &[u8]) -> Vec<u8> {
    let mut encoder = ZlibEncoder::new(Vec::new(), Compression::default());
    encoder.write_all(bytes).unwrap();
    encoder.finish().unwrap()
}
