//! Who is led away because something is lacking is led back; what is typed as all that there is leaves nothing over.

use super::flows::{Hand, PHONE, TABLET};
use serde_json::json;
use stories::browser::Browser;
use stories::day::{Told, bought};
use stories::queue::until;
use stories::{Caller, Engine, House};

fn belly(caller: &Caller, lot: &str) -> String {
    let pork = caller.receive("pork-belly").bought(bought("HRW", lot));
    pork.grams(1_021).to("cooler-1").made()
}

/// What is left of a lot of one pack, in grams.
fn left(caller: &Caller, lot: &str) -> f64 {
    let read = caller.read(&format!("/api/lots/{lot}"));
    read["packs"][0]["left_grams"].as_f64().expect("a weight")
}

#[test]
fn pounds_that_are_all_of_it_leave_nothing_on_hand() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Jory Abend", PHONE);
    // 1021 g are 2.2509 lb: whoever types 2.25 lb means all of it, whoever types 2.2 lb does not.
    for (number, typed, rest) in [("B-1", "2.25 lb", 0.0), ("B-2", "2.2 lb", 23.097)] {
        let lot = belly(&caller, number);
        hand.open(&format!("/lots/{lot}/pack?product=pork-belly"));
        browser.type_into("input[name=_each]", typed);
        assert_eq!(
            hand.text().contains("That is all of it"),
            rest == 0.0,
            "{typed}"
        );
        hand.tap("button.grand");
        hand.did();
        assert_eq!(left(&caller, &lot), rest, "{typed}");
    }
}

#[test]
fn what_a_cure_lacks_is_received_and_the_cure_goes_on() {
    let house = House::demo(Engine::Sqlite);
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", TABLET);
    let cure = "/make/cure?product=belly-in-dry-cure";
    hand.open(
        "/receive?of=bought&product=curing-salt-1&then=/make/cure%3Fproduct%3Dbelly-in-dry-cure",
    );
    // How strong it is by its bag is asked where it comes in.
    browser.type_into("input[name='bought.curing_salt.nitrite_percent']", "6.25");
    browser.run("document.querySelector('[name=\"bought.supplier\"]').selectedIndex = 1");
    browser.type_into("input[name='bought.supplier_lot']", "S-9");
    browser.type_into("input[name=grams]", "1");
    hand.tap("button.grand");
    hand.did();
    let here = browser.run("return location.pathname + location.search");
    assert!(
        here.as_str().is_some_and(|here| here.starts_with(cure)),
        "{here}"
    );
}

#[test]
fn a_product_that_is_lacking_is_added_and_the_packing_goes_on() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let lot = belly(&caller, "B-3");
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", PHONE);
    hand.open(&format!("/lots/{lot}/pack"));
    hand.tap("a[href^='/lists/products/new']");
    until(|| browser.run("return location.pathname") == json!("/lists/products/new"));
    browser.type_into("input[name='names.en']", "Belly strips");
    browser.run("document.querySelector('[name=kind]').value = 'cut'");
    browser.run("document.querySelector('[name=species]').value = 'pig'");
    hand.tap("button.grand");
    until(|| {
        let chosen = "return location.pathname.endsWith('/pack') && document.querySelector(\"[name='outputs.0.product']:checked\")?.value";
        browser.run(chosen) == json!("belly-strips")
    });
}
