//! Labels that came out before facts turned out to be wrong: each is drawn anew, and whatever it says otherwise than
//! the printed one, that pack is listed, and no other.

use super::{Lived, correct_some, live, now};
use crate::kitchen::act;
use crate::replay::script::script;
use crate::seeds::{each, is_one};
use gambrel::app::App;
use gambrel::caller::Caller;
use gambrel::label_facts::{self, Wanted};
use gambrel::read::{self, LoadedFamily};
use rand::SeedableRng;
use rand::rngs::SmallRng;
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::atomic::{AtomicUsize, Ordering};
use store::family::Extent;
use stories::Engine;

/// The texts of a label that tell what is in the pack, how much and how long it keeps.
const TOLD: [&str; 10] = [
    "name",
    "second-name",
    "use-by",
    "net",
    "ingredients",
    "second-ingredients",
    "allergens",
    "second-allergens",
    "cure",
    "second-cure",
];

/// What a label of the lot's first pack on hand says now, and its template; none where it may have none.
fn label(app: &App, lot: &str, template: Option<String>) -> Option<(String, Value)> {
    let wanted = Wanted {
        template,
        window: Some((0, 1)),
        ..Wanted::default()
    };
    let prepared = app.store.read(|conn| {
        let (reading, key) = LoadedFamily::of_code(app, conn, lot, Extent::ANCESTORS)?;
        label_facts::prepare(app, &reading, key, &wanted)
    });
    let label = prepared.ok()?.into_iter().next()?;
    let texts = serde_json::to_value(&label.facts).unwrap()["texts"].clone();
    let told = TOLD.iter().map(|field| (*field, texts[*field].clone()));
    let told: BTreeMap<&str, Value> = told.collect();
    Some((label.template, json!(told)))
}

/// Prints the label that suits each lot on hand, the kitchen's own where a customer may have none.
fn print_all(wrong: &Lived) -> BTreeMap<String, (String, Value)> {
    let app = &wrong.kitchen.app;
    let mut printed = BTreeMap::new();
    for (nth, lot) in wrong.lots.iter().enumerate() {
        let own = || label(app, lot, Some("tub-large".to_owned()));
        let Some((template, told)) = label(app, lot, None).or_else(own) else {
            continue;
        };
        let body = json!({ "id": format!("00000000-0000-4000-b000-{nth:012x}"), "by": "Cook", "lot": lot,
            "at": now().to_rfc3339(), "template": template });
        act(app, "/api/label-documents", &body).unwrap_or_else(|error| panic!("{body}: {error:?}"));
        printed.insert(lot.clone(), (template, told));
    }
    printed
}

/// The lots of which a pack on hand is listed.
fn listed(app: &App) -> BTreeSet<String> {
    let wrong = app
        .store
        .read(|conn| read::wrong_labels::list(&Caller::new(app), conn, false));
    let wrong = wrong.unwrap().into_iter();
    wrong.map(|of| of.lot.code.to_string()).collect()
}

/// Lives, prints, corrects and compares; how many labels were found to be wrong.
fn compare(engine: Engine, seed: u64) -> usize {
    let mut random = SmallRng::seed_from_u64(1_000 + seed);
    let profile = ["us", "ca", "eu", "uk"][(seed % 4) as usize];
    let all = script(&mut random);
    let wrong = live(engine, profile, &all, |_| false);
    let app = &wrong.kitchen.app;
    let printed = print_all(&wrong);
    assert!(listed(app).is_empty(), "just printed, and wrong");
    correct_some(&wrong, &all, &mut random);
    let listed = listed(app);
    let mut found = 0;
    for (lot, (template, told)) in &printed {
        // A customer's label that may not be printed any more is stopped, whatever it said.
        let Some((_, now)) = label(app, lot, Some(template.clone())) else {
            continue;
        };
        found += usize::from(now != *told);
        assert_eq!(
            now != *told,
            listed.contains(lot),
            "{profile} {lot} on {template}: {told} was printed, {now} is true"
        );
    }
    found
}

fn compare_all(engine: Engine, seeds: u64) {
    let found = AtomicUsize::new(0);
    each(engine, seeds, |engine, seed| {
        found.fetch_add(compare(engine, seed), Ordering::Relaxed);
    });
    assert!(is_one() || found.into_inner() > 0, "no label became wrong");
}

#[test]
fn whatever_a_label_says_otherwise_is_listed_on_sqlite() {
    compare_all(Engine::Sqlite, 40);
}

#[test]
fn whatever_a_label_says_otherwise_is_listed_on_postgres() {
    compare_all(Engine::Postgres, 8);
}
