//! What holds without the data of any place.

use super::*;
use crate::rows::{Bound, Rows};
use crate::words::Allergen;
use rust_decimal::Decimal;

#[test]
fn a_limit_knows_its_own_edge() {
    let check = |inclusive, value: i64, passes| {
        let limit = UpTo {
            bound: Bound::at_most("row", Decimal::TEN),
            inclusive,
        };
        assert_eq!(limit.passes(value.into()), passes, "{inclusive} {value}");
    };
    check(true, 10, true);
    check(false, 10, false);
    check(true, 11, false);
    check(false, 9, true);
}

#[test]
fn without_rules_nothing_is_asked_and_nothing_breaks() {
    let food = Food {
        allergens: [Allergen::Milk].into(),
        ..Food::default()
    };
    let written = write(
        &StatementRules::default(),
        &Rows::default(),
        &food,
        &["en"],
        StatementStyle::default(),
    );
    assert!(written.allergens.is_empty() && written.findings.is_empty());
    assert_eq!(written.languages["en"], WrittenStatement::default());
}

#[test]
fn runs_that_look_the_same_are_one() {
    let mut runs = Runs::default();
    runs.push("wheat", true);
    runs.push(" flour", false);
    runs.push(", salt", false);
    assert_eq!(runs.iter().count(), 2);
    assert_eq!(runs.in_capitals(), "WHEAT flour, salt");
}
