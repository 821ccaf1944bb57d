//! Placed labels compared as text; the exporters say the same thing.

mod common;

use labels::{Dpi, Facts, Field, Placed, Template, lay_out, pdf, svg};

/// A small template: two texts, one of them optional, and both codes.
const SMALL: &str = r#"{
    "width_mm": 60, "height_mm": 40, "dpi": [203],
    "items": [
        { "stack": { "x": 2, "y": 2, "w": 36, "h": 18, "texts": [
            { "field": "name", "weight": "bold", "measure": "capitals", "min_mm": 3, "max_mm": 4, "required": true },
            { "field": "kind", "measure": "capitals", "min_mm": 2, "max_mm": 2, "boxed": { "when": ["raw"] }, "upper": true, "gap_mm": 1 },
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
fn raw_has_a_box_and_cooked_has_none() {
    let rules = |kind| {
        text(kind)
            .lines()
            .filter(|line| line.starts_with("rule"))
            .count()
    };
    assert_eq!(rules("Raw: cook through"), 5);
    assert_eq!(rules("Cooked"), 1);
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
    let placed = facts.map(|facts| lay_out(&facts, &common::pack(), Dpi::D300).unwrap());
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
