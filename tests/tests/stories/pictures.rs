//! The family as a picture, its events for others, and what a guest reads of a label: over HTTP.

use serde_json::{Value, json};
use std::collections::BTreeSet;
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    the_picture_of_a_pig_is_the_same_twice_and_tells_its_lots
    the_events_of_a_lot_tell_every_gram_that_was_made
    a_guest_reads_what_the_label_says_and_nothing_else
    a_guest_is_told_of_a_stop_without_its_reason_and_of_a_recall_once_it_is_shown
}

fn the_picture_of_a_pig_is_the_same_twice_and_tells_its_lots(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let pig = caller.noted("S10");
    let path = format!("/api/lots/{pig}/family.svg");
    let first = caller.get(&path).expect(200);
    assert_eq!(first.kind, "image/svg+xml");
    assert_eq!(
        first.bytes,
        caller.get(&path).expect(200).bytes,
        "the same bytes twice"
    );
    let svg = String::from_utf8(first.bytes).unwrap();
    let found = caller.read(&format!("/api/lots/{pig}/descendants"));
    let lots = found["lots"].as_array().unwrap();
    // A name a lot, with its code, and the lot itself.
    let drawn = ["BRC", "CHK"].map(|series| svg.matches(&format!("<title>{series}-")).count());
    let drawn: usize = drawn.into_iter().sum();
    assert_eq!(drawn, lots.len() + 1, "{svg}");
    for never in ["<script", "<style", "href=", "url(http"] {
        assert!(!svg.contains(never), "{never}");
    }
    let animals = caller.read("/api/animals?limit=100");
    for animal in animals["animals"].as_array().unwrap() {
        let path = format!("/api/animals/{}/family.svg", animal["id"].as_str().unwrap());
        assert!(caller.get(&path).expect(200).bytes.starts_with(b"<svg "));
    }
    caller
        .get("/api/animals/00000000-0000-4000-8000-000000000000/family.svg")
        .refused(404, None);
    caller
        .get("/api/lots/BRC26159A9ZZ/family.svg")
        .refused(422, "code");
}

fn the_events_of_a_lot_tell_every_gram_that_was_made(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let pig = caller.noted("S10");
    let told = caller
        .get(&format!("/api/lots/{pig}/events.jsonld"))
        .expect(200);
    assert_eq!(told.kind, "application/ld+json");
    let document: Value = serde_json::from_slice(&told.bytes).unwrap();
    let events = document["epcisBody"]["eventList"].as_array().unwrap();
    let ids: BTreeSet<&str> = events
        .iter()
        .map(|event| event["eventID"].as_str().unwrap())
        .collect();
    assert_eq!(ids.len(), events.len(), "each event has an id of its own");
    let kinds: BTreeSet<&str> = events
        .iter()
        .map(|event| event["type"].as_str().unwrap())
        .collect();
    assert_eq!(
        kinds,
        BTreeSet::from(["AggregationEvent", "ObjectEvent", "TransformationEvent"])
    );
    // What came out of all steps is what was made of the pig, gram for gram, besides what the same steps made else.
    let found = caller.read(&format!("/api/lots/{pig}/descendants"));
    for lot in found["lots"].as_array().unwrap() {
        let code = lot["code"].as_str().unwrap().replace('-', "");
        let out = events
            .iter()
            .flat_map(|event| event["outputQuantityList"].as_array().into_iter().flatten());
        let made: Vec<f64> = out
            .filter(|item| {
                item["epcClass"]
                    .as_str()
                    .unwrap()
                    .ends_with(&format!("/{code}"))
            })
            .map(|item| item["quantity"].as_f64().unwrap())
            .collect();
        let expected = lot["made_grams"].as_f64().unwrap() / 1_000.0;
        assert!(
            made.len() == 1 && (made[0] - expected).abs() < 1e-9,
            "{code}: {made:?}, {expected}"
        );
    }
}

/// What somebody reads who is not signed in.
fn guest(house: &House, path: &str, language: &str) -> (u16, String) {
    let mut answer = ureq::Agent::config_builder()
        .http_status_as_error(false)
        .build()
        .new_agent()
        .get(format!("{}{path}", house.address))
        .header("Accept-Language", language)
        .call()
        .unwrap();
    let status = answer.status().as_u16();
    (status, answer.body_mut().read_to_string().unwrap())
}

fn a_guest_reads_what_the_label_says_and_nothing_else(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let bacon = caller.noted("L13");
    let path = format!("/L/{}/13", bacon.replace('-', ""));
    let (status, page) = guest(&house, &path, "en");
    assert_eq!(status, 200, "{page}");
    for said in [
        "Cinderhook Kitchen",
        "RAW",
        "Jun 30 2026",
        "pork belly",
        "Brindlecombe Pigs",
    ] {
        assert!(page.contains(said), "{said} is missing: {page}");
    }
    for never in [
        "<script", "USD", " kg", "Oda", "Tamsin", "250", "/lots/", "/api/",
    ] {
        assert!(!page.contains(never), "{never} is told: {page}");
    }
    let (_, french) = guest(&house, &path, "fr-CA,fr;q=0.9");
    assert!(
        french.contains("lang=\"fr\"") && french.contains("English"),
        "{french}"
    );
    assert_eq!(guest(&house, &format!("{path}?in=fr"), "en").1, french);
    let style = guest(&house, "/assets/guest.css", "en").1;
    assert!(
        page.len() + style.len() < 20_000,
        "{} and {} bytes",
        page.len(),
        style.len()
    );
    // What is no code of ours, was never given out, or is not for guests, is answered alike.
    let unknown = guest(&house, "/L/BRC26159A006/1", "en");
    assert_eq!(unknown.0, 404);
    let body = |text: &str| text.split("<main>").nth(1).unwrap().to_owned();
    let ham = caller.noted("H-04").replace('-', "");
    for path in [
        "/L/nothing/1".to_owned(),
        "/L/BRC26159A006".to_owned(),
        format!("/L/{ham}/1"),
        format!("/L/{}/999", bacon.replace('-', "")),
    ] {
        let (status, page) = guest(&house, &path, "en");
        assert_eq!((status, body(&page)), (404, body(&unknown.1)), "{path}");
    }
}

fn a_guest_is_told_of_a_stop_without_its_reason_and_of_a_recall_once_it_is_shown(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let bacon = caller.noted("L13");
    let path = format!("/L/{}/13", bacon.replace('-', ""));
    let call = json!({
        "told_by": "Harle Gate", "hazard": "residue",
        "scope": { "start": [{ "lot": bacon }], "spreads": "lineage" }, "hold": true,
        "why": "the vet called: a secret reason"
    });
    let incident = caller.deed("/api/incidents", call).expect(201).body;
    let (_, held) = guest(&house, &path, "en");
    assert!(
        held.contains("ask at the counter before") && !held.contains("medicine"),
        "{held}"
    );
    assert!(
        !held.contains("secret") && !held.contains("pork belly"),
        "{held}"
    );
    let id = incident["id"].as_str().unwrap();
    let show = |caller: &Caller, show: bool| {
        caller
            .deed(
                &format!("/api/incidents/{id}/guests"),
                json!({ "show": show }),
            )
            .expect(201);
    };
    show(&caller, true);
    let (_, told) = guest(&house, &path, "en");
    assert!(
        told.contains("Please don’t eat this") && told.contains("medicine"),
        "{told}"
    );
    assert!(
        !told.contains("secret") && !told.contains("Harle Gate"),
        "{told}"
    );
    show(&caller, false);
    assert!(!guest(&house, &path, "en").1.contains("medicine"));
}
