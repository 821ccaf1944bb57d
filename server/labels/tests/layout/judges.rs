//! Outside judges: other people's programs draw, read and check our labels.
//!
//! Needs `pdftoppm`, `pdffonts`, `pdftotext` (poppler-utils), `zbarimg` (zbar-tools), `qpdf`, and a
//! Python with `zxing-cpp` and `pillow` (named by `GAMBREL_PYTHON`, else `python3`). A missing
//! one fails the test.

use std::ffi::OsStr;
use std::path::Path;

use crate::common;
use crate::common::tools::{picture, python, run, save};
use labels::{CodeKind, Dpi, Edges, Facts, PlacedLabel, Template, lay_out, pdf, png, raster};

/// Prints every code in a picture, one `format<TAB>text` a line, then how many pixels within the
/// boxes of the codes are neither black nor white.
const READER: &str = r#"
import sys
try:
    import zxingcpp
    from PIL import Image
except ImportError as missing:
    sys.exit(f"missing tool: Python module {missing.name}")
picture = Image.open(sys.argv[1]).convert("L")
for code in zxingcpp.read_barcodes(picture):
    print(code.format.name, code.bytes.decode(), sep="\t")
boxes = [tuple(map(int, box.split(","))) for box in sys.argv[2:]]
grey = sum(sum(picture.crop(box).histogram()[8:248]) for box in boxes)
print("grey", grey, sep="\t")
"#;

fn judge(name: &str, facts: &Facts, template: &Template) {
    for dpi in [Dpi::D203, Dpi::D300] {
        let label =
            lay_out(facts, template, dpi).unwrap_or_else(|refusal| panic!("{name}: {refusal}"));
        let bytes = pdf(std::slice::from_ref(&label)).unwrap();
        assert!(bytes.len() < 40_000, "{name}: {} bytes", bytes.len());
        let stem = format!("{name}-{}", dpi.number());
        let file = save(&format!("{stem}.pdf"), &bytes);
        sound(&file);
        says_the_words(&file, &label);
        reads(&picture(&file, dpi), &label);
        for edges in [Edges::Sharp, Edges::Smooth] {
            let file = file.with_extension(format!("{edges:?}.png"));
            std::fs::write(&file, png(&raster(&label, 1, edges)).unwrap()).unwrap();
            reads(&file, &label);
        }
    }
}

fn sound(file: &Path) {
    run("qpdf", &["--check".as_ref(), file.as_os_str()]);
    let fonts = run("pdffonts", &[file.as_os_str()]);
    let rows: Vec<&str> = fonts.lines().skip(2).collect();
    assert!(!rows.is_empty() && rows.len() <= 2, "{fonts}");
    for row in rows {
        // Columns from the right: object, number, has Unicode, is a subset, is embedded.
        let marks: Vec<&str> = row.split_whitespace().rev().skip(2).take(3).collect();
        assert_eq!(marks, ["yes"; 3], "{fonts}");
    }
}

fn says_the_words(file: &Path, label: &PlacedLabel) {
    let text = run(
        "pdftotext",
        &["-layout".as_ref(), file.as_os_str(), "-".as_ref()],
    );
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    for line in label.lines() {
        // A no-break space comes out of the file as any other.
        let line = line.text.replace('\u{a0}', " ");
        assert!(text.contains(&line), "{line:?} is not in {text:?}");
    }
}

fn reads(picture: &Path, label: &PlacedLabel) {
    let zbar = run("zbarimg", &["-q".as_ref(), picture.as_os_str()]);
    let dots = |code: &labels::Code| {
        let edge = |length| label.dpi.first_dot(length);
        let (area, end) = (code.bounds, code.bounds.right());
        format!(
            "{},{},{},{}",
            edge(area.x),
            edge(area.y),
            edge(end),
            edge(area.bottom())
        )
    };
    let boxes: Vec<String> = label.codes().map(dots).collect();
    let mut arguments: Vec<&OsStr> = vec![picture.as_os_str()];
    arguments.extend(boxes.iter().map(OsStr::new));
    let zxing = python(READER, &arguments);
    assert!(
        zxing.contains("grey\t0\n"),
        "a module is not on whole dots: {zxing}"
    );
    assert!(label.codes().count() > 0);
    for code in label.codes() {
        let (zbar_name, zxing_name) = match code.kind {
            CodeKind::Qr => ("QR-Code", "QRCode"),
            CodeKind::Code128 | CodeKind::Gs1128 => ("CODE-128", "Code128"),
            CodeKind::Ean13 => ("EAN-13", "EAN13"),
        };
        let by_zbar = format!("{zbar_name}:{}", code.payload);
        let by_zxing = format!("{zxing_name}\t{}", code.payload);
        assert!(
            zbar.lines().any(|line| line == by_zbar),
            "{by_zbar} not in {zbar}"
        );
        assert!(
            zxing.lines().any(|line| line == by_zxing),
            "{by_zxing} not in {zxing}"
        );
    }
}

#[test]
fn every_example_of_every_template() {
    for (template, case, facts) in common::examples() {
        judge(&format!("{}-{case}", template.name()), &facts, &template);
    }
}

#[test]
fn a_pack_in_two_languages() {
    judge("full-pack", &common::full_pack(), &common::pack_tall());
}

#[test]
fn a_tub_of_a_kitchen_without_an_address() {
    let mut facts = common::plain_tub();
    facts.qr = "http://127.0.0.1:8080/L/BRC26159A006/12".into();
    judge("home-tub", &facts, &common::tub());
}
