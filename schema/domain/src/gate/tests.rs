//! The texts of a label read back, and beef of several slaughterhouses.

use super::{LabelTexts, Raised, beef, of_texts};
use crate::duties::DutyRules;
use crate::duties::beef::{Groups, Shared, SharedFact, Stage};
use crate::duties::origin_words::OriginWording;
use crate::family::Lists;
use crate::grams::Grams;
use crate::law::Law;
use crate::naming::NameFacts;
use crate::product::Product;
use crate::rows::{Bound, Gravity, Row, RowId};
use crate::says::Texts;
use crate::statement::{Forbidden, NetRules, Wording};
use crate::words::{Mark, ProductKind, Species};
use chrono::NaiveDate;

fn law() -> Law {
    let mut law = Law::default();
    for id in [
        "canada-eu-uk-2.11",
        "us-4.3",
        "canada-eu-uk-10.8",
        "canada-eu-uk-10.9",
        "confirmed-10.9",
    ] {
        law.rows.insert(Row {
            id: RowId::new(id),
            says: Texts::from(id),
            also: Vec::new(),
            cite: None,
            sources: Vec::new(),
            mark: Mark::Read,
            only_in: None,
            from: None,
            until: None,
        });
    }
    law.statements.dates.forbidden = vec![Forbidden {
        words: vec!["use by".into()],
        instead: "best before".into(),
        row: RowId::new("canada-eu-uk-2.11"),
    }];
    law.statements.net = Some(NetRules {
        title: Wording {
            row: RowId::new("us-4.3"),
            mandated: Vec::new(),
            text: [("en".to_owned(), "Net Wt.".to_owned())].into(),
        },
        other_titles: Vec::new(),
        one_unit: RowId::new("us-4.3"),
        by_weight: RowId::new("us-4.3"),
        decimals: 2,
    });
    law
}

#[track_caller]
fn check(texts: &LabelTexts<'_>, expected: &[&str]) {
    let found = of_texts(texts, &law());
    let rows: Vec<&str> = found.iter().map(|of| of.rows[0].as_str()).collect();
    assert_eq!(rows, expected, "{texts:?}");
}

#[test]
fn words_that_meat_may_not_have_are_read_off_the_label() {
    let texts = |meat| LabelTexts {
        meat,
        all: vec!["Bacon", "USE BY 1 JUNE", "Use by 1 June"],
        ..LabelTexts::default()
    };
    check(&texts(true), &["canada-eu-uk-2.11", "canada-eu-uk-2.11"]);
    check(&texts(false), &[]);
}

#[test]
fn the_weight_that_is_printed_is_the_weight() {
    let net = |text, grams| LabelTexts {
        net: Some((text, Grams::whole(grams))),
        ..LabelTexts::default()
    };
    for (text, grams) in [
        ("Net Wt. 0.55\u{a0}lb (250\u{a0}g)", 250),
        ("Net Wt. 2.75\u{a0}lb (1,25\u{a0}kg)", 1_250),
        ("Net Wt. 12 oz.", 341),
    ] {
        check(&net(text, grams), &[]);
    }
    for (text, grams) in [
        ("Net Wt. 0.56\u{a0}lb (250\u{a0}g)", 250),
        ("Net Wt. 0.55\u{a0}lb (260\u{a0}g)", 250),
        ("Net Wt. 12 oz.", 340),
        ("0.55 lb", 250),
        ("Net Wt. some", 250),
    ] {
        check(&net(text, grams), &["us-4.3"]);
    }
}

fn ox(abattoir: &str, country: &str) -> Option<Raised> {
    Some(Raised {
        species: Species::Cattle,
        born: Some("IE".into()),
        reared: Some("IE".into()),
        slaughtered: Some(country.into()),
        abattoir: Some(abattoir.into()),
        killed: NaiveDate::default(),
    })
}

/// `confirmed-10.9`: pieces for customers come of three slaughterhouses at most; mince shares the country of
/// slaughter.
#[test]
fn beef_of_too_many_slaughterhouses_is_no_lot_of_cuts() {
    let mut law = law();
    let share = |stage, same, several| SharedFact {
        row: RowId::new("canada-eu-uk-10.9"),
        stage,
        same: vec![same],
        several,
    };
    let three = (Shared::Slaughterhouse, Bound::at_most("confirmed-10.9", 3));
    law.duties = DutyRules {
        beef: Some(Groups {
            one_day: RowId::new("canada-eu-uk-10.8"),
            kill_days: RowId::new("canada-eu-uk-10.10"),
            share: vec![
                share(Stage::CutMeat, Shared::Slaughtered, vec![three]),
                share(Stage::Mince, Shared::Slaughtered, Vec::new()),
            ],
        }),
        origin: Some(wording()),
        ..DutyRules::default()
    };
    let mut product = Product {
        kind: ProductKind::Cut,
        species: Some(Species::Cattle),
        raw: true,
        ..Product::unnamed()
    };
    let found = |product: &Product, sources: &[Option<Raised>]| -> Vec<Gravity> {
        let facts = NameFacts::listed(product, &Lists::default());
        let found = beef::check(&facts, sources, NaiveDate::default(), &law);
        found.iter().map(|of| of.gravity).collect()
    };
    let four = ["A", "B", "C", "D"].map(|number| ox(number, "IE"));
    assert_eq!(found(&product, &four[..3]), []);
    assert_eq!(found(&product, &four), [Gravity::Refuse]);
    // Boxed beef: the record has no place for where its animals came from.
    assert_eq!(found(&product, &[None]), [Gravity::Warn]);
    product.kind = ProductKind::Mixed;
    assert_eq!(found(&product, &[ox("A", "IE"), ox("B", "IE")]), []);
    assert_eq!(
        found(&product, &[ox("A", "IE"), ox("B", "FR")]),
        [Gravity::Refuse]
    );
    product.raw = false;
    assert_eq!(found(&product, &[ox("A", "IE"), ox("B", "FR")]), []);
}

fn wording() -> OriginWording {
    let row = RowId::new("canada-eu-uk-10.7");
    OriginWording {
        beef_row: row,
        beef_born: Texts::from(""),
        beef_reared: Texts::from(""),
        beef_slaughtered: Texts::from(""),
        beef_cutting: Texts::from(""),
        beef_group: Texts::from(""),
        beef_reference: Texts::from(""),
        mince_row: RowId::new("confirmed-10.13"),
        mince_prepared: Texts::from(""),
        mince_origin: Texts::from(""),
    }
}
