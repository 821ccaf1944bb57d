//! What every page has to be besides what axe-core judges: light over the wire, asking nobody else, with targets that
//! a wet finger hits, whole at twice the size, and read without a script. Grey needs no test of its own: contrast is
//! judged by axe-core and is one of brightness alone.

use super::browser::{SIZES, at_the_bench};
use serde_json::{Value, json};
use std::collections::BTreeSet;
use stories::browser::Browser;
use stories::day::Told;
use stories::pages::pages;
use stories::queue::until;
use stories::{Engine, House};

/// The most bytes of a page over the wire, its fonts kept from before.
const MOST_BYTES: u64 = 60_000;

/// What a desk of 1280 pixels shows at twice the size.
const ZOOMED: (u32, u32) = (640, 400);

/// What came over the wire, what came from elsewhere, and the targets that are too small: 57 pixels at the bench and at
/// the counter, 48 elsewhere. A link within a text is as high as its line.
const LOOK: &str = "
    const least = document.body.matches('.bench, .counter') ? 57 : 48;
    const is_text = (one) => one.matches('a:not(.act)') && getComputedStyle(one).display === 'inline';
    const boxed = 'input[type=checkbox], input[type=radio], input[type=file]';
    const target = (one) => one.matches(boxed) ? one.closest('label') ?? one : one;
    const all = document.querySelectorAll('a[href], button, input:not([type=hidden]), select, textarea, summary');
    const small = Array.from(all)
        .filter((one) => one.checkVisibility({ visibilityProperty: true }) && !is_text(one))
        .map((one) => [target(one), target(one).getBoundingClientRect()])
        .filter(([, box]) => box.width > 0 && Math.round(Math.min(box.width, box.height)) < least)
        .map(([one, box]) => `${one.tagName} ${one.className} ${(one.textContent || one.name || '').trim().slice(0, 30)}: `
            + `${Math.round(box.width)} x ${Math.round(box.height)} of ${least}`);
    const loaded = performance.getEntriesByType('resource').filter((one) => one.initiatorType !== 'fetch');
    const heavy = loaded.filter((one) => !one.name.endsWith('.ttf')).concat(performance.getEntriesByType('navigation'));
    return { bytes: heavy.reduce((sum, one) => sum + one.transferSize, 0), small,
        elsewhere: loaded.map((one) => one.name).filter((name) => !/^(data|blob):/.test(name) && !name.startsWith(location.origin)) };";

/// How far a page has to be shifted sideways.
const SIDEWAYS: &str =
    "return document.documentElement.scrollWidth - document.documentElement.clientWidth";

fn texts(list: &Value) -> impl Iterator<Item = String> {
    let all = list.as_array().into_iter().flatten();
    all.map(|one| one.as_str().unwrap_or_default().to_owned())
}

#[test]
fn every_page_is_light_and_its_targets_are_hit() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let printer = at_the_bench(&caller);
    let pages = pages(&caller);
    let (mut told, mut heaviest) = (BTreeSet::new(), (0, ""));
    for (language, size) in ["en", "fr", "en"].into_iter().zip(SIZES) {
        let browser = Browser::reading(language);
        browser.sign_in(&house.address, "Oda Marsh");
        browser.resize(size);
        browser.keep_nothing();
        for (name, path) in &pages {
            browser.open(&format!("{}{path}", house.address));
            let seen = browser.run(LOOK);
            let bytes = seen["bytes"].as_u64().expect("bytes");
            assert!(bytes > 1_000, "{name}: {seen}");
            heaviest = heaviest.max((bytes, *name));
            if bytes > MOST_BYTES {
                told.insert(format!("{name}: {bytes} bytes over the wire"));
            }
            for field in ["small", "elsewhere"] {
                told.extend(texts(&seen[field]).map(|says| format!("{name}: {field}: {says}")));
            }
        }
        browser.resize(ZOOMED);
        for (name, path) in &pages {
            browser.open(&format!("{}{path}", house.address));
            let off = browser.run(SIDEWAYS);
            if off.as_i64().unwrap_or(1) > 0 {
                told.insert(format!(
                    "{name} ({language}): {off} pixels too wide at twice the size"
                ));
            }
        }
    }
    println!(
        "the heaviest page: {} with {} bytes",
        heaviest.1, heaviest.0
    );
    let told: Vec<String> = told.into_iter().collect();
    assert!(
        told.is_empty(),
        "{} findings:\n{}",
        told.len(),
        told.join("\n")
    );
    drop(printer);
}

#[test]
fn every_page_is_read_without_a_script() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let pages = pages(&caller);
    let browser = Browser::reading("en");
    browser.sign_in(&house.address, "Oda Marsh");
    browser.scripts(false);
    for (name, path) in &pages {
        browser.open(&format!("{}{path}", house.address));
        let said = browser.run(
            "return { head: document.querySelector('main h1')?.innerText ?? '', text: document.querySelector('main').innerText.length,
                empty: Array.from(document.querySelectorAll('main td, main dd')).every((one) => one.textContent.trim() === ''),
                cells: document.querySelectorAll('main td, main dd').length }",
        );
        let head = said["head"].as_str().unwrap_or_default();
        assert!(!head.trim().is_empty(), "{name} has no head: {said}");
        assert!(said["text"].as_u64() > Some(20), "{name}: {said}");
        assert!(
            said["cells"] == 0 || said["empty"] == false,
            "{name}: {said}"
        );
    }
}

/// An address has no spaces: whoever typed one reads the refusal, and the record with it, on a phone all the same.
#[test]
fn a_long_address_stays_on_the_screen_of_a_phone() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let long = format!(
        "https://records.test.example/{}",
        "kept-at-the-bench-".repeat(9)
    );
    let pig = caller.side_on_the_rail();
    let trim = caller.step("break-down").of_grams(&pig, 2_000);
    let trim = trim
        .into("pork-trim", 2_000)
        .with("note", json!(long))
        .made();
    let place = json!({ "code": "long", "name": long, "kind": "counter" });
    caller.post("/api/places", &place).expect(201);
    caller.carry(&trim, "long").done();
    let browser = Browser::reading("en");
    browser.sign_in(&house.address, "Oda Marsh");
    browser.resize((390, 844));
    let fits = |what: &str| {
        let off = browser.run(SIDEWAYS);
        assert_eq!(off, 0, "{what} is that much too wide");
        let text = browser.run("return document.querySelector('main').innerText");
        assert!(
            text.as_str()
                .unwrap_or_default()
                .contains("kept-at-the-bench"),
            "{what}: {text}"
        );
    };
    for path in [
        format!("/lots/{trim}"),
        format!("/lots?product={long}"),
        format!("/counter?code={long}"),
        format!("/find?q={long}"),
        "/places".to_owned(),
        "/lists/places".to_owned(),
        "/make/pack".to_owned(),
        format!("/lots/{trim}/pack"),
    ] {
        browser.open(&format!("{}{path}", house.address));
        fits(&path);
    }
    browser.open(&format!("{}/lists/printers/new", house.address));
    for (field, text) in [("name", "Far away"), ("address", long.as_str())] {
        browser.type_into(&format!("[name={field}]"), text);
    }
    browser.tap("button.grand");
    until(|| browser.run("return document.querySelector('[data-told] .warn') !== null") == true);
    fits("a refusal");
}
