//! A recall from the call to its end: its scope is held at once, every path refuses what is held, what comes in late
//! is caught, and what was done in it stays.

use serde_json::{Value, json};
use stories::call::moment;
use stories::day::{Told, farm};
use stories::{Answer, Caller, Engine, House, on_both_engines};

on_both_engines! {
    the_demo_is_held_at_once
    each_hold_stands_by_itself
    every_path_refuses_what_is_held
    what_comes_in_later_is_caught
    a_recall_goes_further_or_less_far
    a_drill_holds_nothing
    what_was_done_in_a_recall_is_not_voided
}

fn question(start: Value) -> Value {
    json!({ "start": [start], "spreads": "lineage" })
}

fn recall(caller: &Caller, scope: Value) -> Answer {
    let body = json!({ "told_by": "Harle Gate", "hazard": "residue", "scope": scope, "hold": true,
        "why": "Sent inside the withdrawal period" });
    caller.deed("/api/incidents", body).expect(201)
}

fn id(answer: &Answer) -> String {
    answer.body["id"].as_str().unwrap().to_owned()
}

fn stops(caller: &Caller, lot: &str) -> Vec<String> {
    let stops = caller.lot(lot)["stops"].clone();
    let of = |stop: &Value| stop["stop"].as_str().unwrap().to_owned();
    stops.as_array().unwrap().iter().map(of).collect()
}

fn verdict(caller: &Caller, code: &str) -> String {
    let read = caller.read(&format!("/api/scan?code={code}"));
    read["verdict"].as_str().unwrap().to_owned()
}

fn release(caller: &Caller, lot: &str, incident: Option<&str>) -> Answer {
    let mut body = json!({ "lots": [{ "lot": lot }], "why": "Tested clear" });
    if let Some(incident) = incident {
        body["incident"] = json!(incident);
    }
    caller.deed("/api/hold-releases", body)
}

#[track_caller]
fn held(answer: Answer) {
    let answer = answer.expect(409);
    assert_eq!(answer.body["type"], "/problems/held", "{}", answer.body);
}

fn the_demo_is_held_at_once(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let bacon = caller.noted("L13");
    assert_eq!(verdict(&caller, &format!("{bacon}/20")), "sell");
    let scope = question(json!({ "carcass": "060817" }));
    let begun = recall(&caller, scope);
    assert_eq!(begun.body["number"], "CHK-2026-1");
    assert_eq!(begun.body["held_grams"], 26927);
    let packs = begun.body["lots"].as_array().unwrap().iter();
    let packs: usize = packs
        .map(|lot| lot["packs"].as_array().unwrap().len())
        .sum();
    assert_eq!(begun.body["held_packs"], json!(packs));
    assert_eq!(verdict(&caller, &format!("{bacon}/20")), "hold");
    assert_eq!(verdict(&caller, &caller.noted("L30")), "hold");
    // What a customer brings back is held with its lot, and the other half pig is free.
    assert!(
        stops(&caller, &caller.noted("L16"))
            .iter()
            .all(|stop| stop != "held")
    );
    let read = caller.read(&format!("/api/incidents/{}", id(&begun)));
    assert_eq!(
        (&read["held_grams"], &read["open"]),
        (&json!(26927), &json!(true))
    );
    assert_eq!(read["scope"]["digest"], begun.body["scope_digest"]);
    let lard = caller.noted("L25");
    let packs = caller.lot(&lard)["packs"].clone();
    let mut sold = packs
        .as_array()
        .unwrap()
        .iter()
        .filter(|pack| pack["is"] == "sold");
    let sold = sold.next().unwrap()["pack"].clone();
    caller.take_back(&lard, sold).with("why", "recall").done();
    let read = caller.read(&format!("/api/incidents/{}", id(&begun)));
    assert_eq!(read["held_grams"], 27227);
    let what: Vec<&Value> = read["milestones"]
        .as_array()
        .unwrap()
        .iter()
        .map(|of| &of["what"])
        .collect();
    assert_eq!(what, ["called", "scoped", "held"]);
    let again = recall(&caller, question(json!({ "lot": caller.noted("L16") })));
    assert_eq!(again.body["number"], "CHK-2026-2");
    assert_eq!(
        caller.read("/api/incidents")["incidents"]
            .as_array()
            .unwrap()
            .len(),
        2
    );
}

/// A half pig, chops of it in three packs in the case.
fn chops(caller: &Caller) -> (String, String) {
    let pig = caller.half_pig("0608-17", 10_000);
    let chops = caller
        .step("cut")
        .of_grams(&pig, 3_000)
        .into_packs("pork-chop", 3_000, 3)
        .which("place", "case")
        .made();
    (pig, chops)
}

fn each_hold_stands_by_itself(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let (pig, chops) = chops(&caller);
    let first = id(&recall(&caller, question(json!({ "lot": pig }))));
    let second = id(&recall(&caller, question(json!({ "lot": chops }))));
    let alone = json!({ "lots": [{ "lot": chops, "packs": [2] }], "why": "Smells" });
    caller.deed("/api/holds", alone).expect(201);
    let sells = |pack: u32| caller.sell(&chops).with("pack", pack).ask();
    held(sells(1));
    release(&caller, &chops, Some(&first)).expect(201);
    held(sells(1));
    release(&caller, &chops, Some(&first)).expect(409);
    release(&caller, &chops, Some(&second)).expect(201);
    sells(1).expect(201);
    held(sells(2));
    let pack = json!({ "lots": [{ "lot": chops, "packs": [2] }], "why": "It was the crate" });
    caller.deed("/api/hold-releases", pack).expect(201);
    sells(2).expect(201);
    // The pig is held still.
    held(
        caller
            .step("cut")
            .of_grams(&pig, 100)
            .into("pork-chop", 100)
            .ask(),
    );
    release(&caller, &pig, None).expect(409);
    release(&caller, &pig, Some("019e0000-0000-7000-8000-000000000000")).refused(404, "incident");
}

fn every_path_refuses_what_is_held(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let (pig, chops) = chops(&caller);
    caller.sell(&chops).with("pack", 3).done();
    recall(&caller, question(json!({ "lot": pig })));
    for kind in ["sell", "serve", "ship"] {
        held(caller.depart(kind, &chops).with("pack", 1).ask());
    }
    held(caller.carry(&pig, "case").ask());
    // Before any limit: this cook is too short.
    let cook = caller
        .step("cook")
        .place("stove")
        .of_grams(&pig, 500)
        .into("cooked-pork", 400);
    held(cook.held(40.0, 1).ask());
    for pack in [1, 3] {
        let label = format!("/api/lots/{chops}/labels.pdf?packs={pack}");
        held(caller.get(&label));
    }
    caller.carry(&pig, "freezer").with("state", "frozen").done();
    caller
        .count(&chops)
        .with("packs", json!([{ "pack": 1, "missing": true }]))
        .done();
    caller
        .count(&chops)
        .with("packs", json!([{ "pack": 1, "grams": 1000 }]))
        .done();
    assert_eq!(verdict(&caller, &format!("{chops}/1")), "hold");
    caller.take_back(&chops, 3).with("why", "recall").done();
    held(caller.serve(&chops).with("pack", 3).ask());
    // It is thrown away by right only.
    let token = json!({ "name": "a cook", "role": "cook" });
    let token = caller.post("/api/tokens", &token).expect(201).body["token"].clone();
    let cook = caller.showing(token.as_str().unwrap());
    let refused = cook
        .depart("discard", &chops)
        .with("pack", 2)
        .with("why", "held")
        .ask();
    assert_eq!(refused.expect(403).body["right"], "destroy");
    let body = json!({ "told_by": "x", "hazard": "other", "why": "x", "scope": question(json!({ "lot": pig })) });
    assert_eq!(
        cook.deed("/api/incidents", body).expect(403).body["right"],
        "recall"
    );
    caller
        .depart("discard", &chops)
        .with("pack", 2)
        .with("why", "as the inspector says")
        .done();
}

fn what_comes_in_later_is_caught(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let animal = || farm("BRC").carcass("0608-17");
    let pig = caller
        .receive("pig-half")
        .grams(10_000)
        .from(animal().side("left"))
        .at(moment(-600))
        .made();
    let begun = recall(&caller, question(json!({ "carcass": "0608-17" })));
    // The other half comes in: it is of a named animal.
    let other = caller
        .receive("pig-half")
        .grams(9_000)
        .from(animal().side("right"))
        .done();
    assert_eq!(
        other.body["warning_keys"],
        json!(["incident-caught"]),
        "{}",
        other.body
    );
    assert_eq!(stops(&caller, &other.code(0)), ["held"]);
    // What was made before, and is told now: it is taken, and held from its birth.
    let late = caller
        .step("cut")
        .of_grams(&pig, 1_000)
        .into("pork-chop", 1_000)
        .at(moment(-300))
        .done();
    assert_eq!(stops(&caller, &late.code(0)), ["held"]);
    // What was sold before is told now, and taken.
    caller
        .sell(&late.code(0))
        .grams(200)
        .at(moment(-200))
        .done();
    held(caller.sell(&late.code(0)).grams(200).ask());
    // What was let go stays free, and nothing of another animal is caught.
    release(&caller, &late.code(0), Some(&id(&begun))).expect(201);
    caller
        .measure(&pig)
        .with("celsius", 3.0)
        .at(moment(-100))
        .done();
    caller.sell(&late.code(0)).grams(200).done();
    let stranger = caller
        .receive("pig-half")
        .grams(9_000)
        .from(farm("BRC").carcass("0608-99").side("left"))
        .done();
    assert!(stops(&caller, &stranger.code(0)).is_empty());
    let close = format!("/api/incidents/{}/close", id(&begun));
    let closed = caller
        .deed(&close, json!({ "why": "It is over" }))
        .expect(201);
    assert_eq!(
        closed.body["warning_keys"],
        json!(["incident-still-held", "incident-not-counted"])
    );
    caller.deed(&close, json!({})).expect(409);
    let more = caller
        .step("cut")
        .of_grams(&pig, 1_000)
        .into("pork-chop", 1_000)
        .at(moment(-250))
        .done();
    assert!(
        stops(&caller, &more.code(0)).is_empty(),
        "nobody catches for what is closed"
    );
}

fn a_recall_goes_further_or_less_far(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let (pig, chops) = chops(&caller);
    let begun = recall(&caller, question(json!({ "lot": chops })));
    let act = |scope: Value| {
        let path = format!("/api/incidents/{}/scope", id(&begun));
        caller.deed(&path, json!({ "scope": scope, "why": "They phoned again" }))
    };
    let wider = act(question(json!({ "lot": pig }))).expect(201);
    assert_eq!(wider.body["added"], json!([pig]));
    assert_eq!(stops(&caller, &pig), ["held"]);
    let narrower = act(json!({ "start": [{ "lot": pig }], "spreads": "lineage",
        "without": [{ "lot": chops, "why": "Tested clear" }] }))
    .expect(201);
    assert_eq!(narrower.body["left"], json!([chops]));
    // What left is held until it is let go.
    held(caller.sell(&chops).with("pack", 1).ask());
    release(&caller, &chops, Some(&id(&begun))).expect(201);
    caller.sell(&chops).with("pack", 1).done();
    let notes = format!("/api/incidents/{}/notes", id(&begun));
    let told = json!({ "kind": "told", "whom": "Brindlecombe Pigs", "text": "By telephone" });
    caller.deed(&notes, told).expect(201);
    caller
        .deed(&notes, json!({ "kind": "told", "text": "" }))
        .refused(422, "text");
    let guests = format!("/api/incidents/{}/guests", id(&begun));
    caller.deed(&guests, json!({ "show": true })).expect(201);
    let read = caller.read(&format!("/api/incidents/{}", id(&begun)));
    assert_eq!(
        (read["scopes"].as_array().unwrap().len(), &read["guests"]),
        (3, &json!(true))
    );
    assert_eq!(read["notes"][0]["whom"], "Brindlecombe Pigs");
    let unknown = "/api/incidents/019e0000-0000-7000-8000-000000000000";
    caller.get(unknown).refused(404, None);
}

fn a_drill_holds_nothing(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let (pig, chops) = chops(&caller);
    let body = json!({ "told_by": "Lise", "hazard": "pathogen", "drill": true, "hold": true, "why": "The yearly one",
        "scope": question(json!({ "lot": pig })) });
    let drill = caller.deed("/api/incidents", body).expect(201);
    assert_eq!(
        (&drill.body["drill"], &drill.body["held_packs"]),
        (&json!(true), &json!(0))
    );
    assert_eq!(drill.body["lots"].as_array().unwrap().len(), 2);
    caller.sell(&chops).with("pack", 1).done();
    let read = caller.read(&format!("/api/incidents/{}", id(&drill)));
    assert_eq!(
        (&read["drill"], &read["holds"]),
        (&json!(true), &json!(false))
    );
    let body = json!({ "lots": [{ "lot": chops }], "why": "x", "incident": id(&drill) });
    caller.deed("/api/holds", body).refused(409, "incident");
}

fn what_was_done_in_a_recall_is_not_voided(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let (pig, chops) = chops(&caller);
    let begun = recall(&caller, question(json!({ "lot": pig })));
    caller.void(&id(&begun)).refused(409, None);
    let hold = json!({ "lots": [{ "lot": chops }], "why": "Smells" });
    let hold = caller.deed("/api/holds", hold).expect(201);
    caller.void(&id(&hold)).refused(409, None);
    let let_go = release(&caller, &chops, None).expect(201);
    caller.void(&id(&let_go)).refused(409, None);
    let before = house.check();
    let body = json!({ "told_by": "x", "hazard": "other", "why": "x", "hold": true,
        "scope": question(json!({ "carcass": "4711" })) });
    caller
        .deed("/api/incidents", body.clone())
        .refused(404, "scope.start[0]");
    let mut unsaid = body;
    unsaid["why"] = json!("");
    caller.deed("/api/incidents", unsaid).refused(422, "why");
    assert_eq!(house.check(), before, "what is refused changes nothing");
}
