//! Templates as files: the schema is that of the code, and a bad one is named with line and reason.

use std::path::Path;

use labels::{Sheet, Template};

#[test]
fn the_schema_on_disk_is_that_of_the_code() {
    for (name, schema) in [("template", Template::schema()), ("sheet", Sheet::schema())] {
        schema_on_disk(name, &schema);
    }
}

fn schema_on_disk(name: &str, schema: &schemars::Schema) {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../label-templates");
    let file = folder.join(format!("{name}.schema.json"));
    let text = serde_json::to_string_pretty(schema).unwrap() + "\n";
    if std::env::var_os("UPDATE_SCHEMAS").is_some_and(|set| set == "1") {
        std::fs::write(&file, text).unwrap();
    } else {
        assert!(
            std::fs::read_to_string(&file).ok().as_ref() == Some(&text),
            "stale: run this test with UPDATE_SCHEMAS=1 and look at what changed"
        );
    }
}

/// A sound template, one item a line from line 3 on.
const SOUND: &str = r#"{ "purpose": "kitchen", "width_mm": 60, "height_mm": 40, "dpi": [203],
"items": [
{ "stack": { "x": 2, "y": 2, "w": 36, "h": 18, "texts": [{ "field": "name", "measure": "capitals", "min_mm": 3, "max_mm": 4 },
{ "field": "lot", "measure": "capitals", "min_mm": 2, "max_mm": 2, "required": true }] } },
{ "qr": { "x": 40, "y": 2, "size": 18 } },
{ "table": { "x": 2, "y": 21, "w": 56, "h": 18, "rows": 2, "columns": [
{ "w": 20, "head": { "field": "column-day", "measure": "x-height", "min_mm": 2, "max_mm": 2 } }] } }
] }"#;

/// Puts one wrong thing into the sound template and compares the complaint.
fn check(from: &str, to: &str, says: &str) {
    assert!(SOUND.contains(from), "{from}");
    let json = SOUND.replacen(from, to, 1);
    let error = Template::parse("mine", &json).unwrap_err().to_string();
    assert_eq!(error, says);
}

#[test]
fn a_bad_template_is_named_with_line_and_reason() {
    Template::parse("mine", SOUND).unwrap();
    check(
        r#""rows": 2"#,
        r#""rows": 0"#,
        "template \"mine\", line 6: a table needs at least one row and one column",
    );
    check(
        r#""w": 20"#,
        r#""w": 80"#,
        "template \"mine\", line 6: the columns of a table are wider than the table",
    );
    check(
        r#""x": 40, "y": 2, "size": 18"#,
        r#""x": 30, "y": 2, "size": 18"#,
        "template \"mine\", line 5: the stack of name, lot and the square code lie over each other",
    );
    check(
        r#""size": 18"#,
        r#""size": 21"#,
        "template \"mine\", line 5: the square code reaches over the edge of the label",
    );
    check(
        r#""min_mm": 3"#,
        r#""min_mm": 5"#,
        "template \"mine\", line 3: \"name\" has a min_mm above its max_mm",
    );
    check(
        r#""field": "column-day""#,
        r#""field": "lot""#,
        "template \"mine\", line 7: \"lot\" stands in it twice",
    );
    check(
        r#""dpi": [203]"#,
        r#""dpi": [600]"#,
        "template \"mine\", line 1: 600 dpi is not known: 203 or 300",
    );
    check(
        r#""lot", "measure": "capitals", "min_mm": 2, "max_mm": 2, "required": true"#,
        r#""lot", "measure": "capitals", "min_mm": 2, "max_mm": 2"#,
        "template \"mine\", line 2: it must have a required text \"lot\": a code needs its clear form beside it",
    );
    check(
        r#""column-day", "measure": "x-height", "min_mm": 2"#,
        r#""no-nitrite", "measure": "x-height", "min_mm": 1"#,
        "template \"mine\", line 7: \"no-nitrite\" must be at least half as high as \"name\" can get",
    );
    let error = Template::parse(
        "mine",
        &SOUND.replacen("\"field\": \"name\"", "\"field\": \"title\"", 1),
    );
    let error = error.unwrap_err().to_string();
    assert!(
        error.starts_with("template \"mine\" cannot be read: unknown variant `title`")
            && error.contains("at line 3"),
        "{error}"
    );
}
