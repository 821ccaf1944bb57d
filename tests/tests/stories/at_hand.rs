//! What a cook has at hand when something went otherwise: sent back at the door, a core that was read too late to be
//! typed, a cooling with its hours, a place that failed, packs of a recall.

use chrono::{DateTime, FixedOffset, TimeDelta};
use serde_json::{Value, json};
use stories::day::{Told, bought};
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    what_came_in_too_warm_goes_back_from_where_it_was_refused
    a_cook_without_its_core_leads_to_where_that_is_entered
    a_cooling_goes_on_from_its_readings_and_stands_on_today
    what_a_failed_place_stopped_is_one_thing_on_today
    what_is_known_of_a_recall_is_one_form_and_packs_are_buttons
    what_hangs_is_broken_down_from_the_bench
}

fn keys(caller: &Caller) -> Vec<String> {
    let hands = caller.read("/api/today?limit=200")["hands"].clone();
    let hands = hands.as_array().cloned().unwrap_or_default();
    let key = |hand: &Value| hand["key"].as_str().unwrap_or_default().to_owned();
    hands.iter().map(key).collect()
}

fn what_came_in_too_warm_goes_back_from_where_it_was_refused(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let door = caller.page("/receive?of=bought");
    assert!(
        door.contains("data-sent-back=\"It came in at [read]"),
        "{door}"
    );
    assert!(door.contains("It is [read]: send it back"), "{door}");
    let warm = caller.receive("pork-loin").grams(3_000);
    let warm = warm.bought(bought("HRW", "W-1")).to("cooler-1");
    let warm = warm.with("readings", json!({ "celsius": 12 }));
    warm.clone().refused(422, "readings.celsius");
    let warm = warm.with("as_it_happened", true).note("van fridge broke");
    let lot = warm.made();
    // What happened is told of the deed, and is no name of the lot.
    assert!(caller.lot(&lot)["note"].is_null(), "{}", caller.lot(&lot));
    let own = caller.page(&format!("/lots/{lot}"));
    let first = format!("class=\"act first\" href=\"/lots/{lot}/return\"");
    assert!(own.contains(&first), "{own}");
    let why = |path: &str| caller.page(&format!("/lots/{lot}/{path}"));
    let chosen = "value=\"Too warm when it came\" checked";
    assert!(why("return?why=page-why-too-warm").contains(chosen));
    assert!(
        !why("return").contains(" checked required>"),
        "no reason of its own"
    );
}

fn a_cook_without_its_core_leads_to_where_that_is_entered(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    // A pot that boiled says nothing of a roast; of a stock it does.
    assert!(
        !caller
            .page("/make/cook?product=pulled-pork")
            .contains("data-boiled")
    );
    let loin = loin(&caller);
    let cooked = caller.step("cook").place("stove").of_grams(&loin, 2_000);
    let cooked = cooked.into("pulled-pork", 1_500).done();
    let (lot, id) = (cooked.code(0), cooked.body["id"].clone());
    let own = caller.page(&format!("/lots/{lot}"));
    let first = format!("class=\"act first\" href=\"/lots/{lot}/core\"");
    assert!(own.contains(&first), "{own}");
    let core = caller.page(&format!("/lots/{lot}/core"));
    assert!(core.contains(id.as_str().expect("an id")), "{core}");
    let right = json!({ "step": id, "readings": { "celsius": 91 }, "why": "measured then, written down now" });
    caller.deed("/api/corrections", right).expect(201);
    assert!(!caller.page(&format!("/lots/{lot}")).contains("/core\""));
    caller.get(&format!("/lots/{lot}/core")).expect(404);
}

fn loin(caller: &Caller) -> String {
    let side = caller.side_on_the_rail();
    let cut = caller.step("break-down").of_grams(&side, 6_000);
    cut.into("pork-loin", 6_000).made()
}

fn now(caller: &Caller) -> DateTime<FixedOffset> {
    let now = caller.read("/api/today")["now"].clone();
    DateTime::parse_from_rfc3339(now.as_str().expect("a moment")).expect("a moment")
}

fn a_cooling_goes_on_from_its_readings_and_stands_on_today(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let out = now(&caller) - TimeDelta::hours(3);
    let came = (out - TimeDelta::hours(1)).to_rfc3339();
    let loin = caller.receive("pork-loin").bought(bought("HRW", "C-1"));
    let loin = loin
        .grams(3_000)
        .to("cooler-1")
        .at(came)
        .note("entered late");
    let loin = loin.made();
    let cooked = caller.step("cook").place("stove").of_grams(&loin, 2_000);
    let cooked = cooked.held(91.0, 10).into("pulled-pork", 1_500);
    let lot = cooked.at(out.to_rfc3339()).note("entered late").made();
    assert!(
        keys(&caller).contains(&"today-cools".to_owned()),
        "{:?}",
        keys(&caller)
    );
    let read = |readings: &[(i64, f64)]| {
        let log: Vec<Value> = readings
            .iter()
            .map(|(minutes, degrees)| {
                let at = (out + TimeDelta::minutes(*minutes)).to_rfc3339();
                json!({ "at": at, "celsius": degrees })
            })
            .collect();
        let chill = caller.step("chill").of(&lot).with("log", json!(log));
        chill.with("outputs", json!([])).done()
    };
    let first = read(&[(15, 62.0)]);
    assert!(
        first.body["warning_keys"]
            .to_string()
            .contains("heat-deed-cooling-begun"),
        "{first:?}"
    );
    let cool = caller.page(&format!("/lots/{lot}/cool"));
    assert!(
        cool.contains("name=\"log.0.celsius\"") && cool.contains("value=\"62\" readonly"),
        "{cool}"
    );
    assert!(
        cool.contains("name=\"log.1.at\""),
        "the next row goes on after it"
    );
    assert_eq!(cool.matches("data-minutes-left=\"").count(), 2, "{cool}");
    let colder = read(&[(15, 62.0), (80, 20.0)]);
    assert!(
        !colder.body["warning_keys"]
            .to_string()
            .contains("cooling-begun"),
        "{colder:?}"
    );
    let cool = caller.page(&format!("/lots/{lot}/cool"));
    assert_eq!(cool.matches("data-minutes-left=\"").count(), 1, "{cool}");
    assert_eq!(
        cool.matches(" readonly").count(),
        4,
        "each reading once: {cool}"
    );
    read(&[(15, 62.0), (80, 20.0), (170, 3.0)]);
    let left = keys(&caller);
    assert!(!left.contains(&"today-cools".to_owned()), "{left:?}");
}

fn what_a_failed_place_stopped_is_one_thing_on_today(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let before = keys(&caller);
    let stopped = |keys: &[String]| keys.iter().filter(|key| *key == "today-stopped").count();
    // What stands in the way of the same packs for several reasons is told once.
    let hands = caller.read("/api/today?limit=200")["hands"].clone();
    let of_stops = hands.as_array().expect("hands").iter();
    let of_stops = of_stops.filter(|hand| hand["key"] == "today-stopped");
    let mut about: Vec<String> = of_stops
        .map(|hand| format!("{} {}", hand["lot"], hand["packs"]))
        .collect();
    let told = about.len();
    about.sort_unstable();
    about.dedup();
    assert_eq!((about.len(), told), (stopped(&before), told), "{about:?}");
    let thaws = |keys: &[String]| keys.iter().any(|key| key == "today-thaw");
    assert!(thaws(&before), "{before:?}");
    let from = (now(&caller) - TimeDelta::hours(16)).to_rfc3339();
    let failed = json!({ "place": "freezer", "from": from });
    caller.deed("/api/place-failures", failed).expect(201);
    let after = keys(&caller);
    assert_eq!(stopped(&after), stopped(&before), "{after:?}");
    // Nobody is asked to thaw what is to be thrown away.
    assert!(!thaws(&after), "{after:?}");
    let events = after.iter().filter(|key| *key == "today-failed");
    assert_eq!(events.count(), 1, "{after:?}");
    let today = caller.page("/");
    assert!(
        today.contains("/places/freezer/discard?stopped=yes"),
        "{today}"
    );
    let all = caller.page("/places/freezer/discard?stopped=yes");
    assert!(all.contains("name=\"_packs\""), "{all}");
    // Of what stands elsewhere, only what is stopped.
    let packs = |path: &str| caller.page(path).matches("name=\"_packs\"").count();
    let (some, whole) = (
        "/places/cooler-1/discard?stopped=yes",
        "/places/cooler-1/discard",
    );
    assert!((1..packs(whole)).contains(&packs(some)), "{}", packs(some));
    // What is held is not thrown away by the way.
    let freezer = "/places/freezer/discard?stopped=yes";
    let lots = all.matches("data-lot=\"").count();
    let lot = all
        .split("data-lot=\"")
        .nth(1)
        .and_then(|of| of.split('"').next());
    let hold = json!({ "lots": [{ "lot": lot.expect("a lot") }], "why": "It may be recalled" });
    caller.deed("/api/holds", hold).expect(201);
    assert!(caller.page(freezer).matches("data-lot=\"").count() < lots);
}

fn what_is_known_of_a_recall_is_one_form_and_packs_are_buttons(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let stopped = |keys: &[String]| keys.iter().filter(|key| *key == "today-stopped").count();
    let before = stopped(&keys(&caller));
    let begun = json!({ "hold": true, "hazard": "other", "scope": { "start": [{ "farm": "BRC", "killed_from": "2026-06-08",
        "killed_until": "2026-06-09" }], "spreads": "lineage" } });
    let begun = caller.deed("/api/incidents", begun).expect(201).body;
    let number = begun["number"].as_str().expect("a number");
    // What it holds is told by its one line on Today.
    assert_eq!(stopped(&keys(&caller)), before);
    let own = caller.page(&format!("/recall/{number}"));
    assert_eq!(own.matches("data-notes=").count(), 1, "{own}");
    for field in ["name=\"caller\"", "name=\"reason\"", "name=\"hazard\""] {
        assert!(own.contains(field), "{field}");
    }
    assert!(
        own.contains("name=\"_pack\" value=\"") && !own.contains("name=\"_packs\""),
        "{own}"
    );
    // A note is shown where it was written, and stays.
    let id = begun["id"].as_str().expect("an id");
    let note = json!({ "kind": "caller", "text": "Inspector Ruiz" });
    let note = caller
        .deed(&format!("/api/incidents/{id}/notes"), note)
        .expect(201);
    let noted = note.body["id"].as_str().expect("an id");
    let told = caller.page(&format!("/recall/{number}?did={noted}"));
    assert!(
        told.contains("<div class=\"done\"") && !told.contains("data-undo="),
        "{told}"
    );
    assert!(
        told.contains("name=\"hazard\"") && !told.contains("name=\"caller\""),
        "{told}"
    );
}

fn what_hangs_is_broken_down_from_the_bench(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let side = caller.side_on_the_rail();
    let bench = caller.page("/make");
    assert!(
        bench.contains(&format!("/lots/{side}/break-down")),
        "{bench}"
    );
    // Who may not work there is told so, and whom to ask; no button leads to a refusal.
    let asked = json!({ "name": "a hand", "role": "counter" });
    let given = caller.post("/api/tokens", &asked).expect(201).body;
    let hand = caller.showing(given["token"].as_str().expect("a token"));
    for path in ["/make", "/receive"] {
        let told = hand.page(path);
        assert!(
            told.contains("may not do this: work at the bench"),
            "{told}"
        );
        assert!(
            !told.contains("/make/cook") && !told.contains("data-deed="),
            "{told}"
        );
    }
}
