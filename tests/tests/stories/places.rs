//! Places as their pages tell them, read without script: what stands there, how warm it was, when it was cleaned, what
//! is missing, and what several packs are asked with.

use serde_json::json;
use stories::day::Told;
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_place_tells_what_stands_in_it_and_what_was_done_there
    a_pack_that_is_missing_is_offered_to_whoever_finds_a_tub_without_a_label
    a_probe_tells_its_last_check
}

fn page(caller: &Caller, path: &str) -> String {
    let page = caller.get(path).expect(200);
    String::from_utf8(page.bytes)
        .expect("a page is text")
        .replace('\u{a0}', " ")
}

fn a_place_tells_what_stands_in_it_and_what_was_done_there(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("7", 9_000);
    let chops = caller.step("cut").of_grams(&pig, 3_000);
    let chops = chops.into_packs("pork-chop", 3_000, 30).made();
    let at = caller.lot(&chops)["packs"][0]["place"].clone();
    let at = at.as_str().expect("a place");
    let shown = page(&caller, &format!("/places/{at}"));
    assert!(
        shown.contains(&format!("/lots/{chops}\"")) && shown.contains("30 packs"),
        "{shown}"
    );
    // Each pack may be chosen by its number, and all of a lot at once.
    let moves = page(&caller, &format!("/places/{at}/move"));
    assert_eq!(moves.matches("name=\"_packs\" value=\"30\"").count(), 1);
    assert!(moves.contains("data-whole") && moves.contains("data-batch=\"/api/moves\""));
    let count = page(&caller, &format!("/places/{at}/count"));
    assert!(count.contains("data-batch=\"/api/counts\""));
    let failed = page(&caller, &format!("/places/{at}/failed"));
    assert!(failed.contains("data-deed=\"/api/place-failures\""));

    let read = json!({ "id": "019e2f6a-6a50-7c3e-9a55-0c4f3a1b2d01", "by": "Oda Marsh", "place": at, "celsius": 3.4 });
    caller.post("/api/readings", &read).expect(201);
    let shown = page(&caller, &format!("/places/{at}"));
    assert!(shown.contains("3.4 °C"), "{shown}");
    let places = page(&caller, "/places");
    assert!(
        places.contains(&format!("href=\"/places/{at}\"")),
        "{places}"
    );

    caller.get("/places/nowhere").expect(404);
    let clean = json!({ "id": "019e2f6a-6a50-7c3e-9a55-0c4f3a1b2d02", "by": "Oda Marsh", "place": "bench" });
    caller.post("/api/clean-downs", &clean).expect(201);
    let bench = page(&caller, "/places/bench/clean-down");
    assert!(
        bench.contains("Cleaned down last: ") && bench.contains("Oda Marsh"),
        "{bench}"
    );
    // One that was undone was none.
    let void = json!({ "id": "019e2f6a-6a50-7c3e-9a55-0c4f3a1b2d03", "by": "Oda Marsh", "why": "not done" });
    let path = "/api/steps/019e2f6a-6a50-7c3e-9a55-0c4f3a1b2d02/void";
    caller.post(path, &void).expect(201);
    let bench = page(&caller, "/places/bench/clean-down");
    assert!(!bench.contains("Oda Marsh, "), "{bench}");
    assert!(!bench.contains("Cleaned down last: "), "{bench}");
}

fn a_pack_that_is_missing_is_offered_to_whoever_finds_a_tub_without_a_label(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("7", 9_000);
    let chops = caller.step("cut").of_grams(&pig, 3_000);
    let chops = chops.into_packs("pork-chop", 3_000, 3).made();
    let offered = |path: &str| page(&caller, path).matches("href=\"/adopt?is=").count();
    assert_eq!(offered("/adopt"), 0);
    let count = json!({ "id": "019e2f6a-6a50-7c3e-9a55-0c4f3a1b2d04", "by": "Oda Marsh", "lot": chops,
        "packs": [{ "pack": 2, "missing": true }] });
    caller.post("/api/counts", &count).expect(201);
    assert_eq!(offered("/adopt?place=bench"), 1);
    let it = page(&caller, &format!("/adopt?is={chops}/2&place=bench"));
    assert!(
        it.contains("pork-chop")
            && it.contains(&format!("{chops}/2"))
            && !it.contains("name=\"product\""),
        "{it}"
    );
}

fn a_probe_tells_its_last_check(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    assert!(page(&caller, "/probes").contains("No probe is in the list yet"));
    caller
        .post("/api/probes", &json!({ "code": "p9", "name": "Blue" }))
        .expect(201);
    assert!(page(&caller, "/probes").contains("Never checked"));
    let check = json!({ "id": "019e2f6a-6a50-7c3e-9a55-0c4f3a1b2d05", "by": "Oda Marsh", "probe": "p9", "bath": "ice", "celsius": 0.3 });
    caller.post("/api/probe-checks", &check).expect(201);
    let shown = page(&caller, "/probes");
    assert!(shown.contains("Last: 0.3 °C, melting ice"), "{shown}");
}
