//! Keeps a record of this version for all later ones: `cargo run -p stories --example keep_record -- 2026-11-28`
//!
//! The demo's, and some deeds and labels on top of it; on SQLite, and on the PostgreSQL that
//! `TEST_DATABASE_URL` names.

use serde_json::json;
use stories::old_records::{DEEDS, OldRecord, ask};
use stories::printer::Manners;
use stories::queue::{numbers, wait};
use stories::{Caller, Engine, House, Printer};

fn main() {
    let day = std::env::args().nth(1).expect("name the day: 2026-11-28");
    for engine in [Engine::Sqlite, Engine::Postgres] {
        let kept = OldRecord::of(&day, engine);
        let mut house = House::demo(engine);
        add_deeds(&house.caller());
        add_prints(&house.caller());
        house.end();
        kept.keep(&house.database);
        let house = kept.open();
        kept.keep_answers(&ask(&house.caller(), house.folder()));
        println!("{engine:?}: {}", house.check());
    }
}

/// A sale that was a mistake, a count that misses a pack, a farm that was mistaken.
fn add_deeds(caller: &Caller) {
    let [sale, void, count, correction] = DEEDS;
    let (bacon, pig) = (caller.noted("L13"), caller.noted("S10"));
    let lot = caller.get(&format!("/api/lots/{bacon}")).expect(200).body;
    let packs = lot["packs"].as_array().expect("packs").iter();
    let mut left = packs
        .filter(|pack| pack["is"] == "on-hand")
        .map(|pack| &pack["pack"]);
    let mut next = || left.next().expect("a pack is left");
    let sold = json!({ "id": sale, "kind": "sell", "lot": bacon, "pack": next() });
    caller.deed("/api/departures", sold).expect(201);
    let mistake = json!({ "id": void, "why": "rung up twice" });
    let path = format!("/api/steps/{sale}/void");
    caller.deed(&path, mistake).expect(201);
    let missing = json!([{ "pack": next(), "missing": true }]);
    let counted = json!({ "id": count, "place": "case", "lot": bacon, "packs": missing });
    caller.deed("/api/counts", counted).expect(201);
    let received = caller.get(&format!("/api/lots/{pig}")).expect(200).body;
    let corrected = json!({ "id": correction, "step": received["made_by_step"],
        "animal": { "carcass": "0608-18" }, "why": "the tag was misread" });
    caller.deed("/api/corrections", corrected).expect(201);
}

/// Labels that came out, one that came out spoilt, one that was printed again.
fn add_prints(caller: &Caller) {
    let printer = Printer::new(Manners {
        breaks_off: (1, None),
        ..Manners::default()
    });
    let entry = json!({ "code": "bench", "name": "Bench", "address": printer.address() });
    caller.post("/api/printers", &entry).expect(201);
    let jar = caller.noted("L31");
    let print = |packs: &[u32], again: serde_json::Value| {
        let asked = json!({ "printer": "bench", "lot": jar, "packs": packs, "again": again });
        let prints = numbers(&caller.deed("/api/prints", asked).expect(201).body);
        wait(caller, &prints, &["printed", "unsure"]);
        prints
    };
    let prints = print(&[7, 8, 9], json!(null));
    let spoilt = json!({ "prints": [{ "print": prints[0], "came_out": false }] });
    let settled = caller.deed("/api/print-settlements", spoilt).expect(201);
    wait(caller, &numbers(&settled.body)[1..], &["printed"]);
    print(&[8], json!({ "why": "it fell into the sink" }));
}
