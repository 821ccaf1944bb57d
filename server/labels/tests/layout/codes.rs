//! Which code stands in which place, how wide it is, and what is refused.

use crate::common;
use labels::{Code, CodeKind, Dpi, Facts, Refusal, Template, lay_out, svg};

const DPI: [Dpi; 2] = [Dpi::D203, Dpi::D300];

/// A label as wide as wanted, with a place for each sort of code.
fn template(width: u32, till: bool) -> Template {
    let till = if till {
        r#", { "ean13": { "x": 2, "y": 60, "w": 46, "h": 20 } }"#
    } else {
        ""
    };
    let json = format!(
        r#"{{ "purpose": "kitchen", "width_mm": {}, "height_mm": 82, "dpi": [203, 300], "items": [
            {{ "stack": {{ "x": 2, "y": 2, "w": 30, "h": 10, "texts": [
                {{ "field": "lot", "measure": "capitals", "min_mm": 2, "max_mm": 2, "required": true }},
                {{ "field": "hri", "measure": "capitals", "min_mm": 1, "max_mm": 2 }}
            ] }} }},
            {{ "qr": {{ "x": 2, "y": 14, "size": 28 }} }},
            {{ "code128": {{ "x": 2, "y": 44, "w": {width}, "h": 13 }} }}{till}
        ] }}"#,
        (width + 4).max(50)
    );
    Template::parse("codes", &json).unwrap()
}

fn facts(gs1: &[&str]) -> Facts {
    let mut facts = common::facts(&[(labels::Field::Lot, "26P0718-BEL7")], "26P0718-BEL7");
    facts.gs1 = gs1.iter().map(|text| (*text).to_owned()).collect();
    facts
}

fn bar_code(facts: &Facts, width: u32, dpi: Dpi) -> Code {
    let label = lay_out(facts, &template(width, false), dpi).unwrap_or_else(|why| panic!("{why}"));
    label
        .codes()
        .find(|code| code.kind != CodeKind::Qr)
        .cloned()
        .unwrap()
}

/// From the fullest to the shortest; the last two take 341 and 297 modules (standards 1.3).
const MESSAGES: [&str; 3] = [
    "(01)09521234543213(17)260727(10)26P0718-BEL7(21)1",
    "(01)09521234543213(17)260727(10)26P0718-BEL7",
    "(01)09521234543213(10)26P0718-BEL7",
];

#[test]
fn the_fullest_message_that_fits() {
    // standards 1.3: 341 modules are 86.6 mm and 297 are 75.4 mm at 0.254 mm; 187 are 47.5 mm.
    for dpi in DPI {
        for (width, kind, payload) in [
            (
                105,
                CodeKind::Gs1128,
                "0109521234543213172607271026P0718-BEL7\u{1d}211",
            ),
            (
                87,
                CodeKind::Gs1128,
                "0109521234543213172607271026P0718-BEL7",
            ),
            (76, CodeKind::Gs1128, "01095212345432131026P0718-BEL7"),
            (74, CodeKind::Code128, "26P0718-BEL7"),
            (48, CodeKind::Code128, "26P0718-BEL7"),
        ] {
            let code = bar_code(&facts(&MESSAGES), width, dpi);
            assert_eq!(code.kind, kind, "{width} mm at {}", dpi.number());
            assert_eq!(code.payload, payload);
        }
    }
}

#[test]
fn a_narrow_label_leaves_the_pack_out() {
    let mut facts = facts(&[]);
    facts.linear = "26P0718-BEL7/12".into();
    assert_eq!(bar_code(&facts, 60, Dpi::D203).payload, "26P0718-BEL7/12");
    assert_eq!(bar_code(&facts, 48, Dpi::D203).payload, "26P0718-BEL7");
    // Where only the lot has bars that are still read when they are worn, it is the lot.
    let code = bar_code(&facts, 74, Dpi::D203);
    assert_eq!((code.payload.as_str(), code.dots), ("26P0718-BEL7", 3));
    let code = bar_code(&facts, 95, Dpi::D203);
    assert_eq!((code.payload.as_str(), code.dots), ("26P0718-BEL7/12", 3));
}

#[test]
fn bars_that_hold_the_lot_alone_say_so() {
    let json = template(74, false).json().replace(
        r#"{ "field": "hri""#,
        r#"{ "field": "lot-only", "measure": "capitals", "min_mm": 1, "max_mm": 1 }, { "field": "hri""#,
    );
    let narrow = Template::parse("narrow", &json).unwrap();
    let said = |linear: &str| {
        let mut facts = facts(&[]);
        facts.linear = linear.to_owned();
        let text = (labels::Field::LotOnly, "bars: the lot only".to_owned());
        facts.texts.extend([text]);
        let label = lay_out(&facts, &narrow, Dpi::D203).unwrap();
        label.text_of(labels::Field::LotOnly)
    };
    assert_eq!(said("26P0718-BEL7/12"), "bars: the lot only");
    assert_eq!(said("26P0718-BEL7"), "");
}

#[test]
fn a_message_that_is_too_long_for_any_symbol_is_passed_over() {
    let long = "(01)99521234543216(3103)001250(17)260727(10)26P0718-01-BEL7K";
    let code = bar_code(&facts(&[long, MESSAGES[2]]), 160, Dpi::D300);
    assert_eq!(code.payload, "01095212345432131026P0718-BEL7");
}

#[test]
fn a_wrong_message_is_not_passed_over() {
    for wrong in [
        "(01)09521234543214(10)26P0718-BEL7",
        "(01)02000042212995(10)26P0718-BEL7",
        "(01)09521234543213(3103)001250(10)26P0718-BEL7",
        "(10)26P0718-BEL7",
        "26P0718-BEL7",
    ] {
        let facts = facts(&[wrong, MESSAGES[2]]);
        let refusal = lay_out(&facts, &template(100, false), Dpi::D203).unwrap_err();
        assert!(matches!(refusal, Refusal::NotGs1 { .. }), "{refusal}");
        assert!(refusal.to_string().contains(wrong), "{refusal}");
    }
}

#[test]
fn a_till_code_needs_a_place_and_a_place_needs_no_till_code() {
    let mut facts = facts(&[]);
    facts.ean13 = Some("2000042212995".into());
    // Without a place of its own it stands in that of our bar code; without either it is refused.
    let label = lay_out(&facts, &template(60, false), Dpi::D203).unwrap();
    let kinds: Vec<CodeKind> = label.codes().map(|code| code.kind).collect();
    assert!(kinds.contains(&CodeKind::Ean13) && !kinds.contains(&CodeKind::Code128));
    let square_only = r#"{ "purpose": "kitchen", "width_mm": 60, "height_mm": 40, "dpi": [203],
        "items": [{ "stack": { "x": 2, "y": 2, "w": 30, "h": 30, "texts": [{ "field": "lot",
        "measure": "capitals", "min_mm": 2, "max_mm": 2, "required": true }] } }] }"#;
    let square_only = Template::parse("square", square_only).unwrap();
    let refusal = lay_out(&facts, &square_only, Dpi::D203).unwrap_err();
    assert_eq!(
        refusal,
        Refusal::NoCodePlace {
            code: CodeKind::Ean13
        }
    );
    for dpi in DPI {
        let label = lay_out(&facts, &template(60, true), dpi).unwrap();
        let till = label.codes().find(|code| code.kind == CodeKind::Ean13);
        let till = till.unwrap();
        assert_eq!((till.payload.as_str(), till.modules), ("2000042212995", 95));
        // 0.375 and 0.339 mm a module: 42.4 and 38.3 mm in all.
        let module = till.bounds.w.to_mm() / 113.0;
        assert!((0.264..=0.66).contains(&module), "{module}");
    }
    facts.ean13 = Some("2000042212994".into());
    let refusal = lay_out(&facts, &template(60, true), Dpi::D203).unwrap_err();
    assert!(
        matches!(refusal, Refusal::NotTillDigits { .. }),
        "{refusal}"
    );
    facts.ean13 = None;
    let label = lay_out(&facts, &template(60, true), Dpi::D203).unwrap();
    assert_eq!(label.codes().count(), 2);
}

#[test]
fn two_till_codes_are_one_too_many() {
    let json = template(60, true).json().replace(
        r#"{ "qr""#,
        r#"{ "ean13": { "x": 32, "y": 14, "w": 46, "h": 20 } }, { "qr""#,
    );
    let error = Template::parse("codes", &json).unwrap_err();
    assert!(error.to_string().contains("till code"), "{error}");
}

#[test]
fn the_separator_can_be_shown_on_a_screen() {
    let label = lay_out(&facts(&MESSAGES), &template(105, false), Dpi::D203).unwrap();
    let drawn = svg(&label);
    assert!(drawn.contains("26P0718-BEL7␝211"));
    assert!(drawn.chars().all(|c| !c.is_control()));
}

#[test]
fn an_address_with_a_query_takes_a_larger_square() {
    let mut facts = facts(&[]);
    let modules = |facts: &Facts| {
        let label = lay_out(facts, &template(60, false), Dpi::D300).unwrap();
        let code = label
            .codes()
            .find(|code| code.kind == CodeKind::Qr)
            .unwrap();
        (code.modules, code.payload.clone())
    };
    facts.qr = "https://example.org/01/09521234543213/10/26P0718-BEL7".into();
    let (short, _) = modules(&facts);
    facts.qr += "?17=260727";
    let (long, payload) = modules(&facts);
    assert_eq!((short, long), (29, 33));
    assert!(payload.ends_with("?17=260727"));
}
