//! Outside judges of the codes: two readers, two print engines, and a GS1 checker.
//!
//! Needs `pdftoppm` (poppler-utils), `gs` (ghostscript), `zbarimg` (zbar-tools), and a Python with
//! `zxing-cpp`, `pillow` and `treepoem`, which runs BWIPP inside Ghostscript.

use crate::common;
use crate::common::tools::{picture, python, run, save};
use domain::gs1::{Contents, DigitalLink, Gtin, LastDay, Message, read};
use labels::{Code, CodeKind, Dpi, Facts, Field, PlacedLabel, Template, lay_out, pdf};
use std::ffi::OsStr;
use std::path::Path;

const DPI: [Dpi; 2] = [Dpi::D203, Dpi::D300];

/// A label with a place for each sort of code.
const EVERYTHING: &str = r#"{ "purpose": "kitchen", "width_mm": 110, "height_mm": 70, "dpi": [203, 300], "items": [
    { "stack": { "x": 2, "y": 2, "w": 60, "h": 8, "texts": [
        { "field": "lot", "measure": "capitals", "min_mm": 2, "max_mm": 3, "required": true }, { "field": "hri", "measure": "capitals", "min_mm": 1, "max_mm": 2, "beside": true }
    ] } },
    { "code128": { "x": 2.3, "y": 12, "w": 106, "h": 13 } },
    { "qr": { "x": 3.1, "y": 27.2, "size": 40, "level": "q" } },
    { "ean13": { "x": 50, "y": 30, "w": 50, "h": 20 } }
] }"#;

const LOT: &str = "BRC26159A006";
/// A separator stands within it.
const SEPARATED: &str = "(01)09521234543213(10)L26(21)L26-12";

fn contents(pack: Option<u32>, net_grams: Option<u32>, last_day: Option<LastDay>) -> Contents {
    let gtin = if net_grams.is_some() {
        "99521234543216"
    } else {
        "09521234543213"
    };
    Contents {
        gtin: Gtin::parse(gtin).unwrap(),
        lot: LOT.into(),
        pack,
        net_grams,
        last_day,
    }
}

/// Everything that a kitchen with a GTIN says, in all combinations.
fn all_contents() -> Vec<Contents> {
    let day = "2026-07-27".parse().unwrap();
    let days = [
        None,
        Some(LastDay::UseBy(day)),
        Some(LastDay::BestBefore(day)),
    ];
    let mut all = Vec::new();
    for last_day in days {
        for net_grams in [None, Some(1_250)] {
            all.extend([None, Some(112)].map(|pack| contents(pack, net_grams, last_day)));
        }
    }
    all
}

fn facts(gs1: Vec<String>, linear: &str, qr: &str) -> Facts {
    let mut facts = common::facts(&[(Field::Lot, "BRC-26159-A00-6")], linear);
    facts.gs1 = gs1;
    facts.qr = qr.into();
    facts.ean13 = Some("2000042212995".into());
    facts
}

/// Labels that show every sort of code, and both readers' words for it.
fn labels() -> Vec<Facts> {
    let host = "https://trace.cinderhook.example";
    let lot = format!("{host}/L/{LOT}");
    let mut all = vec![
        facts(Vec::new(), "BRC26159A006/12", &format!("{host}/L/{LOT}/12")),
        facts(vec![format!("(91){LOT}")], LOT, &lot),
        facts(vec![SEPARATED.into()], LOT, &lot),
    ];
    for contents in all_contents() {
        let messages = contents.messages().unwrap();
        let link = contents.link().unwrap();
        let texts: Vec<String> = messages.iter().map(Message::bracketed).collect();
        all.push(facts(texts.clone(), LOT, &link.short_uri(host)));
        all.push(facts(texts, LOT, &link.uri(host)));
    }
    all
}

fn placed(facts: &Facts, dpi: Dpi) -> PlacedLabel {
    let template = Template::parse("everything", EVERYTHING).unwrap();
    lay_out(facts, &template, dpi).unwrap_or_else(|why| panic!("{why}"))
}

/// One line a code: symbology identifier, and the bytes in hexadecimal.
const READER: &str = r#"
import sys
import zxingcpp
from PIL import Image
for name in sys.argv[1:]:
    for code in zxingcpp.read_barcodes(Image.open(name).convert("L")):
        print(name, code.symbology_identifier, code.bytes.hex())
"#;

#[test]
fn both_readers_say_what_the_label_holds() {
    let mut pictures = Vec::new();
    let mut wanted = Vec::new();
    for (nth, facts) in labels().iter().enumerate() {
        for dpi in DPI {
            let label = placed(facts, dpi);
            let file = save(
                &format!("code-{nth}-{}.pdf", dpi.number()),
                &pdf(std::slice::from_ref(&label)).unwrap(),
            );
            let picture = picture(&file, dpi);
            assert_eq!(label.codes().count(), 3);
            by_zbar(&picture, &label);
            for code in label.codes() {
                // standards 8: what a scanner puts before the data.
                let identifier = match code.kind {
                    CodeKind::Qr => "]Q1",
                    CodeKind::Code128 => "]C0",
                    CodeKind::Gs1128 => "]C1",
                    CodeKind::Ean13 => "]E0",
                };
                let hex: String = code.payload.bytes().map(|b| format!("{b:02x}")).collect();
                wanted.push(format!("{} {identifier} {hex}", picture.display()));
            }
            pictures.push(picture);
        }
    }
    let names: Vec<&OsStr> = pictures.iter().map(|picture| picture.as_os_str()).collect();
    let said = python(READER, &names);
    let mut said: Vec<&str> = said.lines().collect();
    said.sort_unstable();
    wanted.sort();
    assert_eq!(said, wanted);
    // What the labels were to show is there.
    let shown = |kind: &str| said.iter().filter(|line| line.contains(kind)).count();
    assert!(shown("]C0") >= 2 && shown("]C1") >= 20 && shown("]E0") >= 20);
    assert!(
        said.iter()
            .any(|line| line.contains("]C1") && line.contains("1d3231"))
    );
}

fn by_zbar(picture: &Path, label: &PlacedLabel) {
    let said = run("zbarimg", &["-q".as_ref(), picture.as_os_str()]);
    for code in label.codes() {
        let name = match code.kind {
            CodeKind::Qr => "QR-Code",
            CodeKind::Code128 | CodeKind::Gs1128 => "CODE-128",
            CodeKind::Ean13 => "EAN-13",
        };
        let line = format!("{name}:{}", code.payload);
        assert!(
            said.lines().any(|known| known == line),
            "{line} not in {said}"
        );
    }
}

/// A black and white picture, as a print head has it.
struct Dots {
    wide: usize,
    rows: Vec<Vec<u8>>,
}

impl Dots {
    /// Reads the plainest of formats: P4, width, height, then eight dots a byte.
    fn read(bytes: &[u8]) -> Dots {
        let (mut rest, mut words) = (bytes, Vec::new());
        while words.len() < 3 {
            let end = rest.iter().position(u8::is_ascii_whitespace).unwrap();
            let word = std::str::from_utf8(&rest[..end]).unwrap();
            if word.starts_with('#') {
                let line = rest.iter().position(|byte| *byte == b'\n').unwrap();
                rest = &rest[line + 1..];
                continue;
            }
            words.push(word.to_owned());
            rest = &rest[end + 1..];
        }
        assert_eq!(words[0], "P4");
        let wide: usize = words[1].parse().unwrap();
        let rows = rest.chunks(wide.div_ceil(8)).map(<[u8]>::to_vec).collect();
        Dots { wide, rows }
    }

    fn is_black(&self, x: i64, y: i64) -> bool {
        let (x, y) = (usize::try_from(x).unwrap(), usize::try_from(y).unwrap());
        x < self.wide && self.rows[y][x / 8] >> (7 - x % 8) & 1 == 1
    }

    /// How many dots of a code are not as planned; its top and bottom rows may be left out.
    fn wrong(&self, code: &Code, dpi: Dpi, without_ends: bool) -> usize {
        let edge = |length| dpi.first_dot(length);
        let box_of = |area: &labels::Area| {
            (
                edge(area.x)..edge(area.right()),
                edge(area.y)..edge(area.bottom()),
            )
        };
        let dark: Vec<_> = code.dark.iter().map(box_of).collect();
        let (columns, rows) = box_of(&code.bounds);
        let end = i64::from(without_ends);
        let rows = rows.start + end..rows.end - end;
        let dots = rows.flat_map(|y| columns.clone().map(move |x| (x, y)));
        dots.filter(|(x, y)| {
            let planned = dark.iter().any(|(xs, ys)| xs.contains(x) && ys.contains(y));
            planned != self.is_black(*x, *y)
        })
        .count()
    }
}

#[test]
fn every_dot_is_where_it_was_planned() {
    let facts = &labels()[4];
    for dpi in DPI {
        let label = placed(facts, dpi);
        let number = dpi.number();
        let file = save(
            &format!("dots-{number}.pdf"),
            &pdf(std::slice::from_ref(&label)).unwrap(),
        );
        let stem = file.with_extension("");
        let resolution = number.to_string();
        let options = ["-r", &resolution, "-mono", "-singlefile"].map(OsStr::new);
        run(
            "pdftoppm",
            &[&options[..], &[file.as_os_str(), stem.as_os_str()]].concat(),
        );
        let output = stem.with_extension("gs.pbm");
        let options = [
            "-q".to_owned(),
            "-dNOPAUSE".to_owned(),
            "-dBATCH".to_owned(),
            "-sDEVICE=pbmraw".to_owned(),
            format!("-r{number}"),
            format!("-sOutputFile={}", output.display()),
            file.display().to_string(),
        ];
        run("gs", &options.each_ref().map(OsStr::new));
        for (picture, from_the_top) in [(stem.with_extension("pbm"), true), (output, false)] {
            let dots = Dots::read(&std::fs::read(&picture).unwrap());
            for code in label.codes() {
                // The height of a page is no whole number of dots. Who begins at its foot has every
                // row between two dots: bars do not mind, and a square code has room for it.
                if !from_the_top && code.kind == CodeKind::Qr {
                    continue;
                }
                let wrong = dots.wrong(code, dpi, !from_the_top);
                assert_eq!(wrong, 0, "{} in {}", code.kind, picture.display());
            }
        }
    }
}

/// One line a text: the width in modules, or what is wrong with it.
const CHECKER: &str = r#"
import sys
from concurrent.futures import ThreadPoolExecutor
import treepoem

def verdict(kind, text):
    options = {"lintreqs": True} if kind.startswith("gs1") else {}
    try:
        picture = treepoem.generate_barcode(kind, text, options, scale=1)
        return f"good {picture.width}"
    except treepoem.TreepoemError as error:
        return "bad " + str(error).replace("\n", " ")

with ThreadPoolExecutor(4) as pool:
    print(*pool.map(verdict, sys.argv[1::2], sys.argv[2::2]), sep="\n")
"#;

fn checked(cases: &[(&str, String)]) -> Vec<String> {
    let arguments: Vec<&OsStr> = cases
        .iter()
        .flat_map(|(kind, text)| [OsStr::new(*kind), OsStr::new(text)])
        .collect();
    let said = python(CHECKER, &arguments);
    let lines: Vec<String> = said.lines().map(str::to_owned).collect();
    assert_eq!(lines.len(), cases.len(), "{said}");
    lines
}

#[test]
fn the_checker_takes_every_message_and_makes_it_as_long() {
    let mut messages: Vec<Message> = vec![Message::parse(&format!("(91){LOT}")).unwrap()];
    for contents in all_contents() {
        messages.extend(contents.messages().unwrap());
    }
    messages.sort_by_key(Message::bracketed);
    messages.dedup();
    let cases: Vec<_> = messages
        .iter()
        .map(|message| ("gs1-128", message.bracketed()))
        .collect();
    for (message, verdict) in messages.iter().zip(checked(&cases)) {
        let label = placed(&facts(vec![message.bracketed()], LOT, "A"), Dpi::D203);
        let code = label.codes().find(|code| code.kind == CodeKind::Gs1128);
        let modules = code.unwrap().modules;
        assert_eq!(
            verdict,
            format!("good {modules}"),
            "{}",
            message.bracketed()
        );
    }
    let plain = [
        LOT,
        "26P0718-BEL7",
        "BRC26159A006/12",
        "1234567",
        "A1234B56",
    ];
    let cases = plain.map(|text| ("code128", text.to_owned()));
    for (text, verdict) in plain.iter().zip(checked(&cases)) {
        let label = placed(&facts(Vec::new(), text, "A"), Dpi::D203);
        let code = label.codes().find(|code| code.kind == CodeKind::Code128);
        assert_eq!(verdict, format!("good {}", code.unwrap().modules), "{text}");
    }
}

#[test]
fn the_checker_takes_every_address() {
    let mut cases = Vec::new();
    for contents in all_contents() {
        let link = contents.link().unwrap();
        cases.push(("gs1dlqrcode", link.uri("https://example.org/shop")));
    }
    for text in [
        "(01)09506000134352(3103)001250(10)L-26/0718.A",
        "(01)09506000134352(22)2A(10)AB/C(21)S1",
        "(414)9506000134376(254)COLD1",
    ] {
        let link = DigitalLink::new(read(text).unwrap()).unwrap();
        cases.push(("gs1dlqrcode", link.uri("https://example.org")));
    }
    for (case, verdict) in cases.iter().zip(checked(&cases)) {
        assert!(verdict.starts_with("good "), "{}: {verdict}", case.1);
    }
}

#[test]
fn what_the_checker_refuses_we_refuse_too() {
    // standards 8: its bad cases; standards 2: bad addresses.
    let texts = [
        "(01)09506000134353(10)ABC123",
        "(10)ABC123",
        "(01)99506000134355(3103)01250",
        "(01)99506000134355(3103)001250(3102)000125",
        "(01)09506000134352(17)261301",
        "(01)09506000134352(17)260229",
        "(01)09506000134352(7003)2607182430",
        "(01)09506000134352(10)ABC 123",
        "(01)09506000134352(10)ABCDEFGHIJKLMNOPQRSTU",
        "(01)09506000134352(422)056(426)056",
        "(01)09506000134352(37)10",
        "(29)X",
        "(18)261231",
    ];
    let cases = texts.map(|text| ("gs1-128", text.to_owned()));
    for (text, verdict) in texts.iter().zip(checked(&cases)) {
        assert!(verdict.starts_with("bad "), "{text}: {verdict}");
        assert!(Message::parse(text).is_err(), "{text}");
    }
    let paths = [
        "/01/09506000134352/10/ABC/22/2A",
        "/01/09506000134352/17/261231",
        "/01/09506000134353/10/ABC",
        "/01/09506000134352?21=A",
        "/01/09521234543213/10/A%20B",
        "/10/26P0718-BEL7",
    ];
    let cases = paths.map(|path| ("gs1dlqrcode", format!("https://example.org{path}")));
    for ((_, uri), verdict) in cases.iter().zip(checked(&cases)) {
        assert!(verdict.starts_with("bad "), "{uri}: {verdict}");
        assert!(DigitalLink::read(uri).is_err(), "{uri}");
    }
}

#[test]
fn the_checker_knows_our_till_codes() {
    // standards 1.4, and one that our own layout makes.
    let layout: domain::gs1::in_store::Layout = "28PPPPCVVVVV weight 3".parse().unwrap();
    let grams = domain::gs1::in_store::Value::Grams(865);
    let digits = [
        "2000042212995".to_owned(),
        "2847117012506".to_owned(),
        layout.encode(4711, grams).unwrap(),
    ];
    let mut cases: Vec<_> = digits.iter().map(|text| ("ean13", text.clone())).collect();
    cases.push(("ean13", "2000042212994".into()));
    let verdicts = checked(&cases);
    assert_eq!(verdicts[..3], ["good 95", "good 95", "good 95"]);
    assert!(verdicts[3].starts_with("bad "), "{}", verdicts[3]);
}
