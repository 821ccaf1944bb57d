//! What a recall reaches: asked over HTTP, of the demo's story and of a small day with clean-downs.

use serde_json::{Value, json};
use std::collections::BTreeSet;
use stories::call::moment;
use stories::day::Told;
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    the_demo_is_found_by_what_the_phone_says
    contact_reaches_what_shared_the_bench
    a_clean_down_parts_and_a_voided_one_never_was
    what_was_entered_late_counts_by_when_it_was
    what_is_left_out_and_what_was_corrected
    what_cannot_be_asked
}

fn ask(caller: &Caller, question: Value) -> Value {
    caller.post("/api/scopes", &question).expect(200).body
}

fn codes(scope: &Value) -> BTreeSet<String> {
    let lots = scope["lots"].as_array().unwrap().iter();
    lots.map(|lot| lot["code"].as_str().unwrap().to_owned())
        .collect()
}

fn set(codes: &[&String]) -> BTreeSet<String> {
    codes.iter().map(|code| (*code).clone()).collect()
}

fn on_hand(scope: &Value) -> (usize, &Value) {
    let lots = scope["lots"].as_array().unwrap().iter();
    let left = lots.filter(|lot| {
        lot["packs"]
            .as_array()
            .is_some_and(|packs| !packs.is_empty())
    });
    (left.count(), &scope["totals"]["on_hand_grams"])
}

fn the_demo_is_found_by_what_the_phone_says(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let said = json!({ "spreads": "lineage", "start": [
        { "farm": "BRC", "killed_on": "2026-06-08", "carcass": "0608 17" } ] });
    let scope = ask(&caller, said.clone());
    let pig = caller.noted("S10");
    // The half pig itself, and the thirty-six that came of it.
    assert_eq!(codes(&scope).len(), 37);
    assert_eq!(on_hand(&scope), (11, &json!(26927)));
    let totals = &scope["totals"];
    assert_eq!(
        [
            &totals["sold_grams"],
            &totals["sold_packs"],
            &totals["served_grams"],
            &totals["discarded_grams"]
        ],
        [&json!(13830), &json!(57), &json!(14930), &json!(2295)]
    );
    for lot in scope["lots"].as_array().unwrap() {
        let because = &lot["because"][0];
        assert!(because["says"].is_string(), "{lot}");
        let how = if lot["code"] == *pig {
            "named"
        } else {
            "made-of"
        };
        assert_eq!(because["how"], how, "{lot}");
        assert!(lot["whole"] == true && lot["on_hand_grams"].is_number());
    }
    for clear in ["S11", "L10", "L16", "L29"] {
        assert!(!codes(&scope).contains(&caller.noted(clear)), "{clear}");
    }
    let twins = scope["outside"].as_array().unwrap();
    assert!(
        twins.iter().any(
            |out| out["animal"].is_string() && out["why"].as_str().unwrap().contains("0608-31")
        ),
        "{twins:?}"
    );
    // The same question of the same record, in another spelling of the language only.
    assert_eq!(ask(&caller, said)["digest"], scope["digest"]);
    let by_code = ask(
        &caller,
        json!({ "spreads": "lineage", "start": [{ "lot": pig }] }),
    );
    assert_eq!(codes(&by_code), codes(&scope));
    assert_ne!(by_code["digest"], scope["digest"]);
    let animal = caller.read("/api/animals?carcass=0608-17")["animals"][0]["id"].clone();
    let by_id = ask(
        &caller,
        json!({ "spreads": "lineage", "start": [{ "animal": animal }] }),
    );
    assert_eq!(codes(&by_id), codes(&scope));
    // By the day of the kill alone the other half pig would be in.
    let day = ask(
        &caller,
        json!({ "spreads": "lineage", "start": [{ "killed_from": "2026-06-08", "killed_until": "2026-06-09" }] }),
    );
    assert!(codes(&day).contains(&caller.noted("L16")));
    // The fat went into the lard by its packs: what was made of the bags is in, each by its bag.
    let lard = ask(
        &caller,
        json!({ "spreads": "lineage", "start": [{ "lot": caller.noted("L25") }] }),
    );
    assert_eq!(
        codes(&lard),
        set(&[
            &caller.noted("L25"),
            &caller.noted("L28"),
            &caller.noted("L32")
        ])
    );
}

fn contact_reaches_what_shared_the_bench(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let start = json!([{ "lot": caller.noted("S10") }]);
    let lineage = ask(&caller, json!({ "spreads": "lineage", "start": start }));
    let contact = ask(&caller, json!({ "spreads": "contact", "start": start }));
    assert!(codes(&contact).is_superset(&codes(&lineage)));
    // Nobody cleaned between the two half pigs on the tenth.
    let other = caller.noted("L16");
    assert!(codes(&contact).contains(&other));
    let beside = contact["lots"].as_array().unwrap().iter();
    let shared = beside.filter(|lot| lot["because"][0]["how"] == "shared-contact");
    for lot in shared {
        let because = &lot["because"][0];
        for field in ["of", "place", "deed", "says"] {
            assert!(because[field].is_string(), "{lot}");
        }
        assert!(codes(&contact).contains(because["of"].as_str().unwrap()));
    }
    // Windows that end before anything happened reach nothing else.
    let cut = ask(
        &caller,
        json!({ "spreads": "contact", "start": start, "contact_until": "2026-06-01" }),
    );
    assert_eq!(codes(&cut), codes(&lineage));
}

/// Two half pigs on the cooler's shelf, and trim of each made at the bench so many minutes ago.
fn two_pigs(caller: &Caller) -> (String, String) {
    let pig = |carcass: &str| {
        let animal = stories::day::farm("BRC").carcass(carcass).side("left");
        caller
            .receive("pig-half")
            .grams(10_000)
            .from(animal)
            .at(moment(-600))
            .made()
    };
    (pig("0608-17"), pig("0608-31"))
}

fn trim(caller: &Caller, pig: &str, minutes: i64) -> String {
    caller
        .step("cut")
        .of_grams(pig, 1_000)
        .into("pork-trim", 1_000)
        .at(moment(minutes))
        .made()
}

fn cleaned(caller: &Caller, minutes: i64) -> String {
    let body = json!({ "place": "bench", "at": moment(minutes) });
    let done = caller.deed("/api/clean-downs", body).expect(201);
    done.body["id"].as_str().unwrap().to_owned()
}

fn contact_of(caller: &Caller, lot: &str) -> BTreeSet<String> {
    codes(&ask(
        caller,
        json!({ "spreads": "contact", "start": [{ "lot": lot }] }),
    ))
}

fn a_clean_down_parts_and_a_voided_one_never_was(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let (one, other) = two_pigs(&caller);
    let first = trim(&caller, &one, -300);
    let down = cleaned(&caller, -250);
    let second = trim(&caller, &other, -200);
    // The half pig was drawn on at the bench, and something is left of it.
    assert_eq!(contact_of(&caller, &first), set(&[&first, &one]));
    assert_eq!(contact_of(&caller, &second), set(&[&second, &other]));
    caller.void(&down).done();
    let all = set(&[&first, &one, &second, &other]);
    assert_eq!(contact_of(&caller, &first), all);
    // What is drawn on is affected from that moment on, what was made of it before is outside.
    let third = trim(&caller, &one, -100);
    let of_second = ask(
        &caller,
        json!({ "spreads": "contact", "start": [{ "lot": second }], "contact_from": moment(-150) }),
    );
    assert!(codes(&of_second).contains(&third));
    let before = of_second["outside"].as_array().unwrap().iter();
    let before: Vec<&Value> = before
        .filter(|out| out["key"] == "scope-made-before")
        .collect();
    assert!(before.iter().any(|out| out["lot"] == *first), "{of_second}");
    let pig = of_second["lots"].as_array().unwrap().iter();
    let pig = pig.clone().find(|lot| lot["code"] == *one).unwrap();
    assert_eq!(pig["whole"], false);
    assert_eq!(pig["on_hand_grams"], 8000);
}

fn what_was_entered_late_counts_by_when_it_was(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let (one, other) = two_pigs(&caller);
    let first = trim(&caller, &one, -300);
    let second = trim(&caller, &other, -200);
    assert!(contact_of(&caller, &first).contains(&second));
    // Entered now, cleaned then.
    cleaned(&caller, -250);
    assert!(!contact_of(&caller, &first).contains(&second));
    // What was under way while it was cleaned stands in both windows.
    let long = caller
        .step("cut")
        .of_grams(&other, 500)
        .into("pork-trim", 500)
        .with("began_at", moment(-280))
        .at(moment(-210))
        .made();
    let reached = contact_of(&caller, &first);
    assert!(reached.contains(&long) && reached.contains(&second));
    // The place over a time, and a person's work.
    let place = json!({ "place": "bench", "from": moment(-310), "until": moment(-290) });
    let there = ask(&caller, json!({ "spreads": "lineage", "start": [place] }));
    assert_eq!(there["lots"][0]["because"][0]["how"], "was-there");
    assert!(codes(&there).contains(&first) && !codes(&there).contains(&long));
    let work = json!({ "by": "Cook", "from": moment(-310), "until": moment(-290) });
    let done = ask(&caller, json!({ "spreads": "lineage", "start": [work] }));
    let expected: BTreeSet<String> = set(&[&first, &one, &long, &second]);
    assert!(
        codes(&done).is_subset(&expected) && codes(&done).contains(&first),
        "{done}"
    );
}

fn what_is_left_out_and_what_was_corrected(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let animal = stories::day::farm("BRC").carcass("0608-17").side("left");
    let receipt = caller
        .receive("pig-half")
        .grams(10_000)
        .from(animal)
        .at(moment(-600))
        .done();
    let pig = receipt.code(0);
    let first = trim(&caller, &pig, -300);
    let sausage = caller
        .step("grind")
        .place("grinder")
        .of(&first)
        .into("sausage", 900)
        .made();
    let without = json!({ "spreads": "lineage", "start": [{ "lot": pig }],
        "without": [{ "lot": first, "why": "Tested clear" }] });
    let scope = ask(&caller, without);
    assert_eq!(codes(&scope), set(&[&pig]));
    let why = |code: &str| {
        let outside = scope["outside"].as_array().unwrap().iter();
        let of = outside.clone().find(|out| out["lot"] == *code).unwrap();
        of["key"].as_str().unwrap().to_owned()
    };
    assert_eq!(
        (why(&first), why(&sausage)),
        ("scope-left-out".into(), "scope-falls-out".into())
    );
    let id = receipt.body["id"].as_str().unwrap();
    caller
        .correct(id)
        .with("animal", json!({ "carcass": "0608-71" }))
        .done();
    let asked = |carcass: &str| json!({ "spreads": "lineage", "start": [{ "carcass": carcass }] });
    assert_eq!(
        codes(&ask(&caller, asked("060871"))),
        set(&[&pig, &first, &sausage])
    );
    let once = ask(&caller, asked("0608/17"));
    assert!(codes(&once).is_empty());
    assert_eq!(
        (&once["outside"][0]["lot"], &once["outside"][0]["key"]),
        (&json!(pig), &json!("scope-known-as"))
    );
    let second = trim(&caller, &pig, -200);
    let made = caller.lot(&second)["made_by_step"]
        .as_str()
        .unwrap()
        .to_owned();
    caller.void(&made).done();
    let voided = ask(
        &caller,
        json!({ "spreads": "contact", "start": [{ "lot": second }] }),
    );
    assert_eq!(
        (codes(&voided).len(), &voided["outside"][0]["key"]),
        (0, &json!("scope-voided"))
    );
}

fn what_cannot_be_asked(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("0608-17", 10_000);
    let before = house.check();
    let ask = |start: Value| {
        let body = json!({ "spreads": "lineage", "start": [start] });
        caller.post("/api/scopes", &body)
    };
    ask(json!({ "carcass": "9999" })).refused(404, "start[0]");
    ask(json!({ "animal": "019e0000-0000-7000-8000-000000000000" }))
        .refused(404, "start[0].animal");
    ask(json!({ "lot": pig, "carcass": "0608-17" })).refused(422, "start[0]");
    ask(json!({})).refused(422, "start[0]");
    ask(json!({ "place": "bench", "from": "2026-06-02", "until": "2026-06-02" }))
        .refused(422, "start[0].until");
    ask(json!({ "place": "bench", "from": "2026-06-02" })).refused(422, "start[0].until");
    ask(json!({ "place": "attic", "from": "2026-06-02", "until": "2026-06-03" }))
        .refused(422, "start[0].place");
    ask(json!({ "by": "Nobody At All", "from": "2026-06-02", "until": "2026-06-03" }))
        .refused(422, "start[0].by");
    ask(json!({ "supplier": "PTS", "supplier_lot": "X-9" })).refused(404, "start[0].supplier_lot");
    let empty = json!({ "spreads": "lineage", "start": [] });
    caller.post("/api/scopes", &empty).refused(422, "start");
    let unsaid = json!({ "spreads": "lineage", "start": [{ "lot": pig }], "without": [{ "lot": pig, "why": "" }] });
    caller
        .post("/api/scopes", &unsaid)
        .refused(422, "without[0].why");
    let turned = json!({ "spreads": "contact", "start": [{ "lot": pig }],
        "contact_from": "2026-06-03", "contact_until": "2026-06-02" });
    caller
        .post("/api/scopes", &turned)
        .refused(422, "contact_until");
    assert_eq!(house.check(), before, "a question records nothing");
}
