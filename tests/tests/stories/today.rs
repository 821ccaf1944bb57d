//! Today, and the box that takes anything.

use serde_json::{Value, json};
use stories::{Engine, House, on_both_engines};
use uuid::Uuid;

on_both_engines! {
    what_needs_a_hand
    a_place_that_was_read_too_warm_is_told_until_it_is_read_well
    whatever_is_said_is_found
    an_empty_kitchen_is_told_what_comes_first
}

fn hands(today: &Value) -> Vec<(String, String)> {
    let hands = today["hands"].as_array().expect("hands").iter();
    let text = |value: &Value| value.as_str().unwrap_or_default().to_owned();
    hands
        .map(|hand| (text(&hand["sort"]), text(&hand["says"])))
        .collect()
}

fn what_needs_a_hand(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let today = caller.read("/api/today");
    let found = hands(&today);
    let has = |sort: &str, says: &str| found.iter().any(|(of, it)| of == sort && it.contains(says));
    for (sort, says) in [
        ("alarm", "H-04"),
        ("alarm", "H-06"),
        ("wrong-label", "Chicken liver parfait"),
        ("stop", "Smoked cooked ham"),
        ("past", "Pork liver"),
        ("last-day", "Pork chop, 4 packs"),
        ("piece", "H-05"),
        ("release", "H-02"),
        ("thaw", "thaw for tomorrow"),
    ] {
        assert!(has(sort, says), "{sort}: {says} is not in {found:?}");
    }
    let times: Vec<&str> = today["hands"]
        .as_array()
        .unwrap()
        .iter()
        .map(|hand| hand["when"].as_str().unwrap())
        .collect();
    let place = |time: &&str| ["now", "today", "closing"].iter().position(|of| of == time);
    assert!(times.is_sorted_by_key(place), "{times:?}");
    // In parts it is the same.
    let mut parts = Vec::new();
    let mut after = 0;
    loop {
        let part = caller.read(&format!("/api/today?limit=4&after={after}"));
        parts.extend(hands(&part));
        match part["next"].as_u64() {
            Some(next) => after = next,
            None => break,
        }
    }
    assert_eq!(parts, found);
    // The page says the same.
    let page = caller.get("/").expect(200);
    let page = String::from_utf8(page.bytes).unwrap();
    assert!(page.contains("Pork chop, 4 packs: last day"), "{page}");
    caller.get("/api/today?limit=0").expect(422);
    caller.get("/api/today?after=9999").expect(422);
    // What is done leaves: the chops are frozen.
    let chops = today["hands"].as_array().unwrap().iter();
    let mut chops = chops.filter(|hand| hand["says"].as_str().unwrap().starts_with("Pork chop"));
    let chops = chops.next().expect("the chops");
    let asked = json!({ "id": Uuid::from_u128(0x70da1), "lot": chops["lot"], "packs": chops["packs"],
        "state": "frozen", "to": "freezer" });
    caller.post("/api/moves", &asked).expect(201);
    let left = hands(&caller.read("/api/today"));
    assert!(
        !left.iter().any(|(_, says)| says.starts_with("Pork chop")),
        "{left:?}"
    );
    // So does the question what thaws for tomorrow, once something was taken out of the freezer; undone, it is asked again.
    let thaws = || {
        hands(&caller.read("/api/today"))
            .iter()
            .any(|(sort, _)| sort == "thaw")
    };
    assert!(thaws());
    let thaw = Uuid::from_u128(0x70da4);
    let asked = json!({ "id": thaw, "lot": chops["lot"], "packs": chops["packs"], "state": "chilled", "to": "cooler-1" });
    caller.post("/api/moves", &asked).expect(201);
    assert!(!thaws());
    let why = json!({ "id": Uuid::from_u128(0x70da5), "why": "not today" });
    caller
        .post(&format!("/api/steps/{thaw}/void"), &why)
        .expect(201);
    assert!(thaws());
    // Raw meat on the bench wants it cleaned before the end, and a clean-down ends that.
    let loin = caller.read("/api/lots?product=pork-loin");
    let lot = loin["lots"].as_array().unwrap().iter();
    let mut lot = lot.filter(|lot| lot["on_hand_grams"].as_f64().unwrap_or(0.0) > 200.0);
    if let Some(lot) = lot.next() {
        let asked = json!({ "id": Uuid::from_u128(0x70da2), "kind": "cut", "place": "bench",
            "inputs": [{ "lot": lot["code"], "grams": 100 }], "outputs": [{ "product": "pork-loin", "grams": 100 }] });
        caller.post("/api/steps", &asked).expect(201);
        let bench = |today: &Value| {
            hands(today).iter().any(|(sort, says)| {
                (sort == "clean-down" || sort == "crossed") && says.contains("Bench")
            })
        };
        assert!(bench(&caller.read("/api/today")));
        let asked = json!({ "id": Uuid::from_u128(0x70da3), "place": "bench" });
        caller.post("/api/clean-downs", &asked).expect(201);
        assert!(!bench(&caller.read("/api/today")));
    }
}

fn whatever_is_said_is_found(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let bacon = caller.noted("L13");
    let first = |said: &str| {
        let found = caller.read(&format!("/api/find?q={said}"));
        let things = found["things"].as_array().expect("things").clone();
        assert!(!things.is_empty(), "{said} finds nothing");
        things[0].clone()
    };
    // A code however spelt, a part of one, a label's address, a pack.
    let shown = format!("{}-{}-{}", &bacon[..3], &bacon[3..8], &bacon[8..]).to_lowercase();
    for said in [bacon.clone(), shown, bacon[8..].to_owned()] {
        let thing = first(&said);
        assert_eq!(
            (thing["is"].as_str(), thing["code"].as_str()),
            (Some("lot"), Some(&*bacon)),
            "{said}"
        );
    }
    // A sentence as it is said on the phone: its words mean something each, and the farm narrows the animals.
    assert_eq!(first("animal%2017%20of%20Brindlecombe")["is"], "animal");
    let pack = first(&format!("{bacon}/13"));
    assert_eq!(
        (pack["is"].as_str(), pack["pack"].as_u64()),
        (Some("pack"), Some(13))
    );
    // A carcass number however spelt, and an ear tag.
    for said in [
        "0608-17",
        "060817",
        "0608%2017",
        "17",
        "BR%202217",
        "br2217",
    ] {
        let thing = first(said);
        assert_eq!(
            (thing["is"].as_str(), thing["name"].as_str()),
            (Some("animal"), Some("0608-17")),
            "{said}"
        );
    }
    for (said, is, code) in [
        ("freezer", "place", "freezer"),
        ("pork%20rillettes", "product", "rillettes"),
        ("brindlecombe", "farm", "BRC"),
    ] {
        let thing = first(said);
        assert_eq!(thing["is"].as_str(), Some(is), "{said}: {thing}");
        if is != "product" {
            assert_eq!(thing["code"].as_str(), Some(code), "{said}");
        }
    }
    assert_eq!(first("oda")["is"].as_str(), Some("person"));
    assert_eq!(first("H-04")["is"].as_str(), Some("lot"));
    // What hangs, by what it is called at the rail: the list calls it half a pig.
    let hangs = caller.noted("S16");
    for said in ["side", "half", "pork%20side"] {
        assert_eq!(first(said)["code"].as_str(), Some(&*hangs), "{said}");
    }
    let nothing = caller.read("/api/find?q=nothing-of-that-name");
    assert_eq!(nothing["things"].as_array().map(Vec::len), Some(0));
    let elsewhere = caller.read("/api/find?q=https%3A%2F%2Felsewhere.example%2FL%2FX");
    assert_eq!(elsewhere["elsewhere"], true);
    let page = caller.get("/find?q=nothing-of-that-name").expect(200);
    assert!(
        String::from_utf8(page.bytes)
            .unwrap()
            .contains("Nothing here is called")
    );
}

fn an_empty_kitchen_is_told_what_comes_first(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let page = String::from_utf8(caller.get("/").expect(200).bytes).unwrap();
    assert!(page.contains("Receive the first animal"), "{page}");
    assert_eq!(caller.read("/api/today")["begun"], false);
}

/// One warm reading stops nothing, and it is not only said to who read it: Today and the counter tell of it.
fn a_place_that_was_read_too_warm_is_told_until_it_is_read_well(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let bacon = caller.noted("L13");
    let read = |nth: u128, place: &str, fahrenheit: f64| {
        let asked = json!({ "id": Uuid::from_u128(0x70db0 + nth), "place": place, "fahrenheit": fahrenheit });
        caller.post("/api/readings", &asked).expect(201)
    };
    let told = |place: &str| {
        let today = caller.read("/api/today");
        let mut hands = today["hands"]
            .as_array()
            .expect("hands")
            .clone()
            .into_iter();
        hands.find(|hand| hand["sort"] == "beyond" && hand["place"] == place)
    };
    let scanned = || caller.read(&format!("/api/scan?code={bacon}/13"));
    let warned = || {
        let scan = scanned();
        assert_eq!(scan["verdict"], "sell");
        let keys = scan["reason_keys"].as_array().expect("keys").clone();
        keys.contains(&json!("verdict-stands-warm"))
    };
    assert!(told("case").is_none() && !warned());
    // None of these places has a limit of its own.
    read(1, "case", 46.0);
    let hand = told("case").expect("the case is told of");
    assert_eq!(hand["when"], "now");
    assert_eq!(hand["act_key"], "today-do-read-again");
    assert!(hand["says"].as_str().unwrap().contains("46"), "{hand}");
    assert!(warned());
    let page = |path: &str| String::from_utf8(caller.get(path).expect(200).bytes).unwrap();
    let today = page("/");
    for act in ["temperature", "move", "discard"] {
        assert!(
            today.contains(&format!("/places/case/{act}")),
            "{act} is not on Today"
        );
    }
    let counter = page(&format!("/counter?code={bacon}/13"));
    assert!(counter.contains("class=\"warn\""), "{counter}");
    let case = page("/places/case");
    assert!(
        case.contains("role=\"alert\"") && case.contains("46"),
        "{case}"
    );
    // A good reading ends it; what hangs to dry wants no cold, and where nothing lies nothing suffers.
    read(2, "case", 39.0);
    assert!(told("case").is_none() && !warned());
    read(3, "drying-room", 57.0);
    assert!(told("drying-room").is_none());
    // A reading that was voided was none.
    read(4, "case", 46.0);
    let void = json!({ "id": Uuid::from_u128(0x70dbf), "why": "the wrong place" });
    let path = format!("/api/steps/{}/void", Uuid::from_u128(0x70db4));
    caller.post(&path, &void).expect(201);
    assert!(told("case").is_none() && !warned());
}
