//! A pot without a label: it is the pack that is missing, or nobody knows what it is and it goes nowhere.

use serde_json::{Value, json};
use stories::day::Told;
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    the_missing_pack_is_found
    a_pot_that_nobody_knows_goes_nowhere
}

fn kitchen(engine: Engine) -> (House, Caller, String) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("0608-17", 10_000);
    let cut = caller.step("cut").of(&pig);
    let lot = cut.into_packs("pork-chop", 9_000, 3).made();
    (house, caller, lot)
}

fn pot(product: &str, grams: u64, is: Option<&str>) -> Value {
    json!({ "place": "cooler", "product": product, "grams": grams, "is": is,
        "why": "stood behind the stock pots, its label washed off" })
}

fn pack(caller: &Caller, lot: &str, number: usize) -> Value {
    caller.lot(lot)["packs"][number - 1].clone()
}

fn the_missing_pack_is_found(engine: Engine) {
    let (_house, caller, lot) = kitchen(engine);
    let second = format!("{lot}/2");
    // It is on the book: there is nothing to be found.
    let there = caller.deed("/api/adoptions", pot("pork-chop", 3_000, Some(&second)));
    there.refused(409, "is");
    caller.count(&lot).missing(2).done();
    assert_eq!(caller.verdict(&second), "hold");
    let refused = |product: &str, grams: u64, is: &str, status: u16, field: &'static str| {
        let asked = pot(product, grams, Some(is));
        caller.deed("/api/adoptions", asked).refused(status, field);
    };
    refused("pork-trim", 3_000, &second, 422, "product");
    refused("pork-chop", 3_500, &second, 422, "grams");
    refused("pork-chop", 3_000, &lot, 422, "is");
    refused("pork-chop", 3_000, &format!("{lot}/4"), 422, "is");
    let found = caller.deed("/api/adoptions", pot("pork-chop", 2_950, Some(&second)));
    let found = found.expect(201).body;
    assert_eq!(found["unexplained_grams"], -2_950);
    assert_eq!(
        found["labels"],
        format!("/api/lots/{lot}/labels.pdf?packs=2")
    );
    let keys = found["warning_keys"].to_string();
    assert!(keys.contains("adopt-print-again"), "{keys}");
    let now = pack(&caller, &lot, 2);
    assert_eq!(
        (&now["left_grams"], &now["place"]),
        (&json!(2_950), &json!("cooler"))
    );
    // Nobody knows where it stood meanwhile, and it has to be kept cold: somebody speaks for it first.
    assert_eq!(caller.verdict(&second), "hold");
    let labels = caller.get(found["labels"].as_str().unwrap());
    labels.refused(409, None);
    // Taken back, it is missing again.
    caller.void(found["id"].as_str().unwrap()).done();
    assert_eq!(pack(&caller, &lot, 2)["is"], "missing");
}

fn a_pot_that_nobody_knows_goes_nowhere(engine: Engine) {
    let (_house, caller, _) = kitchen(engine);
    let nothing = json!({ "place": "cooler", "product": "cooked-pork", "grams": 800, "why": "" });
    caller.deed("/api/adoptions", nothing).refused(422, "why");
    let made = caller.deed("/api/adoptions", pot("cooked-pork", 800, None));
    let made = made.expect(201);
    let (id, lot) = (made.body["id"].as_str().unwrap().to_owned(), made.code(0));
    assert_eq!(made.body["warning_keys"], json!(["stop-unknown-history"]));
    let read = caller.lot(&lot);
    assert_eq!(read["condition"]["is"], "treated");
    assert_eq!(
        (&read["allergens"], &read["allergens_known"]),
        (&json!([]), &json!(false))
    );
    assert_eq!(
        read["ingredients"],
        json!({}),
        "its list proves nothing of it"
    );
    let stops = read["stops"].as_array().unwrap();
    assert!(
        stops.iter().any(|stop| stop["stop"] == "unknown-history"),
        "{stops:?}"
    );
    let scan = caller.read(&format!("/api/scan?code={lot}"));
    assert_eq!(
        (&scan["verdict"], &scan["allergens_known"]),
        (&json!("hold"), &json!(false))
    );
    // Nothing says that it holds no allergens: not the page, and not the tub's label.
    let page =
        |path: String| String::from_utf8_lossy(&caller.get(&path).expect(200).bytes).into_owned();
    for path in [format!("/lots/{lot}"), format!("/scan?code={lot}")] {
        assert!(page(path.clone()).contains("Allergens not known"), "{path}");
    }
    caller
        .get(made.body["labels"].as_str().unwrap())
        .expect(200);
    let customers = format!("/api/lots/{lot}/labels.pdf?template=pack-us");
    assert_eq!(
        caller.get(&customers).expect(409).body["type"],
        "/problems/label-refused"
    );
    caller.sell(&lot).refused(409, "lot");
    caller
        .step("mix")
        .of_grams(&lot, 400)
        .into("sausage", 400)
        .refused(409, "inputs[0].lot");
    // What is made of it all the same is as little known.
    let mixed = caller.step("mix").of_grams(&lot, 400).into("sausage", 400);
    let mixed = mixed
        .with("as_it_happened", true)
        .with("note", "it was in the bowl")
        .made();
    assert_eq!(caller.lot(&mixed)["allergens_known"], false);
    assert_eq!(caller.verdict(&mixed), "hold");
    // A person says by name what becomes of it.
    let let_go =
        json!({ "lot": lot, "what": "released", "why": "Jory knows it: his own of this morning" });
    caller.deed("/api/dispositions", let_go).expect(201);
    // That does not tell what is in it, and so no customer gets it, nor what is made of it from now on.
    let portion = caller.step("portion").of_grams(&lot, 100);
    let portion = portion.into("cooked-pork", 100).made();
    for of in [&lot, &mixed, &portion] {
        assert_eq!(caller.lot(of)["allergens_known"], false, "{of}");
        assert_eq!(caller.verdict(of), "hold", "{of}");
    }
    assert_eq!(
        caller.get(&customers).expect(409).body["type"],
        "/problems/label-refused"
    );
    caller.sell(&portion).refused(409, "lot");
    let again = json!({ "lot": lot, "what": "released", "why": "once more" });
    caller.deed("/api/dispositions", again).refused(409, "lot");
    // Somebody who knows says it; more than what is in it nobody can say of such a pot.
    let say = |bought: Value| json!({ "step": id, "bought": bought, "why": "asked the cook who made it" });
    let more = say(json!({ "declares": { "ready": true } }));
    caller
        .deed("/api/corrections", more)
        .refused(422, "bought.declares");
    let told = say(json!({ "declares": { "allergens": ["milk"] } }));
    let told = caller.deed("/api/corrections", told).expect(201).body;
    for of in [&lot, &mixed, &portion] {
        let read = caller.lot(of);
        assert_eq!(read["allergens_known"], true, "{of}");
        assert_eq!(read["allergens"], json!(["milk"]), "{of}");
    }
    assert_eq!(told["changes"].as_array().unwrap().len(), 3, "{told}");
    caller.void(&id).refused(409, None);
}
