//! What a reader may be shown of the data is there in both languages. That a text has both, the reading
//! of the files demands; here, that neither is empty nor left in the other's typography.

use serde_json::Value;
use std::fs;
use std::path::{Path, PathBuf};

/// The signs of French that no line may begin with: the space before them does not break.
const KEPT_TOGETHER: [&str; 6] = [" :", " ;", " !", " ?", " %", " »"];

/// Every text that is told in two languages.
fn texts<'a>(value: &'a Value, found: &mut Vec<(&'a str, &'a str)>) {
    match value {
        Value::Object(fields) => {
            let of = |language: &str| fields.get(language).and_then(Value::as_str);
            if let (Some(english), Some(french)) = (of("en"), of("fr")) {
                found.push((english, french));
            }
            fields.values().for_each(|value| texts(value, found));
        }
        Value::Array(values) => values.iter().for_each(|value| texts(value, found)),
        _ => {}
    }
}

fn files(folder: &Path, found: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        match path.is_dir() {
            true => files(&path, found),
            false => found.push(path),
        }
    }
}

#[test]
fn every_row_is_told_in_both_languages() {
    let mut all = Vec::new();
    files(
        &Path::new(env!("CARGO_MANIFEST_DIR")).join("data"),
        &mut all,
    );
    let (mut bad, mut rows) = (Vec::new(), 0);
    for path in all {
        let file: Value = serde_json::from_str(&fs::read_to_string(&path).unwrap()).unwrap();
        let told = file["rows"].as_array().map_or(&[][..], Vec::as_slice);
        rows += told.len();
        let mut found = Vec::new();
        told.iter().for_each(|row| texts(&row["says"], &mut found));
        assert_eq!(found.len(), told.len(), "{}", path.display());
        let wrong = |french: &str| {
            let breaks = KEPT_TOGETHER.iter().any(|sign| french.contains(sign));
            french.trim().is_empty() || breaks || french.contains("« ")
        };
        bad.extend(
            found
                .iter()
                .filter(|(english, french)| english.trim().is_empty() || wrong(french))
                .map(|(english, french)| format!("{}: {english} / {french}", path.display())),
        );
    }
    assert!(rows > 700, "{rows} rows");
    assert!(bad.is_empty(), "{bad:#?}");
}
