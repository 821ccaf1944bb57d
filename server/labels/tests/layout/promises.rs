//! Whatever the facts: a label is whole, apart and on the page, or it is refused.

use crate::common;
use labels::{
    CODE128_QUIET, Code, CodeKind, Dpi, EAN13_QUIET, Facts, Field, PlacedLabel, QR_QUIET,
    Readiness, Template, WIDEST_GS1, lay_out,
};
use proptest::prelude::*;
use proptest::sample::select;

fn words(longest: usize) -> impl Strategy<Value = String> {
    let word = "[A-Za-zéèêçœàôîÉÀŒ0-9°≤½’×%.,:()/-]{1,11}";
    prop::collection::vec(word, 1..=longest).prop_map(|words| words.join(" "))
}

fn dates() -> impl Strategy<Value = String> {
    const DAYS: &[&str] = &["MON", "FRI", "WED", "LUN", "MER", "SAM"];
    const MONTHS: &[&str] = &["JUN", "MAR", "SEPT", "DÉC", "FÉV", "AOÛT"];
    (select(DAYS), 1..=31, select(MONTHS), 2026..2030)
        .prop_map(|(day, number, month, year)| format!("{day} {number} {month} {year}"))
}

/// Messages that fit some labels and not others.
fn messages() -> impl Strategy<Value = String> {
    let lot = "[0-9A-HJKMNP-Z]{1,20}";
    let pack = prop::option::of("[0-9]{1,3}");
    (lot, pack).prop_map(|(lot, pack)| match pack {
        Some(pack) => format!("(01)09521234543213(10){lot}(21){pack}"),
        None => format!("(01)09521234543213(17)260727(10){lot}"),
    })
}

prop_compose! {
    fn some_facts()(
        name in words(4),
        date in prop_oneof![dates(), Just("NO DATE YET".to_owned())],
        others in prop::collection::btree_map(select(Field::ALL), words(12), 0..8),
        lot in "[A-Z]{2,3}[0-9]{5}[A-HJKMNP-Z0-9][0-9A-HJKMNP-Z]{2}[0-9A-Z]",
        pack in 1..400,
        readiness in select(&[None, Some(Readiness::Raw), Some(Readiness::ReadyToEat)]),
        gs1 in prop::collection::vec(messages(), 0..3),
        panel_apart in any::<bool>(),
    ) -> Facts {
        let mut texts = others;
        texts.insert(Field::Name, name);
        texts.insert(Field::UseByHeading, "USE BY".into());
        texts.insert(Field::UseByShort, date.clone());
        texts.insert(Field::UseBy, date);
        texts.insert(Field::Lot, format!("{lot} · {pack}"));
        Facts {
            texts,
            readiness,
            qr: format!("https://trace.cinderhook.example/L/{lot}/{pack}"),
            linear: lot,
            gs1,
            ean13: None,
            net_least_um: None,
            panel_apart,
        }
    }
}

fn upper(text: &str) -> String {
    text.split_whitespace()
        .collect::<Vec<_>>()
        .join(" ")
        .to_uppercase()
}

/// Both labels of a pack, and every text on one of them; the clear code stands on each.
fn check(facts: &Facts, template: &Template, label: &PlacedLabel) -> Result<(), TestCaseError> {
    for page in label.pages() {
        check_page(page)?;
        prop_assert!(!page.text_of(Field::Lot).is_empty());
    }
    for (field, text) in &facts.texts {
        let page = label.pages().find(|page| !page.text_of(*field).is_empty());
        let printed = page.map_or_else(String::new, |page| upper(&page.text_of(*field)));
        let dropped = printed.is_empty() && template.may_drop(*field);
        if !template.omits(*field) && !dropped {
            prop_assert_eq!(printed, upper(text));
        }
    }
    Ok(())
}

fn check_page(label: &PlacedLabel) -> Result<(), TestCaseError> {
    for (i, item) in label.items.iter().enumerate() {
        let bounds = item.bounds();
        prop_assert!(label.page().holds(&bounds), "off the page: {item:?}");
        for other in &label.items[..i] {
            prop_assert!(
                !bounds.overlaps(&other.bounds()),
                "{item:?} lies over {other:?}"
            );
        }
    }
    for hole in &label.holes {
        prop_assert!(label.items.iter().all(|item| !item.bounds().overlaps(hole)));
    }
    label
        .codes()
        .try_for_each(|code| check_code(code, label.dpi))
}

fn check_code(code: &Code, dpi: Dpi) -> Result<(), TestCaseError> {
    let dot = |length| {
        let dot = dpi.first_dot(length);
        prop_assert_eq!(dpi.dots(dot), length, "not on a whole dot");
        Ok(dot)
    };
    let ((before, behind), fewest) = match (code.kind, dpi) {
        (CodeKind::Qr, Dpi::D203) => ((QR_QUIET, QR_QUIET), 3),
        (CodeKind::Qr, Dpi::D300) => ((QR_QUIET, QR_QUIET), 4),
        (CodeKind::Code128 | CodeKind::Gs1128, Dpi::D203) => ((CODE128_QUIET, CODE128_QUIET), 2),
        (CodeKind::Code128 | CodeKind::Gs1128, Dpi::D300) => ((CODE128_QUIET, CODE128_QUIET), 3),
        (CodeKind::Ean13, Dpi::D203) => (EAN13_QUIET, 3),
        (CodeKind::Ean13, Dpi::D300) => (EAN13_QUIET, 4),
    };
    if code.kind == CodeKind::Gs1128 {
        prop_assert!(code.bounds.w <= WIDEST_GS1);
        prop_assert!(code.payload.chars().count() <= 48);
    }
    prop_assert!(code.dots >= fewest);
    let (left, right) = (dot(code.bounds.x)?, dot(code.bounds.right())?);
    let (top, bottom) = (dot(code.bounds.y)?, dot(code.bounds.bottom())?);
    prop_assert_eq!(right - left, (before + code.modules + behind) * code.dots);
    for dark in &code.dark {
        let (from, to) = (dot(dark.x)?, dot(dark.right())?);
        prop_assert_eq!((from - left) % code.dots, 0);
        prop_assert_eq!((to - from) % code.dots, 0);
        prop_assert!(from - left >= before * code.dots && right - to >= behind * code.dots);
        if code.kind == CodeKind::Qr {
            let (from, to) = (dot(dark.y)?, dot(dark.bottom())?);
            prop_assert_eq!(to - from, code.dots);
            prop_assert!(from - top >= before * code.dots && bottom - to >= behind * code.dots);
        }
    }
    Ok(())
}

/// The facts that a template has a place for; what it cannot do without is there.
fn known_to(facts: &Facts, template: &Template) -> Facts {
    let mut facts = facts.clone();
    // The layout's own to say.
    facts.texts.remove(&Field::Hri);
    facts.texts.remove(&Field::LotOnly);
    facts.texts.retain(|field, _| {
        template.omits(*field) || template.fields().any(|known| known == *field)
    });
    for field in template.required() {
        facts.texts.entry(field).or_insert_with(|| "X".into());
    }
    facts
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(120))]

    #[test]
    fn whole_apart_and_on_the_page_or_refused(facts in some_facts()) {
        for template in common::templates() {
            let facts = known_to(&facts, &template);
            for dpi in [Dpi::D203, Dpi::D300] {
                match lay_out(&facts, &template, dpi) {
                    Ok(label) => check(&facts, &template, &label)?,
                    Err(refusal) => prop_assert!(!refusal.to_string().is_empty()),
                }
            }
        }
    }
}

#[test]
fn the_examples_keep_the_promises_and_the_date_is_largest() {
    for (template, case, facts) in common::examples() {
        for dpi in [Dpi::D203, Dpi::D300] {
            let label =
                lay_out(&facts, &template, dpi).unwrap_or_else(|refusal| panic!("{refusal}"));
            check(&facts, &template, &label).unwrap();
            let of = |date: bool| {
                let lines = label.lines().filter(move |line| {
                    date == matches!(line.field, Field::UseBy | Field::UseByShort)
                });
                lines.map(|line| line.size).max()
            };
            assert!(
                of(true).is_none() || of(true) > of(false),
                "{} {case}: the date is not the largest text",
                template.name()
            );
        }
    }
}
