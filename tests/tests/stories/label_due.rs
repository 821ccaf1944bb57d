//! What is due on a customer's pack by what becomes of it: frozen, thawed, weighed, on a label of the kitchen's own.

use crate::label_items::label;
use serde_json::{Value, json};
use stories::labels::{all_lots, change, set};
use stories::{Engine, House, on_both_engines};

on_both_engines! {
    what_is_frozen_says_so_in_every_place
    equal_packs_are_in_ounces_and_weighed_ones_have_a_price
    customers_read_names_of_their_own
}

fn what_is_frozen_says_so_in_every_place(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let jar = caller.noted("L31");
    let number = caller.lot(&jar)["packs"]
        .as_array()
        .unwrap()
        .iter()
        .find(|pack| pack["left_grams"].as_i64() > Some(0) && pack["state"] == "chilled")
        .unwrap()["pack"]
        .as_u64()
        .unwrap();
    let places = [
        (
            "us",
            json!(["en"]),
            "KEEP FROZEN",
            "SHIPPED/STORED AND HANDLED FROZEN",
        ),
        (
            "ca",
            json!(["en", "fr"]),
            "KEEP FROZEN",
            "PREVIOUSLY FROZEN",
        ),
        ("eu", json!(["en"]), "KEEP FROZEN", "DEFROSTED"),
        ("uk", json!(["en"]), "KEEP FROZEN", "DEFROSTED"),
    ];
    let to = |state: &str| {
        let moved = json!({ "lot": jar, "packs": [number], "state": state });
        caller.deed("/api/moves", moved).expect(201)
    };
    let texts = || {
        let one = |(place, languages, ..): &(&str, Value, &str, &str)| {
            let changes = [("profile", json!(place)), ("languages", languages.clone())];
            set(&caller, &changes);
            label(&house, &caller, &jar, number).unwrap_or_else(|why| panic!("{place}: {why}"))
        };
        places.iter().map(one).collect::<Vec<String>>()
    };
    let frozen = to("frozen");
    let address = frozen.body["labels"].as_str().unwrap().to_owned();
    assert!(address.ends_with(&format!("packs={number}")), "{address}");
    for ((place, _, says, _), text) in places.iter().zip(texts()) {
        assert!(text.contains(says), "{place}: {text}");
        // Canada in both languages: the day that it froze, and how long it keeps once it is thawed.
        let french = text.contains("CONGELÉ LE") && text.contains("APRÈS DÉGEL");
        assert!(french || *place != "ca", "{text}");
        assert!(!text.contains("NO DATE"), "{place}: {text}");
    }
    // The thaw answers with the address of the new label.
    let thawed = to("chilled");
    let address = thawed.body["labels"].as_str().unwrap().to_owned();
    caller.get(&address).expect(200);
    for ((place, _, _, says), text) in places.iter().zip(texts()) {
        let said = text.contains(says);
        // The United States' words are for raw meat (us F6).
        assert!(said || *place == "us", "{place}: {text}");
        assert!(!text.contains("KEEP FROZEN"), "{place}: {text}");
    }
}

/// A kitchen's own file, with what it leaves out.
fn own_label(omits: &str) -> String {
    let text = |field: &str, height: f64| {
        format!(
            r#"{{ "field": "{field}", "measure": "capitals", "min_mm": {height}, "max_mm": {height} }}"#
        )
    };
    let fields = [
        "kind",
        "use-by-heading",
        "use-by",
        "net",
        "price",
        "unit-price",
        "ingredients",
        "allergens",
        "cure",
        "storage",
        "caution",
        "made",
        "business",
        "till",
        "origin",
    ];
    let kept = fields.iter().filter(|field| **field != omits);
    let texts: Vec<String> = kept.map(|field| text(field, 2.2)).collect();
    format!(
        r#"{{ "purpose": "retail", "width_mm": 100, "height_mm": 150, "dpi": [203], "omits": ["use-by-short", "{omits}"],
        "items": [ {{ "stack": {{ "x": 2, "y": 2, "w": 70, "h": 146, "texts": [
        {{ "field": "name", "measure": "capitals", "min_mm": 3.5, "max_mm": 3.5, "required": true }},
        {{ "field": "lot", "measure": "capitals", "min_mm": 2.2, "max_mm": 2.2, "required": true }}, {} ] }} }},
        {{ "qr": {{ "x": 75, "y": 10, "size": 20 }} }} ] }}"#,
        texts.join(",\n")
    )
}

#[test]
fn a_template_without_what_is_due_is_not_for_a_customer() {
    let folder = tempfile::tempdir().unwrap();
    let gaps = ["use-by", "net", "ingredients", "allergens", "business"];
    for gap in gaps {
        let file = folder.path().join(format!("own-{gap}.json"));
        std::fs::write(file, own_label(gap)).unwrap();
    }
    std::fs::write(
        folder.path().join("own-whole.json"),
        own_label("second-name"),
    )
    .unwrap();
    let templates = folder.path().to_str().unwrap();
    let house = House::with(&["--templates", templates]);
    let caller = house.caller();
    set(&caller, &[("languages", json!(["en"]))]);
    let terrine = all_lots(&caller)
        .into_iter()
        .find(|lot| caller.lot(lot)["product"] == "country-terrine");
    let path = format!("/api/lots/{}/labels.pdf?packs=1", terrine.unwrap());
    caller.get(&path).expect(200);
    caller
        .get(&format!("{path}&template=own-whole"))
        .expect(200);
    for gap in gaps {
        let refused = caller.get(&format!("{path}&template=own-{gap}"));
        let refused = refused.refused(409, None);
        let detail = refused.body["detail"].as_str().unwrap();
        assert!(detail.contains(&format!("own-{gap}")), "{detail}");
    }
}

fn equal_packs_are_in_ounces_and_weighed_ones_have_a_price(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let lots = all_lots(&caller);
    // Packs that all weigh the same were filled to a weight.
    let of = |product: &str, equal: bool| {
        lots.iter().find_map(|code| {
            let lot = caller.lot(code);
            let packs = lot["packs"].as_array().unwrap();
            let first = packs.first().filter(|_| lot["product"] == product)?;
            let same = packs.iter().all(|pack| pack["grams"] == first["grams"]);
            ((same && packs.len() > 1) == equal).then(|| code.clone())
        })
    };
    let bacon = of("bacon-sliced", true).unwrap();
    let text = label(&house, &caller, &bacon, 1).unwrap();
    assert!(text.contains("8.8") && text.contains("OZ"), "{text}");
    assert!(!text.contains("/LB"), "{text}");
    let weighed = ["bacon-slab", "pork-shoulder", "smoked-ribs"];
    let (text, product) = weighed
        .iter()
        .find_map(|product| {
            Some((
                label(&house, &caller, &of(product, false)?, 1).ok()?,
                product,
            ))
        })
        .unwrap();
    assert!(
        text.contains(" LB") && text.contains("/LB") && text.contains('$'),
        "{product}: {text}"
    );
}

fn customers_read_names_of_their_own(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    change(
        &caller,
        "pork-rillettes",
        &[
            (
                "customer_names",
                json!({ "en": "Potted pork of the house" }),
            ),
            (
                "cooking",
                json!({ "en": "Eat on toast, at room temperature." }),
            ),
        ],
    );
    let pork = caller.noted("L13");
    let packs = caller.lot(&pork)["packs"].clone();
    let pack = packs
        .as_array()
        .unwrap()
        .iter()
        .find(|pack| pack["left_grams"] == 250)
        .unwrap()["pack"]
        .clone();
    let step = json!({ "kind": "cook", "place": "stove", "inputs": [{ "lot": pork, "pack": pack }],
        "readings": { "celsius": 90, "hold_minutes": 20 },
        "outputs": [{ "product": "pork-rillettes", "grams": 240, "pack_count": 2 }] });
    let made = caller.deed("/api/steps", step).expect(201).code(0);
    let text = label(&house, &caller, &made, 1).unwrap();
    assert!(text.contains("POTTED PORK OF THE HOUSE"), "{text}");
    assert!(text.contains("EAT ON TOAST"), "{text}");
    assert!(!text.contains("PORK RILLETTES"), "{text}");
    // The bench still reads the house's own name.
    assert_eq!(caller.lot(&made)["names"]["en"], "Pork rillettes");
}
