//! What a deed costs against another build of the service: a kitchen of each, the same deeds in turn, in one run.
//!
//! `cargo bench -p stories --bench deed`, the binary built before. `GAMBREL_OTHER` names the other binary, as the commit
//! before built it; left out, it is the same one, and the figure says how far this machine can be believed. PostgreSQL too
//! where `TEST_DATABASE_URL` names a server. Wanted: at most 1.15 times what it did before.
#![allow(clippy::disallowed_methods, reason = "a bench measures time")]

use serde_json::json;
use std::path::PathBuf;
use std::time::Duration;
use stories::bench::{median, ms, once, row, size, times};
use stories::house::binary;
use stories::{Caller, Engine, House};

/// Deeds in turn, after the first few, which fill what a service remembers.
const WARM: usize = 20;

fn main() {
    let other = std::env::var_os("GAMBREL_OTHER").map_or_else(binary, PathBuf::from);
    let rounds = size(1_500, 20);
    row(&["deed", "rounds", "other ms", "this ms", "of the other"]);
    let mut engines = vec![Engine::Sqlite];
    engines.extend(std::env::var_os("TEST_DATABASE_URL").map(|_| Engine::Postgres));
    for engine in engines {
        let houses = [other.clone(), binary()].map(|build| House::built(engine, build));
        let kitchens = houses.each_ref().map(|house| {
            let caller = house.caller();
            let pig = caller.half_pig("0608-17", 1_000_000);
            (caller, pig)
        });
        for (what, deed) in [("pack", pack as Deed), ("serve", serve)] {
            let mut took: [Vec<Duration>; 2] = Default::default();
            for round in 0..WARM + rounds {
                // Whoever comes second finds the machine warm: they change places.
                for nth in [round % 2, 1 - round % 2] {
                    let (caller, pig) = &kitchens[nth];
                    let time = once(|| deed(caller, pig));
                    if round >= WARM {
                        took[nth].push(time);
                    }
                }
            }
            let [other, this] = took.map(median);
            let what = format!("{what}, {engine:?}");
            row(&[
                &what,
                &rounds.to_string(),
                &ms(other),
                &ms(this),
                &times(this, other),
            ]);
        }
    }
}

type Deed = fn(&Caller, &str);

/// Twelve bags of the side.
fn pack(caller: &Caller, pig: &str) {
    let step = json!({ "kind": "pack", "place": "bench", "inputs": [{ "lot": pig, "grams": 12 }],
        "outputs": [{ "product": "pork-chop", "grams": 12, "pack_count": 12 }] });
    caller.deed("/api/steps", step).expect(201);
}

/// A bite of it.
fn serve(caller: &Caller, pig: &str) {
    let serve = json!({ "kind": "serve", "lot": pig, "grams": 1 });
    caller.deed("/api/departures", serve).expect(201);
}
