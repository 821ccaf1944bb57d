//! A recall over a large record: what a salt and some spices went into is listed, held in one act, told and drawn;
//! and before that a usual one, of an animal.
//!
//! `cargo bench -p stories --bench recall`. PostgreSQL too where `TEST_DATABASE_URL` names a server; there up to
//! `BENCH_POSTGRES_LOTS` lots (100000 if left out), `BENCH_LOTS` says one size instead of three. Of a million lots
//! some fifty thousand are reached. Wanted: listed within a second, held within five, drawn within one; of the usual
//! few hundred all of it within 20 ms. The floor is the walk forward on keys alone.
#![allow(clippy::disallowed_methods, reason = "a bench measures time")]

#[allow(dead_code, reason = "other benches use the rest of it")]
mod record;

use gambrel::app::App;
use gambrel::caller::Caller;
use gambrel::deeds::incident;
use gambrel::pictures;
use gambrel::read::scope;
use gambrel::recall;
use gambrel::wire::asked::Id;
use gambrel::wire::incidents::IncidentAsked;
use gambrel::wire::scope::ScopeAsked;
use serde_json::{Value, json};
use std::time::{Duration, Instant};
use store::{Address, lots, trace};
use stories::bench::{median, ms, row, size as smaller};
use stories::call::fresh_id;
use stories::{Engine, House};
use words::{Language, Speech};

/// Lots of spice that a large recall begins with, beside those of the middle of the record.
const SPICES: usize = 8;
/// Usual recalls, after the first.
const USUAL: usize = 9;

fn main() {
    let most: usize = std::env::var("BENCH_POSTGRES_LOTS")
        .ok()
        .and_then(|most| most.parse().ok())
        .unwrap_or(100_000);
    for engine in record::engines() {
        println!("{engine:?}; of the usual ones the first, and the middle of {USUAL} more");
        row(&[
            "lots", "reached", "floor ms", "list ms", "hold ms", "facts ms", "drawn ms", "all ms",
        ]);
        let one = std::env::var("BENCH_LOTS").ok();
        let one: Option<usize> = one.and_then(|lots| lots.parse().ok());
        let usual: &[usize] = match &one {
            Some(one) => std::slice::from_ref(one),
            None => &[10_000, 100_000, 1_000_000],
        };
        for &size in smaller(usual, &[2_000]) {
            if engine == Engine::Sqlite || size <= most {
                measure(engine, size);
            }
        }
    }
}

fn measure(engine: Engine, size: usize) {
    let folder = tempfile::tempdir().expect("a temporary folder can be made");
    let (app, grown) = record::grown(engine, folder.path(), size);
    let lots = grown.lots.to_string();
    let first = begin(&app, &[grown.animal]);
    first.told(&format!("{lots}, the first"));
    let others = grown.animals.iter().filter(|of| **of != grown.animal);
    let usual = others.take(USUAL).map(|animal| begin(&app, &[*animal]));
    Took::middle(&usual.collect::<Vec<_>>()).told(&format!("{lots}, as usual"));
    let spices = grown.spices.iter().copied().take(SPICES);
    let starts: Vec<i32> = [grown.salt, grown.spice]
        .into_iter()
        .chain(spices)
        .collect();
    begin(&app, &starts).told(&lots);
    let question = lineage(&app, &starts);
    let database = match app.store.address() {
        Address::Sqlite(path) => path.display().to_string(),
        Address::Postgres(url) => url.clone(),
    };
    drop(app);
    let house = House::at(engine, &database, &[]).of_rows_by_hand();
    listed_over_http(&house, &question);
}

/// The list of a large recall as a tablet is given it, the last byte of it there.
fn listed_over_http(house: &House, question: &Value) {
    let caller = house.caller();
    let times: Vec<Duration> = (0..4)
        .map(|_| {
            let (answer, asked) = timed(|| caller.post("/api/scopes", question).expect(200));
            // Who calls reads the answer within that; how long we take to do so is not the service's.
            let (read, reading) = timed(|| serde_json::from_slice::<Value>(&answer.bytes));
            let lots = read.expect("JSON")["lots"].as_array().map_or(0, Vec::len);
            let megabytes = answer.bytes.len() as f64 / 1e6;
            let took = asked.saturating_sub(reading);
            println!("over HTTP, {lots} lots, {megabytes:.1} MB: {} ms", ms(took));
            took
        })
        .collect();
    println!("over HTTP, in the middle: {} ms", ms(median(times)));
}

/// The question what was made of some lots.
fn lineage(app: &App, starts: &[i32]) -> Value {
    let named = app.store.look(|conn| lots::by_keys(conn, starts));
    let named = named.expect("the lots are there");
    let named: Vec<_> = named.iter().map(|lot| json!({ "lot": lot.code })).collect();
    json!({ "start": named, "spreads": "lineage" })
}

/// How many lots an incident reached, and how long each part of it took.
struct Took {
    reached: usize,
    floor: Duration,
    /// Listed, held, told, drawn.
    each: [Duration; 4],
}

impl Took {
    /// Part by part the one in the middle.
    fn middle(all: &[Took]) -> Took {
        let of = |part: &dyn Fn(&Took) -> Duration| median(all.iter().map(part).collect());
        Took {
            reached: all.iter().map(|took| took.reached).sum::<usize>() / all.len(),
            floor: of(&|took| took.floor),
            each: [0, 1, 2, 3].map(|nth| of(&|took| took.each[nth])),
        }
    }

    fn told(&self, what: &str) {
        let [listed, held, told, drawn] = self.each;
        let all = listed + held + told + drawn;
        let parts = [self.floor, listed, held, told, drawn, all].map(ms);
        let numbers = parts.iter().map(String::as_str);
        let reached = self.reached.to_string();
        row(&[what, &reached]
            .into_iter()
            .chain(numbers)
            .collect::<Vec<_>>());
    }
}

fn timed<T>(what: impl FnOnce() -> T) -> (T, Duration) {
    let start = Instant::now();
    let done = what();
    (done, start.elapsed())
}

/// An incident begins with some lots.
fn begin(app: &App, starts: &[i32]) -> Took {
    let asked = lineage(app, starts);
    let question: ScopeAsked = record::read(&asked);
    let (_, floor) = timed(|| app.store.look(|conn| trace::forward(conn, starts)));
    let (found, listing) = timed(|| {
        app.store
            .read(|conn| scope::listed(app, conn, &question, ""))
    });
    let reached = found.map_or(0, |found| found.scope.lots.len());
    let caller = Caller::new(app);
    let id = fresh_id();
    let begun: IncidentAsked =
        record::read(&json!({ "id": id, "by": "Bench", "told_by": "The supplier",
        "hazard": "allergen", "hold": true, "why": "The salt", "scope": asked }));
    let (done, holding) = timed(|| incident::begin(&caller, &begun));
    assert!(done.is_ok(), "it is held");
    let of: Id = record::read(&json!(id));
    let speech = Speech::in_language(Language::English);
    let (drawn, drawing) = timed(|| {
        let lots = app
            .store
            .read(|conn| recall::drawn(app, conn, of, None, "en"));
        pictures::family(&lots.expect("the lots"), &speech).len()
    });
    assert!(drawn > 0);
    let (facts, telling) = timed(|| app.store.read(|conn| recall::of(app, conn, of, None)));
    let facts = facts.expect("the facts");
    assert_eq!(facts.lots.len(), reached);
    Took {
        reached,
        floor,
        each: [listing, holding, telling, drawing],
    }
}
