//! The pages of acts, as a browser without script reads them; what they do is told in a real one (`judges`).

use stories::day::Told;
use stories::{Engine, House, on_both_engines};

on_both_engines! {
    a_count_of_many_packs_goes_on_after_the_first
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
