//! Deeds that undo, correct and count, and what the record shows of them afterwards.

use serde_json::{Value, json};
use stories::call::{chrono_day, fresh_id, moment};
use stories::day::{Told, bought, farm};
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_mistake_is_voided_and_stays_visible
    what_was_used_stands_in_the_way
    a_voided_lot_stays_void_when_its_move_is_voided
    a_wrong_farm_is_corrected_after_use
    two_sides_are_one_animal
    one_animal_keeps_its_series_and_a_mix_does_not
    frozen_days_wait
    a_ham_dries_and_keeps_its_lot
    what_dries_off_makes_the_rest_dearer
    a_carton_tells_of_itself
    an_earlier_time_is_late
    the_lists_change_by_version
    a_sold_pack_that_is_counted_is_told
}

fn split(caller: &Caller, lot: &str, grams: &[u64]) -> Vec<String> {
    let step = grams
        .iter()
        .fold(caller.step("break-down").of(lot), |step, grams| {
            step.into("pork-trim", *grams)
        });
    let done = step.done();
    (0..grams.len()).map(|nth| done.code(nth)).collect()
}

fn length(list: &Value) -> usize {
    list.as_array().expect("a list").len()
}

fn a_mistake_is_voided_and_stays_visible(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("0608-17", 10_000);
    let cut = caller.step("cut").of_grams(&pig, 4_000);
    let cut = cut.into("pork-chop", 3_900);
    let (id, void) = (fresh_id(), fresh_id());
    let made = cut.clone().id(&id).made();
    let voided = caller.void(&id).id(&void).why("weighed the wrong piece");
    voided.clone().done();
    voided.ask().expect(200);
    let lot = caller.lot(&pig);
    assert_eq!(lot["on_hand_grams"], 10_000);
    let mut steps = lot["steps"].as_array().unwrap().iter();
    assert!(steps.any(|step| step["voided"] == true));
    assert_eq!(caller.verdict(&made), "pull");
    let read = caller.deed_on_record(&id);
    assert_eq!(read["voided"]["why"], "weighed the wrong piece");
    caller.serve(&made).refused(409, "lot");
    caller.void(&id).refused(409, None);
    caller.void(&void).refused(409, None);
    assert_ne!(cut.made(), made, "the code stays taken");
}

fn what_was_used_stands_in_the_way(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("0608-17", 10_000);
    let (id, sold, served) = (fresh_id(), fresh_id(), fresh_id());
    let chops = caller.step("cut").of(&pig).into("pork-chop", 3_900);
    let chops = chops.id(&id).made();
    caller.sell(&chops).grams(200).id(&sold).done();
    caller.serve(&chops).grams(200).id(&served).done();
    let refused = caller.void(&id).ask().refused(409, None);
    let in_the_way = refused.body["in_the_way"].as_array().unwrap().iter();
    let in_the_way: Vec<&str> = in_the_way
        .map(|deed| deed["id"].as_str().unwrap())
        .collect();
    assert_eq!(in_the_way, [served.as_str(), sold.as_str()], "newest first");
    for deed in [&served, &sold, &id] {
        caller.void(deed).done();
    }
    assert_eq!(caller.lot(&pig)["on_hand_grams"], 10_000);
}

fn a_voided_lot_stays_void_when_its_move_is_voided(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("0608-17", 10_000);
    let (cut, moved) = (fresh_id(), fresh_id());
    let chops = caller.step("cut").of(&pig).into("pork-chop", 3_900);
    let chops = chops.id(&cut).made();
    caller.carry(&chops, "cooler").id(&moved).done();
    for deed in [&cut, &moved] {
        caller.void(deed).done();
    }
    let lot = caller.lot(&chops);
    assert_eq!(
        (&lot["on_hand_grams"], &lot["packs"][0]["is"]),
        (&json!(0), &json!("void"))
    );
    assert_eq!(caller.verdict(&chops), "pull");
}

fn a_wrong_farm_is_corrected_after_use(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let id = fresh_id();
    let animal = farm("BRC").killed(chrono_day(-2)).carcass("7");
    let pig = caller.receive("pig-half").grams(10_000).from(animal);
    let pig = pig.id(&id).made();
    let trim = split(&caller, &pig, &[6_000, 3_900]);
    let before = caller.origins(&trim[0]);
    let wrong = json!({ "farm": "NTB", "carcass": "8" });
    let correction = caller.correct(&id).with("animal", wrong);
    let correction = correction.why("the paper was of the other pig");
    correction.clone().done();
    let after = caller.origins(&trim[0]);
    assert_eq!(
        (&before["animals"][0]["farm"], &after["animals"][0]["farm"]),
        (&json!("BRC"), &json!("NTB"))
    );
    assert_eq!(after["animals"][0]["carcass"], "8");
    let same = trim[0].as_str();
    assert_eq!(caller.lot(same)["code"], same, "codes stay");
    let read = caller.deed_on_record(&id);
    assert_eq!(length(&read["corrections"]), 1);
    let asked = &read["asked"]["animal"]["farm"];
    assert_eq!(asked, "BRC", "the old fact stays visible");
    correction.refused(422, "animal");
    // Forward from the animal as it is now known; the one that it was taken for says so.
    let animals = caller.read("/api/animals?farm=NTB");
    let now = animals["animals"][0]["id"].as_str().unwrap();
    let forward = caller.read(&format!("/api/animals/{now}/descendants"));
    assert_eq!(length(&forward["lots"]), 3);
    let once = caller.read("/api/animals?farm=BRC");
    assert_eq!(once["animals"][0]["once"][0]["lot"], json!(pig));
    let correction = read["corrections"][0].as_str().unwrap();
    caller.void(correction).why("it was right").done();
    assert_eq!(caller.origins(&trim[1])["animals"][0]["farm"], "BRC");
}

fn two_sides_are_one_animal(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let side = |side: &str| {
        let animal = farm("BRC").carcass("0608-17").side(side);
        caller.receive("pig-half").grams(45_000).from(animal)
    };
    let (left, right) = (side("left").made(), side("right").made());
    assert_eq!(left[..9], right[..9], "both are of the same letter");
    assert!(left.contains("A00") && right.contains("A0"));
    side("left").refused(409, "animal.side");
    let both = caller.step("break-down").of(&left).of(&right);
    let trim = both.into("pork-trim", 80_000).made();
    assert_eq!(trim[..9], left[..9]);
    let origins = caller.origins(&trim);
    assert_eq!(length(&origins["animals"]), 1);
    assert_eq!(origins["animals"][0]["share"], 1.0);
    let animal = origins["animals"][0]["id"].as_str().unwrap();
    let forward = caller.read(&format!("/api/animals/{animal}/descendants"));
    assert_eq!(length(&forward["lots"]), 3, "with the lots received of it");
}

fn one_animal_keeps_its_series_and_a_mix_does_not(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let (one, other) = (caller.half_pig("1", 10_000), caller.half_pig("2", 10_000));
    let salt = caller.salt(1_000);
    let mix = || caller.step("mix").into("sausage", 900);
    let salted = mix().of_grams(&one, 1000).of_grams(&salt, 16.5).made();
    assert_eq!(salted[..9], one[..9], "salt has no species");
    let both = mix().of_grams(&one, 600).of_grams(&other, 400).made();
    assert!(both.starts_with("CHK"), "{both}");
    let origins = caller.origins(&both);
    let animals = origins["animals"].as_array().unwrap().iter();
    let shares: Vec<f64> = animals
        .map(|animal| animal["share"].as_f64().unwrap())
        .collect();
    assert!(
        (shares[0] - 0.6).abs() < 1e-9 && (shares[1] - 0.4).abs() < 1e-9,
        "{shares:?}"
    );
    let read = caller.lot(&salted);
    assert_eq!(read["ingredients"]["en"], "half pig, salt");
}

fn frozen_days_wait(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("1", 10_000);
    let trim = &split(&caller, &pig, &[6_000])[0];
    let pack = || caller.lot(trim)["packs"][0].clone();
    let fresh = pack();
    let freeze = fresh_id();
    caller.carry(trim, "freezer").frozen().id(&freeze).done();
    let frozen = pack();
    assert_eq!(
        (&frozen["use_by"], &frozen["days_left"], &frozen["state"]),
        (&json!(null), &json!(4), &json!("frozen"))
    );
    assert_eq!(caller.verdict(trim), "not-for-sale");
    caller.void(&freeze).why("it was the other bag").done();
    assert_eq!(pack(), fresh, "as if it had not been frozen");
}

fn a_ham_dries_and_keeps_its_lot(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("1", 10_000);
    let salt = caller.salt(1_000);
    let cured = caller.step("cure").of(&pig).of(&salt);
    let cured = cured.into("ham", 10_000).done();
    assert_eq!(cured.body["loss_grams"], 1_000);
    let ham = cured.code(0);
    caller.step("hang").place("rail").of(&ham).done();
    let weighed = caller.measure(&ham).grams(9_700.5);
    let weighed = weighed.with("water_activity", 0.914).done();
    assert_eq!(weighed.body["lost_grams"].to_string(), "299.5");
    let lot = caller.lot(&ham);
    assert_eq!(lot["on_hand_grams"].to_string(), "9700.5");
    assert_eq!(lot["packs"][0]["place"], "rail");
    assert_eq!(length(&lot["readings"]), 2);
    let forward = caller.descendants(&pig);
    assert_eq!(forward["lots"][0]["lost_grams"].to_string(), "299.5");
}

fn what_dries_off_makes_the_rest_dearer(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.receive("pig-half").grams(10_000);
    let pig = pig.from(farm("BRC").carcass("3").side("left"));
    let pig = pig.with("price_minor", 6_000).made();
    let cost = |lot: &str| {
        let read = caller.read(&format!("/api/lots/{lot}/cost"));
        ["cost_minor", "per_kg_minor"].map(|of| read[of].as_f64().unwrap())
    };
    assert_eq!(cost(&pig), [6_000.0, 600.0]);
    caller.measure(&pig).grams(7_500).done();
    assert_eq!(cost(&pig), [6_000.0, 800.0]);
    // A third of what is left bears a third of the price, and all of it all.
    let third = caller.step("cut").of_grams(&pig, 2_500);
    let third = third.into("pork-chop", 2_500).made();
    assert_eq!(cost(&third), [2_000.0, 800.0]);
    let rest = caller.step("cut").of_grams(&pig, 5_000);
    let rest = rest.into("pork-chop", 5_000).made();
    assert_eq!(cost(&rest), [4_000.0, 800.0]);
    // What dries off after a part has left is borne by what stayed.
    caller.measure(&third).grams(2_000).done();
    let early = caller.step("cut").of_grams(&third, 1_000);
    let early = early.into("pork-chop", 1_000).made();
    assert_eq!(cost(&early), [1_000.0, 1_000.0]);
    caller.measure(&third).grams(500).done();
    assert_eq!(cost(&third), [2_000.0, 2_000.0]);
    let late = caller.step("cut").of_grams(&third, 500);
    let late = late.into("pork-chop", 500).made();
    assert_eq!(cost(&early), [1_000.0, 1_000.0]);
    assert_eq!(cost(&late), [1_000.0, 2_000.0]);
    // A piece that nobody gave a price bears nothing, and that is told.
    let tips = json!({ "code": "rib-tips", "names": { "en": "Rib tips" }, "kind": "cut", "species": "pig", "raw": true,
        "allergens": [], "storage": "chilled", "keep": { "days": 5, "from": "made", "day_one_counts": true } });
    caller.post("/api/products", &tips).expect(201);
    let parts = caller.step("cut").of_grams(&rest, 5_000);
    let parts = parts.into("pork-chop", 4_000).into("rib-tips", 1_000);
    let parts = parts.done();
    assert_eq!(cost(&parts.code(0)), [4_000.0, 1_000.0]);
    let told = caller.read(&format!("/api/lots/{}/cost", parts.code(0)));
    let keys = told["how_keys"].to_string();
    assert!(keys.contains("cost-of-bears-nothing"), "{told}");
}

fn a_carton_tells_of_itself(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let salt = || caller.receive("salt").to("cooler");
    let carton = "]C1019952123454321631030012501026P0718-BEL7\u{1d}17301231";
    let told = salt().barcode(carton).done();
    let lot = &told.body["lots"][0];
    assert_eq!(
        (&lot["grams"], &lot["use_by"]),
        (&json!(1_250), &json!("2030-12-31"))
    );
    let read = caller.origins(&told.code(0));
    assert_eq!(read["bought"][0]["supplier_lot"], "26P0718-BEL7");
    let differs = salt().barcode("(01)99521234543216(10)26P0718-BEL7");
    let differs = differs.grams(5).bought(bought("PTS", "X"));
    differs.refused(422, "bought.supplier_lot");
}

fn an_earlier_time_is_late(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let salt = |minutes: i64| {
        let salt = caller.receive("salt").to("cooler").grams(10);
        salt.bought(bought("PTS", "S-1")).at(moment(minutes))
    };
    assert_eq!(salt(-120).done().body["late"], true);
    let old = salt(-20 * 24 * 60).note("found in the notebook").done();
    let read = caller.deed_on_record(old.body["id"].as_str().unwrap());
    assert!(read["at"].as_str().unwrap() < read["recorded_at"].as_str().unwrap());
}

fn the_lists_change_by_version(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let farm = json!({ "code": "MRF", "name": "Mire" });
    let post = |list: &str, entry: &Value| caller.post(&format!("/api/{list}"), entry);
    post("farms", &farm).expect(201);
    post("farms", &farm).expect(200);
    let other = json!({ "code": "MRF", "name": "Mirefold" });
    post("farms", &other).refused(409, "code");
    caller.put("/api/farms/MRF", &other).refused(428, None);
    let etag = caller.get("/api/farms/MRF").expect(200).etag.unwrap();
    let changed = caller.put_over("/api/farms/MRF", &etag, &other).expect(200);
    let too_late = caller.put_over("/api/farms/MRF", &etag, &farm);
    too_late.refused(412, None);
    assert_ne!(etag, changed.etag.unwrap());
    let own = json!({ "code": "CHK", "name": "The kitchen's own" });
    post("farms", &own).refused(409, "code");
    let alike = json!({ "code": "LOU", "name": "Look-alikes" });
    post("farms", &alike).refused(422, "code");
    assert_eq!(caller.read("/api/kitchen")["missing"], json!(["address"]));
    caller.get("/api/farms/XYZ").refused(404, None);
    let recipe = json!({ "product": "sausage", "parts": [{ "product": "pork-trim", "grams": 767 }, { "product": "wine", "grams": 33 }] });
    post("recipes", &recipe).expect(201);
    let round = json!({ "product": "wine", "parts": [{ "product": "sausage", "grams": 1 }] });
    post("recipes", &round).refused(422, "parts[0].product");
    let pig = caller.half_pig("1", 10_000);
    let ground = caller.step("grind").place("grinder").of(&pig);
    let sausage = ground.into("sausage", 9_000).made();
    assert_eq!(
        caller.lot(&sausage)["allergens"],
        json!(["sulphites"]),
        "the recipe brings what the inputs may not tell"
    );
}

fn a_sold_pack_that_is_counted_is_told(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("0608-17", 9_000);
    let chops = caller.step("cut").of_grams(&pig, 750);
    let chops = chops.into_packs("pork-chop", 750, 3).made();
    caller.sell(&chops).pack(1).done();
    let count = |pack: u32| {
        let found = json!([{ "pack": pack, "grams": 250 }]);
        let told = caller.count(&chops).with("packs", found).done().body;
        told["warning_keys"].to_string()
    };
    assert!(count(1).contains("count-was-gone"));
    // It is on hand since; and of what always was, nothing is said.
    assert!(!count(1).contains("count-was-gone"));
    assert!(!count(2).contains("count-was-gone"));
    // Who knows where it was? It is held until a person says what becomes of it.
    let verdict =
        |pack: u32| caller.read(&format!("/api/scan?code={chops}/{pack}"))["verdict"].clone();
    assert_eq!((verdict(1), verdict(2)), (json!("hold"), json!("sell")));
    caller.sell(&chops).pack(1).refused(409, "lot");
    // What is in the others is as well known as before.
    let known = |of: &str| caller.read(&format!("/api/scan?code={of}"))["allergens_known"].clone();
    let (found, other) = (format!("{chops}/1"), format!("{chops}/2"));
    assert_eq!((known(&found), known(&other)), (json!(false), json!(true)));
    assert_eq!(caller.lot(&chops)["allergens_known"], true);
    // What was used up never left: what is found of it counts again.
    let stew = caller.step("cook").of_pack(&chops, 2);
    stew.into("cooked-pork", 250).done();
    assert!(count(2).contains("count-was-used"));
    assert_eq!(verdict(2), "sell");
    // A pack is missing once.
    caller.count(&chops).missing(3).done();
    let again = caller.count(&chops).missing(3).done().body;
    assert_eq!(again["warning_keys"], json!(["count-gone-already"]));
}
