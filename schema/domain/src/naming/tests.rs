//! Names against what is known, what is not known, and what cannot be.

use super::{NameFacts, check};
use crate::duties::DutyRules;
use crate::duties::names::{Demand, NameRule, NameRules, Part};
use crate::family::Lists;
use crate::law::Law;
use crate::product::Product;
use crate::rows::{Gravity, Row, RowId};
use crate::says::Texts;
use crate::words::{Mark, ProductKind, Species};
use std::collections::BTreeMap;
use std::sync::Arc;

/// A law with two rules on names, in rows that were read (`us-4.5-ham`, `us-4.5-country`).
fn law() -> Law {
    let mut law = Law::default();
    for id in ["us-4.5-ham", "us-4.5-country"] {
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
    let rule = |id: &str, words: &[&str], qualified: &[&str], demand| NameRule {
        row: RowId::new(id),
        words: words.iter().map(ToString::to_string).collect(),
        qualified: qualified.iter().map(ToString::to_string).collect(),
        demand,
    };
    law.duties = DutyRules {
        names: NameRules {
            words: vec![
                rule(
                    "us-4.5-ham",
                    &["ham"],
                    &["ham hock"],
                    Demand::CutOf {
                        species: vec![Species::Pig],
                        parts: vec![Part::HindLeg],
                    },
                ),
                rule(
                    "us-4.5-country",
                    &["country"],
                    &[],
                    Demand::MadeThere(vec!["style".into()]),
                ),
            ],
            ..NameRules::default()
        },
        ..DutyRules::default()
    };
    law
}

fn product(name: &str, cut: Option<&str>) -> Product {
    Product {
        code: "p".into(),
        names: Arc::new(BTreeMap::from([("en".into(), name.into())])),
        kind: ProductKind::Cut,
        species: Some(Species::Pig),
        cut: cut.map(str::to_owned),
        raw: true,
        ..Product::unnamed()
    }
}

#[track_caller]
fn check_listed(product: &Product, expected: &[(&str, Gravity)]) {
    let facts = NameFacts::listed(product, &Lists::default());
    let found = check(&facts, &law()).unwrap();
    let found: Vec<(&str, Gravity)> = found
        .iter()
        .map(|of| (of.rows[0].as_str(), of.gravity))
        .collect();
    assert_eq!(found, expected, "{}", product.name("en"));
}

#[test]
fn what_is_known_to_be_wrong_refuses_and_what_nobody_knows_warns() {
    let ham = |cut| product("Smoked ham", cut);
    check_listed(&ham(Some("ham")), &[]);
    check_listed(&ham(Some("picnic")), &[("us-4.5-ham", Gravity::Refuse)]);
    check_listed(&ham(None), &[("us-4.5-ham", Gravity::Warn)]);
    // A key of the house's own tells nothing.
    check_listed(&ham(Some("nr-7")), &[("us-4.5-ham", Gravity::Warn)]);
    check_listed(&product("Ham hock", Some("feet")), &[]);
}

#[test]
fn a_place_of_making_that_nobody_told_only_warns() {
    let mut sausage = product("Country sausage", Some("butt"));
    check_listed(&sausage, &[("us-4.5-country", Gravity::Warn)]);
    sausage.standard.made_there = Some(false);
    check_listed(&sausage, &[("us-4.5-country", Gravity::Refuse)]);
    sausage.standard.made_there = Some(true);
    check_listed(&sausage, &[]);
    check_listed(&product("Country style sausage", Some("butt")), &[]);
}

#[test]
fn food_without_an_animal_may_be_called_as_it_likes() {
    let mut bread = product("Country bread", None);
    bread.species = None;
    bread.kind = ProductKind::Ingredient;
    check_listed(&bread, &[]);
}
