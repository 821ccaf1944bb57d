//! In haste it is held first: who called, why, and what it is about is noted afterwards, and stands then wherever the
//! recall is told.

use serde_json::json;
use stories::{Engine, House, on_both_engines};

on_both_engines! {
    what_nobody_knew_at_the_call_is_noted_later
}

fn what_nobody_knew_at_the_call_is_noted_later(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("0608-17", 40_000);
    let body = json!({ "hazard": "other", "hold": true, "scope": { "start": [{ "lot": pig }], "spreads": "lineage" } });
    let id = caller.deed("/api/incidents", body).expect(201);
    let id = id.body["id"].as_str().unwrap().to_owned();
    let path = format!("/api/incidents/{id}");
    let number = caller.read(&path)["number"].as_str().unwrap().to_owned();
    let says = caller.lot(&pig)["stops"][0]["says"].to_string();
    assert!(
        says.contains(&format!("On hold for recall {number}. Do not sell")),
        "{says}"
    );
    let page = |path: &str| {
        let shown = caller.get(path).expect(200).bytes;
        String::from_utf8(shown).expect("a page is text")
    };
    let asked = page(&format!("/recall/{number}"));
    assert!(asked.contains("by whom is not noted yet"), "{asked}");
    assert!(asked.contains("What you know by now"), "{asked}");
    assert!(page("/recall").contains("a caller whose name was not noted"));

    let note = |kind: &str, text: &str| {
        let body = json!({ "kind": kind, "text": text });
        caller.deed(&format!("{path}/notes"), body)
    };
    let wrong = note("hazard", "a bad feeling").expect(422).body;
    assert_eq!(wrong["field"], "text", "{wrong}");
    assert!(wrong["detail"].to_string().contains("residue"), "{wrong}");
    note("caller", "somebody").expect(201);
    note("caller", "Harle Gate").expect(201);
    note("reason", "Sent inside the withdrawal period").expect(201);
    note("hazard", "residue").expect(201);

    let known = caller.read(&path);
    let said = |field: &str| known[field].as_str().unwrap().to_owned();
    assert_eq!(
        [said("told_by"), said("why"), said("hazard")],
        ["Harle Gate", "Sent inside the withdrawal period", "residue"]
    );
    let told = page(&format!("/recall/{number}"));
    assert!(told.contains("Told by Harle Gate"), "{told}");
    assert!(!told.contains("What you know by now"), "{told}");
    assert!(page("/recall").contains("Harle Gate"));
    house.check();
}
