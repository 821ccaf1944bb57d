//! How well the codes of the demo's labels are read when they are worn: printed at 203 dpi, and then blurred by one dot,
//! turned by 3°, seen at 70 %, and made black and white again, all at once.
//!
//! Needs `pdftoppm`, and a Python with `zxing-cpp` and `pillow`. The figures are printed.

use serde_json::{Value, json};
use stories::labels::{all_lots, run, save, set};
use stories::{Engine, House};

/// How many labels are looked at.
const LABELS: usize = 33;

/// One line a picture: is the square code read, and are the bars?
const WORN: &str = r#"
import sys
import zxingcpp
from PIL import Image, ImageFilter
for name in sys.argv[1:]:
    sharp = Image.open(name).convert("L")
    page = Image.new("L", (sharp.width + 80, sharp.height + 80), 255)
    page.paste(sharp, (40, 40))
    page = page.filter(ImageFilter.GaussianBlur(1))
    page = page.rotate(3, resample=Image.BICUBIC, expand=True, fillcolor=255)
    page = page.resize((round(page.width * 0.7), round(page.height * 0.7)), Image.LANCZOS)
    page = page.point(lambda dot: 255 if dot > 128 else 0)
    kinds = {code.symbology_identifier[:2] for code in zxingcpp.read_barcodes(page)}
    print("]Q" in kinds, "]C" in kinds or "]E" in kinds)
"#;

#[test]
fn worn_codes_are_still_read() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let python = std::env::var("GAMBREL_PYTHON").unwrap_or_else(|_| "python3".into());
    let lots: Vec<Value> = all_lots(&caller)
        .iter()
        .map(|lot| caller.lot(lot))
        .collect();
    // On a roll of 62 mm the square code stands alone: three dots a module of a lot with its pack are 79 mm with the
    // white. On paper of 102 mm bars are three dots.
    for (place, languages, template, has_bars) in [
        ("us", json!(["en"]), "", false),
        ("us", json!(["en", "fr"]), "", false),
        ("ca", json!(["en", "fr"]), "", false),
        ("eu", json!(["fr"]), "", false),
        ("us", json!(["en"]), "&template=pack-wide", true),
        ("ca", json!(["en", "fr"]), "&template=pack-ca-long", true),
        ("us", json!(["en"]), "&template=tub", false),
        ("us", json!(["en"]), "&template=freezer", false),
    ] {
        set(
            &caller,
            &[("profile", json!(place)), ("languages", languages.clone())],
        );
        let mut pictures: Vec<String> = Vec::new();
        for lot in &lots {
            if pictures.len() == LABELS {
                break;
            }
            let code = lot["code"].as_str().unwrap();
            let answer = caller.get(&format!("/api/lots/{code}/labels.pdf?packs=1{template}"));
            if answer.status != 200 {
                continue;
            }
            let name = format!("worn-{place}-{}.pdf", pictures.len());
            let pdf = save(house.folder(), &name, &answer.bytes);
            let stem = pdf.with_extension("");
            let (pdf, stem) = (pdf.to_str().unwrap(), stem.to_str().unwrap());
            run(
                "pdftoppm",
                &["-r", "203", "-gray", "-png", "-singlefile", pdf, stem],
            );
            pictures.push(format!("{stem}.png"));
        }
        let mut arguments = vec!["-c", WORN];
        arguments.extend(pictures.iter().map(String::as_str));
        let said = run(&python, &arguments);
        let read: Vec<Vec<&str>> = said.lines().map(|line| line.split(' ').collect()).collect();
        let count = |nth: usize| read.iter().filter(|line| line[nth] == "True").count();
        let (square, bars) = (count(0), count(1));
        println!(
            "{place} {languages} {template}: of {} labels {square} square codes and {bars} bars are read",
            read.len(),
        );
        assert_eq!(read.len(), LABELS);
        assert_eq!(
            square,
            read.len(),
            "{place} {languages}: the square code is what a label relies on"
        );
        let enough = if has_bars { 30 } else { 0 };
        assert!(
            bars >= enough,
            "{place} {languages} {template}: {bars} of {}",
            read.len()
        );
    }
}
