//! What stands on labels and in their codes, by what the pack is and what the kitchen has.

use serde_json::{Value, json};
use std::collections::BTreeSet;
use stories::day::Told;
use stories::labels::{change, codes, save, set, words};
use stories::{Engine, House, on_both_engines};

on_both_engines! {
    gs1_and_till_codes_only_where_the_kitchen_has_numbers
    a_pack_says_uncured_with_all_that_goes_with_it
    a_hanging_piece_has_a_tag_until_it_is_released
    canada_wants_both_languages_or_an_exemption
    a_pack_in_gas_says_so
    a_pack_without_air_says_how_long
    labels_are_in_languages_that_have_words
}

fn gs1_and_till_codes_only_where_the_kitchen_has_numbers(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let jar = caller.noted("L31");
    let label = |template: &str| {
        let path = format!("/api/lots/{jar}/labels.pdf?packs=7&template={template}");
        save(
            house.folder(),
            "gs1.pdf",
            &caller.get(&path).expect(200).bytes,
        )
    };
    let kinds = |codes: &BTreeSet<(String, String)>| -> Vec<String> {
        codes.iter().map(|(kind, _)| kind.clone()).collect()
    };
    // standards 1.4: without numbers of its own, plain codes that are no GS1 data.
    assert_eq!(kinds(&codes(&label("pack-tall"), "203")), ["]C0", "]Q1"]);
    // A restricted number is no GTIN; standards 1.2 and 8 have good and bad ones.
    for wrong in ["2000042212995", "9501101531001", "0212345678903"] {
        let path = "/api/products/pork-rillettes";
        let entry = caller.get(path).expect(200);
        let mut body = entry.body.clone();
        body["gtin"] = json!(wrong);
        let refused = caller.put_over(path, &entry.etag.unwrap(), &body);
        refused.refused(422, "gtin");
    }
    change(
        &caller,
        "pork-rillettes",
        &[("gtin", json!("9501101531000"))],
    );
    // The lot keeps the product as it was; the next one has the number.
    assert_eq!(kinds(&codes(&label("pack-tall"), "203")), ["]C0", "]Q1"]);
    let pork = caller.noted("L13");
    let packs = caller.lot(&pork)["packs"].clone();
    let on_hand: Vec<&Value> = packs
        .as_array()
        .unwrap()
        .iter()
        .filter(|pack| pack["left_grams"] == 250)
        .map(|pack| &pack["pack"])
        .collect();
    let step = json!({ "kind": "cook", "place": "stove", "inputs": [{ "lot": pork, "pack": on_hand[0] }],
        "readings": { "celsius": 90, "hold_minutes": 20 },
        "outputs": [{ "product": "pork-rillettes", "grams": 240, "pack_count": 2 }] });
    let made = caller.deed("/api/steps", step).expect(201).code(0);
    let numbered = |query: &str| {
        let path = format!("/api/lots/{made}/labels.pdf?packs=2&template=pack-wide{query}");
        save(
            house.folder(),
            "gs1.pdf",
            &caller.get(&path).expect(200).bytes,
        )
    };
    for dpi in ["203", "300"] {
        let read = codes(&numbered(&format!("&dpi={dpi}")), dpi);
        let (kind, bars) = read.first().unwrap();
        assert_eq!(kind, "]C1", "GS1-128");
        assert_eq!(
            bars.len(),
            16 + 8 + 2 + 12,
            "GTIN, last day and lot: {bars}"
        );
        assert!(bars.ends_with(&format!("10{made}")), "{bars}");
        let clear = words(&numbered(""));
        assert!(clear.contains(&format!("(10) {made}")), "{clear}");
        let (_, link) = read.last().unwrap();
        let link_of =
            format!("HTTPS://TRACE.CINDERHOOK.EXAMPLE/01/09501101531000/10/{made}/21/{made}-2");
        assert_eq!(link, &link_of);
        for (_, code) in &read {
            let scanned = caller.read(&format!("/api/scan?code={code}"));
            assert_eq!(scanned["lot"], made.as_str(), "{code}");
        }
        let scanned = caller.read(&format!("/api/scan?code={link}"));
        assert_eq!(scanned["pack"], 2);
    }
    // The till: standards 1.4, GB item 42 with its price.
    let kitchen = caller.get("/api/kitchen").expect(200);
    let mut body = kitchen.body.clone();
    body["till_layout"] = json!("95PPPPPCVVVV price 2");
    let refused = caller.put_over("/api/kitchen", &kitchen.etag.unwrap(), &body);
    refused.refused(422, "till_layout");
    set(&caller, &[("till_layout", json!("20PPPPPCVVVV price 2"))]);
    change(&caller, "pork-rillettes", &[("till_number", json!(42))]);
    let step = json!({ "kind": "cook", "place": "stove", "inputs": [{ "lot": pork, "pack": on_hand[1] }],
        "readings": { "celsius": 90, "hold_minutes": 20 },
        "outputs": [{ "product": "pork-rillettes", "grams": 240, "pack_count": 2 }] });
    let sold = caller.deed("/api/steps", step).expect(201).code(0);
    let path = format!("/api/lots/{sold}/labels.pdf?packs=1");
    let pdf = save(
        house.folder(),
        "till.pdf",
        &caller.get(&path).expect(200).bytes,
    );
    let read = codes(&pdf, "203");
    let till = read.iter().find(|(kind, _)| kind == "]E0");
    let (_, digits) = till.unwrap_or_else(|| panic!("{read:?}"));
    assert!(
        digits.starts_with("2000042") && digits.len() == 13,
        "{digits}"
    );
    assert!(words(&pdf).contains(digits.as_str()), "for the eye too");
    // The counter knows the product by it, and the pack by our own code beside it.
    let scanned = caller.read(&format!("/api/scan?code={digits}"));
    assert!(
        scanned["says"].as_str().unwrap().contains("rillettes"),
        "{scanned}"
    );
    let own = read.iter().find(|(kind, _)| kind == "]Q1").unwrap();
    let scanned = caller.read(&format!("/api/scan?code={}", own.1));
    assert_eq!(
        (&scanned["lot"], &scanned["pack"]),
        (&json!(sold), &json!(1))
    );
    // What goes beyond the places is told, and our own code stands alone.
    set(&caller, &[("till_layout", json!("20PPPPPPPPVV price 2"))]);
    let answer = caller.get(&path).expect(200);
    assert!(
        answer.warnings.contains("till-price-too-much"),
        "{}",
        answer.warnings
    );
    let read = codes(&save(house.folder(), "beyond.pdf", &answer.bytes), "203");
    assert!(read.iter().all(|(kind, _)| kind != "]E0"), "{read:?}");
}

fn a_pack_says_uncured_with_all_that_goes_with_it(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let bacon = |code: &str, uncured: Value| {
        let product = json!({ "code": code, "names": { "en": "Bacon" }, "kind": "cured", "species": "pig",
            "raw": true, "keep": { "days": 7, "from": "made", "day_one_counts": true },
            "price_minor_per_kg": 2_600, "uncured": uncured });
        caller.post("/api/products", &product).expect(201);
        let pig = caller.half_pig(code, 10_000);
        let step = json!({ "kind": "cut", "place": "bench", "inputs": [{ "lot": pig }],
            "outputs": [{ "product": code, "grams": 500 }] });
        caller.deed("/api/steps", step).expect(201).code(0)
    };
    let plain = bacon("uncured-bacon", json!({ "resembles": true }));
    let path = format!("/api/lots/{plain}/labels.pdf");
    let text = words(&save(
        house.folder(),
        "plain.pdf",
        &caller.get(&path).expect(200).bytes,
    ));
    // us-U1, U2, U3: before the name, beside it, and how cold it must be.
    for says in [
        "Uncured Bacon",
        "No Nitrate or Nitrite Added",
        "Not Preserved--Keep Refrigerated Below 40",
    ] {
        assert!(text.contains(says), "{says} in {text}");
    }
    // us-U6: celery powder is declared.
    let celery = bacon(
        "celery-bacon",
        json!({ "resembles": true, "natural": "celery powder" }),
    );
    let answer = caller.get(&format!("/api/lots/{celery}/labels.pdf"));
    if answer.status == 200 {
        let text = words(&save(house.folder(), "celery.pdf", &answer.bytes));
        assert!(text.contains("celery powder"), "{text}");
    } else {
        let refused = answer.refused(409, None);
        assert!(
            refused.body["detail"].as_str().unwrap().contains("uncured"),
            "{}",
            refused.body
        );
    }
    // us-U5: it must be like the cured one.
    let other = bacon("odd-bacon", json!({ "resembles": false }));
    let refused = caller
        .get(&format!("/api/lots/{other}/labels.pdf"))
        .refused(409, None);
    assert!(
        refused.body["detail"]
            .as_str()
            .unwrap()
            .contains("cannot be labelled as uncured")
    );
}

fn a_hanging_piece_has_a_tag_until_it_is_released(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let tag = |name: &str| {
        let path = format!("/api/lots/{}/labels.pdf?packs=1", caller.noted(name));
        words(&save(
            house.folder(),
            "tag.pdf",
            &caller.get(&path).expect(200).bytes,
        ))
    };
    let hanging = tag("H-04");
    for says in ["NOT RELEASED", "Green", "kg", "Salted", "Release at", "Who"] {
        assert!(hanging.contains(says), "{says} in {hanging}");
    }
    assert!(
        !hanging.contains("READY TO EAT") && !hanging.contains("USE BY"),
        "{hanging}"
    );
    assert!(
        !tag("H-01").contains("NOT RELEASED"),
        "it was released on 22 June"
    );
    let path = format!(
        "/api/lots/{}/labels.pdf?packs=13&template=hold",
        caller.noted("L13")
    );
    let hold = words(&save(
        house.folder(),
        "hold.pdf",
        &caller.get(&path).expect(200).bytes,
    ));
    for says in [
        "HOLD",
        "Do not use, sell or move.",
        "Released on",
        "BRC-26159-A0T-M / 13",
    ] {
        assert!(hold.contains(says), "{says} in {hold}");
    }
    let receiving = tag("S10");
    for says in [
        "RECEIVED",
        "Brindlecombe Pigs",
        "Killed Mon Jun 8 2026",
        "0608-17",
        "45 kg",
    ] {
        assert!(receiving.contains(says), "{says} in {receiving}");
    }
}

fn canada_wants_both_languages_or_an_exemption(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let path = format!("/api/lots/{}/labels.pdf?packs=7", caller.noted("L31"));
    // canada-eu-uk-2.18.
    set(
        &caller,
        &[("profile", json!("ca")), ("languages", json!(["en"]))],
    );
    let refused = caller.get(&path).refused(409, None);
    let detail = refused.body["detail"].as_str().unwrap();
    assert!(
        detail.contains("fr is missing") && detail.contains("approval"),
        "{detail}"
    );
    // The kitchen's own labels may be in one.
    let stock = format!("/api/lots/{}/labels.pdf?packs=1", caller.noted("L24"));
    caller.get(&stock).expect(200);
    let exemption = json!([{ "for": "languages", "number": "LOCAL-DEMO-1", "until": null }]);
    set(&caller, &[("approvals", exemption)]);
    caller.get(&path).expect(200);
}

fn a_pack_without_air_says_how_long(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    set(&caller, &[("languages", json!(["en", "fr"]))]);
    let chop = json!({ "code": "chop", "names": { "en": "Chop", "fr": "Côtelette" }, "kind": "cut", "species": "pig",
        "storage": "chilled", "raw": true, "for_sale": true, "price_minor_per_kg": 100,
        "keep": { "days": 60, "from": "packed", "day_one_counts": true } });
    caller.post("/api/products", &chop).expect(201);
    let pig = caller.half_pig("0608-17", 10_000);
    let pack = || caller.step("pack").of_grams(&pig, 500).into("chop", 500);
    let label = |lot: &str| {
        let path = format!("/api/lots/{lot}/labels.pdf?packs=1");
        let pdf = caller.get(&path).expect(200).bytes;
        let text = words(&save(house.folder(), "pack.pdf", &pdf));
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    // us-R4, with the days of us-R5.
    let sealed = label(&pack().which("packaging", "vacuum").done().code(0));
    let english =
        "Hold at 41 °F or below. Discard after the use-by day, and within 30 days of packing.";
    assert!(sealed.contains(english), "{sealed}");
    let french = "Jeter après le jour limite, et dans les 30 jours de l’emballage.";
    assert!(sealed.contains(french), "{sealed}");
    let open = label(&pack().done().code(0));
    assert!(!open.contains("Discard"), "{open}");
}

fn a_pack_in_gas_says_so(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    set(&caller, &[("profile", json!("eu"))]);
    let pig = caller.half_pig("0608-17", 10_000);
    for (packaging, says) in [("modified-atmosphere", true), ("vacuum", false)] {
        let pack = caller
            .step("pack")
            .of_grams(&pig, 500)
            .into("pork-chop", 500);
        let lot = pack.which("packaging", packaging).done().code(0);
        let path = format!("/api/lots/{lot}/labels.pdf?packs=1");
        let pdf = caller.get(&path).expect(200).bytes;
        let text = words(&save(house.folder(), "pack.pdf", &pdf));
        // confirmed-X-EU-31
        let said = text.contains("Packaged in a protective atmosphere");
        assert_eq!(said, says, "{text}");
    }
}

fn labels_are_in_languages_that_have_words(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let kitchen = caller.get("/api/kitchen").expect(200);
    let etag = kitchen.etag.unwrap();
    let mut body = kitchen.body.clone();
    for wrong in [json!(["de"]), json!(["de", "fr"])] {
        body["languages"] = wrong;
        let refused = caller.put_over("/api/kitchen", &etag, &body);
        let refused = refused.refused(422, "languages[0]");
        let detail = refused.body["detail"].as_str().unwrap();
        assert!(
            detail.contains("de") && detail.contains("en, fr"),
            "{detail}"
        );
    }
    body["languages"] = json!(["fr"]);
    caller.put_over("/api/kitchen", &etag, &body).expect(200);
}
