//! What somebody reads in the units and the words of their own kitchen: pounds, degrees Fahrenheit and inches in the
//! United States, the cuts of Canada in Canada; and what a page says before the kitchen has a name.

use super::french::read;
use serde_json::json;
use stories::call::chrono_day;
use stories::day::{Told, bought, farm};
use stories::labels::{save, set, words};
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_tag_has_the_degrees_that_the_kitchen_reads
    pounds_are_written_as_the_scale_shows_them
    paper_and_the_knife_are_in_inches_beside_pounds
    a_cut_is_called_as_the_place_calls_it
    a_rule_of_one_province_says_whose_it_is
    nothing_of_a_new_kitchen_is_called_in_english_to_who_reads_french
    a_pin_is_hidden_while_it_is_typed
    a_short_name_of_ones_own_is_folded_away
}

const AMERICAN: [(&str, &str); 2] = [("weights", "pounds"), ("temperatures", "fahrenheit")];

fn american(caller: &Caller) {
    set(caller, &AMERICAN.map(|(field, word)| (field, json!(word))));
}

fn a_tag_has_the_degrees_that_the_kitchen_reads(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let side = |carcass: &str, readings| {
        let animal = farm("BRC").killed(chrono_day(-2)).carcass(carcass);
        let pig = caller.receive("pig-half").grams(45_000);
        let pig = pig.from(animal.side("left")).with("readings", readings);
        pig.made()
    };
    let fahrenheit = side("0231", json!({ "fahrenheit": 38 }));
    let celsius = side("0232", json!({ "celsius": 3.3 }));
    let tag = |lot: &str| {
        let path = format!("/api/lots/{lot}/labels.pdf?packs=1&template=receiving");
        let pdf = caller.get(&path).expect(200).bytes;
        words(&save(house.folder(), "tag.pdf", &pdf))
    };
    let metric = tag(&fahrenheit);
    assert!(metric.contains("3.3 °C (38 °F)"), "{metric}");
    american(&caller);
    let own = tag(&fahrenheit);
    assert!(own.contains("38 °F") && !own.contains("°C"), "{own}");
    // A printed tag has pounds and ounces, as it always had.
    assert!(own.contains("99 lb 3.3 oz"), "{own}");
    let other = tag(&celsius);
    assert!(other.contains("37.9 °F (3.3 °C)"), "{other}");
}

fn pounds_are_written_as_the_scale_shows_them(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    american(&caller);
    let side = caller.side_on_the_rail();
    let page = caller.page(&format!("/lots/{side}"));
    assert!(page.contains("99.21\u{a0}lb"), "{page}");
    let bench = caller.page(&format!("/lots/{side}/break-down"));
    assert!(bench.contains("99.21\u{a0}lb"), "{bench}");
    assert!(
        !bench.contains("lb\u{a0}"),
        "no ounces after pounds: {bench}"
    );
    // In the United States a clock has twelve hours, and no script writes another.
    assert!(bench.contains("data-clock=\"h12\""), "{bench}");
    let today = caller.page("/");
    assert!(
        today.contains("10:4") && today.contains("\u{a0}am"),
        "{today}"
    );
    assert!(!read(&house, &caller, "/", "fr").contains("\u{a0}am"));
}

fn paper_and_the_knife_are_in_inches_beside_pounds(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let side = caller.side_on_the_rail();
    let bench = format!("/lots/{side}/break-down");
    let knife = caller.page(&bench);
    assert!(knife.contains("Across the leg 4 to 9 cm"), "{knife}");
    let paper = caller.page("/set-up/printer");
    assert!(paper.contains("102 x 76 or 102 x 152 mm"), "{paper}");
    american(&caller);
    let knife = caller.page(&bench);
    assert!(knife.contains("Across the leg 1½ to 3½ in"), "{knife}");
    let paper = caller.page("/set-up/printer");
    let told = "4 x 3 in (102 x 76 mm) or 4 x 6 in (102 x 152 mm)";
    assert!(paper.contains(told), "{paper}");
}

fn a_cut_is_called_as_the_place_calls_it(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let side = caller.side_on_the_rail();
    let bench = || read(&house, &caller, &format!("/lots/{side}/break-down"), "fr");
    let cuts = ["Poitrine", "Travers", "Échine"].map(|cut| format!("<tspan class=\"w\"> {cut}"));
    let in_canada =
        ["Flanc", "Côtes levées", "Soc"].map(|cut| format!("<tspan class=\"w\"> {cut}"));
    let has = |page: &str, cuts: &[String]| cuts.iter().all(|cut| page.contains(cut));
    let page = bench();
    assert!(has(&page, &cuts), "{page}");
    set(&caller, &[("profile", json!("ca"))]);
    let page = bench();
    assert!(has(&page, &in_canada), "{page}");
    assert!(
        page.contains("Levées du flanc d’une seule feuille"),
        "{page}"
    );
    assert!(!page.contains("échine"), "{page}");
    // What is usual says why behind a fold, in words and not by a row alone.
    assert!(page.contains("data-usual-why"), "{page}");
    assert!(
        page.contains("data-source=\"Ce qui est plausible"),
        "{page}"
    );
}

fn a_rule_of_one_province_says_whose_it_is(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    set(&caller, &[("profile", json!("ca"))]);
    let chop = caller.receive("pork-chop").grams(1_000);
    chop.bought(bought("PTS", "26160")).to("cooler").made();
    let read = caller.deed("/api/readings", json!({ "place": "cooler", "celsius": 8 }));
    let told = read.expect(201).body["warnings"].to_string();
    assert!(told.contains("in Ontario: canada-eu-uk-7.4"), "{told}");
}

fn nothing_of_a_new_kitchen_is_called_in_english_to_who_reads_french(engine: Engine) {
    let house = House::empty(engine);
    let caller = house.caller();
    let french = |path: &str| read(&house, &caller, path, "fr");
    for path in ["/sign-in", "/people", "/set-up/people", "/set-up/kitchen"] {
        let page = french(path);
        assert!(page.contains("Responsable"), "{path}: {page}");
        assert!(!page.contains("Manager<"), "{path}: {page}");
    }
    let today = french("/");
    assert!(!today.contains("Kitchen."), "{today}");
    assert!(caller.page("/sign-in").contains("Manager"));
    // How many are on the starter list and will be added reads as a sentence.
    let starters = french("/starters");
    let counted = "en tout, <span data-count>0</span>&nbsp;à ajouter";
    assert!(starters.contains(counted), "{starters}");
}

fn a_pin_is_hidden_while_it_is_typed(engine: Engine) {
    let house = House::empty(engine);
    let caller = house.caller();
    for path in ["/people", "/set-up/people"] {
        let page = caller.page(path);
        let hidden = "name=\"pin\" type=\"password\"";
        assert!(page.contains(hidden), "{path}: {page}");
        assert!(page.contains("data-reveals=\"pin\""), "{path}: {page}");
    }
}

fn a_short_name_of_ones_own_is_folded_away(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let page = caller.page("/lists/suppliers/new");
    let at = |text: &str| page.find(text).unwrap_or_else(|| panic!("{text}: {page}"));
    let folded = at("<details class=\"part\"><summary>Short name, if you want your own");
    assert!(at("name=\"name\"") < folded && folded < at("name=\"code\""));
    assert!(!page.contains("How scripts and addresses"), "{page}");
}
