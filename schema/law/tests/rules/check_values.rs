//! The published check values: one table of vectors, run against the rules that are shipped.
//!
//! The table is the folder `vectors`, one file an area, all with the same columns, parted by tabs:
//! `id`, `source` (the row of the facts), `task`, `input` (`key=value; key=value`), `expected`,
//! `note`. A line that begins with `#` is a remark.

use crate::vectors;

use std::fs;
use std::path::Path;

#[test]
fn every_published_check_value_comes_out() {
    let shipped = law::shipped().unwrap_or_else(|bad| panic!("{bad}"));
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/vectors");
    let mut files: Vec<_> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|end| end == "tsv"))
        .collect();
    files.sort();
    let (mut count, mut wrong) = (0, Vec::new());
    let mut seen = std::collections::BTreeSet::new();
    for file in &files {
        let area = file.file_stem().unwrap().to_str().unwrap();
        let text = fs::read_to_string(file).unwrap();
        for (nth, line) in text
            .lines()
            .enumerate()
            .filter(|(_, line)| !line.is_empty() && !line.starts_with('#'))
        {
            let columns: Vec<&str> = line.split('\t').collect();
            let at = format!("{}:{}", file.file_name().unwrap().display(), nth + 1);
            assert_eq!(columns.len(), 6, "{at}: six columns");
            let [id, source, task, input, expected, _note] = columns[..] else {
                unreachable!()
            };
            assert!(!source.is_empty(), "{at}: a check value names its source");
            assert!(seen.insert(id.to_owned()), "{at}: {id} stands there twice");
            let input = vectors::Input::parse(input, &at);
            let actual = vectors::run(area, task, &input, &shipped);
            if actual != expected {
                wrong.push(format!(
                    "{at} {id} ({source}): expected {expected:?}, came out {actual:?}"
                ));
            }
            input.all_used(&at);
            count += 1;
        }
    }
    println!("{count} check values from {} files", files.len());
    assert!(
        wrong.is_empty(),
        "{} of {count} are wrong:\n{}",
        wrong.len(),
        wrong.join("\n")
    );
}
