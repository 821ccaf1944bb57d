//! Random kitchens in which food is stuffed, found without a label, brought back, left in the warm, read by whatever
//! deed, bought as ready and said otherwise later: nothing is ready without a proof in its ancestry, no day is later than
//! that of the ready food which it came from unless raw food was killed in between, and nothing that is stopped leaves
//! without a word.

mod book;
mod deeds;
mod righted;

use crate::kitchen::{Kitchen, act};
use crate::seeds::each;
use book::{Book, Held};
use chrono::{DateTime, TimeDelta, Utc};
use gambrel::caller::Caller;
use gambrel::read;
use gambrel::world::Clock;
use rand::rngs::SmallRng;
use rand::{RngExt, SeedableRng};
use serde_json::{Value, json};
use std::collections::BTreeMap;
use stories::Engine;

const DEEDS: usize = 130;

/// What is on the list besides the furniture.
fn products() -> Vec<Value> {
    let of = |code: &str, more: Value| {
        let mut body = json!({ "code": code, "names": { "en": code, "fr": code }, "kind": "cooked", "raw": false,
            "storage": "chilled", "species": "pig", "for_sale": true, "price_minor_per_kg": 100,
            "keep": { "days": 9, "from": "made", "day_one_counts": true } });
        for (key, value) in more.as_object().expect("fields") {
            body[key] = value.clone();
        }
        body
    };
    vec![
        of("fillet", json!({ "cooked_as": "intact" })),
        of("stew", json!({})),
        of("salad", json!({})),
        of(
            "spread",
            json!({ "keep": { "days": 40, "from": "received", "day_one_counts": true } }),
        ),
        of("mince", json!({ "kind": "mixed", "raw": true })),
        of(
            "bread",
            json!({ "kind": "ingredient", "species": null, "storage": "ambient", "stable_as": "bread", "for_sale": false,
                "keep": null }),
        ),
    ]
}

/// A kitchen with its book.
pub struct Living {
    kitchen: Kitchen,
    book: Book,
    random: SmallRng,
    now: DateTime<Utc>,
    carcasses: u32,
}

impl Living {
    fn open(engine: Engine, seed: u64) -> Living {
        let now: DateTime<Utc> = "2026-06-01T12:00:00Z".parse().unwrap();
        Living {
            kitchen: Kitchen::furnished(engine, seed, "us", now, &products()),
            book: Book::default(),
            random: SmallRng::seed_from_u64(seed),
            now,
            carcasses: 0,
        }
    }

    /// Sends a deed, and once more as it happened where that is asked. Whatever is refused for good is no deed; what
    /// is wrong with the record or the service is no refusal.
    fn send(&mut self, path: &'static str, mut body: Value) -> Option<Done> {
        body["id"] = json!(format!(
            "00000000-0000-4000-8000-{:012x}",
            self.random.random_range(1_u64..1 << 48)
        ));
        body["by"] = json!("Cook");
        let mut done = act(&self.kitchen.app, path, &body);
        let asked = { done.as_ref().err() }.is_some_and(|error| error.problem().may_be_told);
        let told = asked && self.random.random_range(0..3) > 0;
        if told {
            body["as_it_happened"] = json!(true);
            body["note"] = json!("It was done.");
            done = act(&self.kitchen.app, path, &body);
        }
        let answer = match done {
            Ok(done) => done,
            Err(error) => {
                let status = error.problem().status.as_u16();
                assert!((400..500).contains(&status), "{path} {body}: {error:?}");
                return None;
            }
        };
        let answer: Value = serde_json::from_str(&answer.body).unwrap();
        let lots = answer["lots"].as_array().into_iter().flatten();
        let codes = lots.map(|lot| lot["code"].as_str().unwrap().to_owned());
        let codes = codes.collect();
        self.book.deeds.push(book::Deed {
            id: body["id"].as_str().unwrap().to_owned(),
            voided: false,
            says: None,
        });
        let deed = self.book.deeds.len() - 1;
        Some(Done { deed, codes, told })
    }

    fn lot(&self, code: &str) -> Value {
        let app = &self.kitchen.app;
        let read = app.store.read(|conn| {
            let row = read::lot_named(app, conn, code)?;
            let lot = read::lot::read(&Caller::new(app), conn, &row.code)?;
            Ok::<_, gambrel::error::Error>(serde_json::to_value(lot).unwrap())
        });
        read.unwrap()
    }

    fn compare(&self) {
        let (report, _) = gambrel::check::look(&self.kitchen.app.store).unwrap();
        assert!(report.findings.is_empty(), "{:?}", report.findings);
        let held = self.book.held();
        let mut told: BTreeMap<&str, Value> = BTreeMap::new();
        let mut bounds: BTreeMap<&str, String> = BTreeMap::new();
        for code in &self.book.order {
            let lot = self.lot(code);
            if !self.book.is_void(code) {
                let is_ready = is_ready(&lot);
                assert!(
                    !is_ready || held.ready[code.as_str()],
                    "{code} has no proof: {lot}"
                );
                let bound = self.bound(code, &held, &told, &bounds);
                if let (Some(day), Some(bound)) = (last_day(&lot), &bound) {
                    assert!(
                        day <= bound.as_str(),
                        "{code} of {day} outlives {bound}: {lot}"
                    );
                }
                if let Some(bound) = bound {
                    bounds.insert(code, bound);
                }
            }
            told.insert(code, lot);
        }
    }

    /// The earliest day of the ready food that a lot came from, on whatever way, unless something raw in it was killed
    /// since. What a person let go was not ready before: it binds nobody.
    fn bound(
        &self,
        code: &str,
        held: &Held<'_>,
        told: &BTreeMap<&str, Value>,
        bounds: &BTreeMap<&str, String>,
    ) -> Option<String> {
        let inputs = || self.book.lots[code].inputs.iter();
        let raw = inputs().any(|(of, _)| !is_ready(&told[of.as_str()]));
        if raw && held.killed.contains(code) || self.book.lots[code].let_go {
            return None;
        }
        let of_each = inputs().flat_map(|(of, _)| {
            let lot = &told[of.as_str()];
            let binds = is_ready(lot) && !self.book.lots[of].let_go;
            let own = last_day(lot).filter(|_| binds).map(str::to_owned);
            own.into_iter().chain(bounds.get(of.as_str()).cloned())
        });
        of_each.min()
    }

    fn live(&mut self) {
        self.now += TimeDelta::minutes(self.random.random_range(5..330));
        self.kitchen.app.clock = Clock::Stopped(self.now);
        match self.random.random_range(0..100) {
            0..6 => self.pig(),
            6..9 => self.bread(),
            9..15 => self.spread(),
            15..25 => self.cut(),
            25..47 => self.cook(),
            47..55 => self.mix(),
            55..58 => self.adopt(),
            58..70 => self.depart(),
            70..75 => self.read(),
            75..79 => self.take_back(),
            79..81 => self.dispose(),
            81..85 => self.relocate(),
            85..89 => self.fail(),
            89..96 => self.correct(),
            _ => self.void(),
        }
    }
}

/// What came of a deed that was taken.
struct Done {
    deed: usize,
    codes: Vec<String>,
    /// Was it told as it happened?
    told: bool,
}

fn is_ready(lot: &Value) -> bool {
    lot["condition"]["is"] == "ready"
}

/// The last day of any of its packs.
fn last_day(lot: &Value) -> Option<&str> {
    let packs = lot["packs"].as_array().unwrap().iter();
    packs.filter_map(|pack| pack["use_by"].as_str()).max()
}

fn lived(engine: Engine, seed: u64) {
    let mut living = Living::open(engine, seed);
    for _ in 0..DEEDS {
        living.live();
    }
    living.compare();
}

#[test]
fn no_proof_no_date_no_stop_is_passed_over_on_sqlite() {
    each(Engine::Sqlite, 40, lived);
}

#[test]
fn no_proof_no_date_no_stop_is_passed_over_on_postgres() {
    each(Engine::Postgres, 10, lived);
}
