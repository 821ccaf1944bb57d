//! Labels of a whole kitchen, in every place and language, judged by programs that nobody here wrote.

use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};
use std::process::Command;
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    gs1_and_till_codes_only_where_the_kitchen_has_numbers
    a_long_row_of_labels_comes_in_parts
    labels_on_a_sheet
    a_pack_says_uncured_with_all_that_goes_with_it
    what_does_not_fit_is_told_with_the_label_that_would_hold_it
    a_hanging_piece_has_a_tag_until_it_is_released
}

fn run(program: &str, args: &[&str]) -> String {
    let out = Command::new(program)
        .args(args)
        .output()
        .unwrap_or_else(|error| panic!("{program} is missing ({error}); tests/run installs it"));
    let told = String::from_utf8_lossy(&out.stderr);
    assert!(out.status.success(), "{program} {args:?}: {told}");
    String::from_utf8_lossy(&out.stdout).into_owned()
}

/// Changes the kitchen's own entry.
fn set(caller: &Caller, changes: &[(&str, Value)]) {
    let kitchen = caller.get("/api/kitchen").expect(200);
    let mut body = kitchen.body.clone();
    for told in ["set_up", "missing"] {
        body.as_object_mut().unwrap().remove(told);
    }
    for (field, value) in changes {
        body[*field] = value.clone();
    }
    let etag = kitchen.etag.unwrap();
    caller.put_over("/api/kitchen", &etag, &body).expect(200);
}

/// Changes a product.
fn change(caller: &Caller, product: &str, changes: &[(&str, Value)]) {
    let path = format!("/api/products/{product}");
    let entry = caller.get(&path).expect(200);
    let mut body = entry.body.clone();
    for (field, value) in changes {
        body[*field] = value.clone();
    }
    caller
        .put_over(&path, &entry.etag.unwrap(), &body)
        .expect(200);
}

fn save(folder: &Path, name: &str, bytes: &[u8]) -> PathBuf {
    let file = folder.join(name);
    std::fs::write(&file, bytes).unwrap();
    file
}

fn words(pdf: &Path) -> String {
    let text = run("pdftotext", &["-layout", pdf.to_str().unwrap(), "-"]);
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// What both readers see on the first page: kind and text of each code.
fn codes(pdf: &Path, dpi: &str) -> BTreeSet<(String, String)> {
    let stem = pdf.with_extension("");
    let (file, stem) = (pdf.to_str().unwrap(), stem.to_str().unwrap());
    run(
        "pdftoppm",
        &["-r", dpi, "-gray", "-png", "-singlefile", file, stem],
    );
    let picture = format!("{stem}.png");
    let python = std::env::var("GAMBREL_PYTHON").unwrap_or_else(|_| "python3".into());
    let script = "import sys, zxingcpp\nfrom PIL import Image\nfor c in zxingcpp.read_barcodes(Image.open(sys.argv[1])): print(c.symbology_identifier, c.bytes.decode().replace(chr(29), '|'))";
    let by_zxing = run(&python, &["-c", script, &picture]);
    let by_zbar = run("zbarimg", &["-q", "--raw", &picture]);
    let texts = |text: &str| -> BTreeSet<String> { text.lines().map(str::to_owned).collect() };
    let codes: BTreeSet<(String, String)> = by_zxing
        .lines()
        .map(|line| line.split_once(' ').unwrap())
        .map(|(kind, text)| (kind.to_owned(), text.to_owned()))
        .collect();
    let both: BTreeSet<String> = codes.iter().map(|(_, text)| text.clone()).collect();
    assert_eq!(texts(&by_zbar.replace('\u{1d}', "|")), both);
    codes
}

/// Every lot of the record, oldest last.
fn all_lots(caller: &Caller) -> Vec<String> {
    let mut codes: Vec<String> = Vec::new();
    loop {
        let after = codes
            .last()
            .map_or(String::new(), |code| format!("&after={code}"));
        let page = caller
            .get(&format!("/api/lots?limit=200{after}"))
            .expect(200)
            .body;
        let lots = page["lots"].as_array().unwrap().clone();
        codes.extend(
            lots.iter()
                .map(|lot| lot["code"].as_str().unwrap().to_owned()),
        );
        if lots.len() < 200 {
            return codes;
        }
    }
}

/// Every lot of the scenario has its label in every place and language, or is refused in words; the
/// fullest and the emptiest of each size are judged.
#[test]
fn every_lot_in_every_place_and_language() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let lots = all_lots(&caller);
    assert!(lots.len() > 250);
    let settings = [
        ("us", json!(["en"])),
        ("us", json!(["en", "fr"])),
        ("ca", json!(["en", "fr"])),
        ("ca", json!(["fr", "en"])),
        ("eu", json!(["fr"])),
        ("eu", json!(["en", "fr"])),
        ("uk", json!(["en"])),
    ];
    for (place, languages) in settings {
        set(
            &caller,
            &[("profile", json!(place)), ("languages", languages.clone())],
        );
        let mut by_size: BTreeMap<String, Vec<(usize, Vec<u8>, String)>> = BTreeMap::new();
        for lot in &lots {
            let answer = caller.get(&format!("/api/lots/{lot}/labels.pdf?packs=1"));
            assert_eq!(
                answer.status, 200,
                "{place} {languages} {lot}: {}",
                answer.body
            );
            let at = answer
                .bytes
                .windows(9)
                .position(|part| part == b"/MediaBox");
            let size = answer.bytes[at.unwrap()..].iter().take(40);
            let size = String::from_utf8_lossy(&size.copied().collect::<Vec<u8>>()).into_owned();
            let one = (answer.bytes.len(), answer.bytes, lot.clone());
            by_size.entry(size).or_default().push(one);
        }
        assert!(by_size.len() >= 4, "{place}: {:?}", by_size.keys());
        for mut labels in by_size.into_values() {
            labels.sort();
            let (least, most) = (labels.first().unwrap().clone(), labels.pop().unwrap());
            for (length, bytes, lot) in [least, most] {
                assert!(length < 40_000, "{lot}: {length} bytes");
                judge(&house, &caller, &lot, &bytes);
            }
        }
    }
}

fn judge(house: &House, caller: &Caller, lot: &str, bytes: &[u8]) {
    let pdf = save(house.folder(), &format!("{lot}.pdf"), bytes);
    run("qpdf", &["--check", pdf.to_str().unwrap()]);
    let fonts = run("pdffonts", &[pdf.to_str().unwrap()]);
    assert!(
        fonts
            .lines()
            .skip(2)
            .all(|font| font.contains(" yes yes yes ")),
        "{fonts}"
    );
    let read = caller.get(&format!("/api/lots/{lot}")).expect(200).body;
    let text = words(&pdf);
    let shown = read["shown"].as_str().unwrap();
    assert!(text.contains(shown), "{shown} in {text}");
    for dpi in ["203", "300"] {
        for (_, code) in codes(&pdf, dpi) {
            let scanned = caller
                .get(&format!("/api/scan?code={code}"))
                .expect(200)
                .body;
            assert_eq!(scanned["lot"], lot, "{code}");
        }
    }
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
    let step = json!({ "kind": "mix", "place": "bench", "inputs": [{ "lot": pork, "pack": 20 }],
        "outputs": [{ "product": "pork-rillettes", "grams": 240, "pack_count": 2 }] });
    let made = caller.deed("/api/steps", step).expect(201).code(0);
    let numbered = |query: &str| {
        let path = format!("/api/lots/{made}/labels.pdf?packs=2{query}");
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
            16 + 2 + 12,
            "GTIN and lot fit a roll of 62 mm: {bars}"
        );
        assert!(bars.ends_with(&format!("10{made}")), "{bars}");
        let (_, link) = read.last().unwrap();
        let link_of =
            format!("HTTPS://TRACE.CINDERHOOK.EXAMPLE/01/09501101531000/10/{made}/21/{made}-2");
        assert_eq!(link, &link_of);
        for (_, code) in &read {
            let scanned = caller
                .get(&format!("/api/scan?code={code}"))
                .expect(200)
                .body;
            assert_eq!(scanned["lot"], made.as_str(), "{code}");
        }
        let scanned = caller
            .get(&format!("/api/scan?code={link}"))
            .expect(200)
            .body;
        assert_eq!(scanned["pack"], 2);
    }
    // The till: standards 1.4, GB item 42 with its price.
    let kitchen = caller.get("/api/kitchen").expect(200);
    let mut body = kitchen.body.clone();
    for told in ["set_up", "missing"] {
        body.as_object_mut().unwrap().remove(told);
    }
    body["till_layout"] = json!("95PPPPPCVVVV price 2");
    let refused = caller.put_over("/api/kitchen", &kitchen.etag.unwrap(), &body);
    refused.refused(422, "till_layout");
    set(&caller, &[("till_layout", json!("20PPPPPPCVVVV price 2"))]);
    change(&caller, "pork-rillettes", &[("till_number", json!(42))]);
    let step = json!({ "kind": "mix", "place": "bench", "inputs": [{ "lot": pork, "pack": 21 }],
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
        digits.starts_with("20000042") && digits.len() == 13,
        "{digits}"
    );
    assert!(words(&pdf).contains(digits.as_str()), "for the eye too");
}

fn a_long_row_of_labels_comes_in_parts(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("0608-17", 45_000);
    let step = json!({ "kind": "cut", "place": "bench", "inputs": [{ "lot": pig }],
        "outputs": [{ "product": "pork-trim", "grams": 40_000, "pack_count": 900 }] });
    let done = caller.deed("/api/steps", step).expect(201);
    let (lot, labels) = (
        done.code(0),
        done.body["labels"].as_str().unwrap().to_owned(),
    );
    let pages = |path: &str| {
        let pdf = save(
            house.folder(),
            "part.pdf",
            &caller.get(path).expect(200).bytes,
        );
        let info = run("pdfinfo", &[pdf.to_str().unwrap()]);
        let pages = info.lines().find_map(|line| line.strip_prefix("Pages:"));
        pages.unwrap().trim().parse::<u32>().unwrap()
    };
    let of_lot = format!("/api/lots/{lot}/labels.pdf");
    for path in [&labels, &of_lot] {
        let refused = caller.get(path).refused(422, "part");
        assert!(
            refused.body["detail"].as_str().unwrap().contains("3 parts"),
            "{}",
            refused.body
        );
        let parts: Vec<u32> = (1..=3)
            .map(|part| pages(&format!("{path}?part={part}")))
            .collect();
        assert_eq!(parts, [400, 400, 100]);
        caller.get(&format!("{path}?part=4")).refused(422, "part");
        caller.get(&format!("{path}?part=0")).refused(422, "part");
    }
    assert_eq!(pages(&format!("{of_lot}?packs=1-20,900")), 21);
    // Each part has its own packs.
    let last = caller.get(&format!("{of_lot}?part=3")).expect(200).bytes;
    let text = words(&save(house.folder(), "last.pdf", &last));
    assert!(text.contains("/ 801") && text.contains("/ 900") && !text.contains("/ 800 "));
}

fn labels_on_a_sheet(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let stock = caller.noted("L24");
    for (sheet, size, places) in [("letter", "612 x 792", 12), ("a4", "595", 15)] {
        let path =
            format!("/api/lots/{stock}/labels.pdf?packs=1-8&template=tub&dpi=300&sheet={sheet}");
        let one = save(
            house.folder(),
            "sheet.pdf",
            &caller.get(&path).expect(200).bytes,
        );
        let info = run("pdfinfo", &[one.to_str().unwrap()]);
        assert!(
            info.contains(size) && info.contains("Pages:           1"),
            "{info}"
        );
        let read = codes(&one, "300");
        assert_eq!(
            read.iter().filter(|(kind, _)| kind == "]Q1").count(),
            8,
            "{read:?}"
        );
        let skip = places - 2;
        let two = caller.get(&format!("{path}&skip={skip}")).expect(200).bytes;
        let info = run(
            "pdfinfo",
            &[save(house.folder(), "two.pdf", &two).to_str().unwrap()],
        );
        assert!(info.contains("Pages:           2"), "{info}");
        caller
            .get(&format!("{path}&skip={places}"))
            .refused(409, None);
    }
    let path = format!("/api/lots/{stock}/labels.pdf?packs=1&sheet=poster");
    caller.get(&path).refused(422, "sheet");
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
    // us-U6: celery powder is told.
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

fn what_does_not_fit_is_told_with_the_label_that_would_hold_it(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let goat = all_lots(&caller).into_iter().find(|lot| {
        caller.get(&format!("/api/lots/{lot}")).expect(200).body["product"] == "goat-curry"
    });
    let path = format!("/api/lots/{}/labels.pdf?packs=1", goat.unwrap());
    caller.get(&path).expect(200);
    let refused = caller
        .get(&format!("{path}&template=pack-us"))
        .refused(409, None);
    let detail = refused.body["detail"].as_str().unwrap();
    for says in ["pack-us", "62 × 100 mm", "they need", "would hold it"] {
        assert!(detail.contains(says), "{says} in {detail}");
    }
    caller
        .get(&format!("{path}&template=poster"))
        .refused(422, "template");
    // A name of 400 letters, letters from right to left, a little face: refused in words.
    for (nth, name) in [
        "pork and beans ".repeat(13),
        "נקניקייה".to_owned(),
        "Wurst 🌭".to_owned(),
    ]
    .iter()
    .enumerate()
    {
        let code = format!("odd-{nth}");
        let product = json!({ "code": code, "names": { "en": name.trim() }, "kind": "cut", "species": "pig", "raw": true });
        caller.post("/api/products", &product).expect(201);
        let step = json!({ "kind": "cut", "place": "bench", "inputs": [{ "lot": caller.noted("L25"), "pack": 10 + nth }],
            "outputs": [{ "product": code, "grams": 100 }] });
        let lot = caller.deed("/api/steps", step).expect(201).code(0);
        let refused = caller
            .get(&format!("/api/lots/{lot}/labels.pdf"))
            .refused(409, None);
        let detail = refused.body["detail"].as_str().unwrap();
        assert!(detail.contains("name"), "{detail}");
    }
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
    let receiving = tag("S10");
    for says in [
        "RECEIVED",
        "Brindlecombe Pigs",
        "Killed Mon 8 Jun 2026",
        "0608-17",
        "45 kg",
    ] {
        assert!(receiving.contains(says), "{says} in {receiving}");
    }
}
