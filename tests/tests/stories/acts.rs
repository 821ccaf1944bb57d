//! The pages of acts, as a browser without script reads them; what they do is told in a real one (`judges`).

use serde_json::json;
use stories::day::Told;
use stories::{Answer, Engine, House, on_both_engines};

on_both_engines! {
    a_count_of_many_packs_goes_on_after_the_first
    a_carcass_on_the_bench_is_read_without_script
    packs_of_a_released_piece_need_no_release_of_their_own
    what_is_only_put_into_a_freezer_is_told
    the_pages_of_the_bench_are_read_without_script
}

fn a_count_of_many_packs_goes_on_after_the_first(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("7", 9_000);
    let chops = caller.step("cut").of_grams(&pig, 3_000);
    let chops = chops.into_packs("pork-chop", 3_000, 30).made();
    let page = |path: &str| {
        let page = caller.get(&format!("/lots/{chops}/{path}")).expect(200);
        String::from_utf8(page.bytes).unwrap()
    };
    let fields = |page: &str| page.matches(".grams\"").count();
    let first = page("count");
    assert_eq!(fields(&first), 24);
    assert!(first.contains("/count?after=24"), "{first}");
    let rest = page("count?after=24");
    assert_eq!(fields(&rest), 6);
    assert!(
        rest.contains("Pack 30") && !rest.contains("count?after="),
        "{rest}"
    );
    // Other acts take all of them at once.
    assert!(page("move").contains("1-30"));
}

fn a_carcass_on_the_bench_is_read_without_script(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let ham = json!({ "code": "pork-ham", "names": { "en": "Fresh ham" }, "kind": "cut", "species": "pig", "cut": "ham" });
    caller.post("/api/products", &ham).expect(201);
    let pig = caller.half_pig("7", 45_000);
    let page = |path: &str| {
        let page = caller.get(&format!("/lots/{path}")).expect(200);
        String::from_utf8(page.bytes).unwrap()
    };
    let bench = page(&format!("{pig}/break-down"));
    // Its picture, each cut with where the knife goes and what it usually weighs, and where that comes from.
    assert!(bench.contains("<svg class=\"side\"") && bench.contains("<b data-left-says>45.000"));
    assert!(bench.contains("1 Ham") && bench.contains("4 to 9 cm before the aitch bone"));
    assert!(
        bench.contains("11.025\u{a0}kg") && bench.contains("9\u{a0}kg to 12.15\u{a0}kg"),
        "{bench}"
    );
    assert!(bench.contains("trade-1.2-bands") && bench.contains("trade-knife-pork"));
    // What the house has a product for is weighed there; the rest it is told of.
    assert_eq!(bench.matches("data-cut=\"").count(), 1);
    assert!(bench.contains("Loin, Belly, Spareribs"));
    // It is what a carcass is for; of chops nobody asks it.
    let first = format!("<a class=\"act first\" href=\"/lots/{pig}/break-down\">");
    assert!(page(&pig).contains(&first));
    let chops = caller.step("cut").of_grams(&pig, 3_000);
    let chops = chops.into_packs("pork-chop", 3_000, 3).made();
    assert!(!page(&chops).contains("/break-down"));
    // All of it gone, there is nothing to weigh; the picture stays to learn from.
    caller
        .step("break-down")
        .of(&pig)
        .into("pork-ham", 41_000)
        .done();
    let gone = page(&format!("{pig}/break-down"));
    assert!(!gone.contains("data-side ") && gone.contains("1 Ham"));
}

fn packs_of_a_released_piece_need_no_release_of_their_own(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let pancetta = caller.noted("P-01");
    let packed = caller.step("pack").of_grams(&pancetta, 500);
    let deed = "0d5ce5a1-0c1b-4d3e-9a53-5f3f0c0a0001";
    let packed = packed.into_packs("pancetta", 500, 2).id(deed).made();
    let stops = caller.lot(&packed)["stops"].to_string();
    assert!(!stops.contains("not-released"), "{stops}");
    let room = caller.read("/api/cure-room")["pieces"].clone();
    let piece = |code: &str| {
        let mut pieces = room.as_array().into_iter().flatten();
        pieces.find(|piece| piece["lot"] == code).cloned()
    };
    assert_eq!(piece(&packed).expect("a piece")["stage"], "released");
    let label = caller.get(&format!("/lots/{packed}")).expect(200);
    let page = String::from_utf8(label.bytes).unwrap();
    assert!(!page.contains("NOT RELEASED"), "its label is no cure tag");
    // Of what nobody released nothing is packed at all.
    let ham = caller.noted("H-03");
    let refused = caller.step("pack").of_grams(&ham, 500);
    refused.into("dry-aged-ham", 500).ask().expect(409);
    // Whoever packed some goes on with the rest of the piece from there, and whoever took it back packs it anew.
    let leads_back = |page: &str| {
        let page = caller.page(&format!("/lots/{page}?did={deed}"));
        page.contains(&format!("data-rest href=\"/lots/{pancetta}\""))
    };
    assert!(leads_back(&packed) && !leads_back(&pancetta));
    caller.void(deed).done();
    assert!(leads_back(&packed));
}

fn what_is_only_put_into_a_freezer_is_told(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("7", 9_000);
    let chops = caller.step("cut").of_grams(&pig, 1_000);
    let chops = chops.into_packs("pork-chop", 1_000, 4).made();
    let frozen = caller.step("cut").of_grams(&pig, 1_000);
    let frozen = frozen.into_packs("pork-chop", 1_000, 2).made();
    let keys = |answer: &Answer| answer.body["warning_keys"].to_string();
    // Nothing shows yet what the place is.
    let moved = caller
        .carry(&chops, "freezer")
        .with("packs", json!([1]))
        .done();
    assert!(!keys(&moved).contains("deed-not-frozen"), "{moved:?}");
    caller
        .carry(&chops, "cooler")
        .with("packs", json!([1]))
        .done();
    caller.carry(&frozen, "freezer").frozen().done();
    let moved = caller
        .carry(&chops, "freezer")
        .with("packs", json!([1, 2]))
        .done();
    assert!(keys(&moved).contains("deed-not-frozen"), "{moved:?}");
    let moved = caller
        .carry(&chops, "freezer")
        .with("packs", json!([3]))
        .frozen()
        .done();
    assert!(!keys(&moved).contains("deed-not-frozen"), "{moved:?}");
    // Pack 4 stayed at the bench: each place is named, that of most first.
    let listed = caller.read(&format!("/api/lots?q={chops}"))["lots"][0].clone();
    assert_eq!(listed["places"], json!(["freezer", "bench"]), "{listed}");
    assert_eq!(listed["place"], "freezer");
}

fn the_pages_of_the_bench_are_read_without_script(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let page = |path: &str| {
        let page = caller.get(path).expect(200);
        String::from_utf8(page.bytes).unwrap()
    };
    let room = page("/cure-room");
    let at = |text: &str| {
        room.find(text)
            .unwrap_or_else(|| panic!("no {text}: {room}"))
    };
    assert!(
        at("H-06 ") < at("H-02 ") && at("H-02 ") < at("H-03"),
        "alarms, due, the rest"
    );
    let ham = caller.noted("H-03");
    let early = page(&format!("/lots/{ham}/release"));
    assert!(
        early.contains("30") && !early.contains("data-deed=\"/api/releases"),
        "{early}"
    );
    assert!(page("/make/cook?product=pulled-pork").contains("data-pot"));
    caller.get("/make/fly").expect(404);
    caller.get("/make/cook?product=no-such-thing").expect(404);
}
