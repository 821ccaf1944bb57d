//! A label says only what the record proves: raw, treated or ready by what happened, and dates that never
//! grow, over HTTP.

use serde_json::{Value, json};
use stories::call::{chrono_day, moment};
use stories::day::{StepOfDay, Told, bought, farm};
use stories::labels::set;
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_cook_without_a_record_proves_nothing
    what_is_made_of_it_inherits_that_and_a_proven_cook_ends_it
    what_is_half_cooked_is_sold_as_raw_in_nothing
    a_person_lets_it_go_by_name_and_a_void_takes_that_back
    bought_food_of_animals_needs_its_packs_own_word
    reheating_and_mixing_give_no_day
    freezing_saves_nothing_and_a_second_freeze_adds_no_day
    the_days_count_in_their_true_order
    a_makers_date_is_never_outlived
    what_comes_out_of_a_whole_pack_has_the_day_of_an_open_one
    what_keeps_by_nature_is_a_closed_list
    a_house_may_let_ready_food_keep_its_day_in_the_pot
}

fn product(caller: &Caller, code: &str, more: Value) {
    let mut body = json!({ "code": code, "names": { "en": code }, "kind": "cooked", "species": "pig", "raw": false,
        "storage": "chilled", "for_sale": true, "price_minor_per_kg": 100,
        "keep": { "days": 5, "from": "made", "day_one_counts": true } });
    for (key, value) in more.as_object().expect("fields") {
        body[key] = value.clone();
    }
    caller.post("/api/products", &body).expect(201);
}

fn kitchen(engine: Engine) -> (House, Caller, String) {
    let house = House::furnished(engine);
    let caller = house.caller();
    product(&caller, "stew", json!({}));
    product(
        &caller,
        "salad",
        json!({ "keep": { "days": 7, "from": "made", "day_one_counts": true } }),
    );
    let animal = farm("BRC").carcass("0608-17").side("left");
    let pig = caller.receive("pig-half").grams(20_000);
    let pig = pig.from(animal.killed(chrono_day(-8)));
    let pig = pig.at(moment(-7 * 24 * 60 + 60)).made();
    (house, caller, pig)
}

fn stewed(caller: &Caller, lot: &str) -> StepOfDay {
    let step = caller.step("cook").of_grams(lot, 1_000);
    step.into("stew", 1_000)
}

/// What a lot is, and by what.
fn condition(caller: &Caller, lot: &str) -> (String, String) {
    let of = caller.lot(lot)["condition"].clone();
    let word = |key: &str| of[key].as_str().expect("a word").to_owned();
    assert!(
        !of["because"].as_array().expect("a chain").is_empty(),
        "{of}"
    );
    (word("is"), word("by"))
}

fn is(caller: &Caller, lot: &str, what: &str, by: &str) {
    assert_eq!(condition(caller, lot), (what.to_owned(), by.to_owned()));
}

fn stops(caller: &Caller, lot: &str) -> Vec<String> {
    let stops = caller.lot(lot)["stops"].clone();
    let of = |stop: &Value| stop["stop"].as_str().expect("a word").to_owned();
    stops.as_array().expect("stops").iter().map(of).collect()
}

fn a_cook_without_a_record_proves_nothing(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let lot = stewed(&caller, &pig).made();
    is(&caller, &lot, "treated", "nothing");
    assert_eq!(stops(&caller, &lot), ["not-proven"]);
    assert_eq!(caller.verdict(&lot), "hold");
    caller.sell(&lot).refused(409, "lot");
    caller.serve(&lot).refused(409, "lot");
    caller
        .get(&format!("/api/lots/{lot}/labels.pdf"))
        .refused(409, None);
    let listed = caller.read("/api/stops")["stops"].to_string();
    assert!(listed.contains(&lot), "{listed}");
    let page = caller.get(&format!("/lots/{lot}")).expect(200);
    let page = String::from_utf8_lossy(&page.bytes).into_owned();
    assert!(page.contains("Not proven ready to eat"), "{page}");
    let proven = stewed(&caller, &pig).held(75.0, 5).made();
    is(&caller, &proven, "ready", "heat");
    assert!(stops(&caller, &proven).is_empty());
    assert_eq!(caller.verdict(&proven), "sell");
}

fn what_is_made_of_it_inherits_that_and_a_proven_cook_ends_it(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let unproven = stewed(&caller, &pig).made();
    let proven = stewed(&caller, &pig).held(75.0, 5).made();
    let mix = caller
        .step("mix")
        .of_grams(&unproven, 400)
        .of_grams(&proven, 400);
    let salad = mix.into("salad", 800).made();
    is(&caller, &salad, "treated", "nothing");
    assert_eq!(stops(&caller, &salad), ["not-proven"]);
    let again = caller.step("cook").of_grams(&salad, 800);
    let cooked = again.into("stew", 780).held(75.0, 5).made();
    is(&caller, &cooked, "ready", "heat");
    assert_eq!(caller.verdict(&cooked), "sell");
    let packed = caller
        .step("pack")
        .of_grams(&cooked, 500)
        .into_packs("stew", 500, 2);
    is(&caller, &packed.made(), "ready", "parts");
}

fn what_is_half_cooked_is_sold_as_raw_in_nothing(engine: Engine) {
    let (house, caller, pig) = kitchen(engine);
    product(&caller, "links", json!({ "kind": "mixed", "raw": true }));
    let half = stewed(&caller, &pig).made();
    let proven = stewed(&caller, &pig).held(75.0, 5).made();
    let links = |kind: &str, meat: &str| {
        let step = caller.step(kind).of_grams(meat, 100);
        step.of_grams(&pig, 400).into("links", 500).made()
    };
    assert_eq!(caller.verdict(&links("grind", &proven)), "sell");
    // Of the grinder and the bowl, and what is packed of it; also what comes straight out of the pan.
    let mixed = links("mix", &half);
    let packed = caller.step("pack").of_grams(&mixed, 300);
    let packed = packed.into_packs("links", 300, 1).made();
    let seared = || caller.step("cook").of_grams(&pig, 300).into("links", 300);
    let told = seared().held(48.0, 5).done().body;
    let warned = told["warnings"].to_string();
    assert!(warned.contains("partly cooked"), "{warned}");
    let short = told["lots"][0]["code"].as_str().expect("a code").to_owned();
    let unread = seared().made();
    for lot in [&links("grind", &half), &mixed, &packed, &short, &unread] {
        assert_eq!(stops(&caller, lot), ["not-proven"], "{lot}");
        assert_eq!(caller.verdict(lot), "hold");
        caller.sell(lot).refused(409, "lot");
    }
    let says = caller.lot(&mixed)["stops"][0]["says"].clone();
    assert!(says.to_string().contains("partly cooked"), "{says}");
    // What is listed as raw and was cooked through is sold, by the days of raw food, and makes nothing ready.
    let through = seared().held(75.0, 5).made();
    is(&caller, &through, "treated", "heat");
    assert_eq!(caller.verdict(&through), "sell");
    assert_eq!(caller.verdict(&links("mix", &through)), "sell");
    let stew = caller.step("pack").of_grams(&through, 50);
    assert_eq!(
        stops(&caller, &stew.into("stew", 50).made()),
        ["not-proven"]
    );
    // Cooked once more it is ready, and keeps its day.
    let again = caller.step("cook").of_grams(&through, 50);
    let again = again.into("stew", 50).held(75.0, 5).made();
    is(&caller, &again, "ready", "heat");
    let use_by = |lot: &str| caller.lot(lot)["packs"][0]["use_by"].clone();
    assert_eq!(use_by(&again), use_by(&through));
    // Heat that proves it ends that.
    let cooked = caller.step("cook").of_grams(&mixed, 200);
    let cooked = cooked.into("stew", 200).held(75.0, 5).made();
    is(&caller, &cooked, "ready", "heat");
    assert_eq!(caller.verdict(&cooked), "sell");
    house.check();
}

fn a_person_lets_it_go_by_name_and_a_void_takes_that_back(engine: Engine) {
    let (house, caller, pig) = kitchen(engine);
    let lot = stewed(&caller, &pig).made();
    let body = json!({ "lot": lot, "what": "released", "why": "I stood beside it: it boiled for an hour" });
    let deed = caller.deed("/api/dispositions", body).expect(201);
    is(&caller, &lot, "ready", "person");
    assert_eq!(caller.verdict(&lot), "sell");
    let id = deed.body["id"].as_str().expect("an id").to_owned();
    caller.void(&id).done();
    is(&caller, &lot, "treated", "nothing");
    assert_eq!(caller.verdict(&lot), "hold");
    house.check();
}

fn bought_food_of_animals_needs_its_packs_own_word(engine: Engine) {
    let (_house, caller, _) = kitchen(engine);
    let ham = |declares: Value| {
        let mut of = bought("PTS", "26160-207");
        of["use_by"] = json!(chrono_day(20));
        of["declares"] = declares;
        caller.receive("stew").grams(1_000).bought(of).made()
    };
    let silent = ham(Value::Null);
    is(&caller, &silent, "treated", "nothing");
    assert_eq!(caller.verdict(&silent), "hold");
    let declared = ham(json!({ "allergens": [], "ready": true }));
    is(&caller, &declared, "ready", "declared");
    assert_eq!(caller.verdict(&declared), "sell");
    is(&caller, &ham(json!({ "ready": false })), "raw", "nothing");
}

fn last_day(caller: &Caller, lot: &str) -> String {
    let read = caller.lot(lot);
    let day = read["packs"][0]["use_by"].as_str();
    day.unwrap_or("none").to_owned()
}

fn reheating_and_mixing_give_no_day(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let old = stewed(&caller, &pig)
        .held(75.0, 5)
        .at(moment(-3 * 24 * 60))
        .made();
    let its_day = chrono_day(1);
    assert_eq!(last_day(&caller, &old), its_day);
    let reheated = caller.step("cook").of_grams(&old, 300).into("stew", 300);
    assert_eq!(last_day(&caller, &reheated.held(80.0, 10).made()), its_day);
    let mixed = caller.step("mix").of_grams(&old, 300).into("salad", 300);
    assert_eq!(last_day(&caller, &mixed.made()), its_day);
    let fresh = stewed(&caller, &pig).of_grams(&old, 300);
    let fresh = fresh.held(75.0, 5).made();
    assert_eq!(
        last_day(&caller, &fresh),
        chrono_day(4),
        "cooked anew with raw meat, in its day"
    );
}

fn freezing_saves_nothing_and_a_second_freeze_adds_no_day(engine: Engine) {
    let (house, caller, pig) = kitchen(engine);
    let days_ago = |days: i64| moment(-days * 24 * 60);
    let old = stewed(&caller, &pig).held(75.0, 5).at(days_ago(6)).made();
    let past = last_day(&caller, &old);
    caller.carry(&old, "freezer").frozen().done();
    assert_eq!(caller.verdict(&old), "pull");
    caller.carry(&old, "cooler").with("state", "chilled").done();
    assert_eq!(last_day(&caller, &old), past);
    // On its last day into the cold, out again: that one day. A second time: none.
    let last = stewed(&caller, &pig).held(75.0, 5).at(days_ago(6)).made();
    let freeze = |days: i64| {
        caller
            .carry(&last, "freezer")
            .frozen()
            .at(days_ago(days))
            .done()
    };
    let thaw = |days: i64| {
        let thawed = caller.carry(&last, "cooler").with("state", "chilled");
        thawed.at(days_ago(days)).done();
    };
    freeze(2);
    thaw(1);
    assert_eq!(last_day(&caller, &last), chrono_day(-1));
    freeze(1);
    caller
        .carry(&last, "cooler")
        .with("state", "chilled")
        .done();
    assert_eq!(last_day(&caller, &last), chrono_day(-1));
    house.check();
}

fn the_days_count_in_their_true_order(engine: Engine) {
    let (house, caller, pig) = kitchen(engine);
    let days_ago = |days: i64| moment(-days * 24 * 60);
    let made = || stewed(&caller, &pig).held(75.0, 5).at(days_ago(4)).made();
    let (one, other) = (made(), made());
    let freeze = |lot: &str| caller.carry(lot, "freezer").frozen().at(days_ago(3)).done();
    let thaw = |lot: &str| {
        let thawed = caller.carry(lot, "cooler").with("state", "chilled");
        thawed.at(days_ago(1)).done();
    };
    freeze(&one);
    thaw(&one);
    // The thaw is entered first.
    thaw(&other);
    freeze(&other);
    assert_eq!(last_day(&caller, &one), last_day(&caller, &other));
    assert_eq!(caller.lot(&other)["packs"][0]["state"], "chilled");
    house.check();
}

fn a_makers_date_is_never_outlived(engine: Engine) {
    let (_house, caller, _) = kitchen(engine);
    product(
        &caller,
        "frozen-stew",
        json!({ "storage": "frozen", "keep": { "days": 3, "from": "thawed", "day_one_counts": true } }),
    );
    let of = |day: i64| {
        let mut of = bought("PTS", "26160-208");
        of["use_by"] = json!(chrono_day(day));
        of["declares"] = json!({ "allergens": [], "ready": true, "use_by_is": "frozen" });
        caller
            .receive("frozen-stew")
            .grams(1_000)
            .bought(of)
            .to("freezer")
            .made()
    };
    let (long, short) = (of(300), of(1));
    for lot in [&long, &short] {
        caller.carry(lot, "cooler").with("state", "chilled").done();
    }
    assert_eq!(last_day(&caller, &long), chrono_day(2));
    assert_eq!(last_day(&caller, &short), chrono_day(1));
    // Without days of its own once thawed it has none: the maker's day is for the frozen food.
    let undated = json!({ "storage": "frozen", "keep": Value::Null });
    product(&caller, "undated-stew", undated);
    let mut of = bought("PTS", "26160-209");
    of["use_by"] = json!(chrono_day(300));
    of["declares"] = json!({ "allergens": [], "ready": true, "use_by_is": "frozen" });
    let undated = caller.receive("undated-stew").grams(1_000).bought(of);
    let undated = undated.to("freezer").made();
    caller
        .carry(&undated, "cooler")
        .with("state", "chilled")
        .done();
    assert_eq!(last_day(&caller, &undated), "none");
    assert_eq!(stops(&caller, &undated), ["not-proven"]);
}

fn what_comes_out_of_a_whole_pack_has_the_day_of_an_open_one(engine: Engine) {
    let (house, caller, _) = kitchen(engine);
    let mut of = bought("PTS", "26160-210");
    of["use_by"] = json!(chrono_day(20));
    of["declares"] = json!({ "allergens": [], "ready": true, "days_once_opened": 2 });
    let ham = caller.receive("stew").grams(1_000).bought(of).made();
    let salad = || {
        caller
            .step("mix")
            .of_grams(&ham, 300)
            .into("salad", 300)
            .made()
    };
    let (first, second) = (salad(), salad());
    let opened = chrono_day(1);
    for lot in [&ham, &first, &second] {
        assert_eq!(last_day(&caller, lot), opened, "today is the first of two");
    }
    house.check();
}

fn what_keeps_by_nature_is_a_closed_list(engine: Engine) {
    let (_house, caller, _) = kitchen(engine);
    let dry = |code: &str, more: Value| {
        let mut body = json!({ "code": code, "names": { "en": code }, "kind": "ingredient", "raw": false,
            "storage": "ambient", "for_sale": true, "price_minor_per_kg": 100 });
        for (key, value) in more.as_object().expect("fields") {
            body[key] = value.clone();
        }
        caller.post("/api/products", &body).expect(201);
        caller.receive(code).grams(1_000).bought(bought("PTS", "1"))
    };
    let honey = dry("honey", json!({ "stable_as": "honey" })).made();
    assert_eq!(caller.verdict(&honey), "sell");
    let sauce = dry("sauce", json!({ "controlled": false }));
    let unmeasured = sauce.clone().made();
    assert_eq!(stops(&caller, &unmeasured), ["not-proven"]);
    let measured = sauce.with("readings", json!({ "ph": 3.5 })).made();
    assert_eq!(caller.verdict(&measured), "sell");
    // A reading that comes later shows it as well.
    caller.measure(&unmeasured).with("ph", 3.5).done();
    assert_eq!(caller.verdict(&unmeasured), "sell");
    assert_eq!(
        caller.lot(&unmeasured)["condition"]["stable_by"],
        "readings"
    );
}

fn a_house_may_let_ready_food_keep_its_day_in_the_pot(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let (two, now) = (moment(-2 * 24 * 60), moment(0));
    let earlier = stewed(&caller, &pig).held(80.0, 10).at(two).made();
    let day = |lot: &str| caller.lot(lot)["use_by"].clone();
    let pot = || {
        let step = caller
            .step("cook")
            .of_grams(&pig, 500)
            .of_grams(&earlier, 100);
        step.into("stew", 600).held(80.0, 10).at(now.clone()).made()
    };
    // What was ready goes through the same kill, and begins anew with the raw.
    let anew = pot();
    let fresh = day(&anew);
    assert_ne!(fresh, day(&earlier));
    set(&caller, &[("ready_keeps_its_day", json!(true))]);
    let kept = pot();
    assert_eq!(day(&kept), day(&earlier));
    assert_eq!(caller.lot(&kept)["condition"]["is"], "ready");
    let why = caller.why(&kept)["because"]["date"].to_string();
    assert!(why.contains("keeps its own day"), "{why}");
    // Raw food alone begins anew all the same.
    let raw = stewed(&caller, &pig).held(80.0, 10).at(now.clone()).made();
    assert_eq!(day(&raw), fresh);
}
