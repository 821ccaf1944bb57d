//! The demo kitchen's recall: the book at 10:40, the count, the take-back, all of it computed.
//!
//! The expected figures are the story's own (invented); the service never holds them.

use domain::cure::Counts;
use domain::rows::{RowId, Sense};
use domain::words::{Profile, StopKind};
use serde_json::{Value, json};
use std::collections::BTreeMap;
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    the_book_at_ten_forty
    the_count_and_the_take_back
    backward_from_each_pot
    what_the_counter_sees
    one_lot_for_each_kind_of_stop
}

/// Lot, made, sold, packs sold, served, used, discarded, on hand: grams; share of the half pig in per mille.
const BOOK: &str = "
    B10-12   315    0  0    0     0  315     0 1000
    L01     6200 3200 16 2400     0  600     0 1000
    L03      420    0  0  420     0    0     0 1000
    L09    11025    0  0    0     0    0 11025 1000
    L13     6000 2000  8 1000     0    0  3000 1000
    L14      380    0  0  200     0    0   180 1000
    L17      742    0  0    0     0    0   742 1000
    L19      930    0  0    0     0  930     0  695
    L20     3600 3300 11    0     0  300     0  695
    L21     2700    0  0 2700     0    0     0  695
    L22     1740    0  0 1740     0    0     0 1000
    L23     2800 2000  5    0     0    0   800  607
    L24     4000    0  0 1000  1000    0  2000  517
    L25     5400 1500  5    0   600    0  3300  571
    L26      900  300  3  300   300    0     0  571
    L27     1200  450  3  600     0  150     0  517
    L28     4300    0  0 1720     0    0  2580   67
    L30     3350    0  0 2850     0    0   500   89
    L31     2880 1080  6    0     0    0  1800  236
    L32     1000    0  0    0     0    0  1000   67
";

/// The lots of the story by their names.
struct Story {
    house: House,
    caller: Caller,
    codes: BTreeMap<String, String>,
}

impl Story {
    fn tell(engine: Engine) -> Story {
        let house = House::demo(engine);
        let caller = house.caller();
        let mut codes = BTreeMap::new();
        let mut after = String::new();
        loop {
            let page = caller.read(&format!("/api/lots?limit=200&after={after}"));
            for lot in page["lots"].as_array().unwrap() {
                let code = lot["code"].as_str().unwrap().to_owned();
                codes.insert(lot["note"].as_str().unwrap_or(&code).to_owned(), code);
            }
            match page["next"].as_str() {
                Some(next) => after = next.to_owned(),
                None => break,
            }
        }
        Story {
            house,
            caller,
            codes,
        }
    }

    fn descendants(&self) -> Value {
        self.caller.descendants(&self.codes["S10"])
    }

    fn name(&self, code: &Value) -> String {
        let known = self.codes.iter().find(|(_, known)| code == known.as_str());
        known.map(|(name, _)| name.clone()).unwrap_or_default()
    }
}

fn the_book_at_ten_forty(engine: Engine) {
    let story = Story::tell(engine);
    let read = story.descendants();
    let lots = read["lots"].as_array().unwrap();
    assert_eq!(lots.len(), 36);
    let by_name: BTreeMap<String, &Value> = lots
        .iter()
        .map(|lot| (story.name(&lot["code"]), lot))
        .collect();
    let mut in_the_table = 0;
    for line in BOOK.trim().lines() {
        let cells: Vec<&str> = line.split_whitespace().collect();
        let lot = by_name[cells[0]];
        let columns = [
            "made_grams",
            "sold_grams",
            "sold_packs",
            "served_grams",
            "used_grams",
            "discarded_grams",
            "on_hand_grams",
        ];
        for (column, cell) in columns.iter().zip(&cells[1..]) {
            assert_eq!(lot[column].to_string(), *cell, "{} {column}", cells[0]);
        }
        let share = (lot["share"].as_f64().unwrap() * 1000.0).round();
        assert_eq!(share.to_string(), cells[8], "{} share", cells[0]);
        in_the_table += 1;
    }
    // The sixteen that are not in the table are used up.
    let used_up = lots
        .iter()
        .filter(|lot| lot["on_hand_grams"] == 0 && lot["used_grams"] == lot["made_grams"])
        .count();
    assert_eq!((in_the_table, used_up), (20, 16));
    let totals = &read["totals"];
    let sum = |column: &str| totals[column].to_string();
    assert_eq!(
        [sum("sold_grams"), sum("sold_packs"), sum("served_grams")],
        ["13830", "57", "14930"]
    );
    assert_eq!(
        [
            sum("discarded_grams"),
            sum("on_hand_grams"),
            sum("unexplained_grams")
        ],
        ["2295", "26927", "0"]
    );
    assert_eq!(
        lots.iter().filter(|lot| lot["on_hand_grams"] != 0).count(),
        11
    );
    // The other half pig of the same day and abattoir stays clear.
    for clear in ["L10", "L15", "L16", "L29", "B11-04", "B11-07"] {
        assert!(
            !by_name.contains_key(clear),
            "{clear} is not of that carcass"
        );
    }
    let s11 = story.caller.lot(&story.codes["L16"]);
    assert_eq!(s11["on_hand_grams"], 5990);
}

fn the_count_and_the_take_back(engine: Engine) {
    let story = Story::tell(engine);
    let bacon = &story.codes["L13"];
    let packs = story.caller.lot(bacon)["packs"].clone();
    let first = packs
        .as_array()
        .unwrap()
        .iter()
        .find(|pack| pack["is"] == "on-hand")
        .unwrap()["pack"]
        .clone();
    let count =
        json!({ "place": "case", "lot": bacon, "packs": [{ "pack": first, "missing": true }] });
    let counted = story.caller.deed("/api/counts", count).expect(201);
    assert_eq!(counted.body["unexplained_grams"], 250);
    let totals = story.descendants()["totals"].clone();
    assert_eq!(
        (&totals["on_hand_grams"], &totals["unexplained_grams"]),
        (&json!(26677), &json!(250))
    );
    let scanned = story
        .caller
        .read(&format!("/api/scan?code={bacon}/{first}"));
    assert_eq!(scanned["verdict"], "hold");
    let lard = &story.codes["L25"];
    let jars = story.caller.lot(lard)["packs"].clone();
    for jar in jars
        .as_array()
        .unwrap()
        .iter()
        .filter(|jar| jar["is"] == "sold")
        .take(2)
    {
        let back = json!({ "lot": lard, "pack": jar["pack"], "from": "a customer", "why": "recall notice" });
        story.caller.deed("/api/take-backs", back).expect(201);
        let scanned = story
            .caller
            .read(&format!("/api/scan?code={lard}/{}", jar["pack"]));
        assert_eq!(scanned["verdict"], "not-for-sale");
        story
            .caller
            .deed(
                "/api/departures",
                json!({ "kind": "sell", "lot": lard, "pack": jar["pack"] }),
            )
            .refused(409, "pack");
    }
    let read = story.descendants();
    let lot = read["lots"]
        .as_array()
        .unwrap()
        .iter()
        .find(|lot| lot["code"] == lard.as_str())
        .unwrap();
    assert_eq!(
        (&lot["taken_back_grams"], &lot["on_hand_grams"]),
        (&json!(600), &json!(3900))
    );
    assert_eq!(read["totals"]["on_hand_grams"], 27277);
    for lot in read["lots"].as_array().unwrap() {
        let grams = |column: &str| (lot[column].as_f64().unwrap() * 1000.0).round() as i64;
        let out: i64 = [
            "used",
            "sold",
            "served",
            "discarded",
            "shipped",
            "returned",
            "lost",
            "on_hand",
            "unexplained",
        ]
        .iter()
        .map(|account| grams(&format!("{account}_grams")))
        .sum();
        assert_eq!(
            grams("made_grams") + grams("taken_back_grams"),
            out,
            "{lot}"
        );
    }
}

fn backward_from_each_pot(engine: Engine) {
    let story = Story::tell(engine);
    for (lot, animals) in [
        ("L28", "S09 S10 S13"),
        ("L30", "S10 S11 S12"),
        ("L31", "S09 S10 S11"),
        ("L20", "S10 S11"),
        ("L23", "S10 S11"),
    ] {
        let read = story.caller.origins(&story.codes[lot]);
        let mut found: Vec<String> = read["animals"]
            .as_array()
            .unwrap()
            .iter()
            .map(|animal| story.name(&animal["via"][0]))
            .collect();
        found.sort();
        assert_eq!(found.join(" "), animals, "{lot}");
        let sum: f64 = read["animals"]
            .as_array()
            .unwrap()
            .iter()
            .map(|animal| animal["share"].as_f64().unwrap())
            .sum();
        assert!((sum - 1.0).abs() < 1e-6, "{lot}: {sum}");
    }
    // A carry-over in the grinder's head is a source; after the clean-down it is not.
    let sources = |name: &str| {
        let lot = story.caller.origins(&story.codes[name]);
        lot["bought"]
            .as_array()
            .unwrap()
            .iter()
            .map(|lot| story.name(&lot["lot"]))
            .collect::<Vec<_>>()
    };
    assert!(sources("G2").contains(&"B02".to_owned()));
    let forward = story.caller.descendants(&story.codes["G1-HEAD"]);
    let names: Vec<String> = forward["lots"]
        .as_array()
        .unwrap()
        .iter()
        .map(|lot| story.name(&lot["code"]))
        .collect();
    assert!(
        names.contains(&"G2".to_owned()) && !names.contains(&"G3".to_owned()),
        "{names:?}"
    );
    let _ = &story.house;
}

fn what_the_counter_sees(engine: Engine) {
    let story = Story::tell(engine);
    for (lot, verdict, use_by) in [
        ("L30", "sell-today", "2026-06-26"),
        ("L31", "sell-today", "2026-06-26"),
        ("L28", "sell", "2026-06-27"),
        ("L13", "sell", "2026-06-30"),
        ("L20", "gone", "2026-06-19"),
    ] {
        let code = &story.codes[lot];
        let packs = story.caller.lot(code)["packs"].clone();
        let packs = packs.as_array().unwrap();
        let pack = packs
            .iter()
            .find(|pack| pack["is"] == "on-hand")
            .unwrap_or(&packs[0]);
        let scanned = story
            .caller
            .read(&format!("/api/scan?code={code}/{}", pack["pack"]));
        assert_eq!(
            (&scanned["verdict"], &scanned["use_by"]),
            (&json!(verdict), &json!(use_by)),
            "{lot}"
        );
    }
}

/// The lot, with its pack, that shows a kind of stop in the demo, and what the counter is told of it; nothing for a
/// kind that a kitchen of its place can't have.
fn shown(kind: StopKind) -> Option<(&'static str, &'static str)> {
    match kind {
        StopKind::Voided => Some(("BEL-TWICE/1", "pull")),
        StopKind::Held => Some(("B04/1", "hold")),
        StopKind::Failed => Some(("B03/1", "hold")),
        StopKind::UnknownHistory => Some(("POT-0626/1", "hold")),
        StopKind::NotProven => Some(("SCH-0626/1", "hold")),
        StopKind::NotConfirmed => None,
        StopKind::CameBack => Some(("H-01-SLICED/2", "not-for-sale")),
        StopKind::NotReleased => Some(("L17/1", "hold")),
        StopKind::PastDay => Some(("LIV-0624/1", "pull")),
        StopKind::Waste => Some(("SCR-0626/1", "not-for-sale")),
        StopKind::WrongLabel => Some(("S15-PARF/9", "hold")),
    }
}

/// Each word of the closed type stands in the demo's record, on the lot that is named for it and, but for what is no
/// work for anybody, in the list of what is stopped.
fn one_lot_for_each_kind_of_stop(engine: Engine) {
    let mut story = Story::tell(engine);
    let read = story.caller.read("/api/stops");
    let stops = read["stops"].as_array().unwrap();
    // Nobody gave the pot a name.
    let pot = { stops.iter() }.find(|of| of["stop"] == "unknown-history");
    let pot = pot.expect("a pot")["lot"].as_str().unwrap().to_owned();
    story.codes.insert("POT-0626".into(), pot);
    for kind in StopKind::ALL {
        let word = kind.as_str();
        let Some((lot, verdict)) = shown(*kind) else {
            assert_eq!(*kind, StopKind::NotConfirmed);
            no_limit_waits_for_its_reader();
            continue;
        };
        let (name, pack) = lot.split_once('/').unwrap();
        let code = &story.codes[name];
        let on = story.caller.lot(code);
        let on = on["stops"].as_array().unwrap();
        assert!(
            on.iter().any(|of| of["stop"] == word),
            "{lot}, {word}: {on:?}"
        );
        let told = |of: &&Value| of["stop"] == word && of["lot"] == code.as_str();
        let listed = !matches!(kind, StopKind::Voided | StopKind::Waste);
        let count = stops.iter().filter(told).count();
        assert_eq!(count, usize::from(listed), "{word}: {stops:?}");
        let scanned = story.caller.read(&format!("/api/scan?code={code}/{pack}"));
        assert_eq!(scanned["verdict"], verdict, "{lot}: {scanned}");
    }
    let wrong = story.caller.read("/api/wrong-labels");
    assert_eq!(wrong["packs"].as_array().unwrap().len(), 1, "{wrong}");
}

/// In the demo's place every upper limit of nitrite and nitrate was read, so no cure of it waits for a row.
fn no_limit_waits_for_its_reader() {
    let law = law::shipped().expect("the law");
    let us = &law.laws.places[&Profile::Us];
    let limits = us.cures.limits.iter();
    let salts = limits.filter(|limit| {
        matches!(limit.counts, Counts::Salt(_)) && limit.bound.sense != Sense::AtLeast
    });
    let rows: Vec<&RowId> = salts
        .map(|limit| &limit.bound.row)
        .chain(&us.cures.in_force)
        .collect();
    assert!(!rows.is_empty());
    for row in rows {
        assert!(us.rows.is_confirmed(row), "{row:?}: the demo owes it a lot");
    }
}
