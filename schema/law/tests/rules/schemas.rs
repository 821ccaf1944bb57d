//! The published schemas are those of the code. `UPDATE_SCHEMAS=1` writes them anew.

use std::fs;
use std::path::Path;

#[test]
fn the_schemas_on_disk_are_those_of_the_code() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("schema");
    let update = std::env::var_os("UPDATE_SCHEMAS").is_some_and(|set| set == "1");
    let mut stale = Vec::new();
    for (subject, schema) in law::schemas() {
        let file = folder.join(format!("{subject}.schema.json"));
        let text = serde_json::to_string_pretty(&schema).unwrap() + "\n";
        if update {
            fs::create_dir_all(&folder).unwrap();
            fs::write(&file, text).unwrap();
        } else if fs::read_to_string(&file).ok().as_ref() != Some(&text) {
            stale.push(subject);
        }
    }
    assert!(
        stale.is_empty(),
        "stale: {stale:?}. Run this test with UPDATE_SCHEMAS=1 and look at what changed."
    );
}
