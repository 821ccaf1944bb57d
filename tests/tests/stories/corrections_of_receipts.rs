//! What was wrong of a receipt is corrected: allergens, what a pack declares, a maker's date, a strength, the
//! animal, the supplier's lot.

use super::corrections::{PROVEN, alike, corrects, happened, kitchen, product, state};
use serde_json::{Value, json};
use stories::call::{chrono_day, fresh_id, moment};
use stories::day::{Receipt, Told, bought, farm};
use stories::labels::{change, save, words};
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    an_allergen_joins_all_that_was_made_of_it
    what_a_pack_declares_is_believed_from_the_start
    a_makers_date_shortens_all_that_was_made_of_it
    the_strength_of_a_curing_salt_is_held_against_the_limits_again
    another_salt_in_the_bag_stands_on_every_label_of_what_it_cured
    a_strength_that_the_list_learned_later_is_told_of_the_lot
    both_animals_and_both_facts_lead_to_the_lots
    a_tag_beside_a_carcass_number_leads_to_the_lots
    both_lots_of_a_supplier_lead_to_the_lot
}

fn paste(caller: &Caller, id: &str, more: Value) -> Receipt {
    let mut paper = bought("PTS", "P-1");
    for (key, value) in more.as_object().expect("fields") {
        paper[key] = value.clone();
    }
    caller
        .receive("paste")
        .to("cooler")
        .grams(2_000)
        .bought(paper)
        .id(id)
        .at(moment(-300))
}

/// A paste, a stew with it, a salad of that.
fn with_paste(caller: &Caller, pig: &str, more: Value) -> (String, Vec<String>) {
    let id = fresh_id();
    let paste = paste(caller, &id, more).made();
    let cook = caller
        .step("cook")
        .of_grams(pig, 2_000)
        .of_grams(&paste, 500);
    let cook = happened(cook).with("readings", PROVEN()).at(moment(-200));
    let stew = cook.into("stew", 2_400).made();
    let mix = happened(
        caller
            .step("mix")
            .of_grams(&stew, 1_000)
            .of_grams(&paste, 100),
    );
    let salad = mix.at(moment(-100)).into("salad", 1_100).made();
    (id, vec![paste, stew, salad])
}

fn an_allergen_joins_all_that_was_made_of_it(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let (receipt, lots) = with_paste(&caller, &pig, json!({}));
    let declares = json!({ "declares": { "allergens": ["milk", "mustard"] } });
    let done = corrects(caller.correct(&receipt).with("bought", declares.clone()));
    assert_eq!(
        done["changes"][2]["allergens"]["now"],
        json!(["milk", "mustard"])
    );
    let (_other, right, its_pig) = kitchen(engine);
    let (_, its) = with_paste(&right, &its_pig, declares);
    alike((&caller, &lots), (&right, &its));
    assert_eq!(
        caller.lot(&lots[2])["allergens"],
        json!(["milk", "mustard"])
    );
    let none = json!({ "declares": { "allergens": [] } });
    corrects(caller.correct(&receipt).with("bought", none));
    assert_eq!(caller.lot(&lots[2])["allergens"], json!([]));
    caller.void(done["id"].as_str().unwrap()).done();
    assert_eq!(
        caller.lot(&lots[2])["allergens"],
        json!([]),
        "the last word stands"
    );
}

fn what_a_pack_declares_is_believed_from_the_start(engine: Engine) {
    let raw = json!({ "declares": { "ready": false } });
    let (_house, caller, pig) = kitchen(engine);
    let (receipt, lots) = with_paste(&caller, &pig, json!({}));
    assert_eq!(caller.verdict(&lots[2]), "sell");
    corrects(caller.correct(&receipt).with("bought", raw.clone()));
    let (_other, right, its_pig) = kitchen(engine);
    let (_, its) = with_paste(&right, &its_pig, raw);
    alike((&caller, &lots), (&right, &its));
    assert_eq!(
        caller.verdict(&lots[2]),
        "hold",
        "the paste was mixed in after the cook"
    );
}

fn a_makers_date_shortens_all_that_was_made_of_it(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let dated = |day: i64| json!({ "use_by": chrono_day(day) });
    let (receipt, lots) = with_paste(&caller, &pig, dated(50));
    let done = corrects(caller.correct(&receipt).with("bought", dated(2)));
    let (_other, right, its_pig) = kitchen(engine);
    let (_, its) = with_paste(&right, &its_pig, dated(2));
    alike((&caller, &lots), (&right, &its));
    assert_eq!(caller.lot(&lots[2])["use_by"], json!(chrono_day(2)));
    // And the other way round, where nothing was printed.
    caller.void(done["id"].as_str().unwrap()).done();
    let (_third, before, pig) = kitchen(engine);
    let (_, third) = with_paste(&before, &pig, dated(50));
    alike((&caller, &lots), (&before, &third));
    let opened = json!({ "declares": { "days_once_opened": 1, "use_by_is": "frozen" } });
    corrects(caller.correct(&receipt).with("bought", opened));
    let (_fourth, open, pig) = kitchen(engine);
    let both = json!({ "use_by": chrono_day(50), "declares": { "days_once_opened": 1, "use_by_is": "frozen" } });
    let (_, fourth) = with_paste(&open, &pig, both);
    alike((&caller, &lots), (&open, &fourth));
}

/// A belly in curing salt of a strength.
fn cured(caller: &Caller, pig: &str, percent: f64) -> (String, Vec<String>) {
    let id = fresh_id();
    let salt = json!({ "code": "curing-salt-x", "names": { "en": "Curing salt" }, "kind": "ingredient", "species": null,
        "raw": false, "storage": "ambient", "curing_salt": { "nitrite_percent": 6.25 },
        "keep": { "days": 700, "from": "received", "day_one_counts": true } });
    caller.post("/api/products", &salt).expect(201);
    product(
        caller,
        "cured-belly",
        json!({ "kind": "cured", "raw": true, "cure": { "class": "bacon", "method": "dry" } }),
    );
    let mut paper = bought("PTS", "C-1");
    paper["curing_salt"] = json!({ "nitrite_percent": percent });
    let salt = caller
        .receive("curing-salt-x")
        .to("cooler")
        .grams(1_000)
        .bought(paper)
        .id(&id);
    let salt = salt.at(moment(-300)).made();
    let cure = caller.step("cure").of_grams(pig, 4_000).of_grams(&salt, 15);
    let belly = happened(cure)
        .at(moment(-200))
        .into("cured-belly", 4_000)
        .made();
    let cut = happened(caller.step("cut").of_grams(&belly, 1_000)).at(moment(-100));
    let cut = cut.into("cured-belly", 1_000).made();
    (id, vec![salt, belly, cut])
}

fn the_strength_of_a_curing_salt_is_held_against_the_limits_again(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let (receipt, lots) = cured(&caller, &pig, 5.0);
    assert_eq!(state(&caller, &lots[1])["stops"], json!([]));
    let strong = json!({ "curing_salt": { "nitrite_percent": 6.25 } });
    corrects(caller.correct(&receipt).with("bought", strong));
    let (_other, right, its_pig) = kitchen(engine);
    let (_, its) = cured(&right, &its_pig, 6.25);
    alike((&caller, &lots), (&right, &its));
    assert_ne!(state(&caller, &lots[1])["stops"], json!([]));
    let ppm = |caller: &Caller, lot: &str| caller.lot(lot)["cure"]["nitrite_ppm"].clone();
    assert_eq!(ppm(&caller, &lots[1]), ppm(&right, &its[1]));
}

fn another_salt_in_the_bag_stands_on_every_label_of_what_it_cured(engine: Engine) {
    let (house, caller, pig) = kitchen(engine);
    let (receipt, lots) = cured(&caller, &pig, 5.0);
    let label = |again: Value| {
        let asked = json!({ "lot": lots[2], "template": "pack-long", "again": again });
        let done = caller.deed("/api/label-documents", asked).expect(201).body;
        let id = done["id"].as_str().unwrap();
        let pdf = caller.get(&format!("/api/label-documents/{id}/labels.pdf"));
        let pdf = pdf.expect(200);
        let folder = tempfile::tempdir().unwrap();
        words(&save(folder.path(), "label.pdf", &pdf.bytes))
    };
    let printed = label(Value::Null);
    assert!(
        printed.contains("Cured with salt, sodium nitrite"),
        "{printed}"
    );
    let other = json!({ "curing_salt": { "nitrite_percent": 5.0, "nitrite_of": "potassium" } });
    let done = corrects(caller.correct(&receipt).with("bought", other));
    let changes = done["changes"].as_array().unwrap();
    let of = |lot: &String| changes.iter().find(|of| of["lot"] == json!(lot));
    for lot in &lots[1..] {
        let now = &of(lot).unwrap()["ingredients"]["now"]["en"];
        assert!(now.to_string().contains("potassium nitrite"), "{changes:?}");
    }
    let wrong = caller.read("/api/wrong-labels")["packs"].clone();
    assert_eq!(wrong[0]["lot"], json!(lots[2]), "{wrong}");
    let now = label(json!({ "why": "the bag was read again" }));
    // The law names it by its metal (`us-I6`).
    assert!(
        now.contains("Cured with salt, potassium nitrite") && !now.contains("sodium nitrite"),
        "{now}"
    );
    assert_eq!(caller.read("/api/wrong-labels")["packs"], json!([]));
    house.check();
}

fn a_strength_that_the_list_learned_later_is_told_of_the_lot(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    // Listed as a plain salt when it came in: nobody asked how strong it is, and no nitrite was counted.
    let salt = json!({ "code": "pink-salt", "names": { "en": "Pink salt" }, "kind": "ingredient", "species": null,
        "raw": false, "storage": "ambient", "in_cure": "salt",
        "keep": { "days": 700, "from": "received", "day_one_counts": true } });
    caller.post("/api/products", &salt).expect(201);
    let belly =
        json!({ "kind": "cured", "raw": true, "cure": { "class": "bacon", "method": "dry" } });
    product(&caller, "cured-belly", belly);
    let receipt = fresh_id();
    let salt = caller.receive("pink-salt").to("cooler").grams(1_000);
    let salt = salt
        .bought(bought("PTS", "C-2"))
        .id(&receipt)
        .at(moment(-300))
        .made();
    let cure = |minutes| {
        let cure = caller
            .step("cure")
            .of_grams(&pig, 4_000)
            .of_grams(&salt, 15);
        happened(cure)
            .at(moment(minutes))
            .into("cured-belly", 4_000)
    };
    let belly = cure(-200).made();
    assert_ne!(caller.lot(&belly)["cure"]["nitrite_ppm"], 234.4);
    let told = json!({ "curing_salt": { "nitrite_percent": 6.25 } });
    let early = caller.correct(&receipt).with("bought", told.clone());
    early.refused(422, "bought.curing_salt");
    change(
        &caller,
        "pink-salt",
        &[
            ("in_cure", Value::Null),
            ("curing_salt", json!({ "nitrite_percent": 6.25 })),
        ],
    );
    // What is cured with it now is not proven as long as nobody has told its strength.
    let unknown = cure(-100).done();
    let stops = caller.lot(&unknown.code(0))["stops"].to_string();
    assert!(stops.contains("not-proven"), "{stops}");
    corrects(caller.correct(&receipt).with("bought", told));
    for lot in [&belly, &unknown.code(0)] {
        let lot = caller.lot(lot);
        let ppm = lot["cure"]["nitrite_ppm"].as_f64().expect("it is known");
        assert!((ppm - 234.375).abs() < 0.5, "{ppm}");
        // Above what bacon may have.
        assert!(
            lot["stops"].to_string().contains("\"failed\""),
            "{}",
            lot["stops"]
        );
    }
}

fn both_animals_and_both_facts_lead_to_the_lots(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let id = fresh_id();
    let animal = farm("BRC").killed(chrono_day(-2)).carcass("7");
    let pig = caller
        .receive("pig-half")
        .grams(10_000)
        .from(animal)
        .id(&id)
        .made();
    let trim = caller
        .step("cut")
        .of_grams(&pig, 6_000)
        .into("pork-trim", 6_000)
        .made();
    let old = caller.read("/api/animals?carcass=7")["animals"][0]["id"].clone();
    let wrong = json!({ "farm": "NTB", "killed_on": chrono_day(-1), "carcass": "8" });
    let done = corrects(caller.correct(&id).with("animal", wrong));
    assert_eq!(done["lots"][0]["code"], json!(pig), "codes stay");
    assert_eq!(caller.origins(&trim)["animals"][0]["farm"], "NTB");
    let now = caller.read("/api/animals?carcass=8")["animals"][0].clone();
    assert_eq!(now["lots"], json!([pig]));
    for query in [
        "carcass=7".to_owned(),
        "farm=BRC".into(),
        format!("killed_on={}", chrono_day(-2)),
    ] {
        let found = caller.read(&format!("/api/animals?{query}"))["animals"][0].clone();
        assert_eq!(
            (
                &found["id"],
                &found["once"][0]["lot"],
                &found["once"][0]["now"]
            ),
            (&old, &json!(pig), &now["id"])
        );
    }
    for query in ["farm=BRC", "farm=NTB"] {
        let lots = caller.read(&format!("/api/lots?{query}"))["lots"].clone();
        let codes = lots
            .as_array()
            .unwrap()
            .iter()
            .map(|lot| lot["code"].clone());
        assert!(
            codes.collect::<Vec<_>>().contains(&json!(pig)),
            "{query}: {lots}"
        );
    }
    let (old, now) = (old.as_str().unwrap(), now["id"].as_str().unwrap());
    let forward = caller.read(&format!("/api/animals/{old}/descendants"));
    assert_eq!(
        (&forward["lots"], &forward["once"][0]["lot"]),
        (&json!([]), &json!(pig))
    );
    let forward = caller.read(&format!("/api/animals/{now}/descendants"));
    assert_eq!(forward["lots"].as_array().map(Vec::len), Some(2));
    for animal in [old, now] {
        let page = caller.get(&format!("/animals/{animal}")).expect(200);
        let page = String::from_utf8_lossy(&page.bytes);
        assert!(page.contains(&pig), "{animal}");
        // A sum of nothing would read as clear.
        assert_eq!(page.contains("On hand now"), animal == now, "{animal}");
    }
    caller.void(done["id"].as_str().unwrap()).done();
    assert_eq!(caller.origins(&trim)["animals"][0]["farm"], "BRC");
    let none = caller.read("/api/animals?carcass=8")["animals"].clone();
    assert_eq!(none, json!([]), "a correction that was voided never was");
}

fn a_tag_beside_a_carcass_number_leads_to_the_lots(engine: Engine) {
    let (_house, caller, _) = kitchen(engine);
    let side = |side: &str, id: &str| {
        let animal = farm("BRC").carcass("C-100").tag("TG-1").side(side);
        let receipt = caller.receive("pig-half").grams(9_000).id(id);
        receipt.from(animal).at(moment(-300)).made()
    };
    let (left, right) = (fresh_id(), fresh_id());
    let lots = [side("left", &left), side("right", &right)];
    let tagged = |tag: &str| caller.read(&format!("/api/animals?tag={tag}"))["animals"].clone();
    let old = tagged("TG-1")[0]["id"].clone();
    let done = corrects(
        caller
            .correct(&left)
            .with("animal", json!({ "tag": "TG-9" })),
    );
    let told = done["warnings"].to_string();
    assert!(
        told.contains("other lots") && told.replace('-', "").contains(&lots[1]),
        "{told}"
    );
    assert_eq!(tagged("TG-9")[0]["lots"], json!([lots[0]]));
    assert_eq!(tagged("TG-1")[0]["once"][0]["lot"], json!(lots[0]));
    let scope = json!({ "start": [{ "tag": "TG-9" }], "spreads": "lineage" });
    let found = caller.post("/api/scopes", &scope).expect(200).body;
    assert!(found["lots"].to_string().contains(&lots[0]), "{found}");
    corrects(
        caller
            .correct(&right)
            .with("animal", json!({ "tag": "TG-9" })),
    );
    let now = tagged("TG-9")[0].clone();
    assert_eq!(
        (&now["lots"], &tagged("TG-9")[1]),
        (&json!(lots), &Value::Null),
        "one animal again"
    );
    assert!(now["id"] != old);
}

fn both_lots_of_a_supplier_lead_to_the_lot(engine: Engine) {
    let (_house, caller, pig) = kitchen(engine);
    let (receipt, lots) = with_paste(&caller, &pig, json!({}));
    corrects(
        caller
            .correct(&receipt)
            .with("bought", json!({ "supplier_lot": "P-77" })),
    );
    for word in ["P-1", "p-77"] {
        let found = caller.read(&format!("/api/lots?q={word}"))["lots"].clone();
        assert_eq!(found[0]["code"], json!(lots[0]), "{word}");
    }
    let origin = caller.origins(&lots[2])["bought"].to_string();
    assert!(
        origin.contains("P-77") && !origin.contains("P-1"),
        "{origin}"
    );
}
