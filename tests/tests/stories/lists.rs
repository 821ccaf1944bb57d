//! The kitchen's lists on screen and from a table, the starter list, and how each person reads.

use serde_json::{Value, json};
use stories::day::Told;
use stories::{Answer, Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_table_is_tried_line_by_line_and_taken_over_whole_or_not_at_all
    every_starter_becomes_a_product_by_the_ordinary_call
    pages_of_the_lists_show_what_is_there_and_forms_are_a_managers
    today_of_an_empty_kitchen_leads_to_its_set_up_until_that_is_done
    somebody_reads_in_their_own_units_and_language
    what_is_kept_otherwise_says_where_its_new_label_is
    every_setting_of_an_entry_has_its_field_on_a_page
}

fn table(caller: &Caller, path: &str, text: &str) -> Answer {
    caller.post_bytes(path, "text/csv; charset=utf-8", text.as_bytes())
}

fn a_table_is_tried_line_by_line_and_taken_over_whole_or_not_at_all(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let before = house.check();
    let good = "code,names.en,names.fr,kind,species,keep.days,keep.from,keep.day_one_counts,price_per_kg,allergens\n\
        veal-chop,Veal chop,\"Côte de veau, premier choix\",cut,cattle,5,made,yes,31.50,\n\
        wine,,,,,,,,,sulphites;milk\n";
    let bad = format!(
        "{good}veal-liver,Veal liver,Foie de veau,offals,cattle,2,made,yes,9.999,\nveal-chop,,,,,,,,,\n"
    );
    let tried = table(&caller, "/api/products/import?try=true", &bad)
        .expect(200)
        .body;
    let told: Vec<(u64, &str, &Value)> = tried["lines"]
        .as_array()
        .expect("lines")
        .iter()
        .map(|line| {
            (
                line["line"].as_u64().unwrap_or(0),
                line["what"].as_str().unwrap_or(""),
                &line["columns"],
            )
        })
        .collect();
    assert_eq!(told[0], (2, "new", &json!([])));
    assert_eq!(told[1], (3, "changed", &json!(["allergens"])));
    assert_eq!((told[2].0, told[2].1), (4, "wrong"));
    assert_eq!(told[3], (5, "wrong", &json!(["code"])), "{tried}");
    assert!(
        tried["lines"][2]["detail"]
            .as_str()
            .is_some_and(|says| !says.is_empty())
    );
    assert_eq!(tried["wrong"], 2);
    // With a line that cannot be, nothing is taken over.
    let refused = table(&caller, "/api/products/import", &bad).expect(422);
    assert_eq!(refused.body["field"], "line 4", "{}", refused.body);
    assert_eq!(house.check(), before);
    // Tried again, mended: nothing yet; then all of it.
    let tried = table(&caller, "/api/products/import?try=true", good)
        .expect(200)
        .body;
    assert_eq!(
        (&tried["new"], &tried["changed"], &tried["tried"]),
        (&json!(1), &json!(1), &json!(true))
    );
    assert_eq!(house.check(), before);
    let done = table(&caller, "/api/products/import", good)
        .expect(200)
        .body;
    assert_eq!(
        (&done["new"], &done["changed"], &done["tried"]),
        (&json!(1), &json!(1), &json!(false))
    );
    let chop = caller.read("/api/products/veal-chop");
    assert_eq!(chop["names"]["fr"], "Côte de veau, premier choix");
    assert_eq!(
        (&chop["price_minor_per_kg"], &chop["keep"]["days"]),
        (&json!(3150), &json!(5))
    );
    // What has no column stays: the wine is an ingredient still.
    let wine = caller.read("/api/products/wine");
    assert_eq!(
        (&wine["kind"], &wine["allergens"]),
        (&json!("ingredient"), &json!(["sulphites", "milk"]))
    );
    // A price list as a spreadsheet in French writes it.
    let prices = "\u{feff}code;price_per_kg\nveal-chop;32,5\n";
    assert_eq!(
        table(&caller, "/api/products/import", prices)
            .expect(200)
            .body["changed"],
        1
    );
    assert_eq!(
        caller.read("/api/products/veal-chop")["price_minor_per_kg"],
        3250
    );
    assert_eq!(
        table(&caller, "/api/products/import", prices)
            .expect(200)
            .body["same"],
        1
    );
    // Farms take their code for ever, in a table too.
    let farms = "code,name\nWDN,Wendon Farm\nCHK,Not a farm\n";
    let tried = table(&caller, "/api/farms/import?try=true", farms)
        .expect(200)
        .body;
    assert_eq!(
        (&tried["new"], &tried["wrong"]),
        (&json!(1), &json!(1)),
        "{tried}"
    );
    let wrong = [
        ("text/plain", "code\nx\n", 415),
        ("text/csv", "", 422),
        ("text/csv", "code\n", 422),
        ("text/csv", "name\nx\n", 422),
        ("text/csv", "code,colour\nx,red\n", 422),
        ("text/csv", "code,code\nx,x\n", 422),
    ];
    for (kind, text, status) in wrong {
        caller
            .post_bytes("/api/products/import", kind, text.as_bytes())
            .expect(status);
    }
    caller
        .post_bytes("/api/products/import", "text/csv", b"code\n\xff\xfe\n")
        .expect(422);
    let long = format!("code\n{}", "x".repeat(2 << 20));
    table(&caller, "/api/products/import", &long).expect(413);
}

fn every_starter_becomes_a_product_by_the_ordinary_call(engine: Engine) {
    let house = House::empty(engine);
    let caller = house.caller();
    let kitchen = json!({ "code": "CHK", "name": "Test Kitchen", "time_zone": "America/New_York", "profile": "us",
        "languages": ["en", "fr"], "currency": "USD" });
    caller.put("/api/kitchen", &kitchen).expect(200);
    let starters = caller.read("/api/starters");
    let groups = starters["groups"].as_array().expect("groups");
    let all: Vec<&Value> = groups
        .iter()
        .flat_map(|group| group["entries"].as_array().into_iter().flatten())
        .collect();
    assert!(all.len() >= 80, "{}", all.len());
    assert!(all.iter().all(|one| one["listed"] == false));
    for one in &all {
        caller.post("/api/products", &one["product"]).expect(201);
    }
    for one in all.iter().filter(|one| one["recipe"].is_array()) {
        let recipe = json!({ "product": one["product"]["code"], "parts": one["recipe"] });
        caller.post("/api/recipes", &recipe).expect(201);
    }
    let again = caller.read("/api/starters");
    assert_eq!(again["groups"][0]["entries"][0]["listed"], true);
    // A dry-cured bacon with its rows; a fact without one says so.
    let of = |code: &str| {
        all.iter()
            .find(|one| one["product"]["code"] == code)
            .expect("it is there")
    };
    let cure = &of("belly-in-dry-cure")["facts"][0];
    assert_eq!(
        (&cure["about"], &cure["rows"][0]["id"]),
        (&json!("cure"), &json!("us-N14"))
    );
    let keep = &of("pork-chop")["facts"][0];
    assert_eq!(
        (&keep["about"], &keep["common_practice"]),
        (&json!("keep"), &json!(true))
    );
}

fn pages_of_the_lists_show_what_is_there_and_forms_are_a_managers(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let index = caller.page("/lists");
    for list in [
        "products",
        "recipes",
        "farms",
        "abattoirs",
        "suppliers",
        "places",
        "printers",
        "probes",
        "till-numbers",
    ] {
        assert!(index.contains(&format!("/lists/{list}\"")), "{list}");
        caller.page(&format!("/lists/{list}"));
    }
    let form = caller.page("/lists/products/ham");
    assert!(
        form.contains("data-call=\"/api/products/ham\" data-method=\"PUT\" data-version=\"1\""),
        "{form}"
    );
    // Beside the strength of a curing salt stand the rows, and the caution.
    assert!(
        form.contains("trade-2.3-588") && form.contains("Local codes and licensed practice decide")
    );
    assert!(
        caller
            .page("/lists/products/new")
            .contains("data-method=\"POST\"")
    );
    assert!(
        caller
            .page("/lists/recipes/ham")
            .contains("data-rows=\"parts\"")
    );
    assert!(
        caller
            .page("/lists/products/import")
            .contains("/api/products/import")
    );
    assert!(
        caller
            .page("/starters")
            .contains("data-order=\"/api/products /api/recipes\"")
    );
    caller.get("/lists/nothing").expect(404);
    caller.get("/lists/products/nothing").expect(404);
    caller.get("/lists/printers/import").expect(404);
    caller.get("/set-up/nothing").expect(404);
    // Rows with their sources; what nobody confirmed, with a form.
    let rules = caller.page("/rules?q=us-N14");
    assert!(
        rules.contains("us-N14") && !rules.contains("/api/row-confirmations"),
        "{rules}"
    );
    let work = caller.page("/rules?show=open");
    assert!(work.contains("/api/row-confirmations"));
    // A cook reads them, and changes nothing.
    let cook = json!({ "name": "cook", "role": "cook" });
    let token = caller.post("/api/tokens", &cook).expect(201).body["token"].clone();
    let cook = caller.showing(token.as_str().expect("a token"));
    let form = cook.page("/lists/products/ham");
    assert!(
        form.contains("disabled") && !form.contains("button class=\"act first grand\""),
        "{form}"
    );
    assert!(
        !cook
            .page("/rules?show=open")
            .contains("/api/row-confirmations")
    );
    cook.get("/set-up/kitchen").expect(403);
    table(&cook, "/api/products/import", "code\nx\n").expect(403);
}

fn today_of_an_empty_kitchen_leads_to_its_set_up_until_that_is_done(engine: Engine) {
    let house = House::empty(engine);
    let caller = house.caller();
    let leads = |to: &str| {
        let today = caller.page("/");
        assert!(
            today.contains(&format!("href=\"/set-up/{to}\"")),
            "{to}: {today}"
        );
    };
    leads("kitchen");
    let kitchen = json!({ "code": "CHK", "name": "Test Kitchen", "time_zone": "America/New_York", "profile": "us",
        "languages": ["en", "fr"], "currency": "USD" });
    caller.put("/api/kitchen", &kitchen).expect(200);
    leads("places");
    // Told once, where one comes from the kitchen's own step: no address, no label for a customer.
    assert!(
        caller
            .page("/set-up/places?from=kitchen")
            .contains("no address yet")
    );
    assert!(!caller.page("/set-up/places").contains("no address yet"));
    let rail = json!({ "code": "rail", "name": "Rail", "kind": "storage" });
    caller.post("/api/places", &rail).expect(201);
    let jo = json!({ "name": "Jo", "roles": ["cook"], "pin": "4826" });
    caller.post("/api/people", &jo).expect(201);
    leads("printer");
    // Tried while it is off: it says so, and no label is on record; but the step is not done.
    let printer =
        json!({ "code": "bench", "name": "Bench", "address": "ipp://127.0.0.1:9/ipp/print" });
    caller.post("/api/printers", &printer).expect(201);
    caller
        .post("/api/printers/bench/test-label", &json!({}))
        .expect(409);
    caller
        .post("/api/printers/none/test-label", &json!({}))
        .expect(404);
    leads("printer");
    for (path, body) in stories::furniture::furniture() {
        let there = ["/api/places", "/api/printers"].contains(&path);
        let answer = caller.post(path, &body);
        assert!(there || answer.status == 201, "{path} {}", answer.body);
    }
    ["animal", "printer"].iter().for_each(|to| leads(to));
    caller.half_pig("7", 9_000);
    assert!(!caller.page("/").contains("/set-up/"), "it has left");
}

fn somebody_reads_in_their_own_units_and_language(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let reading = json!({ "name": "Ruth", "roles": ["cook"], "pin": "4826", "weights": "pounds" });
    let ruth = caller.post("/api/people", &reading).expect(201).body;
    assert_eq!(ruth["weights"], "pounds");
    // A program has none of its own.
    let own = json!({ "weights": "metric" });
    caller.put("/api/sessions/mine/reading", &own).expect(404);
    caller
        .put("/api/sessions/mine/reading", &json!({ "weights": "stone" }))
        .refused(422, "weights");
    let path = format!("/api/people/{}", ruth["id"].as_str().expect("an id"));
    let changed = json!({ "name": "Ruth", "roles": ["cook"], "temperatures": "fahrenheit", "language": "fr" });
    let changed = caller.put_over(&path, "\"v1\"", &changed).expect(200).body;
    assert_eq!(
        (&changed["temperatures"], &changed["weights"]),
        (&json!("fahrenheit"), &Value::Null)
    );
}

fn what_is_kept_otherwise_says_where_its_new_label_is(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("7", 9_000);
    let chops = caller.step("cut").of_grams(&pig, 3_000);
    let chops = chops.into_packs("pork-chop", 3_000, 6).made();
    let moved = caller.deed(
        "/api/moves",
        json!({ "lot": chops, "packs": [2, 3], "state": "frozen" }),
    );
    let labels = moved.expect(201).body["labels"]
        .as_str()
        .expect("its labels")
        .to_owned();
    assert_eq!(labels, format!("/api/lots/{chops}/labels.pdf?packs=2,3"));
    assert_eq!(caller.get(&labels).expect(200).kind, "application/pdf");
    let moved = json!({ "lot": chops, "packs": [4], "to": "cooler" });
    let only_moved = caller.deed("/api/moves", moved);
    assert!(only_moved.body["labels"].is_null(), "{}", only_moved.body);
}

/// Whatever a documented call takes of an entry is asked for by the form of a new one; what is by language, in each.
fn every_setting_of_an_entry_has_its_field_on_a_page(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let document = caller.read("/api/openapi.json");
    for (schema, list) in [
        ("FarmEntry", "farms"),
        ("AbattoirEntry", "abattoirs"),
        ("SupplierEntry", "suppliers"),
        ("PlaceEntry", "places"),
        ("PrinterEntry", "printers"),
        ("ProductEntry", "products"),
    ] {
        let mut settings = Vec::new();
        let entry = &document["components"]["schemas"][schema];
        leaves(&document, entry, "", &mut settings);
        assert!(settings.len() > 3, "{schema}: {settings:?}");
        let form = caller.page(&format!("/lists/{list}/new"));
        // What is told of an entry is nothing that somebody sets.
        settings.retain(|name| name != "warnings");
        let lacks = settings
            .iter()
            .filter(|name| !form.contains(&format!("name=\"{name}\"")));
        let lacks: Vec<&String> = lacks.collect();
        assert!(lacks.is_empty(), "{schema} has no field for {lacks:?}");
    }
}

/// The settings of a schema by the place of their value: `keep.days`.
fn leaves(document: &Value, schema: &Value, at: &str, into: &mut Vec<String>) {
    let named = schema["$ref"]
        .as_str()
        .and_then(|name| name.rsplit('/').next());
    if let Some(name) = named {
        return leaves(document, &document["components"]["schemas"][name], at, into);
    }
    for of in ["oneOf", "anyOf", "allOf"] {
        let mut each = schema[of].as_array().into_iter().flatten();
        if let Some(one) = each.find(|one| one["type"] != "null") {
            return leaves(document, one, at, into);
        }
    }
    let under = |name: &str| {
        [at, name]
            .into_iter()
            .filter(|part| !part.is_empty())
            .collect::<Vec<_>>()
            .join(".")
    };
    match schema["properties"].as_object() {
        Some(properties) => properties
            .iter()
            .for_each(|(name, one)| leaves(document, one, &under(name), into)),
        None if schema["additionalProperties"].is_object() => into.extend(["en", "fr"].map(under)),
        None => into.push(at.to_owned()),
    }
}
