//! What a customer had and brought back: nobody knows how it was kept, and so it goes nowhere until a person who
//! may says by name what becomes of it.

use serde_json::json;
use stories::day::Told;
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    what_came_back_goes_nowhere_before_somebody_disposes_of_it
}

fn what_came_back_goes_nowhere_before_somebody_disposes_of_it(engine: Engine) {
    let house = House::furnished(engine);
    let caller: Caller = house.caller();
    let pig = caller.half_pig("0608-17", 10_000);
    let cut = caller.step("cut").of(&pig);
    let lot = cut.into_packs("pork-chop", 9_000, 3).made();
    caller.sell(&lot).pack(2).done();
    let back = caller.take_back(&lot, 2).why("not to their taste").done();
    let id = back.body["id"].as_str().unwrap().to_owned();
    let pack = format!("{lot}/2");
    assert_eq!(caller.verdict(&pack), "not-for-sale");
    let stops = caller.lot(&lot)["stops"].clone();
    assert_eq!(stops[0]["stop"], "came-back", "{stops}");
    // It is not sold, served, shipped, portioned, mixed or labelled for a customer; the packs beside it are.
    caller.sell(&lot).pack(2).refused(409, "pack");
    caller.serve(&lot).pack(2).refused(409, "lot");
    caller.depart("ship", &lot).pack(2).refused(409, "lot");
    let portion = || {
        let of = json!([{ "lot": lot, "pack": 2, "grams": 1_000 }]);
        let step = caller.step("portion").into("pork-trim", 1_000);
        step.with("inputs", of)
    };
    portion().refused(409, "inputs[0].lot");
    let label = format!("/api/lots/{lot}/labels.pdf?packs=2&template=pack-us-raw");
    caller.get(&label).expect(409);
    caller.serve(&lot).pack(1).done();
    // What is made of it all the same is stopped too.
    let made = portion()
        .with("as_it_happened", true)
        .with("note", "nobody looked");
    assert_eq!(caller.verdict(&made.made()), "not-for-sale");
    // A manager lets it go by name; sold it is never again.
    let let_go = json!({ "lot": lot, "packs": [2], "what": "released", "why": "never left the shop, seen by Jory" });
    caller.deed("/api/dispositions", let_go).expect(201);
    caller.sell(&lot).pack(2).refused(409, "pack");
    caller.serve(&lot).pack(2).with("grams", 500).done();
    // Taken back by mistake: it is sold as it was.
    caller.sell(&lot).pack(3).done();
    let wrong = caller.take_back(&lot, 3).why("the wrong pack").done();
    assert_eq!(caller.verdict(&format!("{lot}/3")), "not-for-sale");
    caller.void(wrong.body["id"].as_str().unwrap()).done();
    assert_eq!(caller.verdict(&format!("{lot}/3")), "gone");
    caller.void(&id).refused(409, None);
}
