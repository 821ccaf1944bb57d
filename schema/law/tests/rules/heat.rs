//! Heat, trichinae and stability with the shipped rules: what must hold for every reading.

use chrono::{DateTime, TimeDelta, Utc};
use chrono_tz::Tz;
use domain::heat::{
    self, Answer, Cook, Cooled, CoreReading, Food, HeatRecord, Heated, Judgement, Log, Standard,
};
use domain::law::{Law, Laws};
use domain::measure::{Percent, Temperature};
use domain::rows::RowId;
use domain::stability::{self, StabilityReadings, Treated};
use domain::trichinae::{
    self, Freezing, Heating, Length, MeasuredAt, Process, Proof, StageKind, StageRun, Treatment,
};
use domain::words::{Profile, Species};
use proptest::prelude::*;
use rust_decimal::Decimal;
use std::sync::LazyLock;

static LAWS: LazyLock<Laws> = LazyLock::new(|| law::shipped().expect("the files read").laws);

fn of(place: Profile) -> &'static Law {
    LAWS.of(place)
}

fn tenths(count: i64) -> Decimal {
    Decimal::new(count, 1)
}

fn instant(minutes: i64) -> DateTime<Utc> {
    DateTime::from_timestamp(1_772_000_000 + minutes * 60, 0).unwrap()
}

fn standards() -> Vec<(Profile, Standard)> {
    let kitchen = Food::ALL.iter().flat_map(|food| {
        [2013, 2016, 2017, 2022].map(|code_year| {
            let food = *food;
            (Profile::Us, Standard::Kitchen { food, code_year })
        })
    });
    let food = Food::Roast;
    let lethality = [50, 65, 70].map(|log| {
        let log = tenths(log).normalize();
        (Profile::Us, Standard::Lethality { food, log })
    });
    let log = tenths(65);
    kitchen
        .chain(lethality)
        .chain([(Profile::Ca, Standard::Lethality { food, log })])
        .collect()
}

fn cooked(degrees: i64, seconds: i64, place: Profile, standard: &Standard) -> Answer {
    let cook = Cook {
        core: Temperature::fahrenheit(tenths(degrees)),
        held: TimeDelta::seconds(seconds),
    };
    let law = of(place);
    heat::enough(&cook, standard, &law.heat, &law.rows)
        .unwrap()
        .answer
}

fn trichinae(treatment: Treatment, place: Profile) -> Answer {
    let law = of(place);
    trichinae::check(&Proof::Treated(treatment), &law.trichinae, &law.rows)
        .unwrap()
        .answer
}

fn heated(degrees: i64, seconds: i64) -> Treatment {
    Treatment::Heated(Heating {
        core: Temperature::fahrenheit(tenths(degrees)),
        held: Some(TimeDelta::seconds(seconds)),
        come_up: None,
        is_cured: false,
        thickness: None,
        chilled_after: None,
    })
}

fn frozen(measured: MeasuredAt, degrees: i64, seconds: i64, millimetres: i64) -> Treatment {
    Treatment::Frozen(Freezing {
        measured,
        at: Temperature::celsius(tenths(degrees)),
        held: TimeDelta::seconds(seconds),
        thickness: Some(Length::millimetres(millimetres)),
        meat_at_start: None,
    })
}

fn run(stage: StageKind, degrees: i64, hours: i64) -> StageRun {
    StageRun {
        stage,
        lowest: Temperature::fahrenheit(degrees),
        highest: None,
        held: TimeDelta::hours(hours),
    }
}

/// Dry sausage by the tables.
fn sausage(casing: i64, salt: i64, hold: (i64, i64), dry: (i64, i64)) -> Treatment {
    let mut process = Process::of("sausage-6");
    process.piece = Some(Length::millimetres(10));
    process.casing = Some(Length::millimetres(casing));
    process.salting.dry = Some(Percent::new(Decimal::new(salt, 2)));
    process.runs = vec![
        run(StageKind::Cure, 36, 48),
        run(StageKind::Hold, hold.0, hold.1),
        run(StageKind::Dry, dry.0, dry.1),
    ];
    Treatment::Cured(Box::new(process))
}

fn ham(dry: &[(i64, i64)]) -> Treatment {
    let mut process = Process::of("ham-1");
    process.salting.dry = Some(Percent::new(4));
    process.overhauls = 1;
    process.runs = vec![run(StageKind::Cure, 36, 24 * 40)];
    process.runs.extend(
        dry.iter()
            .map(|(degrees, hours)| run(StageKind::Dry, *degrees, *hours)),
    );
    Treatment::Cured(Box::new(process))
}

fn cooling_judged(readings: &[(i64, i64)], plan: &str) -> Judgement {
    let readings = readings.iter().map(|(minutes, degrees)| CoreReading {
        at: instant(*minutes),
        core: Temperature::fahrenheit(*degrees),
    });
    let log = Log::new(readings.collect(), Tz::UTC).unwrap();
    let cooled = Cooled {
        log: &log,
        nitrite_ppm: Some(Decimal::from(120)),
        is_cooked: true,
        is_approved: true,
    };
    let law = of(Profile::Us);
    heat::cooled(&cooled, plan, &law.heat, &law.rows).unwrap()
}

fn cooling(readings: &[(i64, i64)], plan: &str) -> Answer {
    cooling_judged(readings, plan).answer
}

/// Six hours from 135 °F to 41 °F (`us-T4`): a log that ends warm asks once it is longer than that from the earliest
/// moment at which the food can have been at 135 °F, and only warns before.
#[test]
fn a_log_that_ends_warm_after_the_time_asks() {
    let ends = |minutes: i64| {
        let readings = [(0, 140), (60, 104), (110, 68), (minutes, 48)];
        let judged = cooling_judged(&readings, "us-T4");
        assert_eq!(judged.answer, Answer::Decide);
        judged.shuts()
    };
    assert!(!ends(355));
    assert!(ends(380));
}

/// Every way to cool that stands in the data can be chosen, by its name and by its row; and but for those that are
/// for what was never hot, each is found by itself where no other is met.
#[test]
fn every_way_to_cool_can_be_chosen() {
    let degrees = [(0, 160), (10, 120), (20, 80), (30, 50), (40, 34)];
    let readings = degrees.map(|(minutes, degrees)| CoreReading {
        at: instant(minutes),
        core: Temperature::fahrenheit(degrees),
    });
    let log = Log::new(readings.to_vec(), Tz::UTC).unwrap();
    let mut asked = 0;
    for place in Profile::ALL {
        let law = of(*place);
        for plan in &law.heat.cooling {
            let cooled = Cooled {
                log: &log,
                nitrite_ppm: Some(Decimal::from(120)),
                is_cooked: !plan.not_after_cooking,
                is_approved: true,
            };
            for name in [plan.name.as_str(), plan.row.as_str()] {
                let judged = heat::cooled_by(&cooled, Some(name), &law.heat, &law.rows);
                let judged = judged.unwrap().expect("a plan was chosen");
                assert_eq!(judged.answer, Answer::Enough, "{place}: {name}");
                asked += 1;
            }
        }
        let found = heat::cooled_by(
            &Cooled {
                log: &log,
                nitrite_ppm: None,
                is_cooked: true,
                is_approved: false,
            },
            None,
            &law.heat,
            &law.rows,
        );
        assert_eq!(found.unwrap().unwrap().answer, Answer::Enough, "{place}");
    }
    assert!(asked >= 28, "{asked}");
}

fn readings(ph: Option<i64>, activity: Option<i64>) -> StabilityReadings {
    StabilityReadings {
        ph: ph.map(|ph| Decimal::new(ph, 2)),
        water_activity: activity.map(|activity| Decimal::new(activity, 3)),
        ..StabilityReadings::default()
    }
}

proptest! {
    #[test]
    fn hotter_or_longer_is_never_worse(
        degrees in 1_150i64..1_700, more in 0i64..100,
        seconds in 0i64..10_000, longer in 0i64..5_000,
    ) {
        for (place, standard) in standards() {
            let before = cooked(degrees, seconds, place, &standard);
            let after = cooked(degrees + more, seconds + longer, place, &standard);
            prop_assert!(after <= before, "{standard:?}: {before:?} became {after:?}");
        }
        let before = trichinae(heated(degrees, seconds * 10), Profile::Us);
        let after = trichinae(heated(degrees + more, (seconds + longer) * 10), Profile::Us);
        prop_assert!(after <= before);
    }

    #[test]
    fn below_the_first_row_never_is_enough(degrees in 320i64..1_290, seconds in 0i64..10_000_000) {
        for (place, standard) in standards() {
            prop_assert_eq!(cooked(degrees, seconds, place, &standard), Answer::Short);
        }
    }

    #[test]
    fn a_log_agrees_with_the_cook_it_tells_of(degrees in 1_280i64..1_600, minutes in 0i64..140) {
        let row = RowId::new("us-1.8-roast");
        let core = Temperature::fahrenheit(tenths(degrees));
        let log = (0..=minutes).map(|at| CoreReading { at: instant(at), core });
        let law = of(Profile::Us);
        let log = Log::new(log.collect(), Tz::UTC).unwrap();
        let heated = Heated {
            record: HeatRecord::Logged(&log), food: Some(Food::Roast), species: &[Species::Cattle].into(),
            fat: None, code_year: 2022, chosen: Some(&row), pierced: None, piece: None, unknown: None,
            is_approved: false,
        };
        let logged = heat::prove(&heated, &law.heat, &law.rows).unwrap();
        let once = cooked(degrees, minutes * 60, Profile::Us, &Standard::Row(row));
        prop_assert_eq!(logged.judgement.answer, once);
    }

    #[test]
    fn a_bird_with_meat_is_never_ready_sooner_than_the_bird(
        degrees in 1_300i64..1_660, seconds in 0i64..6_000, turkey in any::<bool>(), named in any::<bool>(),
    ) {
        let bird = if turkey { Species::Turkey } else { Species::Chicken };
        let core = Temperature::fahrenheit(tenths(degrees));
        let held = TimeDelta::seconds(seconds);
        let row = RowId::new("us-1.8-lethality-7");
        for place in [Profile::Us, Profile::Ca, Profile::Eu, Profile::Uk] {
            let law = of(place);
            let is_ready = |species: &[Species], chosen: Option<&RowId>| {
                let species = species.iter().copied().collect();
                let heated = Heated {
                    record: HeatRecord::Held(Cook { core, held }), food: Some(Food::Poultry), species: &species,
                    fat: None, code_year: 2022, chosen, pierced: None, piece: None, unknown: None,
            is_approved: false,
                };
                heat::prove(&heated, &law.heat, &law.rows).is_ok_and(|verdict| verdict.proof.is_some())
            };
            let mixed = is_ready(&[bird, Species::Pig], named.then_some(&row));
            prop_assert!(!mixed || is_ready(&[bird], None), "{place}: {degrees} for {seconds}");
            prop_assert!(!is_ready(&[bird], Some(&row)), "{place}: the table of meat was taken for the bird");
        }
    }

    #[test]
    fn colder_longer_or_thinner_is_never_worse(
        degrees in -450i64..0, colder in 0i64..100,
        seconds in 0i64..3_000_000, longer in 0i64..1_000_000,
        thick in 1i64..700, thinner in 0i64..300,
    ) {
        for place in [Profile::Us, Profile::Ca, Profile::Eu, Profile::Uk] {
            for measured in [MeasuredAt::Room, MeasuredAt::Centre] {
                let before = trichinae(frozen(measured, degrees, seconds, thick), place);
                let thin = (thick - thinner).max(1);
                let after = trichinae(frozen(measured, degrees - colder, seconds + longer, thin), place);
                prop_assert!(after <= before, "{place} {measured:?}");
            }
        }
    }

    #[test]
    fn more_salt_warmth_or_drying_is_never_worse(
        casing in 10i64..160, thinner in 0i64..50, salt in 180i64..400, more_salt in 0i64..100,
        hold in (60i64..125, 0i64..130), warmer in 0i64..20, held_longer in 0i64..50,
        dry in (40i64..70, 0i64..2_000), dried_longer in 0i64..500,
    ) {
        let before = trichinae(sausage(casing, salt, hold, dry), Profile::Us);
        let after = trichinae(sausage(
            (casing - thinner).max(1),
            salt + more_salt,
            (hold.0 + warmer, hold.1 + held_longer),
            (dry.0, dry.1 + dried_longer),
        ), Profile::Us);
        prop_assert!(after <= before);
    }

    #[test]
    fn a_ham_dried_hotter_or_longer_is_never_worse(
        mut runs in prop::collection::vec((65i64..135, 0i64..400), 1..5),
        which in 0usize..5, hotter in 0i64..30, longer in 0i64..100,
    ) {
        let before = trichinae(ham(&runs), Profile::Us);
        let which = which % runs.len();
        runs[which] = (runs[which].0 + hotter, runs[which].1 + longer);
        prop_assert!(trichinae(ham(&runs), Profile::Us) <= before);
    }

    #[test]
    fn cooling_at_twice_the_pace_is_never_worse(
        steps in prop::collection::vec((1i64..200, 0i64..60), 1..8),
    ) {
        let mut at = (0, 160);
        let mut slow = vec![at];
        for (minutes, fall) in steps {
            at = (at.0 + 2 * minutes, (at.1 - fall).max(33));
            slow.push(at);
        }
        let fast: Vec<_> = slow.iter().map(|(minutes, degrees)| (minutes / 2, *degrees)).collect();
        for plan in ["cooked", "ambient", "appendix-b", "appendix-b-nitrite"] {
            prop_assert!(cooling(&fast, plan) <= cooling(&slow, plan), "{plan}");
        }
    }

    #[test]
    fn drier_or_sourer_is_never_less_stable(
        ph in 0i64..1_400, sourer in 0i64..300, activity in 0i64..1_001, drier in 0i64..200,
        is_heated: bool, is_packed: bool,
    ) {
        let treated = Treated { is_heated, is_packed };
        for place in [Profile::Us, Profile::Ca] {
            let law = of(place);
            let answer = |readings: StabilityReadings| {
                stability::needs_control(&readings, treated, &law.stability, &law.rows)
                    .unwrap()
                    .stability
            };
            let before = answer(readings(Some(ph), Some(activity)));
            let after = answer(readings(Some((ph - sourer).max(0)), Some((activity - drier).max(0))));
            prop_assert!(after <= before);
            // What was not measured is never better than any measurement of it.
            prop_assert!(before <= answer(readings(None, Some(activity))));
            prop_assert!(before <= answer(readings(Some(ph), None)));
        }
    }

}

#[test]
fn every_number_that_a_house_may_tighten_has_its_row() {
    for (place, law) in &LAWS.places {
        let mut law = law.clone();
        let rows = law.rows.clone();
        let bounds = law
            .heat
            .bounds_mut()
            .into_iter()
            .chain(law.trichinae.bounds_mut())
            .chain(law.stability.bounds_mut());
        for bound in bounds {
            assert!(rows.get(&bound.row).is_some(), "{place}: {}", bound.row);
        }
    }
}

#[test]
fn every_rule_names_a_row() {
    let law = of(Profile::Us);
    let cook = Cook {
        core: Temperature::fahrenheit(150),
        held: TimeDelta::seconds(10),
    };
    for (_, standard) in standards()
        .iter()
        .filter(|(place, _)| *place == Profile::Us)
    {
        let judged = heat::enough(&cook, standard, &law.heat, &law.rows).unwrap();
        for finding in &judged.findings {
            assert!(!finding.rows.is_empty(), "{standard:?}: {}", finding.says);
        }
    }
}
