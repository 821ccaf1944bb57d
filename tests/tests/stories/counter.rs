//! The counter: a guest's question over everything on hand, photos of codes, and the page as it is read.

use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_guest_asks_over_everything_on_hand
    a_pot_that_nobody_knows_is_in_no_answer_without
    a_photo_of_a_label_is_read
    the_page_is_read_without_script
}

/// Each lot with the group that it stands in, and why.
fn groups(answer: &Value) -> BTreeMap<String, (String, Value)> {
    let mut all = BTreeMap::new();
    for group in ["yes", "no", "not_known"] {
        for line in answer[group].as_array().expect("a group") {
            let lot = line["lot"].as_str().expect("a lot").to_owned();
            let told = (group.to_owned(), line["because"].clone());
            assert!(all.insert(lot, told).is_none(), "{line} stands twice");
        }
    }
    all
}

fn ask(caller: &Caller, about: &str) -> BTreeMap<String, (String, Value)> {
    groups(&caller.read(&format!("/api/ask?limit=1000&about={about}")))
}

fn a_guest_asks_over_everything_on_hand(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let pork = ask(&caller, "pig");
    // Everything on hand is answered for, once.
    let mut on_hand = BTreeSet::new();
    let mut after = String::new();
    loop {
        let page = caller.read(&format!("/api/lots?limit=200&after={after}"));
        let lots = page["lots"].as_array().expect("lots").iter();
        let lots = lots.filter(|lot| lot["on_hand_grams"] != 0);
        on_hand.extend(lots.map(|lot| lot["code"].as_str().unwrap().to_owned()));
        match page["next"].as_str() {
            Some(next) => after = next.to_owned(),
            None => break,
        }
    }
    assert_eq!(pork.keys().cloned().collect::<BTreeSet<_>>(), on_hand);
    let by_product = |answer: &Value, group: &str| -> BTreeSet<String> {
        let lines = answer[group].as_array().expect("a group").iter();
        lines
            .map(|line| line["product"].as_str().unwrap().to_owned())
            .collect()
    };
    let answer = caller.read("/api/ask?limit=1000&about=pig");
    let with = by_product(&answer, "yes");
    for product in [
        "braised-lamb-shoulder",
        "duck-confit",
        "lard",
        "bacon-sliced",
    ] {
        assert!(with.contains(product), "{product} is not in {with:?}");
    }
    assert!(by_product(&answer, "no").contains("half-roast-chicken"));
    let braised = answer["yes"].as_array().unwrap().iter();
    let mut braised = braised.filter(|line| line["product"] == "braised-lamb-shoulder");
    let because = braised.next().expect("it is there")["because"][0].clone();
    let because = because.as_str().unwrap();
    assert!(
        because.starts_with("pork: ") && because.contains("Pork stock"),
        "{because}"
    );
    // Wine in the pot, brandy in the parfait; what is in a sauce nobody entered is not without.
    let alcohol = caller.read("/api/ask?limit=1000&about=alcohol");
    let with = by_product(&alcohol, "yes");
    assert!(with.contains("braised-lamb-shoulder") && with.contains("chicken-liver-parfait"));
    assert!(by_product(&alcohol, "not_known").contains("mustard-vinegar-sauce"));
    assert!(by_product(&alcohol, "no").contains("lard"));
    assert!(
        by_product(&caller.read("/api/ask?about=nitrite&limit=1000"), "yes")
            .contains("bacon-sliced")
    );
    // Two things at once: with, where it has either; without, where it has neither.
    let (alcohol, both) = (ask(&caller, "alcohol"), ask(&caller, "pig,alcohol"));
    let worst = |lot: &String| {
        let of = [&pork[lot].0, &alcohol[lot].0];
        let has = |group: &str| of.iter().any(|one| *one == group);
        match (has("yes"), has("not_known")) {
            (true, _) => "yes",
            (_, true) => "not_known",
            _ => "no",
        }
    };
    for (lot, (group, _)) in &both {
        assert_eq!(group, worst(lot), "{lot}");
    }
    // What has an allergen by its own record is never said to be without, or not known.
    let milk = ask(&caller, "milk");
    for (lot, (group, because)) in &milk {
        let has = caller.lot(lot)["allergens"]
            .as_array()
            .unwrap()
            .contains(&json!("milk"));
        assert_eq!(has, group == "yes", "{lot}: {because}");
    }
    in_parts(&caller, &pork);
    at_the_counter(&caller);
    refused(&caller);
}

/// In parts it is the same.
fn in_parts(caller: &Caller, whole: &BTreeMap<String, (String, Value)>) {
    let (mut parts, mut after) = (BTreeMap::new(), String::new());
    loop {
        let part = caller.read(&format!("/api/ask?about=pig&limit=7&after={after}"));
        parts.extend(groups(&part));
        match part["next"].as_str() {
            Some(next) => after = next.to_owned(),
            None => break,
        }
    }
    assert_eq!(&parts, whole);
}

/// At one place, and of what is sold there; what is held is there and not sellable.
fn at_the_counter(caller: &Caller) {
    let answer = caller.read("/api/ask?about=milk&place=case&for_sale=true");
    let all = groups(&answer);
    assert!(!all.is_empty());
    for lot in all.keys() {
        let packs = caller.lot(lot)["packs"].clone();
        let mut packs = packs.as_array().unwrap().iter();
        assert!(packs.any(|pack| pack["place"] == "case"), "{lot}");
    }
    let lines = ["yes", "no", "not_known"].map(|group| answer[group].clone());
    let lines = lines.iter().flat_map(|group| group.as_array().unwrap());
    for line in lines {
        let (lot, packs) = (
            line["lot"].as_str().unwrap(),
            line["packs"].as_array().unwrap(),
        );
        let sold = packs.iter().filter(|pack| {
            let verdict = caller.read(&format!("/api/scan?code={lot}/{pack}"))["verdict"].clone();
            verdict == "sell" || verdict == "sell-today"
        });
        assert_eq!(line["sellable"], sold.count(), "{line}");
    }
}

fn refused(caller: &Caller) {
    for (query, field) in [
        ("", "about"),
        ("?about=kosher", "about"),
        ("?about=milk&place=moon", "place"),
        ("?about=milk&limit=0", "limit"),
        ("?about=milk&limit=1001", "limit"),
        ("?about=milk&wat=1", "wat"),
    ] {
        caller.get(&format!("/api/ask{query}")).refused(422, field);
    }
}

fn a_pot_that_nobody_knows_is_in_no_answer_without(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pot = json!({ "place": "cooler", "product": "cooked-pork", "grams": 800,
        "why": "stood behind the stock pots, its label washed off" });
    let pot = caller.deed("/api/adoptions", pot).expect(201).code(0);
    for about in ["milk", "alcohol", "nitrite", "cattle"] {
        let (group, because) = ask(&caller, about)[&pot].clone();
        assert_eq!(group, "not_known", "{about}: {because}");
    }
    // It is taken for pork, and that much is said.
    assert_eq!(ask(&caller, "pig")[&pot].0, "yes");
    // A person lets it go: what is in it nobody knows all the same.
    let freed = json!({ "lot": pot, "what": "released", "why": "the cook remembers the pot" });
    caller.deed("/api/dispositions", freed).expect(201);
    assert_eq!(ask(&caller, "milk")[&pot].0, "not_known");
}

fn photo(name: &str) -> Vec<u8> {
    let folder =
        Path::new(env!("CARGO_MANIFEST_DIR")).join("../server/tests/parsers/corpus/photos");
    std::fs::read(folder.join(name)).unwrap_or_else(|error| panic!("{name}: {error}"))
}

fn a_photo_of_a_label_is_read(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let send = |kind: &str, bytes: &[u8]| caller.post_bytes("/api/photo-scans", kind, bytes);
    for (name, kind, code) in [
        (
            "tub-tilted.jpg",
            "image/jpeg",
            "HTTPS://TRACE.CINDERHOOK.EXAMPLE/L/BRC26159A006/12",
        ),
        (
            "pack-dim.jpg",
            "image/jpeg",
            "HTTPS://TRACE.CINDERHOOK.EXAMPLE/L/BRC26159A006/12",
        ),
        (
            "tag-turned.jpg",
            "image/jpeg",
            "HTTPS://TRACE.CINDERHOOK.EXAMPLE/L/BRC25251A01K/1",
        ),
        (
            "tub-plain.png",
            "image/png",
            "HTTPS://TRACE.CINDERHOOK.EXAMPLE/L/BRC26159A006/12",
        ),
    ] {
        let read = send(kind, &photo(name)).expect(200).body;
        assert_eq!(
            read["codes"][0],
            json!({ "code": code, "kind": "qr" }),
            "{name}"
        );
    }
    for (kind, bytes, status, problem) in [
        ("image/jpeg", photo("no-code.jpg"), 422, "no-code"),
        ("image/jpeg", b"no photo".to_vec(), 422, "not-a-photo"),
        ("image/png", photo("endless.png"), 422, ""),
        ("image/jpeg", Vec::new(), 422, "not-a-photo"),
        ("image/gif", photo("no-code.jpg"), 415, "not-a-photo"),
        ("application/json", b"{}".to_vec(), 415, "not-a-photo"),
        ("image/jpeg", vec![0xff; (10 << 20) + 1], 413, "too-large"),
    ] {
        let answer = send(kind, &bytes).expect(status);
        let told = answer.body["type"].as_str().unwrap_or_default().to_owned();
        assert!(
            told.starts_with("/problems/") && told.ends_with(problem),
            "{told}"
        );
    }
    // Nothing of it is a deed: who has no right to ask what may be sold reads no photo.
    let nobody = caller.showing("");
    let answer = nobody.post_bytes("/api/photo-scans", "image/jpeg", &photo("tub-tilted.jpg"));
    answer.expect(401);
}

fn the_page_is_read_without_script(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let page = |path: &str| {
        let page = caller.get(path).expect(200);
        String::from_utf8_lossy(&page.bytes).into_owned()
    };
    let lot_of = |product: &str| {
        let lots = caller.read(&format!("/api/lots?product={product}"));
        let mut lots = lots["lots"].as_array().expect("lots").iter();
        let lot = lots
            .find(|lot| lot["on_hand_grams"] != 0)
            .expect("a lot on hand");
        lot["code"].as_str().expect("its code").to_owned()
    };
    let lamb = lot_of("braised-lamb-shoulder");
    let pack = caller.lot(&lamb)["packs"]
        .as_array()
        .unwrap()
        .iter()
        .find_map(|pack| (pack["left_grams"] != 0).then(|| pack["pack"].as_u64().unwrap()));
    let lamb = format!("{lamb}/{}", pack.expect("a pack on hand"));
    let seen = page(&format!("/counter?code={lamb}"));
    for said in [
        "SELL",
        "Contains CELERY, SULFITES",
        "contains pork",
        "Ready to eat",
        "Lamb",
    ] {
        assert!(seen.contains(said), "{said} is not in {seen}");
    }
    // Two packs of one lot, and one of another: two departures, and what is in all of them.
    let bacon = caller.noted("L13");
    let with = format!("{bacon}/13,{bacon}/14,{bacon}/13");
    let seen = page(&format!("/counter?code={lamb}&with={with}"));
    let lot = lamb.split('/').next().unwrap();
    for said in [
        "Sold, all 3",
        &format!("&#34;lot&#34;:&#34;{bacon}&#34;,&#34;packs&#34;:[13,14]"),
        &format!("&#34;lot&#34;:&#34;{lot}&#34;"),
        "Together: Contains CELERY, SULFITES",
    ] {
        assert!(seen.contains(said), "{said} is not in {seen}");
    }
    // What may no longer be sold falls out of the basket, and that is said.
    let sold = json!({ "kind": "sell", "lot": bacon, "packs": [14], "by": null });
    caller.deed("/api/departures", sold).expect(201);
    let seen = page(&format!("/counter?with={with}"));
    assert!(
        seen.contains("No longer for sale") && !seen.contains("[13,14]"),
        "{seen}"
    );
    // What was asked, as it is read.
    let seen = page("/ask?asked=yes&about=pig&about=alcohol");
    for said in [
        "A guest asks: pork, alcohol",
        "Without: ",
        "With: ",
        "Not known: ",
    ] {
        assert!(seen.contains(said), "{said} is not in {seen}");
    }
    let seen = page("/ask?q=kosher");
    assert!(
        seen.contains("Nobody here has a word for “kosher”"),
        "{seen}"
    );
    assert!(page("/ask?q=wine").contains("A guest asks: alcohol"));
}
