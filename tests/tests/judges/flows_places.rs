//! Acts over places in a real browser, with the taps that they take: cleaned down, read, failed, counted, several
//! packs moved or thrown away; a probe checked, a tub without a label taken in, a pack supplied and taken back.

use super::flows::{Hand, PHONE, TABLET, newest};
use serde_json::{Value, json};
use stories::browser::Browser;
use stories::queue::until;
use stories::{Caller, Engine, House};

/// What of the demo stands in a place: its lots with their packs there.
fn stands(caller: &Caller, place: &str) -> Vec<(String, Vec<u64>)> {
    let found = caller.read(&format!("/api/lots?place={place}&limit=200"));
    let lots = found["lots"].as_array().expect("lots").iter();
    let each = lots.map(|lot| {
        let code = lot["code"].as_str().expect("a code").to_owned();
        let read = caller.lot(&code);
        let packs = read["packs"].as_array().expect("packs").iter();
        let here = packs.filter(|pack| pack["place"] == place && pack["left_grams"] != 0);
        let here = here.filter_map(|pack| pack["pack"].as_u64()).collect();
        (code, here)
    });
    each.collect()
}

fn pack(caller: &Caller, lot: &str, number: u64) -> Value {
    let read = caller.lot(lot);
    let mut packs = read["packs"].as_array().expect("packs").iter();
    packs
        .find(|pack| pack["pack"] == number)
        .expect("the pack")
        .clone()
}

#[test]
fn a_bench_is_cleaned_down_in_two_taps_from_its_page_and_undone_in_one() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Pim Verrall", TABLET);
    hand.open("/places/bench");
    hand.tap("a.act[href='/places/bench/clean-down']");
    assert!(
        hand.text().contains("Bench is cleaned down now"),
        "{}",
        hand.text()
    );
    hand.tap("button.grand");
    assert_eq!(hand.taps, 2);
    let deed = hand.did();
    assert_eq!(
        caller.read(&format!("/api/steps/{deed}"))["kind"],
        "clean-down"
    );
    assert!(hand.text().contains("Pim Verrall"), "{}", hand.text());
    hand.taps = 0;
    hand.tap("button.undo");
    assert_eq!(hand.taps, 1);
    until(|| !caller.read(&format!("/api/steps/{deed}"))["voided"].is_null());
    assert!(browser.errors().is_empty());
}

#[test]
fn a_cooler_is_read_by_the_scales_enter_and_a_freezer_that_failed_is_one_act() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", TABLET);
    hand.open("/places/cooler-1");
    hand.tap("a.act[href='/places/cooler-1/temperature']");
    browser.type_into("input[name=celsius], input[name=fahrenheit]", "3.4");
    assert!(
        hand.text().contains("Cooler 1 shows 3.4"),
        "{}",
        hand.text()
    );
    hand.tap("button.grand");
    assert_eq!(hand.taps, 2);
    let deed = hand.did();
    assert!(hand.text().contains("3.4"), "{}", hand.text());
    assert_eq!(
        caller.read(&format!("/api/steps/{deed}"))["kind"],
        "measure"
    );

    // Nobody has read it, so nobody is offered an hour to confirm; with one, everything in it is judged at once.
    let before = stands(&caller, "freezer");
    hand.open("/places/freezer");
    hand.tap("a.act[href='/places/freezer/failed']");
    let typed = "const field = document.querySelector('[name=from]'); const before = field.value;
        field.value = new Date(Date.parse(`${field.max}Z`) - 86400000).toISOString().slice(0, 16);
        field.dispatchEvent(new Event('input', { bubbles: true })); return before";
    assert_eq!(browser.run(typed), "");
    assert!(
        hand.text()
            .contains(&format!("the {} lots in it are judged", before.len())),
        "{}",
        hand.text()
    );
    hand.tap("button.grand");
    assert_eq!(hand.taps, 2);
    let deed = hand.did();
    let read = caller.read(&format!("/api/steps/{deed}"));
    assert_eq!(read["kind"], "place-failed", "{read}");
    let stopped = |lot: &str| {
        let stops = caller.lot(lot)["stops"].clone();
        stops.as_array().is_some_and(|stops| !stops.is_empty())
    };
    let held = before.iter().filter(|(lot, _)| stopped(lot)).count();
    assert!(held > 10, "{held} of {}", before.len());
    hand.tap("button.undo");
    until(|| !caller.read(&format!("/api/steps/{deed}"))["voided"].is_null());
}

#[test]
fn packs_of_two_lots_go_elsewhere_together_and_come_back_together() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let browser = Browser::reading("fr");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", PHONE);
    let lots = stands(&caller, "case");
    let ((one, ones), (other, others)) = (&lots[0], &lots[1]);
    hand.open("/places/case/move");
    for (lot, number) in [(one, ones[0]), (other, others[0]), (other, others[1])] {
        hand.tap(&format!(
            "[data-lot='{lot}'] label:has(input[value='{number}'])"
        ));
    }
    hand.tap(".choices label:has(input[value='cooler-1'])");
    assert!(
        hand.text().contains("Paquets : 3. De Counter case"),
        "{}",
        hand.text()
    );
    hand.tap("button.grand");
    assert_eq!(hand.taps, 5);
    let deeds = hand.did();
    assert_eq!(deeds.split(',').count(), 2);
    let is_at = |lot: &str, number: u64| pack(&caller, lot, number)["place"].clone();
    assert_eq!(is_at(one, ones[0]), "cooler-1");
    assert_eq!(is_at(other, others[1]), "cooler-1");
    hand.taps = 0;
    hand.undo();
    assert_eq!(hand.taps, 1);
    until(|| is_at(one, ones[0]) == "case" && is_at(other, others[1]) == "case");
    // Thrown away with its reason, all packs of a lot in one tap more.
    hand.open("/places/case/discard");
    hand.tap(&format!("[data-lot='{one}'] [data-whole]"));
    hand.tap(".choices label:has(input[name=why])");
    hand.tap("button.grand");
    assert_eq!(hand.taps, 3);
    hand.did();
    assert_eq!(pack(&caller, one, ones[0])["is"], "discarded");
}

#[test]
fn a_place_is_counted_by_scanning_what_stands_there_and_what_is_not_is_missing() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", TABLET);
    let lots = stands(&caller, "case");
    let (short, packs) = (&lots[0].0, &lots[0].1);
    // One stands there that the record has elsewhere.
    let strayed = stands(&caller, "cooler-2")[0].clone();
    hand.open("/places/case/count");
    // Nothing tapped is not everything missing.
    hand.tap("button.grand");
    assert!(
        hand.text().contains("No pack is tapped yet"),
        "{}",
        hand.text()
    );
    browser.run("[...document.querySelectorAll('[name=_packs]')].forEach((field) => { field.checked = true; })");
    let first = format!("[data-lot='{short}'] input[value='{}']", packs[0]);
    browser.run(&format!(
        "document.querySelector(\"{first}\").checked = false"
    ));
    // Its label, and the scanner's Enter.
    browser.type_into(
        "input[name=_scan]",
        &format!("{short}/{}\u{e007}", packs[1]),
    );
    browser.type_into(
        "input[name=_scan]",
        &format!("{}/{}\u{e007}", strayed.0, strayed.1[0]),
    );
    until(|| browser.run("return document.querySelector('[data-found-lot]') !== null") == true);
    assert!(
        hand.text().contains("Missing: 1. Found besides: 1."),
        "{}",
        hand.text()
    );
    hand.tap("button.grand");
    let deeds = hand.did();
    assert_eq!(deeds.split(',').count(), lots.len() + 1);
    assert_eq!(pack(&caller, short, packs[0])["is"], "missing");
    assert_eq!(pack(&caller, &strayed.0, strayed.1[0])["place"], "case");

    // It turns up without its label: it is that pack.
    hand.open("/adopt");
    hand.tap(&format!("a.act[href^='/adopt?is={short}/{}']", packs[0]));
    browser.type_into("input[name=grams]", "100");
    browser.run("document.querySelector('[name=place]').value = 'cooler-1'");
    hand.tap("button.grand");
    assert_eq!(hand.taps, 2);
    hand.did();
    let found = pack(&caller, short, packs[0]);
    assert_eq!(
        (&found["left_grams"], &found["place"]),
        (&json!(100), &json!("cooler-1")),
        "{found}"
    );
}

#[test]
fn a_tub_that_nobody_knows_is_taken_in_and_a_probe_is_checked_in_ice() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    caller
        .post("/api/probes", &json!({ "code": "p1", "name": "Blue" }))
        .expect(201);
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Pim Verrall", TABLET);
    hand.open("/adopt?place=cooler-2");
    browser.run("document.querySelector('[name=product]').value = 'pork-stock'");
    browser.type_into("input[name=grams]", "1200");
    hand.tap("button.grand");
    assert_eq!(hand.taps, 1);
    hand.did();
    let tub = newest(&caller);
    assert_eq!(tub["product"], "pork-stock");
    let tub = caller.lot(tub["code"].as_str().expect("a code"));
    assert!(
        tub["stops"].to_string().contains("unknown-history"),
        "{tub}"
    );

    hand.open("/probes");
    browser.type_into("input[name=celsius], input[name=fahrenheit]", "0.2");
    assert!(
        hand.text().contains("Blue in melting ice shows 0.2"),
        "{}",
        hand.text()
    );
    hand.tap("button.grand");
    assert_eq!(hand.taps, 1);
    hand.did();
    assert!(hand.text().contains("Last: "), "{}", hand.text());
    hand.tap("button.undo");
    until(|| hand.text().contains("Never checked"));
}

#[test]
fn a_pack_is_supplied_and_another_is_taken_back() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let bacon = caller.noted("L13");
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", TABLET);
    hand.open(&format!("/lots/{bacon}"));
    hand.tap(&format!("a.act[href='/lots/{bacon}/ship']"));
    browser.run("document.querySelector('[name=packs]').value = ''");
    browser.type_into("input[name=packs]", "13");
    browser.type_into("input[name=to]", "The Mill");
    hand.tap("button.grand");
    assert_eq!(hand.taps, 2);
    hand.did();
    assert_eq!(pack(&caller, &bacon, 13)["is"], "shipped");
    hand.open(&format!("/lots/{bacon}/take-back"));
    browser.type_into("input[name=pack]", "13");
    // Nothing is said before somebody says it.
    hand.tap("label:has(input[name=why])");
    hand.tap("button.grand");
    assert_eq!(hand.taps, 2);
    hand.did();
    assert_eq!(pack(&caller, &bacon, 13)["is"], "on-hand");
}
