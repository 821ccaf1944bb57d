//! What a reader may be shown of the data is there in both languages.

use serde_json::Value;
use std::fs;
use std::path::Path;

/// The subjects whose rows stand behind a lot's date, cure, heat and release.
const SHOWN: [&str; 5] = ["dates", "heat", "cures", "stability", "trichinae"];

fn read(file: &Path) -> Value {
    serde_json::from_str(&fs::read_to_string(file).unwrap()).unwrap()
}

/// Every text under one of these keys that has no French form.
fn english_only(value: &Value, keys: &[&str], left: &mut Vec<String>) {
    match value {
        Value::Object(fields) => {
            for (key, value) in fields {
                let french = value.get("fr").and_then(Value::as_str);
                if keys.contains(&key.as_str()) && french.is_none_or(str::is_empty) {
                    left.push(format!("{key}: {value}"));
                }
                english_only(value, keys, left);
            }
        }
        Value::Array(values) => {
            for value in values {
                english_only(value, keys, left);
            }
        }
        _ => {}
    }
}

#[test]
fn the_rows_behind_a_lot_and_the_names_of_the_trade_are_told_in_french() {
    let data = Path::new(env!("CARGO_MANIFEST_DIR")).join("data");
    let mut left = Vec::new();
    for place in ["us", "ca", "eu", "uk"] {
        for subject in SHOWN {
            let file = read(&data.join(place).join(format!("{subject}.json")));
            english_only(&file["rows"], &["says"], &mut left);
            english_only(&file["rules"]["strengths"], &["name"], &mut left);
        }
    }
    let trade = read(&data.join("trade.json"));
    english_only(&trade, &["says", "name", "of"], &mut left);
    left.dedup();
    assert!(left.is_empty(), "English alone: {left:#?}");
}
