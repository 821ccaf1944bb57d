//! The table of stops, cell by cell: one lot for each kind of stop, and each path that food takes.

use serde_json::{Value, json};
use stories::call::chrono_day;
use stories::day::{Told, bought, farm};
use stories::printer::Manners;
use stories::queue::kitchen;
use stories::{Answer, Caller, Engine, Printer, on_both_engines};

on_both_engines! {
    each_path_asks_each_stop
}

/// What a stop stands in the way of.
struct Row {
    kind: &'static str,
    lot: String,
    /// Making something of it.
    using: bool,
    /// Serving it at the table, where its label stays here.
    serving: bool,
    /// A label for a customer.
    label: bool,
    /// Setting it down at the counter.
    counter: bool,
    /// Does it stand whatever a person with the right lets go? It ends by what it says itself.
    stays: bool,
    verdict: &'static str,
}

fn product(caller: &Caller, code: &str, more: Value) {
    let mut body = json!({ "code": code, "names": { "en": code, "fr": code }, "kind": "cooked", "species": "pig",
        "raw": false, "storage": "chilled", "for_sale": true, "price_minor_per_kg": 100,
        "keep": { "days": 7, "from": "made", "day_one_counts": true } });
    for (key, value) in more.as_object().expect("fields") {
        body[key] = value.clone();
    }
    caller.post("/api/products", &body).expect(201);
}

/// One lot of four packs for each kind of stop.
fn rows(caller: &Caller) -> Vec<Row> {
    product(caller, "roast", json!({ "cooked_as": "roast" }));
    product(caller, "stew", json!({}));
    product(caller, "scrap", json!({ "kind": "waste", "raw": true }));
    let hung = json!({ "kind": "cured", "raw": true, "keep": null, "cure": { "class": "whole-muscle", "method": "dry" },
        "release": { "days": 30 } });
    product(caller, "hung-loin", hung);
    let cured = json!({ "kind": "cured", "raw": true, "cure": { "class": "whole-muscle", "method": "dry" } });
    product(caller, "cured-loin", cured);
    let salt = json!({ "code": "no-1", "names": { "en": "Curing salt" }, "kind": "ingredient", "storage": "ambient",
        "raw": false, "curing_salt": { "nitrite_percent": 6.25 } });
    caller.post("/api/products", &salt).expect(201);
    let salt = caller.receive("no-1").to("cooler").grams(1_000);
    let salt = salt.bought(bought("PTS", "n")).made();
    let animal = farm("BRC").carcass("0608-17").side("left");
    let pig = caller.receive("pig-half").grams(30_000);
    let pig = pig.from(animal.killed(chrono_day(-1))).made();
    let made = |kind: &str, product: &str| {
        let step = caller.step(kind).of_grams(&pig, 2_000);
        step.into_packs(product, 2_000, 4)
    };
    let cooked = || made("cook", "stew").held(80.0, 20).made();
    let row = |kind, lot| Row {
        kind,
        lot,
        using: true,
        serving: true,
        label: true,
        counter: false,
        stays: true,
        verdict: "hold",
    };
    let failed = made("cook", "roast").held(54.5, 60);
    let failed = failed.with("as_it_happened", true);
    let failed = failed.note("The fire went out").made();
    let unproven = made("cook", "stew").made();
    let held = cooked();
    let body = json!({ "lots": [{ "lot": held }], "why": "Glass was found" });
    caller.deed("/api/holds", body).expect(201);
    let mut old = bought("PTS", "26160-1");
    old["use_by"] = json!(chrono_day(-1));
    old["declares"] = json!({ "allergens": [], "ready": true });
    let old = caller.receive("stew").to("cooler").grams(2_000).bought(old);
    let old = old.with("pack_count", 4).with("as_it_happened", true);
    let old = old.note("It came so").made();
    let labelled = made("cut", "pork-chop").made();
    let asked = json!({ "lot": labelled });
    caller.deed("/api/label-documents", asked).expect(201);
    for pack in 1..=4 {
        let some = caller.depart("serve", &labelled).pack(pack);
        some.with("grams", 10).done();
    }
    let hanging = caller.step("cure").of_grams(&pig, 2_000);
    let hanging = hanging.of_grams(&salt, 4).into_packs("hung-loin", 2_000, 4);
    let back = cooked();
    caller.sell(&back).with("packs", json!([1, 2, 3, 4])).done();
    for pack in 1..=4 {
        caller
            .take_back(&back, pack)
            .why("They closed early")
            .done();
    }
    let pot = json!({ "place": "cooler", "product": "stew", "grams": 2_000, "why": "no label" });
    let pot = caller.deed("/api/adoptions", pot).expect(201).code(0);
    let scrap = made("cut", "scrap").made();
    let gone = made("cut", "pork-chop").done();
    let void = gone.body["id"].as_str().unwrap().to_owned();
    let voided = gone.code(0);
    caller.void(&void).done();
    vec![
        Row {
            using: false,
            stays: false,
            ..row("not-proven", unproven)
        },
        Row {
            stays: false,
            ..row("failed", failed)
        },
        Row {
            counter: true,
            ..row("held", held)
        },
        Row {
            verdict: "pull",
            ..row("past-its-day", old)
        },
        Row {
            using: false,
            serving: false,
            label: false,
            ..row("wrong-label", labelled)
        },
        row("not-released", hanging.made()),
        Row {
            stays: false,
            verdict: "not-for-sale",
            ..row("came-back", back)
        },
        Row {
            stays: false,
            ..row("unknown-history", pot)
        },
        Row {
            verdict: "not-for-sale",
            ..row("waste", scrap)
        },
        Row {
            counter: true,
            verdict: "pull",
            ..row("voided", voided)
        },
    ]
}

/// Is it a stop that stood in the way?
fn is_stopped(answer: &Answer) -> bool {
    let kind = answer.body["type"].as_str().unwrap_or_default();
    let stops = [
        "stopped",
        "held",
        "not-released",
        "limit",
        "voided",
        "clash",
    ];
    let said = answer.body["key"].as_str().unwrap_or_default();
    // A label that is refused for a stop says so in its title.
    let stopped = said.starts_with("stop-")
        || answer.body["title"] == "It is stopped"
        || stops.iter().any(|stop| kind == format!("/problems/{stop}"));
    assert!(
        stopped || answer.status < 300 || kind.contains("label"),
        "{}",
        answer.body
    );
    stopped
}

fn each_path_asks_each_stop(engine: Engine) {
    let printer = Printer::new(Manners::default());
    let house = kitchen(engine, &printer);
    let caller = house.caller();
    for row in rows(&caller) {
        let (kind, lot) = (row.kind, &row.lot);
        if kind != "voided" {
            let stops = caller.lot(lot)["stops"].to_string();
            assert!(stops.contains(&format!("\"{kind}\"")), "{kind}: {stops}");
        }
        let of = |path: &str, asked: bool, answer: Answer| {
            assert_eq!(
                is_stopped(&answer),
                asked,
                "{kind}, {path}: {}",
                answer.body
            );
        };
        let verdict = caller.verdict(&format!("{lot}/1"));
        assert_eq!(verdict, row.verdict, "{kind}");
        let leave = |way: &str| {
            let body = json!({ "kind": way, "lot": lot, "pack": 1, "grams": 5 });
            caller.deed("/api/departures", body)
        };
        of("sell", true, leave("sell"));
        of("serve", row.serving, leave("serve"));
        of("ship", true, leave("ship"));
        let step = caller.step("portion").of_pack(lot, 1).into("roast", 5);
        let step = step.with("inputs", json!([{ "lot": lot, "pack": 1, "grams": 5 }]));
        of("step", row.using, step.ask());
        let label = format!("/api/lots/{lot}/labels.pdf?packs=1&template=pack-us");
        of("label", row.label, caller.get(&label));
        let left =
            json!({ "lot": lot, "packs": [1], "template": "pack-us", "again": { "why": "torn" } });
        of(
            "document",
            row.label,
            caller.deed("/api/label-documents", left),
        );
        let print = json!({ "printer": "bench", "lot": lot, "packs": [1], "template": "pack-us", "again": { "why": "torn" } });
        of("print", row.label, caller.deed("/api/prints", print));
        // Of a basket it falls out, and there is nothing to tap that sells it.
        let basket = caller.get(&format!("/counter?with={lot}/1")).expect(200);
        let basket = String::from_utf8_lossy(&basket.bytes).into_owned();
        assert!(
            basket.contains("No longer for sale") && !basket.contains("data-sells"),
            "{kind}: {basket}"
        );
        told_as(&caller, &row);
        let moved = json!({ "lot": lot, "packs": [1], "to": "case" });
        of("counter", row.counter, caller.deed("/api/moves", moved));
        if kind == "voided" {
            continue;
        }
        let_go(&caller, &row);
        // Counting, and throwing away, pass them all.
        let pack = if kind == "unknown-history" { 1 } else { 2 };
        caller
            .count(lot)
            .with("packs", json!([{ "pack": pack, "grams": 400 }]))
            .done();
        let away = json!({ "kind": "discard", "lot": lot, "pack": pack, "why": "done with" });
        caller.deed("/api/departures", away).expect(201);
    }
}

/// What its events say of it to others: a hold is told as one, and nothing that is stopped as fit or for sale.
fn told_as(caller: &Caller, row: &Row) {
    let events = caller.get(&format!("/api/lots/{}/events.jsonld", row.lot));
    let events = String::from_utf8_lossy(&events.expect(200).bytes).into_owned();
    let (kind, held) = (row.kind, row.kind == "held");
    assert_eq!(
        events.contains("non_sellable_other"),
        held,
        "{kind}: {events}"
    );
    for fit in ["conformant", "\"sellable", "available"] {
        assert!(!events.contains(fit), "{kind}, {fit}: {events}");
    }
}

/// A person with the right lets it go, or is told that it ends otherwise; and then the counter hears the same as
/// before.
fn let_go(caller: &Caller, row: &Row) {
    let (kind, lot) = (row.kind, &row.lot);
    let mut body = json!({ "lot": lot, "what": "released", "why": "Seen and found good" });
    if kind == "came-back" {
        body["packs"] = json!([1]);
    }
    let answer = caller.deed("/api/dispositions", body);
    assert_eq!(answer.status == 409, row.stays, "{kind}: {}", answer.body);
    let stops = caller.lot(lot)["stops"].to_string();
    let stands = stops.contains(&format!("\"{kind}\""));
    if row.stays {
        assert!(stands, "{kind}: {stops}");
        assert_eq!(caller.verdict(&format!("{lot}/1")), row.verdict, "{kind}");
    }
    // Its other packs came back as well; nobody has said anything of them.
    assert_eq!(stands, row.stays || kind == "came-back", "{kind}: {stops}");
}
