//! Cartons whose own barcode names the product.

use serde_json::json;
use stories::{Engine, House, on_both_engines};

on_both_engines! {
    a_cartons_number_finds_its_product
}

fn a_cartons_number_finds_its_product(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let spice = |code: &str, gtin: &str| {
        let product = json!({ "code": code, "names": { "en": code }, "kind": "ingredient", "raw": false,
            "allergens": [], "storage": "ambient", "gtin": gtin });
        caller.post("/api/products", &product).expect(201);
    };
    let scanned = |barcode: &str| {
        caller.deed(
            "/api/receipts",
            json!({ "place": "cooler", "grams": 1_000, "barcode": barcode }),
        )
    };
    let product = |barcode: &str| scanned(barcode).expect(201).body["lots"][0]["product"].clone();
    spice("pepper", "9521234543213");
    spice("pepper-case", "19521234543210");
    spice("juniper", "9521234000013");
    assert_eq!(product("(01)09521234543213(10)P1"), "pepper");
    assert_eq!(product("]C10119521234543210"), "pepper-case");
    assert_eq!(product("(01)59521234000018(10)J1"), "juniper");

    let tie = scanned("(01)29521234543217(10)P2").refused(422, "product");
    let says = tie.body["detail"].as_str().unwrap();
    assert!(
        says.contains("29521234543217 could be any of these: pepper, pepper-case"),
        "{says}"
    );
    let none = scanned("(01)09521234500001(10)X").refused(422, "product");
    let says = none.body["detail"].as_str().unwrap();
    assert!(
        says.contains("No product in the list has the GTIN 09521234500001"),
        "{says}"
    );
    scanned("(10)P3").refused(422, "product");
}
