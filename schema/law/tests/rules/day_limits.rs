//! A limit of days that a place gives some food is a line of data: any food that it names, and no other.

use domain::dates::{DateSays, DayLimit, LimitedFood, Making, Marked, PartDate};
use domain::law::Law;
use domain::product::Product;
use domain::rows::{Bound, RowId};
use domain::says::Says;
use domain::words::{DeedKind, Packaging, ProductKind, Profile, StepKind};

/// Two days for raw food that was ground, as an invented law of a place without any.
fn with_limit_of_two_days() -> Law {
    let shipped = law::shipped().expect("the law is read");
    let mut law = shipped.laws.of(Profile::Eu).clone();
    let row = RowId::new("house-mix");
    law.dates.limits.push(DayLimit {
        of: LimitedFood {
            ready: Some(false),
            kinds: vec![ProductKind::Mixed],
            steps: vec![StepKind::Grind],
            ..LimitedFood::default()
        },
        keeps: Marked {
            days: Bound::at_most("house-mix", 2),
            day_one_counts: true,
            counting: row,
        },
    });
    law
}

fn last_day(law: &Law, kind: ProductKind, by: DeedKind) -> Option<(String, Says)> {
    made_of(law, kind, by, None, &[])
}

fn made_of(
    law: &Law,
    kind: ProductKind,
    by: DeedKind,
    packaging: Option<Packaging>,
    parts: &[PartDate],
) -> Option<(String, Says)> {
    let product = Product {
        kind,
        raw: true,
        ..Product::unnamed()
    };
    let making = Making {
        product: &product,
        kind: by,
        day: "2026-06-08".parse().expect("a day"),
        parts,
        supplier: None,
        once_opened: None,
        packaging,
        is_controlled: true,
        stable: None,
        is_killed: false,
        approved: None,
        law,
        ready_keeps_its_day: false,
        as_it_happened: false,
        is_released: false,
        is_unfrozen_fish: false,
    };
    let dated = making.date().expect("a date");
    let why = dated.because.last().expect("a reason").says.clone();
    Some((dated.use_by?.to_string(), why))
}

#[test]
fn it_holds_for_the_food_that_it_names() {
    let law = with_limit_of_two_days();
    let (date, why) = last_day(&law, ProductKind::Mixed, DeedKind::Grind).expect("a date");
    assert_eq!(date, "2026-06-09");
    assert_eq!(why.key(), Says::from(at_most()).key());
    assert_eq!(last_day(&law, ProductKind::Mixed, DeedKind::Pack), None);
    assert_eq!(last_day(&law, ProductKind::Cut, DeedKind::Grind), None);
}

fn at_most() -> DateSays {
    let day = "2026-06-08".parse().expect("a day");
    DateSays::AtMost {
        day,
        days: 2,
        first: domain::dates::FirstDaySays::Preparation,
        date: day,
    }
}

#[test]
fn seasoned_meat_without_air_has_the_days_of_food_and_not_of_fresh_meat() {
    let shipped = law::shipped().expect("the law is read");
    let law = shipped.laws.of(Profile::Uk);
    let part = |is_raw_animal| PartDate {
        shown: Says::named(&domain::says::Texts::from("part")),
        date: None,
        cap: None,
        is_raw_animal,
        was_frozen: false,
        is_undated: false,
    };
    let made = |by, parts: &[PartDate]| {
        let packed = Some(Packaging::Vacuum);
        made_of(law, ProductKind::Cut, by, packed, parts).map(|(date, _)| date)
    };
    // Thirteen days after the day of packing; ten with it (`canada-eu-uk-14.6`, `14.1`).
    let fresh = made(DeedKind::Portion, &[part(true)]);
    assert_eq!(fresh.as_deref(), Some("2026-06-21"));
    let salted = made(DeedKind::Mix, &[part(true), part(false)]);
    assert_eq!(salted.as_deref(), Some("2026-06-17"));
}
