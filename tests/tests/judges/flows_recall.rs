//! A recall in a real browser: from the phone call to the hold, and a count by scanning on a phone.

use super::flows::{Hand, PHONE, TABLET};
use serde_json::json;
use stories::browser::Browser;
use stories::queue::until;
use stories::recall::{begin, incident};
use stories::{Engine, House};

#[test]
fn from_the_phone_call_to_the_hold_it_is_three_acts_and_no_field() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", TABLET);
    // As it was said, into the box that stands on every page.
    hand.open("/");
    browser.type_into("header input[name=q]", "17 of Brindlecombe");
    browser.press("\u{e007}");
    until(|| hand.text().contains("0608-17"));
    hand.tap("main a[href^='/recall?animal=']");
    until(|| hand.text().contains("11 lots are on hand"));
    assert!(hand.text().contains("0608-17"), "{}", hand.text());
    // Held first; who phoned, and what it is about, can wait.
    hand.tap("main form[data-deed] button");
    hand.did();
    assert_eq!(hand.taps, 2);
    let all = caller.read("/api/incidents");
    assert_eq!(all["incidents"][0]["told_by"], "", "nobody noted it yet");
    let shown = hand.text();
    assert!(
        shown.contains("Held under CHK-2026-1: 56 packs, 26.927 kg"),
        "{shown}"
    );
    let tags = browser
        .run("return document.querySelector('main a[href$=\"tags.pdf\"]').getAttribute('href')");
    let tags = caller.get(tags.as_str().unwrap()).expect(200);
    assert_eq!(tags.kind, "application/pdf");
    // The next act is the count.
    hand.tap("main a.grand");
    until(|| hand.text().contains("of 6"));
}

#[test]
fn from_today_a_newcomer_has_held_it_after_four_acts() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", PHONE);
    hand.open("/");
    hand.tap("main .ways a[href='/recall']");
    // What it may be stands there while it is typed: no Enter, no button.
    browser.type_into("main input[name=q]", "the pig ending in 17");
    until(|| hand.text().contains("0608-17"));
    let offered = hand.text();
    assert!(offered.contains("killed Mon, Jun 8"), "{offered}");
    // A code that has it in the middle has it by chance.
    let lots = "return document.querySelectorAll(\"main a[href^='/recall?lot=']\").length";
    assert_eq!(browser.run(lots), 0, "{offered}");
    hand.tap("main a[href^='/recall?animal=']");
    until(|| hand.text().contains("11 lots are on hand"));
    hand.tap("main form[data-deed] button");
    hand.did();
    assert_eq!(hand.taps, 3, "and what was typed");
    assert_eq!(caller.read("/api/incidents")["incidents"][0]["holds"], true);
}

#[test]
fn a_scan_counts_a_pack_and_what_is_missing_is_said_once() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let id = begin(&caller, json!({ "carcass": "0608-17" }), false);
    let bacon = caller.noted("L13");
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", PHONE);
    hand.open("/recall/CHK-2026-1/count?place=case");
    let counted = || incident(&caller, &id)["count"]["uncounted_packs"].clone();
    assert_eq!(counted(), 56);
    // A scan is typing and Enter, and nothing is tapped.
    for (pack, left, shown) in [(9, 55, "1 of 21"), (10, 54, "2 of 21")] {
        browser.type_into("main input[name=code]", &format!("{bacon}/{pack}"));
        browser.press("\u{e007}");
        until(|| hand.text().contains(shown));
        assert_eq!(counted(), left);
    }
    assert_eq!(hand.taps, 0);
    let shown = hand.text();
    assert!(shown.contains("2 of 21 packs are found here"), "{shown}");
    // One tap undoes the last.
    hand.tap("button.undo");
    until(|| counted() == 55);
}
