//! Every page in a real browser: on a desk, on a tablet and on a phone, in each language. The judge of
//! accessibility is axe-core (`tests/vendor`).

use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};
use stories::browser::{Browser, axe};
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

/// The pages by name.
pub(super) fn pages(caller: &Caller) -> Vec<(&'static str, String)> {
    let lot = |name: &str| format!("/lots/{}", caller.noted(name));
    let scan = |name: &str| format!("/scan?code={}", caller.noted(name));
    let animals = caller.read("/api/animals");
    let animal = animals["animals"][0]["id"].as_str().expect("an animal");
    let drill = json!({ "told_by": "Lise Hartnoll", "hazard": "residue", "drill": true, "why": "The yearly one",
        "scope": { "start": [{ "carcass": "0608-17" }], "spreads": "lineage" } });
    let drill = caller.deed("/api/incidents", drill).expect(201).body["number"].clone();
    let drill = drill.as_str().expect("its number").to_owned();
    vec![
        ("drills", "/recall/drills".to_owned()),
        ("copies", "/copies".to_owned()),
        ("recall: drill", "/recall?drill=yes".to_owned()),
        ("recall: one", format!("/recall/{drill}")),
        ("recall: count", format!("/recall/{drill}/count?place=case")),
        (
            "recall: scanned",
            format!(
                "/recall/{drill}/count?place=case&code={}/1",
                caller.noted("L13")
            ),
        ),
        ("today", "/".to_owned()),
        ("found", "/find?q=17".to_owned()),
        ("found nothing", "/find?q=nothing-of-that-name".to_owned()),
        ("scan", "/scan".to_owned()),
        ("scan: sell", scan("L13")),
        ("scan: gone", scan("L20")),
        ("scan: unknown", "/scan?code=nothing".to_owned()),
        ("scan of a label", format!("/l/{}/13", caller.noted("L13"))),
        ("lots", "/lots".to_owned()),
        ("lots: none", "/lots?q=nothing-of-that-name".to_owned()),
        ("lot: half pig", lot("S10")),
        ("lot: bacon", lot("L13")),
        ("lot: ribs", lot("L22")),
        ("lot: rillettes", lot("L31")),
        ("lot: ham", lot("H-04")),
        ("lot: salt", lot("B02")),
        ("pack", format!("/lots/{}/pack", caller.noted("L16"))),
        ("freeze", format!("/lots/{}/freeze", caller.noted("L13"))),
        ("discard", format!("/lots/{}/discard", caller.noted("L13"))),
        ("count", format!("/lots/{}/count", caller.noted("L13"))),
        ("cure room", "/cure-room".to_owned()),
        ("weigh", format!("/lots/{}/weigh", caller.noted("H-05"))),
        ("tend", format!("/lots/{}/tend", caller.noted("H-05"))),
        ("release", format!("/lots/{}/release", caller.noted("H-02"))),
        ("cool", format!("/lots/{}/cool", caller.noted("L31"))),
        ("places", "/places".to_owned()),
        ("place: freezer", "/places/freezer".to_owned()),
        ("place: bench", "/places/bench".to_owned()),
        ("clean down", "/places/bench/clean-down".to_owned()),
        ("temperature", "/places/cooler-1/temperature".to_owned()),
        ("not cold", "/places/freezer/failed".to_owned()),
        ("move packs", "/places/case/move".to_owned()),
        ("thaw packs", "/places/freezer/thaw".to_owned()),
        ("discard packs", "/places/case/discard".to_owned()),
        ("count a place", "/places/case/count".to_owned()),
        ("adopt", "/adopt".to_owned()),
        ("probes", "/probes".to_owned()),
        ("waiting", "/waiting".to_owned()),
        ("supply", format!("/lots/{}/ship", caller.noted("L13"))),
        (
            "take back",
            format!("/lots/{}/take-back", caller.noted("L13")),
        ),
        ("receive", "/receive".to_owned()),
        ("receive: bought", "/receive?of=bought".to_owned()),
        ("make", "/make".to_owned()),
        ("make: cook", "/make/cook".to_owned()),
        ("pot: stock", "/make/cook?product=pork-stock".to_owned()),
        ("pot: cure", "/make/cure?product=pancetta".to_owned()),
        ("animals", "/animals".to_owned()),
        ("wrong labels", "/wrong-labels".to_owned()),
        ("recall", "/recall?q=0608-17".to_owned()),
        (
            "recall: scope",
            format!("/recall?lot={}", caller.noted("S10")),
        ),
        ("animal", format!("/animals/{animal}")),
        ("printing", "/printing".to_owned()),
        (
            "printing: lot",
            format!("/printing?lot={}", caller.noted("L31")),
        ),
        ("sign in", "/sign-in".to_owned()),
        ("who am I", "/me".to_owned()),
        ("logs", "/logs".to_owned()),
        ("papers", "/papers".to_owned()),
        (
            "papers of a lot",
            format!("/papers?lot={}", caller.noted("L13")),
        ),
        ("keeping", "/keeping".to_owned()),
        (
            "a log",
            "/logs/grinding?from=2026-01-01&last=2026-06-26".to_owned(),
        ),
        ("trust", "/trust".to_owned()),
        ("people", "/people".to_owned()),
        ("nothing here", "/nothing-here".to_owned()),
        ("counter: basket", counter_basket(caller)),
        (
            "counter: hold",
            format!("/counter?code={}", caller.noted("B03")),
        ),
        (
            "counter: not for sale",
            format!("/counter?code={}", caller.noted("H-04")),
        ),
        ("ask", "/ask".to_owned()),
        (
            "ask: answered",
            "/ask?asked=yes&about=pig&about=alcohol".to_owned(),
        ),
        ("lists", "/lists".to_owned()),
        ("list: products", "/lists/products".to_owned()),
        ("list: till numbers", "/lists/till-numbers".to_owned()),
        ("list: new product", "/lists/products/new".to_owned()),
        (
            "list: a curing salt",
            "/lists/products/curing-salt-2".to_owned(),
        ),
        ("list: a place", "/lists/places/freezer".to_owned()),
        ("list: a farm", "/lists/farms/BRC".to_owned()),
        ("recipe", "/lists/recipes/fennel-sausage".to_owned()),
        ("import", "/lists/products/import".to_owned()),
        ("starters", "/starters".to_owned()),
        ("rules", "/rules".to_owned()),
        ("rules: work", "/rules?show=open".to_owned()),
        ("set up: kitchen", "/set-up/kitchen".to_owned()),
        ("set up: places", "/set-up/places?from=kitchen".to_owned()),
        ("set up: people", "/set-up/people".to_owned()),
        ("set up: printer", "/set-up/printer".to_owned()),
        ("set up: products", "/set-up/products".to_owned()),
        ("set up: animal", "/set-up/animal".to_owned()),
        (
            "break down",
            format!("/lots/{}/break-down", caller.side_on_the_rail()),
        ),
    ]
}

fn counter_basket(caller: &Caller) -> String {
    let bacon = caller.noted("L13");
    format!("/counter?code={bacon}/13&with={bacon}/14,{bacon}/15")
}

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
