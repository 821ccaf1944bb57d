//! Random kitchens in which facts turn out to be wrong: whatever is corrected, everything made of it is then
//! as in a second kitchen in which it had been right from the start.

mod printed;
mod script;

use crate::kitchen::{Kitchen, act};
use crate::seeds::{each, is_one};
use chrono::{DateTime, TimeDelta, Utc};
use gambrel::app::App;
use gambrel::caller::Caller;
use gambrel::read;
use rand::rngs::SmallRng;
use rand::seq::SliceRandom;
use rand::{RngExt, SeedableRng};
use script::{Doing, Fact, products, script};
use serde_json::{Value, json};
use stories::Engine;

/// What is compared of a lot.
const COMPARED: [&str; 7] = [
    "condition",
    "allergens",
    "species",
    "use_by",
    "packs",
    "ingredients",
    "stops",
];

/// When all of it is looked at.
fn now() -> DateTime<Utc> {
    "2026-06-26T12:00:00Z".parse().expect("an instant")
}

/// A kitchen that went through a script, and the lots of its doings in their order.
struct Lived {
    kitchen: Kitchen,
    lots: Vec<String>,
    ids: Vec<String>,
}

/// Goes through the script; the facts that `is_right` names are right from the start.
fn live(engine: Engine, profile: &str, all: &[Doing], is_right: impl Fn(usize) -> bool) -> Lived {
    let kitchen = Kitchen::furnished(engine, 0, profile, now(), &products());
    let mut lived = Lived {
        kitchen,
        lots: Vec::new(),
        ids: Vec::new(),
    };
    for (nth, doing) in all.iter().enumerate() {
        let mut body = doing.body.clone();
        if let Some(fact) = doing.fact.as_ref().filter(|_| is_right(nth)) {
            fact.put_over(&mut body);
        }
        fill(&mut body, &lived.lots);
        let id = format!("00000000-0000-4000-8000-{:012x}", nth + 1);
        let at = now() - TimeDelta::minutes(doing.minutes_ago);
        for (field, value) in [
            ("id", json!(id)),
            ("by", json!("Cook")),
            ("at", json!(at.to_rfc3339())),
            ("note", json!("It was done.")),
        ] {
            body[field] = value;
        }
        if doing.path != "/api/readings" {
            body["as_it_happened"] = json!(true);
        }
        let done = act(&lived.kitchen.app, doing.path, &body);
        let done = done.unwrap_or_else(|error| panic!("{} {body}: {error:?}", doing.path));
        let answer: Value = serde_json::from_str(&done.body).unwrap();
        let made = answer["lots"].as_array().into_iter().flatten();
        if doing.makes {
            lived
                .lots
                .extend(made.map(|lot| lot["code"].as_str().unwrap().to_owned()));
        }
        lived.ids.push(id);
    }
    lived
}

/// Puts the lots' codes where the script has their places: `"lot": 3`.
fn fill(body: &mut Value, lots: &[String]) {
    match body {
        Value::Object(fields) => {
            for (key, value) in fields {
                match value.as_u64().filter(|_| key == "lot") {
                    Some(nth) => *value = json!(lots[nth as usize]),
                    None => fill(value, lots),
                }
            }
        }
        Value::Array(values) => values.iter_mut().for_each(|value| fill(value, lots)),
        _ => {}
    }
}

/// What every lot is, its codes by their places: a code keeps the kill date that was believed.
fn state(app: &App, lots: &[String]) -> Vec<Value> {
    let told = lots.iter().map(|code| {
        let lot = app.store.read(|conn| {
            let row = read::lot_named(app, conn, code)?;
            let lot = read::lot::read(&Caller::new(app), conn, &row.code)?;
            Ok::<_, gambrel::error::Error>((serde_json::to_value(lot).unwrap(), row.code.clone()))
        });
        lot.unwrap().0
    });
    let told: Vec<Value> = told.collect();
    let names: Vec<(String, String)> = told
        .iter()
        .enumerate()
        .flat_map(|(nth, lot)| {
            let of = |key: &str| lot[key].as_str().unwrap().to_owned();
            [
                (of("shown"), format!("#{nth}")),
                (of("code"), format!("#{nth}")),
            ]
        })
        .collect();
    told.iter()
        .map(|lot| {
            let mut kept = json!({});
            for field in COMPARED {
                kept[field] = lot[field].clone();
            }
            // When a stop began is when it was seen; why a condition holds is told by both in their own words.
            for stop in kept["stops"].as_array_mut().into_iter().flatten() {
                let stop = stop.as_object_mut().unwrap();
                stop.retain(|key, _| ["stop", "says", "rows"].contains(&key.as_str()));
            }
            if let Some(condition) = kept["condition"].as_object_mut() {
                condition.retain(|key, _| ["is", "by"].contains(&key.as_str()));
            }
            let mut text = kept.to_string();
            for (code, place) in &names {
                text = text.replace(code, place);
            }
            let mut kept: Value = serde_json::from_str(&text).unwrap();
            // Of several lots it speaks in the order of their codes.
            for stop in kept["stops"].as_array_mut().into_iter().flatten() {
                let says = stop["says"].as_str().unwrap_or_default();
                let mut words: Vec<&str> = says.split_whitespace().collect();
                words.sort_unstable();
                stop["says"] = json!(words.join(" "));
            }
            // What comes from two lots alike is one thing to know.
            if let Some(stops) = kept["stops"].as_array_mut() {
                // Of one sort they stand in the order of recording, and a correction comes last.
                stops.sort_by_key(Value::to_string);
                stops.dedup();
            }
            kept
        })
        .collect()
}

/// Corrects what was wrong in any order, takes some corrections back, and tells which stand.
fn correct_some(wrong: &Lived, all: &[Doing], random: &mut SmallRng) -> Vec<usize> {
    let mut facts: Vec<usize> = (0..all.len())
        .filter(|nth| all[*nth].fact.is_some())
        .collect();
    facts.shuffle(random);
    let app = &wrong.kitchen.app;
    let mut right = Vec::new();
    for (count, nth) in facts.into_iter().enumerate() {
        let fact: &Fact = all[nth].fact.as_ref().expect("it has one");
        let mut body = fact.correction();
        let id = format!("00000000-0000-4000-9000-{count:012x}");
        for (field, value) in [
            ("id", json!(id)),
            ("by", json!("Cook")),
            ("step", json!(wrong.ids[nth])),
            ("why", json!("The paper says so.")),
        ] {
            body[field] = value;
        }
        act(app, "/api/corrections", &body).unwrap_or_else(|error| panic!("{body}: {error:?}"));
        if random.random_range(0..4) > 0 {
            right.push(nth);
            continue;
        }
        let back = json!({ "id": format!("00000000-0000-4000-a000-{count:012x}"), "by": "Cook", "step": id,
            "why": "The paper was of another day." });
        act(app, "void", &back).unwrap_or_else(|error| panic!("{back}: {error:?}"));
    }
    right
}

/// Lives with wrong facts, corrects them in any order, takes some corrections back, and compares.
fn compare(engine: Engine, seed: u64) {
    let mut random = SmallRng::seed_from_u64(seed);
    let profile = ["us", "eu", "uk"][random.random_range(0..3)];
    let all = script(&mut random);
    let wrong = live(engine, profile, &all, |_| false);
    let app = &wrong.kitchen.app;
    let right = correct_some(&wrong, &all, &mut random);
    if is_one() {
        for (nth, doing) in all.iter().enumerate() {
            let fact = doing.fact.as_ref().map(Fact::correction);
            eprintln!(
                "{nth} {} {} {} {fact:?}",
                right.contains(&nth),
                doing.minutes_ago,
                doing.body
            );
        }
    }
    let replay = live(engine, profile, &all, |nth| right.contains(&nth));
    let (is, expected) = (
        state(app, &wrong.lots),
        state(&replay.kitchen.app, &replay.lots),
    );
    for (nth, (is, expected)) in is.iter().zip(&expected).enumerate() {
        for field in COMPARED {
            assert_eq!(
                is[field], expected[field],
                "{field} of lot {nth} in {profile}"
            );
        }
    }
    let (report, _) = gambrel::check::look(&app.store).unwrap();
    assert!(report.findings.is_empty(), "{:?}", report.findings);
}

#[test]
fn what_was_corrected_is_as_if_it_had_been_right_on_sqlite() {
    each(Engine::Sqlite, 60, compare);
}

#[test]
fn what_was_corrected_is_as_if_it_had_been_right_on_postgres() {
    each(Engine::Postgres, 15, compare);
}
