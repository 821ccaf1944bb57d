//! Every page in a real browser: on a desk, on a tablet and on a phone, in each language. The judge of
//! accessibility is axe-core (`tests/vendor`).

use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};
use stories::browser::{Browser, axe};
use stories::pages::pages;
use stories::printer::Manners;
use stories::queue::{print, wait};
use stories::{Caller, Engine, House, Printer};

/// The languages of the pages.
const LANGUAGES: [&str; 2] = ["en", "fr"];

/// Inside a window: a desk, a tablet held upright, a phone.
pub(super) const SIZES: [(u32, u32); 3] = [(1280, 800), (820, 1180), (390, 844)];

/// Findings that are known and not mended yet: the rule, and the page by its name. None is to be added,
/// and what is mended is struck off.
const KNOWN: [(&str, &str); 0] = [];

#[test]
fn every_page_on_every_screen() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let printer = at_the_bench(&caller);
    let (axe, pages) = (axe(), pages(&caller));
    let mut found: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    let mut known = BTreeSet::new();
    for language in LANGUAGES {
        let browser = Browser::reading(language);
        browser.sign_in(&house.address, "Oda Marsh");
        for size in SIZES {
            browser.resize(size);
            for (name, path) in &pages {
                browser.open(&format!("{}{path}", house.address));
                let mut told = look(&browser, language, size);
                for (rule, says) in judged(&browser, &axe, name) {
                    match KNOWN.iter().find(|one| **one == (rule.as_str(), *name)) {
                        Some(one) => drop(known.insert(*one)),
                        None => told.push(says),
                    }
                }
                told.extend(complaints(&browser, name));
                for finding in told {
                    let on = format!("{name} ({language}, {} x {})", size.0, size.1);
                    found.entry(finding).or_default().insert(on);
                }
            }
        }
    }
    let told: Vec<String> = found
        .iter()
        .map(|(finding, on)| {
            format!(
                "{finding}\n    {}",
                on.iter().cloned().collect::<Vec<_>>().join("\n    ")
            )
        })
        .collect();
    assert!(
        told.is_empty(),
        "{} findings:\n{}",
        told.len(),
        told.join("\n")
    );
    assert_eq!(known, BTreeSet::from(KNOWN), "what is mended is struck off");
    drop(printer);
}

/// What a guest reads who is not signed in: the page of a pack, and that of a code that nobody knows.
#[test]
fn the_pages_of_a_guest() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let bacon = caller.noted("L13");
    let (axe, mut told) = (axe(), Vec::new());
    for language in LANGUAGES {
        let browser = Browser::reading(language);
        for size in SIZES {
            browser.resize(size);
            for (name, path) in [
                ("guest", format!("/l/{bacon}/13")),
                ("nothing here", "/l/BRC26159A006/1".to_owned()),
            ] {
                browser.open(&format!("{}{path}", house.address));
                let mut found = look(&browser, language, size);
                let rules = judged(&browser, &axe, name).into_iter();
                found.extend(rules.map(|(_, says)| says));
                found.extend(complaints(&browser, name));
                let scripts = browser.run("return document.scripts.length");
                if scripts != 0 {
                    found.push(format!("{scripts} scripts"));
                }
                told.extend(
                    found
                        .into_iter()
                        .map(|says| format!("{name}, {language}, {size:?}: {says}")),
                );
            }
        }
    }
    assert!(told.is_empty(), "{}", told.join("\n"));
}

/// The harness can tell: a page with every fault that it looks for.
#[test]
fn a_bad_page_is_noticed() {
    let browser = Browser::reading("en");
    browser.resize(SIZES[2]);
    let page = "<!doctype html><html lang='xx'><title>Bad</title><body><div style='width:900px'>wide</div>\
        <img src='data:,'><script>throw new Error('a fault')</script>";
    browser.open(&format!("data:text/html,{page}"));
    let seen = look(&browser, "en", SIZES[2]);
    assert!(
        seen[0].contains("xx") && seen[1].contains("in a window of 390"),
        "{seen:?}"
    );
    let rules = judged(&browser, &axe(), "bad")
        .into_iter()
        .map(|(rule, _)| rule);
    assert!(rules.collect::<BTreeSet<_>>().contains("image-alt"));
    let told = complaints(&browser, "bad");
    assert!(
        told.iter().any(|error| error.contains("a fault")),
        "{told:?}"
    );
}

/// A printer with labels that came out, and one of which nobody knows.
pub(super) fn at_the_bench(caller: &Caller) -> Printer {
    let printer = Printer::new(Manners {
        breaks_off: (1, None),
        ..Manners::default()
    });
    let entry = json!({ "code": "bench", "name": "Bench", "address": printer.address() });
    caller.post("/api/printers", &entry).expect(201);
    let prints = print(caller, &caller.noted("L31"));
    wait(caller, &prints, &["printed", "unsure"]);
    printer
}

/// The language, and whether anything must be shifted sideways to be read.
fn look(browser: &Browser, language: &str, size: (u32, u32)) -> Vec<String> {
    let seen = browser.run(
        "const page = document.documentElement;
         return { lang: page.lang, wide: page.scrollWidth, window: page.clientWidth,
             inside: [window.innerWidth, window.innerHeight] };",
    );
    assert_eq!(seen["inside"], json!([size.0, size.1]));
    let mut told = Vec::new();
    if seen["lang"] != language {
        told.push(format!("the page says that it is {}", seen["lang"]));
    }
    if seen["wide"].as_u64() > seen["window"].as_u64() {
        told.push(format!(
            "{} wide in a window of {}",
            seen["wide"], seen["window"]
        ));
    }
    told
}

/// What the judge of accessibility says: the rule, and where it is broken.
fn judged(browser: &Browser, axe: &str, page: &str) -> Vec<(String, String)> {
    browser.run(axe);
    let told = browser.wait_for("axe.run(document, { resultTypes: ['violations'] })");
    let violations = told["violations"].as_array();
    let violations = violations.unwrap_or_else(|| panic!("{page}: {told}"));
    violations.iter().map(one_violation).collect()
}

fn one_violation(one: &Value) -> (String, String) {
    let nodes = one["nodes"].as_array().into_iter().flatten();
    let places: BTreeSet<String> = nodes.map(|node| node["target"].to_string()).collect();
    let places: Vec<String> = places.into_iter().take(4).collect();
    let (impact, help) = (&one["impact"], &one["help"]);
    let rule = one["id"].as_str().unwrap_or_default().to_owned();
    let says = format!("axe {rule} ({impact}): {help} at {}", places.join(" "));
    (rule, says)
}

/// What stands on the console. A page about a path that does not exist comes with its status, which the console shows.
fn complaints(browser: &Browser, page: &str) -> Vec<String> {
    let meant = |error: &String| page == "nothing here" && error.contains("status of 404");
    let errors = browser.errors().into_iter().filter(|error| !meant(error));
    errors.map(|error| format!("console: {error}")).collect()
}
