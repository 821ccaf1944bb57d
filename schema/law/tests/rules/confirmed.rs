//! The table of confirmed facts is merged row by row: each of its own rows is in the data, under its name or
//! beside another that it confirms, or stands once in a list with the reason why nothing uses it.

use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

fn in_tests(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("tests/facts")
        .join(name)
}

fn lines(name: &str) -> Vec<String> {
    let text = fs::read_to_string(in_tests(name)).unwrap();
    let lines = text.lines().filter(|line| !line.starts_with('#'));
    lines.map(str::to_owned).collect()
}

/// The names of all rows of the data, and of those that they confirm, with the files that have them.
fn named() -> BTreeMap<String, Vec<String>> {
    let mut found: BTreeMap<String, Vec<String>> = BTreeMap::new();
    let data = Path::new(env!("CARGO_MANIFEST_DIR")).join("data");
    let places = ["us", "ca", "eu", "uk"].map(|place| data.join(place));
    for file in places.iter().flat_map(|place| fs::read_dir(place).unwrap()) {
        let path = file.unwrap().path();
        let file: Value = serde_json::from_str(&fs::read_to_string(&path).unwrap()).unwrap();
        for row in file["rows"].as_array().unwrap() {
            let also = row["also"].as_array().into_iter().flatten();
            for name in also.chain([&row["id"]]) {
                let name = name.as_str().unwrap();
                let name = name.strip_prefix("confirmed-").unwrap_or(name);
                let file = path.display().to_string();
                found.entry(name.to_owned()).or_default().push(file);
            }
        }
    }
    found
}

/// A row that has several rules is several rows of the data: `X-US-14-brisket`.
fn is_there(named: &BTreeMap<String, Vec<String>>, id: &str) -> bool {
    let split = format!("{id}-");
    named
        .keys()
        .any(|name| name == id || name.starts_with(&split))
}

#[test]
fn every_confirmed_row_is_in_the_data_or_listed_with_a_reason() {
    let (named, ids) = (named(), lines("confirmed.txt"));
    assert_eq!(ids.len(), 151);
    let unused = lines("unused.tsv");
    let unused: Vec<(&str, &str)> = unused
        .iter()
        .map(|line| line.split_once('\t').expect("an id, a tab, a reason"))
        .collect();
    let unused_ids: BTreeSet<&str> = unused.iter().map(|(id, _)| *id).collect();
    assert_eq!(unused_ids.len(), unused.len(), "one stands there twice");
    let lost: Vec<&String> = ids
        .iter()
        .filter(|id| !is_there(&named, id) && !unused_ids.contains(id.as_str()))
        .collect();
    assert!(lost.is_empty(), "neither used nor listed: {lost:?}");
    for (id, why) in unused {
        assert!(ids.iter().any(|known| known == id), "{id} is no row");
        assert!(!why.trim().is_empty(), "{id} has no reason");
        assert!(!is_there(&named, id), "{id} is used after all");
    }
}

/// No row of the data takes the name of one that the table does not have.
#[test]
fn what_a_row_confirms_is_a_row_of_the_table() {
    let ids: BTreeSet<String> = lines("confirmed.txt").into_iter().collect();
    let own = |name: &&String| name.starts_with("X-");
    for name in named().keys().filter(own) {
        let known = ids.iter().any(|id| {
            let rest = name.strip_prefix(id.as_str());
            rest.is_some_and(|rest| rest.is_empty() || rest.starts_with('-'))
        });
        assert!(known, "{name} is in the data and not in the table");
    }
}
