//! What must hold of statements in every place, whatever went in.

use chrono::{Days, NaiveDate};
use domain::grams::Grams;
use domain::ingredients::{self, Ingredient, Nature};
use domain::statement::{
    self, DateAsk, DateKind, Food, Lettering, Reader, Runs, StatementStyle, letter_height, printed,
};
use domain::words::{Allergen, Profile};
use law::Shipped;
use proptest::prelude::*;
use rust_decimal::Decimal;
use std::collections::BTreeSet;
use std::sync::{Arc, LazyLock};

static SHIPPED: LazyLock<Shipped> =
    LazyLock::new(|| law::shipped().unwrap_or_else(|bad| panic!("{bad}")));

fn place() -> impl Strategy<Value = Profile> {
    prop::sample::select(Profile::ALL)
}

fn leaf() -> impl Strategy<Value = Ingredient> {
    let natures: Vec<Nature> = Nature::ALL.to_vec();
    let allergens = prop::collection::btree_set(prop::sample::select(Allergen::ALL), 0..3);
    (
        0usize..12,
        1i64..900,
        prop::sample::select(natures),
        allergens,
    )
        .prop_map(|(nth, grams, nature, allergens)| Ingredient {
            product: format!("n{nth}"),
            names: Arc::new(
                [
                    ("en".into(), format!("thing {nth}")),
                    ("fr".into(), format!("chose {nth}")),
                ]
                .into(),
            ),
            grams: Grams::whole(grams),
            nature,
            allergens,
            ..Ingredient::default()
        })
}

fn ingredient() -> impl Strategy<Value = Ingredient> {
    leaf().prop_recursive(3, 20, 4, |inner| {
        (leaf(), prop::collection::vec(inner, 0..4)).prop_map(|(leaf, parts)| Ingredient {
            product: format!("{}-of", leaf.product),
            parts,
            ..leaf
        })
    })
}

fn food() -> impl Strategy<Value = Food> {
    let parts = prop::collection::vec(ingredient(), 0..6);
    let union = prop::collection::btree_set(prop::sample::select(Allergen::ALL), 0..3);
    let sulphites = prop::option::of(0i64..300);
    (parts, union, sulphites).prop_map(|(parts, allergens, tenths)| {
        // A kitchen's union is that of all that went in; merging must not lose from it.
        let allergens = &allergens | &ingredients::allergens(&parts);
        Food {
            parts: ingredients::of_step("x", parts),
            allergens,
            sulphites_ppm: tenths.map(|tenths| Decimal::new(tenths, 1)),
            ..Food::default()
        }
    })
}

fn style() -> impl Strategy<Value = StatementStyle> {
    any::<(bool, bool)>().prop_map(|(merged, small_last)| StatementStyle { merged, small_last })
}

fn strong(runs: &Runs) -> String {
    let runs = runs.iter().filter(|run| run.strong);
    runs.map(|run| run.text.to_lowercase() + "|").collect()
}

proptest! {
    #[test]
    fn adding_something_takes_no_allergen_away(place in place(), food in food(), more in ingredient()) {
        let law = SHIPPED.laws.of(place);
        let before = statement::declared(&law.statements, &law.rows, &food).allergens;
        let mut parts = food.parts.clone();
        parts.push(more);
        let allergens = &food.allergens | &ingredients::allergens(&parts);
        let after = Food { parts: ingredients::of_step("y", parts), allergens, ..food };
        let after = statement::declared(&law.statements, &law.rows, &after).allergens;
        prop_assert!(before.is_subset(&after), "{before:?} then {after:?}");
    }

    #[test]
    fn every_allergen_that_the_place_knows_is_told_in_every_language(place in place(), food in food(), style in style()) {
        let law = SHIPPED.laws.of(place);
        let rules = &law.statements;
        let written = statement::write(rules, &law.rows, &food, &["en", "fr"], style);
        let known = |allergen: &&Allergen| rules.allergens.name(**allergen).is_some() && **allergen != Allergen::Sulphites;
        let union: BTreeSet<Allergen> = food.all_allergens().iter().filter(known).copied().collect();
        prop_assert!(union.is_subset(&written.allergens));
        for (language, one) in &written.languages {
            for allergen in &written.allergens {
                let name = printed(rules, &[*allergen].into(), language)[0].to_lowercase();
                let stated = one.contains.text().to_lowercase();
                let told = stated.contains(&name) || strong(&one.list).contains(&name);
                prop_assert!(told, "{place} {language} {name}: {:?} {:?}", one.list.text(), stated);
            }
            if !one.contains.is_empty() && rules.contains.as_ref().is_some_and(|law| law.beside_list) {
                let findings = statement::check_contains(rules, &law.rows, &written.allergens, &one.contains.text(), language);
                prop_assert!(findings.is_empty(), "{findings:?}");
            }
        }
    }

    #[test]
    fn the_order_follows_the_weights(place in place(), grams in prop::collection::btree_set(1i64..5_000, 2..20)) {
        let law = SHIPPED.laws.of(place);
        let parts: Vec<Ingredient> = grams.iter().map(|grams| Ingredient {
            product: format!("p{grams}"),
            names: Arc::new([("en".to_owned(), format!("g{grams}"))].into()),
            grams: Grams::whole(*grams),
            ..Ingredient::default()
        }).collect();
        let food = Food { parts: ingredients::of_step("x", parts), ..Food::default() };
        for small_last in [false, true] {
            let written = statement::write(&law.statements, &law.rows, &food, &["en"], StatementStyle { merged: false, small_last });
            let text = written.languages["en"].list.text();
            let told: Vec<i64> = text.split([' ', ',']).filter_map(|word| word.strip_prefix('g')?.parse().ok()).collect();
            let heaviest_first: Vec<i64> = grams.iter().rev().copied().collect();
            prop_assert_eq!(told, heaviest_first);
        }
    }

    #[test]
    fn no_date_is_told_later_than_it_is(place in place(), kind in 0usize..6, start in 0u64..3_000, length in 0u64..1_500, short: bool) {
        let law = SHIPPED.laws.of(place);
        let from = NaiveDate::from_ymd_opt(2024, 1, 1).unwrap() + Days::new(start);
        let ask = DateAsk { kind: DateKind::ALL[kind].0, day: from + Days::new(length), from, reader: Reader::Kitchen, short };
        if let Ok(mark) = statement::date_mark(&law.statements, &law.rows, &ask, &["en", "fr"]) {
            prop_assert!(mark.reads_as <= ask.day, "{} for {}", mark.text, ask.day);
            prop_assert!(mark.reads_as >= ask.from, "{} from {}", mark.text, ask.from);
            prop_assert!(!mark.text.contains('{'), "{}", mark.text);
        }
    }

    #[test]
    fn a_larger_panel_never_has_smaller_letters(place in place(), what in 0usize..6, small in 1i64..4_000, more in 0i64..4_000) {
        let rules = &SHIPPED.laws.of(place).statements;
        let height = |cm2: i64| letter_height(rules, Lettering::ALL[what].0, cm2.into()).map(|height| height.millimetres);
        prop_assert!(height(small) <= height(small + more));
    }
}

#[test]
fn every_number_that_a_house_may_tighten_has_its_row() {
    let mut laws = SHIPPED.laws.clone();
    for (place, law) in &mut laws.places {
        let rows = law.rows.clone();
        for bound in law.statements.bounds_mut() {
            assert!(rows.get(&bound.row).is_some(), "{place}: {}", bound.row);
        }
    }
}

#[test]
fn every_allergen_has_a_name_in_both_languages() {
    for (place, law) in &SHIPPED.laws.places {
        for name in &law.statements.allergens.names {
            for language in ["en", "fr"] {
                assert!(
                    name.name.contains_key(language),
                    "{place}: {}",
                    name.allergen
                );
            }
        }
    }
}

/// canada-eu-uk-2.18: a list that a pack has in one language alone is not printed under the other's title.
#[test]
fn a_declared_list_in_one_language_is_refused_where_both_are_asked_for() {
    let texts = [("en".to_owned(), "milk, salt".to_owned())].into();
    let part = Ingredient::declared(&texts, Grams::whole(100), [Allergen::Milk].into());
    let food = Food {
        parts: vec![part],
        ..Food::default()
    };
    for (place, law) in &SHIPPED.laws.places {
        let style = StatementStyle::default();
        let written = statement::write(&law.statements, &law.rows, &food, &["en", "fr"], style);
        let found = written.findings.iter();
        let found = found.filter(|of| of.says.key() == "statement-declared-elsewhere");
        let refused: Vec<bool> = found.map(|of| of.refuses()).collect();
        assert_eq!(refused, [*place == Profile::Ca], "{place}");
    }
}
