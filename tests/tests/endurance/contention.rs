//! Sixteen clients draw on one lot at once: never below zero, every refusal a 409, nothing lost.

use stories::day::Told;
use stories::{Engine, House, on_both_engines};

on_both_engines! { sixteen_on_one_lot }

const CLIENTS: usize = 16;
const DRAWS: usize = 30;

fn sixteen_on_one_lot(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    // Enough for two thirds of what they will ask for.
    let made = (CLIENTS * DRAWS * 10 * 2 / 3) as u64;
    let lot = caller.half_pig("0608-17", made);
    let drawn: u64 = std::thread::scope(|scope| {
        let clients: Vec<_> = (0..CLIENTS)
            .map(|nth| {
                let (caller, lot) = (house.caller(), lot.clone());
                scope.spawn(move || {
                    let mut drawn = 0;
                    for draw in 0..DRAWS {
                        let answer = if (nth + draw) % 2 == 0 {
                            caller.serve(&lot).grams(10).ask()
                        } else {
                            let step = caller.step("portion").of_grams(&lot, 10);
                            step.into("pork-chop", 10).ask()
                        };
                        match answer.status {
                            201 => drawn += 10,
                            _ => drop(answer.expect(409)),
                        }
                    }
                    drawn
                })
            })
            .collect();
        clients
            .into_iter()
            .map(|client| client.join().unwrap())
            .sum()
    });
    let read = caller.lot(&lot);
    assert_eq!(drawn, made, "it was drawn on until nothing was left");
    assert_eq!(read["on_hand_grams"], 0);
    let descendants = caller.descendants(&lot);
    let used: u64 = descendants["totals"]["made_grams"].as_u64().unwrap();
    assert!(used > 0 && used < made);
}
