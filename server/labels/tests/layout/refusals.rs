//! What cannot be printed whole is refused, in words a cook can act on.

use crate::common;
use domain::says::Says;
use labels::{Dpi, Facts, Field, Refusal, Template, TemplateError, lay_out};

fn refused(change: impl FnOnce(&mut Facts)) -> Refusal {
    let mut facts = common::plain_tub();
    change(&mut facts);
    lay_out(&facts, &common::tub(), Dpi::D203).unwrap_err()
}

fn with(field: Field, text: &str) -> Refusal {
    refused(|facts| {
        facts.texts.insert(field, text.into());
    })
}

#[test]
fn a_missing_date_is_said() {
    let refusal = refused(|facts| {
        facts.texts.remove(&Field::UseByShort);
    });
    assert_eq!(
        refusal,
        Refusal::Missing {
            field: Field::UseByShort
        }
    );
    assert_eq!(
        Says::from(&refusal).to_string(),
        "layout-missing field=\"use-by-short\""
    );
}

#[test]
fn an_unprintable_character_is_said() {
    let refusal = with(Field::Name, "Λουκάνικο");
    assert_eq!(
        refusal,
        Refusal::Character {
            field: Field::Name,
            character: 'Λ'
        }
    );
    let text = "layout-character field=\"name\" character=\"'Λ'\" number=\"U+039B\"";
    assert_eq!(Says::from(&refusal).to_string(), text);
}

#[test]
fn too_much_text_is_never_cut() {
    let refusal = with(Field::Name, "Unreasonablylongwordwithoutspaces");
    assert!(
        matches!(
            refusal,
            Refusal::TooWide {
                field: Field::Name,
                ..
            }
        ),
        "{refusal}"
    );
    let refusal = with(
        Field::Name,
        "Slow smoked and hand pulled shoulder of pork with bones",
    );
    assert!(
        matches!(
            refusal,
            Refusal::TooManyLines {
                needed: 4,
                had: 2,
                ..
            }
        ),
        "{refusal}"
    );
    let many = "Contains: celery, mustard, milk, wheat, egg, sesame, soy, fish, crab, hazelnut, lupin, oats, barley, rye, \
                prawn, mussel, squid, almond, walnut, cashew, pistachio, pecan";
    let refusal = with(Field::Allergens, many);
    let Refusal::TooTall {
        field,
        text,
        needed,
        had,
    } = &refusal
    else {
        panic!("{refusal}")
    };
    assert_eq!((*field, text.as_str()), (Field::Allergens, many));
    assert!(needed > had);
}

#[test]
fn a_name_of_four_hundred_letters_is_refused() {
    for template in common::templates() {
        let mut facts = common::plain_tub();
        facts
            .texts
            .retain(|field, _| template.fields().any(|known| known == *field));
        for field in template.required() {
            facts.texts.entry(field).or_insert_with(|| "X".into());
        }
        let name = "pork and beans ".repeat(27);
        facts.texts.insert(Field::Name, name.trim().into());
        let refusal = lay_out(&facts, &template, Dpi::D203).unwrap_err();
        let does_not_fit = matches!(
            refusal,
            Refusal::TooWide { .. } | Refusal::TooManyLines { .. } | Refusal::TooTall { .. }
        );
        assert!(does_not_fit, "{}: {refusal}", template.name());
    }
}

#[test]
fn letters_from_right_to_left_and_little_faces_are_refused() {
    for name in ["נקניקייה", "سجق", "Sausage 🌭", "Saucisse\u{202e}"] {
        let refusal = with(Field::Name, name);
        assert!(matches!(refusal, Refusal::Character { .. }), "{refusal}");
    }
}

#[test]
fn a_text_without_a_place_is_not_dropped() {
    let mut facts = common::plain_tub();
    facts.texts.insert(Field::Net, "Left out on purpose".into());
    assert!(
        lay_out(&facts, &common::tub(), Dpi::D203).is_ok(),
        "the tub says that it omits it"
    );
    let json = common::tub().json().replace("\"net\"", "\"cure\"");
    let template = Template::parse("tub", &json).unwrap();
    let refusal = lay_out(&facts, &template, Dpi::D203).unwrap_err();
    assert_eq!(refusal, Refusal::NoPlace { field: Field::Net });
}

#[test]
fn codes_that_would_not_scan_are_refused() {
    let refusal = refused(|facts| facts.qr = "https://example.org/l?lot=1".into());
    assert!(
        matches!(refusal, Refusal::CodeCharacter { character: '?', .. }),
        "{refusal}"
    );
    let refusal = refused(|facts| facts.qr = format!("https://example.org/{}", "X".repeat(90)));
    assert!(matches!(refusal, Refusal::CodeTooLarge { .. }), "{refusal}");
    let refusal = refused(|facts| facts.qr = "X".repeat(5000));
    assert!(matches!(refusal, Refusal::CodeTooLong { .. }), "{refusal}");
    let with_bars = |linear: &str| {
        let facts = common::facts(&[(Field::Name, "Ham"), (Field::Lot, "BRC")], linear);
        lay_out(&facts, &common::template("pack-us"), Dpi::D203).unwrap_err()
    };
    let refusal = with_bars("BRC26159A006EXTRAEXTRA");
    assert!(matches!(refusal, Refusal::CodeTooLarge { .. }), "{refusal}");
    let refusal = with_bars("");
    assert!(matches!(refusal, Refusal::EmptyCode { .. }), "{refusal}");
}

#[test]
fn a_bad_template_says_what_is_wrong() {
    let good = common::tub().json().to_owned();
    for (from, to, fault) in [
        ("\"omits\"", "\"omit\"", "unknown field `omit`"),
        ("\"kind\"", "\"knid\"", "unknown variant `knid`"),
        (
            "\"width_mm\": 51",
            "\"width_mm\": -51",
            "width_mm must be more than 0",
        ),
        (
            "\"width_mm\": 51",
            "\"width_mm\": 41",
            "reaches over the edge",
        ),
        ("[203, 300]", "[200]", "200 dpi is not known"),
        ("[203, 300]", "[]", "names no printer"),
        ("\"size\": 17.4", "\"size\": 18.4", "lie over each other"),
        (
            "\"min_mm\": 5,",
            "\"min_mm\": 6,",
            "min_mm above its max_mm",
        ),
        ("\"made\"", "\"name\"", "\"name\" stands in it twice"),
        ("\"made\"", "\"net\"", "\"net\" stands in it twice"),
        (
            "\"field\": \"lot\"",
            "\"field\": \"second-use-by\"",
            "\"second-use-by\" stands in it twice",
        ),
    ] {
        assert!(good.contains(from), "{from}");
        let error: TemplateError = Template::parse("tub", &good.replace(from, to)).unwrap_err();
        assert!(error.to_string().contains(fault), "{error}");
    }
}

#[test]
fn facts_are_read_from_json() {
    let json = r#"{ "texts": { "use-by-heading": "USE BY" }, "qr": "A", "linear": "B" }"#;
    let facts: Facts = serde_json::from_str(json).unwrap();
    assert_eq!(facts.text(Field::UseByHeading), Some("USE BY"));
    for field in Field::ALL {
        assert_eq!(serde_json::to_value(field).unwrap(), field.as_str());
    }
}
