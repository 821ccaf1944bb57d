//! A printer that is not ours: Debian's `ippeveprinter`. What it prints is counted on its paper.

use serde_json::json;
use std::process::Command;
use stories::queue::{chops, numbers, until, wait};
use stories::real_printer::RealPrinter;
use stories::{Engine, House, on_both_engines};

on_both_engines! {
    it_prints_each_label_once_and_as_it_was_kept
    it_is_killed_in_the_middle_of_a_label
    the_service_is_killed_in_the_middle_of_the_queue
    its_memory_is_full
}

/// A kitchen with that printer, and a lot in so many packs that are on their way to it.
fn kitchen(engine: Engine, printer: &RealPrinter, packs: u32) -> (House, String, Vec<i64>) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let entry = json!({ "code": "bench", "name": "Bench", "address": printer.address(), "templates": ["tub"] });
    caller.post("/api/printers", &entry).expect(201);
    let lot = chops(&caller, "0608-17", packs);
    let asked = json!({ "printer": "bench", "lot": lot });
    let asked = caller.deed("/api/prints", asked).expect(201).body;
    // This kitchen has not said where it is, and that is all.
    let warnings = asked["warnings"].as_array().unwrap();
    let told = asked["warnings"].to_string();
    assert!(warnings.len() == 1 && told.contains("address"), "{told}");
    (house, lot, numbers(&asked))
}

#[track_caller]
fn once_each(printer: &RealPrinter, prints: &[i64]) {
    let copies: Vec<(i64, usize)> = printer.copies().into_iter().collect();
    assert_eq!(
        copies,
        prints.iter().map(|print| (*print, 1)).collect::<Vec<_>>()
    );
}

fn it_prints_each_label_once_and_as_it_was_kept(engine: Engine) {
    let printer = RealPrinter::new(20);
    let (house, _, prints) = kitchen(engine, &printer, 8);
    let caller = house.caller();
    wait(&caller, &prints, &["printed"]);
    once_each(&printer, &prints);
    let spool = printer.spool();
    assert_eq!(
        spool.iter().map(|(print, _)| *print).collect::<Vec<_>>(),
        prints
    );
    for (print, path) in spool {
        let label = caller
            .get(&format!("/api/prints/{print}/label.pdf"))
            .expect(200);
        assert_eq!(std::fs::read(&path).unwrap(), label.bytes, "print {print}");
        let checked = Command::new("qpdf")
            .arg("--check")
            .arg(&path)
            .output()
            .expect("qpdf is missing");
        assert!(
            checked.status.success(),
            "{}",
            String::from_utf8_lossy(&checked.stdout)
        );
    }
    let state = caller.read("/api/printers/bench/state");
    assert_eq!(
        (&state["state"], &state["sizes"][0]),
        (&json!("ready"), &json!("51 x 51"))
    );
    // The printer has 300 dots an inch, so that is what its labels are laid out for.
    let print = caller.read(&format!("/api/prints/{}", prints[0]));
    assert_eq!(
        (&print["dpi"], &print["attempts"]),
        (&json!(300), &json!(1))
    );
}

fn it_is_killed_in_the_middle_of_a_label(engine: Engine) {
    let mut printer = RealPrinter::new(250);
    let (house, _, prints) = kitchen(engine, &printer, 8);
    let caller = house.caller();
    for nth in [2, 5] {
        until(|| printer.paper().len() >= nth);
        printer.switch_off();
        printer.switch_on();
    }
    let ended = wait(&caller, &prints, &["printed", "unsure"]);
    let copies = printer.copies();
    let mut seen = Vec::new();
    for read in &ended {
        let print = read["print"].as_i64().unwrap();
        let out = copies.get(&print).copied().unwrap_or(0);
        assert!(out <= 1, "print {print} came out {out} times");
        match read["state"].as_str().unwrap() {
            "printed" => assert_eq!(out, 1, "print {print}"),
            _ => seen.push(json!({ "print": print, "came_out": out == 1 })),
        }
    }
    // It was killed twice in the middle, and did not know what became of that label.
    assert!((1..=4).contains(&seen.len()), "{ended:?}");
    let settled = caller
        .deed("/api/print-settlements", json!({ "prints": seen }))
        .expect(201);
    let anew = numbers(&settled.body).split_off(seen.len());
    wait(&caller, &anew, &["printed"]);
    // Every pack has one label, and none has two.
    let mut out: Vec<i64> = caller.read("/api/prints?state=printed&limit=200")["prints"]
        .as_array()
        .unwrap()
        .iter()
        .map(|print| print["print"].as_i64().unwrap())
        .collect();
    out.sort_unstable();
    once_each(&printer, &out);
    assert_eq!(out.len(), prints.len());
}

fn the_service_is_killed_in_the_middle_of_the_queue(engine: Engine) {
    let printer = RealPrinter::new(30);
    let (mut house, _, prints) = kitchen(engine, &printer, 25);
    for nth in 0..6 {
        until(|| printer.paper().len() > 3 * nth);
        house.kill();
        house.restart();
    }
    wait(&house.caller(), &prints, &["printed"]);
    once_each(&printer, &prints);
}

fn its_memory_is_full(engine: Engine) {
    let printer = RealPrinter::new(10);
    printer.limit_spool(Some(4_096));
    let (house, _, prints) = kitchen(engine, &printer, 3);
    let caller = house.caller();
    // It is told, nothing is lost, and nothing comes out.
    let told = || caller.read(&format!("/api/prints/{}", prints[0]));
    until(|| told()["attempts"].as_i64() >= Some(2));
    assert!(printer.paper().is_empty());
    printer.limit_spool(None);
    wait(&caller, &prints, &["printed"]);
    once_each(&printer, &prints);
}
