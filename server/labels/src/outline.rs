//! The outlines of the embedded faces' glyphs, as paths in font units, y upwards.

use std::sync::LazyLock;

use allsorts::binary::read::ReadScope;
use allsorts::font_data::FontData;
use allsorts::outline::{OutlineBuilder, OutlineSink};
use allsorts::pathfinder_geometry::line_segment::LineSegment2F;
use allsorts::pathfinder_geometry::vector::Vector2F;
use allsorts::tables::glyf::{GlyfVisitorContext, LocaGlyf};
use allsorts::tables::{FontTableProvider, MaxpTable};
use allsorts::tag;
use zeno::{Command, Point};

use crate::face::{Glyph, Weight};

/// The outline of a glyph; none for a blank.
pub(crate) fn outline(weight: Weight, glyph: Glyph) -> &'static [Command] {
    static OUTLINES: LazyLock<[Vec<Vec<Command>>; 2]> = LazyLock::new(|| {
        Weight::ALL.map(|weight| {
            read(weight.font_file()).expect("the embedded font is whole: a test draws it")
        })
    });
    let outlines = match weight {
        Weight::Regular => &OUTLINES[0],
        Weight::Bold => &OUTLINES[1],
    };
    outlines
        .get(usize::from(glyph.id))
        .map_or(&[], Vec::as_slice)
}

/// Every outline of a font file, by number of glyph.
fn read(file: &[u8]) -> Option<Vec<Vec<Command>>> {
    let data = ReadScope::new(file).read::<FontData<'_>>().ok()?;
    let tables = data.table_provider(0).ok()?;
    let numbers = tables.read_table_data(tag::MAXP).ok()?;
    let count = ReadScope::new(&numbers)
        .read::<MaxpTable>()
        .ok()?
        .num_glyphs;
    let mut glyphs = LocaGlyf::load(&tables).ok()?;
    let mut visitor = GlyfVisitorContext::new(&mut glyphs, None);
    let outline = |id| {
        let mut path = Path(Vec::new());
        visitor.visit(id, None, &mut path).ok()?;
        Some(path.0)
    };
    (0..count).map(outline).collect()
}

/// Collects an outline.
struct Path(Vec<Command>);

fn point(at: Vector2F) -> Point {
    Point::new(at.x(), at.y())
}

impl OutlineSink for Path {
    fn move_to(&mut self, to: Vector2F) {
        self.0.push(Command::MoveTo(point(to)));
    }

    fn line_to(&mut self, to: Vector2F) {
        self.0.push(Command::LineTo(point(to)));
    }

    fn quadratic_curve_to(&mut self, by: Vector2F, to: Vector2F) {
        self.0.push(Command::QuadTo(point(by), point(to)));
    }

    fn cubic_curve_to(&mut self, by: LineSegment2F, to: Vector2F) {
        self.0.push(Command::CurveTo(
            point(by.from()),
            point(by.to()),
            point(to),
        ));
    }

    fn close(&mut self) {
        self.0.push(Command::Close);
    }
}
