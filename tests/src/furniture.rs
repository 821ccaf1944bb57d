//! What a small kitchen has: two farms, an abattoir, a supplier, places and products enough for a day.

use crate::House;
use serde_json::json;

impl House {
    /// Sets up the small kitchen.
    pub fn furnish(&self) {
        let caller = self.caller();
        let kitchen = json!({ "code": "CHK", "name": "Test Kitchen", "time_zone": "America/New_York", "profile": "us",
            "languages": ["en", "fr"], "currency": "USD", "public_url": "https://trace.test.example" });
        caller.put("/api/kitchen", &kitchen).expect(200);
        for (path, body) in furniture() {
            caller.post(path, &body).expect(201);
        }
    }
}

/// What a small kitchen has in its lists: calls and bodies.
pub fn furniture() -> Vec<(&'static str, serde_json::Value)> {
    let keep = |days: u32| json!({ "days": days, "from": "made", "day_one_counts": true });
    let product = |code: &str,
                   name: &str,
                   kind: &str,
                   species: Option<&str>,
                   raw: bool,
                   keep: serde_json::Value| {
        json!({ "code": code, "names": { "en": name, "fr": format!("{name} (fr)") }, "kind": kind, "species": species,
            "raw": raw, "allergens": [], "storage": "chilled", "keep": keep, "for_sale": true, "price_minor_per_kg": 2600 })
    };
    let none = serde_json::Value::Null;
    let mut all = vec![
        ("/api/farms", json!({ "code": "BRC", "name": "Brindle" })),
        ("/api/farms", json!({ "code": "NTB", "name": "Nettle" })),
        (
            "/api/abattoirs",
            json!({ "number": "DEMO-17", "name": "Harle Gate" }),
        ),
        ("/api/suppliers", json!({ "code": "PTS", "name": "Pantry" })),
    ];
    for (code, kind) in [
        ("rail", "storage"),
        ("cooler", "storage"),
        ("freezer", "storage"),
        ("bench", "contact"),
        ("grinder", "contact"),
        ("stove", "heat"),
        ("case", "counter"),
    ] {
        all.push((
            "/api/places",
            json!({ "code": code, "name": code, "kind": kind }),
        ));
    }
    all.extend([
        ("/api/products", product("pig-half", "Half pig", "carcass", Some("pig"), true, none.clone())),
        ("/api/products", product("pork-trim", "Pork trim", "trim", Some("pig"), true, keep(5))),
        ("/api/products", product("pork-fat", "Pork fat", "fat", Some("pig"), true, keep(5))),
        ("/api/products", product("pork-chop", "Pork chop", "cut", Some("pig"), true, keep(5))),
        ("/api/products", product("sausage", "Saucisse à l’ail", "mixed", Some("pig"), true, keep(2))),
        ("/api/products", product("cooked-pork", "Cooked pork", "cooked", Some("pig"), false, keep(7))),
        ("/api/products", product("ham", "Dry ham", "cured", Some("pig"), true, none.clone())),
        ("/api/products", product("salt", "Salt", "ingredient", None, false, none)),
        ("/api/products", json!({ "code": "wine", "names": { "en": "White wine", "fr": "Vin blanc" }, "kind": "ingredient",
            "raw": false, "allergens": ["sulphites"], "storage": "ambient" })),
    ]);
    all
}
