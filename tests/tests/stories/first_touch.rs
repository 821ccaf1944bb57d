//! What somebody meets who touches this for the first time: a cut that is parted, an act that a stop forbids, the
//! sentence of whoever phones, the days of a farm, a guest's own words.

use serde_json::json;
use stories::day::Told;
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_loin_is_parted_and_what_the_counter_does_not_sell_says_so
    the_likeliest_act_is_never_one_that_a_stop_forbids
    what_is_said_on_the_phone_finds_the_animal
    days_without_a_kill_never_read_as_clear
    a_guest_says_what_the_house_calls_it
    what_is_stopped_is_marked_in_the_list_of_lots
    the_first_farm_is_named_before_its_code_and_told_when_it_is_added
    a_side_says_as_what_each_cut_is_kept
    a_pot_offers_what_is_of_the_same_animal_and_is_never_sent_empty
    a_tub_that_nobody_knows_goes_back_to_nobody
}

/// Where the black button of a page leads.
fn first(page: &str) -> String {
    let (_, acts) = page.split_once("<nav class=\"acts\"").expect("acts");
    let (_, rest) = acts
        .split_once("class=\"act first\" href=\"")
        .expect("a first act");
    rest.split('"').next().unwrap_or_default().to_owned()
}

/// A loin that was just cut off a side.
fn loin(caller: &Caller) -> String {
    let side = caller.side_on_the_rail();
    let cut = caller.step("break-down").of_grams(&side, 6_000);
    cut.into("pork-loin", 6_000).made()
}

fn a_loin_is_parted_and_what_the_counter_does_not_sell_says_so(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let loin = loin(&caller);
    let own = caller.page(&format!("/lots/{loin}"));
    assert!(own.contains(&format!("/lots/{loin}/break-down")), "{own}");
    let bench = caller.page(&format!("/lots/{loin}/break-down"));
    assert!(bench.contains("data-kind=\"cut\""), "{bench}");
    assert!(bench.contains("data-cut=\"pork-chop\""), "{bench}");
    assert!(
        !bench.contains("class=\"side\""),
        "no picture of a whole side"
    );
    let pack = caller.page(&format!("/lots/{loin}/pack"));
    let choice = |code: &str| {
        let (_, rest) = pack
            .split_once(&format!("value=\"{code}\""))
            .expect("offered");
        rest.split("</label>").next().unwrap_or_default().to_owned()
    };
    assert!(!choice("pork-chop").contains("not sold at the counter"));
    assert!(choice("pork-loin").contains("not sold at the counter"));
    // Packed all the same, and scanned: why leads to why.
    let packed = caller.step("pack").of_grams(&loin, 1_000);
    let packed = packed.into_packs("pork-loin", 1_000, 4).made();
    let counter = caller.page(&format!("/counter?code={packed}/1"));
    let why = format!("/lots/{packed}?why=counter");
    assert!(counter.contains(&why), "{counter}");
    let why = caller.page(&why);
    assert!(why.contains("The counter does not sell this"), "{why}");
}

fn the_likeliest_act_is_never_one_that_a_stop_forbids(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let loin = loin(&caller);
    let own = |lot: &str| first(&caller.page(&format!("/lots/{lot}")));
    assert_eq!(own(&loin), format!("/lots/{loin}/pack"));
    let hold = json!({ "lots": [{ "lot": loin }], "why": "looks odd" });
    caller.deed("/api/holds", hold).expect(201);
    assert_eq!(own(&loin), format!("/lots/{loin}/count"));
}

fn what_is_said_on_the_phone_finds_the_animal(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let said = "the+pork+of+Brindlecombe+killed+at+the+start+of+June";
    let found = caller.page(&format!("/recall?q={said}"));
    let (_, rest) = found
        .split_once("class=\"act grand first\" href=\"")
        .expect("a choice");
    assert!(rest.starts_with("/recall?animal="), "{rest}");
    let (shown, _) = rest.split_once("</a>").expect("its end");
    assert!(shown.contains("Brindlecombe"), "{shown}");
    assert!(
        found.contains("Left out: the of killed at start"),
        "{found}"
    );
    // One of the words alone is no worse than before.
    let found = caller.page("/recall?q=17+of+Brindlecombe");
    assert!(found.contains("0608-17"), "{found}");
}

fn days_without_a_kill_never_read_as_clear(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let days = caller.page("/recall?farm=BRC&from=2026-06-01&last=2026-06-05");
    assert!(days.contains("does not say that none is here"), "{days}");
    assert!(
        days.contains("/recall?farm=BRC&amp;from=2026-06-08&amp;last=2026-06-08")
            || days.contains("/recall?farm=BRC&#38;from=2026-06-08&#38;last=2026-06-08"),
        "{days}"
    );
    assert!(!days.contains("Never given out"), "{days}");
    let none = caller.page("/recall?product=pork-chop&from=2020-06-01&last=2020-06-05");
    assert!(none.contains("does not say that none is here"), "{none}");
    // What is open stands first on Today, until it is closed.
    let body = json!({ "told_by": "Lise", "hazard": "pathogen", "hold": true, "why": "x",
        "scope": { "start": [{ "farm": "BRC", "killed_from": "2026-06-08", "killed_until": "2026-06-09" }],
        "spreads": "lineage" } });
    let begun = caller.deed("/api/incidents", body).expect(201);
    let number = begun.body["number"].as_str().expect("a number").to_owned();
    let hands = caller.read("/api/today")["hands"].clone();
    assert_eq!(hands[0]["sort"], "recall", "{hands}");
    assert!(hands[0]["says"].to_string().contains(&number), "{hands}");
    let today = caller.page("/");
    assert!(
        today.contains(&format!("/recall/{number}/count")),
        "{today}"
    );
}

fn a_guest_says_what_the_house_calls_it(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let told = caller.page("/ask?q=is+there+alcohol+in+the+ham%3F");
    assert!(!told.contains("Nobody here has a word"), "{told}");
    let lines = told
        .split("<div class=\"answers\">")
        .nth(1)
        .expect("answers");
    let lines = lines.split("<form").next().unwrap_or_default();
    let names = lines
        .split("<b>")
        .skip(1)
        .filter_map(|rest| rest.split("</b>").next());
    let names: Vec<&str> = names
        .filter(|name| lines.contains(&format!("\"><b>{name}")))
        .collect();
    assert!(
        names.iter().all(|name| name.to_lowercase().contains("ham")),
        "{names:?}"
    );
    // What hurts comes first.
    let at = |told: &str| {
        lines
            .find(&format!("data-told=\"{told}\""))
            .expect("a group")
    };
    assert!(at("yes") < at("not-known") && at("not-known") < at("no"));
    let which = caller.page("/ask?q=terrine");
    assert!(which.contains("You mean: "), "{which}");
}

fn what_is_stopped_is_marked_in_the_list_of_lots(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let belly = "/lots?product=pork-belly&limit=200";
    let marks = |page: &str| page.matches("On hold</strong>").count();
    let before = marks(&caller.page(belly));
    let side = caller.side_on_the_rail();
    let cut = caller.step("break-down").of_grams(&side, 6_000);
    let lot = cut.into("pork-belly", 6_000).made();
    let hold = json!({ "lots": [{ "lot": lot }], "why": "its colour" });
    caller.deed("/api/holds", hold.clone()).expect(201);
    let held = caller.page(belly);
    assert_eq!(marks(&held), before + 1, "{held}");
    let marked = format!("On hold</strong> <a href=\"/lots/{lot}\"");
    assert!(held.contains(&marked), "{held}");
    // Let go, it is one of the others again.
    caller.deed("/api/hold-releases", hold).expect(201);
    assert_eq!(marks(&caller.page(belly)), before);
}

fn the_first_farm_is_named_before_its_code_and_told_when_it_is_added(engine: Engine) {
    let house = House::empty(engine);
    let caller = house.caller();
    let kitchen = caller.page("/set-up/kitchen");
    assert!(kitchen.contains("data-code-of=\"name\""), "{kitchen}");
    for path in ["/set-up/animal", "/lists/farms/new"] {
        let page = caller.page(path);
        let at = |name: &str| page.find(&format!("name=\"{name}\"")).expect("a field");
        assert!(at("name") < at("code"), "{page}");
        assert!(page.contains("data-code-of=\"name\""), "{page}");
        assert!(!page.contains("is added."), "{page}");
    }
    let farm = json!({ "code": "WBF", "name": "Willow Bend Farm" });
    caller.post("/api/farms", &farm).expect(201);
    let page = caller.page("/set-up/animal");
    assert!(page.contains("<b>Willow Bend Farm</b> is added."), "{page}");
    assert!(page.contains("May wait"), "{page}");
    // What labels begin with is not proposed again where it stands already.
    let kept = caller.page("/lists/farms/WBF");
    assert!(!kept.contains("data-code-of"), "{kept}");
}

fn a_side_says_as_what_each_cut_is_kept(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let side = caller.side_on_the_rail();
    let page = caller.page(&format!("/lots/{side}/break-down"));
    assert!(page.contains("data-full=\"belly, skin on\""), "{page}");
    let row = "<span>belly, skin on</span><span>kept as: Pork belly, skinless</span>";
    assert!(page.contains(row), "{page}");
}

fn a_pot_offers_what_is_of_the_same_animal_and_is_never_sent_empty(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let loin = loin(&caller);
    let page = caller.page(&format!("/make/cook?lot={loin}"));
    let (first, others) = page.split_once("<details>").expect("something else");
    assert!(first.contains("product=pulled-pork&"), "{page}");
    assert!(!first.contains("product=goat-curry"), "{page}");
    assert!(others.contains("product=goat-curry"), "{page}");
    let pot = caller.page(&format!("/make/cook?product=pulled-pork&lot={loin}"));
    assert!(pot.contains("data-nothing=\"Nothing goes in yet"), "{pot}");
    // What was brought is in, though no recipe names it.
    let ticked = format!("value=\"{loin}\" checked");
    assert!(pot.contains(&ticked), "{pot}");
}

fn a_tub_that_nobody_knows_goes_back_to_nobody(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let stops = caller.read("/api/stops");
    let stops = stops["stops"].as_array().expect("stops");
    let tub = stops.iter().find(|stop| stop["stop"] == "unknown-history");
    let tub = tub.expect("a tub")["lot"].as_str().expect("its lot");
    let page = caller.page(&format!("/lots/{tub}"));
    assert_eq!(first(&page), format!("/lots/{tub}/discard"));
}
