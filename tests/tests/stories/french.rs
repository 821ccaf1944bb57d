//! What somebody who reads French is told: no page speaks English to them, and the box takes the words that they use.

use serde_json::json;
use std::collections::BTreeSet;
use stories::pages::pages;
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    no_page_speaks_english_to_who_reads_french
    a_belly_is_found_by_what_the_trade_calls_it
}

/// The sentences of a catalogue, cut where something is put in: what is long enough to be known again.
fn sentences(catalogue: &str) -> BTreeSet<&str> {
    let lines = catalogue.lines().filter(|line| !line.starts_with('#'));
    let texts = lines.map(|line| match line.split_once(" = ") {
        Some((key, text)) if !key.starts_with(' ') => text,
        _ => line
            .trim()
            .split_once("] ")
            .map_or(line.trim(), |(_, text)| text),
    });
    let cut = texts.flat_map(|text| text.split(['{', '}', '[', ']']));
    cut.map(str::trim)
        .filter(|text| text.len() >= 16 && text.split(' ').count() >= 4)
        .collect()
}

/// A page in a language, as it is read.
pub(super) fn read(house: &House, caller: &Caller, path: &str, language: &str) -> String {
    let mut answer = ureq::Agent::config_builder()
        .http_status_as_error(false)
        .build()
        .new_agent()
        .get(format!("{}{path}", house.address))
        .header(
            "Authorization",
            caller.header().trim().trim_start_matches("Authorization: "),
        )
        .header("Accept-Language", language)
        .call()
        .unwrap();
    let page = answer.body_mut().read_to_string().unwrap();
    let marks = [
        ("&#39;", "'"),
        ("&#34;", "\""),
        ("&quot;", "\""),
        ("&amp;", "&"),
        ("&#38;", "&"),
    ];
    marks
        .into_iter()
        .fold(page, |page, (mark, letter)| page.replace(mark, letter))
}

fn no_page_speaks_english_to_who_reads_french(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let english = sentences(include_str!("../../../server/words/catalogue/en.ftl"));
    let french = sentences(include_str!("../../../server/words/catalogue/fr.ftl"));
    let only: Vec<&&str> = english.difference(&french).collect();
    assert!(only.len() > 1_500, "{}", only.len());
    // The other way round it is told: the harness can see a page in English.
    let page = read(&house, &caller, "/printing", "en");
    assert!(only.iter().any(|text| page.contains(**text)), "{page}");
    // What is written for others in each language of the kitchen says which one it is in.
    let of_english = |page: &str| -> String {
        let mut left = String::new();
        let mut parts = page.split("lang=\"en\"");
        left.push_str(parts.next().unwrap_or_default());
        for part in parts {
            let ends = ["</section>", "</p>", "</a>", "</label>"];
            // A notice is a whole section: its paragraphs end before it does.
            let end = match left.trim_end().rsplit('<').next() {
                Some(tag) if tag.starts_with("section") => part.find(ends[0]),
                _ => ends[1..].iter().filter_map(|end| part.find(end)).min(),
            };
            left.push_str(&part[end.unwrap_or(0)..]);
        }
        left
    };
    let mut told = Vec::new();
    for (name, path) in pages(&caller) {
        let page = read(&house, &caller, &path, "fr");
        assert!(page.contains("lang=\"fr\""), "{name}: {page}");
        // A label is drawn in the languages of the kitchen, whoever looks at it.
        let drawn = page.split("<svg").enumerate();
        let page: String = drawn
            .map(|(nth, part)| match part.split_once("</svg>") {
                Some((_, after)) if nth > 0 => after,
                _ => part,
            })
            .collect();
        let page = of_english(&page);
        let leaks = only.iter().filter(|text| page.contains(**text));
        told.extend(leaks.map(|text| format!("{name} ({path}): {text}")));
    }
    assert!(told.is_empty(), "{}", told.join("\n"));
}

fn a_belly_is_found_by_what_the_trade_calls_it(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let found = |said: &str, language: &str| {
        let page = read(&house, &caller, &format!("/find?q={said}"), language);
        page.contains("/lots?product=pork-belly")
    };
    assert!(found("poitrine", "fr"));
    assert!(found("flanc", "fr"));
    assert!(found("belly", "en"));
    // In English nobody means a belly by it.
    assert!(!found("poitrine", "en"));
    // What customers read is known too.
    let mut chop = caller.read("/api/products/pork-chop");
    chop["customer_names"] = json!({ "en": "Rib chop", "fr": "Côtelette première" });
    let known = caller.get("/api/products/pork-chop");
    let etag = known.etag.expect("its version");
    caller
        .put_over("/api/products/pork-chop", &etag, &chop)
        .expect(200);
    let page = read(&house, &caller, "/find?q=cotelette%20premiere", "fr");
    assert!(page.contains("pork-chop"), "{page}");
}
