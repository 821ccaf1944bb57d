//! What a cook stopped to think at: a pack that nobody finds, a change that reaches no pack that is there, a reason that
//! was chosen for them, a receipt that does not say of what, a question about nothing, a question of a weight, a recall
//! that is counted, an abattoir that was entered wrong.

use serde_json::{Value, json};
use stories::day::Told;
use stories::recall::{begin, chops, count_all, incident};
use stories::{Engine, House, on_both_engines};

on_both_engines! {
    what_a_count_missed_is_told_until_it_is_found
    a_changed_product_tells_how_many_packs_stay_as_they_were
    nothing_is_thrown_away_by_place_for_a_reason_that_nobody_chose
    a_receipt_names_the_thing
    a_question_about_nothing_has_no_answer
    a_recall_asks_on_and_leads_to_its_end
    the_abattoir_of_an_animal_is_corrected_on_its_page
}

fn hand(today: &Value, sort: &str) -> Option<Value> {
    let mut hands = today["hands"].as_array().expect("hands").iter();
    hands.find(|hand| hand["sort"] == sort).cloned()
}

fn what_a_count_missed_is_told_until_it_is_found(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let (_, chops) = chops(&caller);
    let told = || hand(&caller.read("/api/today"), "missing");
    assert!(told().is_none());
    caller.count(&chops).missing(2).done();
    let found = told().expect("the missing pack");
    assert_eq!(found["act_key"], "today-do-count-again");
    assert_eq!(
        (&found["lot"], &found["packs"]),
        (&json!(chops), &json!([2]))
    );
    let again = format!("/lots/{chops}/count?packs=2");
    let adopt = format!("/adopt?is={chops}/2");
    for page in ["/".to_owned(), format!("/lots/{chops}")] {
        let page = caller.page(&page);
        assert!(page.contains(&again) && page.contains(&adopt), "{page}");
    }
    // That pack is counted there, and nothing stands in its field beforehand.
    let count = caller.page(&again);
    assert_eq!(count.matches("name=\"packs.").count(), 1, "{count}");
    assert!(count.contains("value=\"\">"), "{count}");
    let there = json!([{ "pack": 2, "grams": 500 }]);
    caller.count(&chops).with("packs", there).done();
    assert!(told().is_none());
    assert!(!caller.page(&format!("/lots/{chops}")).contains(&again));
}

fn a_changed_product_tells_how_many_packs_stay_as_they_were(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    chops(&caller);
    let change = |offered: bool| {
        let read = caller.get("/api/products/pork-chop").expect(200);
        let etag = read.etag.clone().expect("a version");
        let mut body = read.body;
        body["for_sale"] = json!(offered);
        let done = caller.put_over("/api/products/pork-chop", &etag, &body);
        let all = done.expect(200).body["warnings"].clone();
        let all = all.as_array().cloned().unwrap_or_default();
        let mut all = all.into_iter();
        all.find(|of| of["key"] == "entry-packs-as-before")
            .map(|of| of["says"].as_str().expect("a sentence").to_owned())
    };
    let read = caller.read("/api/products/pork-chop");
    let offered = read["for_sale"] == true;
    let said = change(!offered).expect("it is told");
    assert!(said.starts_with("6 packs on hand"), "{said}");
    // As it was again: what is there says the same as the list.
    assert_eq!(change(offered), None);
}

fn nothing_is_thrown_away_by_place_for_a_reason_that_nobody_chose(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    chops(&caller);
    let page = caller.page("/places/case/discard");
    let whys = page.matches("name=\"why\"").count();
    assert!(whys > 3, "{page}");
    assert_eq!(page.matches("required>").count(), whys, "{page}");
    assert!(!page.contains(" checked"), "{page}");
}

fn a_receipt_names_the_thing(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let (_, chops) = chops(&caller);
    let done = caller.deed(
        "/api/moves",
        json!({ "lot": chops, "packs": [2, 3], "to": "cooler" }),
    );
    let id = done.expect(201).body["id"]
        .as_str()
        .expect("an id")
        .to_owned();
    let page = caller.page(&format!("/places/cooler?did={id}"));
    let strip = page.split("class=\"done\"").nth(1).expect("the strip");
    let strip = strip.split("</div>").next().expect("its end");
    let shown = caller.lot(&chops)["shown"]
        .as_str()
        .expect("shown")
        .to_owned();
    assert!(
        strip.contains("Pork chop") && strip.contains("/2–3"),
        "{strip}"
    );
    assert!(
        strip
            .replace("<b class=\"nb\">", "")
            .replace("</b>", "")
            .contains(&shown),
        "{strip}"
    );
    let read = caller.deed("/api/readings", json!({ "place": "cooler", "celsius": 3 }));
    let id = read.expect(201).body["id"]
        .as_str()
        .expect("an id")
        .to_owned();
    let page = caller.page(&format!("/?did={id}"));
    let strip = page.split("class=\"done\"").nth(1).expect("the strip");
    assert!(
        strip
            .split("</div>")
            .next()
            .expect("its end")
            .contains("cooler"),
        "{strip}"
    );
}

fn a_question_about_nothing_has_no_answer(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let asked = "/ask?asked=yes&about=gluten&place=case";
    let page = caller.page(asked);
    assert!(page.contains("so there is no answer for gluten"), "{page}");
    assert!(!page.contains("data-told="), "{page}");
    chops(&caller);
    assert!(caller.page(asked).contains("data-told=\"no\""));
}

fn a_recall_asks_on_and_leads_to_its_end(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let (pig, chops) = chops(&caller);
    caller.sell(&chops).with("pack", 6).done();
    let id = begin(&caller, json!({ "lot": pig }), false);
    let number = incident(&caller, &id)["number"]
        .as_str()
        .expect("its number")
        .to_owned();
    let at = format!("/recall/{number}/count?place=case");
    // The sold one is there: what does it weigh? The next scan does not end that question.
    let asks = caller.page(&format!("{at}&code={chops}/6"));
    assert!(
        asks.contains(&format!("name=\"open\" value=\"{chops}/6\"")),
        "{asks}"
    );
    let next = caller.page(&format!("{at}&open={chops}/6&code={chops}/1"));
    assert!(
        next.contains("data-unanswered") && next.contains("data-alone"),
        "{next}"
    );
    let found = json!([{ "pack": 6, "grams": 490 }]);
    caller
        .deed(
            "/api/counts",
            json!({ "lot": chops, "place": "case", "packs": found }),
        )
        .expect(201);
    assert!(
        !caller
            .page(&format!("{at}&open={chops}/6"))
            .contains("data-unanswered")
    );
    // All is counted: what is done next comes before all that is only to be read.
    let page = || caller.page(&format!("/recall/{number}"));
    let before = page();
    assert!(
        before.find("id=\"decide\"").expect("the form") > before.find("<table").expect("a table")
    );
    count_all(&caller, &id, &[]);
    assert!(
        caller
            .page(&at)
            .contains(&format!("/recall/{number}#decide"))
    );
    let after = page();
    assert!(
        after.find("id=\"decide\" open").expect("the form")
            < after.find("<table").expect("a table")
    );
}

fn the_abattoir_of_an_animal_is_corrected_on_its_page(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let right = json!({ "number": "31415", "name": "Overcombe" });
    caller.post("/api/abattoirs", &right).expect(201);
    let pig = caller.half_pig("0608-17", 10_000);
    let animal = caller.read(&format!("/api/lots/{pig}/origins"))["animals"][0]["id"].clone();
    let animal = animal.as_str().expect("an animal").to_owned();
    let page = || caller.page(&format!("/animals/{animal}"));
    assert!(
        page().contains("<option value=\"31415\">Overcombe, 31415"),
        "{}",
        page()
    );
    let receipt = format!("\"step\":\"{animal}\"").replace('"', "&#34;");
    assert!(page().contains(&receipt), "{}", page());
    let said =
        json!({ "step": animal, "animal": { "abattoir": "31415" }, "why": "The invoice says so" });
    caller.deed("/api/corrections", said).expect(201);
    // What was corrected has a page of its own, from which the same receipt is corrected once more.
    let origins = caller.read(&format!("/api/lots/{pig}/origins"));
    let now = origins["animals"][0]["id"].as_str().expect("an animal");
    let page = caller.page(&format!("/animals/{now}"));
    assert!(page.contains("31415</div>"), "{page}");
    assert!(
        page.contains(&receipt) && page.contains("<option value=\"DEMO-17\">"),
        "{page}"
    );
}
