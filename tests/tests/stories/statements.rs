//! What is in it, by the lots that were used and the law of the place: on the record, at the bench, on
//! the label.

use serde_json::json;
use stories::{Engine, House, on_both_engines};

on_both_engines! {
    the_statement_follows_the_lots_and_the_place
    many_tubs_of_one_step_are_told_of_as_one_would_be
    a_label_speaks_as_its_place_does
}

fn the_statement_follows_the_lots_and_the_place(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let lot = |name: &str| caller.lot(&caller.noted(name));
    // The new glaze has soy sauce for tamari: wheat is in it now, and the step said so.
    let ribs = lot("L22");
    assert!(
        ribs["contains"]["en"].as_str().unwrap().contains("wheat"),
        "{ribs}"
    );
    let step = caller.read(&format!(
        "/api/steps/{}",
        ribs["made_by_step"].as_str().unwrap()
    ));
    assert!(
        step["answered"]["warnings"]
            .to_string()
            .contains("Wheat is new"),
        "{}",
        step["answered"]
    );
    let before = lot("S09-RIBS");
    assert!(
        !before["contains"]["en"].as_str().unwrap().contains("wheat"),
        "{before}"
    );
    // Lard in the duck.
    assert_eq!(lot("L28")["species_note"]["en"], "contains pork");
    let bacon = lot("L13");
    assert!(
        bacon["ingredients"]["en"]
            .as_str()
            .unwrap()
            .contains("sodium nitrite"),
        "{bacon}"
    );
    assert!(
        bacon["ingredients"]["fr"]
            .as_str()
            .unwrap()
            .contains("nitrite de sodium"),
        "{bacon}"
    );
    // Celery, mustard and sulphites are not among the nine, but in Canada and in Europe they are named.
    assert!(
        lot("L27")["contains"]["en"].is_null(),
        "{}",
        lot("L27")["contains"]
    );
    let mut kitchen = caller.get("/api/kitchen").expect(200);
    for (place, says) in [("ca", "ustard"), ("eu", "MUSTARD")] {
        kitchen.body["profile"] = json!(place);
        for told in ["set_up", "missing"] {
            kitchen.body.as_object_mut().unwrap().remove(told);
        }
        let etag = caller.get("/api/kitchen").expect(200).etag.unwrap();
        caller
            .put_over("/api/kitchen", &etag, &kitchen.body)
            .expect(200);
        let terrine = lot("L27");
        let told = format!(
            "{}{}",
            terrine["contains"]["en"], terrine["ingredients"]["en"]
        );
        assert!(told.contains(says), "{place}: {told}");
    }
}

fn many_tubs_of_one_step_are_told_of_as_one_would_be(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let bought = |product: &str| {
        let receipt = json!({ "place": "cooler-1", "product": product, "grams": 5_000, "bought": { "supplier": "PTS" } });
        caller.deed("/api/receipts", receipt).expect(201).code(0)
    };
    let batch = |sauce: &str| {
        let sauce = bought(sauce);
        let tubs: Vec<_> = (0..25)
            .map(|_| json!({ "product": "soy-sesame-glaze", "grams": 100 }))
            .collect();
        let step = json!({ "kind": "mix", "place": "bench", "inputs": [{ "lot": sauce, "grams": 2_500 }], "outputs": tubs });
        caller.deed("/api/steps", step).expect(201).body["warnings"].to_string()
    };
    batch("tamari");
    let warnings = batch("soy-sauce");
    assert_eq!(warnings.matches("Wheat is new").count(), 1, "{warnings}");
}

fn a_label_speaks_as_its_place_does(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let jar = caller.noted("L31");
    let folder = tempfile::tempdir().unwrap();
    let text = |place: &str| {
        let kitchen = caller.get("/api/kitchen").expect(200);
        let mut body = kitchen.body.clone();
        body["profile"] = json!(place);
        for told in ["set_up", "missing"] {
            body.as_object_mut().unwrap().remove(told);
        }
        caller
            .put_over("/api/kitchen", &kitchen.etag.unwrap(), &body)
            .expect(200);
        let pdf = caller
            .get(&format!("/api/lots/{jar}/labels.pdf?packs=7"))
            .expect(200)
            .bytes;
        let path = folder.path().join(format!("{place}.pdf"));
        std::fs::write(&path, pdf).unwrap();
        let out = std::process::Command::new("pdftotext")
            .arg("-layout")
            .arg(&path)
            .arg("-")
            .output()
            .unwrap();
        String::from_utf8(out.stdout)
            .unwrap()
            .split_whitespace()
            .collect::<Vec<_>>()
            .join(" ")
    };
    assert!(text("us").contains("USE BY"));
    // canada-eu-uk-2.11: never "use by" on a customer's label; 2.8: year, month by its symbol, day.
    let ca = text("ca");
    assert!(!ca.to_lowercase().contains("use by"), "{ca}");
    assert!(
        ca.contains("BEST BEFORE") && ca.contains("26 JN 26"),
        "{ca}"
    );
    assert!(ca.contains("Ingrédients :"), "{ca}");
    let uk = text("uk");
    assert!(
        uk.contains("USE BY") && uk.to_uppercase().contains("26 JUNE 2026"),
        "{uk}"
    );
}
