//! How tall letters really are: measured on what poppler draws, not claimed by the font.
//!
//! Every template in `label-templates`, every text in it, set as small as the template allows.
//! Needs `pdftoppm` (poppler-utils); if it is missing the test fails.

use std::ffi::OsStr;
use std::path::{Path, PathBuf};

use crate::common;
use crate::common::tools::{Grey, output};
use labels::{
    Dpi, Facts, Field, Length, Measure, PlacedLabel, PlacedLine, Style, Template, lay_out, pdf,
};
use serde_json::Value;

/// Fine enough: a pixel is 21 µm, a printer's dot 85 or 125.
const PER_INCH: i64 = 1200;

/// The shipped templates' files.
fn files() -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../label-templates");
    let entries = std::fs::read_dir(folder).unwrap();
    let mut files: Vec<PathBuf> = entries.map(|entry| entry.unwrap().path()).collect();
    files.retain(|file| {
        let name = file.to_string_lossy();
        name.ends_with(".json") && !name.ends_with(".schema.json")
    });
    files.sort();
    files
}

/// The template with every text held at its smallest.
fn smallest(file: &Path) -> Template {
    fn hold(value: &mut Value) {
        match value {
            Value::Array(values) => values.iter_mut().for_each(hold),
            Value::Object(fields) => {
                if let Some(least) = fields.get("min_mm").cloned() {
                    fields.insert("max_mm".into(), least);
                }
                fields.values_mut().for_each(hold);
            }
            _ => {}
        }
    }
    let mut json = serde_json::from_str(&std::fs::read_to_string(file).unwrap()).unwrap();
    hold(&mut json);
    let name = file.file_stem().unwrap().to_string_lossy();
    Template::parse(&name, &json.to_string()).unwrap_or_else(|error| panic!("{error}"))
}

/// What a label says that has only the texts it must, and one more.
fn facts(template: &Template, field: Field, text: &str) -> Facts {
    let mut texts: Vec<(Field, &str)> = template.required().map(|field| (field, "I")).collect();
    texts.push((field, text));
    common::facts(&texts, "BRC26159A006")
}

fn pixels(length: Length) -> i64 {
    length.um() * PER_INCH / 25_400
}

/// The height of the ink that stands on a line's baseline, in pixels.
fn height(page: &Path, nth: usize, line: &PlacedLine) -> i64 {
    let (left, base) = (pixels(line.x), pixels(line.baseline));
    let (width, tall) = (pixels(line.width), pixels(line.size));
    let number = |number: i64| number.to_string();
    let (nth, per_inch) = (nth.to_string(), number(PER_INCH));
    // A little below the baseline, for what rounding does.
    let (top, below) = (base - tall, 3);
    let cut = [
        number(left),
        number(top),
        number(width),
        number(tall + below),
    ];
    let options = ["-gray", "-r", &per_inch, "-f", &nth, "-l", &nth];
    let cut = ["-x", &cut[0], "-y", &cut[1], "-W", &cut[2], "-H", &cut[3]];
    let mut arguments: Vec<&OsStr> = options.into_iter().chain(cut).map(OsStr::new).collect();
    arguments.push(page.as_os_str());
    let picture = Grey::read(&output("pdftoppm", &[], &arguments));
    let inked = |y: &usize| (0..picture.width).any(|x| picture.black(x, *y));
    let up = (0..picture.height).rev();
    up.skip_while(|y| !inked(y)).take_while(inked).count() as i64
}

/// A template's labels, one for each text, each set in letters that are as tall as is measured.
fn labels(template: &Template) -> Vec<(Style, PlacedLabel)> {
    let dpi = [Dpi::D203, Dpi::D300]
        .into_iter()
        .find(|dpi| template.suits(*dpi))
        .unwrap();
    let label = |style: Style| {
        let text = match style.measure {
            Measure::XHeight => "xxx",
            Measure::Capitals => "HHH",
        };
        let facts = facts(template, style.field, text);
        let label = lay_out(&facts, template, dpi);
        let label = label.unwrap_or_else(|refusal| panic!("{}: {refusal}", template.name()));
        (style, label)
    };
    // Said only beside bars that hold the lot alone, and those of a lot without packs do not.
    let styles = template.text_styles();
    let said = styles.filter(|style| style.field != Field::LotOnly);
    said.map(label).collect()
}

#[test]
fn no_letter_is_drawn_smaller_than_its_template_allows() {
    let files = files();
    assert!(files.len() >= 3, "{files:?}");
    for file in files {
        let template = smallest(&file);
        let labels = labels(&template);
        assert!(!labels.is_empty());
        let pages: Vec<PlacedLabel> = labels.iter().map(|(_, label)| label.clone()).collect();
        let path = Path::new(env!("CARGO_TARGET_TMPDIR"));
        let path = path.join(format!("heights-{}.pdf", template.name()));
        std::fs::write(&path, pdf(&pages).unwrap()).unwrap();
        for ((style, label), nth) in labels.iter().zip(1..) {
            let Style { field, min, .. } = style;
            let line = label.lines().find(|line| line.field == *field).unwrap();
            let drawn = height(&path, nth, line);
            // The measuring may be out by one pixel; much more ink is that of something else.
            let seen = |pixels: i64| Length::from_um(pixels * 25_400 / PER_INCH);
            let says = || format!("{}: {field} is {}, not {min}", template.name(), seen(drawn));
            assert!(seen(drawn + 1) >= *min, "{}", says());
            assert!(seen(drawn) < *min * 2, "{}", says());
        }
    }
}
