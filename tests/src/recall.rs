//! What is done again and again in stories of recalls.

use crate::Caller;
use crate::day::Told;
use serde_json::{Value, json};

/// A recall of what is named begins, and holds it; or a drill, which holds nothing. Its id.
pub fn begin(caller: &Caller, start: Value, drill: bool) -> String {
    let body = json!({ "told_by": "Harle Gate", "hazard": "residue", "drill": drill, "hold": !drill,
        "why": "Sent inside the withdrawal period", "scope": { "start": [start], "spreads": "lineage" } });
    let begun = caller.deed("/api/incidents", body).expect(201);
    begun.body["id"].as_str().unwrap().to_owned()
}

/// What is told of it.
pub fn incident(caller: &Caller, id: &str) -> Value {
    caller.read(&format!("/api/incidents/{id}"))
}

/// A file of it.
pub fn file(caller: &Caller, id: &str, name: &str) -> Vec<u8> {
    caller
        .get(&format!("/api/incidents/{id}/{name}"))
        .expect(200)
        .bytes
}

/// What was done, in order.
pub fn milestones(read: &Value) -> Vec<String> {
    let all = read["milestones"].as_array().unwrap().iter();
    all.map(|of| of["what"].as_str().unwrap().to_owned())
        .collect()
}

/// Counts what the book has of every lot, place by place; the packs that are named are missing.
pub fn count_all(caller: &Caller, id: &str, missing: &[(&str, u64)]) {
    let count = incident(caller, id)["count"].clone();
    let places = count["places"].as_array().unwrap();
    for place in places {
        for lot in count["lots"].as_array().unwrap() {
            let code = lot["code"].as_str().unwrap();
            let here = lot["packs"].as_array().unwrap().iter();
            let here =
                here.filter(|pack| pack["place"] == place["place"] && pack["state"] == "waiting");
            let packs: Vec<Value> = here
                .map(|pack| {
                    let number = pack["pack"].as_u64().unwrap();
                    match missing.contains(&(code, number)) {
                        true => json!({ "pack": number, "missing": true }),
                        false => json!({ "pack": number, "grams": pack["sums"]["left_grams"] }),
                    }
                })
                .collect();
            if !packs.is_empty() {
                let body = json!({ "lot": code, "place": place["place"], "packs": packs });
                caller.deed("/api/counts", body).expect(201);
            }
        }
    }
}

/// A half pig, chops of it in six packs in the case.
pub fn chops(caller: &Caller) -> (String, String) {
    let pig = caller.half_pig("0608-17", 10_000);
    let cut = caller
        .step("cut")
        .of_grams(&pig, 3_000)
        .into_packs("pork-chop", 3_000, 6);
    (pig.clone(), cut.which("place", "case").made())
}
