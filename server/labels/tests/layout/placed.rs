//! Placed labels compared as text; the exporters say the same thing.

use crate::common;
use labels::{Dpi, Facts, Field, Placed, Readiness, Template, lay_out, pdf, svg};

/// A small template: two texts, one of them optional, and both codes.
const SMALL: &str = r#"{
    "purpose": "kitchen", "width_mm": 60, "height_mm": 40, "dpi": [203],
    "items": [
        { "stack": { "x": 2, "y": 2, "w": 36, "h": 18, "texts": [
            { "field": "name", "weight": "bold", "measure": "capitals", "min_mm": 3, "max_mm": 4, "required": true },
            { "field": "kind", "measure": "capitals", "min_mm": 2, "max_mm": 2, "boxed": "by-readiness", "upper": true, "gap_mm": 1 },
            { "field": "lot", "measure": "capitals", "min_mm": 2, "max_mm": 2, "required": true, "gap_mm": 1 }
        ] } },
        { "rule": { "x": 2, "y": 21, "w": 36, "h": 0.5 } },
        { "qr": { "x": 40, "y": 2, "size": 18 } },
        { "code128": { "x": 2, "y": 25, "w": 56, "h": 10 } }
    ]
}"#;

fn small(kind: &str) -> Facts {
    let texts = [
        (Field::Name, "Lamb neck"),
        (Field::Kind, kind),
        (Field::Lot, "BRC-1"),
    ];
    let mut facts = common::facts(&texts, "BRC26159A006");
    facts.qr = "http://10.0.0.7/L/BRC26159A006".into();
    facts.readiness = match kind.to_lowercase() {
        kind if kind.starts_with("raw") => Some(Readiness::Raw),
        kind if kind.starts_with("ready") => Some(Readiness::ReadyToEat),
        _ => None,
    };
    facts
}

fn text(kind: &str) -> String {
    let template = Template::parse("small", SMALL).unwrap();
    lay_out(&small(kind), &template, Dpi::D203)
        .unwrap()
        .to_text()
}

#[test]
fn items_stand_where_the_template_says() {
    assert_eq!(
        text("cooked"),
        "label 60.00x40.00 at 203 dpi
name 2.00,6.24 bold 5.99: Lamb neck
kind 2.00,10.85 regular 3.00: COOKED
lot 2.00,15.42 regular 3.00: BRC-1
rule 2.00,21.00 36.00x0.50
square code 40.66,2.63 16.52x16.52 25 modules of 4 dots: HTTP://10.0.0.7/L/BRC26159A006
bar code 6.51,25.02 46.80x9.88 167 modules of 2 dots: BRC26159A006
"
    );
}

#[test]
fn raw_and_ready_to_eat_differ_by_shape() {
    let rules = |kind| {
        text(kind)
            .lines()
            .filter(|line| line.starts_with("rule"))
            .count()
    };
    assert_eq!(rules("Raw: cook through"), 5, "a closed box");
    assert_eq!(rules("Ready to eat"), 3, "a line above, a line below");
    assert_eq!(rules("Cooked"), 1);
}

/// A panel with a picture, two languages, a table and a hole.
const FULL: &str = r#"{
    "purpose": "retail", "width_mm": 100, "height_mm": 90, "dpi": [203],
    "items": [
        { "hole": { "x": 47, "y": 2, "size": 6 } },
        { "columns": { "x": 2, "y": 9, "w": 96, "h": 25, "between": 4,
            "left": [{ "field": "ingredients", "measure": "x-height", "min_mm": 2, "max_mm": 2, "bold_capitals": true }],
            "right": [{ "field": "second-ingredients", "measure": "x-height", "min_mm": 2, "max_mm": 2 }] } },
        { "stack": { "x": 2, "y": 36, "w": 96, "h": 26, "texts": [
            { "field": "handling-heading", "measure": "capitals", "min_mm": 3, "max_mm": 3, "panel": true },
            { "field": "handling-keep", "measure": "capitals", "min_mm": 2, "max_mm": 2, "panel": true, "gap_mm": 1,
              "picture": { "name": "refrigerator", "size": 5 } },
            { "field": "lot", "measure": "capitals", "min_mm": 2, "max_mm": 2, "required": true, "gap_mm": 2 }
        ] } },
        { "table": { "x": 2, "y": 64, "w": 40, "h": 20, "rows": 1, "columns": [
            { "w": 20, "head": { "field": "column-day", "measure": "capitals", "min_mm": 2, "max_mm": 2 } },
            { "w": 20, "head": { "field": "column-weight", "measure": "capitals", "min_mm": 2, "max_mm": 2 } } ] } }
    ]
}"#;

#[test]
fn panels_columns_tables_and_holes() {
    let long = "Pork, WHEAT flour, salt, pepper, garlic, thyme, bay, wine and much else besides";
    let texts = [
        (Field::Ingredients, "Pork, WHEAT flour, salt"),
        (Field::SecondIngredients, long),
        (Field::HandlingHeading, "Handling"),
        (Field::HandlingKeep, "Keep it cold"),
        (Field::Lot, "BRC-1"),
        (Field::ColumnDay, "Day"),
        (Field::ColumnWeight, "kg"),
    ];
    let template = Template::parse("full", FULL).unwrap();
    let label = lay_out(&common::facts(&texts, "A"), &template, Dpi::D203).unwrap();
    assert_eq!(
        label.to_text(),
        "label 100.00x90.00 at 203 dpi
ingredients 2.00,11.90 regular 4.03: Pork,
ingredients 11.97,11.90 bold 4.03: WHEAT
ingredients 27.09,11.90 regular 4.03: flour,
ingredients 2.00,16.05 regular 4.03: salt
second-ingredients 43.72,11.90 regular 4.03: Pork, WHEAT flour, salt,
second-ingredients 43.72,16.29 regular 4.03: pepper, garlic, thyme, bay,
second-ingredients 43.72,20.69 regular 4.03: wine and much else besides
handling-heading 2.95,40.16 regular 4.49: Handling
handling-keep 8.95,45.66 regular 3.00: Keep it cold
picture Refrigerator 2.95,43.52 5.00x5.00
rule 2.00,36.00 96.00x0.35
rule 2.00,49.12 96.00x0.35
rule 2.00,36.35 0.35x12.77
rule 97.65,36.35 0.35x12.77
lot 2.00,56.51 regular 3.00: BRC-1
rule 2.00,64.00 19.40x0.25
rule 22.00,64.00 19.40x0.25
rule 2.00,73.88 19.40x0.25
rule 22.00,73.88 19.40x0.25
rule 2.00,83.75 19.40x0.25
rule 22.00,83.75 19.40x0.25
column-day 2.00,69.90 regular 3.00: Day
column-weight 22.00,69.90 regular 3.00: kg
hole 47.00,2.00 6.00x6.00
"
    );
}

#[test]
fn an_absent_or_blank_text_takes_no_room() {
    let text = text("  ");
    assert!(!text.contains("kind"), "{text}");
}

#[test]
fn a_no_break_space_keeps_words_together() {
    let mut facts = small("");
    let name = "Lamb\u{a0}neck and\u{a0}shoulder";
    facts.texts.insert(Field::Name, name.into());
    let template = Template::parse("small", SMALL).unwrap();
    let label = lay_out(&facts, &template, Dpi::D203).unwrap();
    let lines: Vec<&str> = label.lines().map(|line| line.text.as_str()).collect();
    assert_eq!(lines[..2], ["Lamb\u{a0}neck", "and\u{a0}shoulder"]);
}

#[test]
fn the_same_labels_give_the_same_bytes() {
    let facts = [common::plain_pack(), common::full_pack()];
    let placed = facts.map(|facts| lay_out(&facts, &common::pack_tall(), Dpi::D300).unwrap());
    assert!(
        pdf(&placed).unwrap() == pdf(&placed).unwrap(),
        "two runs differ"
    );
    assert!(pdf(&[]).is_err());
}

#[test]
fn the_screen_shows_the_same_items() {
    let mut facts = common::plain_tub();
    facts.texts.insert(Field::Name, "Pork & <stock>".into());
    let label = lay_out(&facts, &common::tub(), Dpi::D203).unwrap();
    let svg = svg(&label);
    assert_eq!(svg.matches("<text ").count(), label.lines().count());
    let paths = label
        .items
        .iter()
        .filter(|item| !matches!(item, Placed::Text(_)))
        .count();
    assert_eq!(svg.matches("<path ").count(), paths);
    assert!(svg.contains("Pork &amp; &lt;stock&gt;"), "{svg}");
}
