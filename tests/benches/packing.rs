//! One deed that packs 60 packs, against a batched insert of the same rows in one commit.
//!
//! `cargo bench -p stories --bench packing`. PostgreSQL too where `TEST_DATABASE_URL` names a server.
//! Wanted: at most 2 times the floor.

mod byhand;
#[allow(dead_code, reason = "other benches use the rest of it")]
mod record;

use gambrel::app::App;
use gambrel::deeds::{receive, step};
use gambrel::wire::asked::StepAsked;
use serde_json::{Value, json};
use stories::bench::{in_turn, ms, row, size, times};
use stories::call::fresh_id;

const PACKS: usize = 60;
const PACK_GRAMS: usize = 100;

fn main() {
    let rounds = size(101, 3);
    row(&[
        "60 packs in one deed, medians",
        "floor ms",
        "ours ms",
        "times",
    ]);
    for engine in record::engines() {
        for lots in [1, PACKS] {
            let folder = tempfile::tempdir().expect("a temporary folder can be made");
            let app = record::furnished(engine, folder.path());
            let (source, by_hand) = (received(&app), received(&app));
            let mut asked: Vec<StepAsked> = (0..=rounds).map(|_| asked(&source, lots)).collect();
            let model = self::asked(&source, lots);
            let mut like = byhand::Like::the_deed(&app, &model, &by_hand);
            let (ours, floor) = in_turn(
                rounds,
                || {
                    step::take(
                        &gambrel::caller::Caller::new(&app),
                        &asked.pop().expect("one a round"),
                    )
                    .expect("it is taken")
                },
                || like.write(&app),
            );
            let what = format!("{engine:?}, lots: {lots}, packs in each: {}", PACKS / lots);
            row(&[&what, &ms(floor), &ms(ours), &times(ours, floor)]);
        }
    }
}

/// Receives a lot that all rounds can draw on; its code.
fn received(app: &App) -> String {
    let receipt = json!({ "id": fresh_id(), "by": "Cook", "place": "cooler", "product": "pork-trim", "grams": 1_000_000,
        "animal": { "farm": "BRC", "species": "pig", "killed_on": stories::call::chrono_day(-1), "abattoir": "DEMO-17",
            "carcass": fresh_id() } });
    let done = receive::take(&gambrel::caller::Caller::new(app), &record::read(&receipt))
        .expect("it is taken");
    let answer: Value = serde_json::from_str(&done.body).expect("JSON");
    answer["lots"][0]["code"]
        .as_str()
        .expect("a code")
        .to_owned()
}

fn asked(source: &str, lots: usize) -> StepAsked {
    let output = json!({ "product": "pork-chop", "grams": PACK_GRAMS * PACKS / lots, "pack_count": PACKS / lots });
    record::read(
        &json!({ "id": fresh_id(), "kind": "pack", "by": "Cook", "place": "bench",
        "inputs": [{ "lot": source, "grams": PACK_GRAMS * PACKS }], "outputs": vec![output; lots] }),
    )
}
