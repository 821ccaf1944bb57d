//! A recall after the hold: what is missing, what is more than the book, whom to call, drills, bad input.

use serde_json::{Value, json};
use stories::day::Told;
use stories::recall::{begin, chops, count_all, file, incident, milestones};
use stories::{Engine, House, on_both_engines};

on_both_engines! {
    missing_surplus_opened_and_elsewhere
    its_pages_say_what_is_missing_and_what_is_still_to_be_weighed
    whom_to_call
    a_drill_is_counted_and_compared
    bad_input_of_a_recall
}

fn missing_surplus_opened_and_elsewhere(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let (pig, chops) = chops(&caller);
    caller.sell(&chops).with("pack", 6).done();
    let id = begin(&caller, json!({ "lot": pig }), false);
    let count = |place: &str, packs: Value| {
        caller
            .deed(
                "/api/counts",
                json!({ "lot": chops, "place": place, "packs": packs }),
            )
            .expect(201)
    };
    count(
        "case",
        json!([{ "pack": 1, "grams": 500 }, { "pack": 2, "missing": true }, { "pack": 3, "grams": 300 }]),
    );
    count("cooler", json!([{ "pack": 4, "grams": 500 }]));
    let read = incident(&caller, &id);
    assert_eq!(
        milestones(&read),
        ["called", "scoped", "held"],
        "one pack and the pig are waiting"
    );
    assert_eq!(read["count"]["waiting_packs"], 2);
    // By the book it was sold: it is more than the book.
    count("case", json!([{ "pack": 6, "grams": 490 }]));
    let read = incident(&caller, &id);
    let lot = |read: &Value| {
        let lots = read["count"]["lots"].as_array().unwrap().iter();
        lots.clone()
            .find(|lot| lot["code"] == chops.as_str())
            .unwrap()
            .clone()
    };
    let of = lot(&read);
    assert_eq!(
        (&of["missing_grams"], &of["surplus_grams"]),
        (&json!(700), &json!(490))
    );
    assert_eq!(
        (&of["book_grams"], &of["left_grams"]),
        (&json!(2500), &json!(2290))
    );
    let pack = |of: &Value, number: u64| {
        let packs = of["packs"].as_array().unwrap().iter();
        packs
            .clone()
            .find(|pack| pack["pack"] == number)
            .unwrap()
            .clone()
    };
    assert_eq!(pack(&of, 2)["state"], "missing");
    assert_eq!(
        (&pack(&of, 3)["state"], &pack(&of, 3)["opened"]),
        (&json!("found"), &json!(true))
    );
    assert_eq!(
        (&pack(&of, 4)["place"], &pack(&of, 4)["found_at"]),
        (&json!("case"), &json!("cooler"))
    );
    assert_eq!(pack(&of, 5)["state"], "waiting");
    // It turns up: what one count missed and another found stays both, and nothing is forced to zero.
    count(
        "cooler",
        json!([{ "pack": 2, "grams": 500 }, { "pack": 5, "grams": 500 }]),
    );
    let of = lot(&incident(&caller, &id));
    assert_eq!(
        (&of["missing_grams"], &of["surplus_grams"]),
        (&json!(700), &json!(990))
    );
    caller
        .count(&pig)
        .with("packs", json!([{ "pack": 1, "grams": 7000 }]))
        .done();
    let read = incident(&caller, &id);
    assert_eq!(
        milestones(&read),
        ["called", "scoped", "held", "located", "counted"]
    );
    // What was counted at another weight than leaves is told; so is what nobody counted.
    let body = json!({ "lot": format!("{chops}/1"), "grams": 400, "what": "discarded", "why": "Inspector",
        "witness": "Lise", "incident": id });
    let done = caller.deed("/api/dispositions", body).expect(201);
    assert_eq!(
        done.body["warning_keys"],
        json!(["incident-disposed-other"])
    );
    let late = caller
        .receive("pig-half")
        .grams(9_000)
        .from(stories::day::farm("BRC").carcass("0608-17").side("right"))
        .done();
    let named = json!({ "scope": { "start": [{ "carcass": "0608-17" }], "spreads": "lineage" }, "why": "Both halves" });
    caller
        .deed(&format!("/api/incidents/{id}/scope"), named)
        .expect(201);
    let body = json!({ "lot": late.code(0), "what": "returned", "why": "Inspector", "witness": "Lise", "incident": id });
    let done = caller.deed("/api/dispositions", body).expect(201);
    assert_eq!(
        done.body["warning_keys"],
        json!(["incident-disposed-uncounted"])
    );
    let page = caller
        .get("/recall/CHK-2026-1/count?place=case")
        .expect(200);
    let page = String::from_utf8(page.bytes).unwrap();
    assert!(
        page.contains("is counted") || page.contains("are counted"),
        "{page}"
    );
}

fn its_pages_say_what_is_missing_and_what_is_still_to_be_weighed(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let (pig, chops) = chops(&caller);
    // One of six is opened.
    let bite = json!({ "kind": "serve", "lot": chops, "pack": 3, "grams": 200 });
    caller.deed("/api/departures", bite).expect(201);
    let id = begin(&caller, json!({ "lot": pig }), false);
    let number = caller.read("/api/incidents")["incidents"][0]["number"].clone();
    let recall = format!("/recall/{}", number.as_str().unwrap());
    let says = |path: &str, text: &str| {
        let page = caller.page(path);
        assert!(page.contains(text), "{path}: {text}: {page}");
    };
    says(&recall, "Start the count");
    says(&recall, "at once");
    let case = format!("{recall}/count?place=case");
    says(&case, "0 of 6 packs are found here.");
    // An open pack is not counted by its scan.
    let open = format!("{case}&code={chops}/3");
    says(&open, "is open; by the book 300");
    says(&open, "It is not counted yet");
    let count = json!({ "lot": chops, "place": "case",
        "packs": [{ "pack": 1, "grams": 500 }, { "pack": 2, "missing": true }] });
    caller.deed("/api/counts", count).expect(201);
    says(&case, "1 of 6 packs are found here; 1 missing.");
    says(&recall, "Go on with the count");
    // What was noted is told with whom it was about.
    let note = json!({ "kind": "told", "whom": "Harle Gate", "text": "told by telephone" });
    let noted = caller.deed(&format!("/api/incidents/{id}/notes"), note);
    let noted = noted.expect(201).body["id"].clone();
    let receipt = format!("{recall}?did={}", noted.as_str().unwrap());
    says(&receipt, "Harle Gate: told by telephone.");
}

fn whom_to_call(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let (pig, chops) = chops(&caller);
    for (pack, to) in [(1, "The Inn"), (2, "The Inn"), (3, "Corner Shop")] {
        caller
            .depart("ship", &chops)
            .with("pack", pack)
            .with("to", to)
            .done();
    }
    caller
        .sell(&chops)
        .with("pack", 4)
        .with("to", "Mrs Ashby, 555 0100")
        .done();
    let id = begin(&caller, json!({ "lot": pig }), false);
    let told = json!({ "kind": "told", "whom": "the inn", "text": "By telephone" });
    caller
        .deed(&format!("/api/incidents/{id}/notes"), told)
        .expect(201);
    let read = incident(&caller, &id);
    let customers = read["customers"].as_array().unwrap();
    assert_eq!(customers.len(), 2, "{customers:?}");
    let inn = customers.iter().find(|of| of["name"] == "The Inn").unwrap();
    assert_eq!((&inn["packs"], &inn["grams"]), (&json!(2), &json!(1000)));
    assert!(inn["told_at"].is_string());
    let shop = customers
        .iter()
        .find(|of| of["name"] == "Corner Shop")
        .unwrap();
    assert_eq!(shop["told_at"], Value::Null);
    assert_eq!(read["sold"][0]["to"], json!(["Mrs Ashby, 555 0100"]));
    // A recall of what was made only still names who it came from.
    let made = begin(&caller, json!({ "lot": chops }), false);
    let read = incident(&caller, &made);
    assert!(
        read["sources"].to_string().contains("farm"),
        "{}",
        read["sources"]
    );
}

fn a_drill_is_counted_and_compared(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let (_, chops) = chops(&caller);
    let text = |path: &str| String::from_utf8(caller.get(path).expect(200).bytes).unwrap();
    let hands = caller.read("/api/today")["hands"].to_string();
    assert!(
        !hands.contains("\"drill\""),
        "what came in today is drilled within a year"
    );
    let kitchen = caller.get("/api/kitchen").expect(200);
    let mut entry = kitchen.body.clone();
    entry["drill_every_months"] = json!(0);
    caller
        .put("/api/kitchen", &entry)
        .refused(422, "drill_every_months");
    let id = begin(&caller, json!({ "lot": chops }), true);
    caller.sell(&chops).with("pack", 6).done();
    count_all(&caller, &id, &[(&chops, 5)]);
    let report = file(&caller, &id, "report.pdf");
    assert!(report.starts_with(b"%PDF"));
    caller
        .deed(
            &format!("/api/incidents/{id}/close"),
            json!({ "why": "Done" }),
        )
        .expect(201);
    let drills = text("/recall/drills");
    assert!(
        drills.contains("CHK-2026-1") || drills.contains("CHK-20"),
        "{drills}"
    );
    assert!(
        drills.contains("100"),
        "every pack was looked for: {drills}"
    );
    let read = incident(&caller, &id);
    assert_eq!(read["drill"], true);
    assert_eq!(
        (&read["held_packs"], &read["count"]["missing_grams"]),
        (&json!(0), &json!(500))
    );
    assert!(read["notices"].to_string().contains("DRILL"));
    assert!(read["milestones"].to_string().contains("located"));
}

fn bad_input_of_a_recall(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let (pig, chops) = chops(&caller);
    let id = begin(&caller, json!({ "lot": pig }), false);
    let before = house.check();
    let of = format!("/api/incidents/{id}");
    caller
        .get(&format!("{of}/report.pdf?at=yesterday"))
        .refused(422, "at");
    caller
        .get(&format!("{of}/report.pdf?at=2001-01-01T00:00:00Z"))
        .refused(422, "at");
    caller
        .get(&format!("{of}/record.csv?when=now"))
        .refused(422, "when");
    caller
        .get("/api/incidents/019e0000-0000-7000-8000-000000000000/report.pdf")
        .refused(404, None);
    caller
        .get("/api/incidents/nothing/family.svg")
        .refused(404, None);
    caller.get("/recall/CHK-1999-7").expect(404);
    caller.get("/recall/CHK-1999-7/count").expect(404);
    let more = json!({ "lot": chops, "packs": [{ "pack": 1, "grams": 5000 }] });
    caller
        .deed("/api/counts", more)
        .refused(422, "packs[0].grams");
    let nowhere = json!({ "lot": chops, "place": "attic", "packs": [{ "pack": 1, "grams": 500 }] });
    caller.deed("/api/counts", nowhere).refused(422, "place");
    let unseen = json!({ "lot": chops, "what": "discarded", "why": "x", "incident": id });
    caller
        .deed("/api/dispositions", unseen)
        .refused(422, "witness");
    let nowhere = json!({ "lot": chops, "what": "discarded", "why": "x", "witness": "Lise", "place": "attic", "incident": id });
    caller
        .deed("/api/dispositions", nowhere)
        .refused(422, "place");
    assert_eq!(house.check(), before, "what is refused changes nothing");
    // A cook reads it, and disposes of nothing.
    let token = json!({ "name": "a cook", "role": "cook" });
    let token = caller.post("/api/tokens", &token).expect(201).body["token"].clone();
    let cook = caller.showing(token.as_str().unwrap());
    cook.get(&of).expect(200);
    let body =
        json!({ "lot": chops, "what": "discarded", "why": "x", "witness": "Lise", "incident": id });
    cook.deed("/api/dispositions", body).expect(403);
    cook.deed(&format!("{of}/close"), json!({})).expect(403);
}
