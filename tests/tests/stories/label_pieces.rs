//! Labels of pieces: a tag a piece or one for all that hang, what a released ham gets, and a panel on a label of its own;
//! and what is called ready on a tag.

use serde_json::{Value, json};
use stories::call::{chrono_day, moment};
use stories::day::{Told, farm};
use stories::labels::{all_lots, codes, run, save, set, words};
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    pieces_that_hang_have_a_tag_each_or_one_together
    a_released_ham_gets_the_label_of_what_it_is
    a_panel_stands_apart_where_the_kitchen_has_it_so
    what_is_stopped_or_past_its_day_is_called_ready_on_no_tag
}

/// The words of each page of a document.
fn pages(house: &House, bytes: &[u8]) -> Vec<String> {
    let file = save(house.folder(), "pieces.pdf", bytes);
    let told = run("pdfinfo", &[file.to_str().unwrap()]);
    let count = told.lines().find_map(|line| line.strip_prefix("Pages:"));
    let count: u32 = count.unwrap().trim().parse().unwrap();
    let page = |nth: u32| {
        let nth = nth.to_string();
        let text = run(
            "pdftotext",
            &[
                "-f",
                &nth,
                "-l",
                &nth,
                "-layout",
                file.to_str().unwrap(),
                "-",
            ],
        );
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    (1..=count).map(page).collect()
}

/// A lot that hangs as several pieces and waits for its release.
fn hanging(caller: &Caller) -> (String, usize) {
    let of = |code: String| {
        let lot = caller.lot(&code);
        let pieces = lot["packs"].as_array().map_or(0, Vec::len);
        let hangs = lot["product"] == "duck-prosciutto" && pieces > 1;
        let left = lot["on_hand_grams"].as_f64() > Some(0.0);
        (hangs && left).then_some((code, pieces))
    };
    all_lots(caller).into_iter().find_map(of).unwrap()
}

fn pieces_that_hang_have_a_tag_each_or_one_together(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let (lot, pieces) = hanging(&caller);
    let path = format!("/api/lots/{lot}/labels.pdf");
    // All of a lot in one go, each with its own weight.
    let each = pages(&house, &caller.get(&path).expect(200).bytes);
    assert_eq!(each.len(), pieces);
    for (nth, text) in (1..).zip(&each) {
        assert!(text.contains(&format!("piece {nth} of {pieces}")), "{text}");
    }
    let together = caller
        .get(&format!("{path}?together=true"))
        .expect(200)
        .bytes;
    let all = pages(&house, &together);
    assert_eq!(all.len(), 1);
    assert!(
        all[0].contains(&format!("{pieces} pieces: weigh together")),
        "{all:?}"
    );
    // Its code names the lot.
    let read = codes(&save(house.folder(), "together.pdf", &together), "203");
    let (_, code) = read.last().unwrap();
    assert!(code.ends_with(&format!("/L/{lot}")), "{code}");
    assert_eq!(
        caller.read(&format!("/api/scan?code={code}"))["lot"],
        lot.as_str()
    );
    let asked = json!({ "lot": lot, "together": true });
    let handed = caller.deed("/api/label-documents", asked).expect(201);
    assert_eq!(handed.body["prints"].as_array().unwrap().len(), 1);
    // What does not hang has a label a pack.
    let jar = caller.noted("L31");
    let refused = caller.get(&format!("/api/lots/{jar}/labels.pdf?together=true"));
    refused.refused(422, "together");
}

fn a_released_ham_gets_the_label_of_what_it_is(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let ham = caller.noted("H-02");
    let text = || {
        let bytes = caller
            .get(&format!("/api/lots/{ham}/labels.pdf"))
            .expect(200)
            .bytes;
        words(&save(house.folder(), "ham.pdf", &bytes)).to_uppercase()
    };
    let hangs = text();
    assert!(
        hangs.contains("NOT RELEASED") && hangs.contains("GREEN"),
        "{hangs}"
    );
    caller.release(&ham).by("Oda Marsh").done();
    let now = text();
    assert!(
        !now.contains("NOT RELEASED") && !now.contains("GREEN"),
        "{now}"
    );
    assert!(now.contains("READY TO EAT"), "{now}");
}

fn a_panel_stands_apart_where_the_kitchen_has_it_so(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let lots = all_lots(&caller);
    let bacon = lots.iter().find(|code| {
        let lot = caller.lot(code);
        lot["product"] == "bacon-sliced" && lot["on_hand_grams"].as_f64() > Some(0.0)
    });
    let bacon = bacon.unwrap();
    let path = format!("/api/lots/{bacon}/labels.pdf?packs=9");
    let one = pages(&house, &caller.get(&path).expect(200).bytes);
    assert_eq!(one.len(), 1);
    set(&caller, &[("panel_apart", json!(true))]);
    let two = pages(&house, &caller.get(&path).expect(200).bytes);
    assert_eq!(two.len(), 2);
    let heading = "Safe Handling Instructions";
    assert!(
        !two[0].contains(heading) && two[1].contains(heading),
        "{two:?}"
    );
    let lot = caller.lot(bacon)["shown"].as_str().unwrap().to_owned();
    assert!(
        two.iter().all(|page| page.contains(&format!("{lot} / 9"))),
        "{two:?}"
    );
    // One print, two labels.
    let handed = caller.deed(
        "/api/label-documents",
        json!({ "lot": bacon, "packs": [9] }),
    );
    let handed = handed.expect(201).body;
    assert_eq!(handed["prints"].as_array().map(Vec::len), Some(1));
    let document: &Value = &handed["document"];
    let bytes = caller.get(document.as_str().unwrap()).expect(200).bytes;
    assert_eq!(pages(&house, &bytes).len(), 2);
    // What needs no panel has one label all the same.
    let jar = caller.noted("L31");
    let of_jar = caller
        .get(&format!("/api/lots/{jar}/labels.pdf?packs=7"))
        .expect(200);
    assert_eq!(pages(&house, &of_jar.bytes).len(), 1);
}

fn what_is_stopped_or_past_its_day_is_called_ready_on_no_tag(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let days = |days: i64| moment(-days * 24 * 60);
    let roast = json!({ "code": "roast", "names": { "en": "Roast" }, "kind": "cooked", "species": "pig",
        "raw": false, "storage": "chilled", "for_sale": true, "price_minor_per_kg": 100,
        "keep": { "days": 3, "from": "made", "day_one_counts": true } });
    caller.post("/api/products", &roast).expect(201);
    let pig = |carcass: &str, killed: i64, at: String| {
        let animal = farm("BRC")
            .killed(chrono_day(-killed))
            .carcass(carcass)
            .side("left");
        let pig = caller.receive("pig-half").grams(4_000).from(animal);
        pig.at(at).note("Entered late").made()
    };
    let (old, new) = (pig("1", 8, days(7)), pig("2", 2, moment(-1_100)));
    let cook = |pig: &str, at: String| {
        let cooked = caller.step("cook").of_grams(pig, 500);
        cooked.into("roast", 500).held(80.0, 30).at(at).made()
    };
    let is_called_ready = |lot: &str| {
        let called = ["tub", "tub-large", "freezer", "freezer-large"].map(|template| {
            let path = format!("/api/lots/{lot}/labels.pdf?template={template}");
            let bytes = caller.get(&path).expect(200).bytes;
            let text = words(&save(house.folder(), "tag.pdf", &bytes)).to_uppercase();
            let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
            assert!(text.contains("ROAST"), "{text}");
            text.contains("READY TO EAT")
        });
        called.contains(&true)
    };
    assert!(!is_called_ready(&cook(&old, days(6))), "past its day");
    let fresh = cook(&new, moment(-1_000));
    assert!(is_called_ready(&fresh));
    // Found warm twice: us-T8.
    for minutes in [600, 10] {
        let read = json!({ "lot": fresh, "celsius": 20, "at": moment(-minutes) });
        caller.deed("/api/readings", read).expect(201);
    }
    assert!(!is_called_ready(&fresh), "found warm");
    let held = cook(&new, moment(-5));
    assert!(is_called_ready(&held));
    let hold = json!({ "lots": [{ "lot": held }], "why": "The seal was broken" });
    caller.deed("/api/holds", hold).expect(201);
    assert!(!is_called_ready(&held), "held");
    house.check();
}
