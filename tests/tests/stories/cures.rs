//! What proves a cure: the strength of the very lot, the salt that was weighed, all that went in before.

use super::corrections::{alike, corrects, happened, product};
use serde_json::{Value, json};
use stories::call::fresh_id;
use stories::day::{StepOfDay, Told};
use stories::labels::set;
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_cure_without_its_nitrite_is_not_proven
    salt_alone_is_proven_by_its_weight
    two_cures_on_one_piece_add_up
    a_cure_mix_and_a_brine_have_their_own_strength
    the_metal_on_the_bag_counts
    what_no_bag_can_hold_is_refused
    what_only_keeps_as_a_curing_salt_does_is_one
    ground_meat_is_cured_as_ground_whatever_the_step_is_called
    what_a_place_allows_stands_there
}

pub(crate) fn kitchen(engine: Engine) -> (House, Caller, String) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let cured = |code: &str, cure: Value| {
        product(
            &caller,
            code,
            json!({ "kind": "cured", "raw": true, "cure": cure }),
        );
    };
    cured(
        "bacon",
        json!({ "class": "bacon", "method": "dry", "nitrite": true }),
    );
    cured("loin", json!({ "class": "whole-muscle", "method": "dry" }));
    cured(
        "wet-ham",
        json!({ "class": "whole-muscle", "method": "equilibrium-brine", "heated": true }),
    );
    product(&caller, "mince", json!({ "kind": "mixed", "raw": true }));
    let salt = |code: &str, strength: Value| {
        product(
            &caller,
            code,
            json!({ "kind": "ingredient", "species": null, "storage": "ambient",
            "curing_salt": strength }),
        );
    };
    salt("no-1", json!({ "nitrite_percent": 6.25 }));
    salt("cure-mix", json!({}));
    salt("brine", json!({}));
    let more =
        json!({ "kind": "ingredient", "species": null, "storage": "ambient", "in_cure": "salt" });
    product(&caller, "sea-salt", more);
    let more =
        json!({ "kind": "ingredient", "species": null, "storage": "ambient", "in_cure": "sugar" });
    product(&caller, "cane-sugar", more);
    let pig = caller.half_pig("0608-17", 20_000);
    (house, caller, pig)
}

pub(crate) fn bag(caller: &Caller, id: &str, strength: Value) -> String {
    let bag = caller.receive("no-1").to("cooler").grams(1_000).id(id);
    bag.bought(json!({ "supplier": "PTS", "curing_salt": strength }))
        .made()
}

pub(crate) fn bought(caller: &Caller, product: &str) -> String {
    let bought = caller.receive(product).to("cooler").grams(5_000);
    bought.bought(json!({ "supplier": "PTS" })).made()
}

pub(crate) fn no_1(caller: &Caller) -> String {
    bag(caller, &fresh_id(), json!({ "nitrite_percent": 6.25 }))
}

pub(crate) fn cure(caller: &Caller, pig: &str, salts: &[(&str, f64)]) -> StepOfDay {
    let cure = caller.step("cure").of_grams(pig, 1_000);
    salts
        .iter()
        .fold(cure, |cure, (lot, grams)| cure.of_grams(lot, *grams))
}

pub(crate) fn stops(caller: &Caller, lot: &str) -> Vec<Value> {
    let stops = caller.lot(lot)["stops"].clone();
    let stops = stops.as_array().unwrap().iter();
    stops.map(|stop| stop["stop"].clone()).collect()
}

pub(crate) fn ppm(caller: &Caller, lot: &str) -> f64 {
    let cure = caller.lot(lot)["cure"].clone();
    cure["nitrite_ppm"]
        .as_f64()
        .unwrap_or_else(|| panic!("no nitrite: {cure}"))
}

fn a_cure_without_its_nitrite_is_not_proven(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let salt = bought(&caller, "sea-salt");
    let done = cure(&caller, &pig, &[(&salt, 25.0)])
        .into("bacon", 1_000)
        .done();
    let keys = done.body["warning_keys"].to_string();
    assert!(keys.contains("cure-deed-no-nitrite"), "{keys}");
    let bacon = done.code(0);
    assert_eq!(stops(&caller, &bacon), [json!("not-proven")]);
    assert_eq!(caller.verdict(&bacon), "hold");
    caller.sell(&bacon).refused(409, "lot");
    // What is made of it is no more proven.
    let cut = caller.step("cut").of_grams(&bacon, 500).into("bacon", 500);
    assert_eq!(stops(&caller, &cut.made()), [json!("not-proven")]);
    // A bag that is only called a cure may hold anything: its strength is asked for at the door.
    let called =
        json!({ "kind": "ingredient", "species": null, "storage": "ambient", "nature": "cure" });
    product(&caller, "pink-salt", called);
    let pink = caller.receive("pink-salt").to("cooler").grams(1_000);
    let unmarked = pink.bought(json!({ "supplier": "PTS" }));
    unmarked.ask().refused(422, "bought.curing_salt");
    let proven = cure(&caller, &pig, &[(&salt, 23.0), (&no_1(&caller), 2.5)]);
    let proven = proven.into("bacon", 1_000).made();
    assert_eq!(stops(&caller, &proven), Vec::<Value>::new());
    assert!((ppm(&caller, &proven) - 156.25).abs() < 0.001);
}

fn salt_alone_is_proven_by_its_weight(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let salt = bought(&caller, "sea-salt");
    let done = cure(&caller, &pig, &[(&salt, 27.5)])
        .into("loin", 1_000)
        .done();
    let loin = done.code(0);
    assert_eq!(stops(&caller, &loin), Vec::<Value>::new());
    let lot = caller.lot(&loin);
    assert_eq!(
        (&lot["cure"]["nitrite_ppm"], &lot["cure"]["salt_percent"]),
        (&json!(0), &json!(2.75))
    );
    let keys = done.body["warning_keys"].to_string();
    assert!(!keys.contains("caution"), "no curing salt went in: {keys}");
    let none = cure(&caller, &pig, &[]).into("loin", 1_000).made();
    assert_eq!(stops(&caller, &none), [json!("not-proven")]);
}

fn two_cures_on_one_piece_add_up(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let salt = no_1(&caller);
    let once = cure(&caller, &pig, &[(&salt, 2.0)])
        .into("bacon", 1_000)
        .made();
    assert!((ppm(&caller, &once) - 125.0).abs() < 0.001);
    // us-N14: 200 ppm in dry-cured bacon. The second dose alone would be 100.
    let twice = |grams: f64| cure(&caller, &once, &[(&salt, grams)]).into("bacon", 1_000);
    let refused = twice(1.6).refused(422, "inputs");
    assert!(
        refused.contains("225") && refused.contains("us-N14"),
        "{refused}"
    );
    let twice = twice(1.0).made();
    assert!((ppm(&caller, &twice) - 187.5).abs() < 0.001);
    // Cured trim brings its share into what is ground of it.
    let trim = caller
        .step("cut")
        .of_grams(&twice, 500)
        .into("pork-trim", 500);
    let trim = trim.made();
    product(
        &caller,
        "salami",
        json!({ "kind": "cured", "raw": true,
        "cure": { "class": "comminuted", "method": "comminuted" } }),
    );
    let grind = caller
        .step("grind")
        .of_grams(&trim, 400)
        .of_grams(&pig, 600);
    let grind = grind.of_grams(&salt, 1.0).into("salami", 1_000).made();
    assert!(
        (ppm(&caller, &grind) - (62.5 + 75.0)).abs() < 0.1,
        "{}",
        ppm(&caller, &grind)
    );
}

fn mixed(caller: &Caller, pig: &str, percent: f64) -> (String, Vec<String>) {
    let id = fresh_id();
    let bag = bag(caller, &id, json!({ "nitrite_percent": percent }));
    let (salt, sugar) = (bought(caller, "sea-salt"), bought(caller, "cane-sugar"));
    let mix = happened(caller.step("mix").of_grams(&bag, 100));
    let mix = mix.of_grams(&salt, 700).of_grams(&sugar, 200);
    let mix = mix.into("cure-mix", 990).made();
    let cured = happened(cure(caller, pig, &[(&mix, 25.0)]).into("bacon", 1_000)).made();
    (id, vec![mix, cured])
}

fn a_cure_mix_and_a_brine_have_their_own_strength(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let (receipt, lots) = mixed(&caller, &pig, 6.0);
    let read = |lot: &str, of: &str| {
        let readings = caller.lot(lot)["readings"].clone();
        let readings = readings.as_array().unwrap().clone();
        let of = readings
            .iter()
            .rev()
            .find(|reading| reading["quantity"] == of);
        of.map(|reading| reading["value"].as_f64().unwrap())
    };
    // What was spilt was spilt of all alike.
    assert_eq!(read(&lots[0], "nitrite-percent"), Some(0.6));
    assert_eq!(read(&lots[0], "cure-salt-percent"), Some(79.4));
    assert_eq!(read(&lots[0], "cure-sugar-percent"), Some(20.0));
    assert!((ppm(&caller, &lots[1]) - 150.0).abs() < 0.001);
    let list = caller.lot(&lots[1])["ingredients"]["en"].to_string();
    assert!(
        list.contains("sodium nitrite") && list.contains("cane-sugar"),
        "{list}"
    );
    // The strength of the bag, corrected, runs through the mix.
    let strong = json!({ "curing_salt": { "nitrite_percent": 6.25 } });
    corrects(caller.correct(&receipt).with("bought", strong));
    let (_other, second, its_pig) = kitchen(engine);
    let (_, its) = mixed(&second, &its_pig, 6.25);
    alike((&caller, &lots), (&second, &its));
    assert_eq!(ppm(&caller, &lots[1]), ppm(&second, &its[1]));
    assert!((ppm(&caller, &lots[1]) - 156.25).abs() < 0.001);
    let weak = json!({ "curing_salt": { "nitrite_percent": 0.6 } });
    corrects(caller.correct(&receipt).with("bought", weak));
    assert!((ppm(&caller, &lots[1]) - 15.0).abs() < 0.001);
    // A brine: 20 g of no. 1 and 180 g of salt in 1.8 kg of water; 400 g of it on a kilogram of meat.
    let (salt, no_1) = (bought(&caller, "sea-salt"), no_1(&caller));
    let brine = caller.step("mix").of_grams(&no_1, 20).of_grams(&salt, 180);
    let brine = brine.with("added", json!([{ "what": "water", "grams": 1_800 }]));
    let brine = brine.into("brine", 2_000).made();
    assert_eq!(read(&brine, "nitrite-percent"), Some(0.0625));
    assert_eq!(read(&brine, "cure-water-percent"), Some(90.0));
    let ham = cure(&caller, &pig, &[(&brine, 400.0)]).into("wet-ham", 1_050);
    let ham = ham.made();
    // On the meat and the water: 0.25 g in 1,360 g.
    assert!(
        (ppm(&caller, &ham) - 183.824).abs() < 0.01,
        "{}",
        ppm(&caller, &ham)
    );
}

fn the_metal_on_the_bag_counts(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    set(&caller, &[("profile", json!("eu"))]);
    let of = |metal: &str| {
        let strength = json!({ "nitrite_percent": 6, "nitrite_of": metal, "salt_percent": 50 });
        let bag = bag(&caller, &fresh_id(), strength);
        happened(cure(&caller, &pig, &[(&bag, 2.0)]).into("loin", 1_000)).made()
    };
    let (sodium, potassium) = (of("sodium"), of("potassium"));
    assert!((ppm(&caller, &sodium) - 120.0).abs() < 0.01);
    // 69 / 85.1 of it counts as sodium nitrite.
    assert!(
        (ppm(&caller, &potassium) - 97.29).abs() < 0.05,
        "{}",
        ppm(&caller, &potassium)
    );
    // Half of the bag is salt, and the rest is something else.
    let salt = caller.lot(&sodium)["cure"]["salt_percent"]
        .as_f64()
        .unwrap();
    assert!((salt - 0.1).abs() < 0.000_001, "{salt}");
}

fn what_no_bag_can_hold_is_refused(engine: Engine) {
    let (_house, caller, _pig) = kitchen(engine);
    let strengths = [
        json!({ "nitrite_percent": 6, "nitrate_percent": 4, "salt_percent": 91 }),
        json!({ "nitrite_percent": 60, "nitrate_percent": 41 }),
        json!({ "nitrite_percent": 0.0625 }),
    ];
    for strength in strengths {
        let bag = caller.receive("no-1").to("cooler").grams(1_000);
        let bag = bag.bought(json!({ "supplier": "PTS", "curing_salt": strength }));
        bag.refused(422, "bought.curing_salt");
    }
    // Stronger than any that is sold: it is told, or refused.
    let strong =
        json!({ "supplier": "PTS", "declares": { "strength": { "nitrite_percent": 12 } } });
    let bag = || {
        caller
            .receive("no-1")
            .to("cooler")
            .grams(1_000)
            .bought(strong.clone())
    };
    let refused = bag().ask().refused(422, "bought.declares.strength");
    assert_eq!(refused.body["may_be_told"], true);
    let told = bag().with("as_it_happened", true).note("it says so").made();
    assert_eq!(stops(&caller, &told), [json!("failed")]);
}

fn ground_meat_is_cured_as_ground_whatever_the_step_is_called(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let salt = no_1(&caller);
    let mince = caller
        .step("grind")
        .of_grams(&pig, 1_000)
        .into("mince", 1_000);
    let mince = mince.made();
    // 4 g are 250 ppm: well within what dry-cured muscle may have, and above 156 ppm of ground meat (us-N11).
    let of = |lot: &str| cure(&caller, lot, &[(&salt, 4.0)]).into("loin", 1_000);
    of(&mince).refused(422, "inputs");
    let whole = of(&pig).made();
    assert!((ppm(&caller, &whole) - 250.0).abs() < 0.001);
}

fn what_a_place_allows_stands_there(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let salt = no_1(&caller);
    let of = |grams: f64| cure(&caller, &pig, &[(&salt, grams)]).into("bacon", 1_000);
    let says = of(3.3).refused(422, "inputs");
    assert!(says.contains("us-N14"), "{says}");
}

fn what_only_keeps_as_a_curing_salt_does_is_one(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let more = json!({ "kind": "ingredient", "species": null, "storage": "ambient", "stable_as": "curing-salt" });
    product(&caller, "pink", more);
    let bag = |bought: Value| {
        caller
            .receive("pink")
            .to("cooler")
            .grams(1_000)
            .bought(bought)
    };
    // It is asked for at the door.
    bag(json!({ "supplier": "PTS" })).refused(422, "bought.curing_salt");
    let told = bag(json!({ "supplier": "PTS", "curing_salt": { "nitrite_percent": 6.25 } })).made();
    let cure = caller.step("cure").of_grams(&pig, 1_000).of_grams(&told, 2);
    let loin = cure.into("loin", 1_000).made();
    let read = caller.lot(&loin);
    assert_eq!(read["cure"]["nitrite_ppm"], 125);
    assert!(
        read["ingredients"]["en"]
            .to_string()
            .to_lowercase()
            .contains("nitrite"),
        "{read}"
    );
    // One that was mixed here of what nobody weighed is as little known.
    product(
        &caller,
        "rub",
        json!({ "kind": "ingredient", "species": null, "storage": "ambient",
        "stable_as": "curing-salt" }),
    );
    let pinch = caller
        .receive("salt")
        .to("cooler")
        .grams(500)
        .bought(json!({ "supplier": "PTS" }))
        .made();
    let rub = caller
        .step("mix")
        .of_grams(&pinch, 300)
        .into("rub", 300)
        .made();
    let cure = caller.step("cure").of_grams(&pig, 1_000).of_grams(&rub, 20);
    let done = cure.into("loin", 1_020).done();
    let keys = done.body["warning_keys"].to_string();
    assert!(keys.contains("cure-deed-strength-unknown"), "{keys}");
    let read = caller.lot(&done.code(0));
    assert_eq!(
        read["cure"],
        Value::Null,
        "no number is better than one too low"
    );
    assert!(read["stops"].to_string().contains("not-proven"), "{read}");
    assert!(
        read["ingredients"]["en"]
            .to_string()
            .to_lowercase()
            .contains("nitrite"),
        "{read}"
    );
}
