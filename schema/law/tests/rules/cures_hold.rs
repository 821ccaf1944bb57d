//! What must hold of curing salts whatever the numbers, with the rules that are shipped.

use chrono::NaiveDate;
use domain::cure::{
    Basis, Class, Cure, CureLevel, Dose, Method, Mix, Recipe, Strength, assess, ceiling, plan,
};
use domain::grams::Grams;
use domain::law::Laws;
use domain::measure::Percent;
use domain::rows::Sense;
use domain::words::Profile;
use proptest::prelude::*;
use rust_decimal::Decimal;
use std::sync::OnceLock;

fn laws() -> &'static Laws {
    static LAWS: OnceLock<Laws> = OnceLock::new();
    LAWS.get_or_init(|| law::shipped().unwrap_or_else(|bad| panic!("{bad}")).laws)
}

fn day() -> NaiveDate {
    NaiveDate::from_ymd_opt(2026, 1, 15).unwrap()
}

fn percent(hundredths: i64) -> Percent {
    Percent::new(Decimal::new(hundredths, 2))
}

/// A cure that its method can be counted for.
fn cure(method: Method, class: Class, meat: i64, strength: i64, dose: i64) -> Cure {
    let strength = Strength {
        nitrite: Some(percent(strength)),
        ..Strength::unknown()
    };
    let wet = method == Method::EquilibriumBrine;
    Cure {
        water: Grams::whole(if wet { meat / 2 } else { 0 }),
        pickle: method.has_pickle().then(|| Grams::whole(meat + 2_000)),
        pump: Some(percent(1_000)),
        pickup: Some(percent(1_000)),
        salts: vec![(strength, Grams::from_milligrams(dose))],
        ..Cure::new(method, class, Grams::whole(meat), day())
    }
}

fn any_method() -> impl Strategy<Value = Method> {
    prop::sample::select(Method::ALL)
}

fn any_place() -> impl Strategy<Value = Profile> {
    prop::sample::select(Profile::ALL)
}

/// A class that goes with the method.
fn class_for(method: Method, nth: usize) -> Class {
    let fits: Vec<Class> = Class::ALL
        .iter()
        .copied()
        .filter(|class| class.is_ground() == (method == Method::Comminuted))
        .collect();
    fits[nth % fits.len()]
}

fn near(one: Decimal, other: Decimal) -> bool {
    (one - other).abs() <= Decimal::new(1, 9) * (one.abs() + Decimal::ONE)
}

proptest! {
    #[test]
    fn ppm_is_linear_in_the_grams(
        method in any_method(), meat in 500i64..50_000, dose in 1i64..1_000_000, times in 2i64..9,
    ) {
        let mix = Mix {
            meat: meat.into(), water: (meat / 2).into(), pickle: (meat + 2_000).into(),
            taken: percent(1_000),
        };
        let once = mix.ppm(method, dose.into()).unwrap();
        let often = mix.ppm(method, (dose * times).into()).unwrap();
        prop_assert!(near(once * Decimal::from(times), often));
    }

    #[test]
    fn ounces_and_grams_give_the_same(
        method in any_method(), meat in 1i64..500, dose in 1i64..1_000,
    ) {
        // One pound in grams, one ounce in pounds: both exact.
        let (pound, ounce) = (Decimal::new(45_359_237, 5), Decimal::new(625, 4));
        let mix = |unit: Decimal| Mix {
            meat: unit * Decimal::from(meat),
            water: unit * Decimal::from(meat),
            pickle: unit * Decimal::from(meat + 3),
            taken: percent(1_000),
        };
        let dose = Decimal::from(dose) * ounce;
        let in_pounds = mix(Decimal::ONE).ppm(method, dose).unwrap();
        let in_grams = mix(pound).ppm(method, dose * pound).unwrap();
        prop_assert!(near(in_pounds, in_grams));
    }

    #[test]
    fn a_dose_gives_the_ppm_that_it_was_worked_out_for(
        method in any_method(), meat in 1i64..50_000, ppm in 1i64..3_000,
    ) {
        let mix = Mix {
            meat: meat.into(), water: meat.into(), pickle: meat.into(), taken: percent(1_250),
        };
        let dose = mix.dose(method, ppm.into()).unwrap();
        prop_assert!(near(mix.ppm(method, dose).unwrap(), ppm.into()));
    }

    #[test]
    fn a_basis_converts_there_and_back(ppm in 0i64..300_000, from in 0usize..6, to in 0usize..6) {
        let masses = &laws().of(Profile::Us).cures.masses;
        let (from, to) = (Basis::ALL[from], Basis::ALL[to]);
        let level = CureLevel::ingoing(Decimal::new(ppm, 2), from);
        match level.on(to, masses) {
            Ok(there) => {
                prop_assert!(near(there.on(from, masses).unwrap().ppm, level.ppm));
            }
            Err(_) => prop_assert!(from.is_nitrite() != to.is_nitrite()),
        }
    }

    #[test]
    fn a_stricter_bound_never_lets_more_pass(
        method in any_method(), nth in 0usize..15, place in any_place(), meat in 500i64..50_000,
        dose in 1i64..300_000, which in 0usize..200, by in 1i64..99,
    ) {
        let cure = cure(method, class_for(method, nth), meat, 625, dose);
        let before = assess(&cure, place, laws()).unwrap();
        let mut house = laws().clone();
        let rules = &mut house.places.get_mut(&place).unwrap().cures;
        // The weighing rules are no law of what goes in; every limit of ppm may be tightened.
        let count = rules.limits.len();
        let bound = &mut rules.limits[which % count].bound;
        bound.value = match bound.sense {
            Sense::AtMost => bound.value * Decimal::new(by, 2),
            Sense::AtLeast => bound.value * (Decimal::ONE + Decimal::new(by, 2)),
            Sense::Exactly => bound.value,
        };
        let after = assess(&cure, place, &house).unwrap();
        prop_assert!(after.is_refused() || !before.is_refused());
        prop_assert_eq!(after.nitrite_ppm, before.nitrite_ppm);
    }

    #[test]
    fn nothing_above_the_highest_confirmed_limit_passes_anywhere(
        method in any_method(), nth in 0usize..15, place in any_place(), meat in 500i64..50_000,
        dose in 1i64..400_000,
    ) {
        let class = class_for(method, nth);
        let done = assess(&cure(method, class, meat, 625, dose), place, laws()).unwrap();
        let most = ceiling(laws(), Basis::SodiumNitrite, method, class, day()).unwrap();
        if done.nitrite_ppm > most.level.ppm + most.tolerance {
            prop_assert!(done.is_refused(), "{} ppm of {class} ({method}) passes in {place}", done.nitrite_ppm);
        }
    }

    #[test]
    fn a_plan_never_gives_more_than_was_asked_for(
        method in any_method(), nth in 0usize..15, place in any_place(), meat in 500i64..50_000,
        target in 20i64..600, step in prop::option::of(prop::sample::select(vec![1i64, 10, 100, 1_000])),
        skin_on: bool,
    ) {
        let class = class_for(method, nth);
        let cure = Cure {
            scale: step.map(Grams::from_milligrams),
            skin_on,
            ..cure(method, class, meat, 625, 0)
        };
        let recipe = Recipe {
            salt: percent(1_200), sugar: percent(100),
            strength: Strength::nitrite(Decimal::new(625, 2)),
            dose: Dose::Target(CureLevel::ingoing(target, Basis::SodiumNitrite)),
        };
        let made = plan(&recipe, &cure, place, laws()).unwrap();
        prop_assert!(made.assessed.nitrite_ppm <= Decimal::from(target));
        prop_assert!(made.plain_salt >= Grams::ZERO);
        if let Some(step) = step {
            prop_assert_eq!(made.curing_salt.milligrams() % step, 0);
        }
        // The salt in the curing salt counts: all of it is the recipe's per cent, to the milligram.
        if !method.has_pickle() && !skin_on {
            let off = made.assessed.salt_percent.number() - recipe.salt.number();
            prop_assert!(off.abs() < Decimal::new(1, 3), "{off}");
        }
    }
}

#[test]
fn every_number_may_be_tightened_and_names_a_row_that_is_there() {
    for (place, law) in &laws().places {
        let mut rules = law.cures.clone();
        let rows: Vec<_> = rules
            .bounds_mut()
            .into_iter()
            .map(|bound| bound.row.clone())
            .collect();
        assert!(rows.len() > 10, "{place}");
        assert!(rows.iter().all(|row| law.rows.get(row).is_some()));
    }
}

#[test]
fn a_scale_without_a_step_is_passed_over() {
    let cure = Cure {
        scale: Some(Grams::ZERO),
        ..cure(Method::Dry, Class::Bacon, 1_000, 625, 2_000)
    };
    assert!(!assess(&cure, Profile::Us, laws()).unwrap().is_refused());
}

#[test]
fn a_limit_that_begins_later_is_told_of_a_cure_before_it() {
    let of_day = |day: &str, dose: i64| {
        let cure = Cure {
            heated: Some(true),
            day: day.parse().unwrap(),
            ..cure(Method::Dry, Class::WholeMuscle, 10_000, 625, dose)
        };
        domain::cure::to_come(&cure, Profile::Eu, laws()).unwrap()
    };
    // 145 ppm of sodium nitrite: under the former 150, over the 80 of the ion that follow (`confirmed X-EU-17`).
    let (day, findings) = of_day("2025-10-01", 23_200).expect("the later limit");
    assert_eq!(day.to_string(), "2025-10-09");
    assert!(findings.iter().all(domain::rows::Finding::refuses));
    // Little enough for both, and too much already: nothing is to come.
    assert_eq!(of_day("2025-10-01", 16_000), None);
    assert_eq!(of_day("2025-10-01", 64_000), None);
    assert_eq!(of_day("2025-10-10", 23_200), None);
}

/// A class that only Europe divides off is held by the place's own rows, or waits for them (us-N8, us-N13, us-N14,
/// canada-eu-uk-4.2, 12.1, confirmed-12.3 to 12.10): no place lets any of them pass with more than any allows.
#[test]
fn no_class_escapes_the_limits_of_any_place() {
    let day = NaiveDate::from_ymd_opt(2026, 11, 29).unwrap();
    for (place, law) in &laws().places {
        for method in Method::ALL {
            for class in Class::ALL.iter().filter(|class| {
                class.is_either() || class.is_ground() == (*method == Method::Comminuted)
            }) {
                for nitrite in [true, false] {
                    let mut cure = cure(*method, *class, 7_000, 625, 5_000_000);
                    (cure.day, cure.heated) = (day, Some(false));
                    if !nitrite {
                        cure.salts[0].0.nitrate = cure.salts[0].0.nitrite.take();
                    }
                    let done = assess(&cure, *place, laws()).unwrap();
                    let waits =
                        domain::cure::unconfirmed(&cure, &done.ingoing, &law.cures, &law.rows);
                    let tested =
                        domain::cure::untested(&cure, &done.ingoing, &law.cures, &law.rows);
                    let held = done.is_refused() || !waits.is_empty() || !tested.is_empty();
                    assert!(held, "{place}: {class} {method}, nitrite {nitrite}");
                }
            }
        }
    }
}

/// us-N8: no nitrate in bacon, whatever Europe calls it; us-N13: 120 ppm in an immersed one.
#[test]
fn immersed_bacon_is_bacon_where_nothing_else_is_said() {
    let check = |class: Class, method: Method, dose: i64, nitrate: bool, row: &str| {
        let mut cure = cure(method, class, 7_000, 625, dose);
        if nitrate {
            cure.salts[0].0.nitrate = cure.salts[0].0.nitrite.take();
        }
        let done = assess(&cure, Profile::Us, laws()).unwrap();
        let refused = done.findings.iter().filter(|of| of.refuses());
        let rows: Vec<&str> = refused
            .flat_map(|of| &of.rows)
            .map(|row| row.as_str())
            .collect();
        assert!(rows.contains(&row), "{class} {method}: {rows:?}");
    };
    for class in [Class::ImmersedBacon, Class::PortugueseSalted] {
        check(class, Method::Dry, 5_000, true, "us-N8");
        check(class, Method::ImmersionEquilibrium, 60_000, false, "us-N13");
        check(class, Method::Dry, 30_000, false, "us-N14");
    }
}
