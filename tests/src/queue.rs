//! What stories of printing ask for and wait for.

use crate::day::Told;
use crate::{Caller, Engine, House, Printer};
use serde_json::{Value, json};
use std::time::{Duration, Instant};

/// A kitchen with that printer at the bench.
pub fn kitchen(engine: Engine, printer: &Printer) -> House {
    let house = House::furnished(engine);
    let entry = json!({ "code": "bench", "name": "Bench", "address": printer.address() });
    house.caller().post("/api/printers", &entry).expect(201);
    // A pack for a customer tells where it is.
    crate::labels::set(
        &house.caller(),
        &[("address", json!("Cinderhook Lane 1, Harrowick"))],
    );
    house
}

/// These prints came out once each, and no other.
///
/// # Panics
/// They did not.
#[track_caller]
pub fn once_each(printer: &Printer, prints: &[i64]) {
    let copies: Vec<(i64, usize)> = printer.copies().into_iter().collect();
    let once: Vec<(i64, usize)> = prints.iter().map(|print| (*print, 1)).collect();
    assert_eq!(copies, once);
}

/// A lot of chops in so many packs.
pub fn chops(caller: &Caller, carcass: &str, packs: u32) -> String {
    let pig = caller.half_pig(carcass, 10_000);
    let cut = caller.step("cut").of(&pig);
    cut.into_packs("pork-chop", 9_000, packs).made()
}

/// Asks the printer at the bench for the labels of a lot; the prints' numbers.
pub fn print(caller: &Caller, lot: &str) -> Vec<i64> {
    let asked = json!({ "printer": "bench", "lot": lot });
    numbers(&caller.deed("/api/prints", asked).expect(201).body)
}

/// The numbers of the prints in an answer.
///
/// # Panics
/// There are none.
pub fn numbers(body: &Value) -> Vec<i64> {
    let prints = body["prints"].as_array().expect("prints");
    prints
        .iter()
        .map(|print| print["print"].as_i64().expect("a number"))
        .collect()
}

/// Waits until every one of these prints is in one of these states; the prints.
///
/// # Panics
/// That does not happen within two minutes.
#[track_caller]
pub fn wait(caller: &Caller, prints: &[i64], states: &[&str]) -> Vec<Value> {
    let give_up = Instant::now() + Duration::from_secs(120);
    loop {
        let read: Vec<Value> = prints
            .iter()
            .map(|print| caller.get(&format!("/api/prints/{print}")).expect(200).body)
            .collect();
        let fits = |print: &Value| states.contains(&print["state"].as_str().unwrap_or(""));
        if read.iter().all(fits) {
            return read;
        }
        let late = read.iter().find(|print| !fits(print));
        assert!(Instant::now() < give_up, "not {states:?}: {late:#?}");
        std::thread::sleep(Duration::from_millis(30));
    }
}

/// Waits until that is so.
///
/// # Panics
/// It is not so within two minutes.
#[track_caller]
pub fn until(so: impl FnMut() -> bool) {
    until_or(so, || "it does not happen".to_owned());
}

/// Waits until something is so, as [`until`]; what it says otherwise.
///
/// # Panics
/// It is not so within two minutes.
#[track_caller]
pub fn until_or(mut so: impl FnMut() -> bool, otherwise: impl FnOnce() -> String) {
    let give_up = Instant::now() + Duration::from_secs(120);
    while !so() {
        if Instant::now() >= give_up {
            panic!("{}", otherwise());
        }
        std::thread::sleep(Duration::from_millis(20));
    }
}
