//! Who is led away because something is lacking is led back; what is typed as all that there is leaves nothing over; what a
//! deed still lacks is said in words.

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

#[test]
fn what_a_deed_still_lacks_is_said_in_words() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", PHONE);
    let says = || {
        let said = browser.run("return document.querySelector('main .sentence').textContent");
        said.as_str().expect("a sentence").to_owned()
    };
    hand.open("/cure-room");
    let piece = browser.run("return document.querySelector('main a[href*=\"/weigh\"]').href");
    let piece = piece.as_str().expect("a piece that is weighed").to_owned();
    let path = piece
        .find("/lots/")
        .map(|at| &piece[at..])
        .expect("its page");
    hand.open(path);
    assert_eq!(says(), "Still missing: Weight.");
    browser.type_into("input[name=grams]", "3.2");
    until(|| says().contains("of its green weight is lost"));
    assert!(!says().contains('…'), "{}", says());
    // What the page offers already is not missing; what may stay open is said as it is.
    let bacon = caller.noted("L13");
    hand.open(&format!("/lots/{bacon}/discard?packs=9"));
    assert_eq!(says(), "Still missing: Why.");
    hand.open(&format!("/lots/{bacon}/discard"));
    assert_eq!(
        says(),
        "Still missing: Which packs (numbers on their labels), Why."
    );
    hand.open(&format!("/lots/{bacon}/freeze?packs=9"));
    assert!(!says().contains("Still missing"), "{}", says());
    hand.open("/receive?of=bought");
    assert!(says().starts_with("Still missing: "), "{}", says());
    browser.type_into("input[name=barcode]", "4006381333931");
    until(|| says().contains("As the code says"));
    for page in [
        "/make/grind",
        "/receive?of=animal",
        "/adopt",
        "/places/cooler-1/temperature",
    ] {
        hand.open(page);
        let said =
            browser.run("return document.querySelector('main .sentence')?.textContent ?? ''");
        assert!(
            !said.as_str().unwrap_or_default().contains('…'),
            "{page}: {said}"
        );
    }
}

#[test]
fn who_adds_a_supplier_finds_what_was_typed_and_no_place_that_does_not_suit() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    // A kitchen with a dry store, in which nobody has put anything yet.
    let store = json!({ "code": "dry-store", "name": "Dry store", "kind": "storage" });
    caller.post("/api/places", &store).expect(201);
    let vinegar = json!({ "code": "vinegar", "names": { "en": "Vinegar" }, "kind": "ingredient", "raw": false,
        "allergens": [], "storage": "ambient" });
    caller.post("/api/products", &vinegar).expect(201);
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", PHONE);
    let stands = |name: &str| {
        let field = format!("document.querySelector(\"[name='{name}']\")");
        browser.run(&format!("return {field}.value"))
    };
    let here = "return document.readyState === 'complete' ? location.pathname : ''";
    let at = |path: &str| until(|| browser.run(here) == path);
    hand.open("/receive?of=bought");
    browser.type_into("select[name=product]", "Vinegar");
    until(|| stands("place") == "dry-store");
    browser.type_into("input[name='bought.supplier_lot']", "V-77");
    browser.type_into("input[name=grams]", "2.5");
    hand.tap("a[href^='/lists/suppliers/new']");
    at("/lists/suppliers/new");
    browser.type_into("input[name=name]", "Harl and Daughters");
    hand.tap("main button.grand");
    at("/receive");
    until(|| stands("grams") == "2.5");
    for (name, value) in [
        ("product", "vinegar"),
        ("bought.supplier", "harl-and-daughters"),
        ("bought.supplier_lot", "V-77"),
    ] {
        assert_eq!(stands(name), value, "{name}");
    }
    // And once more, for a product: the supplier stays.
    hand.tap("a[href^='/lists/products/new']");
    at("/lists/products/new");
    browser.run("window.history.back()");
    at("/receive");
    until(|| stands("bought.supplier") == "harl-and-daughters");
    assert_eq!(stands("grams"), "2.5");
}

#[test]
fn a_weight_in_the_wrong_unit_is_asked_about_once() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", PHONE);
    let asked = || {
        let told = browser.run("return document.querySelector('[data-told]')?.innerText ?? ''");
        told.as_str().unwrap_or_default().to_owned()
    };
    let kept = || {
        let lots = caller.read("/api/lots?product=salt&limit=200");
        lots["lots"].as_array().map_or(0, Vec::len)
    };
    let before = kept();
    hand.open("/receive?of=bought&product=salt");
    browser.type_into("select[name='bought.supplier']", "Pantry");
    browser.type_into("input[name=grams]", "250");
    hand.tap("main button.grand");
    until(|| asked().contains("250 kg: that is far from what is usual here"));
    assert_eq!(kept(), before, "nothing is recorded before it is answered");
    // Who corrects it is not asked again, and what is asked about is the field as it stands.
    hand.tap("[data-told] [data-correct]");
    browser.type_into("input[name=grams]", "200");
    hand.tap("main button.grand");
    until(|| asked().contains("200 kg: that is far"));
    hand.tap("[data-told] [data-sure]");
    hand.did();
    assert_eq!(kept(), before + 1);
    // Grams of a piece of which there are kilograms.
    let bacon = caller.noted("L13");
    hand.open(&format!("/lots/{}/pack", caller.noted("L16")));
    browser.run("document.querySelector(\"[name='outputs.0.product']\").checked = true");
    browser.type_into("input[name=_each]", "0.5");
    hand.tap("main button.grand");
    until(|| asked().contains("0.5 g: that is far"));
    // What is usual is asked about by nobody.
    hand.open(&format!("/lots/{bacon}/count"));
    hand.tap("main button.grand");
    hand.did();
}

#[test]
fn packs_are_counted_in_the_unit_of_who_counts() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let lot = belly(&caller, "B-9");
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", PHONE);
    browser.run(
        "fetch('/api/sessions/mine/reading', { method: 'PUT', headers: { 'Content-Type': 'application/json' },
            body: JSON.stringify({ weights: 'pounds' }) }).then(() => { document.title = 'in pounds'; })",
    );
    until(|| browser.run("return document.title") == json!("in pounds"));
    // What stands there is 1021 g to the hundredth of a pound: left as it is, all of it is there.
    let count = |typed: Option<&str>, hand: &mut Hand<'_>| {
        hand.open(&format!("/lots/{lot}/count"));
        assert!(hand.text().contains("Pack 1, lb"), "{}", hand.text());
        let stands = browser.run("return document.querySelector('[name=\"packs.0.grams\"]').value");
        if let Some(typed) = typed {
            browser.run("document.querySelector('[name=\"packs.0.grams\"]').value = ''");
            browser.type_into("[name='packs.0.grams']", typed);
        }
        hand.tap("button.grand");
        hand.did();
        stands
    };
    assert_eq!(count(None, &mut hand), json!("2.25"));
    assert_eq!(left(&caller, &lot), 1_021.0);
    count(Some("2"), &mut hand);
    assert!(
        (left(&caller, &lot) - 907.185).abs() < 0.001,
        "{}",
        left(&caller, &lot)
    );
}
