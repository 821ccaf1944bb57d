//! A hold comes while clerks sell: from its answer on nothing of it leaves.

use serde_json::json;
use stories::day::Told;
use stories::{Engine, House, on_both_engines};

on_both_engines! {
    a_sale_and_a_hold_at_once
}

/// Four clerks sell one pack after the other while the hold comes: from its answer on nothing leaves.
fn a_sale_and_a_hold_at_once(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("0608-17", 40_000);
    let cut = caller
        .step("cut")
        .of_grams(&pig, 40_000)
        .into_packs("pork-chop", 40_000, 200);
    let chops = cut.which("place", "case").made();
    let acknowledged = &std::sync::atomic::AtomicBool::new(false);
    let sold_after = std::thread::scope(|all| {
        let clerks: Vec<_> = (0..4)
            .map(|clerk| {
                let (caller, chops) = (caller.clone(), chops.clone());
                all.spawn(move || {
                    let mut after = 0;
                    for pack in (1..=200).filter(|pack| pack % 4 == clerk) {
                        let known = acknowledged.load(std::sync::atomic::Ordering::SeqCst);
                        let sold = caller.sell(&chops).with("pack", pack).ask();
                        match sold.status {
                            201 => after += u32::from(known),
                            status => {
                                assert_eq!(
                                    (status, known || sold.body["type"] == "/problems/held"),
                                    (409, true)
                                );
                            }
                        }
                    }
                    after
                })
            })
            .collect();
        std::thread::sleep(std::time::Duration::from_millis(100));
        let body = json!({ "told_by": "Harle Gate", "hazard": "residue", "hold": true, "why": "Residue",
            "scope": { "start": [{ "lot": pig }], "spreads": "lineage" } });
        caller.deed("/api/incidents", body).expect(201);
        acknowledged.store(true, std::sync::atomic::Ordering::SeqCst);
        clerks
            .into_iter()
            .map(|clerk| clerk.join().unwrap())
            .sum::<u32>()
    });
    assert_eq!(sold_after, 0);
}
