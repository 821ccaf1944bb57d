//! What is done next, offered where somebody stands: packs to sell at the counter and on their own page, what can be cut
//! or packed from Today, labels that are still to come, and no act that makes no sense any more.

use serde_json::{Value, json};
use stories::day::{Told, bought};
use stories::printer::Manners;
use stories::queue::{chops, kitchen, print, wait};
use stories::{Caller, Engine, House, Printer, on_both_engines};

on_both_engines! {
    the_counter_offers_what_may_be_sold_and_a_lot_says_sell
    what_has_no_price_is_sold_without_one
    the_counter_shows_what_goes_first_and_a_guest_hears_of_nothing_else
    what_was_thrown_away_came_from_no_guest
    cut_and_pack_are_ways_from_today
    a_label_that_is_still_to_come_is_told_on_today
    what_was_sliced_is_smoked_no_more
}

fn the_counter_offers_what_may_be_sold_and_a_lot_says_sell(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let chops = chops(&caller, "7", 3);
    let sell = format!("href=\"/counter?code={chops}\"");
    let lot = || caller.page(&format!("/lots/{chops}"));
    // One tap on the list asks which pack; of the last one it is the pack itself.
    assert!(caller.page("/counter").contains(&sell));
    assert!(lot().contains(&sell), "whoever works sells as well");
    // With one for the guest already, it is not offered again.
    let with = caller.page(&format!("/counter?with={chops}/1"));
    let rest = format!("href=\"/counter?code={chops}&#38;with={chops}/1\"");
    assert!(with.contains(&rest) && with.contains("2 packs"), "{with}");
    let sold = json!({ "kind": "sell", "lot": chops, "packs": [1, 2] });
    caller.deed("/api/departures", sold).expect(201);
    let which = caller.page(&format!("/counter?code={chops}"));
    assert!(which.contains("No longer here: 1–2"), "{which}");
    let last = format!("href=\"/counter?code={chops}/3\"");
    assert!(caller.page("/counter").contains(&last));
    // What is scanned is told of, and nothing else.
    let scanned = caller.page(&format!("/counter?code={chops}/3"));
    assert!(!scanned.contains("May be sold now"));
    // Frozen, nobody sells it over the counter: neither page offers it.
    let frozen = json!({ "lot": chops, "packs": [3], "state": "frozen", "to": "freezer" });
    caller.deed("/api/moves", frozen).expect(201);
    assert!(!caller.page("/counter").contains(&chops));
    assert!(!lot().contains(&sell));
}

/// A jar of mustard, which the counter sells without a price.
fn mustard(caller: &Caller, lot: &str) -> String {
    if caller.get("/api/products/mustard").status == 404 {
        let jar = json!({ "code": "mustard", "names": { "en": "Mustard" }, "kind": "ingredient", "storage": "ambient",
            "allergens": ["mustard"], "for_sale": true });
        caller.post("/api/products", &jar).expect(201);
    }
    let came = caller.receive("mustard").bought(bought("PTS", lot));
    came.grams(250).to("case").made()
}

fn what_has_no_price_is_sold_without_one(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let (one, other) = (mustard(&caller, "M-1"), mustard(&caller, "M-2"));
    let sold = |lot: &str| {
        let body = json!({ "kind": "sell", "lot": lot, "packs": [1] });
        let deed = caller.deed("/api/departures", body).expect(201).body["id"].clone();
        let deed = deed.as_str().expect("an id").to_owned();
        caller.page(&format!("/counter?did={deed}"))
    };
    let page = sold(&one);
    assert!(
        page.contains("Sold: Mustard.") && !page.contains("0.00"),
        "{page}"
    );
    let basket = caller.page(&format!("/counter?with={other}/1"));
    assert!(
        basket.contains("Mustard") && !basket.contains("0.00"),
        "{basket}"
    );
    // What has one says it.
    let chops = chops(&caller, "7", 1);
    let page = sold(&chops);
    assert!(
        page.contains("Sold: Pork chop, ") && page.contains("234.00"),
        "{page}"
    );
}

fn the_counter_shows_what_goes_first_and_a_guest_hears_of_nothing_else(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let page = caller.page("/counter");
    let codes = page.split("href=\"/counter?code=").skip(1);
    let codes: Vec<&str> = codes.map(|rest| &rest[..rest.find('"').unwrap()]).collect();
    let day = |code: &&str| {
        let (lot, pack) = code.split_once('/').unzip();
        let pack: Option<u32> = pack.map(|pack| pack.parse().expect("a number"));
        let told = caller.lot(lot.unwrap_or(code));
        let packs = told["packs"].as_array().unwrap().clone().into_iter();
        let asked = |of: &Value| pack.is_none_or(|pack| of["pack"] == pack);
        let left = packs.filter(|of| of["left_grams"] != 0 && asked(of));
        let day = left
            .filter_map(|of| of["use_by"].as_str().map(str::to_owned))
            .min();
        (day.is_none(), day)
    };
    let days: Vec<_> = codes.iter().map(day).collect();
    assert!(days.len() > 5 && days.is_sorted(), "{days:?}");
    assert!(days.first() != days.last(), "{days:?}");
    // What is held is counted in neither.
    let bacon = caller.noted("L13");
    let ask = || caller.page("/ask?asked=yes&about=milk&offered=yes");
    let said = |page: &str| page.matches("One more may not be sold.").count();
    let before = said(&ask());
    let held = json!({ "lots": [{ "lot": bacon, "packs": [13] }], "why": "A guest rang" });
    caller.deed("/api/holds", held).expect(201);
    let ready = caller.page("/counter");
    let (asked, packs) = (ask(), caller.lot(&bacon)["packs"].clone());
    let left = packs.as_array().unwrap().iter();
    let free = left.filter(|of| of["left_grams"] != 0).count() - 1;
    assert!(ready.contains(&format!("{free} packs")), "{ready}");
    let says = format!("{free} packs, ");
    assert!(
        asked.contains(&says) && said(&asked) == before + 1,
        "{asked}"
    );
    let all = caller.page("/ask?asked=yes&about=milk");
    assert!(all.contains("One of them may not be sold."), "{all}");
}

fn what_was_thrown_away_came_from_no_guest(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let chops = chops(&caller, "7", 3);
    let left = |kind: &str, pack: u32| {
        let why = (kind == "discard").then_some("It fell");
        let body = json!({ "kind": kind, "lot": chops, "packs": [pack], "why": why });
        caller.deed("/api/departures", body).expect(201);
        caller.page(&format!("/counter?code={chops}/{pack}"))
    };
    let guest = "Has a guest brought it back?";
    assert!(left("sell", 1).contains(guest));
    let thrown = left("discard", 2);
    assert!(
        !thrown.contains(guest) && thrown.contains("It was thrown away here, not sold."),
        "{thrown}"
    );
    assert!(
        thrown.contains(&format!("/lots/{chops}?why=counter&#38;pack=2")),
        "{thrown}"
    );
    // What is listed says where the numbers went that lack there.
    let moved = caller.page(&format!("/lots/{chops}/move"));
    assert!(
        moved.contains("No longer here: 1 (sold), 2 (discarded)"),
        "{moved}"
    );
    let served = left("serve", 3);
    assert!(
        !served.contains(guest) && served.contains("It was not sold here."),
        "{served}"
    );
}

fn cut_and_pack_are_ways_from_today(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("7", 9_000);
    let today = caller.page("/");
    for way in ["/make/cut", "/make/pack"] {
        assert!(today.contains(&format!("href=\"{way}\"")), "{today}");
    }
    let cut = |lot: &str| {
        caller
            .page("/make/cut")
            .contains(&format!("/lots/{lot}/break-down"))
    };
    let pack = |lot: &str| {
        caller
            .page("/make/pack")
            .contains(&format!("/lots/{lot}/pack"))
    };
    // A side is cut, and never packed as it is; a pot of trim is packed, and not cut.
    assert!(cut(&pig) && !pack(&pig));
    assert!(
        caller
            .page("/make/pack")
            .contains("Nothing on hand can be packed now")
    );
    let trim = caller.step("break-down").of_grams(&pig, 2_000);
    let trim = trim.into("pork-trim", 2_000).made();
    assert!(pack(&trim) && !cut(&trim));
    let loin = caller.step("break-down").of_grams(&pig, 2_000);
    let loin = loin.into("pork-chop", 2_000).made();
    assert!(cut(&loin) && pack(&loin));
    // What is in packs is neither, nor is what is frozen or held.
    let packs = caller.step("cut").of_grams(&loin, 500);
    let packs = packs.into_packs("pork-chop", 500, 2).made();
    assert!(!cut(&packs) && !pack(&packs));
    let frozen = json!({ "lot": trim, "packs": [1], "state": "frozen", "to": "freezer" });
    caller.deed("/api/moves", frozen).expect(201);
    assert!(!pack(&trim));
    let held = json!({ "lots": [{ "lot": loin }], "why": "A guest rang" });
    caller.deed("/api/holds", held).expect(201);
    assert!(!cut(&loin) && !pack(&loin));
    // It is not lost: it stands apart, with the reason, and leads to the lot.
    let apart = caller.page("/make/pack");
    let way = format!("href=\"/lots/{loin}\"");
    assert!(
        apart.contains("Not now: 1") && apart.contains(&way) && apart.contains("A guest rang"),
        "{apart}"
    );
    caller.get("/make/carve").expect(404);
}

fn a_label_that_is_still_to_come_is_told_on_today(engine: Engine) {
    let printer = Printer::new(Manners {
        holds: true,
        ..Manners::default()
    });
    let house = kitchen(engine, &printer);
    let caller = house.caller();
    let jar = mustard(&caller, "M-1");
    let nothing = "Nothing needs a hand.";
    assert!(caller.page("/").contains(nothing));
    let prints = print(&caller, &jar);
    wait(&caller, &prints, &["sent"]);
    let page = caller.page("/");
    assert!(
        page.contains("One label is being printed.") && page.contains(nothing),
        "{page}"
    );
    printer.go_on();
    wait(&caller, &prints, &["printed"]);
    assert!(caller.page("/").contains(nothing));
    // What the printer refused is told until it is printed anew.
    printer.change(|manners| {
        manners.holds = false;
        manners.refuses_size = true;
    });
    let again = json!({ "printer": "bench", "lot": jar, "again": { "why": "The first one tore" } });
    let again = caller.deed("/api/prints", again).expect(201).body;
    wait(&caller, &stories::queue::numbers(&again), &["refused"]);
    let page = caller.page("/");
    assert!(
        page.contains("One label was refused by its printer."),
        "{page}"
    );
    printer.change(|manners| manners.refuses_size = false);
    let again = json!({ "printer": "bench", "lot": jar, "again": { "why": "It was refused" } });
    let again = caller.deed("/api/prints", again).expect(201).body;
    wait(&caller, &stories::queue::numbers(&again), &["printed"]);
    assert!(caller.page("/").contains(nothing));
}

fn what_was_sliced_is_smoked_no_more(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let slab = caller.noted("L16");
    let offers = |lot: &str, way: &str| {
        let page = caller.page(&format!("/lots/{lot}"));
        page.contains(&format!("/make/{way}?lot={lot}"))
    };
    assert!(offers(&slab, "smoke") && offers(&slab, "cook"));
    let sliced = |packs: usize| {
        let step = caller.step("pack").of_grams(&slab, 500);
        step.into_packs("bacon-sliced", 500, packs as u32).made()
    };
    // In one bag as in several.
    for lot in [sliced(1), sliced(3), caller.noted("L13")] {
        assert!(!offers(&lot, "smoke") && !offers(&lot, "cook"), "{lot}");
    }
    assert!(offers(&slab, "smoke"));
}
