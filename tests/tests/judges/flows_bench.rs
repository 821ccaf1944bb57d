//! Acts of the bench in a real browser: a piece weighed and released, something received, ground, cooked, cooled.

use super::flows::{Hand, PHONE, TABLET, newest};
use serde_json::json;
use stories::browser::Browser;
use stories::day::{Told, bought};
use stories::queue::until;
use stories::{Engine, House};

#[test]
fn a_piece_is_weighed_in_two_taps_from_the_cure_room_and_undone_in_one() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let ham = caller.noted("H-05");
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", TABLET);
    let weighs = || caller.lot(&ham)["on_hand_grams"].clone();
    let before = weighs();
    hand.open("/cure-room");
    assert!(hand.text().contains("2 alarms"), "{}", hand.text());
    hand.tap(&format!("a.act[href='/lots/{ham}/weigh?from=cure-room']"));
    browser.type_into("input[name=grams]", "8.115");
    assert!(hand.text().contains("8.115 kg"), "{}", hand.text());
    hand.tap("button.grand");
    assert_eq!(hand.taps, 2);
    hand.did();
    assert_eq!(weighs(), 8115);
    hand.taps = 0;
    hand.tap("button.undo");
    assert_eq!(hand.taps, 1);
    until(|| weighs() == before);
    assert!(browser.errors().is_empty());
}

#[test]
fn a_scanned_tag_and_a_scale_that_presses_enter_need_no_tap() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let ham = caller.noted("H-05");
    let browser = Browser::reading("fr");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", PHONE);
    hand.open("/cure-room");
    browser.type_into(".box input", &format!("{ham}\u{e007}"));
    until(|| {
        browser
            .run("return location.pathname")
            .to_string()
            .contains("/weigh")
    });
    browser.type_into("input[name=grams]", "8,110 kg\u{e007}");
    hand.did();
    assert_eq!(hand.taps, 0);
    assert_eq!(caller.lot(&ham)["on_hand_grams"], 8110);
}

#[test]
fn a_ready_ham_is_released_in_two_taps() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let ham = caller.noted("H-02");
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", TABLET);
    hand.open("/cure-room");
    hand.tap(&format!("a.act[href='/lots/{ham}/release?from=cure-room']"));
    assert!(hand.text().contains("Signed: Oda Marsh"), "{}", hand.text());
    hand.tap("button.grand");
    assert_eq!(hand.taps, 2);
    hand.did();
    let stops = caller.lot(&ham)["stops"].to_string();
    assert!(!stops.contains("not-released"), "{stops}");
}

#[test]
fn an_animal_and_a_carton_are_received() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", TABLET);
    hand.open("/receive");
    hand.tap(".choices label:has(input[value='pig-half'])");
    browser.run("document.querySelector('[name=\"animal.farm\"]').value = 'BRC'");
    browser.run("document.querySelector('[name=\"animal.killed_on\"]').value = '2026-06-24'");
    browser.type_into("input[name='animal.carcass']", "0624-9");
    hand.tap(".choices label:has(input[value='left'])");
    browser.type_into("input[name=grams]", "44,2");
    browser.run("document.querySelector('[name=place]').value = 'rail'");
    hand.tap("button.grand");
    hand.did();
    let pig = newest(&caller);
    assert_eq!(
        (&pig["product"], &pig["grams"]),
        (&json!("pig-half"), &json!(44_200))
    );
    hand.open("/receive?of=bought");
    browser.type_into("input[name=barcode]", "(10)26178-1(3103)012500\u{e007}");
    let set = "for (const [name, value] of [['product', 'beef-chuck'], ['bought.supplier', 'HRW'], ['place', 'cooler-1']]) document.querySelector(`[name=\"${name}\"]`).value = value";
    browser.run(set);
    hand.tap("button.grand");
    hand.did();
    let beef = newest(&caller);
    assert_eq!(
        (&beef["product"], &beef["grams"]),
        (&json!("beef-chuck"), &json!(12_500))
    );
}

#[test]
fn a_batch_is_shared_out_by_its_recipe_and_ground() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    for (product, lot) in [("pork-trim", "T-1"), ("pork-fat", "F-1")] {
        let pork = caller.receive(product).bought(bought("HRW", lot));
        pork.grams(5_000).to("cooler-1").done();
    }
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Pim Verrall", TABLET);
    hand.open("/make/grind?product=ground-pork");
    browser.type_into("input[name=_batch]", "2");
    hand.tap(".choices label:has(input[value='4'])");
    assert!(
        hand.text().contains("Grind 2 kg (lots: 2)"),
        "{}",
        hand.text()
    );
    hand.tap("button.grand");
    assert_eq!(hand.taps, 2);
    let deed = hand.did();
    let made = newest(&caller);
    assert_eq!(
        (&made["grams"], &made["pack_count"]),
        (&json!(2_000), &json!(4))
    );
    assert!(
        hand.text().contains("4 packs of Ground pork"),
        "{}",
        hand.text()
    );
    let read = caller.read(&format!("/api/steps/{deed}"));
    assert_eq!(read["kind"], "grind", "{read}");
}

#[test]
fn a_cure_is_told_in_grams_before_anybody_weighs() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let belly = caller.receive("pork-belly").bought(bought("HRW", "P-1"));
    belly.grams(5_000).to("cooler-1").done();
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", TABLET);
    hand.open("/make/cure?product=pancetta");
    browser.type_into("input[name=_batch]", "4");
    until(|| browser.run("return document.querySelector('[data-plan]').hidden") == false);
    let shown = hand.text();
    assert!(
        shown.contains("Curing salt 10 g") && shown.contains("110 g"),
        "{shown}"
    );
}

#[test]
fn a_cure_above_its_limit_is_told_at_the_button_in_the_grams_that_were_typed() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let belly = caller.receive("pork-belly").bought(bought("HRW", "P-1"));
    belly.grams(5_000).to("cooler-1").done();
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", TABLET);
    hand.open("/make/cure?product=pancetta");
    browser.type_into("input[name=_batch]", "3.777");
    until(|| browser.run("return document.querySelector('[data-plan]').hidden") == false);
    let wrong = "return [...document.querySelectorAll('[data-wrong]')].filter((one) => one.checkVisibility()).map((one) => one.innerText).join()";
    assert_eq!(browser.run(wrong), "");
    let salt = "[data-role=curing-salt] .row.in [data-as=weight]";
    browser.run(&format!("document.querySelector('{salt}').value = ''"));
    browser.type_into(salt, "61");
    until(|| browser.run(wrong) != "");
    // What was typed comes back as it was typed, and stands right above the button.
    let told = browser.run(wrong);
    let plan = browser.run("return document.querySelector('[data-plan]').innerText");
    let plan = plan.as_str().expect("a plan").replace('\u{a0}', " ");
    assert!(plan.contains("Curing salt 61 g"), "{plan}");
    assert!(!plan.contains("60.99") && !plan.contains("61.00"), "{plan}");
    assert!(
        told.as_str().is_some_and(|told| told.contains("ppm")),
        "{told}"
    );
    let next =
        "return document.querySelector('[data-wrong]').nextElementSibling.matches('button.grand')";
    assert_eq!(browser.run(next), true);
}

#[test]
fn a_pot_that_boiled_is_one_tap() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let bones = caller.receive("pork-bones").bought(bought("HRW", "B-1"));
    let bones = bones.grams(4_000).to("cooler-1").made();
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Pim Verrall", TABLET);
    hand.open(&format!("/make/cook?product=pork-stock&lot={bones}"));
    hand.tap("[data-boiled]");
    browser.type_into("input[name='outputs.0.grams']", "3000");
    hand.tap("button.grand");
    assert_eq!(hand.taps, 2);
    hand.did();
    let stock = newest(&caller);
    assert_eq!(stock["product"], "pork-stock", "{stock}");
    let stock = caller.lot(stock["code"].as_str().unwrap());
    assert_eq!(stock["condition"]["is"], "ready", "{stock}");
}

#[test]
fn a_cooling_that_took_too_long_is_told_and_recorded_as_it_happened() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let pork = caller.noted("L31");
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Pim Verrall", TABLET);
    hand.open(&format!("/lots/{pork}/cool"));
    let fill = "[['02:00', '135'], ['09:00', '90'], ['10:30', '40']].forEach(([at, warm], nth) => {
        const row = document.querySelectorAll('[data-reading]')[nth];
        row.querySelector('[type=time]').value = at;
        const field = row.querySelector('[data-degrees]');
        field.value = field.name.endsWith('celsius') ? ((warm - 32) / 1.8).toFixed(0) : warm;
        field.dispatchEvent(new Event('input', { bubbles: true })); });
        return document.querySelectorAll('.curve circle').length";
    assert_eq!(browser.run(fill), 3);
    hand.tap("button.grand");
    // What is wrong is read at a glance; that it happened so is one tap further.
    until(|| {
        browser.run(
            "return document.querySelector('main [data-happened]')?.checkVisibility() ?? false",
        ) == true
    });
    hand.tap("main [data-happened] summary");
    browser.type_into("main [data-note]", "the chiller stood open over night");
    hand.tap("main [data-as-it-happened]");
    hand.did();
    let stops = caller.lot(&pork)["stops"].to_string();
    assert!(stops.contains("failed"), "{stops}");
}

#[test]
fn what_stands_in_the_chart_of_a_piece_stands_within_it() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    for language in ["en", "fr"] {
        let browser = Browser::reading(language);
        let mut hand = Hand::of(&browser, &house, "Pim Verrall", TABLET);
        // The one is ready this year; of the other the day is said with its year.
        for tag in ["H-04", "L10"] {
            let piece = caller.noted(tag);
            hand.open(&format!("/lots/{piece}/weigh"));
            let outside = "return [document.querySelectorAll('svg.curve text').length,
                Array.from(document.querySelectorAll('svg.curve text')).filter((text) => {
                    const { x, width } = text.getBBox();
                    return x < 0 || x + width > text.ownerSVGElement.viewBox.baseVal.width;
                }).map((text) => text.textContent).join()]";
            let found = browser.run(outside);
            assert!(found[0].as_i64() > Some(4), "{tag}: {found}");
            assert_eq!(found[1], "", "{tag} in {language}");
        }
    }
}
