//! Runs the check values of heat, trichinae and stability.
//!
//! Temperatures are written with their scale (`145F`, `62.8C`), times with their unit (`134s`,
//! `112min`, `21h`, `20d`), lengths too (`3.5in`, `105mm`).

use super::Input;
use chrono::{DateTime, TimeDelta, Utc};
use domain::code::LotCode;
use domain::grams::Grams;
use domain::heat::{
    self, Answer, Cook, Cooled, CoreReading, Food, HeatRecord, HeatVerdict, Heated, Holding,
    Judgement, Log, Pierced, PiercedBy, Standard,
};
use domain::law::Law;
use domain::measure::{Percent, Temperature};
use domain::refusal::Result;
use domain::rows::{Finding, Gravity, RowId};
use domain::says::{Arg, Texts};
use domain::stability::{self, Fact, StabilityReadings, Stable, Treated};
use domain::trichinae::{
    self, Freezing, Heating, Length, MeasuredAt, Pickle, Process, Proof, Salting, StageKind,
    StageRun, Treatment, Way,
};
use domain::words::{Profile, Species};
use law::Shipped;
use rust_decimal::Decimal;
use std::str::FromStr;

pub fn run(task: &str, input: &Input, shipped: &Shipped) -> String {
    let place = Profile::parse(input.text("place")).expect("a place");
    let law = shipped.laws.of(place);
    match task {
        "cook" => cook(input, law),
        "prove" => prove(input, law),
        "cool" => cool(input, law),
        "cool-found" => cool_found(input, law),
        "hold" => hold(input, law),
        "code-year" => {
            let year = law
                .heat
                .code_year
                .as_ref()
                .map(|(year, _)| year.to_string());
            year.unwrap_or("none".into())
        }
        "after-cooking" => law.heat.after_cooking.clone().unwrap_or("none".into()),
        "trichinae-heat" => proof(heated(input), law),
        "trichinae-cold" => proof(frozen(input), law),
        "trichinae-cure" => proof(Treatment::Cured(Box::new(process(input))), law),
        "trichinae-proof" => other_proof(input, law),
        "trichinae-tested" => {
            let species = Species::parse(input.text("species")).expect("an animal");
            let row = law.trichinae.tested_only.as_ref();
            match row.filter(|_| law.trichinae.tested_species.contains(&species)) {
                Some(row) => format!("tested only {row}"),
                None => "any way".to_owned(),
            }
        }
        "salt-of-mix" => salt_of_mix(input),
        "drying-days" => drying_days(input, law),
        "ham-sum" => ham_sum(input, law),
        "stable" => stable(input, law),
        "barriers" => match stability::barriers(&readings(input), &law.stability, &law.rows) {
            Ok(finding) => gravity([finding.gravity]).to_owned(),
            Err(refusal) => refused(&refusal),
        },
        "moisture" => findings(stability::moisture_to_protein(
            input.text("name"),
            input.get("ratio"),
            input.try_get("ph"),
            &law.stability,
            &law.rows,
        )),
        _ => panic!("no task {task}"),
    }
}

fn split(text: &str) -> (Decimal, &str) {
    let end = text
        .find(|sign: char| sign.is_ascii_alphabetic())
        .unwrap_or_else(|| panic!("{text} lacks its unit"));
    let number = Decimal::from_str(&text[..end]).unwrap_or_else(|_| panic!("{text} is no number"));
    (number, &text[end..])
}

fn temperature(text: &str) -> Temperature {
    match split(text) {
        (degrees, "F") => Temperature::fahrenheit(degrees),
        (degrees, "C") => Temperature::celsius(degrees),
        _ => panic!("{text} is no temperature"),
    }
}

fn time(text: &str) -> TimeDelta {
    let (count, unit) = split(text);
    let seconds = match unit {
        "s" => 1,
        "min" => 60,
        "h" => 3_600,
        "d" => 86_400,
        _ => panic!("{text} is no time"),
    };
    let seconds = (count * Decimal::from(seconds)).normalize().to_string();
    TimeDelta::seconds(seconds.parse().expect("whole seconds"))
}

fn length(text: &str) -> Length {
    match split(text) {
        (count, "in") => Length::inches(count),
        (count, "mm") => Length::millimetres(count),
        _ => panic!("{text} is no length"),
    }
}

/// Minutes after an evening on which a cook was loaded.
fn instant(minutes: i64) -> DateTime<Utc> {
    let start = DateTime::parse_from_rfc3339("2026-03-07T22:00:00Z").unwrap();
    start.to_utc() + TimeDelta::minutes(minutes)
}

fn list(text: &str) -> impl Iterator<Item = &str> {
    text.split(',').map(str::trim).filter(|one| !one.is_empty())
}

fn refused(refusal: &domain::refusal::Refusal) -> String {
    format!("cannot be: {}", refusal.field.as_deref().unwrap_or("?"))
}

fn gravity(all: impl IntoIterator<Item = Gravity>) -> &'static str {
    match all.into_iter().max() {
        Some(Gravity::Refuse) => "refuse",
        Some(Gravity::Warn) => "warn",
        _ => "ok",
    }
}

fn findings(found: Result<Vec<Finding>>) -> String {
    match found {
        Ok(found) => gravity(found.iter().map(|finding| finding.gravity)).to_owned(),
        Err(refusal) => refused(&refusal),
    }
}

/// `1 h 52 min`.
fn shown(time: TimeDelta) -> String {
    let shown = words::Speech::default().arg(&Arg::Length(time));
    shown.replace('\u{a0}', " ")
}

/// `enough`, `short 1 s`, `short`, `decide`; `; warn` where an unconfirmed row speaks.
fn judged(judgement: Result<Judgement>) -> String {
    let judgement = match judgement {
        Ok(judgement) => judgement,
        Err(refusal) => return refused(&refusal),
    };
    let missing = judgement
        .missing
        .map_or_else(String::new, |missing| format!(" {}", shown(missing)));
    let grave = match (judgement.answer, judgement.gravity()) {
        (Answer::Short, Gravity::Refuse) | (Answer::Enough, Gravity::Note) => "",
        (Answer::Decide, Gravity::Warn) => "",
        (_, Gravity::Refuse) => "; refuse",
        (_, Gravity::Warn) => "; warn",
        (_, Gravity::Note) => "; note",
    };
    format!("{}{missing}{grave}", judgement.answer.as_str())
}

fn standard(input: &Input) -> Standard {
    let food = || Food::parse(input.maybe("food").unwrap_or("intact")).expect("a food");
    match (input.maybe("row"), input.try_get("log")) {
        (Some(row), _) => Standard::Row(RowId::new(row)),
        (None, Some(log)) => Standard::Lethality { food: food(), log },
        (None, None) => Standard::Kitchen {
            food: food(),
            code_year: input.get("year"),
        },
    }
}

fn cook(input: &Input, law: &Law) -> String {
    let cook = Cook {
        core: temperature(input.text("core")),
        held: time(input.text("held")),
    };
    judged(heat::enough(&cook, &standard(input), &law.heat, &law.rows))
}

/// `0:150F, 90:120F`: minutes and temperatures.
fn log(input: &Input) -> Log {
    let readings = list(input.text("readings")).map(|one| {
        let (minutes, core) = one.split_once(':').expect("minutes:temperature");
        CoreReading {
            at: instant(minutes.parse().expect("minutes")),
            core: temperature(core),
        }
    });
    Log::new(readings.collect(), chrono_tz::Tz::UTC).expect("a log")
}

/// As [`judged`], and the rows of the proof: `enough by us-1.8-roast`.
fn prove(input: &Input, law: &Law) -> String {
    let log = input.maybe("readings").map(|_| log(input));
    let record = match (&log, input.maybe("boiled")) {
        (Some(log), _) => HeatRecord::Logged(log),
        (None, Some(boiled)) => HeatRecord::Boiled(time(boiled)),
        (None, None) => HeatRecord::Held(Cook {
            core: temperature(input.text("core")),
            held: time(input.text("held")),
        }),
    };
    let species = list(input.maybe("species").unwrap_or_default());
    let species = species.map(|of| Species::parse(of).expect("a species"));
    let chosen = input.maybe("row").map(RowId::new);
    let lot: LotCode = LotCode::read("BRC-26159-A00-6").expect("a code");
    let product = Texts::from("minced");
    let pierced = input.maybe("pierced").map(|by| Pierced {
        by: PiercedBy::parse(by).expect("how"),
        lot: lot.clone(),
        product: product.clone(),
    });
    let heated = Heated {
        record,
        food: input
            .maybe("food")
            .map(|food| Food::parse(food).expect("a food")),
        species: &species.collect(),
        fat: input.try_get::<Decimal>("fat").map(Percent::new),
        code_year: input.try_get("year").unwrap_or(2022),
        chosen: chosen.as_ref(),
        pierced: pierced.as_ref(),
        piece: None,
        unknown: (input.maybe("unknown") == Some("yes")).then_some((&lot, &product)),
        is_approved: input.maybe("approved") == Some("yes"),
    };
    match heat::prove(&heated, &law.heat, &law.rows) {
        Ok(HeatVerdict { judgement, proof }) => {
            let by = proof.map_or_else(String::new, |proof| {
                let rows: Vec<&str> = proof.rows.iter().map(RowId::as_str).collect();
                format!(" by {}", rows.join(" "))
            });
            format!("{}{by}", judged(Ok(judgement)))
        }
        Err(refusal) => refused(&refusal),
    }
}

fn cool_found(input: &Input, law: &Law) -> String {
    let log = log(input);
    let cooling = Cooled {
        log: &log,
        nitrite_ppm: input.try_get("nitrite"),
        is_cooked: input.maybe("cooked") != Some("no"),
        is_approved: input.maybe("approved") == Some("yes"),
    };
    match heat::cooled_by(&cooling, input.maybe("plan"), &law.heat, &law.rows) {
        Ok(Some(judgement)) => judged(Ok(judgement)),
        Ok(None) => "no plan".into(),
        Err(refusal) => refused(&refusal),
    }
}

fn cool(input: &Input, law: &Law) -> String {
    let log = log(input);
    let cooling = Cooled {
        log: &log,
        nitrite_ppm: input.try_get("nitrite"),
        is_cooked: true,
        is_approved: input.maybe("approved") == Some("yes"),
    };
    judged(heat::cooled(
        &cooling,
        input.text("plan"),
        &law.heat,
        &law.rows,
    ))
}

fn hold(input: &Input, law: &Law) -> String {
    let what = Holding::parse(input.text("what")).expect("a holding");
    findings(heat::held(
        what,
        temperature(input.text("at")),
        &law.heat,
        &law.rows,
    ))
}

fn proof(treatment: Treatment, law: &Law) -> String {
    judged(trichinae::check(
        &Proof::Treated(treatment),
        &law.trichinae,
        &law.rows,
    ))
}

fn other_proof(input: &Input, law: &Law) -> String {
    let paper = input.maybe("paper").unwrap_or_default().to_owned();
    let way = input.text("way");
    let certified = Way::ALL.iter().find(|each| each.as_str() == way);
    let proof = match certified {
        Some(way) => Proof::Certified { way: *way, paper },
        None => {
            assert_eq!(way, "normally-cooked");
            Proof::NormallyCooked
        }
    };
    judged(trichinae::check(&proof, &law.trichinae, &law.rows))
}

fn heated(input: &Input) -> Treatment {
    Treatment::Heated(Heating {
        core: temperature(input.text("core")),
        held: input.maybe("held").map(time),
        come_up: input.maybe("come_up").map(time),
        is_cured: input.maybe("cured") == Some("yes"),
        thickness: input.maybe("thickness").map(length),
        chilled_after: input.maybe("chilled_after").map(time),
    })
}

fn frozen(input: &Input) -> Treatment {
    Treatment::Frozen(Freezing {
        measured: match input.text("measured") {
            "room" => MeasuredAt::Room,
            "centre" => MeasuredAt::Centre,
            other => panic!("{other}"),
        },
        at: temperature(input.text("at")),
        held: time(input.text("held")),
        thickness: input.maybe("thickness").map(length),
        meat_at_start: input.maybe("meat").map(temperature),
    })
}

/// `dry 45F 20d, contact 35F..45F 28d`.
fn runs(text: &str) -> Vec<StageRun> {
    list(text)
        .map(|one| {
            let words: Vec<&str> = one.split_whitespace().collect();
            let [stage, at, held] = words[..] else {
                panic!("{one}: stage temperature time")
            };
            let (lowest, highest) = at
                .split_once("..")
                .map_or((at, None), |(low, high)| (low, Some(high)));
            StageRun {
                stage: StageKind::parse(stage).expect("a stage"),
                lowest: temperature(lowest),
                highest: highest.map(temperature),
                held: time(held),
            }
        })
        .collect()
}

fn process(input: &Input) -> Process {
    let percent = |key: &str| input.try_get::<Decimal>(key).map(Percent::new);
    let day = |key: &str| input.try_get::<chrono::NaiveDate>(key);
    Process {
        piece: input.maybe("piece").map(length),
        mass: input.maybe("mass").map(length),
        casing: input.maybe("casing").map(length),
        is_pepperoni: input.maybe("pepperoni") == Some("yes"),
        salting: Salting {
            dry: percent("salt"),
            mix: percent("mix"),
            brine: percent("brine"),
            pickle: input.try_get("salometer").map(|salometer| Pickle {
                salometer,
                per_hundred: input.get("pickle"),
            }),
        },
        overhauls: input.try_get("overhauls").unwrap_or(0),
        // A pound is 453 592.37 mg; the vectors give whole pounds.
        heaviest: input
            .try_get::<i64>("pounds")
            .map(|pounds| Grams::from_milligrams((pounds * 45_359_237).div_euclid(100))),
        runs: runs(input.maybe("runs").unwrap_or_default()),
        whole: input.maybe("whole").map(time),
        cured_on: day("cured_on"),
        dried: day("dried_from").zip(day("dried_to")),
        ..Process::of(input.text("method"))
    }
}

/// Weights in pounds, thousandths kept: only their ratio counts.
fn salt_of_mix(input: &Input) -> String {
    let grams = |key: &str| {
        let thousandths = input.get::<Decimal>(key) * Decimal::from(1_000_000);
        Grams::from_milligrams(thousandths.normalize().to_string().parse().expect("whole"))
    };
    match trichinae::salt_of_wet_mix(grams("salt"), grams("mix"), grams("dry")) {
        Ok(salt) => salt.number().normalize().to_string(),
        Err(refusal) => refused(&refusal),
    }
}

fn drying_days(input: &Input, law: &Law) -> String {
    let tables = law.trichinae.sausage_drying.as_ref().expect("the tables");
    let holds: Vec<(Temperature, TimeDelta)> = runs(input.maybe("holds").unwrap_or_default())
        .iter()
        .map(|run| (run.lowest, run.held))
        .collect();
    let salt = Percent::new(input.get::<Decimal>("salt"));
    match tables.days(length(input.text("casing")), salt, &holds) {
        Ok(days) => format!("{} d (-{} +{})", days.days(), days.cut, days.more),
        Err(row) => format!("the table ends: {row}"),
    }
}

fn ham_sum(input: &Input, law: &Law) -> String {
    let table = law.trichinae.ham_drying.as_ref().expect("the table");
    let runs: Vec<(Temperature, TimeDelta)> = runs(input.text("runs"))
        .iter()
        .map(|run| (run.lowest, run.held))
        .collect();
    table.sum(&runs).normalize().to_string()
}

fn readings(input: &Input) -> StabilityReadings {
    let percent = |key: &str| input.try_get::<Decimal>(key).map(Percent::new);
    StabilityReadings {
        ph: input.try_get("ph"),
        water_activity: input.try_get("aw"),
        salt_in_water: percent("salt"),
        brine: percent("brine"),
        facts: list(input.maybe("facts").unwrap_or_default())
            .map(|fact| Fact::parse(fact).expect("a fact"))
            .collect(),
    }
}

fn stable(input: &Input, law: &Law) -> String {
    let mut rules = law.stability.clone();
    if let Some(edges) = input.maybe("edges") {
        rules.is_strict = edges == "strict";
    }
    let (is_heated, is_packed) = match input.maybe("treated").unwrap_or("raw") {
        "raw" => (false, false),
        "heated" => (true, false),
        "packed" => (false, true),
        "heated-packed" => (true, true),
        other => panic!("{other}"),
    };
    let treated = Treated {
        is_heated,
        is_packed,
    };
    match stability::needs_control(&readings(input), treated, &rules, &law.rows) {
        Ok(Stable { stability, .. }) => stability.as_str().to_owned(),
        Err(refusal) => refused(&refusal),
    }
}
