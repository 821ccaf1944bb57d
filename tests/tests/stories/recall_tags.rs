//! From the phone call to the tags: what is said in several words is found, held, and tagged place by place.

use serde_json::json;
use stories::labels::{codes, run, save, words};
use stories::recall::{begin, file};
use stories::{Engine, House, on_both_engines};

on_both_engines! {
    what_is_held_is_tagged_pack_by_pack
}

fn what_is_held_is_tagged_pack_by_pack(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    // As it is said on the phone: the number, the farm, and a little word.
    let found = caller.read("/api/find?q=17%20of%20Brindlecombe");
    let things = found["things"].as_array().unwrap();
    assert_eq!(things.len(), 1, "{found}");
    assert_eq!(
        (&things[0]["is"], &things[0]["name"]),
        (&json!("animal"), &json!("0608-17"))
    );

    let id = begin(&caller, json!({ "carcass": "060817" }), false);
    let held: usize = caller.read(&format!("/api/incidents/{id}"))["count"]["packs"]
        .as_u64()
        .unwrap() as usize;
    let folder = tempfile::tempdir().unwrap();
    let tags = save(folder.path(), "tags.pdf", &file(&caller, &id, "tags.pdf"));
    let info = run("pdfinfo", &[tags.to_str().unwrap()]);
    let pages = info
        .lines()
        .find(|line| line.starts_with("Pages:"))
        .unwrap();
    assert_eq!(
        pages.split_whitespace().last(),
        Some(held.to_string().as_str()),
        "{info}"
    );
    let said = words(&tags);
    assert_eq!(said.matches("HOLD").count(), held, "{said}");
    assert!(said.contains("On hold for recall CHK-2026-1"), "{said}");

    // The end of the record's chain stands on the report, for the eye and for a reader of codes.
    let report = save(
        folder.path(),
        "report.pdf",
        &file(&caller, &id, "report.pdf"),
    );
    assert!(words(&report).contains("Anchor of the record: GAMBREL "));
    let codes = codes(&report, "200");
    assert!(
        codes.iter().any(|(_, said)| said.starts_with("GAMBREL ")),
        "{codes:?}"
    );

    // A drill holds nothing, so nothing is tagged.
    let drill = begin(&caller, json!({ "carcass": "060817" }), true);
    let refused = caller
        .get(&format!("/api/incidents/{drill}/tags.pdf"))
        .expect(409);
    assert_eq!(refused.body["key"], "labels-nothing-held");
}
