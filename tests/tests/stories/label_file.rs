//! A label drawn from a file of facts, without a record: where it is for a customer it is held to the law of
//! its place, as any other.

use serde_json::{Value, json};
use std::path::Path;
use std::process::{Command, Output};
use stories::house::binary;

/// Draws facts on a label.
fn draw(folder: &Path, texts: &Value, template: &str, more: &[&str]) -> (Output, bool) {
    let facts = folder.join("facts.json");
    let whole = json!({ "texts": texts, "qr": "HTTPS://TRACE.TEST.EXAMPLE/L/BRC26159A006/1", "linear": "BRC26159A006" });
    std::fs::write(&facts, whole.to_string()).unwrap();
    let out = folder.join("label.svg");
    let _ = std::fs::remove_file(&out);
    let mut command = Command::new(binary());
    command
        .arg("label")
        .arg(&facts)
        .args(["--template", template]);
    let done = command.arg("--out").arg(&out).args(more).output().unwrap();
    (done, out.exists())
}

fn told(done: &Output) -> String {
    String::from_utf8_lossy(&done.stderr).into_owned()
}

fn chops() -> Value {
    json!({
        "name": "Pork chops", "use-by-heading": "BEST BEFORE", "use-by": "26 JUN 2026", "lot": "BRC-26159-A00-6 / 1",
        "net": "Net Wt. 0.55 lb", "allergens": "Contains: Milk. May contain: soy"
    })
}

fn with(mut texts: Value, field: &str, says: &str) -> Value {
    texts[field] = json!(says);
    texts
}

#[test]
fn what_is_for_a_customer_passes_the_gate_of_its_place() {
    let folder = tempfile::tempdir().unwrap();
    let folder = folder.path();
    // 250 g are a little more than 0.55 lb.
    let (done, drawn) = draw(folder, &chops(), "pack-us", &["--grams", "250"]);
    assert!(done.status.success() && drawn, "{}", told(&done));
    assert_eq!(told(&done), "");
    // More than is in it: of a row that nobody has read it is warned.
    let (done, drawn) = draw(folder, &chops(), "pack-us", &["--grams", "240"]);
    let says = told(&done);
    assert!(done.status.success() && drawn, "{says}");
    assert!(
        says.contains("net: ") && says.contains("us: us-4.3"),
        "{says}"
    );
    // The titles of an allergen statement.
    let wrong = with(chops(), "allergens", "Allergy advice: Milk");
    let (done, drawn) = draw(folder, &wrong, "pack-us", &["--grams", "250"]);
    let says = told(&done);
    assert!(!done.status.success() && !drawn, "{says}");
    assert!(
        says.contains("allergens: ") && says.contains("us-A3"),
        "{says}"
    );
    assert!(says.contains("--specimen"), "{says}");
    // What nobody weighed is not held against a weight, and that is told.
    let (done, drawn) = draw(folder, &chops(), "pack-us", &[]);
    assert!(done.status.success() && drawn);
    assert!(told(&done).contains("give --grams"), "{}", told(&done));
}

#[test]
fn words_that_a_place_forbids_on_meat() {
    let folder = tempfile::tempdir().unwrap();
    let texts = with(chops(), "use-by-heading", "USE BY");
    let template = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../label-templates/pack-us.json"
    );
    let (done, _) = draw(folder.path(), &texts, template, &["--place", "us"]);
    assert!(done.status.success(), "{}", told(&done));
    let (done, drawn) = draw(folder.path(), &texts, template, &["--place", "ca"]);
    let says = told(&done);
    assert!(!done.status.success() && !drawn, "{says}");
    let row = says.contains("use-by-heading: ") && says.contains("canada-eu-uk-2.11");
    assert!(row, "{says}");
    let (done, _) = draw(folder.path(), &texts, template, &["--place", "mars"]);
    assert!(told(&done).contains("Places are: "), "{}", told(&done));
    // What the kitchen has for itself is nobody's law.
    let (done, drawn) = draw(
        folder.path(),
        &with(texts, "use-by-short", "FRI 26 JUN"),
        "tub",
        &["--place", "ca"],
    );
    assert!(done.status.success() && drawn, "{}", told(&done));
}

#[test]
fn letters_that_are_too_low_are_not_for_sale() {
    let folder = tempfile::tempdir().unwrap();
    let low = include_str!("../../../label-templates/pack-eu.json");
    let low = low.replace(r#""min_mm": 1.6"#, r#""min_mm": 0.8"#);
    let path = folder.path().join("low.json");
    std::fs::write(&path, low).unwrap();
    let path = path.to_str().unwrap();
    let (done, drawn) = draw(folder.path(), &chops(), path, &["--place", "eu"]);
    let says = told(&done);
    assert!(!done.status.success() && !drawn, "{says}");
    assert!(
        says.contains("low.json: ") && says.contains("canada-eu-uk-9.2"),
        "{says}"
    );
}

#[test]
fn a_specimen_says_that_it_is_one() {
    let folder = tempfile::tempdir().unwrap();
    let (done, drawn) = draw(
        folder.path(),
        &chops(),
        "pack-us",
        &["--grams", "240", "--specimen"],
    );
    let says = told(&done);
    assert!(done.status.success() && drawn, "{says}");
    assert!(says.contains("us-4.3"), "{says}");
    let svg = std::fs::read_to_string(folder.path().join("label.svg")).unwrap();
    assert!(!svg.contains("BRC26159A006") && !svg.contains("BRC-26159"));
    // The same facts without a fault are marked as well, where a specimen is asked for.
    let (plain, _) = draw(folder.path(), &chops(), "pack-us", &["--grams", "250"]);
    assert!(plain.status.success());
    let real = std::fs::read_to_string(folder.path().join("label.svg")).unwrap();
    let (marked, _) = draw(
        folder.path(),
        &chops(),
        "pack-us",
        &["--grams", "250", "--specimen"],
    );
    assert!(marked.status.success());
    let again = std::fs::read_to_string(folder.path().join("label.svg")).unwrap();
    assert_ne!(real, again);
    assert_eq!(svg, again);
}

/// Every shipped template with the least, the usual and the most that is said on it: nothing is refused and nothing is cut.
#[test]
fn every_shipped_label_is_lawful_at_its_shortest_and_longest() {
    let samples = Path::new(env!("CARGO_MANIFEST_DIR")).join("../server/labels/tests/facts");
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("sample.pdf");
    let mut files: Vec<_> = std::fs::read_dir(samples).unwrap().collect();
    files.sort_by_key(|file| file.as_ref().unwrap().path());
    assert!(files.len() >= 60, "{} samples", files.len());
    for file in files {
        let file = file.unwrap().path();
        let name = file.file_name().unwrap().to_str().unwrap().to_owned();
        let facts: Value = serde_json::from_slice(&std::fs::read(&file).unwrap()).unwrap();
        let mut command = Command::new(binary());
        command.arg("label").arg(&file).arg("--out").arg(&out);
        command.args(["--template", name.split('.').next().unwrap()]);
        // In the United States the grams stand in brackets behind the ounces.
        let net = facts["texts"]["net"].as_str().unwrap_or_default();
        let us = net
            .strip_prefix("Net Wt.")
            .and_then(|net| net.split_once('('));
        if let Some((_, grams)) = us {
            command.args(["--grams", grams.trim_end_matches("\u{a0}g)")]);
        }
        let done = command.output().unwrap();
        let says = String::from_utf8_lossy(&done.stderr);
        // Grams without ounces are for another place, which holds them against no words.
        let heard = says
            .lines()
            .find(|line| us.is_some() || !line.contains("--grams"));
        assert!(done.status.success() && heard.is_none(), "{name}: {says}");
    }
}
