//! The pages of acts, as a browser without script reads them; what they do is told in a real one (`judges`).

use serde_json::json;
use stories::day::Told;
use stories::{Engine, House, on_both_engines};

on_both_engines! {
    a_count_of_many_packs_goes_on_after_the_first
    a_carcass_on_the_bench_is_read_without_script
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
