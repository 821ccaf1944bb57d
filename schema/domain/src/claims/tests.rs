//! What makes a label wrong, and what does not.

use super::*;

fn day_of(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

fn truth() -> Claims {
    let line = |depth, code: &str, name: &str| MadeOf {
        depth,
        code: code.to_owned(),
        name: name.to_owned(),
    };
    Claims {
        beside: false,
        dated: true,
        name: Some("Fennel sausage".into()),
        allergens: Some([Allergen::Milk, Allergen::Mustard].into()),
        may_contain: Some([Allergen::Egg].into()),
        made_of: Some(vec![
            line(0, "pork-trim", "Pork trim"),
            line(0, "cure", "Curing salt"),
            line(1, "salt", "salt"),
        ]),
        species: Some([Species::Pig].into()),
        origin: Some(OriginClaim {
            born: ["IE".into()].into(),
            reared: ["IE".into()].into(),
            slaughtered: ["FR".into(), "IE".into()].into(),
            abattoirs: ["T 17".into()].into(),
        }),
    }
}

/// What is wrong with a label that says this of a day, a weight and the rest.
fn check(
    printed: (Option<&str>, Option<i64>, Claims),
    now: (Option<&str>, Option<i64>),
    expected: &[LabelFact],
) {
    let truth = truth();
    let label = PrintedLabel {
        use_by: printed.0.map(day_of),
        net: printed.1.map(Grams::whole),
        claims: printed.2,
    };
    let now = TrueNow {
        use_by: now.0.map(day_of),
        left: now.1.map(Grams::whole),
        claims: Some(&truth),
    };
    let found = untrue(&label, now);
    let about: Vec<LabelFact> = found.iter().map(|untrue| untrue.about).collect();
    assert_eq!(about, expected, "{label:?}");
}

#[test]
fn a_later_day_is_wrong_and_an_earlier_one_is_not() {
    use LabelFact as About;
    let said = truth();
    let (early, late) = (Some("2026-06-26"), Some("2026-06-30"));
    check((early, None, said.clone()), (early, None), &[]);
    check((early, None, said.clone()), (late, None), &[]);
    check((late, None, said.clone()), (early, None), &[About::Date]);
    // Frozen, or stable by now: there is no day that could be passed.
    check((late, None, said.clone()), (None, None), &[]);
    // Thawed, with the label of the freezer.
    check((None, None, said.clone()), (early, None), &[About::Date]);
    check((None, None, truth().of_tag()), (early, None), &[]);
    check((late, None, Claims::beside()), (early, None), &[]);
}

#[test]
fn less_in_it_than_it_says_is_wrong() {
    use LabelFact as About;
    let said = truth();
    check((None, Some(250), said.clone()), (None, Some(250)), &[]);
    check((None, Some(250), said.clone()), (None, Some(260)), &[]);
    check(
        (None, Some(250), said.clone()),
        (None, Some(249)),
        &[About::Weight],
    );
    // It is gone: nobody weighs it.
    check((None, Some(250), said), (None, None), &[]);
    check((None, None, truth().of_kitchen()), (None, Some(1)), &[]);
}

#[test]
fn what_is_in_it_is_compared_as_facts() {
    use LabelFact as About;
    let with = |change: fn(&mut Claims)| {
        let mut said = truth();
        change(&mut said);
        (None, None, said)
    };
    let less_milk = |said: &mut Claims| said.allergens = Some([Allergen::Mustard].into());
    check(with(less_milk), (None, None), &[About::Allergen]);
    let more = |said: &mut Claims| said.species = Some([Species::Pig, Species::Duck].into());
    check(with(more), (None, None), &[About::Species]);
    let other = |said: &mut Claims| said.name = Some("Sausage".into());
    check(with(other), (None, None), &[About::Name]);
    let order = |said: &mut Claims| said.made_of.as_mut().unwrap().swap(0, 1);
    check(with(order), (None, None), &[About::Ingredient]);
    let farm = |said: &mut Claims| said.origin.as_mut().unwrap().reared = ["NZ".into()].into();
    check(with(farm), (None, None), &[About::Origin]);
    let plant = |said: &mut Claims| said.origin.as_mut().unwrap().abattoirs = ["9".into()].into();
    check(with(plant), (None, None), &[About::Origin]);
    // What a label leaves out it does not say wrongly.
    let silent = |said: &mut Claims| said.origin.as_mut().unwrap().born.clear();
    check(with(silent), (None, None), &[]);
    let none = |said: &mut Claims| said.origin = None;
    check(with(none), (None, None), &[]);
    // Another name of the same thing is the same thing.
    let renamed = |said: &mut Claims| said.made_of.as_mut().unwrap()[0].name = "Trimmings".into();
    check(with(renamed), (None, None), &[]);
    // A tub does not say what is in it but by its allergens.
    let mut tub = truth().of_kitchen();
    tub.allergens = Some(BTreeSet::new());
    check((None, None, tub), (None, None), &[About::Allergen]);
}

#[test]
fn claims_read_back_as_they_were_kept() {
    let nothing = Claims {
        allergens: Some(BTreeSet::new()),
        species: Some(BTreeSet::new()),
        made_of: Some(Vec::new()),
        ..Claims::default()
    };
    for claims in [
        truth(),
        truth().of_kitchen(),
        truth().of_tag(),
        Claims::beside(),
        nothing,
    ] {
        assert_eq!(Claims::parse(&claims.to_string()), Some(claims));
    }
    assert_eq!(Claims::parse("reared IE"), None);
    assert_eq!(Claims::parse("allergens plutonium"), None);
    assert_eq!(Claims::parse("0 salt Salt"), None);
}
