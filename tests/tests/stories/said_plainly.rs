//! What a fresh reader stopped to think at: a sale that a recall counts and does not name, a sale that was taken back and
//! reads like one, a scanned pack whose number is typed anew, cuts that go to where a side hangs, a receipt without its thing.

use serde_json::{Value, json};
use stories::day::Told;
use stories::recall::{begin, chops, incident};
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_recall_names_what_was_sold_and_asks_first_who_phoned
    a_sale_that_was_taken_back_is_told_as_none
    the_pack_in_the_hand_is_the_one_that_is_thrown_away
    cuts_of_the_first_side_are_asked_for_their_place
    a_receipt_of_a_correction_or_a_hold_names_the_thing
}

fn id(deed: &Value) -> String {
    deed["id"].as_str().expect("an id").to_owned()
}

/// A page as it is read: without its marks.
fn read(caller: &Caller, path: &str) -> String {
    let page = caller.page(path);
    let mut text = String::new();
    let mut within = false;
    for letter in page.chars() {
        match letter {
            '<' => within = true,
            '>' => within = false,
            _ if !within => text.push(letter),
            _ => {}
        }
    }
    text
}

fn shown(caller: &Caller, lot: &str) -> String {
    let shown = caller.lot(lot)["shown"].clone();
    shown.as_str().expect("shown").to_owned()
}

fn a_recall_names_what_was_sold_and_asks_first_who_phoned(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let (pig, chops) = chops(&caller);
    let at = format!("/recall?lot={pig}");
    assert!(!caller.page(&at).contains("data-sold>"));
    caller.sell(&chops).with("packs", json!([2, 3])).done();
    let page = caller.page(&at);
    let text = read(&caller, &at);
    let sold = format!("Pork chop, {}/2–3, ", shown(&caller, &chops));
    assert!(text.contains(&sold), "{text}");
    // It is told before anything is held, and so is who phoned: a field that stays empty.
    let button = page.find("class=\"act first grand\"").expect("the button");
    let told_by = page.find("name=\"told_by\"").expect("who phoned");
    assert!(page.find("data-sold>").expect("the list") < button);
    assert!(told_by < button);
    assert!(!page[told_by..button].contains("required"), "{page}");
    // What was taken back was not sold.
    let more = caller.sell(&chops).with("packs", json!([5])).done().body;
    let void = json!({ "why": "Scanned the wrong one" });
    caller
        .deed(&format!("/api/steps/{}/void", id(&more)), void)
        .expect(201);
    assert!(read(&caller, &at).contains(&sold));
    assert!(!read(&caller, &at).contains(&format!("{}/5", shown(&caller, &chops))));
    let begun = begin(&caller, json!({ "lot": pig }), false);
    let number = incident(&caller, &begun)["number"].clone();
    let number = number.as_str().expect("its number").to_owned();
    let text = read(&caller, &format!("/recall/{number}"));
    let sold = format!("Pork chop, {}/2–3", shown(&caller, &chops));
    assert!(text.contains(&sold), "{text}");
}

fn a_sale_that_was_taken_back_is_told_as_none(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let (pig, chops) = chops(&caller);
    let other = caller.step("cut").of_grams(&pig, 1_000);
    let other = other.into_packs("pork-chop", 1_000, 2);
    let other = other.which("place", "case").made();
    let first = id(&caller.sell(&chops).with("packs", json!([1, 2])).done().body);
    let second = id(&caller.sell(&other).with("packs", json!([1])).done().body);
    let at = format!("/counter?did={first},{second}");
    assert!(read(&caller, &at).contains("Sold: 3 packs"));
    let void = |deed: &str| {
        let why = json!({ "why": "The guest left it" });
        let path = format!("/api/steps/{deed}/void");
        caller.deed(&path, why).expect(201);
    };
    // A slip that waits for the line says what was sold.
    let slip = caller.page(&format!("/counter?with={chops}/3,{chops}/4,{other}/2"));
    let says = format!(
        "Sold: Pork chop, {}/3–4; Pork chop, {}/2.",
        shown(&caller, &chops),
        shown(&caller, &other)
    );
    assert!(slip.contains(&says), "{slip}");
    // Of two sales one was taken back: the other is what was sold, and only that is undone.
    void(&first);
    let page = caller.page(&at);
    assert!(read(&caller, &at).contains("Sold: Pork chop"), "{page}");
    assert!(page.contains(&format!("data-undo=\"{second}\"")), "{page}");
    void(&second);
    let text = read(&caller, &at);
    assert!(
        text.contains("Sale taken back: 3 packs. Nothing is sold."),
        "{text}"
    );
    assert!(!text.contains("Sold:"), "{text}");
    // Where what was done stands, its grams are struck through as its name is.
    let lot = caller.page(&format!("/lots/{chops}"));
    let done = lot.split("id=\"done\"").nth(1).expect("what was done");
    assert!(done.contains("<s>Sold</s>") && done.matches("<s>").count() == 2);
}

fn the_pack_in_the_hand_is_the_one_that_is_thrown_away(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let (_, chops) = chops(&caller);
    let scanned = caller.page(&format!("/counter?code={chops}/3"));
    let lot = format!("/lots/{chops}?pack=3");
    assert!(scanned.contains(&format!("href=\"{lot}\"")), "{scanned}");
    for act in ["discard", "move", "count", "serve"] {
        let way = format!("/lots/{chops}/{act}?packs=3");
        assert!(caller.page(&lot).contains(&way), "{way}");
    }
    assert!(read(&caller, &lot).contains(&format!("{}/3", shown(&caller, &chops))));
    let path = format!("/lots/{chops}/discard?packs=3");
    assert!(
        caller
            .page(&path)
            .contains("name=\"packs\" data-as=\"packs\" value=\"3\"")
    );
    let text = read(&caller, &path);
    assert!(
        text.contains("Pack 3, 500") && !text.contains("3,000"),
        "{text}"
    );
    // Gone, it is none that could be thrown away.
    caller.sell(&chops).with("packs", json!([3])).done();
    assert!(
        !caller
            .page(&lot)
            .contains(&format!("/lots/{chops}/discard?packs=3"))
    );
}

fn cuts_of_the_first_side_are_asked_for_their_place(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("0608-17", 10_000);
    let place = |lot: &str| {
        let page = caller.page(&format!("/lots/{lot}/break-down"));
        let select = page.split("name=\"_place\"").nth(1).expect("the place");
        select
            .split("</select>")
            .next()
            .expect("its end")
            .to_owned()
    };
    // Where a side hangs no cut is put: of the first one nobody knows.
    let first = place(&pig);
    assert!(
        first.starts_with(" required><option value=\"\">"),
        "{first}"
    );
    assert!(!first.contains(" selected"), "{first}");
    let loin = caller.step("break-down").of_grams(&pig, 2_000);
    let loin = loin.into("pork-chop", 2_000);
    let loin = loin.which("place", "cooler").made();
    let next = place(&pig);
    assert!(next.contains("value=\"cooler\" selected"), "{next}");
    // What is cut of a piece stays where the piece lies.
    let moved = json!({ "lot": loin, "packs": [1], "to": "case" });
    caller.deed("/api/moves", moved).expect(201);
    let cut = place(&loin);
    assert!(cut.contains("value=\"case\" selected"), "{cut}");
}

fn a_receipt_of_a_correction_or_a_hold_names_the_thing(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let (pig, chops) = chops(&caller);
    let told = |deed: &str| {
        let text = read(&caller, &format!("/?did={deed}"));
        text.split("Undo").next().expect("the strip").to_owned()
    };
    let animal = caller.read(&format!("/api/lots/{pig}/origins"))["animals"][0]["id"].clone();
    let right = json!({ "step": animal, "animal": { "carcass": "0608-71" }, "why": "Read wrong" });
    let corrected = id(&caller.deed("/api/corrections", right).expect(201).body);
    let text = told(&corrected);
    assert!(text.contains(&shown(&caller, &pig)), "{text}");
    // A hold of two packs, of a lot, of several; and what lets them go.
    let hold = |lots: Value| {
        let body = json!({ "lots": lots, "why": "A guest rang" });
        id(&caller.deed("/api/holds", body).expect(201).body)
    };
    let packs = hold(json!([{ "lot": chops, "packs": [2, 3] }]));
    let name = format!("Pork chop, {}/2–3", shown(&caller, &chops));
    assert!(told(&packs).contains(&name), "{}", told(&packs));
    let release = json!({ "lots": [{ "lot": chops, "packs": [2] }], "why": "It was another" });
    let released = id(&caller.deed("/api/hold-releases", release).expect(201).body);
    let name = format!("Pork chop, {}/2", shown(&caller, &chops));
    assert!(told(&released).contains(&name), "{}", told(&released));
    let both = hold(json!([{ "lot": chops }, { "lot": pig }]));
    assert!(told(&both).contains("2 lots"), "{}", told(&both));
}
