//! The house file: stricter at will, looser only by a named approval.

use domain::law::Laws;
use domain::rows::{Bound, Sense};
use domain::words::{Mark, Profile};
use law::House;
use proptest::prelude::*;
use rust_decimal::Decimal;

fn laws() -> Laws {
    law::shipped().unwrap_or_else(|bad| panic!("{bad}")).laws
}

/// Every bound of every place that is alone in its row.
fn bounds(laws: &Laws) -> Vec<(Profile, Bound)> {
    let mut laws = laws.clone();
    let mut all = Vec::new();
    for (place, law) in &mut laws.places {
        let of_place: Vec<Bound> = law.bounds_mut().map(|bound| bound.clone()).collect();
        let alone = of_place.iter().filter(|bound| {
            let same = of_place.iter().filter(|other| other.row == bound.row);
            same.count() == 1
        });
        all.extend(alone.map(|bound| (*place, bound.clone())));
    }
    all
}

fn file(place: Profile, row: &str, value: Decimal, approval: &str) -> String {
    format!(
        r#"{{ "changes": [{{ "place": "{place}", "row": "{row}", "value": {value}, "why": "test", "approval": {approval} }}] }}"#
    )
}

const APPROVAL: &str = r#"{ "number": "V-DEMO-1", "for": "the test", "until": "2027-03-31" }"#;

fn apply(text: &str, laws: &mut Laws) -> Result<(), String> {
    House::read(text)
        .and_then(|house| house.apply(laws))
        .map_err(|bad| bad.says)
}

fn refused(text: &str) -> String {
    let mut laws = laws();
    let before = laws.clone();
    let says = apply(text, &mut laws).expect_err("it is refused");
    assert_eq!(laws, before, "nothing is set where something is refused");
    says
}

/// A number that is looser than the bound by that much.
fn looser(bound: &Bound, by: Decimal) -> Decimal {
    match bound.sense {
        Sense::AtLeast if bound.value >= Decimal::ZERO => (bound.value - by).max(Decimal::ZERO),
        Sense::AtLeast => bound.value - by,
        _ => bound.value + by,
    }
}

#[test]
fn a_stricter_number_is_set_and_its_row_still_refuses() {
    let mut laws = laws();
    apply(&file(Profile::Us, "us-C6", 80.into(), "null"), &mut laws).unwrap();
    let law = laws.of(Profile::Us);
    let most = &law.duties.cured_pork.as_ref().unwrap().dry_yield;
    assert_eq!(most.value, Decimal::from(80));
    let row = law.rows.get(&most.row).unwrap();
    assert!(
        row.is_confirmed()
            && row
                .says
                .in_language("en")
                .ends_with("House: 80 in place of 82 (test)."),
        "{}",
        row.says.in_language("en")
    );
}

#[test]
fn a_looser_number_names_its_approval() {
    let text = |approval| file(Profile::Us, "us-C6", 85.into(), approval);
    assert_eq!(
        refused(&text("null")),
        "us-C6 allows at most 82; 85 is looser. Name the approval that allows it."
    );
    assert_eq!(
        refused(&file(Profile::Us, "us-C7", 3.into(), "null")),
        "us-C7 asks for at least 4; 3 is looser. Name the approval that allows it."
    );
    let mut laws = laws();
    apply(&text(APPROVAL), &mut laws).unwrap();
    let row = laws
        .of(Profile::Us)
        .rows
        .get(&domain::rows::RowId::new("us-C6"))
        .unwrap();
    // What breaks the approved number is refused just as the law's was.
    assert_eq!(row.mark, Mark::Read);
    assert!(
        row.says
            .in_language("en")
            .contains("V-DEMO-1 for the test until 2027-03-31"),
        "{}",
        row.says.in_language("en")
    );
}

#[test]
fn an_approval_that_has_ended_loosens_nothing() {
    let check = |day: &str, expected: u32, left: usize| {
        let house = House::read(&file(Profile::Us, "us-C6", 85.into(), APPROVAL)).unwrap();
        let mut laws = laws();
        let said = house.apply_on(&mut laws, day.parse().unwrap()).unwrap();
        assert_eq!(said.len(), left, "{said:?}");
        let most = &laws
            .of(Profile::Us)
            .duties
            .cured_pork
            .as_ref()
            .unwrap()
            .dry_yield;
        assert_eq!(most.value, Decimal::from(expected));
    };
    check("2027-03-31", 85, 0);
    check("2027-04-01", 82, 1);
}

#[test]
fn what_is_wrong_is_said() {
    let us = |row, value: u32| refused(&file(Profile::Us, row, value.into(), "null"));
    assert!(us("us-Z9", 1).starts_with("there is no row us-Z9 in the law of us"));
    assert_eq!(
        us("us-V2", 1),
        "us-V2 holds no number that could be changed."
    );
    assert!(us("us-C1", 50).starts_with("us-C1 holds several numbers: 45, 25."));
    let wrong = |text: &str| House::read(text).unwrap_err().to_string();
    assert!(wrong("{").starts_with("the house file: "));
    assert!(wrong(r#"{ "changes": [], "more": 1 }"#).contains("there is no field"));
    let below = file(Profile::Us, "us-C6", Decimal::NEGATIVE_ONE, "null");
    assert_eq!(refused(&below), "us-C6: -1 is below nothing.");
    assert!(
        wrong(&file(
            Profile::Us,
            "us-C6",
            1.into(),
            r#"{ "number": " ", "for": "" }"#
        ))
        .contains("no number")
    );
    assert!(
        wrong(&file(
            Profile::Us,
            "us-C6",
            1.into(),
            r#"{ "number": "V", "for": "x", "until": "soon" }"#
        ))
        .contains("not a day")
    );
    let place = file(Profile::Us, "us-C6", 1.into(), "null").replace("\"us\"", "\"fr\"");
    assert!(wrong(&place).contains("Give one of us, ca, eu, uk"));
}

#[test]
fn one_of_several_numbers_is_named() {
    let text = |of: u32| {
        format!(
            r#"{{ "changes": [{{ "place": "us", "row": "us-C1", "of": {of}, "value": 60, "why": "test" }}] }}"#
        )
    };
    let mut laws = laws();
    apply(&text(45), &mut laws).unwrap();
    let time = &laws
        .of(Profile::Us)
        .duties
        .cured_pork
        .as_ref()
        .unwrap()
        .times[0];
    assert_eq!(
        (time.ham.value, time.shoulder.value),
        (60.into(), 25.into())
    );
    assert_eq!(refused(&text(44)), "us-C1 does not hold the number 44.");
}

#[test]
fn an_exact_number_is_changed_by_approval_only() {
    let mut laws = laws();
    let law = laws.places.get_mut(&Profile::Us).unwrap();
    let most = law
        .bounds_mut()
        .find(|bound| bound.row.as_str() == "us-C6")
        .unwrap();
    most.sense = Sense::Exactly;
    let text = |approval| file(Profile::Us, "us-C6", 80.into(), approval);
    assert_eq!(
        apply(&text("null"), &mut laws).unwrap_err(),
        "us-C6 is exactly 82; 80 is another number. Name the approval that allows it."
    );
    apply(&text(APPROVAL), &mut laws).unwrap();
}

#[test]
fn rows_of_the_house_are_its_own() {
    let row = |id: &str, mark: &str| {
        format!(r#"{{ "rows": [{{ "id": "{id}", "says": "We do.", "mark": "{mark}" }}] }}"#)
    };
    let mut laws = laws();
    apply(&row("house-1", "OURS"), &mut laws).unwrap();
    for law in laws.places.values() {
        assert!(law.rows.get(&domain::rows::RowId::new("house-1")).is_some());
    }
    assert!(refused(&row("us-C6", "OURS")).contains("is there already"));
    assert!(House::read(&row("house-1", "READ")).is_err());
}

#[test]
fn every_number_that_is_shipped_can_be_tightened_and_not_loosened() {
    let laws = laws();
    let all = bounds(&laws);
    assert!(!all.is_empty());
    for (place, bound) in all {
        let row = bound.row.as_str();
        let mut same = laws.clone();
        apply(&file(place, row, bound.value, "null"), &mut same).unwrap();
        assert_eq!(same, laws, "{row}: the same number changes nothing");
        let looser = looser(&bound, Decimal::ONE);
        if looser != bound.value {
            let mut untouched = laws.clone();
            let says = apply(&file(place, row, looser, "null"), &mut untouched).unwrap_err();
            assert!(says.contains("Name the approval"), "{says}");
            apply(&file(place, row, looser, APPROVAL), &mut untouched).unwrap();
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]
    #[test]
    fn a_stricter_house_never_lets_more_pass(
        nth in any::<prop::sample::Index>(), value in 0u32..200_000, scale in 0u32..4, tried in 0i64..400_000,
    ) {
        let before = laws();
        let all = bounds(&before);
        let (place, old) = nth.get(&all).clone();
        let (value, tried) = (Decimal::new(value.into(), scale), Decimal::new(tried, scale));
        let mut after = before.clone();
        if apply(&file(place, old.row.as_str(), value, "null"), &mut after).is_err() {
            prop_assert_eq!(&after, &before);
        }
        let new = bounds(&after)
            .into_iter()
            .find(|(of, bound)| *of == place && bound.row == old.row)
            .unwrap()
            .1;
        for tried in [tried, value, old.value, old.value - Decimal::ONE, old.value + Decimal::ONE] {
            prop_assert!(!new.allows(tried) || old.allows(tried), "{tried} passes {new:?}, not {old:?}");
        }
    }
}
