//! Our dots against other people's programs: the PDF drawn by poppler, and PWG raster read by CUPS
//! and drawn by Ghostscript.
//!
//! Needs `pdftoppm` (poppler-utils), `ippeveps` (cups-ipp-utils) and `gs` (ghostscript). A missing
//! one fails the test. That both readers of codes read our PNG is in `judges.rs`.

use std::ffi::OsStr;
use std::path::{Path, PathBuf};

use crate::common;
use crate::common::tools::{Grey, output};
use labels::{Area, Bitmap, Colours, Dpi, Edges, PlacedLabel, lay_out, pdf, pwg, raster};

fn file(name: &str, bytes: &[u8]) -> PathBuf {
    let file = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    std::fs::write(&file, bytes).unwrap();
    file
}

/// Every template's longest example at both printers.
fn labels() -> Vec<(String, PlacedLabel)> {
    let both = [Dpi::D203, Dpi::D300];
    let examples = common::examples().into_iter();
    let longest = examples.filter(|(_, case, _)| case == "long");
    let placed = longest.flat_map(|(template, _, facts)| {
        both.map(|dpi| {
            let label = lay_out(&facts, &template, dpi).unwrap();
            (format!("{}-{}", template.name(), dpi.number()), label)
        })
    });
    placed.collect()
}

/// Which pixels of a bitmap are black.
fn black(bitmap: &Bitmap) -> Vec<Vec<bool>> {
    let row = |row: &[u8]| row.iter().map(|ink| *ink >= 128).collect();
    bitmap.rows().map(row).collect()
}

/// A box of pixels: left, top, right, bottom.
type Box = [usize; 4];

fn dots(dpi: Dpi, scale: u8, area: &Area) -> Box {
    [area.x, area.y, area.right(), area.bottom()]
        .map(|edge| usize::try_from(dpi.first_dot(edge)).unwrap() * usize::from(scale))
}

/// The box of the black pixels within a box, if there are any.
fn ink([left, top, right, bottom]: Box, black: impl Fn(usize, usize) -> bool) -> Option<Box> {
    let pixels = (top..bottom).flat_map(|y| (left..right).map(move |x| (x, y)));
    let inked = pixels.filter(|(x, y)| black(*x, *y));
    inked.fold(None, |found: Option<Box>, (x, y)| {
        let [l, t, r, b] = found.unwrap_or([x, y, x, y]);
        Some([l.min(x), t.min(y), r.max(x), b.max(y)])
    })
}

/// Codes are the same pixel by pixel, and each line of text has its ink at the same place, give or
/// take two pixels: poppler does not set letters on whole dots.
fn agrees(name: &str, label: &PlacedLabel, scale: u8) {
    let ours = black(&raster(label, scale, Edges::Sharp));
    let page = pdf(std::slice::from_ref(label)).unwrap();
    let page = file(&format!("{name}-{scale}-dots.pdf"), &page);
    let number = (label.dpi.number() * u16::from(scale)).to_string();
    let arguments = ["-r", &number, "-gray"].map(OsStr::new);
    let theirs = output(
        "pdftoppm",
        &[],
        &[&arguments, &[page.as_os_str()][..]].concat(),
    );
    let theirs = Grey::read(&theirs);
    // A dot that the page's edge cuts through is in their picture only.
    let (width, height) = (ours[0].len(), ours.len());
    let more = 0..=usize::from(scale);
    assert!(more.contains(&(theirs.width - width)) && more.contains(&(theirs.height - height)));
    for code in label.codes() {
        let [left, top, right, bottom] = dots(label.dpi, scale, &code.bounds);
        for (y, x) in (top..bottom).flat_map(|y| (left..right).map(move |x| (y, x))) {
            let light = theirs.light[y * theirs.width + x];
            let wanted = if ours[y][x] { 0 } else { 255 };
            assert_eq!(light, wanted, "{name}: {} at {x}, {y}", code.kind);
        }
    }
    for line in label.lines() {
        let [left, top, right, bottom] = dots(label.dpi, scale, &line.bounds());
        let (right, bottom) = ((right + 1).min(width), (bottom + 1).min(height));
        let around = [left - 1, top - 1, right, bottom];
        let mine = ink(around, |x, y| ours[y][x]).expect("a line has ink");
        let other = ink(around, |x, y| theirs.black(x, y)).expect("a line has ink");
        let far = mine.iter().zip(other).map(|(a, b)| a.abs_diff(b)).max();
        let words = &line.text;
        assert!(
            far <= Some(2),
            "{name}: {words:?}: {mine:?}, poppler has {other:?}"
        );
    }
}

#[test]
fn dots_agree_with_the_pdf() {
    for (name, label) in labels() {
        for scale in [1, 4] {
            agrees(&name, &label, scale);
        }
    }
}

/// What CUPS reads and Ghostscript draws, page by page, each in the lower left of a wider page.
fn read_by_cups(name: &str, stream: &[u8], colours: Colours, dpi: Dpi) -> Vec<Grey> {
    let path = file(&format!("{name}.pwg"), stream);
    let environment = [("CONTENT_TYPE", "image/pwg-raster")];
    let read = output("/usr/sbin/ippeveps", &environment, &[path.as_os_str()]);
    let mut script = String::from_utf8(read).unwrap();
    if colours == Colours::Black1 {
        // It reads black dots right, for it leaves out empty rows, and then draws ink as light.
        script = script.replace("Decode[0 1]", "Decode[1 0]");
    }
    let script = file(&format!("{name}.ps"), script.as_bytes());
    let page = |nth: usize| path.with_extension(format!("{nth}.pgm"));
    (1..)
        .map(page)
        .map_while(|old| std::fs::remove_file(old).ok())
        .for_each(drop);
    let (number, target) = (format!("-r{}", dpi.number()), path.with_extension("%d.pgm"));
    let target = format!("-sOutputFile={}", target.display());
    let quiet = [
        "-q",
        "-dSAFER",
        "-dBATCH",
        "-dNOPAUSE",
        "-sDEVICE=pgmraw",
        "-g1500x2800",
    ];
    let arguments = [&quiet[..], &[&number, &target]].concat();
    let mut arguments: Vec<&OsStr> = arguments.into_iter().map(OsStr::new).collect();
    arguments.push(script.as_os_str());
    output("gs", &[], &arguments);
    let pages = (1..).map_while(|nth| std::fs::read(page(nth)).ok());
    pages.map(|pgm| Grey::read(&pgm)).collect()
}

/// Every black dot of ours is black in what CUPS reads, and no other.
#[test]
fn cups_reads_pwg_raster() {
    for (colours, dpi) in Colours::ALL
        .into_iter()
        .flat_map(|c| [(c, Dpi::D203), (c, Dpi::D300)])
    {
        let labels = labels().into_iter().map(|(_, label)| label);
        let labels: Vec<PlacedLabel> = labels.filter(|label| label.dpi == dpi).collect();
        let name = format!("{}-{}", colours.as_str(), dpi.number());
        let pages = read_by_cups(&name, &pwg(&labels, colours), colours, dpi);
        assert_eq!(pages.len(), labels.len());
        for (nth, (label, page)) in labels.iter().zip(pages).enumerate() {
            let ours = black(&raster(label, 1, Edges::Sharp));
            let above = page.height - ours.len();
            for (y, x) in (0..page.height).flat_map(|y| (0..page.width).map(move |x| (y, x))) {
                let row = y.checked_sub(above).map_or(&[][..], |y| &ours[y]);
                let dot = row.get(x).is_some_and(|dot| *dot);
                assert_eq!(page.black(x, y), dot, "{name}, page {nth}, at {x}, {y}");
            }
        }
    }
}
